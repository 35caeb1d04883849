/// Whether a denture base was cured as its cycle prescribes, by the temperatures that were logged.
///
/// What is judged is the water around the flask: the resin inside is hotter while it sets. Every
/// complaint is collected, none hides another.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "domain/materials/resin_data.h"

namespace domain {

struct CureReading {
    Seconds at{};  ///< since the log began
    Temperature temperature{};
    friend constexpr bool operator==(CureReading, CureReading) = default;
};

/// How far from its temperature a hold may stray. Common practice, no source.
inline constexpr Temperature kHoldTolerance = 2_C;
/// The longest time without a reading. Common practice, no source.
inline constexpr Minutes kLongestGap = 10_min;
/// Where cooling is over. Common practice, no source.
inline constexpr Temperature kCool = 40_C;

enum class CureFault : std::uint8_t {
    NoLog,
    TimeRunsBack,
    Gap,
    HoldNotReached,
    HoldTooShort,
    EarlyBoil,
    DirectBoil,
    Overheated,
    ThickSection,
    NotCooled,
    CooledTooFast,
};
template <>
inline constexpr std::array<EnumCode<CureFault>, 11> enumCodes<CureFault>{{
    {CureFault::NoLog, "no-log"},
    {CureFault::TimeRunsBack, "time-runs-back"},
    {CureFault::Gap, "gap"},
    {CureFault::HoldNotReached, "hold-not-reached"},
    {CureFault::HoldTooShort, "hold-too-short"},
    {CureFault::EarlyBoil, "early-boil"},
    {CureFault::DirectBoil, "direct-boil"},
    {CureFault::Overheated, "overheated"},
    {CureFault::ThickSection, "thick-section"},
    {CureFault::NotCooled, "not-cooled"},
    {CureFault::CooledTooFast, "cooled-too-fast"},
}};

struct CureComplaint {
    CureFault fault{};
    std::string says;  ///< what was found and when, and what was expected
    std::string_view source{};
};

/// The best stretch of a log within the tolerance of a hold, between its first and last reading.
struct MeasuredHold {
    Seconds start{};
    Seconds length{};
    Temperature least{};
    Temperature most{};
};
struct HoldReport {
    CureHold prescribed{};
    std::optional<MeasuredHold> measured{};  ///< nullopt: no reading within the tolerance
    bool isKept() const noexcept {
        return measured && measured->length >= secondsOf(prescribed.length);
    }
};

struct CureReport {
    CureCycle cycle{};
    std::optional<Microns> thickest{};
    std::vector<HoldReport> holds;
    std::optional<CureReading> peak{};  ///< the first of the hottest readings
    /// From the last reading at the last hold's temperature to the first cool one.
    std::optional<Seconds> cooling{};
    std::vector<CureComplaint> complaints;
    std::vector<std::string> advice;  ///< what does not speak against the cure
    bool isAccepted() const noexcept { return complaints.empty(); }
};

/// Judges a log by a cycle. The thickest section of the base decides whether a short cycle will do;
/// nullopt where it was not recorded. A log whose time runs back is not judged further.
CureReport judgeCure(std::span<const CureReading> log, CureCycle cycle,
                     std::optional<Microns> thickest = {});

/// "43 min", "43 min 30 s".
std::string clockText(Seconds time);

}  // namespace domain
