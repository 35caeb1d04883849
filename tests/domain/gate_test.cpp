#include "domain/production/gate.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/floor.h"
#include "tests/support/floor_facts.h"

namespace {

using namespace domain;
using namespace support;
using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;

/// A stage of a route, whose gate is looked at.
struct At {
    Route route{};
    Arch arch{};
    Stage stage{};
};

std::vector<At> everyGate() {
    std::vector<At> all;
    for (const auto& route : enumCodes<Route>)
        for (const auto& arch : enumCodes<Arch>)
            for (const Stage stage : stagesWrittenOut(route.value))
                all.push_back({route.value, arch.value, stage});
    return all;
}

std::string nameOfGate(const testing::TestParamInfo<At>& info) {
    std::string name = std::string{codeOf(info.param.route)} + '_' +
                       std::string{codeOf(info.param.arch)} + '_' +
                       std::string{codeOf(info.param.stage)};
    std::ranges::replace(name, '-', '_');
    return name;
}

/// The finding that stands for a record that is not there.
std::string_view findingWithout(const StageRecord& record) {
    struct Missed {
        std::string_view operator()(const Ticked&) const { return "gate.checklist"; }
        std::string_view operator()(const UndercutMeasured&) const { return "gate.undercuts"; }
        std::string_view operator()(const TripodMarked&) const { return "gate.tripod-marks"; }
        std::string_view operator()(const LotUsed& use) const {
            switch (use.kind) {
                case LotKind::Alloy:
                    return "gate.alloy-lot";
                case LotKind::MillingBlank:
                    return "gate.blank-lot";
                case LotKind::MetalPowder:
                    return "gate.powder-lot";
                case LotKind::Investment:
                    return "gate.investment-lot";
                case LotKind::Teeth:
                    return "gate.tooth-lots";
                case LotKind::ResinPowder:
                    return "gate.resin-lot";
                case LotKind::ResinLiquid:
                case LotKind::Wire:
                    return "no gate asks for it";
            }
            return {};
        }
        std::string_view operator()(const NewMetal&) const { return "gate.new-metal"; }
        std::string_view operator()(const CastWeighed&) const { return "gate.cast-mass"; }
        std::string_view operator()(const TeethSet&) const { return "gate.mould-and-shade"; }
        std::string_view operator()(const CureLogged&) const { return "gate.cure-log"; }
        std::string_view operator()(const Disinfected&) const { return "gate.disinfection"; }
        std::string_view operator()(const EquipmentUsed& use) const {
            switch (use.kind) {
                case EquipmentKind::Surveyor:
                    return "gate.surveyor";
                case EquipmentKind::Furnace:
                    return "gate.furnace";
                case EquipmentKind::Caster:
                    return "gate.caster";
                case EquipmentKind::CuringBath:
                    return "gate.curing-bath";
                case EquipmentKind::Mill:
                    return "gate.mill";
                case EquipmentKind::Printer:
                    return "gate.printer";
            }
            return {};
        }
        std::string_view operator()(const BenchValue&) const { return "no gate asks for it"; }
        std::string_view operator()(const StatementIssued&) const { return "gate.statement"; }
    };
    return std::visit(Missed{}, record);
}

std::vector<Finding> lackingOf(const Bench& bench) {
    return lackingAt({*bench.order, bench.due(), bench.workshop, *PersonCode::parse(bench.person),
                      floorMinute(bench.minutes).day(), bench.legal});
}

std::vector<std::string> rulesLacking(const Bench& bench) {
    std::vector<std::string> rules;
    for (const Finding& finding : lackingOf(bench)) rules.push_back(finding.rule);
    return rules;
}

/// An order with a stage ready to be recorded, by somebody else than who made it.
Bench readyAt(const At& at) {
    Bench bench = acceptedBench(prescriptionOn(at.route, at.arch));
    bench.passUpTo(at.stage);
    bench.person = "IN";
    if (!isAtPractice(at.stage)) {
        EXPECT_TRUE(bench.give(Start{}));
    }
    return bench;
}

/// What passes the gate: leaving for the practice, or finishing.
Command pass(Stage stage) {
    if (isAtPractice(stage)) return Start{};
    return Finish{};
}

class Gate : public testing::TestWithParam<At> {};

TEST_P(Gate, OpensWhenEverythingIsOnRecord) {
    Bench bench = readyAt(GetParam());
    bench.recordAll();
    EXPECT_THAT(rulesLacking(bench), IsEmpty());
    const auto passed = bench.give(pass(GetParam().stage));
    EXPECT_TRUE(passed) << (passed ? "" : passed.error().message);
}

TEST_P(Gate, NamesWhatIsLeftOut) {
    const Bench ready = readyAt(GetParam());
    const auto everything = everythingFor(*ready.order, GetParam().stage);
    ASSERT_THAT(everything, testing::Not(IsEmpty()));
    for (std::size_t left = 0; left < everything.size(); ++left) {
        Bench bench = ready;
        auto rest = everything;
        rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(left));
        if (!rest.empty()) {
            ASSERT_TRUE(bench.give(Record{{}, rest}));
        }
        const auto lacking = lackingOf(bench);
        const auto told = tellRecord(everything[left], Notation::Iso3950);
        ASSERT_EQ(lacking.size(), 1U) << told;
        EXPECT_EQ(lacking.front().rule, findingWithout(everything[left])) << told;
        EXPECT_FALSE(lacking.front().requirement.empty() || lacking.front().question.empty() ||
                     lacking.front().source.empty());
        EXPECT_THAT(bench.refusal(pass(GetParam().stage)), HasSubstr(lacking.front().found));
    }
}

