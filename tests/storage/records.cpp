#include "tests/storage/records.h"

#include <gtest/gtest.h>

#include <QSqlQuery>
#include <QUuid>
#include <QVariant>
#include <map>

#include "domain/production/evolve.h"
#include "domain/rules/examine.h"
#include "domain/workshop/clock_check.h"
#include "storage/files/prescription_file.h"
#include "storage/ledger.h"
#include "storage/order_register.h"
#include "storage/party_store.h"
#include "storage/projections.h"
#include "storage/records_check.h"
#include "storage/sealed_texts.h"
#include "tests/support/designs.h"
#include "tests/support/floor.h"

namespace support {

using domain::Command;
using domain::Occasion;
using domain::Order;
using domain::Result;
using storage::Connection;
using storage::Transaction;

std::unique_ptr<Connection> opened(const std::filesystem::path& folder) {
    auto records = Connection::open(folder, storage::Opening::MakeIfMissing);
    EXPECT_TRUE(records) << (records ? "" : records.error().message);
    return records ? *std::move(records) : nullptr;
}

domain::Error refusalToOpen(const std::filesystem::path& folder) {
    const auto records = Connection::open(folder, storage::Opening::MakeIfMissing);
    return records ? domain::Error{{}, "was opened"} : records.error();
}

Shell::Shell(const std::filesystem::path& file)
    : name_{QUuid::createUuid().toString()},
      database_{QSqlDatabase::addDatabase(QStringLiteral("QSQLITE"), name_)} {
    database_.setDatabaseName(QString::fromStdString(file.string()));
    EXPECT_TRUE(database_.open());
    run("PRAGMA synchronous = OFF");
}

Shell::~Shell() {
    database_.close();
    database_ = {};
    QSqlDatabase::removeDatabase(name_);
}

bool Shell::run(const std::string& sql) const {
    return QSqlQuery{database_}.exec(QString::fromStdString(sql));
}

QVariant Shell::value(const std::string& sql) const {
    const auto values = column(sql);
    return values.empty() ? QVariant{} : values.front();
}

std::vector<QVariant> Shell::column(const std::string& sql) const {
    QSqlQuery query{database_};
    EXPECT_TRUE(query.exec(QString::fromStdString(sql))) << sql;
    std::vector<QVariant> values;
    while (query.next()) values.push_back(query.value(0));
    return values;
}

WithoutGuards::WithoutGuards(const Shell& shell) : shell_{shell} {
    for (const QVariant& sql : shell.column("SELECT sql FROM sqlite_schema WHERE type = 'trigger'"))
        guards_.push_back(sql.toString().toStdString());
    for (const QVariant& name :
         shell.column("SELECT name FROM sqlite_schema WHERE type = 'trigger'"))
        EXPECT_TRUE(shell.run("DROP TRIGGER " + name.toString().toStdString()));
}

WithoutGuards::~WithoutGuards() {
    for (const std::string& guard : guards_) EXPECT_TRUE(shell_.run(guard)) << guard;
}

domain::PersonCode person(std::string_view code) { return *domain::PersonCode::parse(code); }

domain::OrderNumber orderNumber(int count) { return *domain::OrderNumber::make(26, count); }

domain::Instant minute(int count) {
    constexpr std::int64_t kMicrosecondsPerMinute = 60'000'000;
    const std::int64_t morning =
        domain::Date::parse("2026-11-25")->days() * 24 * 60 * kMicrosecondsPerMinute;
    return domain::Instant::ofMicroseconds(morning + count * kMicrosecondsPerMinute);
}

Occasion occasion(domain::Instant at, const domain::PersonCode& who, std::string key) {
    static const domain::Workshop kFloor = floorWorkshop();
    return {.at = at,
            .person = who,
            .key = std::move(key),
            .workshop = kFloor,
            .station = {},
            .legal = std::vector<domain::Finding>{}};
}

domain::Prescription smallPrescription() {
    domain::Prescription small;
    small.arch = domain::Arch::Lower;
    small.notation = domain::Notation::Iso3950;
    small.needed = domain::Date::parse("2026-12-18");
    small.identity.patientReference = "NK-17";
    small.identity.prescriberName = "Nomina Canaria";
    small.identity.prescriberAddress = "1 Canary Lane";
    return small;
}

domain::Revision sealedRevision(Transaction& work, const domain::Prescription& prescription) {
    Connection& records = work.connection();
    const storage::PartyStore people{records};
    const auto prescriber = people.prescriberCode(work, prescription.identity);
    const auto patient = people.patientCode(work, *prescriber, prescription.identity);
    const auto sealed =
        storage::SealedTexts{records}.seal(work, storage::writePrescription(prescription));
    EXPECT_TRUE(sealed);
    return {withoutIdentity(prescription),
            {*patient, *prescriber, *sealed},
            examine(prescription, examinationDay())};
}

/// Never before the newest entry, as the unit of work gives it.
Occasion inOrder(Connection& records, Occasion occasion) {
    if (const auto newest = *storage::Ledger{records}.newestAt())
        occasion.at = domain::entryTime(*newest, occasion.at);
    return occasion;
}

Result<Order> carryOut(Connection& records, const domain::OrderNumber& number,
                       const Command& command, const Occasion& given) {
    auto begun = Transaction::begin(records);
    if (!begun) return begun.error();
    Transaction work = *std::move(begun);
    const Occasion occasion = inOrder(records, given);
    auto order = storage::loadOrder(records, number);
    if (!order) return order.error();
    const auto events = decide(*order, command, occasion);
    if (!events) return events.error();
    std::optional<Order> next = *order;
    for (const domain::Event& event : *events) next = evolve(std::move(next), event);
    if (auto done = storage::Ledger{records}.append(work, *events); !done) return done.error();
    if (auto done = storage::putProjections(work, *next, *events); !done) return done.error();
    if (auto done = work.commit(); !done) return done.error();
    return *next;
}

Result<Order> receive(Connection& records, const domain::Prescription& prescription,
                      const Occasion& given) {
    auto begun = Transaction::begin(records);
    if (!begun) return begun.error();
    Transaction work = *std::move(begun);
    const Occasion occasion = inOrder(records, given);
    const auto number =
        storage::OrderRegister{records}.nextNumber(work, *domain::Date::parse("2026-11-25"));
    if (!number) return number.error();
    const auto events =
        decide({}, domain::Receive{*number, sealedRevision(work, prescription)}, occasion);
    if (!events) return events.error();
    const Order order = evolve({}, events->front());
    if (auto done = storage::Ledger{records}.append(work, *events); !done) return done.error();
    if (auto done = storage::putProjections(work, order, *events); !done) return done.error();
    if (auto done = work.commit(); !done) return done.error();
    return order;
}

void writeTwoOrders(Connection& records) {
    int step = 0;
    const auto next = [&] {
        ++step;
        return occasion(minute(step), person("MK"), "key-" + std::to_string(step));
    };
    const auto sealed = [&](const std::string& text) {
        Transaction work = *Transaction::begin(records);
        const auto words = storage::SealedTexts{records}.seal(work, text);
        EXPECT_TRUE(work.commit());
        return *words;
    };
    const auto does = [&](const domain::OrderNumber& number, const Command& command) {
        const auto order = carryOut(records, number, command, next());
        EXPECT_TRUE(order) << (order ? "" : order.error().message);
    };
    const auto first = receive(records, upperClassIIIMod1(), next());
    ASSERT_TRUE(first) << first.error().message;
    const domain::OrderNumber number = first->number;
    does(number, domain::Accept{});
    does(number, domain::Start{});
    const auto order = storage::loadOrder(records, number);
    ASSERT_TRUE(order && *order);
    auto seen = everythingFor(**order, domain::Stage::Receipt);
    seen.emplace_back(domain::LotUsed{lotOn(domain::LotKind::Wire), domain::LotKind::Wire, 800});
    does(number, domain::Record{{}, seen});
    does(number, domain::Finish{});
    does(number, domain::Start{});
    does(number, domain::Flag{domain::FlagReason::CastDamaged,
                              sealed("Nomina Canaria knows: 13 is chipped")});
    domain::Prescription answered = upperClassIIIMod1();
    answered.needed = answered.needed->plusDays(3);
    Transaction work = *Transaction::begin(records);
    const domain::Revision revision = sealedRevision(work, answered);
    ASSERT_TRUE(work.commit());
    does(number, domain::Answer{sealed("a new cast is on its way"), revision});
    ASSERT_TRUE(receive(records, smallPrescription(), next()));
}

void writeFloor(Connection& records) {
    Transaction work = *Transaction::begin(records);
    const auto done = storage::Ledger{records}.append(work, floorEvents());
    ASSERT_TRUE(done) << done.error().message;
    ASSERT_TRUE(work.commit());
}

std::vector<std::string> problemsOf(Connection& records) {
    const auto report = storage::checkRecords(records);
    return report ? report->problems : std::vector{report.error().message};
}

std::vector<std::string> problemsOf(Connection& records,
                                    std::unique_ptr<storage::TableCheck> check) {
    storage::LedgerListener* const listeners[] = {check.get()};
    const auto read = storage::readLedger(records, listeners, storage::Chain::Verified);
    if (!read) return {read.error().message};
    return read->problem ? std::vector{*read->problem} : check->problems();
}

std::vector<domain::Order> ordersIn(Connection& records) {
    struct Orders : storage::LedgerListener {
        std::map<domain::OrderNumber, domain::Order> all;
        void order(const domain::Order& order) override {
            all.insert_or_assign(order.number, order);
        }
    } orders;
    storage::LedgerListener* const listeners[] = {&orders};
    const auto read = storage::readLedger(records, listeners, storage::Chain::Trusted);
    EXPECT_TRUE(read && !read->problem);
    std::vector<domain::Order> list;
    for (auto& [number, order] : orders.all) list.push_back(std::move(order));
    return list;
}

}  // namespace support
