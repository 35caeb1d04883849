#include "storage/ledger.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QSqlQuery>
#include <QVariant>
#include <map>

#include "domain/production/evolve.h"
#include "storage/digest.h"
#include "storage/event_codec.h"
#include "storage/ledger_pass.h"
#include "storage/order_register.h"
#include "tests/storage/records.h"
#include "tests/support/designs.h"

namespace {

using namespace domain;
using storage::Ledger;
using storage::Transaction;
using support::carryOut;
using support::Folder;
using support::minute;
using support::opened;
using support::orderNumber;
using support::person;
using support::Shell;
using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;

const SealedText kSealed{"T000001", std::string(64, 'a')};

Event received(const std::string& key, int count = 1) {
    return {
        .order = orderNumber(count),
        .version = 1,
        .at = minute(0),
        .person = person("MK"),
        .key = key,
        .what = Received{
            {withoutIdentity(support::smallPrescription()), {"P00001", "D00001", kSealed}, {}}}};
}

Event flagged(std::int64_t version, const std::string& key, std::string_view who = "MK") {
    return {.order = orderNumber(1),
            .version = version,
            .at = minute(static_cast<int>(version)),
            .person = person(who),
            .key = key,
            .what = Flagged{FlagReason::ShadeUnclear, {}}};
}

Result<Done> append(storage::Connection& records, const std::vector<Event>& events) {
    Transaction work = *Transaction::begin(records);
    if (auto done = Ledger{records}.append(work, events); !done) return done.error();
    return work.commit();
}

TEST(Ledger, GivesBackWhatWasAppendedInOrder) {
    const Folder folder;
    const auto records = opened(folder.path());
    const std::vector<Event> events{received("a"), flagged(2, "b"), flagged(3, "b")};
    ASSERT_TRUE(append(*records, events));
    Event later = received("c", 2);
    later.at = events.back().at;
    ASSERT_TRUE(append(*records, {later}));
    EXPECT_EQ(*Ledger{*records}.eventsOf(orderNumber(1)), events);
    EXPECT_EQ(*Ledger{*records}.withKey("b"),
              (std::vector<storage::LedgerEvent>{events[1], events[2]}));
    EXPECT_THAT(*Ledger{*records}.withKey("never"), IsEmpty());
    EXPECT_THAT(*Ledger{*records}.eventsOf(orderNumber(9)), IsEmpty());
    std::vector<Event> visited;
    ASSERT_TRUE(Ledger{*records}.visit([&](const Event& event) { visited.push_back(event); }));
    EXPECT_EQ(visited.size(), 4U);
    EXPECT_THAT(support::problemsOf(*opened(folder.path())),
                testing::Contains(HasSubstr("missing in the register")));
}

TEST(Ledger, FoldsAnOrderFromItsEvents) {
    const Folder folder;
    const auto records = opened(folder.path());
    const std::vector<Event> events{received("a"), flagged(2, "b")};
    ASSERT_TRUE(append(*records, events));
    EXPECT_EQ(**storage::loadOrder(*records, orderNumber(1)),
              evolve(evolve({}, events[0]), events[1]));
    EXPECT_FALSE(*storage::loadOrder(*records, orderNumber(2)));
}

// The construction in the header of ledger.h, computed here step by step.
TEST(Ledger, ChainsItsEntriesByHashes) {
    const Folder folder;
    const auto records = opened(folder.path());
    const std::vector<Event> events{received("a"), flagged(2, "b")};
    ASSERT_TRUE(append(*records, events));
    QByteArray previous(32, '\0');
    for (const Event& event : events) {
        const QByteArray entry = QByteArray(1, '\0') + previous + storage::encodeEvent(event);
        previous = QByteArray::fromHex(QByteArray::fromStdString(storage::sha256({entry})));
    }
    const auto report = Ledger{*records}.verify();
    EXPECT_EQ(report->entries, 2);
    EXPECT_EQ(report->head, previous.toHex().toStdString());
    EXPECT_EQ(report->problem, std::nullopt);
    EXPECT_EQ(*Ledger{*records}.newestHash(orderNumber(1)), report->head);
    EXPECT_EQ(Ledger{*records}.newestHash(orderNumber(2)).error().code, ErrorCode::Unusable);
}

domain::WorkshopEvent clockMarked() {
    return {.subject = {domain::SubjectKind::Clock, "machine"},
            .version = 1,
            .at = minute(-60),
            .person = person("MK"),
            .key = "c",
            .what = domain::ClockMarked{domain::ClockFault::Behind, minute(2)}};
}

// Formats 1 to 3 are not bound: the records of the first programs may go back in time.
TEST(Ledger, GoesBackInTimeOnlyWhereTheClockIsMarked) {
    const Folder folder;
    const auto records = opened(folder.path());
    ASSERT_TRUE(append(*records, {received("a"), flagged(2, "b")}));
    EXPECT_EQ(**Ledger{*records}.newestAt(), minute(2));
    Transaction work = *Transaction::begin(*records);
    ASSERT_TRUE(Ledger{*records}.append(work, std::vector{clockMarked()}));
    ASSERT_TRUE(work.commit());
    EXPECT_EQ(Ledger{*records}.verify()->problem, std::nullopt);
    Event early = flagged(3, "d");
    early.at = minute(-61);
    ASSERT_TRUE(append(*records, {early}));
    EXPECT_THAT(Ledger{*records}.verify()->problem.value_or(""),
                HasSubstr("entry 4 of the ledger: its time is before that of the entry before it, "
                          "and nothing marks the clock"));
}

TEST(Ledger, VerifiesWhenItIsEmpty) {
    const Folder folder;
    const auto records = opened(folder.path());
    const auto report = Ledger{*records}.verify();
    EXPECT_EQ(report->entries, 0);
    EXPECT_EQ(report->head, std::string(64, '0'));
    EXPECT_EQ(report->problem, std::nullopt);
}

TEST(Ledger, TakesAKeyOnce) {
    const Folder folder;
    const auto records = opened(folder.path());
    ASSERT_TRUE(append(*records, {received("a")}));
    const auto again = append(*records, {flagged(2, "a")});
    ASSERT_FALSE(again);
    EXPECT_EQ(again.error().code, ErrorCode::Conflict);
    EXPECT_THAT(again.error().message, HasSubstr("the key a was used before"));
    EXPECT_EQ(Ledger{*records}.verify()->entries, 1);
}

TEST(Ledger, SaysWhoChangedAnOrderMeanwhile) {
    const Folder folder;
    const auto mine = opened(folder.path());
    const auto theirs = opened(folder.path());
    ASSERT_TRUE(append(*mine, {received("a")}));
    ASSERT_TRUE(append(*theirs, {flagged(2, "b", "tech-2")}));
    const auto late = append(*mine, {flagged(2, "c")});
    ASSERT_FALSE(late);
    EXPECT_EQ(late.error().code, ErrorCode::Conflict);
    EXPECT_THAT(late.error().message, AllOf(HasSubstr(orderNumber(1).text()),
                                            HasSubstr("flagged by tech-2, 2026-11-25 00:02 UTC")));
    EXPECT_EQ(Ledger{*mine}.eventsOf(orderNumber(1))->back().person, person("tech-2"));
}

TEST(Ledger, TakesNoEventThatDoesNotFollow) {
    const Folder folder;
    const auto records = opened(folder.path());
    EXPECT_EQ(append(*records, {flagged(2, "a")}).error().code, ErrorCode::Conflict);
    ASSERT_TRUE(append(*records, {received("a")}));
    EXPECT_EQ(append(*records, {flagged(3, "b")}).error().code, ErrorCode::Conflict);
    EXPECT_EQ(Ledger{*records}.verify()->entries, 1);
}

TEST(Ledger, KeepsAllEventsOfATransactionOrNone) {
    const Folder folder;
    const auto records = opened(folder.path());
    ASSERT_FALSE(append(*records, {received("a"), flagged(2, "b"), flagged(7, "c")}));
    EXPECT_EQ(Ledger{*records}.verify()->entries, 0);
    {
        Transaction work = *Transaction::begin(*records);
        ASSERT_TRUE(Ledger{*records}.append(work, std::vector{received("a")}));
        EXPECT_EQ(Ledger{*records}.eventsOf(orderNumber(1))->size(), 1U);
    }
    EXPECT_THAT(*Ledger{*records}.eventsOf(orderNumber(1)), IsEmpty());
    EXPECT_EQ(Ledger{*records}.verify()->problem, std::nullopt);
}

TEST(Ledger, RefusesNamesAndKeysItCannotKeep) {
    const Folder folder;
    const auto records = opened(folder.path());
    Event named = received("a");
    std::get<Received>(named.what).revision.prescription.identity.patientName = "Nomina Canaria";
    EXPECT_EQ(append(*records, {named}).error().code, ErrorCode::Unusable);
    for (const std::string& key : {std::string{}, std::string(201, 'k'), std::string{"a\nb"},
                                   std::string{"a\xc3\x28"}, std::string{"a\0b", 3}})
        EXPECT_EQ(append(*records, {received(key)}).error().code, ErrorCode::Unusable) << key;
    EXPECT_EQ(Ledger{*records}.verify()->entries, 0);
}

TEST(Ledger, HoldsNobodysName) {
    const Folder folder;
    const auto records = opened(folder.path());
    support::writeTwoOrders(*records);
    const Shell shell{folder.file()};
    std::vector<std::string> names{"Canari", "NK-17", "is chipped", "on its way"};
    const Identity& identity = support::upperClassIIIMod1().identity;
    for (const auto* part : {&identity.patientName, &identity.patientReference,
                             &identity.prescriberName, &identity.prescriberAddress})
        if (*part) names.push_back(**part);
    ASSERT_GT(names.size(), 5U);
    for (const std::string& name : names) {
        const QByteArray canary = QByteArray::fromStdString(name);
        for (const auto* column : {"bytes", "subject", "idempotency_key", "person"})
            for (const QVariant& held :
                 shell.column(std::string{"SELECT "} + column + " FROM ledger"))
                EXPECT_FALSE(held.toByteArray().contains(canary)) << name << " in " << column;
    }
}

TEST(Ledger, SaysThatTheDiskIsFullAndStaysWhole) {
    const Folder folder;
    const auto records = opened(folder.path());
    const Shell shell{folder.file()};
    const int pages = shell.value("PRAGMA page_count").toInt();
    QSqlQuery limit{records->database()};
    ASSERT_TRUE(limit.exec(QStringLiteral("PRAGMA max_page_count = %1").arg(pages + 8)));
    limit.finish();
    std::optional<Error> refusal;
    int stored = 0;
    while (!refusal && stored < 1000) {
        const auto order = support::receive(
            *records, support::upperClassIV(),
            support::occasion(minute(stored), person("MK"), std::to_string(stored)));
        if (order)
            ++stored;
        else
            refusal = order.error();
    }
    ASSERT_TRUE(refusal);
    EXPECT_EQ(refusal->code, ErrorCode::Unavailable);
    EXPECT_THAT(refusal->message, HasSubstr("the disk is full"));
    EXPECT_GT(stored, 0);
    EXPECT_EQ(Ledger{*records}.verify()->entries, stored);
    EXPECT_THAT(support::problemsOf(*records), IsEmpty());
}

TEST(Ledger, SaysThatTheFileIsDamaged) {
    const Folder folder;
    opened(folder.path());
    {
        const Shell shell{folder.file()};
        ASSERT_TRUE(shell.run("PRAGMA writable_schema = ON"));
        ASSERT_TRUE(shell.run("UPDATE sqlite_schema SET rootpage = 9999 WHERE name = 'ledger'"));
    }
    const auto records = storage::Connection::open(folder.path(), storage::Opening::MakeIfMissing);
    const auto message =
        records ? Ledger{**records}.verify().error().message : records.error().message;
    EXPECT_THAT(message, HasSubstr("the file is damaged; restore a backup"));
}

TEST(Ledger, IsReadTheSameWhenHardlyAnOrderIsHeld) {
    const Folder folder;
    const auto records = opened(folder.path());
    support::writeTwoOrders(*records);
    struct Told : storage::LedgerListener {
        std::map<OrderNumber, Order> orders;
        int times{0};
        void order(const Order& order) override {
            orders.insert_or_assign(order.number, order);
            ++times;
        }
    };
    Told all;
    Told one;
    storage::LedgerListener* const toAll[] = {&all};
    storage::LedgerListener* const toOne[] = {&one};
    EXPECT_EQ(storage::readLedger(*records, toAll, storage::Chain::Verified)->problem,
              std::nullopt);
    EXPECT_EQ(storage::readLedger(*records, toOne, storage::Chain::Verified, 0)->problem,
              std::nullopt);
    EXPECT_EQ(one.orders, all.orders);
    EXPECT_EQ(all.times, 2);
    EXPECT_EQ(one.times, 2);
}

}  // namespace
