#include "storage/migrator.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QVariant>

#include "tests/storage/records.h"

namespace {

using domain::ErrorCode;
using storage::kSqlite;
using storage::Migration;
using storage::parseMigration;
using support::Folder;
using support::opened;
using support::refusalToOpen;
using support::Shell;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;

std::vector<Migration> productSteps() { return *storage::migrations(kSqlite); }

TEST(Migrator, BringsEmptyRecordsToTheNewestSchema) {
    const Folder folder;
    opened(folder.path());
    const Shell shell{folder.file()};
    const auto steps = productSteps();
    ASSERT_FALSE(steps.empty());
    EXPECT_EQ(shell.value("SELECT MAX(step) FROM schema_step").toLongLong(), steps.back().step);
    EXPECT_EQ(
        shell.value("SELECT description FROM schema_step WHERE step = 1").toString().toStdString(),
        steps.front().description);
}

TEST(Migrator, TakesNoStepTwice) {
    const Folder folder;
    opened(folder.path());
    opened(folder.path());
    const Shell shell{folder.file()};
    EXPECT_EQ(shell.value("SELECT COUNT(*) FROM schema_step").toULongLong(), productSteps().size());
}

TEST(Migrator, TakesTheStepsThatAreNew) {
    const Folder folder;
    const auto records = opened(folder.path());
    auto steps = productSteps();
    const auto next = steps.back().step + 1;
    steps.push_back({next, "A table more.", 1, {"CREATE TABLE more (words TEXT)"}});
    ASSERT_TRUE(storage::migrate(*records, steps));
    const Shell shell{folder.file()};
    EXPECT_TRUE(shell.run("INSERT INTO more VALUES ('kept')"));
    EXPECT_EQ(shell.value("SELECT MAX(step) FROM schema_step").toLongLong(), next);
}

TEST(Migrator, LeavesNothingOfAStepThatFails) {
    const Folder folder;
    const auto records = opened(folder.path());
    auto steps = productSteps();
    steps.push_back({steps.back().step + 1,
                     "A table and a slip.",
                     1,
                     {"CREATE TABLE half (words TEXT)", "INSERT INTO nowhere VALUES (1)"}});
    const auto migrated = storage::migrate(*records, steps);
    ASSERT_FALSE(migrated);
    EXPECT_EQ(migrated.error().code, ErrorCode::Unavailable);
    EXPECT_THAT(migrated.error().message, HasSubstr("nowhere"));
    const Shell shell{folder.file()};
    EXPECT_EQ(shell.value("SELECT COUNT(*) FROM sqlite_schema WHERE name = 'half'").toInt(), 0);
    EXPECT_EQ(shell.value("SELECT COUNT(*) FROM schema_step").toULongLong(), steps.size() - 1);
}

TEST(Migrator, RefusesRecordsThatNeedANewerProgramNamingBothSchemas) {
    const Folder folder;
    opened(folder.path());
    const Shell shell{folder.file()};
    ASSERT_TRUE(shell.run("INSERT INTO schema_step VALUES (99, 'From the future.', 98)"));
    EXPECT_EQ(refusalToOpen(folder.path()).code, ErrorCode::Unavailable);
    EXPECT_THAT(refusalToOpen(folder.path()).message,
                AllOf(HasSubstr("schema 99"),
                      HasSubstr("knows schema " + std::to_string(productSteps().size()))));
}

TEST(Migrator, OpensNewerRecordsThatAnOlderProgramMayUse) {
    const Folder folder;
    opened(folder.path());
    const Shell shell{folder.file()};
    ASSERT_TRUE(shell.run("INSERT INTO schema_step VALUES (99, 'Harmless.', 1)"));
    EXPECT_TRUE(opened(folder.path()));
}

TEST(Migrator, PartsAFileAndReplacesTheTokensOfTheDialect) {
    const auto migration = parseMigration(
        7, "-- What it does.\n-- needs 3\nCREATE TABLE a (k {identity}, b {bytes})\n-- next\nx;y\n",
        kSqlite);
    ASSERT_TRUE(migration);
    EXPECT_EQ(migration->step, 7);
    EXPECT_EQ(migration->description, "What it does.");
    EXPECT_EQ(migration->needs, 3);
    EXPECT_THAT(migration->statements,
                ElementsAre("CREATE TABLE a (k INTEGER PRIMARY KEY, b BLOB)\n", "x;y\n"));
}

TEST(Migrator, RefusesAFileWithoutItsFirstLines) {
    for (const auto* text : {"", "CREATE TABLE a (b TEXT)", "-- What.\nCREATE TABLE a (b TEXT)",
                             "-- What.\n-- needs x\nSELECT 1", "-- What.\n-- needs 1\n",
                             "-- What.\n-- needs 1\nSELECT 1\n-- next\n"})
        EXPECT_FALSE(parseMigration(1, text, kSqlite)) << text;
}

}  // namespace
