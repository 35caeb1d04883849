// Records that are gone are said to be gone: nothing is made in their place, and a journal that is
// not theirs is not rolled back.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QVariant>
#include <fstream>
#include <iterator>
#include <optional>

#include "storage/integrity.h"
#include "storage/journal_check.h"
#include "storage/settings_store.h"
#include "storage/shade_guide_store.h"
#include "tests/storage/records.h"
#include "tests/support/killed_before.h"

namespace {

namespace fs = std::filesystem;
using domain::ErrorCode;
using storage::Connection;
using storage::Opening;
using storage::strangeJournal;
using support::Folder;
using support::opened;
using support::Shell;
using testing::AllOf;
using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;

/// What opening says when records must be there already.
std::string refusal(const fs::path& folder, Opening opening = Opening::Existing) {
    const auto records = Connection::open(folder, opening);
    if (records) return "was opened";
    EXPECT_EQ(records.error().code, ErrorCode::Unavailable);
    return records.error().message;
}

std::vector<std::string> namesIn(const fs::path& folder) {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator{folder})
        names.push_back(entry.path().filename().string());
    std::ranges::sort(names);
    return names;
}

std::string contentOf(const fs::path& file) {
    std::ifstream stream{file, std::ios::binary};
    return {std::istreambuf_iterator<char>{stream}, {}};
}

void write(const fs::path& file, const std::string& bytes) {
    std::ofstream{file, std::ios::binary | std::ios::trunc} << bytes;
}

TEST(LostRecords, AreSaidToBeGoneAndNothingIsMade) {
    const Folder folder;
    const auto missing = folder.path() / "lab";
    EXPECT_THAT(refusal(missing), AllOf(HasSubstr(missing.string()), HasSubstr("no such folder"),
                                        HasSubstr("restore a backup")));
    EXPECT_FALSE(fs::exists(missing));
    EXPECT_THAT(refusal(folder.path()),
                AllOf(HasSubstr(folder.path().string()), HasSubstr("no file records.db"),
                      HasSubstr("set it up first")));
    EXPECT_THAT(namesIn(folder.path()), IsEmpty());
}

TEST(LostRecords, AnEmptyFileIsDamageEvenWhereRecordsMayBeMade) {
    const Folder folder;
    write(folder.file(), "");
    for (const Opening opening : {Opening::Existing, Opening::MakeIfMissing})
        EXPECT_THAT(refusal(folder.path(), opening),
                    AllOf(HasSubstr(folder.file().string()), HasSubstr("0 bytes")));
    EXPECT_EQ(fs::file_size(folder.file()), 0U);
}

TEST(LostRecords, AreNotMadeAnewBesideWhatTheyLeftBehind) {
    for (const char* remains : {"papers", "sessions"}) {
        const Folder folder;
        fs::create_directory(folder.path() / remains);
        write(folder.path() / remains / "one", "left");
        EXPECT_THAT(refusal(folder.path(), Opening::MakeIfMissing),
                    AllOf(HasSubstr(remains), HasSubstr("earlier ones")));
        EXPECT_FALSE(fs::exists(folder.file()));
    }
    const Folder folder;
    write(folder.path() / "records.db-journal", "left");
    EXPECT_THAT(refusal(folder.path(), Opening::MakeIfMissing), HasSubstr("records.db-journal"));
    fs::resize_file(folder.path() / "records.db-journal", 0);
    EXPECT_TRUE(opened(folder.path())) << "an empty journal says nothing";
}

TEST(LostRecords, TablesThatWereEmptiedOrTakenAwayShow) {
    const Folder folder;
    opened(folder.path());
    {
        const Shell shell{folder.file()};
        ASSERT_TRUE(shell.run("DELETE FROM schema_step"));
    }
    for (const Opening opening : {Opening::Existing, Opening::MakeIfMissing})
        EXPECT_THAT(refusal(folder.path(), opening), HasSubstr("no schema step"));
    {
        const Shell shell{folder.file()};
        ASSERT_TRUE(shell.run("DROP TABLE schema_step"));
    }
    EXPECT_THAT(refusal(folder.path()), HasSubstr("no schema step"));
}

