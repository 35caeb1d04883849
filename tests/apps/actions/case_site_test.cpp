/// Orders that travel together, and work that is sent to another site.
#include <gmock/gmock.h>

#include "apps/actions/papers.h"
#include "apps/actions/workshop.h"
#include "tests/apps/actions/floor_bench.h"

namespace {

using actions_tests::saidBy;
using domain::OrderNumber;
using domain::OrderStatus;
using domain::ReturnVerdict;
using domain::Stage;
using domain::StageStatus;
using domain::WaitsFor;
using support::kInspector;
using support::kMaker;
using support::kManager;
using support::thing;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

const domain::Disinfection kDisinfection{"alcohol 70 %", domain::Minutes::of(5)};

/// An upper and a lower denture of one patient.
class Case : public actions_tests::FloorBench {
protected:
    Case() {
        auto below = support::lowerClassIIIMod1();
        below.identity = support::upperClassIIIMod1().identity;
        below.issued = support::upperClassIIIMod1().issued;
        lower_ = floor_.accepted(below);
    }
    void join() {
        ASSERT_EQ(saidBy(actions::joinCase(lab(), lower_, upper_, floor_.as(kManager))), "");
    }
    std::string finishBoth() {
        return saidBy(actions::finish(lab(), {upper_, true}, {}, floor_.as(kInspector)));
    }

    OrderNumber upper_{castFramework()};
    OrderNumber lower_{upper_};
};

TEST_F(Case, IsOfOnePatientAndHasOneLeader) {
    const OrderNumber other = floor_.accepted(support::upperClassIV());
    EXPECT_THAT(saidBy(actions::joinCase(lab(), other, upper_, floor_.as(kManager))),
                HasSubstr("a case is of one patient"));
    join();
    EXPECT_EQ(order(lower_).caseLeader, upper_);
    EXPECT_THAT(actions::order(lab(), upper_)->companions, ElementsAre(lower_));
    EXPECT_THAT(actions::order(lab(), lower_)->companions, ElementsAre(upper_));
    EXPECT_THAT(saidBy(actions::joinCase(lab(), lower_, upper_, floor_.as(kManager))),
                HasSubstr("belongs to that case already"));
    EXPECT_THAT(saidBy(actions::joinCase(lab(), upper_, lower_, floor_.as(kManager))),
                HasSubstr("name that"));
}

TEST_F(Case, LeavesForTheTryInAndComesBackTogether) {
    join();
    floor_.readyAt(upper_, Stage::FrameworkTryIn);
    floor_.readyAt(lower_, Stage::FrameworkTryIn);
    ASSERT_EQ(saidBy(actions::start(lab(), {lower_, true}, {}, floor_.as(kMaker))), "");
    for (const OrderNumber& each : {upper_, lower_})
        EXPECT_EQ(step(each, Stage::FrameworkTryIn).status, StageStatus::InHand);
    ASSERT_EQ(saidBy(actions::takeReturn(lab(), {upper_, true},
                                         {ReturnVerdict::GoOn, {}, {}, kDisinfection},
                                         floor_.as(kMaker))),
              "");
    for (const OrderNumber& each : {upper_, lower_}) EXPECT_EQ(floor_.due(each), Stage::ToothSetUp);
}

TEST_F(Case, IsReturnedAllOrNone) {
    join();
    floor_.readyAt(upper_, Stage::FrameworkTryIn);
    floor_.begin(upper_);
    floor_.bringTo(lower_, Stage::FrameworkTryIn);
    const auto before = std::pair{version(upper_), version(lower_)};
    EXPECT_THAT(saidBy(actions::takeReturn(lab(), {upper_, true},
                                           {ReturnVerdict::GoOn, {}, {}, kDisinfection},
                                           floor_.as(kMaker))),
                AllOf(HasSubstr(lower_.text()), HasSubstr("nothing of it is at the practice")));
    EXPECT_EQ(std::pair(version(upper_), version(lower_)), before);
}

TEST_F(Case, IsDeliveredAllOrNone) {
    join();
    floor_.readyAt(upper_, Stage::Delivery);
    floor_.bringTo(lower_, Stage::Delivery);
    floor_.begin(lower_);
    const auto before = std::pair{version(upper_), version(lower_)};
    EXPECT_THAT(finishBoth(), AllOf(HasSubstr(lower_.text()), HasSubstr("statement not issued")));
    EXPECT_EQ(std::pair(version(upper_), version(lower_)), before);
    EXPECT_EQ(order(upper_).status, OrderStatus::InWork);
    floor_.readyAt(lower_, Stage::Delivery);
    EXPECT_EQ(finishBoth(), "");
    EXPECT_EQ(order(upper_).status, OrderStatus::Delivered);
    EXPECT_EQ(order(lower_).status, OrderStatus::Delivered);
    EXPECT_THAT(problems(), IsEmpty());
}

TEST_F(Case, DoesNothingTwiceUnderOneKey) {
    join();
    const auto who = floor_.keyed(kMaker, "both-1");
    ASSERT_EQ(saidBy(actions::start(lab(), {upper_, true}, {}, who)), "");
    const auto before = std::pair{version(upper_), version(lower_)};
    const auto again = actions::start(lab(), {upper_, true}, {}, who);
    ASSERT_TRUE(again) << again.error().message;
    EXPECT_TRUE(again->repeated);
    EXPECT_EQ(std::pair(version(upper_), version(lower_)), before);
}

TEST_F(Case, NeedsAnotherOrderAtTheSameStage) {
    join();
    floor_.pass(lower_);
    EXPECT_THAT(saidBy(actions::start(lab(), {upper_, true}, {}, floor_.as(kMaker))),
                HasSubstr("no other order of its case stands at this stage"));
}

class Site : public actions_tests::FloorBench {
protected:
    Site() {
        EXPECT_EQ(saidBy(actions::enterSite(lab(), site_, {"North Foundry", "2 Kiln Road", ""},
                                            floor_.as(kManager))),
                  "");
        floor_.bringTo(number_, Stage::WaxUp);
    }
    std::string send(const domain::ThingCode& site) {
        return saidBy(actions::sendWork(lab(), number_, site, floor_.as(kManager)));
    }
    std::string takeBack(bool passed, const std::optional<std::string>& note) {
        return saidBy(actions::takeWorkBack(lab(), number_, passed, note, floor_.as(kMaker)));
    }

