#include <gtest/gtest.h>

#include "domain/base/date.h"
#include "domain/base/id.h"
#include "domain/base/quantity.h"

namespace {

using namespace domain;

TEST(Quantity, IsWrittenWithItsUnitAndReadBack) {
    EXPECT_EQ(text(250_um), "0.25 mm");
    EXPECT_EQ(text(8000_um), "8 mm");
    EXPECT_EQ(text(1000_ppm), "0.1 %");
    EXPECT_EQ(text(10_min), "10 min");
    EXPECT_EQ(parseQuantity<MicronUnit>("0.25 mm"), 250_um);
    EXPECT_EQ(parseQuantity<MicronUnit>("0.254 mm"), 254_um);
    EXPECT_EQ(parseQuantity<MillidegreeUnit>("4.5 deg"), Millidegrees::of(4500));
}

TEST(Quantity, OfTheBenchIsWrittenWithItsUnitAndReadBack) {
    EXPECT_EQ(text(12'400_mg), "12.4 g");
    EXPECT_EQ(text(500_ul), "0.5 ml");
    EXPECT_EQ(text(74_C), "74 C");
    EXPECT_EQ(text(Density::of(8400)), "8.4 g/cm3");
    EXPECT_EQ(text(MixRatio::of(220)), "0.22 ml/g");
    EXPECT_EQ(text(HeatingRate::of(7000)), "7 C/min");
    EXPECT_EQ(text(secondsOf(2_min)), "120 s");
    EXPECT_EQ(parseQuantity<MilligramUnit>("12.4 g"), 12'400_mg);
    EXPECT_EQ(parseQuantity<MilligramUnit>("100000 g"), Milligrams::of(100'000'000));
    EXPECT_FALSE(parseQuantity<MilligramUnit>("100000.001 g"));
    EXPECT_FALSE(parseQuantity<MilligramUnit>("12.4 ml"));
    EXPECT_EQ(parseQuantity<MicrolitreUnit>("10 ml"), 10'000_ul);
    EXPECT_EQ(parseQuantity<MillicelsiusUnit>("74.5 C"), Temperature::of(74'500));
    EXPECT_EQ(text(Between<Temperature>{250_C, 300_C}), "250 to 300 C");
    EXPECT_EQ(text(Between<Temperature>{250_C, 250_C}), "250 C");
}

TEST(Quantity, RefusesAnotherUnitASignAnExponentAndTooManyDecimals) {
    for (const char* text : {"0.25", "0.25mm", "0.01 in", "-1 mm", "+1 mm", "1e3 mm", "nan mm", "",
                             " mm", ". mm", "1. mm", ".5 mm", "0.2501 mm", "201 mm", "0,25 mm",
                             "99999999999999999999 mm", "0.25  mm", "0.25 mm "})
        EXPECT_FALSE(parseQuantity<MicronUnit>(text)) << text;
    EXPECT_FALSE(parseQuantity<MinuteUnit>("1.5 min"));
}

TEST(AQuotient, IsTheNearestWholeNumberWithHalvesUp) {
    EXPECT_EQ(nearestQuotient(7, 2), 4);
    EXPECT_EQ(nearestQuotient(4, 3), 1);
    EXPECT_EQ(nearestQuotient(5, 3), 2);
    EXPECT_EQ(nearestQuotient(0, 3), 0);
}

TEST(Date, ExistsOrIsRefused) {
    EXPECT_EQ(Date::parse("2026-11-25")->text(), "2026-11-25");
    EXPECT_EQ(Date::parse("1970-01-01")->days(), 0);
    EXPECT_TRUE(Date::parse("2028-02-29"));
    for (const char* text :
         {"2026-02-30", "2026-02-29", "2026-13-01", "2026-00-10", "2026-1-1", "26-11-25",
          "2026/11/25", "1899-12-31", "2200-01-01", "", "2026-11-2a"})
        EXPECT_FALSE(Date::parse(text)) << text;
}

TEST(Instant, FallsOnItsUtcDayEvenBefore1970) {
    EXPECT_EQ(Instant::ofMicroseconds(-1).text(), "1969-12-31 23:59 UTC");
    EXPECT_EQ(Instant::ofMicroseconds(86'400'000'000 + 60'000'000).text(), "1970-01-02 00:01 UTC");
}

// ISO/IEC 7064 MOD 11,10: the standard's example "0794" -> 5, and "79462" -> 3; from memory, and
// worked once more by hand.
TEST(OrderNumber, EndsInTheCheckDigitOfIso7064) {
    EXPECT_EQ(checkDigit("0794"), '5');
    EXPECT_EQ(checkDigit("79462"), '3');
    const auto number = OrderNumber::make(26, 42);
    ASSERT_TRUE(number);
    EXPECT_EQ(number->text().substr(0, 7), "2600042");
    EXPECT_EQ(number->year(), 26);
    EXPECT_EQ(number->count(), 42);
    EXPECT_EQ(OrderNumber::parse(number->text()), number);
}

TEST(OrderNumber, NoticesEverySlipOfOneDigit) {
    for (int count = 1; count < 2000; count += 7) {
        const std::string right = OrderNumber::make(26, count)->text();
        for (std::size_t at = 0; at < right.size(); ++at)
            for (char digit = '0'; digit <= '9'; ++digit) {
                std::string slipped = right;
                slipped[at] = digit;
                EXPECT_EQ(OrderNumber::parse(slipped).has_value(), slipped == right) << slipped;
            }
    }
    EXPECT_FALSE(OrderNumber::make(26, 0));
    EXPECT_FALSE(OrderNumber::make(26, 10'000'000));
    EXPECT_FALSE(OrderNumber::make(100, 1));
    for (const char* text : {"", "2600042", "260004211", "2600042x", "        "})
        EXPECT_FALSE(OrderNumber::parse(text)) << text;
}

// Ten digits from the 100,000th order of a year on; each count has one form only.
TEST(OrderNumber, HasRoomForMillionsWithoutChangingThoseGivenOut) {
    EXPECT_EQ(OrderNumber::make(26, 99'999)->text().size(), 8U);
    const auto next = *OrderNumber::make(26, 100'000);
    EXPECT_EQ(next.text().substr(0, 9), "260100000");
    EXPECT_EQ(next.count(), 100'000);
    EXPECT_EQ(OrderNumber::parse(next.text()), next);
    EXPECT_EQ(OrderNumber::make(26, 9'999'999)->count(), 9'999'999);
    EXPECT_LT(*OrderNumber::make(26, 99'999), next);
    EXPECT_LT(next, *OrderNumber::make(27, 1));
    std::string padded = "260000042";
    padded += checkDigit(padded);
    EXPECT_FALSE(OrderNumber::parse(padded)) << "42 has eight digits";
}

TEST(PersonCode, IsShortAndPlain) {
    EXPECT_TRUE(PersonCode::parse("MK"));
    EXPECT_TRUE(PersonCode::parse("tech-2.b_c"));
    for (const char* text : {"", "2a", "-a", "a b", "ä", "abcdefghijklmnopqrstuvwxyz", "a\n"})
        EXPECT_FALSE(PersonCode::parse(text)) << text;
}

}  // namespace
