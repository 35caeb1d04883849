// Whatever a database shell can do to the records shows when they are verified.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QSqlQuery>
#include <QSqlRecord>
#include <QVariant>

#include "storage/ledger.h"
#include "storage/order_register.h"
#include "tests/storage/records.h"

namespace {

using support::Folder;
using support::opened;
using support::problemsOf;
using support::Shell;
using testing::HasSubstr;
using testing::IsEmpty;

/// Ways to alter one value; `%1` is the column. Those a table's own checks refuse do no harm.
constexpr const char* kEdits[] = {
    "%1 + 1",
    "%1 + 1000",
    "-%1",
    "%1 || 'x'",
    "substr(%1, 2)",
    "''",
    "'0'",
    "x'00'",
    "NULL",
    "1.5",
    "CAST(%1 AS BLOB)",
    "CAST(%1 AS TEXT)",
    "upper(%1)",
    "replace(%1, '1', '2')",
    "CAST(substr(%1, 1, length(%1) - 1) || x'07' AS BLOB)",
};

struct Tampering : testing::Test {
    const Folder folder{};
    const std::unique_ptr<storage::Connection> records = opened(folder.path());
    const Shell shell{folder.file()};
    const support::WithoutGuards unguarded{shell};

    Tampering() {
        support::writeTwoOrders(*records);
        EXPECT_THAT(problemsOf(*records), IsEmpty());
    }

    QVariant valueAt(const QString& table, const QString& column, qlonglong row) const {
        QSqlQuery query{shell.database()};
        query.exec(
            QStringLiteral("SELECT %2 FROM %1 WHERE rowid = %3").arg(table, column).arg(row));
        return query.next() ? query.value(0) : QVariant{QStringLiteral("no such row")};
    }

    /// Whether the edit changed anything.
    bool edit(const QString& table, const QString& column, const char* how, qlonglong row) const {
        const QVariant before = valueAt(table, column, row);
        QSqlQuery query{shell.database()};
        const QString value = QString::fromUtf8(how).replace(QStringLiteral("%1"), column);
        if (!query.exec(QStringLiteral("UPDATE %1 SET %2 = %3 WHERE rowid = %4")
                            .arg(table, column, value)
                            .arg(row)))
            return false;
        const QVariant after = valueAt(table, column, row);
        return after.typeId() != before.typeId() || after != before;
    }

    /// Edits every column of every row of a table in every way, and verifies after each.
    int editAll(const QString& table) {
        int edits = 0;
        const std::string name = table.toStdString();
        std::vector<QString> columns;
        for (const QVariant& column :
             shell.column("SELECT name FROM pragma_table_info('" + name + "')"))
            columns.push_back(column.toString());
        EXPECT_TRUE(
            shell.run("CREATE TEMP TABLE kept AS SELECT rowid AS kept_row, * FROM " + name));
        for (const QVariant& row : shell.column("SELECT kept_row FROM kept"))
            for (const QString& column : columns)
                for (const char* how : kEdits) {
                    if (edit(table, column, how, row.toLongLong())) {
                        ++edits;
                        EXPECT_FALSE(problemsOf(*records).empty())
                            << name << '.' << column.toStdString() << " of row " << row.toLongLong()
                            << " = " << how;
                    }
                    restore(table, columns);
                }
        EXPECT_TRUE(shell.run("DROP TABLE kept"));
        EXPECT_THAT(problemsOf(*records), IsEmpty());
        return edits;
    }

    void restore(const QString& table, const std::vector<QString>& columns) const {
        QString list;
        for (const QString& column : columns) list += (list.isEmpty() ? "" : ", ") + column;
        const std::string name = table.toStdString();
        const std::string names = list.toStdString();
        ASSERT_TRUE(shell.run("BEGIN"));
        ASSERT_TRUE(shell.run("DELETE FROM " + name));
        ASSERT_TRUE(shell.run("INSERT INTO " + name + " (rowid, " + names + ") SELECT kept_row, " +
                              names + " FROM kept"));
        ASSERT_TRUE(shell.run("COMMIT"));
    }

