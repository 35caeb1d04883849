// Backups and the way back: what is kept, what is refused, and what is left behind.
#include "storage/backup.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <QCoreApplication>
#include <QProcess>
#include <algorithm>
#include <chrono>
#include <csignal>
#include <fstream>
#include <iostream>
#include <iterator>
#include <random>

#include "storage/backup_file.h"
#include "storage/digest.h"
#include "storage/files/prescription_file.h"
#include "storage/ledger.h"
#include "storage/migrator.h"
#include "storage/restore.h"
#include "storage/sealed_texts.h"
#include "tests/storage/records.h"

namespace {

namespace fs = std::filesystem;
using domain::ErrorCode;
using storage::BackupFile;
using storage::KnownHead;
using storage::Manifest;
using support::Folder;
using support::minute;
using support::opened;
using support::Shell;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;
using testing::StartsWith;

std::string bytesOf(const fs::path& file) {
    std::ifstream stream{file, std::ios::binary};
    return {std::istreambuf_iterator<char>{stream}, {}};
}
void write(const fs::path& file, std::string_view bytes) {
    std::ofstream{file, std::ios::binary} << bytes;
}
/// The names in a folder, hidden ones too.
std::vector<std::string> namesIn(const fs::path& folder) {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator{folder})
        names.push_back(entry.path().filename().string());
    std::ranges::sort(names);
    return names;
}
/// Parts 1 and 2 and the end that belongs to them.
std::string sealed(const std::string& database, const std::string& manifest) {
    const auto digest = storage::sha256({QByteArray::fromStdString(database + manifest)});
    return database + manifest + storage::endLine(digest, manifest.size());
}

class Backups : public testing::Test {
protected:
    Backups() { fs::create_directory(safe()); }

    fs::path lab() const { return folder_.path() / "lab"; }
    fs::path safe() const { return folder_.path() / "safe"; }
    fs::path again() const { return folder_.path() / "again"; }

    /// A backup of records with two orders.
    storage::Backup made(int minutes = 0) {
        if (!fs::exists(lab())) {
            const auto records = opened(lab());
            support::writeFloor(*records);
            support::writeTwoOrders(*records);
        }
        return backedUp(minutes);
    }
    storage::Backup backedUp(int minutes = 0) const {
        const auto records = opened(lab());
        const auto backup = storage::makeBackup(*records, safe(), minute(minutes));
        EXPECT_TRUE(backup) << (backup ? "" : backup.error().message);
        return backup ? *backup : storage::Backup{};
    }
    /// What restoring says, after which nothing must be there.
    domain::Error refusal(const fs::path& file, const std::optional<KnownHead>& against = {}) {
        const auto restored = storage::restoreBackup(file, again(), against);
        EXPECT_FALSE(restored);
        EXPECT_THAT(namesIn(folder_.path()), ElementsAre("lab", "safe"));
        return restored ? domain::Error{} : restored.error();
    }
    /// A backup with other bytes, under another name.
    fs::path altered(std::string_view bytes) const {
        write(safe() / "altered.backup", bytes);
        return safe() / "altered.backup";
    }

    Folder folder_;
};

TEST_F(Backups, ComeBackAsRecordsThatGoOn) {
    const auto backup = made();
    const auto restored = storage::restoreBackup(
        backup.file, again(), KnownHead{backup.manifest.entries, backup.manifest.head});
    ASSERT_TRUE(restored) << restored.error().message;
    EXPECT_EQ(restored->manifest, backup.manifest);
    EXPECT_EQ(fs::status(again()).permissions(), fs::perms::owner_all);
    EXPECT_EQ(fs::status(again() / "records.db").permissions(),
              fs::perms::owner_read | fs::perms::owner_write);
    const auto records = opened(again());
    const auto original = opened(lab());
    EXPECT_EQ(*storage::censusIn(*records), *storage::censusIn(*original));
    EXPECT_THAT(support::problemsOf(*records), IsEmpty());
    EXPECT_EQ(support::ordersIn(*records), support::ordersIn(*original));
    const auto order =
        support::receive(*records, support::smallPrescription(),
                         support::occasion(minute(99), support::person("MK"), "after"));
    ASSERT_TRUE(order) << order.error().message;
    EXPECT_EQ(order->number, support::orderNumber(3));
    EXPECT_THAT(support::problemsOf(*records), IsEmpty());
}

