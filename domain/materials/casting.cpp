#include "domain/materials/casting.h"

#include <cmath>

#include "domain/materials/alloy_data.h"

namespace domain {
namespace {

Error refused(std::string why) { return {ErrorCode::Refused, std::move(why)}; }

bool isCast(FrameworkMaterial material) {
    return material != FrameworkMaterial::Polyetheretherketone &&
           material != FrameworkMaterial::Acetal;
}

Between<Density> densityOf(Range range) {
    const auto density = [](double value) {
        return Density::of(std::lround(value * DensityUnit::kPerWritten));
    };
    return {density(range.least), density(range.most)};
}

/// nullopt: the mould can be computed.
std::optional<Error> faultOf(const Mould& mould) {
    if (!isCast(mould.material))
        return refused("a framework of " + wordsOf(mould.material) +
                       " is milled or pressed; expected a material that is cast");
    if (mould.framework == Milligrams{})
        return refused("a pattern of 0 g; expected the mass of the wax or resin");
    if (mould.pattern && !kPossiblePattern.holds(*mould.pattern))
        return refused("a pattern of " + text(*mould.pattern) + "; expected a density of " +
                       text(kPossiblePattern));
    if (mould.alloy && !kPossibleAlloy.holds(*mould.alloy))
        return refused("an alloy of " + text(*mould.alloy) + "; expected a density of " +
                       text(kPossibleAlloy));
    return {};
}

}  // namespace

Result<AlloyCharge> chargeFor(const Mould& mould) {
    if (const auto fault = faultOf(mould)) return *fault;
    const Property& table = materialOf(mould.material, FrameworkMaking::Cast).density;
    AlloyCharge charge{.pattern = mould.framework + mould.sprues,
                       .alloyDensity = densityOf(table.range),
                       .alloySource = std::string{table.source},
                       .patternDensity = kWaxDensity,
                       .patternSource = "casting wax, from memory",
                       .buttonSource = "published rule: a tenth of the metal"};
    if (mould.alloy) {
        charge.alloyDensity = {*mould.alloy, *mould.alloy};
        charge.alloySource = "as given";
    }
    if (mould.pattern) {
        charge.patternDensity = {*mould.pattern, *mould.pattern};
        charge.patternSource = "as given";
    }
    // The lightest charge: a light alloy for a heavy wax, whose volume is small.
    charge.metal = {
        alloyCharge(charge.pattern, charge.alloyDensity.least, charge.patternDensity.most, {}),
        alloyCharge(charge.pattern, charge.alloyDensity.most, charge.patternDensity.least, {})};
    charge.button = {buttonFor(charge.metal.least), buttonFor(charge.metal.most)};
    if (mould.button) {
        charge.button = {*mould.button, *mould.button};
        charge.buttonSource = "as given";
    }
    charge.charge = {charge.metal.least + charge.button.least,
                     charge.metal.most + charge.button.most};
    return charge;
}

}  // namespace domain
