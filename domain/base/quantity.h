/// Measured amounts: whole numbers of one small unit, the unit in the type.
///
/// Microns plus Millidegrees does not compile. Nothing in the project keeps a length as a
/// floating-point number, so what was prescribed as 0.25 mm stays 0.25 mm.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace domain {

template <typename Unit>
class Quantity {
public:
    constexpr Quantity() = default;
    static constexpr Quantity of(std::int64_t count) noexcept { return Quantity{count}; }
    constexpr std::int64_t count() const noexcept { return count_; }

    friend constexpr Quantity operator+(Quantity a, Quantity b) noexcept {
        return Quantity{a.count_ + b.count_};
    }
    friend constexpr Quantity operator-(Quantity a, Quantity b) noexcept {
        return Quantity{a.count_ - b.count_};
    }
    friend constexpr auto operator<=>(Quantity, Quantity) = default;

private:
    explicit constexpr Quantity(std::int64_t count) noexcept : count_{count} {}
    std::int64_t count_{0};
};

/// How a unit is written: its sign, how many small units make one, and the largest count read.
struct MicronUnit {
    static constexpr std::string_view kSign = "mm";
    static constexpr std::string_view kExample = "0.25 mm";
    static constexpr std::int64_t kPerWritten = 1000;
    static constexpr std::int64_t kMost = 200'000;
};
struct MillidegreeUnit {
    static constexpr std::string_view kSign = "deg";
    static constexpr std::string_view kExample = "4.5 deg";
    static constexpr std::int64_t kPerWritten = 1000;
    static constexpr std::int64_t kMost = 180'000;
};
struct PpmUnit {
    static constexpr std::string_view kSign = "%";
    static constexpr std::string_view kExample = "0.1 %";
    static constexpr std::int64_t kPerWritten = 10'000;
    static constexpr std::int64_t kMost = 1'000'000;
};
struct MegapascalUnit {
    static constexpr std::string_view kSign = "MPa";
    static constexpr std::string_view kExample = "500 MPa";
    static constexpr std::int64_t kPerWritten = 1;
    static constexpr std::int64_t kMost = 5000;
};
struct GigapascalUnit {
    static constexpr std::string_view kSign = "GPa";
    static constexpr std::string_view kExample = "220 GPa";
    static constexpr std::int64_t kPerWritten = 1000;
    static constexpr std::int64_t kMost = 1'000'000;
};
struct MillinewtonUnit {
    static constexpr std::string_view kSign = "N";
    static constexpr std::string_view kExample = "2.5 N";
    static constexpr std::int64_t kPerWritten = 1000;
    static constexpr std::int64_t kMost = 100'000;
};
struct DayUnit {
    static constexpr std::string_view kSign = "d";
    static constexpr std::string_view kExample = "10 d";
    static constexpr std::int64_t kPerWritten = 1;
    static constexpr std::int64_t kMost = 365;
};
struct MinuteUnit {
    static constexpr std::string_view kSign = "min";
    static constexpr std::string_view kExample = "10 min";
    static constexpr std::int64_t kPerWritten = 1;
    static constexpr std::int64_t kMost = 100'000;
};
struct MilligramUnit {
    static constexpr std::string_view kSign = "g";
    static constexpr std::string_view kExample = "12.4 g";
    static constexpr std::int64_t kPerWritten = 1000;
    static constexpr std::int64_t kMost = 100'000'000;
};
struct MicrolitreUnit {
    static constexpr std::string_view kSign = "ml";
    static constexpr std::string_view kExample = "10 ml";
    static constexpr std::int64_t kPerWritten = 1000;
    static constexpr std::int64_t kMost = 10'000'000;
};
struct MillicelsiusUnit {
    static constexpr std::string_view kSign = "C";
    static constexpr std::string_view kExample = "74 C";
    static constexpr std::int64_t kPerWritten = 1000;
    static constexpr std::int64_t kMost = 2'000'000;
};
struct HeatingRateUnit {
    static constexpr std::string_view kSign = "C/min";
    static constexpr std::string_view kExample = "7 C/min";
    static constexpr std::int64_t kPerWritten = 1000;
    static constexpr std::int64_t kMost = 100'000;
};
struct DensityUnit {
    static constexpr std::string_view kSign = "g/cm3";
    static constexpr std::string_view kExample = "8.4 g/cm3";
    static constexpr std::int64_t kPerWritten = 1000;
    static constexpr std::int64_t kMost = 25'000;
};
struct MixRatioUnit {
    static constexpr std::string_view kSign = "ml/g";
    static constexpr std::string_view kExample = "0.22 ml/g";
    static constexpr std::int64_t kPerWritten = 1000;
    static constexpr std::int64_t kMost = 2000;
};
struct SecondUnit {
    static constexpr std::string_view kSign = "s";
    static constexpr std::string_view kExample = "90 s";
    static constexpr std::int64_t kPerWritten = 1;
    static constexpr std::int64_t kMost = 1'000'000;
};

