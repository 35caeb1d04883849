#include "domain/materials/cure_log.h"

#include <algorithm>

namespace domain {
namespace {

using Log = std::span<const CureReading>;

constexpr std::string_view kCommonPractice = "common practice, no source";
constexpr std::string_view kBoilingSource =
    "the monomer boils at 100.8 C (published); a section heated to boiling before it has set runs "
    "to 120 to 130 C inside and turns porous (teaching notes; secondary source)";
constexpr std::string_view kThicknessSource = "from memory";
constexpr std::string_view kCoolingSource =
    "bench cooling of 30 min, then water: teaching notes, secondary source; 40 C: common practice, "
    "no source";

bool isWithin(const CureHold& hold, Temperature temperature) {
    return Between<Temperature>{hold.temperature - kHoldTolerance,
                                hold.temperature + kHoldTolerance}
        .holds(temperature);
}

std::string at(const CureReading& reading) {
    return text(reading.temperature) + " at " + clockText(reading.at);
}

/// Readings of a log from `begin` up to `end`, all within a hold's tolerance.
struct Stretch {
    std::size_t begin{};
    std::size_t end{};
};

Seconds lengthOf(Log log, Stretch stretch) {
    return log[stretch.end - 1].at - log[stretch.begin].at;
}

/// The first stretch that is long enough, or the longest; nullopt: no reading is within.
std::optional<Stretch> stretchOf(Log log, std::size_t from, const CureHold& hold) {
    std::optional<Stretch> best;
    for (std::size_t begin = from; begin < log.size(); ++begin) {
        if (!isWithin(hold, log[begin].temperature)) continue;
        Stretch stretch{begin, begin};
        while (stretch.end < log.size() && isWithin(hold, log[stretch.end].temperature))
            ++stretch.end;
        if (!best || lengthOf(log, stretch) > lengthOf(log, *best)) best = stretch;
        if (lengthOf(log, *best) >= secondsOf(hold.length)) break;
        begin = stretch.end;
    }
    return best;
}

MeasuredHold measured(Log log, Stretch stretch) {
    const auto [least, most] = std::ranges::minmax(
        log.subspan(stretch.begin, stretch.end - stretch.begin), {}, &CureReading::temperature);
    return {log[stretch.begin].at, lengthOf(log, stretch), least.temperature, most.temperature};
}

/// Collects what is to be said against a cure.
class Judgement {
public:
    Judgement(Log log, const CureProgramme& programme, std::optional<Microns> thickest)
        : log_{log}, programme_{programme} {
        report_.cycle = programme.cycle;
        report_.thickest = thickest;
    }

    CureReport report() && {
        judgeThickness();
        if (programme_.boilsAtOnce)
            complain(CureFault::DirectBoil,
                     "boiling from the start is published as a bad example; expected a cycle that "
                     "holds below 100 C first",
                     programme_.source);
        if (isReadable()) {
            judgeGaps();
            judgeHolds();
            judgeHeat();
            judgeCooling();
        }
        return std::move(report_);
    }

private:
    void complain(CureFault fault, std::string says, std::string_view source) {
        report_.complaints.push_back({fault, std::move(says), source});
    }

    void judgeThickness() {
        if (!report_.thickest) {
            report_.advice.emplace_back("the thickest section is not recorded; one of more than " +
                                        text(kThick) + " needs a long cycle");
            return;
        }
        if (programme_.isLong || *report_.thickest <= kThickish) return;
        const std::string section = "a section of " + text(*report_.thickest) + " in a short cycle";
        if (*report_.thickest > kThick)
            complain(CureFault::ThickSection,
                     section + "; expected a long one above " + text(kThick), kThicknessSource);
        else
            report_.advice.push_back(section + "; above " + text(kThickish) +
                                     " a long one is safer (" + std::string{kThicknessSource} +
                                     ')');
    }

    bool isReadable() {
        if (log_.size() < 2) {
            complain(CureFault::NoLog,
                     std::to_string(log_.size()) + " readings; expected a log of the whole cure",
                     kCommonPractice);
            return false;
        }
        const auto back = std::ranges::adjacent_find(
            log_, [](const CureReading& a, const CureReading& b) { return b.at <= a.at; });
        if (back != log_.end()) {
            complain(CureFault::TimeRunsBack,
                     "the reading at " + clockText(std::next(back)->at) + " follows the one at " +
                         clockText(back->at) + "; expected a later time in each line",
                     kCommonPractice);
            return false;
        }
        report_.peak = *std::ranges::max_element(log_, {}, &CureReading::temperature);
        return true;
    }

    void judgeGaps() {
        std::size_t gaps = 0;
        std::size_t longest = 1;
        const auto before = [&](std::size_t i) { return log_[i].at - log_[i - 1].at; };
        for (std::size_t i = 1; i < log_.size(); ++i) {
            if (before(i) > secondsOf(kLongestGap)) ++gaps;
            if (before(i) > before(longest)) longest = i;
        }
        if (gaps == 0) return;
        complain(CureFault::Gap,
                 "no reading between " + clockText(log_[longest - 1].at) + " and " +
                     clockText(log_[longest].at) +
                     (gaps > 1 ? ", the longest of " + std::to_string(gaps) + " gaps" : "") +
                     "; expected one at least every " + text(kLongestGap),
                 kCommonPractice);
    }