INSTANTIATE_TEST_SUITE_P(EveryStage, Gate, testing::ValuesIn(everyGate()), nameOfGate);

constexpr At kSurvey{Route::CastFramework, Arch::Upper, Stage::Survey};
constexpr At kCasting{Route::CastFramework, Arch::Upper, Stage::Casting};
constexpr At kSetUp{Route::CastFramework, Arch::Upper, Stage::ToothSetUp};
constexpr At kProcessing{Route::CastFramework, Arch::Upper, Stage::Processing};
constexpr At kDelivery{Route::CastFramework, Arch::Upper, Stage::Delivery};

// Common practice, no source: the gauge is read to 0.05 mm.
TEST(UndercutGate, TakesFiveHundredthsOfAMillimetreAndNoMore) {
    for (const auto& [off, opens] : {std::pair{50, true}, {-50, true}, {60, false}, {-60, false}}) {
        Bench bench = readyAt(kSurvey);
        bench.recordAll();
        const Clasp& clasp = bench.order->prescription().clasps.front();
        const auto depth = Microns::of(clasp.undercut->depth->count() + off);
        ASSERT_TRUE(bench.give(Record{{}, {UndercutMeasured{clasp.tooth, depth}}}));
        EXPECT_EQ(rulesLacking(bench).empty(), opens) << off;
        EXPECT_EQ(bool{bench.give(Finish{})}, opens) << off;
    }
}

TEST(UndercutGate, ShowsTheToothAndBothFigures) {
    Bench bench = readyAt(kSurvey);
    bench.recordAll();
    const Tooth tooth = bench.order->prescription().clasps.front().tooth;
    ASSERT_TRUE(bench.give(Record{{}, {UndercutMeasured{tooth, 310_um}}}));
    EXPECT_THAT(bench.refusal(Finish{}),
                HasSubstr("tooth " + tooth.text() + ": 0.31 mm measured, 0.25 mm prescribed"));
    ASSERT_TRUE(bench.give(Record{{}, {UndercutMeasured{tooth, 250_um}}}));
    EXPECT_TRUE(bench.give(Finish{})) << "the newest measurement counts";
}

