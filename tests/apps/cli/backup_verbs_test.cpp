// Backup, return and drill through the program itself.
#include <gmock/gmock.h>

#include <QDir>
#include <QFileInfo>

#include "tests/apps/cli/laboratory_program.h"

namespace {

using cli_test::Ran;
using cli_test::run;
using support::kMaker;
using support::kManager;
using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

class BackupVerbs : public cli_test::LaboratoryProgram {
protected:
    /// As the manager, for people to read.
    Ran told(QStringList words) {
        const QString token = QString::fromStdString(floor_.as(kManager).token);
        return run(words << "--as"
                         << "MK"
                         << "--lab" << labFolder(),
                   {}, {"FRAMEWRIGHT_SESSION=" + token});
    }
    QString safe() const { return folder_.filePath("safe"); }
    QString again() const { return folder_.filePath("again"); }
};

TEST_F(BackupVerbs, MakeABackupAndComeBackFromIt) {
    accepted(today("upper-iii-mod-1"));
    const Ran made = change({"backup", safe()});
    ASSERT_EQ(made.exit, 0) << made.err;
    const auto backup = made.json();
    EXPECT_EQ(backup["schema"], "backup-1");
    EXPECT_THAT(made.err, IsEmpty()) << "no progress unless it is asked for";
    const Ran verified = lab({"verify", "--json"});
    EXPECT_EQ(verified.json()["entries"], backup["entries"]);
    EXPECT_EQ(verified.json()["head"], backup["head"]);
    const QString file = QString::fromStdString(backup["file"].get<std::string>());
    const QString entries = QString::number(backup["entries"].get<int>());
    const QString head = QString::fromStdString(backup["head"].get<std::string>());
    const Ran back = run({"restore", file, "--to", again(), "--against-entries", entries,
                          "--against-head", head, "--json"});
    ASSERT_EQ(back.exit, 0) << back.err;
    EXPECT_EQ(back.json()["head"], backup["head"]);
    EXPECT_EQ(back.json()["tables"], backup["tables"]);
    const Ran proved = run({"verify", "--lab", again(), "--json"});
    EXPECT_EQ(proved.exit, 0) << proved.out;
    EXPECT_EQ(proved.json()["head"], backup["head"]);
    const Ran twice = run({"restore", file, "--to", again()});
    EXPECT_EQ(twice.exit, 2);
    EXPECT_THAT(twice.err, HasSubstr("into a new folder only"));
}

TEST_F(BackupVerbs, TellPeopleWhatTheyNeedToKnow) {
    accepted(today("upper-iii-mod-1"));
    const Ran made = told({"backup", safe(), "--progress"});
    ASSERT_EQ(made.exit, 0) << made.err;
    EXPECT_THAT(made.out, AllOf(HasSubstr(".backup\n"), HasSubstr("SHA-256 "),
                                HasSubstr("read back and proved"), HasSubstr("same disk")));
    EXPECT_THAT(made.err, AllOf(HasSubstr("copying 100 %\n"), HasSubstr("proving the copy 0 %\n")));
    const QString file = QString::fromStdString(made.out.substr(0, made.out.find('\n')));
    const Ran back = run({"restore", file, "--to", again()});
    ASSERT_EQ(back.exit, 0) << back.err;
    EXPECT_THAT(back.out, AllOf(HasSubstr("ledger "), HasSubstr("the last thing in it: "),
                                HasSubstr("must be entered again"), HasSubstr("sign in again")));
    const Ran drill = told({"drill"});
    ASSERT_EQ(drill.exit, 0) << drill.err;
    EXPECT_THAT(drill.out, AllOf(HasSubstr("(RTO)"), HasSubstr("(RPO)"),
                                 HasSubstr("what came back is what was there\n")));
}

TEST_F(BackupVerbs, DrillForPrograms) {
    accepted(today("upper-iii-mod-1"));
    const Ran drill = change({"drill", folder_.path()});
    ASSERT_EQ(drill.exit, 0) << drill.err;
    EXPECT_EQ(drill.json()["schema"], "drill-1");
    EXPECT_EQ(drill.json()["problems"].size(), 0U);
    EXPECT_EQ(drill.json()["last-backup"], nullptr);
    EXPECT_EQ(drill.json()["entries-since"], drill.json()["backup"]["entries"]);
    EXPECT_THAT(QDir{folder_.path()}.entryList({".framewright*"}, QDir::AllEntries | QDir::Hidden),
                IsEmpty());
}

TEST_F(BackupVerbs, RefuseWithTheirExitCodes) {
    const Ran nobody = run({"backup", safe(), "--lab", labFolder()});
    EXPECT_EQ(nobody.exit, 2);
    EXPECT_THAT(nobody.err, HasSubstr("who does this?"));
    EXPECT_EQ(as(kMaker, {"backup", safe()}).exit, 1);
    EXPECT_EQ(as(kMaker, {"drill"}).exit, 1);
    EXPECT_FALSE(QFileInfo::exists(safe()));
    EXPECT_EQ(run({"restore", "nowhere.backup"}).exit, 2);
    EXPECT_EQ(run({"restore", "nowhere.backup", "--to", again()}).exit, 2);
    const Ran records = run({"restore", labFolder() + "/records.db", "--to", again()});
    EXPECT_EQ(records.exit, 2);
    EXPECT_THAT(records.err, HasSubstr("a copy made by hand"));
    const auto made = change({"backup", safe()}).json();
    const QString file = QString::fromStdString(made["file"].get<std::string>());
    const QString more = QString::number(made["entries"].get<int>() + 1);
    const QString head = QString::fromStdString(made["head"].get<std::string>());
    EXPECT_EQ(run({"restore", file, "--to", again(), "--against-entries", more}).exit, 2);
    EXPECT_EQ(
        run({"restore", file, "--to", again(), "--against-entries", more, "--against-head", "abc"})
            .exit,
        2);
    const Ran older =
        run({"restore", file, "--to", again(), "--against-entries", more, "--against-head", head});
    EXPECT_EQ(older.exit, 1);
    EXPECT_THAT(older.err, HasSubstr("is older than what is known"));
    EXPECT_FALSE(QFileInfo::exists(again()));
    EXPECT_EQ(change({"backup", "/proc/self"}).exit, 3);
}

}  // namespace