    domain::ThingCode site_{thing("north-foundry")};
    OrderNumber number_{castFramework()};
};

TEST_F(Site, HasTheWorkUntilItIsTakenBack) {
    EXPECT_THAT(send(thing("nowhere")), HasSubstr("there is no site nowhere"));
    ASSERT_EQ(send(site_), "");
    EXPECT_EQ(waitsFor(order(number_)), WaitsFor::Site);
    const std::string away = "wax-up is at site north-foundry";
    EXPECT_THAT(saidBy(actions::finish(lab(), {number_}, {}, floor_.as(kMaker))), HasSubstr(away));
    EXPECT_THAT(saidBy(actions::scan(lab(), number_, floor_.as(kMaker))), HasSubstr(away));
    EXPECT_THAT(saidBy(actions::redo(lab(), number_, domain::RedoReason::PoorFit, Stage::BlockOut,
                                     {}, {}, floor_.as(kMaker))),
                HasSubstr(away));
    EXPECT_THAT(send(site_), HasSubstr(away));
    clock_.letPass(10 * support::HandClock::kDay);
    EXPECT_LT(laboratoryTime(order(number_), clock_.now()), 86'400'000'000);
    ASSERT_EQ(takeBack(true, {}), "");
    floor_.pass(number_);
    EXPECT_EQ(floor_.due(number_), Stage::Investing);
    EXPECT_EQ(step(number_, Stage::WaxUp).madeAt, site_);
    EXPECT_THAT(takeBack(true, {}), HasSubstr("nothing of it is at another site"));
}

TEST_F(Site, DoesItAgainWhenItsWorkFailsTheInspection) {
    ASSERT_EQ(send(site_), "");
    EXPECT_THAT(takeBack(false, {}), HasSubstr("what the inspection found"));
    ASSERT_EQ(takeBack(false, "a bar is missing"), "");
    EXPECT_EQ(step(number_, Stage::WaxUp).status, StageStatus::ToDo);
    EXPECT_EQ(step(number_, Stage::WaxUp).attempt, 2);
    EXPECT_EQ(step(number_, Stage::WaxUp).madeAt, std::nullopt);
    EXPECT_EQ(send(site_), "");
}

TEST_F(Site, GetsASubOrderOnPaper) {
    ASSERT_EQ(send(site_), "");
    const auto file =
        actions::print(lab(), number_, actions::Paper::SubOrder, {}, floor_.as(kManager));
    ASSERT_TRUE(file) << file.error().message;
    EXPECT_GT(std::filesystem::file_size(*file), 1000U);
}

TEST_F(Site, IsNeverSentWhatMustBeDoneInTheHouse) {
    const OrderNumber fresh = castFramework();
    for (const Stage stage : {Stage::Receipt, Stage::Inspection, Stage::Delivery}) {
        floor_.bringTo(fresh, stage);
        EXPECT_THAT(saidBy(actions::sendWork(lab(), fresh, site_, floor_.as(kManager))),
                    HasSubstr("cannot be worked at another site"))
            << codeOf(stage);
    }
}

TEST_F(Site, IsForAManagerToChoose) {
    EXPECT_THAT(saidBy(actions::sendWork(lab(), number_, site_, floor_.as(kMaker))),
                HasSubstr("manager"));
}

}  // namespace
