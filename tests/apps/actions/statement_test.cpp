/// The statement for a custom-made device: what it must say, and that it says the same ever after.
#include "apps/actions/statements.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <fstream>
#include <iterator>

#include "apps/actions/house.h"
#include "apps/actions/papers.h"
#include "apps/actions/workshop.h"
#include "tests/apps/actions/floor_bench.h"

namespace {

using actions::Declared;
using actions_tests::saidBy;
using domain::OrderNumber;
using domain::Stage;
using support::everythingDeclared;
using support::kInspector;
using support::kMaker;
using support::kManager;
using testing::AllOf;
using testing::HasSubstr;

class Statement : public actions_tests::FloorBench {
protected:
    OrderNumber atDelivery(
        const domain::Prescription& prescription = support::upperClassIIIMod1()) {
        const OrderNumber number = floor_.accepted(prescription);
        floor_.bringTo(number, Stage::Delivery);
        floor_.begin(number);
        return number;
    }
    std::string issue(const OrderNumber& number, const Declared& declared,
                      std::string_view who = kInspector) {
        return saidBy(actions::issueStatement(lab(), number, declared, floor_.as(who)));
    }
    std::string letterhead(const actions::Letterhead& head) {
        return saidBy(actions::writeLetterhead(lab(), head, floor_.as(kManager)));
    }
    /// The bytes of the paper.
    std::string printed(const OrderNumber& number) {
        const auto file =
            actions::print(lab(), number, actions::Paper::Statement, {}, floor_.as(kManager));
        EXPECT_TRUE(file) << file.error().message;
        std::ifstream paper{*file, std::ios::binary};
        return {std::istreambuf_iterator<char>{paper}, {}};
    }
};

/// What can be left out, and the word the refusal names it by.
struct LeftOut {
    const char* says;
    void (*leaveOut)(Declared&);
};

class StatementWithout : public Statement, public testing::WithParamInterface<LeftOut> {};

// Regulation (EU) 2017/745, Annex XIII, section 1: what the records cannot know.
INSTANTIATE_TEST_SUITE_P(
    WhatMustBeDeclared, StatementWithout,
    testing::Values(LeftOut{"representative", [](Declared& all) { all.representative.reset(); }},
                    LeftOut{"representative", [](Declared& all) { all.representative = ""; }},
                    LeftOut{"address", [](Declared& all) { all.representative = "Ada Quay"; }},
                    LeftOut{"institution", [](Declared& all) { all.institution.reset(); }},
                    LeftOut{"institution", [](Declared& all) { all.institution = ""; }},
                    LeftOut{"substances", [](Declared& all) { all.substances.reset(); }},
                    LeftOut{"substances", [](Declared& all) { all.substances = ""; }},
                    LeftOut{"conform", [](Declared& all) { all.conforms = false; }},
                    LeftOut{"grounds", [](Declared& all) { all.exception = "10.4.1"; }}));

TEST_P(StatementWithout, AnythingThatMustBeDeclaredIsNotIssued) {
    const OrderNumber number = atDelivery();
    Declared declared = everythingDeclared();
    GetParam().leaveOut(declared);
    const auto before = version(number);
    const std::string refused = issue(number, declared);
    EXPECT_THAT(refused, AllOf(HasSubstr("the statement lacks"), HasSubstr(GetParam().says)));
    EXPECT_EQ(version(number), before);
    EXPECT_THAT(
        saidBy(actions::print(lab(), number, actions::Paper::Statement, {}, floor_.as(kManager))),
        HasSubstr("no statement is issued yet"));
    EXPECT_EQ(issue(number, everythingDeclared()), "");
}

TEST_F(Statement, IsNotIssuedWhereTheRecordsLackWhatItSays) {
    const OrderNumber number = atDelivery();
    ASSERT_EQ(letterhead({support::kLaboratoryName, "", ""}), "");
    EXPECT_THAT(issue(number, everythingDeclared()), HasSubstr("no address of the manufacturer"));
    ASSERT_EQ(letterhead({"", support::kLaboratoryAddress, ""}), "");
    EXPECT_THAT(issue(number, everythingDeclared()), HasSubstr("no name of the manufacturer"));
    ASSERT_EQ(letterhead({support::kLaboratoryName, support::kLaboratoryAddress, ""}), "");
    EXPECT_EQ(issue(number, everythingDeclared()), "");
}

TEST_F(Statement, IsForInspectorsAndManagersToIssueAtDelivery) {
    const OrderNumber number = atDelivery();
    EXPECT_THAT(issue(number, everythingDeclared(), kMaker), HasSubstr("manager, inspector"));
    EXPECT_EQ(issue(number, everythingDeclared()), "");
    const OrderNumber early = castFramework();
    EXPECT_THAT(issue(early, everythingDeclared()), HasSubstr("the stage due is receipt"));
}

TEST_F(Statement, AsksForThePasswordOnceMore) {
    const OrderNumber number = atDelivery();
    actions::Who who = floor_.as(support::kInspector);
    const auto issueAs = [&] {
        return saidBy(actions::issueStatement(lab(), number, everythingDeclared(), who));
    };
    who.password.reset();
    EXPECT_THAT(issueAs(), HasSubstr("IN gives the password once more"));
    who = actions::proving(who, actions::Secret{"not the right one"});
    EXPECT_THAT(issueAs(), HasSubstr("not the right password"));
    EXPECT_EQ(refusals().back(), "issue-statements: wrong password, failure 1 of 5");
    EXPECT_EQ(issue(number, everythingDeclared()), "");
}

TEST_F(Statement, IsAskedForByTheGateOfDelivery) {
    const OrderNumber number = atDelivery();
    ASSERT_EQ(
        saidBy(actions::record(lab(), number, {}, floor_.records(number), floor_.as(kInspector))),
        "");
    EXPECT_THAT(saidBy(actions::finish(lab(), {number}, {}, floor_.as(kInspector))),
                HasSubstr("statement not issued"));
    ASSERT_EQ(issue(number, everythingDeclared()), "");
    EXPECT_EQ(saidBy(actions::finish(lab(), {number}, {}, floor_.as(kInspector))), "");
}

TEST_F(Statement, IsPrintedAgainWithTheSameBytes) {
    const OrderNumber number = atDelivery();
    ASSERT_EQ(issue(number, everythingDeclared()), "");
    const std::string first = printed(number);
    EXPECT_GT(first.size(), 1000U);
    clock_.letPass(support::HandClock::kDay);
    EXPECT_TRUE(printed(number) == first);
    const auto who = floor_.as(kInspector);
    ASSERT_EQ(saidBy(actions::record(lab(), number, {}, floor_.records(number), who)), "");
    ASSERT_EQ(saidBy(actions::finish(lab(), {number}, {}, who)), "");
    EXPECT_TRUE(printed(number) == first) << "delivered meanwhile";
}

TEST_F(Statement, SaysWhatItSaidWhenTheLaboratoryHasMovedSince) {
    const OrderNumber number = castFramework();
    ASSERT_EQ(saidBy(actions::enterSite(lab(), support::thing("north-foundry"),
                                        {"North Foundry", "2 Kiln Road", ""}, floor_.as(kManager))),
              "");
    floor_.bringTo(number, Stage::WaxUp);
    ASSERT_EQ(saidBy(actions::sendWork(lab(), number, support::thing("north-foundry"),
                                       floor_.as(kManager))),
              "");
    ASSERT_EQ(saidBy(actions::takeWorkBack(lab(), number, true, {}, floor_.as(kMaker))), "");
    floor_.deliver(number);
    const std::string first = printed(number);
    ASSERT_EQ(letterhead({"Easthaven Workshop", "9 Hill", "none"}), "");
    EXPECT_TRUE(printed(number) == first) << "another letterhead";
    ASSERT_EQ(saidBy(actions::writeRetention(lab(), "us-fl", floor_.as(kManager))), "");
    EXPECT_TRUE(printed(number) == first) << "another term of retention";
    ASSERT_EQ(saidBy(actions::enterSite(lab(), support::thing("north-foundry"),
                                        {"South Foundry", "3 Kiln Road", ""}, floor_.as(kManager))),
              "");
    EXPECT_TRUE(printed(number) == first) << "the site was entered anew";
}

TEST_F(Statement, NamesTheSiteAStageWasSentTo) {
    const OrderNumber number = castFramework();
    const auto site = support::thing("north-foundry");
    ASSERT_EQ(saidBy(actions::enterSite(lab(), site, {"North Foundry", "2 Kiln Road", "R-7"},
                                        floor_.as(kManager))),
              "");
    floor_.bringTo(number, Stage::WaxUp);
    ASSERT_EQ(saidBy(actions::sendWork(lab(), number, site, floor_.as(kManager))), "");
    ASSERT_EQ(saidBy(actions::takeWorkBack(lab(), number, true, {}, floor_.as(kMaker))), "");
    floor_.bringTo(number, Stage::Delivery);
    const auto statement =
        actions::statementOf(lab(), *actions::order(lab(), number), everythingDeclared());
    ASSERT_TRUE(statement) << statement.error().message;
    ASSERT_EQ(statement->sites.size(), 2U);
    EXPECT_EQ(statement->sites[0].party.name, support::kLaboratoryName);
    EXPECT_EQ(statement->sites[1].party.name, "North Foundry");
    EXPECT_EQ(statement->sites[1].party.address, "2 Kiln Road");
    EXPECT_EQ(statement->sites[1].work, "wax-up");
}

TEST_F(Statement, OfADeviceThatWasDoneAgainIsIssuedAnew) {
    const OrderNumber number = atDelivery();
    ASSERT_EQ(issue(number, everythingDeclared()), "");
    ASSERT_EQ(saidBy(actions::redo(lab(), number, domain::RedoReason::FailedInspection,
                                   Stage::Polishing, {}, {}, floor_.as(kMaker))),
              "");
    floor_.bringTo(number, Stage::Delivery);
    floor_.begin(number);
    EXPECT_THAT(saidBy(actions::finish(lab(), {number}, {}, floor_.as(kInspector))),
                HasSubstr("statement not issued"));
}

}  // namespace
