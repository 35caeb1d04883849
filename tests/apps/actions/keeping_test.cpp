/// The prescriber keeps something as prescribed: the order goes on, and every paper says who said
/// so.
#include <gmock/gmock.h>

#include "apps/actions/order_view.h"
#include "apps/actions/statements.h"
#include "tests/apps/actions/floor_bench.h"

namespace {

using actions_tests::saidBy;
using domain::OrderNumber;
using support::kManager;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr const char* kWhy = "the plate opposes it, as last time";

class KeepingAsPrescribed : public actions_tests::FloorBench {
protected:
    /// An arm that nothing opposes: refused, and it may be kept.
    OrderNumber unopposed() {
        auto design = support::upperClassIIIMod1();
        for (domain::Clasp& clasp : design.clasps)
            if (clasp.tooth == *domain::Tooth::parse("16")) clasp.reciprocation = {};
        const auto logged = actions::log(lab(), design, floor_.as(kManager));
        EXPECT_TRUE(logged);
        return logged->order.number;
    }
    std::string keep(const OrderNumber& number, const std::string& rule,
                     const std::string& words = kWhy) {
        return saidBy(actions::answer(lab(), number, {.keeps = {{.rule = rule, .words = words}}},
                                      floor_.as(kManager)));
    }
    std::string accept(const OrderNumber& number) {
        return saidBy(actions::accept(lab(), number, {}, floor_.as(kManager)));
    }
};

TEST_F(KeepingAsPrescribed, LetsTheOrderGoOnAsTheNextRevision) {
    const OrderNumber number = unopposed();
    EXPECT_THAT(accept(number),
                HasSubstr("the prescriber may keep as prescribed: clasp.reciprocation"));
    ASSERT_EQ(keep(number, "clasp.reciprocation"), "");
    const auto view = actions::order(lab(), number);
    ASSERT_TRUE(view);
    EXPECT_EQ(view->order.revisionNumber, 2);
    EXPECT_EQ(view->history.back().says, "answered, new revision, 1 finding, 1 kept as prescribed");
    EXPECT_THAT(view->keptWords, ElementsAre(kWhy));
    EXPECT_EQ(view->order.revision.findings.front().kept->recordedBy.text(), kManager);
    ASSERT_EQ(accept(number), "");
    floor_.deliver(number);
    EXPECT_THAT(problems(), IsEmpty());
}

TEST_F(KeepingAsPrescribed, HoldsWhenAnotherPartIsChanged) {
    const OrderNumber number = unopposed();
    ASSERT_EQ(keep(number, "clasp.reciprocation"), "");
    auto design = actions::order(lab(), number)->prescription;
    design.shades.front().tab = "A2";
    ASSERT_EQ(saidBy(actions::answer(lab(), number, {.prescription = design}, floor_.as(kManager))),
              "");
    EXPECT_EQ(order(number).revisionNumber, 3);
    EXPECT_EQ(accept(number), "");
}

TEST_F(KeepingAsPrescribed, IsRefusedWithoutAReasonAndWhereItMayNotBe) {
    const OrderNumber number = unopposed();
    EXPECT_THAT(keep(number, "clasp.reciprocation", ""), HasSubstr("why it is kept"));
    EXPECT_THAT(keep(number, "clasp.rest"), HasSubstr("nothing was found by clasp.rest"));
    auto unsignedDesign = support::upperClassIIIMod1();
    unsignedDesign.signature = {};
    const auto logged = actions::log(lab(), unsignedDesign, floor_.as(kManager));
    ASSERT_TRUE(logged);
    EXPECT_THAT(keep(logged->order.number, "admin.signature"),
                HasSubstr("cannot be kept as prescribed: the law asks it"));
    EXPECT_EQ(order(number).revisionNumber, 1) << "nothing is half done";
    EXPECT_THAT(problems(), IsEmpty());
}

TEST_F(KeepingAsPrescribed, IsTheSameDeedOnlyWithTheSameWords) {
    const OrderNumber number = unopposed();
    auto who = floor_.as(kManager);
    who.key = "00000000-0000-4000-8000-000000000007";
    const actions::AnswerGiven given{.keeps = {{.rule = "clasp.reciprocation", .words = kWhy}}};
    ASSERT_EQ(saidBy(actions::answer(lab(), number, given, who)), "");
    EXPECT_EQ(saidBy(actions::answer(lab(), number, given, who)), "");
    EXPECT_EQ(order(number).revisionNumber, 2);
    auto other = given;
    other.keeps.front().words = "another reason";
    EXPECT_NE(saidBy(actions::answer(lab(), number, other, who)), "");
}

TEST_F(KeepingAsPrescribed, IsNotNeededWhereAChangeOfferedIsTaken) {
    const OrderNumber number = unopposed();
    const auto take = [&](std::vector<actions::TakeGiven> takes) {
        return saidBy(
            actions::answer(lab(), number, {.takes = std::move(takes)}, floor_.as(kManager)));
    };
    const auto tooth = domain::Tooth::parse("16");
    EXPECT_THAT(take({{"clasp.reciprocation", tooth, 9}}), HasSubstr("there is no offer 9"));
    EXPECT_THAT(take({{"clasp.rest", tooth, 1}}), HasSubstr("nothing was found by clasp.rest"));
    EXPECT_THAT(take({{"clasp.reciprocation", tooth, 1}, {"clasp.reciprocation", tooth, 2}}),
                HasSubstr("is settled by another change taken already"));
    EXPECT_EQ(order(number).revisionNumber, 1) << "nothing is half done";
    ASSERT_EQ(take({{"clasp.reciprocation", tooth, 1}}), "");
    EXPECT_THAT(order(number).revision.findings, IsEmpty());
    EXPECT_EQ(accept(number), "");
}

TEST_F(KeepingAsPrescribed, StandsInTheStatement) {
    const OrderNumber number = unopposed();
    ASSERT_EQ(keep(number, "clasp.reciprocation"), "");
    const auto view = actions::order(lab(), number);
    ASSERT_TRUE(view);
    const auto statement = actions::statementOf(lab(), *view, {});
    ASSERT_TRUE(statement);
    EXPECT_THAT(statement->characteristics.lines.back(),
                testing::AllOf(HasSubstr("Kept as prescribed by the prescriber: 16"),
                               HasSubstr(std::string{"reason given: "} + kWhy)));
}

}  // namespace