using Microns = Quantity<MicronUnit>;  ///< lengths: undercuts, widths, depths; written in mm
using Millidegrees = Quantity<MillidegreeUnit>;  ///< tilts and angles; written in degrees
using Share = Quantity<PpmUnit>;  ///< a part of a whole in parts per million; written in %
using Megapascals = Quantity<MegapascalUnit>;  ///< strength
using Stiffness = Quantity<GigapascalUnit>;    ///< Young's modulus in MPa; written in GPa
using Newtons = Quantity<MillinewtonUnit>;     ///< forces in mN; written in N
using Days = Quantity<DayUnit>;
using Minutes = Quantity<MinuteUnit>;            ///< contact and working times
using Seconds = Quantity<SecondUnit>;            ///< times within a log
using Milligrams = Quantity<MilligramUnit>;      ///< masses; written in g
using Microlitres = Quantity<MicrolitreUnit>;    ///< volumes of liquids; written in ml
using Temperature = Quantity<MillicelsiusUnit>;  ///< in thousandths of a degree Celsius
using HeatingRate = Quantity<HeatingRateUnit>;   ///< of furnaces, in thousandths of a C/min
using Density = Quantity<DensityUnit>;           ///< in mg/cm^3; written in g/cm3
using MixRatio = Quantity<MixRatioUnit>;         ///< liquid to powder, in microlitres a gram

constexpr Microns operator""_um(unsigned long long n) {
    return Microns::of(static_cast<std::int64_t>(n));
}
constexpr Millidegrees operator""_mdeg(unsigned long long n) {
    return Millidegrees::of(static_cast<std::int64_t>(n));
}
constexpr Share operator""_ppm(unsigned long long n) {
    return Share::of(static_cast<std::int64_t>(n));
}
constexpr Megapascals operator""_MPa(unsigned long long n) {
    return Megapascals::of(static_cast<std::int64_t>(n));
}
constexpr Stiffness operator""_GPa(unsigned long long n) {
    return Stiffness::of(static_cast<std::int64_t>(n) * GigapascalUnit::kPerWritten);
}
constexpr Newtons operator""_mN(unsigned long long n) {
    return Newtons::of(static_cast<std::int64_t>(n));
}
constexpr Days operator""_d(unsigned long long n) { return Days::of(static_cast<std::int64_t>(n)); }
constexpr Minutes operator""_min(unsigned long long n) {
    return Minutes::of(static_cast<std::int64_t>(n));
}
constexpr Milligrams operator""_mg(unsigned long long n) {
    return Milligrams::of(static_cast<std::int64_t>(n));
}
constexpr Microlitres operator""_ul(unsigned long long n) {
    return Microlitres::of(static_cast<std::int64_t>(n));
}
constexpr Temperature operator""_C(unsigned long long n) {
    return Temperature::of(static_cast<std::int64_t>(n) * MillicelsiusUnit::kPerWritten);
}

constexpr Seconds secondsOf(Minutes minutes) noexcept { return Seconds::of(minutes.count() * 60); }

/// The whole number nearest to a quotient, halves up; neither below 0, the divisor above it.
constexpr std::int64_t nearestQuotient(std::int64_t dividend, std::int64_t divisor) noexcept {
    return (dividend + divisor / 2) / divisor;
}

/// An amount known or allowed only between two others.
template <typename Amount>
struct Between {
    Amount least{};
    Amount most{};

    constexpr bool holds(Amount amount) const noexcept { return least <= amount && amount <= most; }
    friend constexpr bool operator==(Between, Between) = default;
};

/// For geometry, which computes in fractions of a millimetre.
constexpr double millimetres(Microns length) noexcept {
    return static_cast<double>(length.count()) / MicronUnit::kPerWritten;
}

/// A computed figure with as many decimals as it deserves: "3.5", "12".
std::string tenths(double value);

/// Writes a count of small units as a decimal number of written units, without trailing zeros.
std::string decimalText(std::int64_t count, std::int64_t perWritten);

/// Reads a plain decimal number ("0.25", no sign, no exponent) into small units. Refuses more
/// decimals than the small unit can hold, and anything above `most`.
std::optional<std::int64_t> parseDecimal(std::string_view text, std::int64_t perWritten,
                                         std::int64_t most);

/// "0.25 mm", "4.5 deg", "0.1 %", "10 min".
template <typename Unit>
std::string text(Quantity<Unit> quantity) {
    return decimalText(quantity.count(), Unit::kPerWritten) + ' ' + std::string{Unit::kSign};
}

/// "250 to 300 C", and "250 C" where both ends are one.
template <typename Unit>
std::string text(Between<Quantity<Unit>> between) {
    if (between.least == between.most) return text(between.least);
    return decimalText(between.least.count(), Unit::kPerWritten) + " to " + text(between.most);
}

/// Reads what text() writes: the number, one space, the unit's own sign; another unit is refused.
template <typename Unit>
std::optional<Quantity<Unit>> parseQuantity(std::string_view written) {
    const auto gap = written.find(' ');
    if (gap == std::string_view::npos || written.substr(gap + 1) != Unit::kSign) return {};
    const auto count = parseDecimal(written.substr(0, gap), Unit::kPerWritten, Unit::kMost);
    if (!count) return {};
    return Quantity<Unit>::of(*count);
}

}  // namespace domain
