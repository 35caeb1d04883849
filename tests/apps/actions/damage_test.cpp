/// Damage to the file of the records, whatever part it hits, is never called whole: either the
/// records are refused, or a problem is named, or every row of every table reads as before.
#include <gmock/gmock.h>

#include <QSqlDatabase>
#include <QSqlError>
#include <QSqlQuery>
#include <QTemporaryDir>
#include <QUuid>
#include <QVariant>
#include <fstream>
#include <functional>
#include <iterator>
#include <random>

#include "apps/actions/verification.h"
#include "storage/ledger.h"
#include "tests/support/designs.h"
#include "tests/support/hand_clock.h"
#include "tests/support/working_laboratory.h"

namespace {

namespace fs = std::filesystem;
using support::kManager;
using testing::IsEmpty;

constexpr std::size_t kPage = 4096;  // bytes; what SQLite makes unless it is told otherwise
constexpr int kCopies = 500;
constexpr unsigned kSeed = 20'261'126;

std::string contentOf(const fs::path& file) {
    std::ifstream stream{file, std::ios::binary};
    return {std::istreambuf_iterator<char>{stream}, {}};
}

void write(const fs::path& file, const std::string& bytes) {
    std::ofstream{file, std::ios::binary | std::ios::trunc} << bytes;
}

/// Every row of every table, as SQLite's own quote() shows it.
std::string dumpOf(const fs::path& file) {
    const QString name = QUuid::createUuid().toString();
    std::string dump;
    {
        auto database = QSqlDatabase::addDatabase(QStringLiteral("QSQLITE"), name);
        database.setDatabaseName(QString::fromStdString(file.string()));
        EXPECT_TRUE(database.open());
        QSqlQuery tables{database};
        EXPECT_TRUE(tables.exec(QStringLiteral(
            "SELECT m.name, group_concat('quote(\"' || c.name || '\")', ' || '','' || ') "
            "FROM sqlite_schema m JOIN pragma_table_info(m.name) c WHERE m.type = 'table' "
            "GROUP BY m.name ORDER BY m.name")));
        while (tables.next()) {
            QSqlQuery rows{database};
            // The sort by an expression makes the engine read the table and not an index.
            EXPECT_TRUE(
                rows.exec(QStringLiteral("SELECT %2 FROM \"%1\" NOT INDEXED ORDER BY 1")
                              .arg(tables.value(0).toString(), tables.value(1).toString())));
            dump += tables.value(0).toString().toStdString() + '\n';
            while (rows.next()) dump += rows.value(0).toString().toStdString() + '\n';
            EXPECT_FALSE(rows.lastError().isValid());
        }
    }
    QSqlDatabase::removeDatabase(name);
    return dump;
}

/// Sound records, the state they were in some transactions before, and chance.
struct Victim {
    std::string bytes;
    std::string earlier;
    std::mt19937 random{kSeed};

    std::size_t upTo(std::size_t most) {
        return std::uniform_int_distribution<std::size_t>{0, most}(random);
    }
    std::size_t pages() const { return bytes.size() / kPage; }
    std::size_t anyPage() { return upTo(pages() - 1) * kPage; }
    char anyByte() { return static_cast<char>(upTo(255)); }
    std::string noise(std::size_t length) {
        std::string made(length, '\0');
        std::ranges::generate(made, [this] { return anyByte(); });
        return made;
    }
};

/// The bytes of a database that SQL makes in a file of its own.
std::string databaseOf(const std::vector<const char*>& statements) {
    const QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("made.db"));
    const QString name = QUuid::createUuid().toString();
    {
        auto database = QSqlDatabase::addDatabase(QStringLiteral("QSQLITE"), name);
        database.setDatabaseName(file);
        EXPECT_TRUE(database.open());
        for (const char* sql : statements)
            EXPECT_TRUE(QSqlQuery{database}.exec(QString::fromUtf8(sql))) << sql;
    }
    QSqlDatabase::removeDatabase(name);
    return contentOf(file.toStdString());
}

struct Kind {
    const char* name;
    std::function<std::string(Victim&)> damage;
};

