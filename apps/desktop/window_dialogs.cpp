#include "apps/desktop/window_dialogs.h"

#include <QButtonGroup>
#include <QDesktopServices>
#include <QFileDialog>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QPlainTextEdit>
#include <QRadioButton>
#include <QShortcut>
#include <QUrl>
#include <QVBoxLayout>
#include <algorithm>

#include "apps/desktop/action_button.h"
#include "apps/desktop/models/words.h"
#include "apps/desktop/sheet.h"

namespace desktop {

std::optional<std::filesystem::path> WindowDialogs::prescriptionFile() {
    const QString file = QFileDialog::getOpenFileName(
        QApplication::activeWindow(), QObject::tr("Open a prescription file"), {},
        QObject::tr("Prescriptions (*.json);;All files (*)"));
    if (file.isEmpty()) return {};
    return file.toStdString();
}

std::optional<FlagGiven> WindowDialogs::flag() {
    Sheet sheet{QObject::tr("Flag a question to the dentist"), QObject::tr("Flag"), look_};
    sheet.say(QObject::tr("The order stops until the dentist has answered. What is it about?"));
    QButtonGroup reasons;
    QPlainTextEdit* note = nullptr;
    for (const auto& code : domain::enumCodes<domain::FlagReason>) {
        const QString key = QString::number(reasons.buttons().size() + 1);
        auto* reason =
            new QRadioButton{QStringLiteral("%1   %2").arg(key, models::spoken(code.value))};
        reason->setMinimumHeight(kTouch);
        reason->setToolTip(models::text(questionOf(code.value)));
        reason->setAccessibleDescription(models::text(questionOf(code.value)));
        reasons.addButton(reason, static_cast<int>(code.value));
        sheet.questions().addWidget(reason);
        // On to the note at once: what is typed next must not choose another reason.
        QObject::connect(new QShortcut{QKeySequence{key}, &sheet}, &QShortcut::activated, reason,
                         [reason, &note] {
                             reason->click();
                             note->setFocus();
                         });
    }
    sheet.questions().setSpacing(0);
    note = sheet.askWords(QObject::tr("What exactly: tooth, place, what you see"));
    sheet.letOnward(false);
    QObject::connect(&reasons, &QButtonGroup::idClicked, &sheet, [&] { sheet.letOnward(true); });
    reasons.buttons().front()->setFocus();
    if (!sheet.ask() || reasons.checkedId() < 0) return {};
    return FlagGiven{static_cast<domain::FlagReason>(reasons.checkedId()), wordsIn(*note)};
}

namespace {

/// A refusal that may be kept as prescribed, and where the prescriber's reason is typed.
struct KeepLine {
    const domain::Finding* finding;
    QLineEdit* words;
};

std::vector<KeepLine> askWhatIsKept(Sheet& sheet, const std::vector<domain::Finding>& refusals,
                                    domain::Notation notation) {
    std::vector<KeepLine> lines;
    for (const domain::Finding& finding : refusals) {
        const bool isAsked = std::ranges::any_of(lines, [&](const KeepLine& line) {
            return line.finding->rule == finding.rule && line.finding->tooth == finding.tooth;
        });
        if (isAsked) continue;
        const std::string tooth = finding.tooth ? nameOf(*finding.tooth, notation) + ": " : "";
        lines.push_back({&finding, sheet.askLine(models::text(tooth + finding.found),
                                                 QObject::tr("kept as prescribed, because ..."))});
    }
    return lines;
}

}  // namespace

std::optional<AnswerGiven> WindowDialogs::answer(const std::vector<domain::Finding>& refusals,
                                                 domain::Notation notation) {
    Sheet sheet{QObject::tr("Record the dentist's answer"), QObject::tr("Record"), look_};
    sheet.say(
        QObject::tr("Findings are answered by a completed prescription; a question from the "
                    "bench may be answered in words."));
    auto* words = sheet.askWords(QObject::tr("What the dentist said"));
    auto* chosen = new QLabel{QObject::tr("no file")};
    auto* choose =
        new ActionButton{QObject::tr("Completed prescription"), Qt::CTRL | Qt::Key_O, look_};
    auto* row = new QHBoxLayout;
    row->addWidget(choose);
    row->addWidget(chosen, 1);
    sheet.questions().addLayout(row);
    if (!refusals.empty())
        sheet.say(
            QObject::tr("What the prescriber keeps as prescribed, signed on the question "
                        "sheet: write the reason given there."));
    const auto keepLines = askWhatIsKept(sheet, refusals, notation);
    std::optional<std::filesystem::path> file;
    const auto offer = [&] {
        const bool keeps = std::ranges::any_of(
            keepLines, [](const KeepLine& line) { return wordsIn(*line.words).has_value(); });
        sheet.letOnward(file || wordsIn(*words) || keeps);
    };
    QObject::connect(words, &QPlainTextEdit::textChanged, &sheet, offer);
    for (const KeepLine& line : keepLines)
        QObject::connect(line.words, &QLineEdit::textChanged, &sheet, offer);
    QObject::connect(choose, &ActionButton::clicked, &sheet, [&] {
        if (auto picked = prescriptionFile()) {
            file = std::move(picked);
            chosen->setText(models::text(file->filename().string()));
        }
        offer();
    });
    offer();
    words->setFocus();
    if (!sheet.ask()) return {};
    AnswerGiven given{wordsIn(*words), file};
    for (const KeepLine& line : keepLines)
        if (auto why = wordsIn(*line.words))
            given.keeps.push_back({line.finding->rule, line.finding->tooth, *std::move(why)});
    return given;
}

std::optional<std::string> WindowDialogs::reasonFor(const std::vector<domain::Finding>& cautions) {
    Sheet sheet{QObject::tr("Accept with cautions"), QObject::tr("Accept"), look_};
    for (const domain::Finding& caution : cautions)
        sheet.say(QObject::tr("%1: %2. %3")
                      .arg(models::text(caution.rule), models::text(caution.found),
                           models::text(caution.requirement)));
    sheet.say(QObject::tr("Your code and your reason are kept and printed with the order."));
    auto* reason = sheet.askWords(QObject::tr("Why these are taken"));
    sheet.letOnward(false);
    QObject::connect(reason, &QPlainTextEdit::textChanged, &sheet,
                     [&] { sheet.letOnward(wordsIn(*reason).has_value()); });
    reason->setFocus();
    if (!sheet.ask()) return {};
    return wordsIn(*reason);
}

std::optional<std::size_t> WindowDialogs::choose(const std::vector<models::ToothChoice>& choices,
                                                 QPoint where) {
    QMenu menu;
    QMenu* group = nullptr;
    std::string groupName;
    std::vector<QAction*> lines;
    for (const models::ToothChoice& choice : choices) {
        if (group == nullptr || groupName != choice.group) {
            groupName = choice.group;
            // The state is asked for most, so it stands open; the rest one step further in.
            group = groupName == "is" ? &menu : menu.addMenu(models::text(groupName));
        }
        QAction* line = group->addAction(models::text(choice.word));
        line->setCheckable(true);
        line->setChecked(choice.holds);
        lines.push_back(line);
    }
    const QAction* picked = menu.exec(where);
    const auto found = std::ranges::find(lines, picked);
    if (picked == nullptr || found == lines.end()) return {};
    return static_cast<std::size_t>(found - lines.begin());
}

bool WindowDialogs::throwAway() {
    Sheet sheet{QObject::tr("Throw the form away?"), QObject::tr("Throw away"), look_};
    sheet.say(QObject::tr("What was filled in has not been logged and would be lost."));
    return sheet.ask();
}

bool WindowDialogs::beginLaboratory(const std::filesystem::path& folder) const {
    Sheet sheet{QObject::tr("There are no records here"), QObject::tr("Begin a new laboratory"),
                look_};
    sheet.say(QObject::tr("No records of a laboratory lie in %1.")
                  .arg(models::text(std::filesystem::absolute(folder).string())));
    sheet.say(
        QObject::tr("If there were some, go back, and restore a backup or start the program with "
                    "--lab and their folder. New records are empty."));
    return sheet.ask();
}

std::optional<actions::Secret> WindowDialogs::passphrase(const std::filesystem::path& keyFile,
                                                         const std::string& before) const {
    Sheet sheet{QObject::tr("The identity key is locked"), QObject::tr("Unlock"), look_};
    if (!before.empty()) sheet.say(models::text(before));
    sheet.say(QObject::tr("Names in the records are read with the key in %1.")
                  .arg(models::text(keyFile.string())));
    QLineEdit* typed = sheet.askLine(QObject::tr("Its passphrase"), {});
    typed->setEchoMode(QLineEdit::Password);
    sheet.letOnwardWhile([=] { return !typed->text().isEmpty(); });
    if (!sheet.ask()) return {};
    return actions::Secret{typed->text().toStdString()};
}

void WindowDialogs::tellRecoveryCode(const std::string& code,
                                     const std::filesystem::path& keyFile) {
    Sheet sheet{QObject::tr("Write the recovery code down"), QObject::tr("I have it on paper"),
                look_};
    sheet.say(models::text(code));
    sheet.say(
        QObject::tr("It is told this once. It opens a backup on another machine. Keep it on "
                    "paper, away from this one."));
    sheet.say(QObject::tr("Names in the records are read with the identity key alone, which lies "
                          "in %1.")
                  .arg(models::text(keyFile.string())));
    (void)sheet.ask();
}

void WindowDialogs::show(const std::filesystem::path& paper) {
    QDesktopServices::openUrl(QUrl::fromLocalFile(models::text(paper.string())));
}

}  // namespace desktop
