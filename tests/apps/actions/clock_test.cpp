/// The clock of the machine: believed, corrected by a little, or marked until the date is
/// confirmed.
#include "apps/actions/clock.h"

#include <gmock/gmock.h>

#include "apps/actions/lots.h"
#include "tests/apps/actions/floor_bench.h"

namespace {

using actions_tests::saidBy;
using domain::ClockFault;
using domain::Date;
using support::kMaker;
using support::kManager;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// As signedInAs(), but for the unit of work that is looked at.
class Clock : public actions_tests::FloorBench {
protected:
    Clock() {
        lab().tellBy([this](const std::string& sentence) { told_.push_back(sentence); });
    }
    ~Clock() override { lab().tellBy({}); }
    Clock(const Clock&) = delete;
    Clock& operator=(const Clock&) = delete;

    /// Something that is recorded: another lot each time.
    std::string receive() {
        return saidBy(actions::receiveLot(lab(), support::thing("lot-" + std::to_string(++lots_)),
                                          support::lotOf(domain::LotKind::Wire, "1"),
                                          floor_.as(kManager)));
    }
    std::vector<domain::ClockMarked> marks() const {
        std::vector<domain::ClockMarked> all;
        for (const domain::WorkshopEvent& event : events())
            if (const auto* mark = std::get_if<domain::ClockMarked>(&event.what))
                all.push_back(*mark);
        return all;
    }
    domain::Instant newest() const { return **storage::Ledger{lab().records()}.newestAt(); }

    std::vector<std::string> told_;
    int lots_{0};
};

TEST_F(Clock, ThatIsPutBackByLessThanTwoMinutesIsCorrected) {
    ASSERT_EQ(receive(), "");
    const domain::Instant before = newest();
    clock_.letPass(-2);
    ASSERT_EQ(receive(), "");
    EXPECT_EQ(newest(), before) << "the newest entry's time";
    EXPECT_THAT(marks(), IsEmpty());
    EXPECT_THAT(told_, IsEmpty());
    EXPECT_THAT(problems(), IsEmpty());
}

TEST_F(Clock, ThatIsBehindIsToldOnceAndMarkedWithBothTimes) {
    ASSERT_EQ(receive(), "");
    const domain::Instant before = newest();
    clock_.letPass(-60 * 24 * 365);
    const domain::Instant now = clock_.now();
    ASSERT_EQ(receive(), "");
    ASSERT_EQ(receive(), "");
    EXPECT_THAT(marks(), ElementsAre(domain::ClockMarked{ClockFault::Behind, before}));
    EXPECT_EQ(newest(), now);
    ASSERT_EQ(told_.size(), 1U);
    EXPECT_THAT(told_.front(), HasSubstr("said 2025-11-25 00:00 UTC when the newest entry was of "
                                         "2026-11-25 00:00 UTC"));
    EXPECT_THAT(problems(), IsEmpty()) << "the mark explains the step";
}

TEST_F(Clock, ThatIsAheadByMoreThanTheLongestPauseIsMarked) {
    clock_.letPass(45 * support::HandClock::kDay);
    ASSERT_EQ(receive(), "");
    EXPECT_THAT(marks(), IsEmpty()) << "a long holiday";
    clock_.letPass(45 * support::HandClock::kDay, 1);
    ASSERT_EQ(receive(), "");
    ASSERT_EQ(marks().size(), 1U);
    EXPECT_EQ(marks().front().fault, ClockFault::Ahead);
    ASSERT_EQ(saidBy(actions::writeLongestPause(lab(), 10, floor_.as(kManager))), "");
    clock_.letPass(11 * support::HandClock::kDay);
    ASSERT_EQ(receive(), "");
    EXPECT_EQ(marks().size(), 2U) << "the pause is the laboratory's to set";
    EXPECT_THAT(saidBy(actions::writeLongestPause(lab(), 0, floor_.as(kManager))),
                HasSubstr("1 to 400 was expected"));
}

TEST_F(Clock, IsMarkedThoughTheActionItselfIsRefused) {
    clock_.letPass(-5);
    EXPECT_NE(
        saidBy(actions::holdLot(lab(), support::thing("no-such"), "torn", floor_.as(kManager))),
        "");
    EXPECT_EQ(marks().size(), 1U);
}

TEST_F(Clock, IsConfirmedByAManagerWhoNamesTheDay) {
    EXPECT_THAT(saidBy(actions::confirmDate(lab(), lab().today(), floor_.as(kManager))),
                HasSubstr("nothing to confirm"));
    clock_.letPass(-60);
    ASSERT_EQ(receive(), "");
    clock_.letPass(120);
    EXPECT_TRUE(*actions::clockDoubt(lab())) << "set right, and not confirmed yet";
    EXPECT_THAT(
        saidBy(actions::confirmDate(lab(), *Date::parse("2026-11-24"), floor_.as(kManager))),
        HasSubstr("it says 2026-11-25 01:00 UTC, not 2026-11-24"));
    EXPECT_THAT(saidBy(actions::confirmDate(lab(), lab().today(), floor_.as(kMaker))),
                HasSubstr("is for: manager"));
    EXPECT_EQ(saidBy(actions::confirmDate(lab(), lab().today(), floor_.as(kManager))), "");
    EXPECT_FALSE(*actions::clockDoubt(lab()));
    EXPECT_EQ(events().back().person, actions_tests::person(kManager)) << "who and when";
}

}  // namespace
