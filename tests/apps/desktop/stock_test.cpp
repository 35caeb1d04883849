/// The stock: what may be used, what may not, and whose device holds it.
#include <gmock/gmock.h>

#include <QAbstractItemModelTester>

#include "apps/actions/workshop.h"
#include "tests/apps/desktop/at_the_window.h"

namespace {

using namespace desktop_tests;
using models::EquipmentModel;
using models::LotsModel;
using models::Mark;
using models::TraceModel;
using testing::HasSubstr;

domain::Date day(const char* text) { return *domain::Date::parse(text); }

actions::LotLine lotOf(const char* code, std::int64_t amount, std::int64_t used, bool held,
                       const char* expiry) {
    return {.code = *domain::ThingCode::parse(code),
            .kept = {.lot = {.kind = domain::LotKind::ResinPowder,
                             .maker = "Invented Resins",
                             .product = "Base Pink",
                             .makersNumber = "L-77",
                             .udi = {},
                             .expiry = domain::Date::parse(expiry),
                             .certificate = {},
                             .amount = amount},
                     .held = held,
                     .used = used}};
}

TEST(LotsModel, TellsEachStateByItsWordAndItsMark) {
    LotsModel model;
    QAbstractItemModelTester tester{&model, QAbstractItemModelTester::FailureReportingMode::Fatal};
    model.show({lotOf("A", 1'000'000, 0, false, "2027-01-31"),
                lotOf("B", 1'000'000, 0, true, "2027-01-31"),
                lotOf("C", 1'000'000, 0, false, "2026-11-24"),
                lotOf("D", 1'000'000, 1'000'000, false, "2027-01-31"),
                lotOf("E", 1'000'000, 24'000, false, "2026-11-25")},
               day("2026-11-25"));
    constexpr std::pair<const char*, Mark> kExpected[] = {{"in use", Mark::InHand},
                                                          {"in quarantine", Mark::Refused},
                                                          {"expired", Mark::Refused},
                                                          {"used up", Mark::Done},
                                                          {"in use", Mark::InHand}};
    for (int row = 0; row < model.rowCount(); ++row) {
        const auto cell = model.index(row, LotsModel::State);
        EXPECT_EQ(cell.data().toString(), kExpected[row].first);
        EXPECT_EQ(static_cast<Mark>(cell.data(LotsModel::MarkRole).toInt()), kExpected[row].second);
    }
    EXPECT_EQ(model.index(4, LotsModel::Left).data().toString(), "976 g");
    EXPECT_EQ(model.index(4, LotsModel::Expiry).data().toString(), "2026-11-25");
}

TEST(EquipmentModel, TellsAnOverdueCalibrationByWordMarkAndBar) {
    domain::Workshop workshop;
    const auto put = [&](const char* code, std::optional<domain::Date> due) {
        workshop.equipment[*domain::ThingCode::parse(code)] = {
            .kind = domain::EquipmentKind::Furnace, .serial = "9", .calibrationDue = due};
    };
    put("A", day("2026-11-13"));
    put("B", day("2026-11-25"));
    put("C", {});
    EquipmentModel model;
    QAbstractItemModelTester tester{&model, QAbstractItemModelTester::FailureReportingMode::Fatal};
    model.show(workshop, day("2026-11-25"));
    EXPECT_EQ(model.index(0, EquipmentModel::State).data().toString(), "overdue 12 d");
    EXPECT_TRUE(model.index(0, 0).data(EquipmentModel::BarRole).toBool());
    EXPECT_EQ(model.index(1, EquipmentModel::State).data().toString(), "holds 0 d");
    EXPECT_FALSE(model.index(1, 0).data(EquipmentModel::BarRole).toBool());
    EXPECT_EQ(model.index(2, EquipmentModel::State).data().toString(), "needs none");
}

TEST(TraceModel, TellsWhetherTheLotIsInTheDevice) {
    TraceModel model;
    QAbstractItemModelTester tester{&model, QAbstractItemModelTester::FailureReportingMode::Fatal};
    const actions::LotLine lot = lotOf("A", 1'000'000, 0, false, "2027-01-31");
    const auto device = [](int count, bool isInDevice, const char* delivered) {
        return actions::TracedDevice{.order = *domain::OrderNumber::make(26, count),
                                     .status = domain::OrderStatus::InWork,
                                     .patient = "P-1",
                                     .amount = 24'000,
                                     .isInDevice = isInDevice,
                                     .delivered = domain::Date::parse(delivered)};
    };
    model.show({{lot.code,
                 lot.kept,
                 {device(1, true, "2026-11-20"), device(2, true, ""), device(3, false, "")}}});
    ASSERT_EQ(model.rowCount(), 3);
    EXPECT_EQ(model.index(0, TraceModel::State).data().toString(), "in it, delivered 2026-11-20");
    EXPECT_EQ(model.index(1, TraceModel::State).data().toString(), "in it, in work");
    EXPECT_EQ(model.index(2, TraceModel::State).data().toString(), "not in it: done again since");
    EXPECT_EQ(model.index(0, TraceModel::Amount).data().toString(), "24 g");
}

class Stock : public AtTheWindow {
protected:
    domain::KeptLot kept() {
        const auto lots = actions::lots(*laboratory_);
        return lots->front().kept;
    }
};

TEST_F(Stock, ReceivesHoldsAndReleasesALotWithTheKeyboard) {
    press(Qt::Key_F4);
    dialogs_.lotGiven = desktop::LotGiven{*domain::ThingCode::parse("RP-310"),
                                          lotOf("x", 1'000'000, 0, false, "2027-01-31").kept.lot};
    press(Qt::Key_F5);
    EXPECT_THAT(said(), HasSubstr("RP-310 received"));
    press(Qt::Key_F6);
    EXPECT_FALSE(kept().held) << "without a reason nothing happens";
    dialogs_.reason = "the maker called it back";
    press(Qt::Key_F6);
    EXPECT_TRUE(kept().held) << said();
    press(Qt::Key_F7);
    EXPECT_FALSE(kept().held) << said();
    press(Qt::Key_F8);
    EXPECT_FALSE(button(QStringLiteral("Trace"))->isHidden());
    EXPECT_EQ(said(), "") << "nobody took of it, which is said above the empty table";
}

TEST_F(Stock, OffersAViewerNothingThatChangesIt) {
    const actions::Who viewer = laboratory_.signIn("VV", domain::Role::Viewer, {});
    desk_.who = actions::Session{viewer.person, viewer.token, {}};
    press(Qt::Key_F4);
    for (const char* word : {"Receive", "Hold", "Release", "Trace"})
        EXPECT_FALSE(button(QString::fromLatin1(word))->isEnabled()) << word;
}

}  // namespace
