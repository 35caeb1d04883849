/// A sheet over the room with a head, room for questions, and at its foot the way back and on.
#pragma once

#include <QDialog>
#include <optional>
#include <string>

#include "apps/desktop/action_button.h"

class QComboBox;
class QLineEdit;
class QPlainTextEdit;
class QVBoxLayout;

namespace desktop {

class Sheet : public QDialog {
    Q_OBJECT

public:
    Sheet(const QString& head, const QString& onward, const Look& look);

    void say(const QString& words);
    /// Several lines of text.
    QPlainTextEdit* askWords(const QString& question);
    /// One line of text; `example` stands in it until something is typed.
    QLineEdit* askLine(const QString& question, const QString& example);
    /// One of some words; none is chosen to begin with.
    QComboBox* askChoice(const QString& question, const QStringList& choices);

    QVBoxLayout& questions() { return *questions_; }
    void letOnward(bool may) { onward_->setEnabled(may); }
    /// Lets on only while this holds; looked at whenever something is typed or chosen.
    template <typename Holds>
    void letOnwardWhile(Holds holds) {
        letOnward(holds());
        connect(this, &Sheet::changed, this, [this, holds] { letOnward(holds()); });
    }
    bool ask() { return exec() == Accepted; }

signals:
    void changed();

private:
    QVBoxLayout* questions_;
    ActionButton* onward_;
};

/// What stands in a field, trimmed; nullopt when that is nothing.
std::optional<std::string> wordsIn(const QPlainTextEdit& edit);
std::optional<std::string> wordsIn(const QLineEdit& edit);

}  // namespace desktop