    std::string firstProblem() const {
        const auto problems = problemsOf(*records);
        return problems.empty() ? "nothing" : problems.front();
    }
};

TEST_F(Tampering, EveryEditOfTheLedgerShows) { EXPECT_GT(editAll("ledger"), 800); }

TEST_F(Tampering, EveryEditOfTheHeadShows) { EXPECT_GT(editAll("ledger_head"), 15); }

TEST_F(Tampering, EveryEditOfTheRegisterShows) { EXPECT_GT(editAll("order_register"), 300); }

TEST_F(Tampering, EveryEditOfTheUsesOfLotsShows) { EXPECT_GT(editAll("lot_use"), 30); }

TEST_F(Tampering, EveryEditOfTheTotalsOfLotsShows) { EXPECT_GT(editAll("lot_total"), 5); }

TEST_F(Tampering, EveryEditOfASealedTextShows) { EXPECT_GT(editAll("sealed_text"), 150); }

TEST_F(Tampering, TheFirstBadEntryIsNamed) {
    ASSERT_TRUE(shell.run("UPDATE ledger SET person = 'XX' WHERE position = 3"));
    EXPECT_EQ(firstProblem(),
              "entry 3 of the ledger: person is \"XX\", and \"MK\" follows from the bytes");
}

TEST_F(Tampering, AMissingEntryShows) {
    for (const QVariant& position : shell.column("SELECT position FROM ledger")) {
        const std::string at = position.toString().toStdString();
        ASSERT_TRUE(shell.run("CREATE TEMP TABLE kept AS SELECT * FROM ledger"));
        ASSERT_TRUE(shell.run("DELETE FROM ledger WHERE position = " + at));
        EXPECT_FALSE(problemsOf(*records).empty()) << at;
        ASSERT_TRUE(shell.run("DELETE FROM ledger"));
        ASSERT_TRUE(shell.run("INSERT INTO ledger SELECT * FROM kept"));
        ASSERT_TRUE(shell.run("DROP TABLE kept"));
    }
    EXPECT_THAT(problemsOf(*records), IsEmpty());
}

TEST_F(Tampering, AMissingTailShowsInTheHead) {
    ASSERT_TRUE(shell.run("DELETE FROM ledger WHERE position > 8"));
    EXPECT_THAT(firstProblem(), HasSubstr("the head of the ledger says entries 10"));
    ASSERT_TRUE(shell.run("DELETE FROM ledger"));
    EXPECT_THAT(firstProblem(), HasSubstr("the head of the ledger says entries 10"));
    ASSERT_TRUE(shell.run("DELETE FROM ledger_head"));
    EXPECT_THAT(firstProblem(), HasSubstr("the head of the ledger is missing"));
}

TEST_F(Tampering, ExchangedEntriesShow) {
    ASSERT_TRUE(shell.run("UPDATE ledger SET position = 100 WHERE position = 3"));
    ASSERT_TRUE(shell.run("UPDATE ledger SET position = 3 WHERE position = 4"));
    ASSERT_TRUE(shell.run("UPDATE ledger SET position = 4 WHERE position = 100"));
    EXPECT_THAT(firstProblem(), HasSubstr("entry 3 of the ledger"));
}

TEST_F(Tampering, ARepeatedEntryShows) {
    ASSERT_TRUE(
        shell.run("INSERT INTO ledger SELECT 11, subject, 10, kind, 'again', 1, at_us, person, "
                  "bytes, hash, stream "
                  "FROM ledger WHERE position = 9"));
    EXPECT_THAT(firstProblem(), HasSubstr("entry 11 of the ledger"));
}

TEST_F(Tampering, AnInventedOrderShows) {
    ASSERT_TRUE(shell.run(
        "INSERT INTO order_register SELECT '26000999', order_version, status, "
        "stage, stage_status, waits_for, hold_up, arch, description, due_day, "
        "received_us, changed_us, patient_code, prescriber_code, identity_code, "
        "identity_digest, questions, cautions, case_leader, waiting_since_us, laboratory_us, "
        "year, count, floor_day, closed, purged, delivered_day "
        "FROM order_register LIMIT 1"));
    EXPECT_THAT(firstProblem(), HasSubstr("an order \"26000999\" in version 9 the ledger has not"));
}

TEST_F(Tampering, ASealedTextThatIsGoneShows) {
    ASSERT_TRUE(shell.run("DELETE FROM sealed_text WHERE sealed_text_id = 1"));
    EXPECT_EQ(firstProblem(), "sealed text T000001 is missing");
}

TEST_F(Tampering, ExchangedSealedTextsShow) {
    ASSERT_TRUE(shell.run("UPDATE sealed_text SET sealed_text_id = 100 WHERE sealed_text_id = 1"));
    ASSERT_TRUE(shell.run("UPDATE sealed_text SET sealed_text_id = 1 WHERE sealed_text_id = 2"));
    ASSERT_TRUE(shell.run("UPDATE sealed_text SET sealed_text_id = 2 WHERE sealed_text_id = 100"));
    EXPECT_THAT(firstProblem(), HasSubstr("sealed text T000001 was altered"));
}

}  // namespace
