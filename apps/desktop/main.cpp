/// The window of a laboratory: the floor, intake, and one order at a time.
#include <QApplication>
#include <QBuffer>
#include <QCommandLineParser>
#include <QDir>
#include <QStandardPaths>
#include <iostream>

#include "apps/actions/system_clock.h"
#include "apps/desktop/shell.h"
#include "apps/desktop/window_dialogs.h"
#include "domain/base/plain_text.h"
#include "reports/placed_file.h"

namespace {

/// The same exit codes as on the command line: 2 unusable input, 3 storage trouble.
constexpr int kUnusable = 2;
constexpr int kStorage = 3;

constexpr QSize kFirstSize{1366, 768};

int trouble(int code, const std::string& sentence) {
    std::cerr << "framewright-desktop: " << domain::plainText(sentence) << '\n';
    return code;
}

struct Options {
    QCommandLineOption lab{QStringLiteral("lab"), QStringLiteral("Where the records lie."),
                           QStringLiteral("DIR")};
    QCommandLineOption as{
        QStringLiteral("as"),
        QStringLiteral("The code of the person who signs in; else $FRAMEWRIGHT_AS. "
                       "With the token of a session in $FRAMEWRIGHT_SESSION "
                       "they are signed in already."),
        QStringLiteral("CODE")};
    QCommandLineOption room{QStringLiteral("room"),
                            QStringLiteral("The first room: floor, intake, order or stock."),
                            QStringLiteral("ROOM")};
    QCommandLineOption order{QStringLiteral("order"), QStringLiteral("Open this order."),
                             QStringLiteral("NUMBER")};
    QCommandLineOption prescription{QStringLiteral("prescription"),
                                    QStringLiteral("Open this prescription file in intake."),
                                    QStringLiteral("FILE")};
    QCommandLineOption dark{QStringLiteral("dark"), QStringLiteral("Dark ground, light ink.")};
    QCommandLineOption screenshot{
        QStringLiteral("screenshot"),
        QStringLiteral("Save a picture of the first screen, 1366 x 768, and end."),
        QStringLiteral("FILE")};
};

/// Reads the command line; --help and --version end the program here.
void read(QCommandLineParser& parser, const Options& options, const QApplication& program) {
    parser.setApplicationDescription(QStringLiteral(
        "Prescriptions, orders and bench work of a laboratory for removable partial dentures."));
    parser.addHelpOption();
    parser.addVersionOption();
    parser.addOptions({options.lab, options.as, options.room, options.order, options.prescription,
                       options.dark, options.screenshot});
    parser.process(program);
}

std::filesystem::path labFolder(const QCommandLineParser& parser, const Options& options) {
    const QString folder =
        parser.isSet(options.lab)
            ? parser.value(options.lab)
            : QDir{QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation)}.filePath(
                  QStringLiteral("framewright"));
    return folder.toStdString();
}

/// Goes where the options say; what is wrong with them, or nothing.
std::optional<std::string> goTo(desktop::Shell& shell, const QCommandLineParser& parser,
                                const Options& options) {
    const auto room = domain::parseCode<desktop::RoomName>(
        parser.isSet(options.room) ? parser.value(options.room).toStdString() : "floor");
    if (!room)
        return "--room " + parser.value(options.room).toStdString() + ": expected one of " +
               domain::allWords<desktop::RoomName>();
    shell.enter(*room);
    if (parser.isSet(options.prescription)) {
        shell.enter(desktop::RoomName::Intake);
        shell.intake().open(parser.value(options.prescription).toStdString());
    }
    if (!parser.isSet(options.order)) return {};
    const std::string digits = parser.value(options.order).toStdString();
    const auto number = domain::OrderNumber::parse(digits);
    if (!number) return "--order " + digits + ": expected the eight digits of an order number";
    shell.openOrder(*number);
    return {};
}

/// The session whose token this process was given, if it is one of this person and still open.
std::optional<actions::Session> sessionOf(const actions::Laboratory& laboratory,
                                          const domain::PersonCode& person,
                                          const std::string& station) {
    actions::Session session{person, qgetenv("FRAMEWRIGHT_SESSION").toStdString(), station};
    if (session.token.empty() || !actions::use(laboratory, desktop::asWho(session))) return {};
    return session;
}

