// Lots and equipment at the bench: what may be used on which day, and who answers for it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "domain/production/gate.h"
#include "tests/support/floor.h"

namespace {

using namespace domain;
using namespace support;
using testing::HasSubstr;

constexpr std::int64_t kDay = 24 * 60;
const Command kUseAlloy = Record{{}, {LotUsed{lotOn(LotKind::Alloy), LotKind::Alloy, 30}}};

Bench casting(const Prescription& prescription) {
    Bench bench = acceptedBench(prescription);
    bench.passUpTo(Stage::Casting);
    EXPECT_TRUE(bench.give(Start{}));
    return bench;
}
Bench casting() { return casting(prescriptionOn(Route::CastFramework, Arch::Upper)); }

KeptLot& alloy(Bench& bench) { return bench.workshop.lots.at(lotOn(LotKind::Alloy)); }

/// Whether the alloy is taken when its certificate says this.
std::string takenWith(const Prescription& prescription, const Certificate& certificate) {
    Bench bench = casting(prescription);
    alloy(bench).lot.certificate = certificate;
    const auto given = bench.give(kUseAlloy);
    return given ? "taken" : given.error().message;
}

TEST(ALot, InQuarantineIsNotUsed) {
    Bench bench = casting();
    alloy(bench).held = true;
    EXPECT_THAT(bench.refusal(kUseAlloy), HasSubstr("quarantine; release it"));
    alloy(bench).held = false;
    EXPECT_TRUE(bench.give(kUseAlloy));
}

TEST(ALot, HeldAfterItWasUsedShutsTheGate) {
    Bench bench = casting();
    bench.recordAll();
    alloy(bench).held = true;
    EXPECT_THAT(bench.refusal(Finish{}), HasSubstr("lot lot-alloy is in quarantine"));
    alloy(bench).held = false;
    EXPECT_TRUE(bench.give(Finish{}));
}

TEST(ALot, IsUsedOnTheDayItExpiresAndNotOnTheNext) {
    Bench bench = casting();
    alloy(bench).lot.expiry = floorDay();
    EXPECT_TRUE(bench.give(kUseAlloy));
    bench.minutes += kDay;
    EXPECT_THAT(bench.refusal(kUseAlloy), HasSubstr("it expired on 2026-11-25"));
}

TEST(ALot, IsUsedNoFurtherThanItReaches) {
    Bench bench = casting();
    alloy(bench).lot.amount = alloy(bench).used + 50;
    const LotUsed use{lotOn(LotKind::Alloy), LotKind::Alloy, 30};
    EXPECT_THAT(bench.refusal(Record{{}, {use, use}}), HasSubstr("only 0.05 g of it are left"));
    EXPECT_TRUE(bench.give(kUseAlloy));
    EXPECT_THAT(bench.refusal(kUseAlloy), HasSubstr("only 0.02 g of it are left"));
    for (const std::int64_t amount : {0, -30})
        EXPECT_THAT(bench.refusal(Record{{}, {LotUsed{use.lot, use.kind, amount}}}),
                    HasSubstr("above 0"));
}

TEST(ALot, IsWhatItIsCalled) {
    Bench bench = casting();
    EXPECT_THAT(bench.refusal(Record{{}, {LotUsed{thing("NONE"), LotKind::Alloy, 1}}}),
                HasSubstr("there is no lot NONE"));
    EXPECT_THAT(bench.refusal(Record{{}, {LotUsed{lotOn(LotKind::Wire), LotKind::Alloy, 1}}}),
                HasSubstr("is wire, not alloy"));
}

// ISO 22674:2022, 5.2.3: an alloy may be called nickel free only below 0.1 %.
TEST(ALot, ForAPatientSensitiveToNickelHoldsLessThanATenthOfAPercent) {
    Prescription prescription = prescriptionOn(Route::CastFramework, Arch::Upper);
    prescription.sensitivities = {.noneKnown = false, .known = {Sensitivity::Nickel}};
    Certificate certificate{.material = FrameworkMaterial::CobaltChromium};
    EXPECT_THAT(takenWith(prescription, certificate), HasSubstr("does not state how much"));
    certificate.nickel = 1'000_ppm;
    EXPECT_THAT(takenWith(prescription, certificate), HasSubstr("sensitive to nickel"));
    certificate.nickel = 999_ppm;
    EXPECT_EQ(takenWith(prescription, certificate), "taken");
}

// ISO 22674:2022, 5.2.2: at most 0.02 % of beryllium and of cadmium.
TEST(ALot, HoldsNoMoreBerylliumOrCadmiumThanTheStandardAllows) {
    const Prescription prescription = prescriptionOn(Route::CastFramework, Arch::Upper);
    for (const auto metal : {&Certificate::beryllium, &Certificate::cadmium}) {
        Certificate certificate{.material = FrameworkMaterial::CobaltChromium};
        certificate.*metal = 200_ppm;
        EXPECT_EQ(takenWith(prescription, certificate), "taken");
        certificate.*metal = 201_ppm;
        EXPECT_THAT(takenWith(prescription, certificate), HasSubstr("ISO 22674 allows at most"));
    }
}

TEST(ALot, OfAnotherMaterialIsRefused) {
    const Prescription prescription = prescriptionOn(Route::CastFramework, Arch::Upper);
    EXPECT_THAT(takenWith(prescription, {.material = FrameworkMaterial::Titanium}),
                HasSubstr("it is titanium, and the prescription asks for cobalt-chromium"));
    EXPECT_THAT(takenWith(prescription, {}), HasSubstr("does not say which material"));
}

/// A caster whose calibration ended the day before the floor's first day.
Bench overdue() {
    Bench bench = casting();
    bench.workshop.equipment.at(equipmentOn(EquipmentKind::Caster)).calibrationDue =
        floorDay().plusDays(-1);
    return bench;
}
Command useCaster(bool answersForIt) {
    return Record{{},
                  {EquipmentUsed{equipmentOn(EquipmentKind::Caster), EquipmentKind::Caster,
                                 answersForIt ? std::optional{sealedWords()} : std::nullopt}}};
}
std::vector<StageRecord> allButTheCaster(const Bench& bench) {
    auto records = everythingFor(*bench.order, Stage::Casting);
    std::erase_if(records, [](const StageRecord& record) {
        return std::holds_alternative<EquipmentUsed>(record);
    });
    return records;
}

TEST(Equipment, IsUsedOnTheLastDayOfItsCalibration) {
    Bench bench = casting();
    auto& due = bench.workshop.equipment.at(equipmentOn(EquipmentKind::Caster)).calibrationDue;
    due = floorDay();
    EXPECT_TRUE(bench.give(useCaster(false)));
    due = floorDay().plusDays(-1);
    EXPECT_THAT(bench.refusal(useCaster(false)),
                HasSubstr("its calibration was due on 2026-11-24"));
    due.reset();
    EXPECT_TRUE(bench.give(useCaster(false))) << "what needs no calibration";
}

TEST(Equipment, ThatIsOverdueIsAnsweredForByAManagerAlone) {
    for (const auto& [code, takes] :
         {std::pair{"MK", true}, {"TE", false}, {"IN", false}, {"VW", false}, {"XX", false}}) {
        Bench bench = overdue();
        bench.person = code;
        EXPECT_FALSE(bench.give(useCaster(false))) << code;
        EXPECT_EQ(bool{bench.give(useCaster(true))}, takes) << code;
    }
}

TEST(Equipment, IsNotAnsweredForInAdvanceByATechnician) {
    Bench bench = casting();
    bench.person = "TE";
    EXPECT_THAT(bench.refusal(useCaster(true)), HasSubstr("responsibility for it is taken by"));
}

TEST(Equipment, ThatRanOutMeanwhileShutsTheGateUntilSomebodyAnswersForIt) {
    Bench bench = casting();
    bench.recordAll();
    bench.workshop.equipment.at(equipmentOn(EquipmentKind::Caster)).calibrationDue =
        floorDay().plusDays(-1);
    EXPECT_THAT(bench.refusal(Finish{}), HasSubstr("caster-1: its calibration was due"));
    ASSERT_TRUE(bench.give(useCaster(true)));
    EXPECT_TRUE(bench.give(Finish{}));
}

TEST(Equipment, ThatAManagerAnswersForOpensTheGate) {
    Bench bench = overdue();
    ASSERT_TRUE(bench.give(Record{{}, allButTheCaster(bench)}));
    ASSERT_TRUE(bench.give(useCaster(true)));
    bench.person = "TE";
    EXPECT_TRUE(bench.give(Finish{}));
}

TEST(Equipment, IsWhatItIsCalled) {
    Bench bench = casting();
    EXPECT_THAT(bench.refusal(Record{{}, {EquipmentUsed{thing("NONE"), EquipmentKind::Mill, {}}}}),
                HasSubstr("there is no equipment NONE"));
    EXPECT_THAT(
        bench.refusal(Record{
            {}, {EquipmentUsed{equipmentOn(EquipmentKind::Mill), EquipmentKind::Caster, {}}}}),
        HasSubstr("is a mill, not a caster"));
}

}  // namespace
