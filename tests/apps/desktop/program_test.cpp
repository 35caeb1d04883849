/// The program itself: its options, its exit codes, its messages.
#include <gmock/gmock.h>

#include <QFile>
#include <QImage>
#include <QProcess>

#include "apps/actions/system_clock.h"
#include "tests/apps/desktop/temporary_laboratory.h"

namespace {

using desktop_tests::TemporaryLaboratory;
using testing::HasSubstr;
using testing::Not;

struct Ended {
    int exit{};
    std::string out;
    std::string err;
};

/// `token`: of a session of MK; empty: nobody is signed in.
Ended run(const QStringList& options, const std::string& token = {}, const QString& station = {}) {
    QProcess program;
    auto environment = QProcessEnvironment::systemEnvironment();
    environment.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
    const QTemporaryDir settings;
    environment.insert(QStringLiteral("XDG_CONFIG_HOME"), settings.path());
    environment.insert(QStringLiteral("FRAMEWRIGHT_AS"),
                       token.empty() ? QString{} : QStringLiteral("MK"));
    environment.insert(QStringLiteral("FRAMEWRIGHT_SESSION"), QString::fromStdString(token));
    environment.insert(QStringLiteral("FRAMEWRIGHT_STATION"), station);
    program.setProcessEnvironment(environment);
    program.start(QStringLiteral(FRAMEWRIGHT_DESKTOP), options);
    constexpr int kPatience = 60'000;  // ms
    EXPECT_TRUE(program.waitForFinished(kPatience));
    EXPECT_EQ(program.exitStatus(), QProcess::NormalExit);
    return {program.exitCode(), program.readAllStandardOutput().toStdString(),
            program.readAllStandardError().toStdString()};
}

class Program : public testing::Test {
protected:
    QString inFolder(const char* name) const {
        return QString::fromStdString((folder_.folder() / name).string());
    }
    QStringList withRecords(const QStringList& options) const {
        return QStringList{QStringLiteral("--lab"), inFolder("lab")} + options;
    }

    /// A session of MK in the records, by the clock of the machine that the program goes by.
    std::string signedIn() const {
        const actions::SystemClock clock;
        const auto laboratory =
            actions::Laboratory::open(folder_.folder() / "lab", clock, storage::HashCost::Light);
        EXPECT_TRUE(laboratory) << (laboratory ? "" : laboratory.error().message);
        return support::signedIn(*laboratory, "MK", domain::Role::Manager).token;
    }

