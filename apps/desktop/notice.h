/// A sentence at the place where the person looks: why something was refused, or that it is done.
#pragma once

#include <QWidget>

#include "apps/desktop/look.h"
#include "apps/desktop/models/mark.h"

class QLabel;

namespace desktop {

class Notice : public QWidget {
    Q_OBJECT

public:
    explicit Notice(const Look& look, QWidget* parent = nullptr);

    void say(models::Mark mark, const QString& sentence);
    void refuse(const domain::Error& error);
    void beQuiet();

    QString sentence() const;
    models::Mark mark() const noexcept { return mark_; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    const Look& look_;
    models::Mark mark_{};
    QLabel* sentence_;
};

}  // namespace desktop
