// What happens to the workshop, in the same ledger as the orders.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QVariant>
#include <set>

#include "storage/ledger.h"
#include "storage/lot_uses.h"
#include "storage/projections.h"
#include "storage/workshop_store.h"
#include "tests/storage/event_samples.h"
#include "tests/storage/records.h"
#include "tests/support/floor.h"

namespace {

using namespace domain;
using storage::decodeWorkshopEvent;
using storage::encodeEvent;
using storage::Ledger;
using storage::Transaction;
using support::Folder;
using support::lotOn;
using support::minute;
using support::opened;
using support::person;
using support::sealedWords;
using support::Shell;
using support::workshopSamples;
using testing::HasSubstr;
using testing::IsEmpty;

WorkshopEvent eventOf(const Subject& subject, WorkshopHappening what) {
    return {.subject = subject,
            .version = 7,
            .at = minute(3),
            .person = person("MK"),
            .key = "clé-9",
            .what = std::move(what)};
}

TEST(WorkshopEvents, OfEveryKindAreGivenBack) {
    std::set<WorkshopEventKind> kinds;
    std::vector<WorkshopEvent> samples = workshopSamples();
    for (WorkshopEvent& later : support::laterWorkshopSamples())
        samples.push_back(std::move(later));
    for (const WorkshopEvent& event : samples) {
        kinds.insert(kindOf(event));
        const auto again = decodeWorkshopEvent(encodeEvent(event));
        ASSERT_TRUE(again) << again.error().message;
        EXPECT_EQ(*again, event);
        EXPECT_EQ(*storage::decodeEvent(encodeEvent(event)), storage::LedgerEvent{event});
        EXPECT_FALSE(storage::decodeOrderEvent(encodeEvent(event)));
    }
    EXPECT_EQ(kinds.size(), std::variant_size_v<WorkshopHappening>);
}

TEST(WorkshopEvents, AreReadFromNoAlteredByteAsTheSame) {
    for (const WorkshopEvent& event : workshopSamples()) {
        const QByteArray bytes = encodeEvent(event);
        for (qsizetype at = 0; at < bytes.size(); ++at) {
            EXPECT_FALSE(storage::decodeEvent(bytes.first(at))) << at;
            QByteArray altered = bytes;
            altered[at] = static_cast<char>(altered[at] ^ '\x01');
            const auto read = storage::decodeEvent(altered);
            if (!read) continue;
            EXPECT_NE(*read, storage::LedgerEvent{event});
            EXPECT_EQ(encodeEvent(*read), altered);
        }
    }
}

Result<Done> append(storage::Connection& records, const std::vector<WorkshopEvent>& events) {
    Transaction work = *Transaction::begin(records);
    if (auto done = Ledger{records}.append(work, events); !done) return done;
    return work.commit();
}

TEST(WorkshopLedger, FoldsTheWorkshopFromItsEvents) {
    const Folder folder;
    const auto records = opened(folder.path());
    support::writeFloor(*records);
    EXPECT_EQ(*Ledger{*records}.workshopEvents(), support::floorEvents());
    EXPECT_EQ(*storage::loadWorkshop(*records), support::floorWorkshop());
    support::writeTwoOrders(*records);
    Workshop used = support::floorWorkshop();
    used.lots.at(lotOn(LotKind::Wire)).used = 800;
    EXPECT_EQ(*storage::loadWorkshop(*records), used);
    const auto visitedOrders = [&] {
        std::size_t count = 0;
        EXPECT_TRUE(Ledger{*records}.visit([&](const Event&) { ++count; }));
        return count;
    }();
    EXPECT_EQ(visitedOrders, 10U);
    EXPECT_THAT(support::problemsOf(*records), IsEmpty());
}

TEST(WorkshopLedger, TakesAKeyOnceAndEachVersionOnce) {
    const Folder folder;
    const auto records = opened(folder.path());
    support::writeFloor(*records);
    WorkshopEvent next = eventOf({SubjectKind::Lot, lotOn(LotKind::Wire).text()}, LotHeld{});
    EXPECT_EQ(append(*records, {next}).error().code, ErrorCode::Conflict) << "7 does not follow 1";
    next.version = 2;
    next.key = support::floorEvents().front().key;
    EXPECT_EQ(append(*records, {next}).error().code, ErrorCode::Conflict) << "a key used before";
    next.key = "new";
    EXPECT_TRUE(append(*records, {next}));
    EXPECT_EQ(*Ledger{*records}.withKey("new"), std::vector<storage::LedgerEvent>{next});
    EXPECT_TRUE(storage::loadWorkshop(*records)->lots.at(lotOn(LotKind::Wire)).held);
}

TEST(WorkshopLedger, IsCoveredByTheChain) {
    const Folder folder;
    const auto records = opened(folder.path());
    support::writeFloor(*records);
    const auto entries = std::ssize(support::floorEvents());
    EXPECT_EQ(Ledger{*records}.verify()->entries, entries);
    const Shell shell{folder.file()};
    const support::WithoutGuards unguarded{shell};
    for (std::int64_t position = 1; position <= entries; ++position) {
        const std::string at = " WHERE position = " + std::to_string(position);
        for (const std::string spoilt :
             {"bytes = CAST(substr(bytes, 1, length(bytes) - 1) || x'fe' AS BLOB)",
              "subject = 'person/XX'", "person = 'XX'", "kind = 'lot-held'", "at_us = at_us + 1"}) {
            ASSERT_TRUE(shell.run("CREATE TEMP TABLE kept AS SELECT * FROM ledger" + at));
            ASSERT_TRUE(shell.run("UPDATE ledger SET " + spoilt + at));
            EXPECT_THAT(Ledger{*records}.verify()->problem.value_or("nothing"),
                        HasSubstr("entry " + std::to_string(position) + " of the ledger"))
                << spoilt;
            ASSERT_TRUE(shell.run("DELETE FROM ledger" + at));
            ASSERT_TRUE(shell.run("INSERT INTO ledger SELECT * FROM kept"));
            ASSERT_TRUE(shell.run("DROP TABLE kept"));
        }
    }
    EXPECT_EQ(Ledger{*records}.verify()->problem, std::nullopt);
}

std::int64_t amountsOf(const std::vector<storage::LotUse>& uses) {
    std::int64_t sum = 0;
    for (const storage::LotUse& use : uses) sum += use.amount;
    return sum;
}

struct UsesOfLots : testing::Test {
    const Folder folder{};
    const std::unique_ptr<storage::Connection> records = opened(folder.path());
    const storage::LotUses uses{*records};
    const Shell shell{folder.file()};