TEST_F(Backups, SayWhatTheyHoldAndAreForTheirOwnerAlone) {
    const auto backup = made(75);
    const auto entries = backup.manifest.entries;
    EXPECT_GT(entries, 10);
    EXPECT_EQ(backup.file.filename(),
              "framewright-20261125T011500Z-0000" + std::to_string(entries) + ".backup");
    EXPECT_THAT(namesIn(safe()), ElementsAre(backup.file.filename().string()));
    EXPECT_EQ(fs::status(backup.file).permissions(),
              fs::perms::owner_read | fs::perms::owner_write);
    EXPECT_TRUE(backup.onTheSameDisk);
    EXPECT_FALSE(backup.readableByOthers);
    const auto read = BackupFile::open(backup.file);
    ASSERT_TRUE(read) << read.error().message;
    EXPECT_EQ(read->manifest(), backup.manifest);
    EXPECT_EQ(read->digest(), backup.digest);
    const auto records = opened(lab());
    const auto ledger = storage::Ledger{*records}.verify();
    EXPECT_EQ(backup.manifest.entries, ledger->entries);
    EXPECT_EQ(backup.manifest.head, ledger->head);
    EXPECT_EQ(backup.manifest.made, minute(75));
    const Shell shell{folder_.path() / "lab" / "records.db"};
    for (const auto& table : backup.manifest.tables)
        EXPECT_EQ(shell.value("SELECT COUNT(*) FROM \"" + table.name + '"').toLongLong(),
                  table.rows)
            << table.name;
    EXPECT_THAT(backup.manifest.tables, SizeIs(shell
                                                   .column("SELECT name FROM sqlite_schema WHERE "
                                                           "type = 'table'")
                                                   .size()));
}

TEST_F(Backups, CanBeOpenedByAnyProgramThatKnowsSqlite) {
    const auto backup = made();
    const auto before = bytesOf(backup.file);
    {
        const Shell shell{backup.file};
        EXPECT_EQ(shell.value("SELECT COUNT(*) FROM ledger").toLongLong(), backup.manifest.entries);
        EXPECT_EQ(shell.value("PRAGMA integrity_check").toString(), QStringLiteral("ok"));
    }
    EXPECT_EQ(bytesOf(backup.file), before) << "reading leaves it what it was";
}

TEST_F(Backups, LieInFoldersOfAnyName) {
    made();
    const auto records = opened(lab());
    for (const char* name :
         {"with space", "50 %41?immutable=0#part;a=b", "\xc3\xa9t\xc3\xa9'\"&"}) {
        const auto backup = storage::makeBackup(*records, safe() / name, minute(5));
        ASSERT_TRUE(backup) << backup.error().message;
        EXPECT_THAT(namesIn(safe() / name), ElementsAre(backup->file.filename().string()));
        const auto restored = storage::restoreBackup(backup->file, safe() / name / "a%20b?c#d");
        ASSERT_TRUE(restored) << restored.error().message;
    }
}

TEST_F(Backups, AreNotMadeOfDamagedRecords) {
    made();
    {
        const Shell shell{lab() / "records.db"};
        const support::WithoutGuards unguarded{shell};
        ASSERT_TRUE(shell.run("UPDATE ledger SET person = 'XX' WHERE position = 3"));
    }
    const auto records = opened(lab());
    const auto backup = storage::makeBackup(*records, safe(), minute(5));
    ASSERT_FALSE(backup);
    EXPECT_EQ(backup.error().code, ErrorCode::Unavailable);
    EXPECT_THAT(backup.error().message,
                AllOf(HasSubstr("no backup was made"), HasSubstr("entry 3 of the ledger")));
    EXPECT_THAT(namesIn(safe()), SizeIs(1));
}

TEST_F(Backups, OfTheSameMomentTakeNameAfterName) {
    const auto first = made();
    const auto second = backedUp();
    EXPECT_THAT(second.file.filename().string(), HasSubstr("-2.backup"));
    EXPECT_NE(first.file, second.file);
    EXPECT_THAT(storage::backupsIn(safe(), first.manifest.first), SizeIs(2));
}

TEST_F(Backups, ReportHowFarTheyAre) {
    made();
    const auto records = opened(lab());
    std::vector<std::string> steps;
    const auto backup = storage::makeBackup(
        *records, safe(), minute(5), [&](std::string_view doing, std::int64_t done, auto all) {
            EXPECT_LE(done, all);
            steps.push_back(std::string{doing} + (done == all ? " done" : ""));
        });
    ASSERT_TRUE(backup);
    EXPECT_THAT(steps, ElementsAre("copying done", "proving the copy", "proving the copy done"));
}