TEST(LostRecords, EveryPartOfTheSchemaThatIsMissingOrTooManyIsNamed) {
    const Folder folder;
    const auto records = opened(folder.path());
    EXPECT_THAT(*storage::schemaProblems(*records), IsEmpty());
    EXPECT_THAT(*storage::engineProblems(*records), IsEmpty());
    const Shell shell{folder.file()};
    ASSERT_TRUE(
        shell.run("CREATE TRIGGER t AFTER INSERT ON setting BEGIN DELETE FROM session; END"));
    EXPECT_THAT(*storage::schemaProblems(*records),
                Contains("the trigger t does not belong to the records"));
    ASSERT_TRUE(shell.run("DROP TRIGGER t"));
    ASSERT_TRUE(shell.run("DROP INDEX setting_whole"));
    ASSERT_TRUE(shell.run("CREATE INDEX setting_whole ON setting (content)"));
    ASSERT_TRUE(shell.run("DROP TABLE lot_use"));
    ASSERT_TRUE(shell.run("DROP TABLE ledger_head"));
    EXPECT_THAT(*storage::schemaProblems(*records),
                testing::UnorderedElementsAre("the table lot_use is missing",
                                              "the index lot_use_by_lot is missing",
                                              "the table ledger_head is missing",
                                              "the index setting_whole is not as it was made"));
    ASSERT_TRUE(
        shell.run("INSERT INTO schema_step SELECT MAX(step) + 1, 'Harmless.', 1 "
                  "FROM schema_step"));
    ASSERT_TRUE(shell.run("CREATE TABLE later (words TEXT)"));
    const auto ofNewer = storage::schemaProblems(*records);
    EXPECT_EQ(ofNewer->size(), 4U) << "a newer program may change and add, but not take away";
    EXPECT_THAT(*ofNewer, Contains(HasSubstr("verify with the newer program")));
    ASSERT_TRUE(shell.run("INSERT INTO schema_step VALUES (1099, 'Harmless.', 1)"));
    EXPECT_THAT(*storage::schemaProblems(*records),
                Contains(HasSubstr("schema step 1099 does not follow step")));
}

TEST(LostRecords, AForgedNextStepDoesNotMakeTheRecordsWhole) {
    const Folder folder;
    opened(folder.path());
    {
        const Shell shell{folder.file()};
        ASSERT_TRUE(
            shell.run("INSERT INTO schema_step SELECT MAX(step) + 1, 'Harmless.', 1 "
                      "FROM schema_step"));
        ASSERT_TRUE(
            shell.run("CREATE TRIGGER t AFTER INSERT ON setting BEGIN DELETE FROM session; END"));
    }
    const auto records = opened(folder.path());
    EXPECT_THAT(*storage::schemaProblems(*records),
                testing::ElementsAre(HasSubstr("made by a newer program")));
}

TEST(LostRecords, TheLedgerRefusesToBeChanged) {
    const Folder folder;
    const auto records = opened(folder.path());
    support::writeFloor(*records);
    const Shell shell{folder.file()};
    for (const char* change :
         {"UPDATE ledger SET person = 'XX'", "UPDATE ledger SET hash = hash WHERE position = 2",
          "DELETE FROM ledger", "DELETE FROM ledger WHERE position = 1",
          "INSERT OR REPLACE INTO ledger SELECT * FROM ledger WHERE position = 1",
          "UPDATE OR REPLACE ledger SET position = 1 WHERE position = 2"})
        EXPECT_FALSE(shell.run(change)) << change;
    EXPECT_THAT(support::problemsOf(*records), IsEmpty());
    // Without its guards it can be; that they are gone shows, and what was done then too.
    {
        const support::WithoutGuards unguarded{shell};
        EXPECT_THAT(*storage::schemaProblems(*records),
                    Contains("the trigger ledger_is_not_changed is missing"));
        EXPECT_TRUE(shell.run("UPDATE ledger SET person = 'XX' WHERE position = 2"));
    }
    EXPECT_THAT(*storage::schemaProblems(*records), IsEmpty());
    EXPECT_THAT(support::problemsOf(*records),
                Contains(HasSubstr("entry 2 of the ledger: person is \"XX\"")));
}