    void judgeHolds() {
        std::size_t from = 0;
        for (const CureHold& hold : programme_.holds) {
            const auto stretch = stretchOf(log_, from, hold);
            HoldReport held{.prescribed = hold};
            if (stretch) held.measured = measured(log_, *stretch);
            report_.holds.push_back(held);
            if (!stretch)
                complainNotReached(hold, from);
            else if (!held.isKept())
                complainTooShort(held, *stretch);
            else
                from = stretch->end;  // one that was missed says nothing about where the next began
        }
    }

    void complainNotReached(const CureHold& hold, std::size_t from) {
        std::string found = "the log ends at " + at(log_.back());
        if (from < log_.size()) {
            const auto distance = [&](const CureReading& reading) {
                return std::max(reading.temperature - hold.temperature,
                                hold.temperature - reading.temperature);
            };
            found =
                "nearest was " + at(*std::ranges::min_element(log_.subspan(from), {}, distance));
        }
        complain(CureFault::HoldNotReached,
                 text(hold.temperature) + " was not reached" +
                     (from > 0 ? " after " + clockText(log_[from - 1].at) : "") + ", " + found +
                     "; expected " + text(hold.length) + " within " + text(kHoldTolerance),
                 programme_.source);
    }

    void complainTooShort(const HoldReport& held, Stretch stretch) {
        const CureHold& prescribed = held.prescribed;
        const MeasuredHold& found = *held.measured;
        const std::string after =
            stretch.end < log_.size() ? ", then " + at(log_[stretch.end]) : ", where the log ends";
        complain(CureFault::HoldTooShort,
                 text(prescribed.temperature) + " was kept for " + clockText(found.length) +
                     " from " + clockText(found.start) + after + "; expected " +
                     text(prescribed.length) + " within " + text(kHoldTolerance),
                 programme_.source);
    }

    /// When the monomer has had its first hold; nullopt: never.
    std::optional<Seconds> firstHoldDone() const {
        const HoldReport& first = report_.holds.front();
        if (!first.isKept()) return {};
        return first.measured->start + secondsOf(first.prescribed.length);
    }

    void judgeHeat() {
        if (!programme_.boilsAtOnce && boiledEarly()) return;
        const auto hottest =
            std::ranges::max(programme_.holds, {}, &CureHold::temperature).temperature;
        if (report_.peak->temperature <= hottest + kHoldTolerance) return;
        complain(CureFault::Overheated,
                 at(*report_.peak) + "; expected at most " + text(hottest) + " and " +
                     text(kHoldTolerance) + " above it",
                 programme_.source);
    }

    /// In boiling water, or above the boiling point of the monomer, before the first hold was
    /// complete.
    bool boiledEarly() {
        const auto done = firstHoldDone();
        const auto early = std::ranges::find_if(log_, [&](const CureReading& reading) {
            return reading.temperature >= 100_C - kHoldTolerance && (!done || reading.at < *done);
        });
        if (early == log_.end()) return false;
        const auto above = std::ranges::find_if(early, log_.end(), [&](const CureReading& reading) {
            return reading.temperature >= kMonomerBoils && (!done || reading.at < *done);
        });
        std::string says = at(*early);
        if (above != log_.end()) says += " and " + at(*above) + ", where the monomer boils,";
        says += report_.holds.front().measured ? " before" : " without";
        says += " the hold of " + text(report_.holds.front().prescribed.length) + " at " +
                text(report_.holds.front().prescribed.temperature) +
                (report_.holds.front().measured ? " was complete" : "") +
                "; expected to boil only after it";
        complain(CureFault::EarlyBoil, std::move(says), kBoilingSource);
        return true;
    }

    void judgeCooling() {
        const Temperature lastHold = programme_.holds.back().temperature;
        std::size_t hot = log_.size();
        while (hot > 0 && log_[hot - 1].temperature < lastHold - kHoldTolerance) --hot;
        if (hot == 0) return;  // never so hot: the hold has been complained of
        const Log after = log_.subspan(hot - 1);
        const auto cool = std::ranges::find_if(
            after, [](const CureReading& reading) { return reading.temperature <= kCool; });
        if (cool == after.end()) {
            complain(CureFault::NotCooled,
                     "the log ends with " + at(log_.back()) + "; expected cooling to " +
                         text(kCool) + " before the flask is opened",
                     kCoolingSource);
            return;
        }
        report_.cooling = cool->at - after.front().at;
        if (*report_.cooling >= secondsOf(kBenchCool.least)) return;
        complain(CureFault::CooledTooFast,
                 "from " + at(after.front()) + " to " + at(*cool) + " in " +
                     clockText(*report_.cooling) + "; expected at least " + text(kBenchCool.least),
                 kCoolingSource);
    }

    Log log_;
    const CureProgramme& programme_;
    CureReport report_;
};

}  // namespace

CureReport judgeCure(Log log, CureCycle cycle, std::optional<Microns> thickest) {
    return Judgement{log, programmeOf(cycle), thickest}.report();
}

std::string clockText(Seconds time) {
    std::string words = text(Minutes::of(time.count() / 60));
    if (time.count() % 60 != 0) words += ' ' + text(Seconds::of(time.count() % 60));
    return words;
}

}  // namespace domain