TEST_F(Backups, ShowEveryByteThatWasChanged) {
    const auto backup = made();
    const std::string good = bytesOf(backup.file);
    const auto end = good.size() - static_cast<std::size_t>(backup.manifest.databaseBytes);
    const std::size_t tail = good.size() - end;
    std::mt19937 random{20'261'125};
    int flips = 0;
    const auto intact = [](const fs::path& file) {
        const auto read = BackupFile::open(file);
        return read && read->read({});
    };
    ASSERT_TRUE(intact(altered(good)));
    // Every byte of manifest and end; one of each 211 of the pages.
    for (std::size_t at = 0; at < good.size(); at += at < tail ? 211 : 1) {
        std::string bytes = good;
        bytes[at] = static_cast<char>(bytes[at] ^ (1 << (random() % 8)));
        ASSERT_FALSE(intact(altered(bytes))) << "byte " << at;
        ++flips;
    }
    std::cout << flips << " bytes flipped in " << good.size() << '\n';
    EXPECT_GT(flips, 1000);
}

TEST_F(Backups, ThatWereAlteredAreRefusedAndLeaveNothing) {
    const auto backup = made();
    const std::string good = bytesOf(backup.file);
    for (std::size_t at = 100; at < good.size(); at += good.size() / 12) {
        std::string bytes = good;
        bytes[at] = static_cast<char>(bytes[at] ^ 1);
        const auto error = refusal(altered(bytes));
        EXPECT_EQ(error.code, ErrorCode::Unusable);
        EXPECT_THAT(error.message, HasSubstr("altered"));
    }
    std::string bytes = good;
    bytes[0] = 's';
    EXPECT_THAT(refusal(altered(bytes)).message, HasSubstr("its SHA-256 is"));
}

TEST_F(Backups, ThatWereCutShortOrWrittenOnAreRefused) {
    const auto backup = made();
    const std::string good = bytesOf(backup.file);
    for (const std::size_t lost :
         {std::size_t{1}, std::size_t{89}, std::size_t{90}, std::size_t{91}, std::size_t{4096},
          good.size() / 2, good.size() - 20}) {
        const auto error = refusal(altered(std::string_view{good}.substr(0, good.size() - lost)));
        EXPECT_EQ(error.code, ErrorCode::Unusable) << lost;
        EXPECT_THAT(error.message, HasSubstr("cut short")) << lost;
    }
    EXPECT_THAT(refusal(altered(good + '\n')).message, HasSubstr("altered"));
    EXPECT_THAT(refusal(altered(good.substr(4096))).message, HasSubstr("cut short"));
    EXPECT_THAT(refusal(altered(good + good)).message, HasSubstr("bytes of records are there"));
}

