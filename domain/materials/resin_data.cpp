#include "domain/materials/resin_data.h"

namespace domain {
namespace {

constexpr ResinLimits kLimits[] = {
    {1, 65_MPa, 2_GPa, 22'000_ppm, "by heat, above 65 C"},
    {2, 60_MPa, Stiffness::of(1500), 45'000_ppm, "by itself, at no more than 65 C"},
    {3, 65_MPa, 2_GPa, 22'000_ppm, "is moulded hot, not cured"},
    {4, 65_MPa, 2_GPa, 22'000_ppm, "by light"},
    {5, 65_MPa, 2_GPa, 22'000_ppm,
     "by microwaves; 25 min at 70 W left no pores up to 3 mm (Al Doori 1988)"},
};

constexpr CureHold kLong74[] = {{74_C, 480_min}};
constexpr CureHold kLong74Boil[] = {{74_C, 480_min}, {100_C, 60_min}};
constexpr CureHold kShort74Boil[] = {{74_C, 120_min}, {100_C, 60_min}};
constexpr CureHold kLong70Boil[] = {{70_C, 420_min}, {100_C, 60_min}};
constexpr CureHold kShort65Boil[] = {{65_C, 90_min}, {100_C, 90_min}};
constexpr CureHold kDirectBoil[] = {{100_C, 30_min}};

constexpr std::string_view kTeaching = "teaching notes; secondary source";

constexpr CureProgramme kProgrammes[] = {
    {CureCycle::Long74, true, false, kLong74, kTeaching},
    {CureCycle::Long74Boil, true, false, kLong74Boil, kTeaching},
    {CureCycle::Short74Boil, false, false, kShort74Boil, kTeaching},
    {CureCycle::Long70Boil, true, false, kLong70Boil,
     "published comparison of cycles, abstract: the highest strength of those tested"},
    {CureCycle::Short65Boil, false, false, kShort65Boil, "PubMed Central article PMC5933837"},
    {CureCycle::DirectBoil, false, true, kDirectBoil,
     "International Journal of Dental Sciences and Research 2015;3(3): the lowest flexural "
     "strength and the highest porosity"},
};

}  // namespace

const ResinLimits& limitsOf(BaseResin resin) noexcept {
    return kLimits[static_cast<std::size_t>(resin)];
}

ResinMix resinMixFor(Milligrams powder) noexcept {
    const auto with = [&](const ResinRatio& ratio) {
        return Microlitres::of(
            nearestQuotient(powder.count() * ratio.liquid.count(), ratio.powder.count()));
    };
    const auto volume = [](Milligrams liquid) {
        return Microlitres::of(nearestQuotient(liquid.count() * 1000, kMonomerDensity.count()));
    };
    const Between<Milligrams> byMass{Milligrams::of(nearestQuotient(powder.count() * 10, 25)),
                                     Milligrams::of(nearestQuotient(powder.count(), 2))};
    return {.byVolume = {with(kRichestMix), with(kLeanestMix)},
            .byMass = byMass,
            .byMassVolume = {volume(byMass.least), volume(byMass.most)}};
}

std::span<const CureProgramme> cureProgrammes() { return kProgrammes; }

const CureProgramme& programmeOf(CureCycle cycle) noexcept {
    return kProgrammes[static_cast<std::size_t>(cycle)];
}

std::string text(const CureProgramme& programme) {
    std::string words;
    for (const CureHold& hold : programme.holds)
        words +=
            (words.empty() ? "" : ", then ") + text(hold.temperature) + " for " + text(hold.length);
    return words;
}

}  // namespace domain
