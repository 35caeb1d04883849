/// The logs of this file are invented.
#include "domain/materials/cure_log.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/oracles/bench.h"

namespace {

using namespace domain;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// An invented log: a reading every minute, straight lines between corners.
class InventedLog {
public:
    InventedLog& to(double celsius, int minutes) {
        const double from = log_.empty() ? 20 : last_;
        if (log_.empty()) add(0, from);
        for (int minute = 1; minute <= minutes; ++minute)
            add(now_ + minute, from + (celsius - from) * minute / minutes);
        now_ += minutes;
        last_ = celsius;
        return *this;
    }
    InventedLog& keep(int minutes) { return to(last_, minutes); }
    std::vector<CureReading> done() const { return log_; }

private:
    void add(int minute, double celsius) {
        log_.push_back({Seconds::of(minute * 60),
                        Temperature::of(static_cast<std::int64_t>(celsius * 1000 + 0.5))});
    }
    std::vector<CureReading> log_;
    int now_{0};
    double last_{20};
};

InventedLog started(const oracles::PublishedCycle& cycle) {
    InventedLog log;
    log.to(cycle.first, 45).keep(cycle.firstLength);
    if (cycle.secondLength > 0) log.to(cycle.second, 20).keep(cycle.secondLength);
    return log;
}
/// Keeps a cycle and cools for three quarters of an hour.
std::vector<CureReading> kept(const oracles::PublishedCycle& cycle) {
    return started(cycle).to(30, 45).done();
}

std::vector<CureFault> faultsOf(const CureReport& report) {
    std::vector<CureFault> faults;
    for (const CureComplaint& complaint : report.complaints) {
        faults.push_back(complaint.fault);
        EXPECT_FALSE(complaint.source.empty());
        EXPECT_THAT(complaint.says, HasSubstr("expected"));
    }
    return faults;
}

constexpr auto& kLong74 = oracles::kCureCycles[0];
constexpr auto& kShortBoil = oracles::kCureCycles[2];

TEST(ACure, ThatKeepsAPublishedCycleIsAccepted) {
    for (const oracles::PublishedCycle& cycle : oracles::kCureCycles) {
        const auto report = judgeCure(kept(cycle), *parseCode<CureCycle>(cycle.word), 3000_um);
        EXPECT_THAT(faultsOf(report), IsEmpty()) << cycle.word;
        EXPECT_TRUE(report.isAccepted());
        EXPECT_THAT(report.advice, IsEmpty());
        for (const HoldReport& hold : report.holds) EXPECT_TRUE(hold.isKept()) << cycle.word;
        EXPECT_EQ(report.peak->temperature.count(), std::max(cycle.first, cycle.second) * 1000);
    }
}

TEST(ACure, ThatKeepsOneCycleDoesNotPassForALongerOne) {
    EXPECT_FALSE(judgeCure(kept(kShortBoil), CureCycle::Long74Boil).isAccepted());
    EXPECT_FALSE(judgeCure(kept(kLong74), CureCycle::Long74Boil).isAccepted());
    EXPECT_FALSE(judgeCure(kept(kShortBoil), CureCycle::Short65Boil).isAccepted());
}

TEST(ACure, TellsWhatWasMeasured) {
    const auto report = judgeCure(kept(kLong74), CureCycle::Long74, 2000_um);
    ASSERT_EQ(report.holds.size(), 1U);
    const MeasuredHold& hold = *report.holds[0].measured;
    EXPECT_EQ(clockText(hold.start), "44 min");    // 54 C in 45 min: the tolerance is met one early
    EXPECT_EQ(clockText(hold.length), "483 min");  // and left two after the end
    EXPECT_EQ(text(hold.least), "72.044 C");
    EXPECT_EQ(text(hold.most), "74 C");
    EXPECT_EQ(report.peak, (CureReading{secondsOf(45_min), 74_C}));
    EXPECT_EQ(clockText(*report.cooling), "33 min");
    EXPECT_EQ(report.thickest, 2000_um);
    EXPECT_EQ(clockText(Seconds::of(2610)), "43 min 30 s");
}

TEST(ACure, MustKeepItsHoldToTheMinute) {
    const auto log = [](std::int64_t seconds) {
        std::vector<CureReading> readings{{Seconds::of(0), 20_C}};
        for (std::int64_t at = 60; at < 60 + seconds; at += 600)
            readings.push_back({Seconds::of(at), 74_C});
        for (const auto& [later, celsius] :
             {std::pair{0, 74_C}, {600, 60_C}, {1200, 50_C}, {1800, 40_C}})
            readings.push_back({Seconds::of(60 + seconds + later), celsius});
        return readings;
    };
    EXPECT_THAT(faultsOf(judgeCure(log(480 * 60), CureCycle::Long74)), IsEmpty());
    const auto report = judgeCure(log(480 * 60 - 1), CureCycle::Long74);
    EXPECT_THAT(faultsOf(report), ElementsAre(CureFault::HoldTooShort));
    EXPECT_THAT(report.complaints[0].says,
                AllOf(HasSubstr("479 min 59 s"), HasSubstr("from 1 min"), HasSubstr("480 min")));
}

TEST(ACure, MayStrayTwoDegreesFromItsHoldAndNoMore) {
    for (const auto& [celsius, good] : {std::pair{72.0, true}, {76.0, true}, {71.999, false}}) {
        const auto report =
            judgeCure(InventedLog{}.to(celsius, 40).keep(480).to(30, 45).done(), CureCycle::Long74);
        EXPECT_EQ(report.isAccepted(), good) << celsius;
    }
    const auto hot = InventedLog{}.to(74, 40).keep(480).to(76.001, 3).to(30, 60).done();
    EXPECT_THAT(faultsOf(judgeCure(hot, CureCycle::Long74)), ElementsAre(CureFault::Overheated));
    const auto interrupted =
        InventedLog{}.to(74, 40).keep(300).to(70, 5).to(74, 5).keep(400).to(30, 45).done();
    const auto report = judgeCure(interrupted, CureCycle::Long74);
    EXPECT_THAT(faultsOf(report), ElementsAre(CureFault::HoldTooShort));
    EXPECT_THAT(report.complaints[0].says, HasSubstr("from 348 min"));  // the longer stretch
}

TEST(ACure, ThatNeverReachesAHoldIsRefusedWithTheNearestTemperature) {
    const auto cold = InventedLog{}.to(68, 40).keep(480).to(30, 45).done();
    const auto report = judgeCure(cold, CureCycle::Long74);
    EXPECT_THAT(faultsOf(report), ElementsAre(CureFault::HoldNotReached));
    EXPECT_THAT(report.complaints[0].says, HasSubstr("nearest was 68 C at 40 min"));
    EXPECT_FALSE(report.cooling);
    const auto ended = InventedLog{}.to(74, 40).keep(480).done();
    EXPECT_THAT(faultsOf(judgeCure(ended, CureCycle::Long74Boil)),
                ElementsAre(CureFault::HoldNotReached));
    EXPECT_THAT(judgeCure(ended, CureCycle::Long74Boil).complaints[0].says,
                HasSubstr("100 C was not reached after 520 min, the log ends at 74 C at 520 min"));
}

TEST(ACure, ThatBoilsBeforeItsFirstHoldIsOverIsRefused) {
    const auto straight = InventedLog{}.to(100, 30).keep(60).to(30, 45).done();
    const auto report = judgeCure(straight, CureCycle::Short74Boil);
    EXPECT_THAT(faultsOf(report), ElementsAre(CureFault::HoldTooShort, CureFault::EarlyBoil));
    EXPECT_THAT(report.complaints[1].says, HasSubstr("at 30 min"));

    const auto early = InventedLog{}.to(74, 40).keep(115).to(100, 20).keep(60).to(30, 45).done();
    EXPECT_THAT(faultsOf(judgeCure(early, CureCycle::Short74Boil)),
                ElementsAre(CureFault::HoldTooShort, CureFault::EarlyBoil));
    const auto first = InventedLog{}.to(99, 30).to(74, 30).keep(120).to(100, 20).keep(60);
    EXPECT_THAT(faultsOf(judgeCure(InventedLog{first}.to(30, 45).done(), CureCycle::Short74Boil)),
                ElementsAre(CureFault::EarlyBoil));
}

// The monomer boils at 100.8 C: published.
TEST(ACure, NamesTheBoilingPointOfTheMonomerWhereItIsPassed) {
    const auto says = [](double celsius) {
        const auto log =
            InventedLog{}.to(celsius, 30).to(74, 30).keep(120).to(100, 20).keep(60).to(30, 45);
        return judgeCure(log.done(), CureCycle::Short74Boil).complaints.at(0).says;
    };
    EXPECT_THAT(says(100.8), HasSubstr("the monomer boils"));
    EXPECT_THAT(says(100.799), testing::Not(HasSubstr("the monomer boils")));
    // after the first hold the water may boil
    const auto late = InventedLog{}.to(74, 40).keep(120).to(101.5, 20).keep(60).to(30, 45).done();
    EXPECT_TRUE(judgeCure(late, CureCycle::Short74Boil).isAccepted());
    const auto pressed = InventedLog{}.to(74, 40).keep(120).to(100, 20).keep(60).to(102.1, 5);
    EXPECT_THAT(faultsOf(judgeCure(InventedLog{pressed}.to(30, 45).done(), CureCycle::Short74Boil)),
                ElementsAre(CureFault::Overheated));
}

TEST(ACure, ThatBoilsFromTheStartIsFlaggedHoweverWellItIsKept) {
    const auto report = judgeCure(kept(oracles::kDirectBoil), CureCycle::DirectBoil, 2000_um);
    EXPECT_THAT(faultsOf(report), ElementsAre(CureFault::DirectBoil));
    EXPECT_TRUE(report.holds[0].isKept());
    EXPECT_THAT(std::string{report.complaints[0].source}, HasSubstr("highest porosity"));
}

// 3 to 5 mm: from memory.
TEST(AThickSection, NeedsALongCycle) {
    const auto judged = [](CureCycle cycle, const oracles::PublishedCycle& row, Microns thickest) {
        return judgeCure(kept(row), cycle, thickest);
    };
    EXPECT_THAT(judged(CureCycle::Short74Boil, kShortBoil, 3000_um).advice, IsEmpty());
    const auto advised = judged(CureCycle::Short74Boil, kShortBoil, 5000_um);
    EXPECT_TRUE(advised.isAccepted());
    EXPECT_THAT(advised.advice, ElementsAre(HasSubstr("5 mm")));
    const auto refused = judged(CureCycle::Short74Boil, kShortBoil, 5001_um);
    EXPECT_THAT(faultsOf(refused), ElementsAre(CureFault::ThickSection));
    EXPECT_THAT(judged(CureCycle::Long74, kLong74, 9000_um).advice, IsEmpty());
    EXPECT_TRUE(judged(CureCycle::Long74, kLong74, 9000_um).isAccepted());
    EXPECT_THAT(judgeCure(kept(kLong74), CureCycle::Long74).advice,
                ElementsAre(HasSubstr("not recorded")));
}

// Half an hour on the bench, then water: teaching notes, secondary source.
TEST(ACure, MustCoolForHalfAnHour) {
    const auto cooled = [](int minutes) {
        return judgeCure(started(kLong74).to(73, 1).to(40, minutes).done(), CureCycle::Long74);
    };
    EXPECT_TRUE(cooled(30).isAccepted());  // 72 C or more for a minute of it counts as hot
    EXPECT_THAT(faultsOf(cooled(29)), ElementsAre(CureFault::CooledTooFast));
    const auto quenched = cooled(2);
    ASSERT_EQ(quenched.complaints.size(), 1U);
    EXPECT_THAT(quenched.complaints[0].says,
                AllOf(HasSubstr("73 C at 526 min"), HasSubstr("40 C at 528 min")));
    const auto ended = judgeCure(started(kLong74).to(40.001, 60).done(), CureCycle::Long74);
    EXPECT_THAT(faultsOf(ended), ElementsAre(CureFault::NotCooled));
    EXPECT_THAT(ended.complaints[0].says, HasSubstr("40.001 C at 585 min"));
}

TEST(ACure, IsCooledAfterTheLastTimeItWasHot) {
    const auto log = started(kLong74).to(60, 10).to(74, 10).keep(20).to(30, 5).done();
    EXPECT_THAT(faultsOf(judgeCure(log, CureCycle::Long74)), ElementsAre(CureFault::CooledTooFast));
}

TEST(ALog, MayLackReadingsForTenMinutesAndNoMore) {
    const auto thinned = [](std::int64_t from, std::int64_t to) {
        auto log = kept(kLong74);
        std::erase_if(log, [&](const CureReading& reading) {
            return reading.at.count() > from * 60 && reading.at.count() < to * 60;
        });
        return judgeCure(log, CureCycle::Long74);
    };
    EXPECT_TRUE(thinned(100, 110).isAccepted());
    const auto report = thinned(100, 111);
    EXPECT_THAT(faultsOf(report), ElementsAre(CureFault::Gap));
    EXPECT_THAT(report.complaints[0].says, HasSubstr("between 100 min and 111 min"));
    std::vector<CureReading> sparse;
    for (const CureReading& reading : kept(kLong74))
        if (reading.at.count() % 900 == 0) sparse.push_back(reading);
    EXPECT_THAT(judgeCure(sparse, CureCycle::Long74).complaints.at(0).says,
                HasSubstr("the longest of 38 gaps"));
}

TEST(ALog, WhoseTimeRunsBackOrStandsIsNotJudgedFurther) {
    auto log = kept(kLong74);
    log[10].at = log[9].at;
    const auto report = judgeCure(log, CureCycle::Long74);
    EXPECT_THAT(faultsOf(report), ElementsAre(CureFault::TimeRunsBack));
    EXPECT_THAT(report.complaints[0].says, HasSubstr("9 min"));
    EXPECT_THAT(report.holds, IsEmpty());
    EXPECT_FALSE(report.peak);
}

TEST(ALog, OfLessThanTwoReadingsIsNone) {
    EXPECT_THAT(faultsOf(judgeCure({}, CureCycle::Long74)), ElementsAre(CureFault::NoLog));
    const CureReading one{Seconds::of(0), 74_C};
    EXPECT_THAT(faultsOf(judgeCure({&one, 1}, CureCycle::Long74)), ElementsAre(CureFault::NoLog));
}

TEST(ACure, IsToldEverythingThatIsWrongWithIt) {
    auto log = InventedLog{}.to(100, 20).keep(20).to(30, 5).done();
    log.erase(log.begin() + 2, log.begin() + 15);
    EXPECT_THAT(
        faultsOf(judgeCure(log, CureCycle::Short74Boil, 8000_um)),
        ElementsAre(CureFault::ThickSection, CureFault::Gap, CureFault::HoldTooShort,
                    CureFault::HoldTooShort, CureFault::EarlyBoil, CureFault::CooledTooFast));
}

}  // namespace
