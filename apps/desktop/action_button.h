/// A control that does one thing: its word, and beside it the key that does the same.
#pragma once

#include <QAbstractButton>
#include <QKeySequence>

#include "apps/desktop/look.h"

namespace desktop {

class ActionButton : public QAbstractButton {
    Q_OBJECT

public:
    ActionButton(const QString& word, const QKeySequence& key, const Look& look,
                 QWidget* parent = nullptr);

    /// Words it anew; the key stays.
    void say(const QString& word);

    /// Whether this is the next thing to do: at most one control in view is.
    void setNext(bool next);
    bool isNext() const noexcept { return next_; }

    /// The key as it is written beside the word.
    QString keyShown() const;

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    const Look& look_;
    QKeySequence key_;
    bool next_{false};
};

}  // namespace desktop
