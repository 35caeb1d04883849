/// The way into a room: its word and its key, with a bar where one stands.
#pragma once

#include <QAbstractButton>
#include <QKeySequence>

#include "apps/desktop/look.h"

namespace desktop {

class RailButton : public QAbstractButton {
    Q_OBJECT

public:
    RailButton(const QString& word, const QKeySequence& key, const Look& look);

    QString keyShown() const { return shortcut().toString(QKeySequence::NativeText); }
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    const Look& look_;
};

}  // namespace desktop
