/// Every command that is tried again with its key takes effect once.
#include <gmock/gmock.h>

#include "apps/actions/floor.h"
#include "apps/actions/lots.h"
#include "apps/actions/people.h"
#include "apps/actions/workshop.h"
#include "storage/ledger.h"
#include "tests/apps/actions/floor_bench.h"

namespace {

using actions::Laboratory;
using actions::Who;
using actions_tests::saidBy;
using domain::OrderNumber;
using domain::Stage;
using support::Floor;
using support::kInspector;
using support::kMaker;
using support::kManager;
using support::thing;
using testing::Contains;
using testing::Each;
using testing::HasSubstr;
using testing::Not;

const domain::Disinfection kDisinfection{"alcohol 70 %", domain::Minutes::of(5)};

/// A command, who may give it, and what brings an order to where it may be given.
struct OrderCommand {
    const char* name;
    std::string_view person;
    OrderNumber (*prepare)(Floor&, const Laboratory&);
    domain::Result<actions::Outcome> (*act)(Floor&, const Laboratory&, const OrderNumber&,
                                            const Who&);
};

template <Stage kStage>
OrderNumber due(Floor& floor, const Laboratory&) {
    const OrderNumber number = floor.accepted(support::upperClassIIIMod1());
    floor.bringTo(number, kStage);
    return number;
}
template <Stage kStage>
OrderNumber inHand(Floor& floor, const Laboratory& laboratory) {
    const OrderNumber number = due<kStage>(floor, laboratory);
    floor.begin(number);
    return number;
}
template <Stage kStage>
OrderNumber ready(Floor& floor, const Laboratory& laboratory) {
    const OrderNumber number = due<kStage>(floor, laboratory);
    floor.readyAt(number, kStage);
    return number;
}
OrderNumber away(Floor& floor, const Laboratory& laboratory) {
    const OrderNumber number = due<Stage::WaxUp>(floor, laboratory);
    EXPECT_EQ(saidBy(actions::enterSite(laboratory, thing("north-foundry"),
                                        {"North Foundry", "2 Kiln Road", ""}, floor.as(kManager))),
              "");
    return number;
}

const OrderCommand kOrderCommands[] = {
    {"Log", kManager, &due<Stage::Receipt>,
     [](Floor&, const Laboratory& lab, const OrderNumber&, const Who& who) {
         return actions::log(lab, support::upperClassIV(), who);
     }},
    {"Accept", kManager,
     [](Floor& floor, const Laboratory&) { return floor.logged(support::upperClassIIIMod1()); },
     [](Floor&, const Laboratory& lab, const OrderNumber& number, const Who& who) {
         return actions::accept(lab, number, "agreed", who);
     }},
    {"Start", kMaker, &due<Stage::Receipt>,
     [](Floor&, const Laboratory& lab, const OrderNumber& number, const Who& who) {
         return actions::start(lab, {number}, {}, who);
     }},
    {"Record", kMaker, &inHand<Stage::Receipt>,
     [](Floor& floor, const Laboratory& lab, const OrderNumber& number, const Who& who) {
         return actions::record(lab, number, {}, floor.records(number), who);
     }},
    {"Finish", kMaker, &ready<Stage::Receipt>,
     [](Floor&, const Laboratory& lab, const OrderNumber& number, const Who& who) {
         return actions::finish(lab, {number}, {}, who);
     }},
    {"Flag", kMaker, &due<Stage::Receipt>,
     [](Floor&, const Laboratory& lab, const OrderNumber& number, const Who& who) {
         return actions::flag(lab, number, domain::FlagReason::Other, "which?", who);
     }},
    {"Answer", kManager,
     [](Floor& floor, const Laboratory& lab) {
         const OrderNumber number = due<Stage::Receipt>(floor, lab);
         EXPECT_EQ(saidBy(actions::flag(lab, number, domain::FlagReason::Other, "which?",
                                        floor.as(kMaker))),
                   "");
         return number;
     },
     [](Floor&, const Laboratory& lab, const OrderNumber& number, const Who& who) {
         return actions::answer(
             lab, number, {.words = "this", .prescription = support::upperClassIIIMod1()}, who);
     }},
    {"Redo", kMaker, &due<Stage::BlockOut>,
     [](Floor&, const Laboratory& lab, const OrderNumber& number, const Who& who) {
         return actions::redo(lab, number, domain::RedoReason::PoorFit, Stage::Survey, {}, {}, who);
     }},
    {"TakeReturn", kMaker,
     [](Floor& floor, const Laboratory& lab) {
         const OrderNumber number = ready<Stage::FrameworkTryIn>(floor, lab);
         floor.begin(number);
         return number;
     },
     [](Floor&, const Laboratory& lab, const OrderNumber& number, const Who& who) {
         return actions::takeReturn(lab, {number},
                                    {domain::ReturnVerdict::GoOn, {}, {}, kDisinfection}, who);
     }},
    {"SendWork", kManager, &away,
     [](Floor&, const Laboratory& lab, const OrderNumber& number, const Who& who) {
         return actions::sendWork(lab, number, thing("north-foundry"), who);
     }},
    {"TakeWorkBack", kManager,
     [](Floor& floor, const Laboratory& lab) {
         const OrderNumber number = away(floor, lab);
         EXPECT_EQ(
             saidBy(actions::sendWork(lab, number, thing("north-foundry"), floor.as(kManager))),
             "");
         return number;
     },
     [](Floor&, const Laboratory& lab, const OrderNumber& number, const Who& who) {
         return actions::takeWorkBack(lab, number, false, "a bar is missing", who);
     }},
    {"IssueStatement", kInspector, &inHand<Stage::Delivery>,
     [](Floor&, const Laboratory& lab, const OrderNumber& number, const Who& who) {
         return actions::issueStatement(lab, number, support::everythingDeclared(), who);
     }},
    {"Withdraw", kManager, &due<Stage::Receipt>,
     [](Floor&, const Laboratory& lab, const OrderNumber& number, const Who& who) {
         return actions::withdraw(lab, number, "moved away", who);
     }},
    {"Remake", kManager, &due<Stage::Survey>,
     [](Floor&, const Laboratory& lab, const OrderNumber& number, const Who& who) {
         return actions::remake(lab, number, domain::RemakeReason::Lost, {}, {}, who);
     }},
    {"JoinCase", kManager, &due<Stage::Receipt>,
     [](Floor&, const Laboratory& lab, const OrderNumber& number, const Who& who) {
         const auto lines = *actions::floor(lab);
         for (const actions::FloorLine& line : lines)
             if (line.number != number) return actions::joinCase(lab, number, line.number, who);
         return domain::Result<actions::Outcome>{domain::Error{}};
     }},
};

class KeyOf : public actions_tests::FloorBench, public testing::WithParamInterface<OrderCommand> {
protected:
    std::int64_t entries() const { return actions::verify(lab())->entries; }
};

TEST_P(KeyOf, ACommandAboutAnOrderTakesEffectOnceAndIsAnsweredTheSame) {
    if (std::string_view{GetParam().name} == "JoinCase") castFramework();
    const OrderNumber number = GetParam().prepare(floor_, lab());
    const Who who = floor_.keyed(GetParam().person, "once");
    const auto first = GetParam().act(floor_, lab(), number, who);
    ASSERT_TRUE(first) << first.error().message;
    EXPECT_FALSE(first->repeated);
    const auto once = entries();
    for (int again = 0; again < 2; ++again) {
        const auto repeated = GetParam().act(floor_, lab(), number, who);
        ASSERT_TRUE(repeated) << repeated.error().message;
        EXPECT_TRUE(repeated->repeated);
        EXPECT_EQ(repeated->order, first->order);
    }
    EXPECT_EQ(entries(), once);
    const Who other = floor_.keyed(kManager, "once");
    EXPECT_THAT(saidBy(actions::holdLot(lab(), thing("lot-wire"), "torn", other)),
                testing::HasSubstr("this key was used for something else"));
    EXPECT_EQ(entries(), once);
}

INSTANTIATE_TEST_SUITE_P(Each, KeyOf, testing::ValuesIn(kOrderCommands),
                         [](const auto& each) { return std::string{each.param.name}; });

/// A command about the laboratory's own things.
struct HouseCommand {
    const char* name;
    domain::Result<actions::Kept> (*act)(const Laboratory&, const Who&);
};

const HouseCommand kHouseCommands[] = {
    {"ReceiveLot",
     [](const Laboratory& lab, const Who& who) {
         return actions::receiveLot(lab, thing("new"), support::lotOf(domain::LotKind::Wire, "1"),
                                    who);
     }},
    {"HoldLot",
     [](const Laboratory& lab, const Who& who) {
         return actions::holdLot(lab, thing("lot-wire"), "torn", who);
     }},
    {"ReleaseLot",
     [](const Laboratory& lab, const Who& who) {
         return actions::releaseLot(lab, thing("lot-alloy"), "whole", who);
     }},
    {"EnterEquipment",
     [](const Laboratory& lab, const Who& who) {
         return actions::enterEquipment(lab, thing("f-2"),
                                        {domain::EquipmentKind::Furnace, "S-2", {}}, who);
     }},
    {"Calibrate",
     [](const Laboratory& lab, const Who& who) {
         return actions::calibrate(lab, thing("the-furnace"), *domain::Date::parse("2027-01-01"),
                                   who);
     }},
    {"EnterSite",
     [](const Laboratory& lab, const Who& who) {
         return actions::enterSite(lab, thing("north"), {"North", "2 Kiln Road", ""}, who);
     }},
    {"EnterStation",
     [](const Laboratory& lab, const Who& who) {
         return actions::enterStation(lab, thing("wax-1"), domain::StationKind::WaxBench, who);
     }},
    {"ChangeRoute",
     [](const Laboratory& lab, const Who& who) {
         return actions::changeRoute(lab, domain::Route::CastFramework, domain::Arch::Upper,
                                     {.stage = Stage::ToothTryIn, .out = true}, who);
     }},
};

class KeyOfTheHouse : public actions_tests::FloorBench,
                      public testing::WithParamInterface<HouseCommand> {};

TEST_P(KeyOfTheHouse, ACommandTakesEffectOnce) {
    ASSERT_EQ(saidBy(actions::holdLot(lab(), thing("lot-alloy"), "torn", floor_.as(kManager))), "");
    const Who who = floor_.keyed(kManager, "once");
    const auto first = GetParam().act(lab(), who);
    ASSERT_TRUE(first) << first.error().message;
    EXPECT_FALSE(first->repeated);
    const auto once = events().size();
    const auto again = GetParam().act(lab(), who);
    ASSERT_TRUE(again) << again.error().message;
    EXPECT_TRUE(again->repeated);
    EXPECT_EQ(events().size(), once);
}

INSTANTIATE_TEST_SUITE_P(Each, KeyOfTheHouse, testing::ValuesIn(kHouseCommands),
                         [](const auto& each) { return std::string{each.param.name}; });

class Keys : public actions_tests::FloorBench {};

TEST_F(Keys, OfADifferentDeedOnTheSameThingAreRefused) {
    const Who who = floor_.keyed(kManager, "once");
    ASSERT_EQ(saidBy(actions::holdLot(lab(), thing("lot-wire"), "torn", who)), "");
    EXPECT_THAT(saidBy(actions::releaseLot(lab(), thing("lot-wire"), "whole", who)),
                testing::HasSubstr("this key was used for something else"));
    EXPECT_TRUE(actions::workshop(lab())->lots.at(thing("lot-wire")).held);
    const OrderNumber number = castFramework();
    EXPECT_THAT(saidBy(actions::start(lab(), {number}, {}, who)),
                testing::HasSubstr("this key was used for something else: lot/lot-wire"));
}

TEST_F(Keys, LogTheSamePrescriptionOnceThoughNoneWasGiven) {
    const auto first = actions::log(lab(), support::upperClassIV(), floor_.as(kManager));
    const auto again = actions::log(lab(), support::upperClassIV(), floor_.as(kManager));
    ASSERT_TRUE(first && again);
    EXPECT_EQ(again->order.number, first->order.number);
    EXPECT_TRUE(again->repeated);
}

TEST_F(Keys, EnterAPersonOnce) {
    const Who who = floor_.keyed(kManager, "once");
    const auto enter = [&] {
        return saidBy(actions::enterPerson(lab(), support::codeOfPerson("ZZ"),
                                           domain::Role::Technician, {}, who));
    };
    ASSERT_EQ(enter(), "");
    const auto once = events().size();
    EXPECT_EQ(enter(), "") << "it is the same command";
    EXPECT_EQ(events().size(), once);
    EXPECT_THAT(saidBy(actions::enterPerson(lab(), support::codeOfPerson("ZZ"),
                                            domain::Role::Inspector, {}, who)),
                testing::HasSubstr("this key was used for something else: person/ZZ"))
        << "another role is another command";
    EXPECT_EQ(events().size(), once);
}

// The same prescription is one order until it is withdrawn; then it is wanted anew.
TEST_F(Keys, LogAWithdrawnPrescriptionAnew) {
    const Who who = floor_.as(kManager);
    const auto first = actions::log(lab(), support::upperClassIV(), who);
    ASSERT_TRUE(first);
    const auto again = actions::log(lab(), support::upperClassIV(), who);
    ASSERT_TRUE(again);
    EXPECT_TRUE(again->repeated);
    EXPECT_EQ(again->before, first->order.receivedAt);
    ASSERT_TRUE(actions::withdraw(lab(), first->order.number, "not wanted", who));
    const auto anew = actions::log(lab(), support::upperClassIV(), who);
    ASSERT_TRUE(anew);
    EXPECT_FALSE(anew->repeated);
    EXPECT_NE(anew->order.number, first->order.number);
}

// Whoever types a name for a key: it is known again, and lies nowhere.
TEST_F(Keys, AreKeptSoThatNobodyIsNamed) {
    Who who = floor_.as(kManager);
    who.key = "for-zzcanary";
    const auto first = actions::log(lab(), support::upperClassIV(), who);
    ASSERT_TRUE(first);
    const auto again = actions::log(lab(), support::upperClassIV(), who);
    ASSERT_TRUE(again);
    EXPECT_TRUE(again->repeated);
    who.key = "0f9c2a51-7c5e-4b8e-9f00-2d1c5a7b3e44";
    ASSERT_TRUE(actions::accept(lab(), first->order.number, "agreed", who));
    std::vector<std::string> keys;
    ASSERT_TRUE(storage::Ledger{lab().records()}.visit(
        [&](const domain::Event& event) { keys.push_back(event.key); }));
    EXPECT_THAT(keys, Each(Not(HasSubstr("canary"))));
    EXPECT_THAT(keys, Contains(who.key)) << "a UUID stays as it is";
}

// One commit, one read of the order, at most one fold of what is new in the workshop.
TEST_F(Keys, CostOneCommitAndNoMoreStatementsAsTheRecordsGrow) {
    const OrderNumber number = floor_.accepted(support::upperClassIIIMod1());
    const Who who = floor_.as(kMaker);
    const storage::Connection& records = lab().records();
    const auto cost = [&](const auto& act) {
        const auto statements = records.statements();
        const auto commits = records.commits();
        const auto folded = lab().workshopStore().folded();
        EXPECT_EQ(saidBy(act()), "");
        EXPECT_EQ(records.commits() - commits, 1);
        EXPECT_LE(lab().workshopStore().folded() - folded, 1);
        return records.statements() - statements;
    };
    const auto orderReads = [&] { return records.runsOf("ledger_of_subject"); };
    const auto readsBefore = orderReads();
    const auto start = cost([&] { return actions::start(lab(), {number}, {}, who); });
    EXPECT_EQ(orderReads() - readsBefore, 1);
    EXPECT_LE(start, 20);
    for (int i = 0; i < 5; ++i) floor_.accepted(support::upperClassIV());
    const OrderNumber later = floor_.accepted(support::lowerClassI());
    const Who fresh = floor_.as(kMaker);
    EXPECT_LE(cost([&] { return actions::start(lab(), {later}, {}, fresh); }), start + 2)
        << "and two that read what others did meanwhile";
    const OrderNumber scanned = floor_.accepted(support::upperClassIIMod1());
    const Who scanning = floor_.as(kMaker);
    const auto readsOfScan = orderReads();
    cost([&] { return actions::scan(lab(), scanned, scanning); });
    EXPECT_EQ(orderReads() - readsOfScan, 1) << "a scan";
}

}  // namespace