std::vector<Kind> kinds() {
    return {
        {"cut off at any length",
         [](Victim& of) { return of.bytes.substr(0, of.upTo(of.bytes.size() - 1)); }},
        {"cut off to nothing", [](Victim&) { return std::string{}; }},
        {"cut off between pages", [](Victim& of) { return of.bytes.substr(0, of.anyPage()); }},
        {"a page of zeros",
         [](Victim& of) {
             return std::string{of.bytes}.replace(of.anyPage(), kPage, kPage, '\0');
         }},
        {"a page of noise",
         [](Victim& of) {
             return std::string{of.bytes}.replace(of.anyPage(), kPage, of.noise(kPage));
         }},
        {"bytes flipped",
         [](Victim& of) {
             std::string bytes = of.bytes;
             for (std::size_t more = of.upTo(7) + 1; more > 0; --more)
                 bytes[of.upTo(bytes.size() - 1)] = of.anyByte();
             return bytes;
         }},
        {"one bit flipped",
         [](Victim& of) {
             std::string bytes = of.bytes;
             char& hit = bytes[of.upTo(bytes.size() - 1)];
             hit = static_cast<char>(hit ^ (1 << of.upTo(7)));
             return bytes;
         }},
        {"the header overwritten",
         [](Victim& of) {
             constexpr std::size_t kHeader = 100;
             const std::size_t from = of.upTo(kHeader - 1);
             const std::size_t length = of.upTo(kHeader - from - 1) + 1;
             return std::string{of.bytes}.replace(from, length, of.noise(length));
         }},
        {"pages exchanged",
         [](Victim& of) {
             std::string bytes = of.bytes;
             const std::size_t one = of.anyPage();
             const std::size_t other = of.anyPage();
             std::swap_ranges(bytes.begin() + static_cast<std::ptrdiff_t>(one),
                              bytes.begin() + static_cast<std::ptrdiff_t>(one + kPage),
                              bytes.begin() + static_cast<std::ptrdiff_t>(other));
             return bytes;
         }},
        {"a page over another",
         [](Victim& of) {
             return std::string{of.bytes}.replace(of.anyPage(), kPage,
                                                  of.bytes.substr(of.anyPage(), kPage));
         }},
        {"the tail of zeros",
         [](Victim& of) {
             std::string bytes = of.bytes;
             const std::size_t from = of.upTo(bytes.size() - 1);
             return bytes.replace(from, bytes.npos, of.bytes.size() - from, '\0');
         }},
        {"some pages as they were before",
         [](Victim& of) {
             std::string bytes = of.bytes;
             for (std::size_t at = 0; at < of.earlier.size(); at += kPage)
                 if (of.upTo(1) == 0) bytes.replace(at, kPage, of.earlier, at, kPage);
             return bytes;
         }},
        {"another database",
         [](Victim& of) {
             static const std::string kOthers[] = {
                 databaseOf({"CREATE TABLE recipe (words TEXT)"}),
                 databaseOf({"PRAGMA application_id = 1179798871"}),
                 databaseOf({"PRAGMA application_id = 1179798871",
                             "CREATE TABLE schema_step (step BIGINT PRIMARY KEY NOT NULL, "
                             "description TEXT NOT NULL, needs BIGINT NOT NULL)",
                             "INSERT INTO schema_step VALUES (5, 'all', 5)"}),
                 "not a database at all, but words"};
             return kOthers[of.upTo(std::size(kOthers) - 1)];
         }},
    };
}

class Damage : public testing::Test {
protected:
    fs::path folder() const { return folder_.path().toStdString(); }
    fs::path file() const { return folder() / "records.db"; }

    /// Why they are not whole; empty when they are called whole.
    std::string verdict() const {
        const auto laboratory = actions::Laboratory::openExisting(folder(), clock_);
        if (!laboratory) return laboratory.error().message;
        const auto verification = actions::verify(*laboratory);
        if (!verification) return verification.error().message;
        return verification->problems.empty() ? std::string{} : verification->problems.front();
    }