TEST_F(Backups, AreToldFromEveryOtherFile) {
    made();
    const std::pair<std::string, const char*> others[] = {
        {"", "is not a backup"},
        {"Dear laboratory,", "is not a backup"},
        {std::string(10'000, '\0'), "is not a backup"},
        {bytesOf(lab() / "records.db"), "a copy made by hand"},
    };
    for (const auto& [bytes, says] : others) {
        const auto error = refusal(altered(bytes));
        EXPECT_EQ(error.code, ErrorCode::Unusable);
        EXPECT_THAT(error.message, HasSubstr(says));
    }
    EXPECT_THAT(refusal(safe() / "nowhere.backup").message, HasSubstr("no such file"));
    EXPECT_THAT(refusal(safe()).message, HasSubstr("is not a plain file"));
    EXPECT_THAT(refusal("/dev/null").message, HasSubstr("is not a plain file"));
}

TEST_F(Backups, OfANewerProgramAreRefusedNamingBothSchemas) {
    const auto backup = made();
    const std::string good = bytesOf(backup.file);
    Manifest newer = backup.manifest;
    newer.schema = 99;
    newer.needs = 98;
    newer.program = "9.9.9";
    const auto error =
        refusal(altered(sealed(good.substr(0, static_cast<std::size_t>(newer.databaseBytes)),
                               storage::writeManifest(newer))));
    EXPECT_EQ(error.code, ErrorCode::Unavailable);
    EXPECT_THAT(error.message, AllOf(HasSubstr("schema 99"), HasSubstr("newer program (9.9.9)")));
}

TEST_F(Backups, WhoseManifestSaysSomethingElseThanTheirRecordsAreRefused) {
    const auto backup = made();
    const std::string good = bytesOf(backup.file);
    const std::string pages =
        good.substr(0, static_cast<std::size_t>(backup.manifest.databaseBytes));
    Manifest other = backup.manifest;
    other.tables.front().rows += 1;
    EXPECT_THAT(refusal(altered(sealed(pages, storage::writeManifest(other)))).message,
                HasSubstr("rows of " + other.tables.front().name));
    other = backup.manifest;
    other.head.back() = other.head.back() == '0' ? '1' : '0';
    EXPECT_THAT(refusal(altered(sealed(pages, storage::writeManifest(other)))).message,
                HasSubstr("head of the ledger"));
}

TEST_F(Backups, WhoseRecordsDoNotProveTrueAreRefused) {
    const auto backup = made();
    const std::string good = bytesOf(backup.file);
    const fs::path pages = safe() / "pages";
    write(pages, good.substr(0, static_cast<std::size_t>(backup.manifest.databaseBytes)));
    // Somebody who owns the file writes one name over another of the same length, and a new end.
    {
        const Shell shell{pages};
        const support::WithoutGuards unguarded{shell};
        ASSERT_TRUE(shell.run("UPDATE ledger SET person = 'KM' WHERE position = 2"));
    }
    const auto error =
        refusal(altered(sealed(bytesOf(pages), storage::writeManifest(backup.manifest))));
    EXPECT_EQ(error.code, ErrorCode::Unavailable);
    EXPECT_THAT(error.message, HasSubstr("entry 2 of the ledger: person is"));
}

TEST_F(Backups, AreComparedWithAHeadThatWasNotedElsewhere) {
    const auto old = made();
    {
        const auto records = opened(lab());
        ASSERT_TRUE(
            support::receive(*records, support::smallPrescription(),
                             support::occasion(minute(50), support::person("MK"), "one more")));
    }
    const auto young = backedUp(60);
    const KnownHead before{old.manifest.entries, old.manifest.head};
    const KnownHead now{young.manifest.entries, young.manifest.head};
    const auto older = refusal(old.file, now);
    EXPECT_EQ(older.code, ErrorCode::Refused);
    EXPECT_THAT(older.message, HasSubstr("is older than what is known"));
    const auto other = refusal(young.file, KnownHead{before.entries, now.hash});
    EXPECT_EQ(other.code, ErrorCode::Refused);
    EXPECT_THAT(other.message, HasSubstr("is of another history"));
    EXPECT_TRUE(storage::restoreBackup(young.file, again(), before));
}

TEST_F(Backups, AreRestoredIntoANewFolderOnly) {
    const auto backup = made();
    const auto said = [&](const fs::path& folder) {
        const auto restored = storage::restoreBackup(backup.file, folder);
        EXPECT_FALSE(restored);
        EXPECT_EQ(restored.error().code, ErrorCode::Unusable);
        return restored.error().message;
    };
    EXPECT_THAT(said(lab()), HasSubstr("into a new folder only"));
    EXPECT_THAT(said(lab() / ""), HasSubstr("into a new folder only"));
    EXPECT_THAT(said(lab() / "records.db"), HasSubstr("into a new folder only"));
    EXPECT_THAT(said(folder_.path() / "no" / "where"), HasSubstr("there is no folder"));
    EXPECT_THAT(said(""), HasSubstr("empty"));
    fs::create_symlink(folder_.path() / "nothing", folder_.path() / "link");
    EXPECT_THAT(said(folder_.path() / "link"), HasSubstr("into a new folder only"));
    EXPECT_THAT(support::problemsOf(*opened(lab())), IsEmpty());
}

TEST_F(Backups, AreNotWrittenWhereNothingCanBeWritten) {
    made();
    const auto records = opened(lab());
    // Not even the owner of the machine makes files there.
    const auto backup = storage::makeBackup(*records, "/proc/self", minute(5));
    ASSERT_FALSE(backup);
    EXPECT_EQ(backup.error().code, ErrorCode::Unavailable);
    EXPECT_THAT(backup.error().message, HasSubstr("cannot write into the folder /proc/self"));
    const auto file = storage::makeBackup(*records, lab() / "records.db", minute(5));
    ASSERT_FALSE(file);
    EXPECT_EQ(file.error().code, ErrorCode::Unusable);
    EXPECT_THAT(support::problemsOf(*records), IsEmpty());
}

/// Makes a backup in a child whose files may not grow beyond a limit; its error, "" when it did.
std::string saidWithin(rlim_t limit, const fs::path& lab, const fs::path& safe) {
    int ends[2]{};
    EXPECT_EQ(pipe(ends), 0);
    const pid_t child = fork();
    if (child == 0) {
        std::signal(SIGXFSZ, SIG_IGN);
        const rlimit files{limit, limit};
        setrlimit(RLIMIT_FSIZE, &files);
        std::string says;
        {
            const auto records = storage::Connection::open(lab, storage::Opening::Existing);
            const auto backup = records ? storage::makeBackup(**records, safe, minute(7))
                                        : domain::Result<storage::Backup>{records.error()};
            if (!backup) says = backup.error().message;
        }
        if (::write(ends[1], says.data(), says.size()) < 0) _exit(9);
        _exit(0);
    }
    close(ends[1]);
    std::string says;
    char piece[512];
    for (ssize_t got = 0; (got = ::read(ends[0], piece, sizeof piece)) > 0;)
        says.append(piece, static_cast<std::size_t>(got));
    close(ends[0]);
    int status = 0;
    EXPECT_EQ(waitpid(child, &status, 0), child);
    EXPECT_EQ(status, 0);
    return says;
}

TEST_F(Backups, ThatDoNotFitOnTheDiskLeaveNothing) {
    const auto backup = made();
    const auto size = fs::file_size(backup.file);
    int refused = 0;
    for (rlim_t limit = 0; limit < size; limit += 4096 * 3 + 57) {
        const std::string says = saidWithin(limit, lab(), safe());
        EXPECT_THAT(says, testing::Not(IsEmpty())) << limit;
        EXPECT_THAT(namesIn(safe()), SizeIs(1)) << limit;
        ++refused;
    }
    // Up to the very last byte.
    EXPECT_THAT(saidWithin(size - 1, lab(), safe()), HasSubstr("cannot write"));
    EXPECT_THAT(namesIn(safe()), SizeIs(1));
    EXPECT_EQ(saidWithin(size, lab(), safe()), "");
    EXPECT_THAT(namesIn(safe()), SizeIs(2));
    EXPECT_GT(refused, 10);
}

TEST_F(Backups, OfAProgramThatIsKilledAreWholeOrNotThere) {
    made();
    // Killed within the time two of them take, whatever that is here.
    const auto begun = std::chrono::steady_clock::now();
    backedUp(1);
    const auto two = std::chrono::duration_cast<std::chrono::microseconds>(
        2 * (std::chrono::steady_clock::now() - begun));
    std::mt19937 random{20'261'125};
    constexpr int kKills = 60;
    int leftovers = 0;
    for (int i = 0; i < kKills; ++i) {
        QProcess program;
        program.start(QCoreApplication::applicationFilePath(),
                      {"--make-backups", QString::fromStdString(lab().string()),
                       QString::fromStdString(safe().string()), "1000"});
        ASSERT_TRUE(program.waitForStarted());
        ASSERT_TRUE(program.waitForReadyRead(30'000)) << "it says when it begins";
        usleep(static_cast<useconds_t>(random() % static_cast<unsigned>(two.count())));
        program.kill();
        ASSERT_TRUE(program.waitForFinished());
        for (const std::string& name : namesIn(safe()))
            if (name.ends_with(".partial")) ++leftovers;
    }
    std::size_t whole = 0;
    for (const std::string& name : namesIn(safe())) {
        if (name.ends_with(".partial")) continue;
        const auto backup = BackupFile::open(safe() / name);
        ASSERT_TRUE(backup) << backup.error().message;
        ASSERT_TRUE(backup->read({})) << name;
        ++whole;
    }
    std::cout << kKills << " kills: " << whole << " backups, all whole; " << leftovers
              << " times a partial file was left\n";
    EXPECT_GT(whole, 1U);
    EXPECT_GT(leftovers, 0) << "a kill in the middle was tried";
    backedUp(700);
    EXPECT_THAT(namesIn(safe()), testing::Each(testing::EndsWith(".backup")))
        << "the next one removes what was left";
    EXPECT_THAT(support::problemsOf(*opened(lab())), IsEmpty());
}

// The writers rest between orders: each backup, the way back and the look at both cost by entry,
// and writers that never rest outgrow them.
TEST_F(Backups, AreTakenAndProvedWhileOthersWrite) {
    constexpr int kBackups = 10;
    made();
    QProcess writers[2];
    const char* const people[] = {"first", "second"};
    for (int i = 0; i < 2; ++i) {
        writers[i].start(
            QCoreApplication::applicationFilePath(),
            {"--write-orders", QString::fromStdString(lab().string()), "100000", people[i], "25"});
        ASSERT_TRUE(writers[i].waitForStarted());
    }
    const auto records = opened(lab());
    std::int64_t before = 0;
    std::int64_t waited = 0;
    int grown = 0;
    for (int i = 0; i < kBackups; ++i) {
        const auto backup = storage::makeBackup(*records, safe(), minute(i));
        ASSERT_TRUE(backup) << backup.error().message;
        const auto restored = storage::restoreBackup(
            backup->file, again(), KnownHead{backup->manifest.entries, backup->manifest.head});
        ASSERT_TRUE(restored) << restored.error().message;
        EXPECT_THAT(support::problemsOf(*opened(again())), IsEmpty());
        EXPECT_GE(backup->manifest.entries, before);
        if (backup->manifest.entries > before) ++grown;
        before = backup->manifest.entries;
        waited = std::max(waited, backup->writersWaited);
        fs::remove_all(again());
    }
    for (QProcess& writer : writers) {
        EXPECT_EQ(writer.state(), QProcess::Running) << writer.readAllStandardError().toStdString();
        writer.kill();
        writer.waitForFinished();
    }
    std::cout << kBackups << " backups while two programs wrote, up to " << before
              << " entries; longest wait of writers " << waited / 1000 << " ms\n";
    EXPECT_GT(grown, kBackups / 2) << "they wrote meanwhile";
    EXPECT_THAT(support::problemsOf(*records), IsEmpty());
}

TEST_F(Backups, ThatAreSupersededGoAndNothingElse) {
    storage::Backup newest = made(0);
    // Another laboratory's, kept in the same folder.
    const Folder other;
    {
        const auto records = opened(other.path());
        support::writeFloor(*records);
        ASSERT_TRUE(storage::makeBackup(*records, safe(), minute(-60 * 24 * 400)));
    }
    write(safe() / "framewright-20200101T000000Z-000001.backup", "not a backup");
    write(safe() / "notes.txt", "the safe is at the bank");
    fs::copy_file(newest.file, safe() / "my own copy.backup");
    fs::create_symlink(newest.file, safe() / "framewright-20200101T000000Z-000002.backup");
    const auto mine = namesIn(safe());
    ASSERT_THAT(mine, SizeIs(6));
    // The same state again and again, months later.
    for (int month = 1; month <= 3; ++month) newest = backedUp(60 * 24 * 31 * month);
    const auto removed = storage::removeSuperseded(newest);
    ASSERT_TRUE(removed) << removed.error().message;
    EXPECT_THAT(*removed, IsEmpty()) << "one a month";
    for (int day = 1; day <= 5; ++day) newest = backedUp(60 * 24 * 31 * 3 + day);
    const auto more = storage::removeSuperseded(newest);
    ASSERT_TRUE(more) << more.error().message;
    EXPECT_THAT(*more, SizeIs(5)) << "of one state in one month the newest stays";
    for (const std::string& name : mine) EXPECT_TRUE(fs::exists(safe() / name)) << name;
    EXPECT_TRUE(fs::exists(newest.file));
}

TEST_F(Backups, AreMadeBeforeRecordsAreUpgraded) {
    made();
    const fs::path own = storage::usualBackupFolder(lab());
    {
        const auto records = opened(lab());
        auto steps = *storage::migrations(storage::kSqlite);
        steps.push_back(
            {steps.back().step + 1, "A table more.", 1, {"CREATE TABLE more (a TEXT)"}});
        ASSERT_TRUE(storage::migrate(*records, steps, {}, storage::backupBeforeUpgrade(minute(9))));
        ASSERT_TRUE(storage::migrate(*records, steps, {}, storage::backupBeforeUpgrade(minute(9))));
    }
    ASSERT_THAT(namesIn(own), SizeIs(1)) << "once, when there was a step to take";
    const auto restored = storage::restoreBackup(own / namesIn(own).front(), again());
    ASSERT_TRUE(restored) << restored.error().message;
    EXPECT_EQ(Shell{again() / "records.db"}
                  .value("SELECT COUNT(*) FROM sqlite_schema WHERE name = 'more'")
                  .toInt(),
              0);
}

TEST_F(Backups, ThatCannotBeMadeKeepRecordsFromBeingUpgraded) {
    made();
    write(storage::usualBackupFolder(lab()), "a file where the folder would be");
    const auto records = opened(lab());
    auto steps = *storage::migrations(storage::kSqlite);
    steps.push_back({steps.back().step + 1, "A table more.", 1, {"CREATE TABLE more (a TEXT)"}});
    const auto migrated =
        storage::migrate(*records, steps, {}, storage::backupBeforeUpgrade(minute(9)));
    ASSERT_FALSE(migrated);
    EXPECT_THAT(migrated.error().message,
                AllOf(HasSubstr("are not upgraded"), HasSubstr("a folder was expected")));
    EXPECT_EQ(Shell{lab() / "records.db"}.value("SELECT MAX(step) FROM schema_step").toLongLong(),
              steps.back().step - 1);
}

/// The sealed texts of records as they lay in schema 3: salt and words in clear.
void writeClearTexts(const Shell& shell, storage::Connection& from) {
    storage::Statement rows{from.database(),
                            storage::Sql{"SELECT ciphertext, digest FROM sealed_text "
                                         "ORDER BY sealed_text_id"}};
    rows.run();
    while (rows.next()) {
        const std::string digest = rows.text("digest");
        const auto text =
            (**from.identity())
                .open({"sealed_text", digest, "ciphertext"}, rows.bytes("ciphertext"));
        ASSERT_TRUE(text) << text.error().message;
        QSqlQuery insert{shell.database()};
        ASSERT_TRUE(insert.prepare(
            "INSERT INTO sealed_text (salt, content, digest) VALUES (?, CAST(? AS TEXT), ?)"));
        insert.bindValue(0, QByteArray::fromStdString(text->substr(0, 16)));
        insert.bindValue(1, QString::fromStdString(text->substr(16)));
        insert.bindValue(2, QString::fromStdString(digest));
        ASSERT_TRUE(insert.exec());
    }
}

/// By what parties were matched then: their names as they are, where today there are digests.
void writeClearMatches(const Shell& shell, storage::Connection& from) {
    for (const domain::Order& order : support::ordersIn(from)) {
        const domain::Parties& parties = order.revision.parties;
        const auto text = storage::SealedTexts{from}.open(parties.identity);
        ASSERT_TRUE(text && *text);
        const auto full = storage::readPrescription(**text, "sealed text");
        ASSERT_TRUE(full) << full.error().message;
        const domain::Identity& identity = full->identity;
        const std::string prescriber = identity.prescriberRegistration
                                           ? "registration " + *identity.prescriberRegistration
                                           : "name " + *identity.prescriberName + ", address " +
                                                 identity.prescriberAddress.value_or("");
        const std::string patient = identity.patientReference
                                        ? "reference " + *identity.patientReference
                                        : "name " + *identity.patientName;
        const auto put = [&](const std::string& table, const std::string& words,
                             const std::string& code) {
            return shell.run("UPDATE " + table + " SET matched_by = '" + words + "' WHERE " +
                             table + "_id = " + code.substr(1));
        };
        ASSERT_TRUE(put("prescriber", prescriber, parties.prescriber));
        ASSERT_TRUE(put("patient", patient, parties.patient));
    }
}

/// Records of schema 3 with the ledger and the texts of others.
void writeSchemaThree(const fs::path& folder, const fs::path& from) {
    fs::create_directories(folder);
    const Shell shell{folder / "records.db"};
    const auto application = Shell{from / "records.db"}.value("PRAGMA application_id").toString();
    ASSERT_TRUE(shell.run("PRAGMA application_id = " + application.toStdString()));
    const auto steps = *storage::migrations(storage::kSqlite);
    for (std::size_t i = 0; i < 3; ++i) {
        for (const std::string& statement : steps[i].statements)
            ASSERT_TRUE(shell.run(statement)) << statement;
        QString description = QString::fromStdString(steps[i].description);
        description.replace(u'\'', QStringLiteral("''"));
        ASSERT_TRUE(shell.run("INSERT INTO schema_step VALUES (" + std::to_string(i + 1) + ", '" +
                              description.toStdString() + "', " + std::to_string(steps[i].needs) +
                              ")"));
    }
    ASSERT_TRUE(shell.run("ATTACH '" + (from / "records.db").string() + "' AS source"));
    ASSERT_TRUE(shell.run("DELETE FROM ledger_head"));
    for (const std::string table : {"ledger", "ledger_head", "prescriber", "patient"}) {
        std::string columns;
        for (const QVariant& name :
             shell.column("SELECT name FROM pragma_table_info('" + table + "')"))
            columns += (columns.empty() ? "" : ", ") + name.toString().toStdString();
        ASSERT_TRUE(shell.run("INSERT INTO " + table + " (" + columns + ") SELECT " + columns +
                              " FROM source." + table))
            << table;
    }
    const auto source = opened(from);
    writeClearTexts(shell, *source);
    writeClearMatches(shell, *source);
}

TEST_F(Backups, OfAnOlderSchemaAreMadeOnOpeningAndUpgradedWhenTheyComeBack) {
    made();
    const fs::path old = folder_.path() / "old";
    writeSchemaThree(old, lab());
    ASSERT_FALSE(HasFatalFailure());
    const auto newest = storage::migrations(storage::kSqlite)->back().step;
    {
        const auto records = storage::Connection::open(old, storage::Opening::Existing,
                                                       storage::backupBeforeUpgrade(minute(9)));
        ASSERT_TRUE(records) << records.error().message;
        EXPECT_THAT(support::problemsOf(**records), IsEmpty());
    }
    const auto kept = namesIn(old / "backups");
    ASSERT_THAT(kept, SizeIs(1));
    const auto backup = BackupFile::open(old / "backups" / kept.front());
    ASSERT_TRUE(backup) << backup.error().message;
    EXPECT_EQ(backup->manifest().schema, 3);
    const auto restored = storage::restoreBackup(old / "backups" / kept.front(), again());
    ASSERT_TRUE(restored) << restored.error().message;
    EXPECT_EQ(restored->schema, newest);
    const auto records = opened(again());
    EXPECT_THAT(support::problemsOf(*records), IsEmpty());
    EXPECT_EQ(support::ordersIn(*records), support::ordersIn(*opened(lab())));
    EXPECT_FALSE(fs::exists(again() / "backups"));
}

TEST(BackupManifest, ComesBackAsItWasWritten) {
    const Manifest manifest{.made = minute(3),
                            .program = "0.1.0",
                            .schema = 4,
                            .needs = 4,
                            .entries = 12,
                            .head = std::string(64, 'a'),
                            .first = std::string(64, 'b'),
                            .tables = {{"ledger", 12, 345}, {"setting", 0, 0}},
                            .databaseBytes = 8192};
    const std::string text = storage::writeManifest(manifest);
    EXPECT_THAT(text, StartsWith("framewright-backup 1\nmade "));
    const auto read = storage::readManifest(text);
    ASSERT_TRUE(read) << read.error().message;
    EXPECT_EQ(*read, manifest);
}

TEST(BackupManifest, IsRefusedInAnyOtherForm) {
    const std::string good = storage::writeManifest({.made = minute(3),
                                                     .program = "0.1.0",
                                                     .schema = 4,
                                                     .needs = 4,
                                                     .entries = 12,
                                                     .head = std::string(64, 'a'),
                                                     .first = std::string(64, 'b'),
                                                     .tables = {{"ledger", 12, 345}},
                                                     .databaseBytes = 8192});
    ASSERT_TRUE(storage::readManifest(good));
    const auto with = [&](const std::string& from, const std::string& to) {
        std::string text = good;
        text.replace(text.find(from), from.size(), to);
        return text;
    };
    const std::string others[] = {"",
                                  "\n",
                                  good + "more 1\n",
                                  good + good,
                                  good.substr(0, good.size() - 1),
                                  with("framewright-backup 1", "framewright-backup 2"),
                                  with("schema 4\n", ""),
                                  with("schema 4\n", "schema 4\nschema 4\n"),
                                  with("schema 4\nneeds 4\n", "needs 4\nschema 4\n"),
                                  with("schema 4", "schema 04"),
                                  with("schema 4", "schema -4"),
                                  with("schema 4", "schema four"),
                                  with("entries 12", "entries 99999999999999999999"),
                                  with("ledger 12 345", "ledger 12"),
                                  with("ledger 12 345", "ledger 12 345 6"),
                                  with("2026-11-25", "2026-11-26")};
    for (const std::string& text : others) EXPECT_FALSE(storage::readManifest(text)) << text;
}

}  // namespace
