// Records of schema 2, as they were before the ledger held the workshop, opened by this program.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QSqlError>
#include <QSqlQuery>
#include <QVariant>

#include "domain/production/evolve.h"
#include "storage/digest.h"
#include "storage/ledger.h"
#include "storage/lot_uses.h"
#include "storage/migrator.h"
#include "storage/order_register.h"
#include "storage/projections.h"
#include "tests/storage/records.h"
#include "tests/support/designs.h"
#include "tests/support/floor.h"

namespace {

using namespace domain;
using storage::Ledger;
using support::Folder;
using support::minute;
using support::opened;
using support::orderNumber;
using support::person;
using support::Shell;
using testing::IsEmpty;

/// One order's events as they were written then: without station, route or records.
std::vector<Event> oldEvents(int count, const std::vector<Happening>& happenings) {
    std::vector<Event> events;
    for (const Happening& what : happenings) {
        const auto version = static_cast<std::int64_t>(events.size()) + 1;
        events.push_back({.order = orderNumber(count),
                          .version = version,
                          .at = minute(static_cast<int>(count * 100 + version)),
                          .person = person("MK"),
                          .key = "old-" + std::to_string(count) + '-' + std::to_string(version),
                          .what = what});
    }
    return events;
}

Received receivedThen(const Prescription& prescription) {
    return {{withoutIdentity(prescription), {"P00001", "D00001", support::sealedWords()}, {}}};
}

/// One delivered, one stopped and answered in the middle of its work, one only received.
std::vector<std::vector<Event>> oldOrders() {
    std::vector<Happening> delivered{
        receivedThen(support::prescriptionOn(Route::Reline, Arch::Lower)),
        Accepted{Route::Reline, {}, {}}};
    for (const Stage stage : {Stage::Receipt, Stage::Processing, Stage::Polishing,
                              Stage::Inspection, Stage::Delivery}) {
        delivered.emplace_back(StageStarted{stage});
        delivered.emplace_back(StageDone{stage});
    }
    return {
        oldEvents(1, delivered),
        oldEvents(2, {receivedThen(support::upperClassIIIMod1()),
                      Accepted{Route::CastFramework, {}, {}}, StageStarted{Stage::Receipt},
                      StageDone{Stage::Receipt}, StageStarted{Stage::Survey},
                      Flagged{FlagReason::CastDamaged, {}}, Answered{support::sealedWords(), {}}}),
        oldEvents(3, {receivedThen(support::smallPrescription())})};
}

/// Writes entries as the program of schema 2 did.
struct OldRecords {
    const Shell& shell;
    std::int64_t entries{0};
    std::string head = std::string(64, '0');