    UsesOfLots() {
        support::writeFloor(*records);
        support::writeTwoOrders(*records);
        recordTwice();
    }

    /// Two uses of one lot and one of another in one event.
    void recordTwice() const {
        const auto wire = LotUsed{lotOn(LotKind::Wire), LotKind::Wire, 150};
        const auto teeth = LotUsed{lotOn(LotKind::Teeth), LotKind::Teeth, 3};
        const auto order =
            support::carryOut(*records, support::orderNumber(1), Record{{}, {wire, teeth, wire}},
                              support::occasion(minute(60), person("TE"), "twice"));
        ASSERT_TRUE(order) << order.error().message;
    }
};

TEST_F(UsesOfLots, LeadFromALotToTheOrdersItIsIn) {
    const auto wire = *uses.ofLot(lotOn(LotKind::Wire));
    ASSERT_EQ(wire.size(), 3U);
    EXPECT_EQ(amountsOf(wire), 1'100);
    for (const storage::LotUse& use : wire) EXPECT_EQ(use.order, support::orderNumber(1));
    EXPECT_EQ(wire.front().stage, Stage::Receipt);
    EXPECT_EQ(wire.back().stage, Stage::Survey);
    EXPECT_THAT(*uses.ofLot(lotOn(LotKind::Alloy)), IsEmpty());
    const std::map<ThingCode, std::int64_t> sums{{lotOn(LotKind::Teeth), 3},
                                                 {lotOn(LotKind::Wire), 1'100}};
    EXPECT_EQ(*uses.totals(), sums);
}

TEST_F(UsesOfLots, RebuiltFromTheLedgerAreTheSame) {
    const auto all = [&] {
        return std::pair{*uses.ofLot(lotOn(LotKind::Wire)), *uses.ofLot(lotOn(LotKind::Teeth))};
    };
    const auto live = all();
    ASSERT_TRUE(shell.run("DELETE FROM lot_use WHERE kind = 'teeth'"));
    ASSERT_TRUE(shell.run("UPDATE lot_use SET amount = 1"));
    ASSERT_NE(all(), live);
    Transaction work = *Transaction::begin(*records);
    ASSERT_TRUE(storage::rebuildProjections(work));
    ASSERT_TRUE(work.commit());
    EXPECT_EQ(all(), live);
    EXPECT_THAT(support::problemsOf(*records, uses.check()), IsEmpty());
}

TEST_F(UsesOfLots, ThatWereTamperedWithAreFound) {
    EXPECT_THAT(support::problemsOf(*records, uses.check()), IsEmpty());
    ASSERT_TRUE(shell.run("UPDATE lot_use SET amount = 900 WHERE amount = 800"));
    const std::string order = "order " + support::orderNumber(1).text();
    EXPECT_THAT(support::problemsOf(*records, uses.check()),
                testing::UnorderedElementsAre(
                    order + ", lot lot-wire, 0.8 g: the table of uses does not have it",
                    order + ", lot lot-wire, 0.9 g: the ledger does not have it"));
    ASSERT_TRUE(shell.run("UPDATE lot_use SET amount = 800 WHERE amount = 900"));
    ASSERT_TRUE(shell.run("DELETE FROM lot_use WHERE kind = 'teeth'"));
    EXPECT_THAT(support::problemsOf(*records, uses.check()),
                testing::Contains(HasSubstr("lot-teeth, 3 pcs: the table of uses does not")));
}

}  // namespace