    TemporaryLaboratory folder_;
};

TEST_F(Program, TellsItsOptionsAndItsVersion) {
    const Ended help = run({QStringLiteral("--help")});
    EXPECT_EQ(help.exit, 0);
    for (const char* option : {"--lab", "--as", "--room", "--order", "--prescription", "--dark",
                               "--screenshot", "--help", "--version"})
        EXPECT_THAT(help.out, HasSubstr(option));
    const Ended version = run({QStringLiteral("--version")});
    EXPECT_EQ(version.exit, 0);
    EXPECT_THAT(version.out, HasSubstr("framewright-desktop 0."));
}

TEST_F(Program, ShowsNothingOfTheRoomsBeforeSomebodySignsIn) {
    signedIn();
    std::vector<QImage> pictures;
    for (const char* room : {"floor", "intake"}) {
        const QString file = inFolder(room) + QStringLiteral(".png");
        EXPECT_EQ(run(withRecords({QStringLiteral("--room"), QString::fromLatin1(room),
                                   QStringLiteral("--screenshot"), file}))
                      .exit,
                  0);
        pictures.emplace_back(file);
    }
    EXPECT_EQ(pictures[0], pictures[1]);
}

TEST_F(Program, SavesAPictureOfEveryFirstScreen) {
    const std::string token = signedIn();
    for (const char* room : {"floor", "intake", "order", "stock"}) {
        const QString file = inFolder(room) + QStringLiteral(".png");
        const Ended ended = run(withRecords({QStringLiteral("--room"), QString::fromLatin1(room),
                                             QStringLiteral("--screenshot"), file}),
                                token);
        EXPECT_EQ(ended.exit, 0) << ended.err;
        EXPECT_EQ(QImage{file}.size(), (QSize{1366, 768})) << room;
    }
}

TEST_F(Program, OpensAPrescriptionFileInIntake) {
    const auto file = folder_.write(support::upperClassIV(), "case.json");
    const std::string token = signedIn();
    const QString picture = inFolder("a.png");
    const QString empty = inFolder("b.png");
    EXPECT_EQ(run(withRecords({QStringLiteral("--prescription"), QString::fromStdString(file),
                               QStringLiteral("--screenshot"), picture}),
                  token)
                  .exit,
              0);
    EXPECT_EQ(run(withRecords({QStringLiteral("--room"), QStringLiteral("intake"),
                               QStringLiteral("--screenshot"), empty}),
                  token)
                  .exit,
              0);
    EXPECT_NE(QImage{picture}, QImage{empty});
}

TEST_F(Program, SaysSoWhereAPictureCannotBeWritten) {
    signedIn();
    const Ended ended =
        run(withRecords({QStringLiteral("--screenshot"), inFolder("nowhere/at-all.png")}));
    EXPECT_NE(ended.exit, 0);
    EXPECT_THAT(ended.err, HasSubstr("cannot write a picture to"));
}

TEST_F(Program, EndsWithThreeWhereTheRecordsCannotBeOpened) {
    QFile file{inFolder("a-file")};
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.close();
    const Ended ended = run({QStringLiteral("--lab"), inFolder("a-file"),
                             QStringLiteral("--screenshot"), inFolder("x.png")});
    EXPECT_EQ(ended.exit, 3) << ended.err;
    EXPECT_THAT(ended.err, HasSubstr("a-file"));
}

TEST_F(Program, MakesNoRecordsByBeingStarted) {
    const Ended ended = run(withRecords({QStringLiteral("--screenshot"), inFolder("x.png")}));
    EXPECT_EQ(ended.exit, 3);
    EXPECT_THAT(ended.err, testing::AllOf(HasSubstr("there are no records"), HasSubstr("/lab")));
    EXPECT_FALSE(QFile::exists(inFolder("lab")));
    EXPECT_FALSE(QFile::exists(inFolder("x.png")));
}

TEST_F(Program, AsksBeforeItBeginsANewLaboratory) {
    QProcess program;
    auto environment = QProcessEnvironment::systemEnvironment();
    environment.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
    program.setProcessEnvironment(environment);
    program.start(QStringLiteral(FRAMEWRIGHT_DESKTOP), withRecords({}));
    ASSERT_TRUE(program.waitForStarted());
    EXPECT_FALSE(program.waitForFinished(2'000)) << "it ended without an answer";
    program.kill();
    program.waitForFinished();
    EXPECT_FALSE(QFile::exists(inFolder("lab")));
}

TEST_F(Program, PutsAPictureInThePlaceOfAPictureOnly) {
    signedIn();
    const auto picture = [&](const QString& file) {
        return run(withRecords({QStringLiteral("--screenshot"), file}));
    };
    EXPECT_EQ(picture(inFolder("x.png")).exit, 0);
    EXPECT_EQ(picture(inFolder("x.png")).exit, 0);
    for (const char* name : {"lab/records.db", "lab/x.png", "records.db"}) {
        const Ended ended = picture(inFolder(name));
        EXPECT_EQ(ended.exit, 2) << name;
        EXPECT_THAT(ended.err, HasSubstr(name));
    }
    EXPECT_TRUE(actions::Laboratory::openExisting(folder_.folder() / "lab", folder_.clock));
    EXPECT_TRUE(actions::Laboratory::openExisting(folder_.folder(), folder_.clock));
}

TEST_F(Program, RefusesAStationThatIsNoCodeInOneLine) {
    const Ended ended =
        run(withRecords({}), signedIn(), QString::fromUtf8("wax\x1B[2J\nFORGED\u202E"));
    EXPECT_EQ(ended.exit, 2);
    EXPECT_THAT(ended.err, Not(HasSubstr("\nFORGED")));
    EXPECT_THAT(ended.err, HasSubstr("$FRAMEWRIGHT_STATION \"wax[U+001B][2J[U+000A]FORGED[U+202E]"
                                     "\" is no station's code; expected a letter"));
}

TEST_F(Program, RefusesAnOptionItCannotUseAndSaysWhatWasExpected) {
    signedIn();
    const Ended room = run(withRecords({QStringLiteral("--room"), QStringLiteral("kitchen")}));
    EXPECT_EQ(room.exit, 2);
    EXPECT_THAT(room.err, HasSubstr("floor, intake, order, stock"));
    const Ended order = run(withRecords({QStringLiteral("--order"), QStringLiteral("12345")}));
    EXPECT_EQ(order.exit, 2);
    EXPECT_THAT(order.err, HasSubstr("eight digits"));
    const Ended who = run(withRecords({QStringLiteral("--as"), QStringLiteral("7")}));
    EXPECT_EQ(who.exit, 2);
    EXPECT_THAT(who.err, HasSubstr("no code of a person"));
}

}  // namespace
