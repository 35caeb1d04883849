#include "storage/connection.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include <QSqlQuery>
#include <QVariant>
#include <fstream>

#include "storage/party_store.h"
#include "storage/records_file.h"
#include "storage/statement.h"
#include "tests/storage/records.h"

namespace {

using domain::ErrorCode;
using storage::Sql;
using storage::SqlFailure;
using storage::Statement;
using support::Folder;
using support::opened;
using support::refusalToOpen;
using support::Shell;
using testing::AllOf;
using testing::HasSubstr;

std::string pragma(const storage::Connection& records, const std::string& name) {
    QSqlQuery query{records.database()};
    EXPECT_TRUE(query.exec(QString::fromStdString("PRAGMA " + name)) && query.next());
    return query.value(0).toString().toStdString();
}

mode_t modeOf(const std::filesystem::path& path) {
    struct stat found{};
    EXPECT_EQ(stat(path.c_str(), &found), 0);
    return found.st_mode & 0777;
}

TEST(Connection, OpensInTheModeThatLosesNothing) {
    const Folder folder;
    const auto records = opened(folder.path());
    const std::pair<std::string, std::string> modes[] = {
        {"journal_mode", "truncate"}, {"synchronous", "2"},     {"foreign_keys", "1"},
        {"trusted_schema", "0"},      {"cell_size_check", "1"}, {"mmap_size", "0"},
        {"busy_timeout", "5000"},     {"secure_delete", "1"},   {"application_id", "1179798871"},
        {"cache_size", "-24576"},     {"integrity_check", "ok"}};
    for (const auto& [name, value] : modes) EXPECT_EQ(pragma(*records, name), value) << name;
}

TEST(Connection, MakesTheFolderAndTheFileForTheirOwnerOnly) {
    const Folder folder;
    const auto inner = folder.path() / "north" / "laboratory";
    const mode_t before = umask(0);
    const auto records = opened(inner);
    umask(before);
    EXPECT_EQ(modeOf(inner), mode_t{0700});
    EXPECT_EQ(modeOf(inner / "records.db"), mode_t{0600});
}

TEST(Connection, RefusesAnOrphanRow) {
    const Folder folder;
    const auto records = opened(folder.path());
    try {
        Statement{records->database(), Sql{"INSERT INTO patient (prescriber_id) VALUES (17)"}}
            .run();
        FAIL() << "a patient without a prescriber was taken";
    } catch (const SqlFailure& failure) {
        EXPECT_THAT(failure.what(), HasSubstr("FOREIGN KEY"));
    }
}

TEST(Connection, RefusesAFileWhereTheFolderWasExpected) {
    const Folder folder;
    const auto file = folder.path() / "lab";
    std::ofstream{file} << "a file";
    EXPECT_EQ(refusalToOpen(file).code, ErrorCode::Unusable);
    EXPECT_THAT(refusalToOpen(file).message,
                AllOf(HasSubstr(file.string()), HasSubstr("is a file")));
    EXPECT_EQ(refusalToOpen(file / "below").code, ErrorCode::Unusable);
    EXPECT_EQ(refusalToOpen({}).code, ErrorCode::Unusable);
}

TEST(Connection, RefusesAFileThatIsNoDatabaseAndLeavesItAlone) {
    const Folder folder;
    const std::string words(4096, 'n');
    std::ofstream{folder.file()} << words;
    const auto error = refusalToOpen(folder.path());
    EXPECT_EQ(error.code, ErrorCode::Unavailable);
    EXPECT_THAT(error.message,
                AllOf(HasSubstr("records.db"), HasSubstr("the file is not a database")));
    std::ifstream file{folder.file()};
    EXPECT_EQ((std::string{std::istreambuf_iterator<char>{file}, {}}), words);
}

TEST(Connection, RefusesTheDatabaseOfAnotherProgram) {
    const Folder folder;
    {
        const Shell shell{folder.file()};
        ASSERT_TRUE(shell.run("CREATE TABLE recipe (words TEXT)"));
    }
    EXPECT_EQ(refusalToOpen(folder.path()).code, ErrorCode::Unavailable);
    EXPECT_THAT(refusalToOpen(folder.path()).message,
                HasSubstr("is the database of another program (application id 0)"));
    const Shell shell{folder.file()};
    EXPECT_EQ(shell.value("PRAGMA application_id").toInt(), 0);
}

TEST(Connection, RefusesRecordsWithASecondName) {
    const Folder folder;
    opened(folder.path());
    std::filesystem::create_hard_link(folder.file(), folder.path() / "copy.db");
    EXPECT_EQ(refusalToOpen(folder.path()).code, ErrorCode::Unavailable);
    EXPECT_THAT(refusalToOpen(folder.path()).message, HasSubstr("hard link"));
    std::filesystem::remove(folder.path() / "copy.db");
    EXPECT_TRUE(opened(folder.path()));
}

TEST(Connection, RefusesAFolderWhereTheFileWasExpected) {
    const Folder folder;
    std::filesystem::create_directory(folder.file());
    EXPECT_THAT(refusalToOpen(folder.path()).message, HasSubstr("is not a plain file"));
}

TEST(Connection, RefusesAModeItCannotSet) {
    const Folder folder;
    opened(folder.path());
    const Shell shell{folder.file()};
    ASSERT_TRUE(shell.run("PRAGMA journal_mode = WAL"));
    ASSERT_TRUE(shell.run("CREATE TABLE kept_open (words TEXT)"));
    const auto error = refusalToOpen(folder.path());
    EXPECT_EQ(error.code, ErrorCode::Unavailable);
    EXPECT_THAT(error.message, HasSubstr("records.db"));
}

TEST(Connection, TakesOverRecordsThatWereLeftInAnotherMode) {
    const Folder folder;
    opened(folder.path());
    {
        const Shell shell{folder.file()};
        ASSERT_TRUE(shell.run("PRAGMA journal_mode = WAL"));
    }
    EXPECT_EQ(pragma(*opened(folder.path()), "journal_mode"), "truncate");
}

// From memory of the names the Linux kernel gives in /proc/mounts.
TEST(Connection, KnowsFileSystemsOfOtherMachinesByTheirType) {
    for (const auto* type :
         {"nfs", "nfs4", "cifs", "smb3", "9p", "ceph", "fuse.sshfs", "fuse.rclone"})
        EXPECT_TRUE(storage::isNetworkFileSystem(type)) << type;
    for (const auto* type : {"ext4", "xfs", "btrfs", "tmpfs", "overlay", "fuseblk", "zfs", ""})
        EXPECT_FALSE(storage::isNetworkFileSystem(type)) << type;
}

TEST(Connection, LeavesNothingBehindWhenItEnds) {
    const Folder folder;
    const auto before = QSqlDatabase::connectionNames().size();
    {
        const auto records = opened(folder.path());
        const auto beside = opened(folder.path());
        EXPECT_EQ(QSqlDatabase::connectionNames().size(), before + 2);
    }
    EXPECT_EQ(QSqlDatabase::connectionNames().size(), before);
}

TEST(Transaction, KeepsNothingThatWasNotCommitted) {
    const Folder folder;
    const auto records = opened(folder.path());
    const storage::PartyStore people{*records};
    {
        storage::Transaction work = *storage::Transaction::begin(*records);
        ASSERT_TRUE(people.prescriberCode(work, {.prescriberName = "N. N."}));
    }
    const Shell shell{folder.file()};
    EXPECT_EQ(shell.value("SELECT COUNT(*) FROM prescriber").toInt(), 0);
    storage::Transaction work = *storage::Transaction::begin(*records);
    ASSERT_TRUE(people.prescriberCode(work, {.prescriberName = "N. N."}));
    ASSERT_TRUE(work.commit());
    EXPECT_EQ(shell.value("SELECT COUNT(*) FROM prescriber").toInt(), 1);
}

TEST(Transaction, SaysThatOthersAreWriting) {
    const Folder folder;
    const auto first = opened(folder.path());
    const auto second = opened(folder.path());
    ASSERT_EQ(pragma(*second, "busy_timeout = 20"), "20");
    const storage::Transaction work = *storage::Transaction::begin(*first);
    const auto waited = storage::Transaction::begin(*second);
    ASSERT_FALSE(waited);
    EXPECT_EQ(waited.error().code, ErrorCode::Unavailable);
    EXPECT_THAT(waited.error().message, HasSubstr("another program kept them busy"));
}

TEST(Transaction, SaysThatTheOutcomeOfAFailedCommitIsUnknown) {
    const Folder folder;
    const auto records = opened(folder.path());
    ASSERT_EQ(pragma(*records, "busy_timeout = 20"), "20");
    const Shell shell{folder.file()};
    ASSERT_TRUE(shell.run("BEGIN"));
    ASSERT_EQ(shell.value("SELECT COUNT(*) FROM prescriber").toInt(), 0);  // holds a read lock
    {
        storage::Transaction work = *storage::Transaction::begin(*records);
        ASSERT_TRUE(
            storage::PartyStore{*records}.prescriberCode(work, {.prescriberName = "N. N."}));
        const auto committed = work.commit();
        ASSERT_FALSE(committed);
        EXPECT_EQ(committed.error().code, ErrorCode::Unavailable);
        EXPECT_THAT(committed.error().message,
                    AllOf(HasSubstr("not known"), HasSubstr("repeat it with the same key")));
    }
    ASSERT_TRUE(shell.run("COMMIT"));
    EXPECT_EQ(shell.value("SELECT COUNT(*) FROM prescriber").toInt(), 0);
    EXPECT_TRUE(storage::Transaction::begin(*records));
}

TEST(Transaction, SaysThatTheRecordsAreReadOnly) {
    const Folder folder;
    const auto records = opened(folder.path());
    QSqlQuery{records->database()}.exec(QStringLiteral("PRAGMA query_only = ON"));
    const auto work = storage::Transaction::begin(*records);
    ASSERT_FALSE(work);
    EXPECT_EQ(work.error().code, ErrorCode::Unavailable);
    EXPECT_THAT(work.error().message, HasSubstr("read-only"));
}

}  // namespace
