/// A line of a checklist: its words, and a mark that is set by a press of a gloved finger.
#pragma once

#include <QAbstractButton>

#include "apps/desktop/look.h"

namespace desktop {

class TickRow : public QAbstractButton {
    Q_OBJECT

public:
    TickRow(const QString& words, const Look& look);

    /// On record already: no press takes it back.
    void setRecorded(bool recorded);
    bool isRecorded() const noexcept { return recorded_; }
    /// Ticked, and not on record yet.
    bool isPending() const { return isChecked() && !recorded_; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    const Look& look_;
    bool recorded_{false};
};

}  // namespace desktop
