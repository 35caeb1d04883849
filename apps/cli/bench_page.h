/// What the bench computed, on a page and as JSON: every number with its unit.
#pragma once

#include "apps/actions/bench.h"
#include "apps/cli/output.h"
#include "domain/materials/casting.h"
#include "domain/materials/investment.h"

namespace cli {

/// One computed amount, both ends written with their unit; equal where it is known.
struct Figure {
    std::string_view name;  ///< a word for programs
    std::string says;
    std::string least;
    std::string most;
    std::string between;  ///< both ends in one, for people
    std::string source;
};

std::vector<Figure> figuresOf(const domain::AlloyCharge& charge);
std::vector<Figure> figuresOf(const domain::Mix& mix, domain::Milligrams powder);
std::vector<Figure> figuresOf(const domain::ResinMix& mix, domain::Milligrams powder);

Page page(const std::vector<Figure>& figures);
Json json(const std::vector<Figure>& figures);

Page burnOutPage(std::span<const domain::BurnOutStep> steps);
Json burnOutJson(std::span<const domain::BurnOutStep> steps);

/// The published cycles, and what the standard asks of each type of resin.
Page resinPage();
Json resinJson();

Page page(const actions::JudgedCure& cure);
Json json(const actions::JudgedCure& cure);

}  // namespace cli
