#include "apps/desktop/models/history_model.h"

#include <gtest/gtest.h>

#include <QAbstractItemModelTester>

#include "tests/apps/desktop/floor_lines.h"

namespace {

using models::HistoryModel;

actions::HistoryLine happened(std::int64_t version, domain::Happening what, const char* says,
                              const char* words) {
    return {.event = {.order = domain::OrderNumber::make(26, 1).value(),
                      .version = version,
                      .at = desktop_tests::daysAgo(9 - version),
                      .person = domain::PersonCode::parse("MK").value(),
                      .what = std::move(what)},
            .says = says,
            .words = words};
}

TEST(HistoryModel, KeepsTheModelContract) {
    HistoryModel model;
    QAbstractItemModelTester tester{&model, QAbstractItemModelTester::FailureReportingMode::Fatal};
    model.show({happened(1, domain::Received{}, "received, clean", "")});
    model.show({});
    EXPECT_EQ(model.rowCount(), 0);
}

TEST(HistoryModel, TellsTheNewestFirstWithWhoAndTheirWords) {
    HistoryModel model;
    model.show({happened(1, domain::Received{}, "received, clean", ""),
                happened(2, domain::Flagged{}, "flagged: cast damaged", "cusp of 36 broken")});
    EXPECT_EQ(model.index(0, HistoryModel::Says).data().toString(), "flagged: cast damaged");
    EXPECT_EQ(model.index(0, HistoryModel::Words).data().toString(), "cusp of 36 broken");
    EXPECT_EQ(model.index(0, HistoryModel::Person).data().toString(), "MK");
    EXPECT_EQ(model.index(0, HistoryModel::When).data().toString(), "2026-11-18 08:00 UTC");
    EXPECT_EQ(model.index(1, HistoryModel::Says).data().toString(), "received, clean");
}

}  // namespace
