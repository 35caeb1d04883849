#include "apps/desktop/models/floor_model.h"

#include <gmock/gmock.h>

#include <QAbstractItemModelTester>

#include "apps/desktop/models/mark.h"
#include "apps/desktop/models/words.h"
#include "tests/apps/desktop/floor_lines.h"

namespace {

using desktop_tests::daysAgo;
using desktop_tests::someFloor;
using desktop_tests::someNow;
using models::FloorModel;
using models::FloorSearch;
using models::Mark;
using testing::ElementsAre;

std::string cell(const QAbstractItemModel& model, int row, int column) {
    return model.index(row, column).data().toString().toStdString();
}

std::vector<std::string> patients(const QAbstractItemModel& model) {
    std::vector<std::string> list;
    for (int row = 0; row < model.rowCount(); ++row)
        list.push_back(cell(model, row, FloorModel::Patient));
    return list;
}

std::vector<std::string> found(const QString& words) {
    FloorModel floor;
    floor.show(someFloor(), someNow());
    FloorSearch search;
    search.setSourceModel(&floor);
    search.search(words);
    return patients(search);
}

TEST(FloorModel, KeepsTheModelContract) {
    FloorModel floor;
    QAbstractItemModelTester tester{&floor, QAbstractItemModelTester::FailureReportingMode::Fatal};
    floor.show(someFloor(), someNow());
    floor.show({}, someNow());
    EXPECT_EQ(floor.rowCount(), 0);
}

TEST(FloorSearchContract, HoldsWhileWordsAreTyped) {
    FloorModel floor;
    FloorSearch search;
    search.setSourceModel(&floor);
    QAbstractItemModelTester tester{&search, QAbstractItemModelTester::FailureReportingMode::Fatal};
    floor.show(someFloor(), someNow());
    search.search(QStringLiteral("obi"));
    search.search({});
    EXPECT_EQ(search.rowCount(), 4);
}

TEST(FloorModel, TellsWhoWaitsForWhomAndSinceWhen) {
    FloorModel floor;
    floor.show(someFloor(), someNow());
    const auto both = [&](int row) {
        return cell(floor, row, FloorModel::Waits) + ", " + cell(floor, row, FloorModel::Since);
    };
    EXPECT_EQ(both(0), "dentist, asked 3 d");
    EXPECT_EQ(both(1), "bench, since now");
    EXPECT_EQ(both(2), "dentist, away 2 d");
    EXPECT_EQ(both(3), ", ");
}

TEST(FloorModel, CountsTheDaysToTheDueDay) {
    FloorModel floor;
    floor.show(someFloor(), someNow());
    EXPECT_EQ(cell(floor, 0, FloorModel::Late), "late 2 d");
    EXPECT_EQ(cell(floor, 1, FloorModel::Late), "today");
    EXPECT_EQ(cell(floor, 2, FloorModel::Late), "in 5 d");
    EXPECT_EQ(cell(floor, 3, FloorModel::Late), "") << "a delivered order is never late";
    EXPECT_TRUE(floor.index(0, 0).data(FloorModel::LateRole).toBool());
    EXPECT_FALSE(floor.index(1, 0).data(FloorModel::LateRole).toBool());
    EXPECT_FALSE(floor.index(3, 0).data(FloorModel::LateRole).toBool());
}

TEST(FloorModel, GivesEveryStateItsMarkAndItsWord) {
    FloorModel floor;
    floor.show(someFloor(), someNow());
    const Mark expected[] = {Mark::Asked, Mark::InHand, Mark::Away, Mark::Done};
    for (int row = 0; row < 4; ++row) {
        EXPECT_EQ(static_cast<Mark>(
                      floor.index(row, FloorModel::State).data(FloorModel::MarkRole).toInt()),
                  expected[row]);
        EXPECT_NE(cell(floor, row, FloorModel::State), "");
    }
}

TEST(FloorSearch, FindsAWordWhateverItsCaseAndItsAccents) {
    EXPECT_THAT(found(QStringLiteral("stastna")), ElementsAre("P-101"));
    EXPECT_THAT(found(QStringLiteral("ŽOFIE")), ElementsAre("P-101"));
    EXPECT_THAT(found(QStringLiteral("sen")), ElementsAre("P-104"));
}

TEST(FloorSearch, LooksAtNumberPatientDescriptionAndStage) {
    const QString number = models::text(domain::OrderNumber::make(26, 2)->text());
    EXPECT_THAT(found(number), ElementsAre("P-102"));
    EXPECT_THAT(found(QStringLiteral("p-103")), ElementsAre("P-103"));
    EXPECT_THAT(found(QStringLiteral("co-cr")), ElementsAre("P-101", "P-102", "P-104"));
    EXPECT_THAT(found(QStringLiteral("survey")), ElementsAre("P-102"));
}

TEST(FloorSearch, WantsEveryWord) {
    EXPECT_THAT(found(QStringLiteral("obi  lower ti")), ElementsAre("P-103"));
    EXPECT_THAT(found(QStringLiteral("obi upper")), ElementsAre());
    EXPECT_EQ(found(QStringLiteral("  ")).size(), 4U);
}

TEST(Words, TellTimeInTheLargestUnitThatFits) {
    const auto minutesAgo = [](std::int64_t minutes) {
        return domain::Instant::ofMicroseconds(someNow().microseconds() - minutes * 60'000'000);
    };
    EXPECT_EQ(models::ago(minutesAgo(0), someNow()), "now");
    EXPECT_EQ(models::ago(minutesAgo(59), someNow()), "59 min");
    EXPECT_EQ(models::ago(minutesAgo(61), someNow()), "1 h");
    EXPECT_EQ(models::ago(daysAgo(1), someNow()), "1 d");
    constexpr std::int64_t kHour = std::int64_t{3'600} * 1'000'000;
    EXPECT_EQ(models::lengthWords(kHour / 2), "30 min");
    EXPECT_EQ(models::lengthWords(23 * kHour), "23 h");
    EXPECT_EQ(models::lengthWords(52 * kHour), "2 d 4 h");
    EXPECT_EQ(models::lengthWords(48 * kHour), "2 d");
}

}  // namespace