/// The records in a folder; new ones only for a person who says so. The passphrase of a locked
/// identity key is asked for until it is right or the person goes back.
domain::Result<actions::Laboratory> openRecords(const std::filesystem::path& folder,
                                                const domain::Clock& clock,
                                                const desktop::WindowDialogs* dialogs) {
    storage::KeyAccess keys;
    std::string wrong;
    bool goneBack = false;
    if (dialogs != nullptr)
        keys.passphrase =
            [&](const std::filesystem::path& file) -> domain::Result<actions::Secret> {
            if (auto typed = dialogs->passphrase(file, wrong)) return *std::move(typed);
            goneBack = true;
            return domain::Error{domain::ErrorCode::Unusable,
                                 "the passphrase of the identity key was not given"};
        };
    auto laboratory = actions::Laboratory::openExisting(folder, clock, keys);
    while (!laboratory && laboratory.error().code == domain::ErrorCode::Refused && !goneBack) {
        wrong = laboratory.error().message;
        laboratory = actions::Laboratory::openExisting(folder, clock, keys);
    }
    if (laboratory || laboratory.error().code != domain::ErrorCode::Unavailable ||
        actions::Laboratory::isIn(folder) || dialogs == nullptr ||
        !dialogs->beginLaboratory(folder))
        return laboratory;
    return actions::Laboratory::open(folder, clock);
}

/// In a new file, or in the place of an earlier picture.
int savePicture(desktop::Shell& shell, const QString& file, const std::filesystem::path& records) {
    shell.resize(kFirstSize);
    shell.show();
    QApplication::processEvents();
    constexpr std::string_view kPicture = "\x89PNG\r\n\x1a\n";
    QBuffer picture;
    picture.open(QIODevice::WriteOnly);
    if (!shell.grab().toImage().save(&picture, "PNG"))
        return trouble(kUnusable, "the picture cannot be made");
    const auto placed = reports::placeFile(
        file.toStdString(), {picture.data().constData(), static_cast<std::size_t>(picture.size())},
        {.keepOut = records,
         .butFor = {},
         .mayReplace = [=](std::string_view there) { return there.starts_with(kPicture); },
         .replaceable = "an earlier picture (PNG)"});
    if (placed) return 0;
    return trouble(kUnusable, "cannot write a picture to " + file.toStdString() + ": " +
                                  placed.error().message);
}

}  // namespace

int main(int argc, char** argv) {
    QApplication program{argc, argv};
    QApplication::setApplicationName(QStringLiteral("framewright-desktop"));
    QApplication::setApplicationVersion(QStringLiteral(FRAMEWRIGHT_VERSION));
    QCommandLineParser parser;
    const Options options;
    read(parser, options, program);

    std::optional<domain::PersonCode> person;
    const std::string code = parser.isSet(options.as) ? parser.value(options.as).toStdString()
                                                      : qgetenv("FRAMEWRIGHT_AS").toStdString();
    if (!code.empty()) {
        person = domain::PersonCode::parse(code);
        if (!person)
            return trouble(kUnusable, "\"" + code +
                                          "\" is no code of a person; expected a letter, "
                                          "then letters, digits, - _ or .");
    }
    const std::string station = qgetenv("FRAMEWRIGHT_STATION").toStdString();
    if (!station.empty() && !domain::ThingCode::parse(station))
        return trouble(kUnusable, "$FRAMEWRIGHT_STATION \"" + station +
                                      "\" is no station's code; expected " +
                                      std::string{domain::kShortCodeForm});
    const actions::SystemClock clock;
    const desktop::Look look{parser.isSet(options.dark) ? domain::Light::Dark
                                                        : domain::Light::Light};
    desktop::wear(program, look);
    desktop::WindowDialogs dialogs{look};
    const bool showsPicture = parser.isSet(options.screenshot);
    const auto laboratory =
        openRecords(labFolder(parser, options), clock, showsPicture ? nullptr : &dialogs);
    if (!laboratory) return trouble(kStorage, laboratory.error().message);

    desktop::Desk desk{*laboratory, dialogs, look,
                       person ? sessionOf(*laboratory, *person, station) : std::nullopt};
    desktop::Shell shell{desk};
    if (person && shell.isLocked()) shell.signIn().expect(*person);
    if (const auto wrong = goTo(shell, parser, options)) return trouble(kUnusable, *wrong);
    if (showsPicture)
        return savePicture(shell, parser.value(options.screenshot), laboratory->folder());
    shell.resize(kFirstSize);
    shell.show();
    return QApplication::exec();
}
