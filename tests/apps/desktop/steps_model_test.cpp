#include "apps/desktop/models/steps_model.h"

#include <gtest/gtest.h>

#include <QAbstractItemModelTester>

#include "apps/desktop/models/mark.h"
#include "tests/apps/desktop/floor_lines.h"

namespace {

using models::Mark;
using models::StepsModel;

domain::Order someOrder() {
    using namespace domain;
    Order order{.number = OrderNumber::make(26, 1).value(), .status = OrderStatus::InWork};
    order.steps = {{.stage = Stage::Receipt, .status = StageStatus::Done},
                   {.stage = Stage::Survey,
                    .status = StageStatus::InHand,
                    .person = PersonCode::parse("MK"),
                    .since = desktop_tests::someNow()},
                   {.stage = Stage::BlockOut, .status = StageStatus::ToDo}};
    return order;
}

TEST(StepsModel, KeepsTheModelContract) {
    StepsModel model;
    QAbstractItemModelTester tester{&model, QAbstractItemModelTester::FailureReportingMode::Fatal};
    model.show(someOrder());
    EXPECT_EQ(model.rowCount(), 3);
}

TEST(StepsModel, PointsAtTheStageTheOrderStandsAt) {
    StepsModel model;
    model.show(someOrder());
    EXPECT_EQ(model.dueRow(), 1);
    EXPECT_TRUE(model.index(1, 0).data(StepsModel::DueRole).toBool());
    EXPECT_FALSE(model.index(2, 0).data(StepsModel::DueRole).toBool());
    domain::Order delivered = someOrder();
    for (auto& step : delivered.steps) step.status = domain::StageStatus::Done;
    model.show(delivered);
    EXPECT_EQ(model.dueRow(), -1);
}

TEST(StepsModel, TellsEachStageWithItsMarkItsWordAndWhoHasIt) {
    StepsModel model;
    model.show(someOrder());
    const auto mark = [&](int row) {
        return static_cast<Mark>(
            model.index(row, StepsModel::State).data(StepsModel::MarkRole).toInt());
    };
    EXPECT_EQ(mark(0), Mark::Done);
    EXPECT_EQ(mark(1), Mark::InHand);
    EXPECT_EQ(mark(2), Mark::ToDo);
    EXPECT_EQ(model.index(1, StepsModel::Stage).data().toString(), "survey");
    EXPECT_EQ(model.index(1, StepsModel::State).data().toString(), "in hand");
    EXPECT_EQ(model.index(1, StepsModel::Person).data().toString(), "MK");
    EXPECT_EQ(model.index(2, StepsModel::Stage).data().toString(), "block-out");
}

}  // namespace
