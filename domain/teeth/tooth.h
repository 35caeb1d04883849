/// A permanent tooth, named by the two digits of ISO 3950: quadrant, then place.
///
/// A Tooth is always a real one. It comes from parse(), which may refuse, or from a literal such
/// as 36_fdi, which does not compile if there is no such tooth. Nothing in this code base passes
/// a tooth as a number or a string.
#pragma once

#include <array>
#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "domain/base/codes.h"

namespace domain {

enum class Arch : std::uint8_t { Upper, Lower };
template <>
inline constexpr std::array<EnumCode<Arch>, 2> enumCodes<Arch>{{
    {Arch::Upper, "upper"},
    {Arch::Lower, "lower"},
}};

enum class ToothKind : std::uint8_t { Incisor, Canine, Premolar, Molar };

/// The patient's own side; on a picture of the mouth the patient's right is on the viewer's left.
enum class Side : std::uint8_t { Right, Left };

inline constexpr int kTeethInArch = 16;
inline constexpr int kTeethInMouth = 32;

/// Cannot be called at compile time, so a literal of no tooth does not compile. Never defined.
void thereIsNoSuchTooth();

class Tooth {
public:
    /// Reads exactly "11".."18", "21".."28", "31".."38" or "41".."48".
    static std::optional<Tooth> parse(std::string_view iso3950) noexcept;
    /// The tooth at a position of the arch: 0 is the patient's right third molar, 15 the left.
    static constexpr Tooth at(Arch arch, int position) noexcept {
        const bool right = position < 8;
        const int quadrant = arch == Arch::Upper ? (right ? 1 : 2) : (right ? 4 : 3);
        return Tooth{quadrant, right ? 8 - position : position - 7};
    }

    constexpr Arch arch() const noexcept { return quadrant_ <= 2 ? Arch::Upper : Arch::Lower; }
    constexpr Side side() const noexcept {
        return quadrant_ == 1 || quadrant_ == 4 ? Side::Right : Side::Left;
    }
    constexpr int quadrant() const noexcept { return quadrant_; }
    constexpr int place() const noexcept { return place_; }  ///< 1 central incisor .. 8 third molar
    /// 0 (patient's right third molar) to 15 (left third molar) along its arch.
    constexpr int position() const noexcept {
        return side() == Side::Right ? 8 - place_ : place_ + 7;
    }
    /// 0..31 over both arches, the upper first.
    constexpr int index() const noexcept {
        return position() + (arch() == Arch::Upper ? 0 : kTeethInArch);
    }
    constexpr ToothKind kind() const noexcept {
        if (place_ >= 6) return ToothKind::Molar;
        if (place_ >= 4) return ToothKind::Premolar;
        return place_ == 3 ? ToothKind::Canine : ToothKind::Incisor;
    }
    constexpr bool isThirdMolar() const noexcept { return place_ == 8; }
    /// The two digits of ISO 3950.
    std::string text() const;

    friend constexpr auto operator<=>(Tooth, Tooth) = default;

private:
    constexpr Tooth(int quadrant, int place) noexcept
        : quadrant_{static_cast<std::uint8_t>(quadrant)},
          place_{static_cast<std::uint8_t>(place)} {}
    static constexpr bool exists(int quadrant, int place) noexcept {
        return quadrant >= 1 && quadrant <= 4 && place >= 1 && place <= 8;
    }
    friend consteval Tooth operator""_fdi(unsigned long long digits);

    std::uint8_t quadrant_;
    std::uint8_t place_;
};

consteval Tooth operator""_fdi(unsigned long long digits) {
    const int quadrant = static_cast<int>(digits / 10);
    const int place = static_cast<int>(digits % 10);
    if (digits > 48 || !Tooth::exists(quadrant, place)) thereIsNoSuchTooth();
    return Tooth{quadrant, place};
}

}  // namespace domain
