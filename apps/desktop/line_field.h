/// One line to type into, that keeps Enter for itself while it has the focus.
#pragma once

#include <QKeyEvent>
#include <QLineEdit>

namespace desktop {

class LineField : public QLineEdit {
    Q_OBJECT

public:
    using QLineEdit::QLineEdit;

protected:
    bool event(QEvent* event) override {
        if (event->type() == QEvent::ShortcutOverride) {
            const int key = static_cast<QKeyEvent*>(event)->key();
            if (key == Qt::Key_Return || key == Qt::Key_Enter) {
                event->accept();
                return true;
            }
        }
        return QLineEdit::event(event);
    }
};

}  // namespace desktop