    void add(const Event& event) {
        const QByteArray bytes = storage::encodeEvent(event);
        const QByteArray entry =
            QByteArray(1, '\0') + QByteArray::fromHex(QByteArray::fromStdString(head)) + bytes;
        head = storage::sha256({entry});
        QSqlQuery insert{shell.database()};
        insert.prepare(QStringLiteral(
            "INSERT INTO ledger (position, order_number, order_version, kind, idempotency_key, "
            "part, at_us, person, bytes, hash) VALUES (?, ?, ?, ?, ?, 1, ?, ?, ?, ?)"));
        const std::string kind{codeOf(kindOf(event))};
        for (const QVariant& value :
             {QVariant{qlonglong{++entries}}, QVariant{QString::fromStdString(event.order.text())},
              QVariant{qlonglong{event.version}}, QVariant{QString::fromStdString(kind)},
              QVariant{QString::fromStdString(event.key)},
              QVariant{qlonglong{event.at.microseconds()}},
              QVariant{QString::fromStdString(event.person.text())}, QVariant{bytes},
              QVariant{QString::fromStdString(head)}})
            insert.addBindValue(value);
        ASSERT_TRUE(insert.exec()) << insert.lastError().text().toStdString();
        ASSERT_TRUE(shell.run("UPDATE ledger_head SET entries = " + std::to_string(entries) +
                              ", hash = '" + head + "'"));
    }
    /// A row of the register that is not up to date.
    void addStaleRow(const OrderNumber& number) const {
        ASSERT_TRUE(shell.run("INSERT INTO order_register VALUES ('" + number.text() +
                              "', 1, 'received', NULL, NULL, 'manager', 'long ago', 'upper', "
                              "'upper', NULL, 1, 1, 'P00001', 'D00001', 'T000001', 'x', 0, 0)"));
    }
};

/// Only the first two steps are taken.
void writeSchemaTwo(const std::filesystem::path& folder) {
    const Folder elsewhere;
    opened(elsewhere.path());
    const std::string application =
        Shell{elsewhere.file()}.value("PRAGMA application_id").toString().toStdString();
    std::filesystem::create_directories(folder);
    const Shell shell{folder / "records.db"};
    ASSERT_TRUE(shell.run("PRAGMA application_id = " + application));
    const auto steps = *storage::migrations(storage::kSqlite);
    for (std::size_t i = 0; i < 2; ++i) {
        for (const std::string& statement : steps[i].statements)
            ASSERT_TRUE(shell.run(statement)) << statement;
        ASSERT_TRUE(
            shell.run("INSERT INTO schema_step VALUES (" + std::to_string(i + 1) + ", 'then', 1)"));
    }
    OldRecords old{shell};
    for (const auto& events : oldOrders())
        for (const Event& event : events) old.add(event);
    old.addStaleRow(orderNumber(1));
    ASSERT_EQ(shell
                  .value("SELECT COUNT(*) FROM pragma_table_info('ledger') "
                         "WHERE name = 'order_number'")
                  .toInt(),
              1);
}

TEST(OldRecords, KeepEveryOrderAndEveryDerivedRow) {
    const Folder folder;
    writeSchemaTwo(folder.path());
    ASSERT_FALSE(HasFatalFailure());
    const auto records = opened(folder.path());
    const auto report = Ledger{*records}.verify();
    ASSERT_TRUE(report) << report.error().message;
    EXPECT_EQ(report->problem, std::nullopt);
    EXPECT_EQ(report->entries, 12 + 7 + 1 + 1) << "the last one: what was taken over as found";
    const auto orders = support::ordersIn(*records);
    const auto events = oldOrders();
    ASSERT_EQ(orders.size(), events.size());
    for (std::size_t i = 0; i < orders.size(); ++i) {
        EXPECT_EQ(*Ledger{*records}.eventsOf(orders[i].number), events[i]);
        std::optional<Order> folded;
        for (const Event& event : events[i]) folded = evolve(std::move(folded), event);
        EXPECT_EQ(orders[i], *folded);
        EXPECT_EQ(*storage::OrderRegister{*records}.find(orders[i].number),
                  storage::rowOf(*folded));
    }
    EXPECT_EQ(orders[0].status, OrderStatus::Delivered);
    EXPECT_EQ(holdUp(orders[1]), "survey: in hand");
    EXPECT_EQ(orders[2].status, OrderStatus::Received);
    EXPECT_THAT(support::problemsOf(*records, storage::OrderRegister{*records}.check()), IsEmpty());
    EXPECT_THAT(support::problemsOf(*records, storage::LotUses{*records}.check()), IsEmpty());
    const Shell shell{folder.file()};
    EXPECT_EQ(shell.value("SELECT MAX(step) FROM schema_step").toLongLong(),
              storage::migrations(storage::kSqlite)->back().step);
}

TEST(OldRecords, GoOnWhereTheyStopped) {
    const Folder folder;
    writeSchemaTwo(folder.path());
    ASSERT_FALSE(HasFatalFailure());
    const auto records = opened(folder.path());
    const auto before = *storage::loadOrder(*records, orderNumber(2));
    const auto recorded = support::carryOut(
        *records, orderNumber(2), Record{{}, support::everythingFor(*before, Stage::Survey)},
        support::occasion(minute(900), person("MK"), "new-1"));
    ASSERT_TRUE(recorded) << recorded.error().message;
    const auto finished = support::carryOut(*records, orderNumber(2), Finish{},
                                            support::occasion(minute(901), person("MK"), "new-2"));
    ASSERT_TRUE(finished) << finished.error().message;
    EXPECT_EQ(currentStep(*finished)->stage, Stage::BlockOut);
    EXPECT_EQ(Ledger{*records}.verify()->problem, std::nullopt);
    EXPECT_THAT(support::problemsOf(*records, storage::OrderRegister{*records}.check()), IsEmpty());
    EXPECT_THAT(support::problemsOf(*records, storage::LotUses{*records}.check()), IsEmpty());
}

}  // namespace
