/// The floor by pages, and orders found by their names.
#include "apps/actions/floor.h"

#include <gmock/gmock.h>

#include <algorithm>

#include "apps/actions/clock.h"
#include "apps/actions/house.h"
#include "tests/apps/actions/floor_bench.h"

namespace {

using actions::FloorLine;
using actions_tests::saidBy;
using domain::OrderNumber;
using support::kManager;
using testing::ElementsAre;
using testing::ElementsAreArray;
using testing::IsEmpty;

std::vector<OrderNumber> numbersOf(const domain::Result<std::vector<FloorLine>>& lines) {
    EXPECT_TRUE(lines) << (lines ? "" : lines.error().message);
    std::vector<OrderNumber> numbers;
    if (lines)
        for (const FloorLine& line : *lines) numbers.push_back(line.number);
    return numbers;
}

class FloorPages : public actions_tests::FloorBench {
protected:
    /// Needed so many days later than the design says.
    OrderNumber logged(int daysLater, const domain::Identity& identity = {}) {
        auto prescription = support::upperClassIIIMod1();
        prescription.needed = prescription.needed->plusDays(daysLater);
        prescription.identity.patientReference = "P-" + std::to_string(daysLater);
        if (identity != domain::Identity{}) prescription.identity = identity;
        return floor_.logged(prescription);
    }
    OrderNumber closed(int daysLater) {
        const OrderNumber number = logged(daysLater);
        EXPECT_EQ(saidBy(actions::withdraw(lab(), number, "not wanted", floor_.as(kManager))), "");
        return number;
    }
    std::vector<OrderNumber> found(const std::string& words) {
        return numbersOf(actions::findOrders(lab(), words));
    }
};

TEST_F(FloorPages, FollowOneAnotherByTheDayAnOrderIsNeeded) {
    const OrderNumber late = logged(9);
    const OrderNumber soon = logged(1);
    const OrderNumber sameDay = logged(9);
    const OrderNumber middle = logged(5);
    closed(3);
    const std::vector<OrderNumber> all{soon, middle, late, sameDay};
    EXPECT_EQ(numbersOf(actions::floor(lab())), all);
    std::vector<OrderNumber> paged;
    std::optional<OrderNumber> last;
    for (;;) {
        const auto page = numbersOf(actions::floorPage(lab(), last, 3));
        paged.insert(paged.end(), page.begin(), page.end());
        if (page.size() < 3) break;
        last = page.back();
    }
    EXPECT_EQ(paged, all);
}

TEST_F(FloorPages, OfClosedOrdersBeginWithTheNewest) {
    logged(1);
    const OrderNumber first = closed(2);
    const OrderNumber second = closed(3);
    const OrderNumber third = closed(4);
    EXPECT_THAT(numbersOf(actions::closedPage(lab())), ElementsAre(third, second, first));
    EXPECT_THAT(numbersOf(actions::closedPage(lab(), third, 1)), ElementsAre(second));
}

TEST_F(FloorPages, AskTheRecordsTheSameHoweverManyOrdersThereAre) {
    const auto statements = [&] {
        const std::int64_t before = lab().records().statements();
        EXPECT_EQ(numbersOf(actions::floorPage(lab(), {}, 2)).size(), 2U);
        return lab().records().statements() - before;
    };
    for (int i = 0; i < 3; ++i) logged(i);
    const std::int64_t few = statements();
    for (int i = 3; i < 30; ++i) logged(i);
    EXPECT_EQ(statements(), few);
}

TEST_F(FloorPages, FindOrdersByWholeWordsOfTheirNames) {
    const OrderNumber number = logged(1, {.patientReference = "Q-77",
                                          .patientName = "Ottilie Farrenquáy",
                                          .prescriberName = "Dr Lazare Ümbelow",
                                          .prescriberAddress = "8 Weir Steps, Eastmere",
                                          .prescriberContact = "umbelow@eastmere.example",
                                          .prescriberRegistration = "D-77031",
                                          .remarks = {}});
    const OrderNumber other = logged(2);
    EXPECT_THAT(found("farrenquay"), ElementsAre(number));
    EXPECT_THAT(found("UMBELOW ottilie"), ElementsAre(number));
    EXPECT_THAT(found("q-77"), ElementsAre(number));
    EXPECT_THAT(found("umbelow P-2"), IsEmpty());
    EXPECT_THAT(found("farren"), IsEmpty());
    EXPECT_THAT(found(""), IsEmpty());
    EXPECT_THAT(found(" - "), IsEmpty());
    EXPECT_THAT(found(other.text()), ElementsAre(other));
    EXPECT_THAT(problems(), IsEmpty());
}

TEST_F(FloorPages, FindTheNewestFirstAndGoOnBelow) {
    std::vector<OrderNumber> orders;
    for (int i = 0; i < 5; ++i)
        orders.push_back(logged(i, {.patientReference = "R-" + std::to_string(i),
                                    .patientName = {},
                                    .prescriberName = "Dr Lazare Umbelow",
                                    .prescriberAddress = "8 Weir Steps, Eastmere",
                                    .prescriberContact = "umbelow@eastmere.example",
                                    .prescriberRegistration = "D-77031",
                                    .remarks = {}}));
    std::ranges::reverse(orders);
    EXPECT_THAT(found("umbelow"), ElementsAreArray(orders));
    EXPECT_THAT(numbersOf(actions::findOrders(lab(), "umbelow", orders[1], 2)),
                ElementsAre(orders[2], orders[3]));
}

TEST_F(FloorPages, FindNobodyWhoseNamesWereErased) {
    clock_.goTo(*domain::Date::parse("2028-02-20"));
    auto prescription = support::upperClassIIIMod1();
    prescription.issued = domain::Date::parse("2028-02-18");
    prescription.signature->date = domain::Date::parse("2028-02-18");
    prescription.needed = domain::Date::parse("2028-03-20");
    prescription.identity.patientReference = "Q-77";
    const OrderNumber number = floor_.accepted(prescription);
    floor_.bringTo(number, domain::Stage::Delivery);
    floor_.deliver(number);
    EXPECT_THAT(found("Q-77"), ElementsAre(number));
    clock_.goTo(*domain::Date::parse("2040-01-01"));
    ASSERT_EQ(saidBy(actions::confirmDate(lab(), lab().today(), floor_.as(kManager))), "");
    ASSERT_EQ(saidBy(actions::purge(lab(), number, floor_.as(kManager))), "");
    EXPECT_THAT(found("Q-77"), IsEmpty());
    const auto line = actions::closedPage(lab())->front();
    EXPECT_EQ(line.number, number);
    EXPECT_TRUE(line.patient.starts_with("P0000")) << line.patient;
    EXPECT_THAT(problems(), IsEmpty());
}

}  // namespace
