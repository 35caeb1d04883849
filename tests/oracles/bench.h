/// Figures of the bench, published or worked by hand: gypsum, investment, burn-out, resin, cures.
#pragma once

#include <string_view>

namespace oracles {

/// Powder in g at a ratio of liquid in ml/g takes so much liquid in ml. Worked by hand; the ratios
/// lie in table 8.2 of an open textbook of dental materials, chapter on gypsum.
struct MixExample {
    std::string_view powder;
    double mass;
    double ratio;
    double liquid;
};
inline constexpr MixExample kMixExamples[] = {
    {"stone", 100, 0.30, 30},
    {"die-stone", 100, 0.22, 22},
    {"plaster", 100, 0.50, 50},
};

/// Least and most liquid, ml to 100 g. Source of the gypsums: the same table; of the investment:
/// from memory.
struct MixRange {
    std::string_view powder;
    double least;
    double most;
};
inline constexpr MixRange kMixRanges[] = {
    {"plaster", 40, 50},
    {"stone", 25, 30},
    {"die-stone", 19, 24},
    {"phosphate-investment", 13, 20},
};

/// A refractory mould for cobalt-chromium reaches its heat in 3 to 3.5 hours. Source: teaching
/// notes; secondary source, of another origin than the schedule.
inline constexpr int kCobaltChromiumRise[] = {180, 210};

/// The water bath's cycles: temperatures in C, lengths in min; 0 where there is no second hold.
/// Sources: the first three, teaching notes (secondary); then a published comparison of cycles
/// (abstract); PubMed Central article PMC5933837.
struct PublishedCycle {
    std::string_view word;
    int first;
    int firstLength;
    int second;
    int secondLength;
};
inline constexpr PublishedCycle kCureCycles[] = {
    {"long-74", 74, 480, 0, 0},          {"long-74-boil", 74, 480, 100, 60},
    {"short-74-boil", 74, 120, 100, 60}, {"long-70-boil", 70, 420, 100, 60},
    {"short-65-boil", 65, 90, 100, 90},
};
/// Boiling at once, 30 min: the lowest flexural strength and the highest porosity. Source:
/// International Journal of Dental Sciences and Research 2015;3(3).
inline constexpr PublishedCycle kDirectBoil{"direct-boil", 100, 30, 0, 0};

/// Residual monomer in % of the mass, as measured: hot water, cold cure. Source: PubMed Central
/// article PMC7499378.
inline constexpr double kHotWaterMonomer = 0.67;
inline constexpr double kColdCureMonomer = 3.53;

}  // namespace oracles
