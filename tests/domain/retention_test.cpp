#include "domain/production/retention.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <vector>

namespace {

using namespace domain;
using testing::HasSubstr;

Date day(std::string_view text) { return Date::parse(text).value(); }

std::vector<RetentionTerm> terms(std::initializer_list<std::string_view> ids) {
    std::vector<RetentionTerm> chosen;
    for (const auto id : ids) chosen.push_back(*retentionTermOf(id));
    return chosen;
}

// The proleptic Gregorian calendar, ISO 8601: no 29 February in 2029 or 2100, one in 2032.
TEST(ADatePlusYears, IsTheSameDayOrTheFirstOfMarchWhereThereIsNone) {
    EXPECT_EQ(day("2026-12-18").plusYears(10), day("2036-12-18"));
    EXPECT_EQ(day("2028-02-29").plusYears(1), day("2029-03-01"));
    EXPECT_EQ(day("2028-02-29").plusYears(4), day("2032-02-29"));
    EXPECT_EQ(day("2096-02-29").plusYears(4), day("2100-03-01"));
    EXPECT_EQ(day("2028-02-28").plusYears(1), day("2029-02-28"));
    EXPECT_EQ(day("2027-03-01").plusYears(1), day("2028-03-01"));
    EXPECT_EQ(day("2026-12-18").plusYears(0), day("2026-12-18"));
}

// Regulation (EU) 2017/745, Annex XIII, 4; the state statutes named in each row; Great Britain from
// memory.
TEST(RetentionTerms, AreThoseOfTheLaws) {
    const std::map<std::string_view, int> years{
        {"eu", 10},   {"eu-implant", 15}, {"gb", 5},    {"us-fl", 4}, {"us-ok", 3},
        {"us-wv", 2}, {"us-me", 2},       {"us-mt", 2}, {"us-nc", 2}, {"us-ms", 2},
        {"us-ky", 2}, {"us-ct", 1},       {"us-ny", 1}};
    EXPECT_EQ(retentionTerms().size(), years.size());
    for (const RetentionTerm& term : retentionTerms()) {
        ASSERT_TRUE(years.contains(term.id)) << term.id;
        EXPECT_EQ(term.years, years.at(term.id)) << term.id;
        EXPECT_EQ(term.implantsOnly, term.id == "eu-implant");
        EXPECT_FALSE(term.source.empty());
        EXPECT_EQ(retentionTermOf(term.id), &term);
    }
    EXPECT_EQ(retentionTermOf("us-zz"), nullptr);
}

TEST(Retention, LastsAsLongAsTheLongestTermThatApplies) {
    const Date delivered = day("2026-12-18");
    EXPECT_EQ(retentionEnds(delivered, terms({"us-ny"})), day("2027-12-18"));
    EXPECT_EQ(retentionEnds(delivered, terms({"us-ny", "us-fl", "us-ok"})), day("2030-12-18"));
    EXPECT_EQ(retentionEnds(delivered, terms({"gb", "eu", "us-fl"})), day("2036-12-18"));
    EXPECT_EQ(retentionEnds(delivered, {}), std::nullopt);
}

TEST(Retention, FromALeapDayEndsNeverADayEarly) {
    EXPECT_EQ(retentionEnds(day("2028-02-29"), terms({"eu"})), day("2038-03-01"));
    EXPECT_EQ(retentionEnds(day("2028-02-29"), terms({"us-fl"})), day("2032-02-29"));
}

struct Purge {
    std::string_view delivered;
    std::vector<RetentionTerm> applying;
    std::string_view last;   ///< day they must be kept
    std::string_view first;  ///< day they may be purged
};
void PrintTo(const Purge& purge, std::ostream* stream) {
    *stream << purge.delivered << " to " << purge.last;
}
class APurge : public testing::TestWithParam<Purge> {};

TEST_P(APurge, IsRefusedThroughTheLastDayAndAllowedTheDayAfter) {
    const Purge& purge = GetParam();
    const auto early = mayPurge(day(purge.delivered), purge.applying, day(purge.last));
    ASSERT_FALSE(early);
    EXPECT_EQ(early.error().code, ErrorCode::Refused);
    EXPECT_THAT(early.error().message,
                HasSubstr("must be kept through " + std::string{purge.last}));
    EXPECT_THAT(early.error().message, HasSubstr("from " + std::string{purge.first}));
    EXPECT_FALSE(mayPurge(day(purge.delivered), purge.applying, day(purge.delivered)));
    EXPECT_TRUE(mayPurge(day(purge.delivered), purge.applying, day(purge.first)));
    EXPECT_TRUE(mayPurge(day(purge.delivered), purge.applying, day(purge.first).plusDays(400)));
}

INSTANTIATE_TEST_SUITE_P(
    OfPapers, APurge,
    testing::Values(Purge{"2026-12-18", terms({"eu"}), "2036-12-18", "2036-12-19"},
                    Purge{"2028-02-29", terms({"eu"}), "2038-03-01", "2038-03-02"},
                    Purge{"2028-02-29", terms({"us-ct"}), "2029-03-01", "2029-03-02"},
                    Purge{"2026-12-31", terms({"us-ok", "us-ny"}), "2029-12-31", "2030-01-01"}));

TEST(Purging, IsRefusedWhereNoTermIsChosen) {
    const auto refused = mayPurge(day("2026-12-18"), {}, day("2199-12-31"));
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, ErrorCode::Refused);
    EXPECT_THAT(refused.error().message, HasSubstr("no term of retention is chosen"));
}

}  // namespace