TEST(LostRecords, ARowThatRefersToNoneIsNamed) {
    const Folder folder;
    const auto records = opened(folder.path());
    const Shell shell{folder.file()};
    ASSERT_TRUE(shell.run("INSERT INTO patient (prescriber_id) VALUES (17)"));
    EXPECT_THAT(*storage::engineProblems(*records),
                Contains("a row of patient refers to a row of prescriber that is not there"));
}

/// Rows of every table that neither the ledger nor what follows from it proves, with a mark in the
/// place that is changed on the disk.
constexpr const char* kMarked[] = {
    "INSERT INTO setting VALUES ('a', 'MARKED')",
    "INSERT INTO setting VALUES ('MARKED', 'b')",
    "INSERT INTO shade_guide VALUES ('a', 'MARKED')",
    "INSERT INTO shade_tab VALUES ('a', 1, 'b', 'MARKED')",
    "INSERT INTO shade_tab VALUES ('a', 1, 'MARKED', '1')",
    "INSERT INTO credential VALUES ('a', 'MARKED', 0, NULL, NULL, 0, NULL)",
    "INSERT INTO credential VALUES ('a', 'b', 0, 'c', 'MARKED', 0, NULL)",
    "INSERT INTO session VALUES ('MARKED', 'b', 'c', 1, 1, NULL, '')",
    "INSERT INTO session VALUES ('a', 'MARKED', 'c', 1, 1, NULL, '')",
    "INSERT INTO session VALUES ('a', 'b', 'MARKED', 1, 1, NULL, '')",
    "INSERT INTO prescriber VALUES (7, 'MARKED')",
    "INSERT INTO schema_step VALUES (1000, 'MARKED', 4)",
};

TEST(LostRecords, AValueThatChangesOnTheDiskIsFoundWhereNoChainHoldsIt) {
    for (const char* insert : kMarked) {
        const Folder folder;
        opened(folder.path());
        {
            const Shell shell{folder.file()};
            ASSERT_TRUE(shell.run(insert)) << insert;
        }
        const std::string sound = contentOf(folder.file());
        int places = 0;
        for (auto at = sound.find("MARKED"); at != sound.npos; at = sound.find("MARKED", at + 1)) {
            ++places;
            write(folder.file(), std::string{sound}.replace(at, 1, "X"));
            const auto records = Connection::open(folder.path(), Opening::Existing);
            ASSERT_TRUE(records) << records.error().message;
            EXPECT_THAT(*storage::engineProblems(**records), testing::Not(IsEmpty())) << insert;
        }
        EXPECT_GE(places, 2) << insert << ": in the table and in an index";
    }
}

TEST(LostRecords, EveryTableIsProvedByTheLedgerOrLiesInAnIndexAsAWhole) {
    const Folder folder;
    opened(folder.path());
    const Shell shell{folder.file()};
    // What is proved: by the chain, by being built again from it, by a digest in it.
    const std::string left =
        "SELECT t.name FROM sqlite_schema t WHERE t.type = 'table' AND t.name NOT IN "
        "('ledger', 'ledger_head', 'access_log', 'access_head', 'order_register', 'lot_use', "
        "'lot_total', 'order_label', "
        "'sealed_text') AND NOT EXISTS "
        "(SELECT 1 FROM pragma_index_list(t.name) i WHERE NOT EXISTS "
        "(SELECT 1 FROM pragma_table_info(t.name) c "
        "WHERE NOT (c.type = 'INTEGER' AND c.pk = 1) "
        "AND c.name NOT IN (SELECT name FROM pragma_index_info(i.name))))";
    for (const QVariant& table : shell.column(left))
        ADD_FAILURE() << table.toString().toStdString() << " has no index over all its columns";
    ASSERT_TRUE(shell.run("CREATE TABLE bare (id INTEGER PRIMARY KEY, a TEXT UNIQUE, b TEXT)"));
    EXPECT_EQ(shell.column(left).size(), 1U);
}

