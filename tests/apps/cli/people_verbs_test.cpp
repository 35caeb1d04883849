/// Set-up, signing in, badges and stations through the program itself, as people use them.
#include <fcntl.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/ioctl.h>
#include <sys/mount.h>
#include <sys/wait.h>
#include <unistd.h>
#include <utmp.h>

#include <QProcess>
#include <QTemporaryDir>
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::Not;
using testing::SizeIs;

constexpr const char* kPassword = "a lamp over every bench";
constexpr const char* kBadge = "BADGE-5521907";

struct Ran {
    int exit{};
    std::string out{};
    std::string err{};
    nlohmann::json json() const { return nlohmann::json::parse(out); }
};

class PeopleVerbs : public testing::Test {
protected:
    /// `lines`: what is typed, a line each.
    Ran run(const QStringList& words, const QStringList& lines = {},
            const QStringList& environment = {}) {
        QProcess process;
        process.setEnvironment(QProcess::systemEnvironment()
                               << "XDG_RUNTIME_DIR=" + runtime_.path() << environment);
        process.start(FRAMEWRIGHT, words + QStringList{"--lab", folder_.filePath("lab")});
        for (const QString& line : lines) process.write((line + '\n').toUtf8());
        process.closeWriteChannel();
        EXPECT_TRUE(process.waitForFinished(60'000));
        EXPECT_EQ(process.exitStatus(), QProcess::NormalExit);
        return {process.exitCode(), process.readAllStandardOutput().toStdString(),
                process.readAllStandardError().toStdString()};
    }
    Ran as(const char* code, const QStringList& words, const QStringList& lines = {}) {
        return run(words + QStringList{"--as", code}, lines);
    }
    void setUpLaboratory() {
        ASSERT_EQ(run({"set-up", "MK"}, {kPassword}).exit, 0);
        ASSERT_EQ(run({"sign-in", "MK"}, {kPassword}).exit, 0);
    }
    void enterTechnician() {
        const Ran entered =
            as("MK", {"people", "JT", "--role", "technician", "--skills", "waxing,casting"},
               {kPassword});
        ASSERT_EQ(entered.exit, 0) << entered.err;
        const Ran reset = as("MK", {"password", "JT", "--reset", "--json"}, {kPassword});
        ASSERT_EQ(reset.exit, 0) << reset.err;
        const auto once = QString::fromStdString(reset.json()["once"]);
        EXPECT_THAT(run({"sign-in", "JT"}, {once}).err, HasSubstr("choose your own first"));
        ASSERT_EQ(run({"password", "JT"}, {once, kPassword}).exit, 0);
    }
    /// The files of the terminals somebody signed in at.
    std::vector<std::filesystem::path> sessions() const {
        std::vector<std::filesystem::path> files;
        std::error_code none;
        for (const auto& entry : std::filesystem::directory_iterator{
                 std::filesystem::path{runtime_.path().toStdString()} / "framewright", none})
            files.push_back(entry.path());
        return files;
    }
    std::string tokenHere() const {
        std::ifstream file{sessions().front()};
        std::string code;
        std::string token;
        file >> code >> token;
        return token;
    }

    QTemporaryDir folder_;
    QTemporaryDir runtime_;  ///< 0700, as the system makes it
};

TEST_F(PeopleVerbs, SetUpALaboratoryOnceAndSignIn) {
    EXPECT_THAT(run({"people"}).err, HasSubstr("framewright set-up"));
    EXPECT_EQ(run({"sign-in", "MK"}, {kPassword}).exit, 3);
    EXPECT_EQ(run({"set-up", "MK"}, {"too short"}).exit, 2);
    EXPECT_THAT(run({"people"}).err, HasSubstr("framewright set-up"));
    EXPECT_EQ(run({"sign-in", "MK"}, {kPassword}).exit, 1);
    EXPECT_EQ(run({"set-up", "MK"}).exit, 2);
    const Ran made =
        run({"set-up", "MK", "--skills", "surveying,inspection", "--json"}, {kPassword});
    EXPECT_EQ(made.exit, 0) << made.err;
    EXPECT_EQ(made.json()["person"], "MK");
    const Ran again = run({"set-up", "AB"}, {kPassword});
    EXPECT_EQ(again.exit, 1);
    EXPECT_THAT(again.err, HasSubstr("set up already"));
    EXPECT_EQ(run({"sign-in", "MK"}, {"not the right one"}).exit, 1);
    EXPECT_EQ(run({"sign-in", "MK"}, {kPassword}).exit, 0);
    EXPECT_EQ(run({"sign-in"}, {kPassword}).exit, 2);
    EXPECT_EQ(run({"verify"}).exit, 0);
}

TEST_F(PeopleVerbs, KeepTheSessionWhereOnlyItsOwnerReadsIt) {
    setUpLaboratory();
    ASSERT_THAT(sessions(), SizeIs(1));
    const auto file = sessions().front();
    EXPECT_EQ(std::filesystem::status(file).permissions(),
              std::filesystem::perms::owner_read | std::filesystem::perms::owner_write);
    EXPECT_EQ(std::filesystem::status(file.parent_path()).permissions(),
              std::filesystem::perms::owner_all);
    EXPECT_FALSE(std::filesystem::exists(folder_.filePath("lab/sessions").toStdString()));
    EXPECT_EQ(as("MK", {"sign-out"}).exit, 0);
    EXPECT_THAT(sessions(), SizeIs(0));
    const Ran refused = as("MK", {"people", "JT", "--role", "viewer"}, {kPassword});
    EXPECT_EQ(refused.exit, 1);
    EXPECT_THAT(refused.err, HasSubstr("MK is not signed in: framewright sign-in MK"));
}

TEST_F(PeopleVerbs, TakeNoSessionOthersCouldHaveWritten) {
    setUpLaboratory();
    const auto file = sessions().front();
    std::filesystem::permissions(file, std::filesystem::perms::group_read,
                                 std::filesystem::perm_options::add);
    EXPECT_EQ(run({"people"}).exit, 2) << "nobody is signed in here";
    std::filesystem::permissions(file, std::filesystem::perms::group_read,
                                 std::filesystem::perm_options::remove);
    EXPECT_EQ(run({"people"}).exit, 0);
    const auto elsewhere = folder_.filePath("copied").toStdString();
    std::filesystem::rename(file, elsewhere);
    std::filesystem::create_symlink(elsewhere, file);
    EXPECT_EQ(run({"people"}).exit, 2) << "no link is followed";
}

// Two people at one terminal: the second signs the first one out.
TEST_F(PeopleVerbs, KeepOneSessionAtATerminal) {
    setUpLaboratory();
    enterTechnician();
    const QString former = QString::fromStdString(tokenHere());
    ASSERT_EQ(run({"sign-in", "JT"}, {kPassword}).exit, 0);
    EXPECT_THAT(sessions(), SizeIs(1));
    EXPECT_EQ(run({"people"}).exit, 0) << "as JT, who is signed in here";
    EXPECT_THAT(as("MK", {"people"}).err, HasSubstr("MK is not signed in"));
    EXPECT_THAT(run({"people"}, {}, {"FRAMEWRIGHT_AS=MK", "FRAMEWRIGHT_SESSION=" + former}).err,
                HasSubstr("the session of MK ended"));
    EXPECT_EQ(run({"sign-in", "MK"}, {"not the right one"}).exit, 1);
    EXPECT_EQ(run({"people"}).exit, 0) << "a failure signs nobody out";
}

TEST_F(PeopleVerbs, AreSignedInAtTheirTerminalAndAtNoOther) {
    setUpLaboratory();
    QProcess other;
    other.setEnvironment(QProcess::systemEnvironment() << "XDG_RUNTIME_DIR=" + runtime_.path());
    other.start("setsid", {"--wait", FRAMEWRIGHT, "people", "--lab", folder_.filePath("lab")});
    ASSERT_TRUE(other.waitForFinished());
    EXPECT_EQ(other.exitCode(), 2);
    EXPECT_THAT(other.readAllStandardError().toStdString(),
                HasSubstr("nobody is signed in at this terminal"));
}

TEST_F(PeopleVerbs, TakeTheSessionFromTheEnvironmentToo) {
    setUpLaboratory();
    const QString token = QString::fromStdString(tokenHere());
    ASSERT_TRUE(std::filesystem::remove(sessions().front()));
    const QStringList words{"people", "JT", "--role", "viewer"};
    EXPECT_EQ(run(words, {kPassword}, {"FRAMEWRIGHT_AS=MK", "FRAMEWRIGHT_SESSION=" + token}).exit,
              0);
    EXPECT_EQ(run(words, {kPassword}, {"FRAMEWRIGHT_AS=MK", "FRAMEWRIGHT_SESSION=no"}).exit, 1);
    EXPECT_EQ(run(words, {kPassword}, {"FRAMEWRIGHT_AS=MK"}).exit, 1);
    EXPECT_EQ(run(words, {kPassword}).exit, 2);
}

TEST_F(PeopleVerbs, AskForThePasswordOnceMoreWhereTheyDecideWhoMayDoWhat) {
    setUpLaboratory();
    const QStringList words{"people", "JT", "--role", "viewer"};
    EXPECT_EQ(as("MK", words).exit, 2) << "a line with it was expected";
    EXPECT_EQ(as("MK", words, {"not the right one"}).exit, 1);
    EXPECT_EQ(as("MK", words, {kPassword}).exit, 0);
}

/// A call of each verb that shows or changes the records, with words it could take.
const QStringList kCallsOfTheRecords[] = {
    {"log", "case.json"},
    {"accept", "26000017"},
    {"case", "26000017", "26000025"},
    {"scan", "26000017"},
    {"start", "26000017"},
    {"record", "26000017", "--all-ticked"},
    {"gate", "26000017"},
    {"done", "26000017"},
    {"return", "26000017", "go-on", "--disinfected", "alcohol; 5 min"},
    {"redo", "26000017", "wax-up", "porosity"},
    {"remake", "26000017", "does-not-fit"},
    {"send-out", "26000017", "north-foundry"},
    {"take-back", "26000017", "passed"},
    {"statement", "26000017"},
    {"withdraw", "26000017"},
    {"flag", "26000017", "other"},
    {"answer", "26000017", "--words", "yes"},
    {"order", "26000017"},
    {"floor"},
    {"print", "26000017", "ticket"},
    {"lots"},
    {"trace", "lot", "AL-204"},
    {"recall", "AL-204", "--reason", "drill", "--drill"},
    {"equipment"},
    {"sites"},
    {"routes"},
    {"retention"},
    {"purge", "26000017"},
    {"clock"},
    {"letterhead"},
    {"people"},
    {"badge", "JT", "--revoke"},
    {"stations"}};
/// Those that show nothing of the records to whoever is not signed in, or ask for a session of
/// their own accord.
constexpr const char* kOtherVerbs[] = {"classify", "check",    "describe", "verify", "checkpoint",
                                       "backup",   "restore",  "drill",    "set-up", "sign-in",
                                       "sign-out", "password", "rules",    "limits", "shades",
                                       "bench",    "demo",     "key",      "recover"};

TEST_F(PeopleVerbs, ShowNothingOfTheRecordsToWhoeverIsNotSignedIn) {
    setUpLaboratory();
    ASSERT_EQ(as("MK", {"sign-out"}).exit, 0);
    for (const QStringList& words : kCallsOfTheRecords) {
        const std::string verb = words.join(' ').toStdString();
        const Ran refused = run(words, {kPassword}, {"FRAMEWRIGHT_AS=MK"});
        EXPECT_EQ(refused.exit, 1) << verb << refused.err;
        EXPECT_THAT(refused.err, HasSubstr("MK is not signed in")) << verb;
        EXPECT_EQ(refused.out, "") << verb;
    }
    // A verb that is new belongs to one of the two.
    std::istringstream help{run({"--help"}).out};
    for (std::string line; std::getline(help, line);) {
        if (!line.starts_with("  ")) continue;
        const std::string verb = line.substr(2, line.find(' ', 2) - 2);
        const bool isTried = std::ranges::any_of(
            kCallsOfTheRecords, [&](const auto& each) { return each[0].toStdString() == verb; });
        EXPECT_TRUE(isTried || std::ranges::count(kOtherVerbs, verb) == 1) << verb;
    }
}

TEST_F(PeopleVerbs, EnterPeopleAndLetThemGo) {
    setUpLaboratory();
    enterTechnician();
    EXPECT_EQ(as("MK", {"people", "JT", "--skills", "dancing"}, {kPassword}).exit, 2);
    EXPECT_EQ(as("MK", {"people", "XX", "--skills", "waxing"}, {kPassword}).exit, 2) << "no role";
    EXPECT_EQ(as("MK", {"people", "--role", "viewer"}).exit, 2) << "nobody named";
    EXPECT_EQ(as("MK", {"people", "JT", "--left", "--role", "viewer"}).exit, 2);
    ASSERT_EQ(as("MK", {"people", "JT", "--role", "inspector"}, {kPassword}).exit, 0);
    const auto shown = run({"people", "JT", "--json"}).json()["people"];
    ASSERT_THAT(shown, SizeIs(1));
    EXPECT_EQ(shown[0]["role"], "inspector");
    EXPECT_EQ(shown[0]["skills"], nlohmann::json({"waxing", "casting"})) << "skills were not kept";
    EXPECT_EQ(run({"sign-in", "JT"}, {kPassword}).exit, 0);
    EXPECT_THAT(as("JT", {"people", "MK", "--left"}, {kPassword}).err,
                HasSubstr("is for: manager"));
    EXPECT_EQ(run({"sign-in", "MK"}, {kPassword}).exit, 0);
    EXPECT_THAT(as("MK", {"people", "MK", "--left"}, {kPassword}).err,
                HasSubstr("nobody else manages"));
    EXPECT_EQ(as("MK", {"people", "JT", "--left"}, {kPassword}).exit, 0);
    EXPECT_EQ(run({"sign-in", "JT"}, {kPassword}).exit, 1);
    EXPECT_THAT(run({"people"}).out, AllOf(HasSubstr("manager"), HasSubstr("left")));
    EXPECT_EQ(run({"people", "XX"}).exit, 2);
}

TEST_F(PeopleVerbs, SignInByBadgeAtAStation) {
    setUpLaboratory();
    enterTechnician();
    ASSERT_EQ(as("MK", {"badge", "JT"}, {kBadge, "918273"}).exit, 0);
    ASSERT_EQ(as("MK", {"stations", "wax-1", "wax-bench"}).exit, 0);
    EXPECT_EQ(as("MK", {"stations", "wax-1"}).exit, 2);
    EXPECT_EQ(as("MK", {"stations", "wax-1", "ballroom"}).exit, 2);
    EXPECT_EQ(run({"sign-in", "--badge"}, {kBadge, "918273"}).exit, 1) << "at no station";
    EXPECT_THAT(run({"sign-in", "--badge", "--station", "by the door"}, {kBadge, "918273"}).err,
                HasSubstr("\"by the door\" is no station's code; expected a letter"));
    const Ran in =
        run({"sign-in", "--badge", "--json"}, {kBadge, "918273"}, {"FRAMEWRIGHT_STATION=wax-1"});
    ASSERT_EQ(in.exit, 0) << in.err;
    EXPECT_EQ(in.json()["person"], "JT");
    EXPECT_EQ(in.json()["station"], "wax-1");
    ASSERT_EQ(run({"sign-in", "MK"}, {kPassword}).exit, 0) << "JT is signed out here";
    EXPECT_EQ(run({"sign-in", "--badge", "--station", "wax-1"}, {kBadge, "918274"}).exit, 1);
    ASSERT_EQ(as("MK", {"badge", "JT", "--revoke"}).exit, 0);
    EXPECT_EQ(run({"sign-in", "--badge", "--station", "wax-1"}, {kBadge, "918273"}).exit, 1);
    EXPECT_EQ(run({"stations", "--json"}).json()["stations"][0]["kind"], "wax-bench");
}

TEST_F(PeopleVerbs, SetHowLongASessionMayRest) {
    setUpLaboratory();
    EXPECT_EQ(run({"stations", "--json"}).json()["idle-minutes"], 15);
    EXPECT_EQ(as("MK", {"stations", "--idle-minutes", "5"}).exit, 0);
    EXPECT_THAT(run({"stations"}).out, HasSubstr("after 5 minutes"));
    for (const char* wrong : {"0", "never", "99999999999"})
        EXPECT_EQ(as("MK", {"stations", "--idle-minutes", wrong}).exit, 2) << wrong;
}

/// The master of a new pseudo-terminal: the system's, or, on a system without /dev/pts, that of a
/// devpts nobody else sees, which takes root. -1 if neither can be had.
int newTerminal() {
    constexpr int kHow = O_RDWR | O_NOCTTY | O_CLOEXEC;
    if (const int ours = open("/dev/ptmx", kHow); ours >= 0) return ours;
    const int devpts = fsopen("devpts", 0);
    if (devpts < 0) return -1;
    fsconfig(devpts, FSCONFIG_SET_STRING, "ptmxmode", "0600", 0);
    fsconfig(devpts, FSCONFIG_CMD_CREATE, nullptr, nullptr, 0);
    const int mounted = fsmount(devpts, 0, 0);
    const int ours = openat(mounted, "ptmx", kHow);
    close(mounted);
    close(devpts);
    return ours;
}

/// What a terminal shows when the program's questions are answered, and how the program ended.
std::pair<std::string, int> atATerminal(const std::vector<std::string>& words,
                                        std::vector<std::string> answers) {
    const int terminal = newTerminal();
    const int unlocked = 0;
    if (terminal < 0 || ioctl(terminal, TIOCSPTLCK, &unlocked) != 0)
        return {"no terminal can be made here: neither /dev/pts nor root", -1};
    const int programs = ioctl(terminal, TIOCGPTPEER, O_RDWR | O_NOCTTY);
    const pid_t child = fork();
    if (child == 0) {
        if (login_tty(programs) != 0) _exit(126);
        std::vector<char*> arguments;
        for (const std::string& word : words)
            arguments.push_back(const_cast<char*>(word.c_str()));  // NOLINT
        arguments.push_back(nullptr);
        execv(FRAMEWRIGHT, arguments.data());
        _exit(127);
    }
    close(programs);
    std::string shown;
    char letter{};
    while (read(terminal, &letter, 1) == 1) {
        shown += letter;
        if (answers.empty() || !shown.ends_with(": ")) continue;
        const std::string line = answers.front() + '\n';
        answers.erase(answers.begin());
        if (write(terminal, line.data(), line.size()) != static_cast<ssize_t>(line.size())) break;
    }
    int status = 0;
    waitpid(child, &status, 0);
    close(terminal);
    return {shown, WEXITSTATUS(status)};
}

TEST_F(PeopleVerbs, NeverShowWhatIsTypedAtATerminal) {
    const auto [shown, exit] =
        atATerminal({"framewright", "set-up", "MK", "--lab", folder_.filePath("lab").toStdString()},
                    {kPassword, kPassword});
    EXPECT_EQ(exit, 0) << shown;
    EXPECT_THAT(shown, AllOf(HasSubstr("new password: "), HasSubstr("the same again: "),
                             Not(HasSubstr("lamp"))));
    EXPECT_EQ(run({"sign-in", "MK"}, {kPassword}).exit, 0);
}

TEST_F(PeopleVerbs, AskTwiceAtATerminalForWhatIsNew) {
    const auto [shown, exit] =
        atATerminal({"framewright", "set-up", "MK", "--lab", folder_.filePath("lab").toStdString()},
                    {kPassword, "a slip over every bench"});
    EXPECT_EQ(exit, 2) << shown;
    EXPECT_THAT(shown, HasSubstr("the two were not the same"));
    EXPECT_THAT(run({"people"}).err, HasSubstr("framewright set-up"));
}

TEST_F(PeopleVerbs, TakeNoSecretAsAnArgument) {
    for (const QStringList& words : {QStringList{"set-up", "MK", kPassword},
                                     {"sign-in", "MK", kPassword},
                                     {"password", "MK", kPassword},
                                     {"badge", "MK", kBadge}})
        EXPECT_EQ(run(words).exit, 2) << words.join(' ').toStdString();
}

}  // namespace
