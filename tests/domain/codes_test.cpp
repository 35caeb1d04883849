#include <gtest/gtest.h>

#include <set>

#include "domain/design/kennedy.h"
#include "domain/materials/alloy_data.h"
#include "domain/materials/cure_log.h"
#include "domain/materials/investment.h"
#include "domain/production/decide.h"
#include "domain/workshop/access_entry.h"

namespace {

using namespace domain;

/// Whether the compiler knows a name for this value: it spells out unnamed ones as a cast.
template <auto kValue>
constexpr bool isNamed() {
    const std::string_view spelled = __PRETTY_FUNCTION__;
    const auto value = spelled.substr(spelled.find("kValue = ") + 9);
    return value.front() != '(';
}

template <typename E>
class EnumCodes : public testing::Test {};

using CodedEnums = testing::Types<
    Arch, Surface, Notation, ToothState, RestKind, ClaspKind, ArmMaterial, UndercutPlace,
    ReciprocalKind, ArmSection, RemakeReason, AlloyType, ConnectorKind, ResinRetention, BaseKind,
    FrameworkMaterial, FrameworkMaking, BaseResin, ToothMaterial, OcclusalScheme, JawRelation,
    TiltDirection, EnclosureKind, Sensitivity, SignatureKind, Appliance, Support, KennedyClass,
    Severity, Stage, StageKind, StageStatus, Route, FlagReason, EventKind, OrderStatus, WaitsFor,
    MixedPowder, CureCycle, CureFault, Demand, RecordKind, RedoReason, ReturnVerdict, LotKind,
    EquipmentKind, StationKind, Role, Skill, Permission, SubjectKind, Credential, WorkshopEventKind,
    AccessKind, SignOutReason>;
TYPED_TEST_SUITE(EnumCodes, CodedEnums);

TYPED_TEST(EnumCodes, AreCompleteAndReversible) {
    constexpr auto kCount = enumCodes<TypeParam>.size();
    static_assert(isNamed<static_cast<TypeParam>(kCount - 1)>());
    static_assert(!isNamed<static_cast<TypeParam>(kCount)>(), "an enumerator has no word");
    std::set<std::string_view> words;
    for (std::size_t i = 0; i < kCount; ++i) {
        const auto& code = enumCodes<TypeParam>[i];
        EXPECT_EQ(static_cast<std::size_t>(code.value), i) << code.word;
        EXPECT_EQ(codeOf(code.value), code.word);
        EXPECT_EQ(parseCode<TypeParam>(code.word), code.value);
        EXPECT_TRUE(words.insert(code.word).second) << code.word;
    }
    EXPECT_FALSE(parseCode<TypeParam>("no-such-word"));
}

TEST(EventKinds, AreAsManyAsTheHappenings) {
    static_assert(enumCodes<EventKind>.size() == std::variant_size_v<Happening>);
    static_assert(enumCodes<RecordKind>.size() == std::variant_size_v<StageRecord>);
    static_assert(enumCodes<WorkshopEventKind>.size() == std::variant_size_v<WorkshopHappening>);
    static_assert(enumCodes<AccessKind>.size() == std::variant_size_v<AccessHappening>);
}

TEST(Stages, HaveOneRowEachInTheOrderOfTheEnum) {
    ASSERT_EQ(stages().size(), enumCodes<Stage>.size());
    for (std::size_t i = 0; i < stages().size(); ++i)
        EXPECT_EQ(static_cast<std::size_t>(stages()[i].stage), i);
}

}  // namespace