TEST(LostRecords, OlderOnesThatAreDamagedAreNotBroughtToANewerSchema) {
    const Folder folder;
    opened(folder.path());
    {
        const Shell shell{folder.file()};
        ASSERT_TRUE(shell.run("INSERT INTO setting VALUES ('a', 'MARKED')"));
        ASSERT_TRUE(
            shell.run("DELETE FROM schema_step WHERE step = "
                      "(SELECT MAX(step) FROM schema_step)"));
    }
    const std::string bytes = contentOf(folder.file());
    write(folder.file(), std::string{bytes}.replace(bytes.find("MARKED"), 1, "X"));
    EXPECT_THAT(refusal(folder.path()), AllOf(HasSubstr("damaged"), HasSubstr("restore a backup")));
}

// Killed before every call that touches a file, and then again by whoever goes on.
TEST(NewRecords, AreAbsentOrWholeWheneverTheProgramThatMakesThemIsKilled) {
    int kills = 0;
    for (int call = 1; call < 10'000; ++call) {
        const Folder folder;
        const auto lab = folder.path() / "north" / "lab";
        const bool killed = support::killedBefore(call, [&] {
            if (!Connection::open(lab, Opening::MakeIfMissing)) _exit(1);
        });
        if (!killed) break;
        ++kills;
        if (const auto there = Connection::open(lab, Opening::Existing); there)
            EXPECT_THAT(*storage::schemaProblems(**there), IsEmpty()) << call;
        else
            EXPECT_THAT(there.error().message, HasSubstr("there are no records")) << call;
        const auto records = Connection::open(lab, Opening::MakeIfMissing);
        ASSERT_TRUE(records) << "before call " << call << ": " << records.error().message;
        EXPECT_THAT(*storage::schemaProblems(**records), IsEmpty()) << call;
        EXPECT_THAT(*storage::engineProblems(**records), IsEmpty()) << call;
        for (const std::string& name : namesIn(lab))
            EXPECT_TRUE(name == "records.db" || name == "records.db-journal" ||
                        name == "records.turn")
                << call << name;
        if (HasFailure()) break;
    }
    std::cout << kills << " kills\n";
    EXPECT_GT(kills, 30);
}

/// The files as a program leaves them that is killed while it commits.
struct Crash {
    std::string records;
    std::string journal;
};

/// Forty settings over many pages, in one transaction.
void writeSettings(const fs::path& folder, char filledWith) {
    const auto records = Connection::open(folder, Opening::Existing);
    auto begun = records ? storage::Transaction::begin(**records)
                         : domain::Result<storage::Transaction>{records.error()};
    if (!begun) _exit(1);
    storage::Transaction work = *std::move(begun);
    const storage::SettingsStore settings{**records};
    for (int i = 0; i < 40; ++i)
        if (!settings.put(work, "n" + std::to_string(i), std::string(900, filledWith))) _exit(1);
    if (!work.commit()) _exit(1);
}

/// Killed later and later, until the first page was written, which tells little, and the next ones.
Crash crashOf(const fs::path& file) {
    constexpr int kStride = 5;
    constexpr int kPages = 3;
    const std::string before = contentOf(file);
    const auto killedAt = [&](int call) -> std::optional<Crash> {
        const Folder folder;
        write(folder.file(), before);
        if (!support::killedBefore(call, [&] { writeSettings(folder.path(), 'x'); })) return {};
        return Crash{contentOf(folder.file()), contentOf(folder.file().string() + "-journal")};
    };
    const auto isWritten = [&](const std::optional<Crash>& crash) {
        return !crash || crash->records != before;
    };
    int call = 1;
    while (!isWritten(killedAt(call))) call += kStride;
    do --call;
    while (call > 1 && isWritten(killedAt(call)));
    const auto crash = killedAt(call + kPages);
    EXPECT_TRUE(crash) << "it was never killed in the middle of its writing";
    return crash.value_or(Crash{});
}

