/// The questions of the bench and of the stock, as windows.
#include <QCheckBox>
#include <QComboBox>
#include <QFileDialog>
#include <QPlainTextEdit>
#include <QVBoxLayout>

#include "apps/desktop/line_field.h"
#include "apps/desktop/models/words.h"
#include "apps/desktop/sheet.h"
#include "apps/desktop/window_dialogs.h"

namespace desktop {
namespace {

template <domain::CodedEnum E>
QStringList allSpoken() {
    QStringList words;
    for (const auto& code : domain::enumCodes<E>) words += models::spoken(code.value);
    return words;
}

QStringList spokenOf(const std::vector<domain::Stage>& stages) {
    QStringList words;
    for (const domain::Stage stage : stages) words += models::spoken(stage);
    return words;
}

/// What is chosen of an enum whose words all stand in the box. Something must be.
template <domain::CodedEnum E>
E chosenOf(const QComboBox& box) {
    return domain::enumCodes<E>[static_cast<std::size_t>(box.currentIndex())].value;
}

bool isChosen(const QComboBox* box) { return box->currentIndex() >= 0; }

template <typename Unit>
std::optional<domain::Quantity<Unit>> amountOf(const QLineEdit& line) {
    const std::string text = line.text().trimmed().replace(u',', u'.').toStdString();
    const auto amount = domain::parseQuantity<Unit>(text);
    return amount ? amount : domain::parseQuantity<Unit>(text + ' ' + std::string{Unit::kSign});
}

}  // namespace

std::optional<actions::Return> WindowDialogs::takeBack(const std::vector<domain::Stage>& backTo) {
    Sheet sheet{QObject::tr("Take back from the practice"), QObject::tr("Take back"), look_};
    sheet.say(QObject::tr("What comes back is disinfected before it is handled."));
    auto* agent =
        sheet.askLine(QObject::tr("Disinfected with"), QStringLiteral("hypochlorite 0.5 %"));
    auto* contact = sheet.askLine(QObject::tr("Time of contact"), QStringLiteral("10 min"));
    auto* verdict =
        sheet.askChoice(QObject::tr("The dentist says"), allSpoken<domain::ReturnVerdict>());
    auto* stage = sheet.askChoice(QObject::tr("Back to"), spokenOf(backTo));
    auto* findings = sheet.askWords(QObject::tr("What the dentist found"));
    const auto verdictIs = [=](domain::ReturnVerdict wanted) {
        return isChosen(verdict) && chosenOf<domain::ReturnVerdict>(*verdict) == wanted;
    };
    sheet.letOnwardWhile([=] {
        const bool back = verdictIs(domain::ReturnVerdict::GoBack);
        stage->setEnabled(back);
        return wordsIn(*agent) && amountOf<domain::MinuteUnit>(*contact) && isChosen(verdict) &&
               (!back || isChosen(stage)) &&
               (verdictIs(domain::ReturnVerdict::GoOn) || wordsIn(*findings));
    });
    agent->setFocus();
    if (!sheet.ask()) return {};
    actions::Return returned{
        .verdict = chosenOf<domain::ReturnVerdict>(*verdict),
        .findings = wordsIn(*findings),
        .disinfection = {*wordsIn(*agent), *amountOf<domain::MinuteUnit>(*contact)}};
    if (verdictIs(domain::ReturnVerdict::GoBack))
        returned.backTo = backTo[static_cast<std::size_t>(stage->currentIndex())];
    return returned;
}

std::optional<AgainGiven> WindowDialogs::again(const std::vector<domain::Stage>& from) {
    Sheet sheet{QObject::tr("Begin again at an earlier stage"), QObject::tr("Begin again"), look_};
    sheet.say(QObject::tr("What was recorded so far stays on record."));
    auto* stage = sheet.askChoice(QObject::tr("Again from"), spokenOf(from));
    auto* reason = sheet.askChoice(QObject::tr("Because of"), allSpoken<domain::RedoReason>());
    auto* note = sheet.askWords(QObject::tr("What was seen; needed where the reason is \"other\""));
    sheet.letOnwardWhile([=] {
        return isChosen(stage) && isChosen(reason) &&
               (chosenOf<domain::RedoReason>(*reason) != domain::RedoReason::Other ||
                wordsIn(*note));
    });
    stage->setFocus();
    if (!sheet.ask()) return {};
    return AgainGiven{chosenOf<domain::RedoReason>(*reason),
                      from[static_cast<std::size_t>(stage->currentIndex())], wordsIn(*note)};
}

std::optional<RemakeGiven> WindowDialogs::makeAgain() {
    Sheet sheet{QObject::tr("Make the order again"), QObject::tr("Make again"), look_};
    sheet.say(QObject::tr("A new order is logged with the same prescription; this one is closed."));
    auto* reason = sheet.askChoice(QObject::tr("Because"), allSpoken<domain::RemakeReason>());
    auto* note = sheet.askWords(QObject::tr("What was wrong with the first one"));
    sheet.letOnwardWhile([=] { return isChosen(reason); });
    reason->setFocus();
    if (!sheet.ask()) return {};
    return RemakeGiven{chosenOf<domain::RemakeReason>(*reason), wordsIn(*note)};
}

std::optional<actions::Declared> WindowDialogs::statement() {
    Sheet sheet{QObject::tr("Issue the statement"), QObject::tr("Issue"), look_};
    sheet.say(
        QObject::tr("It is issued once and printed the same ever after. A blank is never "
                    "taken for \"none\": write \"none\" where that is so."));
    auto* representative = sheet.askLine(QObject::tr("Authorised representative"),
                                         QObject::tr("none, or name; address"));
    auto* institution =
        sheet.askLine(QObject::tr("Health institution"), QObject::tr("none, or its name"));
    auto* substances = sheet.askLine(QObject::tr("Medicines, tissues or cells in it"),
                                     QObject::tr("none, or which"));
    auto* conforms = new QCheckBox{QObject::tr("It conforms to the general safety requirements")};
    conforms->setMinimumHeight(kTouch);
    sheet.questions().addWidget(conforms);
    QObject::connect(conforms, &QCheckBox::toggled, &sheet, &Sheet::changed);
    auto* exception = sheet.askLine(QObject::tr("Except for"), QObject::tr("leave empty if none"));
    auto* grounds = sheet.askLine(QObject::tr("On the grounds that"), QString{});
    sheet.letOnwardWhile([=] {
        return wordsIn(*representative) && wordsIn(*institution) && wordsIn(*substances) &&
               conforms->isChecked() &&
               wordsIn(*exception).has_value() == wordsIn(*grounds).has_value();
    });
    representative->setFocus();
    if (!sheet.ask()) return {};
    return actions::Declared{.representative = wordsIn(*representative),
                             .institution = wordsIn(*institution),
                             .substances = wordsIn(*substances),
                             .conforms = conforms->isChecked(),
                             .exception = wordsIn(*exception),
                             .grounds = wordsIn(*grounds)};
}

std::optional<std::filesystem::path> WindowDialogs::cureLogFile() {
    const QString file = QFileDialog::getOpenFileName(QApplication::activeWindow(),
                                                      QObject::tr("The log of the cure"), {},
                                                      QObject::tr("Logs (*.csv);;All files (*)"));
    if (file.isEmpty()) return {};
    return file.toStdString();
}

std::optional<LotGiven> WindowDialogs::lot() {
    Sheet sheet{QObject::tr("Receive a lot"), QObject::tr("Receive"), look_};
    sheet.say(
        QObject::tr("A metal for frameworks comes in with its certificate, on the command "
                    "line: framewright lots."));
    auto* code = sheet.askLine(QObject::tr("Our code of it"), QStringLiteral("RP-310"));
    auto* kind = sheet.askChoice(QObject::tr("What it is"), allSpoken<domain::LotKind>());
    auto* maker = sheet.askLine(QObject::tr("Maker"), {});
    auto* product = sheet.askLine(QObject::tr("Product"), {});
    auto* makersNumber = sheet.askLine(QObject::tr("The maker's lot number"), {});
    auto* expiry = sheet.askLine(QObject::tr("May be used until"), QStringLiteral("2027-06-30"));
    auto* amount = sheet.askLine(QObject::tr("Amount"), QObject::tr("1000 g; of teeth: 28"));
    const auto count = [=]() -> std::optional<std::int64_t> {
        if (isChosen(kind) && chosenOf<domain::LotKind>(*kind) == domain::LotKind::Teeth) {
            const int pieces = amount->text().trimmed().toInt();
            return pieces > 0 ? std::optional<std::int64_t>{pieces} : std::nullopt;
        }
        const auto mass = amountOf<domain::MilligramUnit>(*amount);
        return mass ? std::optional{mass->count()} : std::nullopt;
    };
    const auto day = [=] { return domain::Date::parse(expiry->text().trimmed().toStdString()); };
    sheet.letOnwardWhile([=] {
        return domain::ThingCode::parse(code->text().trimmed().toStdString()) && isChosen(kind) &&
               wordsIn(*maker) && wordsIn(*product) && wordsIn(*makersNumber) && count() &&
               (day() || !wordsIn(*expiry));
    });
    code->setFocus();
    if (!sheet.ask()) return {};
    return LotGiven{*domain::ThingCode::parse(code->text().trimmed().toStdString()),
                    {.kind = chosenOf<domain::LotKind>(*kind),
                     .maker = *wordsIn(*maker),
                     .product = *wordsIn(*product),
                     .makersNumber = *wordsIn(*makersNumber),
                     .udi = {},
                     .expiry = day(),
                     .certificate = {},
                     .amount = *count()}};
}

std::optional<std::string> WindowDialogs::why(const std::string& what) {
    Sheet sheet{models::text(what), QObject::tr("Go on"), look_};
    auto* words = sheet.askWords(QObject::tr("Why"));
    sheet.letOnwardWhile([=] { return wordsIn(*words).has_value(); });
    words->setFocus();
    if (!sheet.ask()) return {};
    return wordsIn(*words);
}

std::optional<actions::Secret> WindowDialogs::password(const std::string& what) {
    Sheet sheet{models::text(what), QObject::tr("Go on"), look_};
    sheet.say(QObject::tr("This asks for your password once more."));
    auto* field = sheet.askLine(QObject::tr("Password"), {});
    field->setEchoMode(QLineEdit::Password);
    QObject::connect(field, &QLineEdit::returnPressed, &sheet, [&] {
        if (!field->text().isEmpty()) sheet.accept();
    });
    sheet.letOnwardWhile([=] { return !field->text().isEmpty(); });
    field->setFocus();
    const bool given = sheet.ask();
    actions::Secret secret{field->text().toStdString()};
    field->clear();
    if (!given) return {};
    return secret;
}

}  // namespace desktop
