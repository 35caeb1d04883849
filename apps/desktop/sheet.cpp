#include "apps/desktop/sheet.h"

#include <QComboBox>
#include <QLabel>
#include <QPlainTextEdit>
#include <QVBoxLayout>

#include "apps/desktop/line_field.h"

namespace desktop {
namespace {

constexpr int kMargin = 6 * kStep;
constexpr int kWidth = 560;
constexpr int kWordsHeight = 96;
constexpr int kLabelWidth = 200;

std::optional<std::string> orNothing(const QString& text) {
    const QString words = text.trimmed();
    return words.isEmpty() ? std::nullopt : std::optional{words.toStdString()};
}

QHBoxLayout* labelled(const QString& question, QWidget* field) {
    auto* label = new QLabel{question};
    label->setFixedWidth(kLabelWidth);
    label->setWordWrap(true);
    label->setBuddy(field);
    field->setMinimumHeight(kTouch);
    field->setAccessibleName(question);
    auto* row = new QHBoxLayout;
    row->addWidget(label);
    row->addWidget(field, 1);
    return row;
}

}  // namespace

Sheet::Sheet(const QString& head, const QString& onward, const Look& look)
    : QDialog{QApplication::activeWindow()},
      questions_{new QVBoxLayout},
      onward_{new ActionButton{onward, Qt::CTRL | Qt::Key_Return, look}} {
    setObjectName(QStringLiteral("sheet"));
    setWindowTitle(head);
    setMinimumWidth(kWidth);
    auto* title = new QLabel{head};
    title->setFont(face(kLargeText, true));
    auto* back = new ActionButton{tr("Back"), Qt::Key_Escape, look};
    onward_->setNext(true);
    auto* foot = new QHBoxLayout;
    foot->addWidget(back);
    foot->addStretch(1);
    foot->addWidget(onward_);
    auto* column = new QVBoxLayout{this};
    column->setContentsMargins(kMargin, kMargin, kMargin, kMargin);
    column->setSpacing(3 * kStep);
    column->addWidget(title);
    column->addLayout(questions_);
    column->addLayout(foot);
    connect(back, &ActionButton::clicked, this, &QDialog::reject);
    connect(onward_, &ActionButton::clicked, this, &QDialog::accept);
}

void Sheet::say(const QString& words) {
    auto* label = new QLabel{words};
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    questions_->addWidget(label);
}

QPlainTextEdit* Sheet::askWords(const QString& question) {
    auto* words = new QPlainTextEdit;
    words->setAccessibleName(question);
    words->setPlaceholderText(question);
    words->setTabChangesFocus(true);
    words->setFixedHeight(kWordsHeight);
    questions_->addWidget(words);
    connect(words, &QPlainTextEdit::textChanged, this, &Sheet::changed);
    return words;
}

QLineEdit* Sheet::askLine(const QString& question, const QString& example) {
    auto* line = new LineField;
    line->setPlaceholderText(example);
    questions_->addLayout(labelled(question, line));
    connect(line, &QLineEdit::textChanged, this, &Sheet::changed);
    connect(line, &QLineEdit::returnPressed, this, [this] { focusNextChild(); });
    return line;
}

QComboBox* Sheet::askChoice(const QString& question, const QStringList& choices) {
    auto* box = new QComboBox;
    box->addItems(choices);
    box->setPlaceholderText(tr("choose"));
    box->setCurrentIndex(-1);
    questions_->addLayout(labelled(question, box));
    connect(box, &QComboBox::currentIndexChanged, this, &Sheet::changed);
    return box;
}

std::optional<std::string> wordsIn(const QPlainTextEdit& edit) {
    return orNothing(edit.toPlainText());
}

std::optional<std::string> wordsIn(const QLineEdit& edit) { return orNothing(edit.text()); }

}  // namespace desktop