    void damageCopiesOf(Victim victim) {
        write(file(), victim.bytes);
        ASSERT_EQ(verdict(), "");
        const std::string expected = dumpOf(file());
        const auto all = kinds();
        int harmless = 0;
        for (int copy = 0; copy < kCopies; ++copy) {
            const Kind& kind = all[static_cast<std::size_t>(copy) % all.size()];
            write(file(), kind.damage(victim));
            fs::remove(folder() / "records.db-journal");
            if (!verdict().empty()) continue;
            ++harmless;
            EXPECT_EQ(dumpOf(file()) == expected, true)
                << "copy " << copy << ", " << kind.name << ", was called whole";
        }
        std::cout << kCopies << " damaged copies: " << kCopies - harmless << " not whole, "
                  << harmless << " hit nothing that is read\n";
        EXPECT_LT(harmless, kCopies / 4);
    }

    support::HandClock clock_;
    QTemporaryDir folder_;
};

// Kept by the program of schema 4; opened once, which brings them to the present one.
TEST_F(Damage, OfRecordsThatWereKeptIsNeverCalledWhole) {
    fs::copy_file(OLD_RECORDS "/schema_4.db", file());
    const std::string before = contentOf(file());
    ASSERT_EQ(verdict(), "");
    const std::string now = contentOf(file());
    ASSERT_NE(now, before);
    damageCopiesOf({now, now});
}

TEST_F(Damage, ToWhatWasTakenOverAsFoundShows) {
    fs::copy_file(OLD_RECORDS "/schema_4.db", file());
    const auto takenOver = [this] {
        const auto laboratory = actions::Laboratory::openExisting(folder(), clock_);
        EXPECT_TRUE(laboratory);
        const auto events = storage::Ledger{laboratory->records()}.workshopEvents();
        std::vector<domain::TakenOver> all;
        for (const domain::WorkshopEvent& event : *events)
            if (const auto* taken = std::get_if<domain::TakenOver>(&event.what))
                all.push_back(*taken);
        return all;
    };
    ASSERT_EQ(takenOver().size(), 1U);
    ASSERT_EQ(takenOver().size(), 1U) << "once";
    EXPECT_FALSE(takenOver().front().settings.empty());
    EXPECT_FALSE(takenOver().front().credentials.empty());
    ASSERT_EQ(verdict(), "");
    const std::string sound = contentOf(file());
    for (const char* sql :
         {"UPDATE setting SET content = content || 'x' WHERE rowid = 1",
          "UPDATE credential SET must_change = 1 - must_change WHERE rowid = 1",
          "UPDATE session SET ended_us = NULL, last_used_us = last_used_us + 1 WHERE rowid = 1"}) {
        write(file(), sound);
        const QString name = QUuid::createUuid().toString();
        {
            auto database = QSqlDatabase::addDatabase(QStringLiteral("QSQLITE"), name);
            database.setDatabaseName(QString::fromStdString(file().string()));
            EXPECT_TRUE(database.open() && QSqlQuery{database}.exec(QString::fromUtf8(sql))) << sql;
        }
        QSqlDatabase::removeDatabase(name);
        EXPECT_NE(verdict(), "") << sql;
    }
}

TEST_F(Damage, OfRecordsAtWorkIsNeverCalledWhole) {
    Victim victim;
    {
        const auto laboratory =
            actions::Laboratory::open(folder(), clock_, storage::HashCost::Light);
        ASSERT_TRUE(laboratory) << laboratory.error().message;
        support::Floor floor{*laboratory};
        const auto number = floor.accepted(support::upperClassIIIMod1());
        floor.bringTo(number, domain::Stage::WaxUp);
        victim.earlier = contentOf(file());
        floor.pass(number);
        floor.accepted(support::lowerClassI());
        ASSERT_TRUE(actions::writeLetterhead(*laboratory, {"North Workshop", "2 Kiln Road", "n@w"},
                                             floor.as(kManager)));
    }
    victim.bytes = contentOf(file());
    damageCopiesOf(victim);
}

}  // namespace