TEST(CastingGate, TakesHalfNewMetalAndNoLess) {
    Bench bench = readyAt(kCasting);
    bench.recordAll();
    ASSERT_TRUE(bench.give(Record{{}, {NewMetal{499'999_ppm}}}));
    EXPECT_THAT(rulesLacking(bench), testing::ElementsAre("gate.new-metal"));
    ASSERT_TRUE(bench.give(Record{{}, {NewMetal{500'000_ppm}}}));
    EXPECT_THAT(rulesLacking(bench), IsEmpty());
    for (const auto share : {Share::of(1'000'001), Share::of(-1)})
        EXPECT_THAT(bench.refusal(Record{{}, {NewMetal{share}}}), HasSubstr("0 to 100 %"));
}

TEST(SetUpGate, TakesOnlyThePrescribedShade) {
    Bench bench = readyAt(kSetUp);
    bench.recordAll();
    ASSERT_TRUE(bench.give(Record{{}, {TeethSet{"M-12", "A-D scale", "B1"}}}));
    EXPECT_THAT(bench.refusal(Finish{}), HasSubstr("shade B1 of A-D scale was not prescribed"));
}

TEST(ProcessingGate, ShutsWhenTheCureFailed) {
    Bench bench = readyAt(kProcessing);
    bench.recordAll();
    ASSERT_TRUE(bench.give(Record{{}, {CureLogged{"long-74", std::string(64, 'c'), false}}}));
    EXPECT_THAT(bench.refusal(Finish{}), HasSubstr("does not keep the cycle long-74"));
    ASSERT_TRUE(bench.give(Redo{RedoReason::CureFailed, Stage::Processing, {}, {}}));
    ASSERT_TRUE(bench.give(Start{}));
    EXPECT_THAT(rulesLacking(bench), Contains("gate.resin-lot")) << "an attempt of its own";
    bench.recordAll();
    EXPECT_TRUE(bench.give(Finish{}));
}

TEST(ProcessingGate, AsksForNoCureWhereTheResinSetsByItself) {
    Prescription repair = prescriptionOn(Route::Repair, Arch::Upper);
    repair.base.resin = BaseResin::SelfCured;
    Bench bench = acceptedBench(repair);
    bench.workshop.lots.at(lotOn(LotKind::ResinPowder)).lot.certificate.resin =
        BaseResin::SelfCured;
    bench.passUpTo(Stage::Processing);
    ASSERT_TRUE(bench.give(Start{}));
    EXPECT_THAT(rulesLacking(bench), testing::Not(Contains("gate.cure-log")));
    EXPECT_THAT(rulesLacking(bench), testing::Not(Contains("gate.curing-bath")));
    EXPECT_THAT(rulesLacking(bench), Contains("gate.resin-lot"));
}

TEST(InspectionGate, IsShutToEverybodyWhoWorkedOnTheDevice) {
    Bench bench = acceptedBench(prescriptionOn(Route::Reline, Arch::Lower));
    bench.passUpTo(Stage::Processing);
    bench.person = "TE";
    ASSERT_TRUE(bench.give(Start{}));  // TE packs, MK takes it over
    bench.person = "MK";
    bench.recordAll();
    ASSERT_TRUE(bench.give(Finish{}));
    bench.passUpTo(Stage::Inspection);
    ASSERT_TRUE(bench.give(Start{}));
    bench.recordAll();
    for (const std::string maker : {"MK", "TE"}) {
        bench.person = maker;
        EXPECT_THAT(bench.refusal(Finish{}), HasSubstr(maker + " made a part of it"));
    }
    bench.person = "IN";
    EXPECT_TRUE(bench.give(Finish{}));
}

TEST(InspectionGate, IsOpenToWhoeverOnlyReceivedIt) {
    Bench bench = acceptedBench(prescriptionOn(Route::Reline, Arch::Lower));
    bench.person = "IN";
    bench.passStage();
    bench.person = "MK";
    bench.passUpTo(Stage::Inspection);
    bench.passStage();
    EXPECT_EQ(bench.due(), Stage::Delivery);
}

TEST(DeliveryGate, AsksForTheLegalContents) {
    Bench bench = readyAt(kDelivery);
    bench.recordAll();
    bench.legal.reset();
    EXPECT_THAT(bench.refusal(Finish{}), HasSubstr("were not looked at"));
    bench.legal = std::vector{
        Finding{.rule = "legal.issued", .severity = Severity::Missing, .found = "no day of issue"}};
    EXPECT_THAT(bench.refusal(Finish{}), HasSubstr("no day of issue"));
    EXPECT_THAT(rulesLacking(bench), testing::ElementsAre("legal.issued"));
    bench.legal = std::vector<Finding>{};
    EXPECT_TRUE(bench.give(Finish{}));
    EXPECT_EQ(bench.order->status, OrderStatus::Delivered);
}

TEST(Skills, AreAskedForAtStartAndFinish) {
    Bench bench = acceptedBench(prescriptionOn(Route::CastFramework, Arch::Upper));
    bench.passUpTo(Stage::Survey);
    const auto unlearn = [&](std::string_view code) {
        std::erase(bench.workshop.people.at(*PersonCode::parse(code)).skills, Skill::Surveying);
    };
    unlearn("TE");
    bench.person = "TE";
    EXPECT_THAT(bench.refusal(Start{}), HasSubstr("asks for the skill surveying, and TE"));
    bench.person = "MK";
    ASSERT_TRUE(bench.give(Start{}));
    bench.recordAll();
    bench.person = "TE";
    EXPECT_THAT(bench.refusal(Finish{}), HasSubstr("asks for the skill surveying"));
    bench.person = "GO";
    EXPECT_THAT(bench.refusal(Finish{}), HasSubstr("GO does not work here"));
}

}  // namespace