void leave(const Folder& folder, const std::string& records, const std::string& journal) {
    write(folder.file(), records);
    write(folder.file().string() + "-journal", journal);
}

/// Records with two hundred settings, and a crash that changes them.
class TheJournal : public testing::Test {
protected:
    TheJournal() {
        opened(folder.path());
        writeSettings(folder.path(), 'w');
    }

    const Folder folder{};
    const Folder after{};
};

TEST_F(TheJournal, OfACrashIsRolledBack) {
    const Crash crash = crashOf(folder.file());
    leave(after, crash.records, crash.journal);
    EXPECT_EQ(strangeJournal(after.file()), std::nullopt);
    const auto records = Connection::open(after.path(), Opening::Existing);
    ASSERT_TRUE(records) << records.error().message;
    EXPECT_THAT(*storage::engineProblems(**records), IsEmpty());
    const Shell shell{after.file()};
    EXPECT_EQ(shell.value("SELECT COUNT(*) FROM setting WHERE content LIKE 'w%'").toInt(), 40);
}

TEST_F(TheJournal, WhoseHeadAPowerCutSpoiltIsOfNoUseAndDoesNoHarm) {
    const std::string before = contentOf(folder.file());
    const Crash crash = crashOf(folder.file());
    std::string spoilt = crash.journal;
    spoilt.replace(0, 512, std::string(512, 'g'));
    leave(after, crash.records, spoilt);
    EXPECT_THAT(refusal(after.path()), HasSubstr("is no journal")) << "here it is needed";
    leave(after, before, spoilt);
    const auto records = Connection::open(after.path(), Opening::Existing);
    ASSERT_TRUE(records) << records.error().message;
    EXPECT_THAT(*storage::engineProblems(**records), IsEmpty());
    const Shell shell{after.file()};
    EXPECT_EQ(shell.value("SELECT COUNT(*) FROM setting WHERE content LIKE 'w%'").toInt(), 40);
}

TEST_F(TheJournal, ThatIsMissingAfterACrashShowsInTheFile) {
    const Crash crash = crashOf(folder.file());
    write(after.file(), crash.records);
    const auto records = Connection::open(after.path(), Opening::Existing);
    ASSERT_TRUE(records) << records.error().message;
    EXPECT_THAT(*storage::engineProblems(**records), testing::Not(IsEmpty()));
}

TEST_F(TheJournal, OfAnotherStateOrOfOthersIsLeftAlone) {
    const std::string before = contentOf(folder.file());
    const Crash crash = crashOf(folder.file());
    {
        const Shell shell{folder.file()};
        for (int i = 0; i < 5; ++i)
            ASSERT_TRUE(shell.run("INSERT INTO setting VALUES (" + std::to_string(i) + ", 'x')"));
    }
    const std::string later = contentOf(folder.file());
    const std::pair<std::string, std::string> strange[] = {
        {later, "another state"},
        {later.substr(0, 4096), "longer than they are"},
    };
    for (const auto& [records, why] : strange) {
        leave(after, records, crash.journal);
        EXPECT_THAT(refusal(after.path()), AllOf(HasSubstr("records.db-journal"), HasSubstr(why)));
        EXPECT_TRUE(contentOf(after.file()) == records) << why;
        EXPECT_TRUE(contentOf(after.file().string() + "-journal") == crash.journal) << why;
    }
    leave(after, later, "words that are no journal at all");
    EXPECT_THAT(refusal(after.path()), HasSubstr("is no journal"));
    std::string otherSize = crash.journal;
    otherSize.replace(24, 4, std::string{"\0\0\x20\0", 4});
    leave(after, before, otherSize);
    EXPECT_THAT(refusal(after.path()), HasSubstr("another page size"));
}

}  // namespace
