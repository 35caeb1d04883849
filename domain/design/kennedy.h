/// The Kennedy class of a partly toothless arch, by Applegate's eight rules.
///
/// Sources: the definitions of Kennedy (1925) and the eight rules of Applegate as restated in the
/// open teaching literature; the class is decided after deciding which spaces are to be restored
/// (Ankara University open textbook of prosthodontics).
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "domain/base/codes.h"
#include "domain/prescription/prescription.h"

namespace domain {

enum class KennedyClass : std::uint8_t { I, II, III, IV };
template <>
inline constexpr std::array<EnumCode<KennedyClass>, 4> enumCodes<KennedyClass>{{
    {KennedyClass::I, "I"},
    {KennedyClass::II, "II"},
    {KennedyClass::III, "III"},
    {KennedyClass::IV, "IV"},
}};

struct Kennedy {
    KennedyClass kennedyClass{};
    int modifications{0};

    /// "III mod 1", "I", "IV".
    std::string text() const;
    /// Reads it as people write it too: "Class II", "II/1", "II, mod 1", "Kennedy class II mod. 1".
    static std::optional<Kennedy> parse(std::string_view text);

    friend constexpr auto operator<=>(Kennedy, Kennedy) = default;
};

/// What the classification looks at, position by position from the patient's right to left.
enum class Place : std::uint8_t {
    Standing,  ///< bounds a space: a tooth that stays, or a fixed pontic or implant
    Restored,  ///< a space this appliance fills
    Ignored,   ///< neither: not replaced, closed, or a third molar that is no abutment
};
using ArchPlaces = std::array<Place, kTeethInArch>;

/// One toothless area: restored places with nothing standing between them.
struct EdentulousArea {
    int first{};  ///< position of its first restored place, from the patient's right
    int last{};
    std::optional<int> rightAbutment{};  ///< position standing next to it on the patient's right
    std::optional<int> leftAbutment{};

    bool isFreeEnd() const noexcept { return !rightAbutment || !leftAbutment; }
    bool crossesMidline() const noexcept { return first < 8 && last >= 8; }
};

std::vector<EdentulousArea> edentulousAreas(const ArchPlaces& places);

/// nullopt when nothing is to be restored or nothing stands.
std::optional<Kennedy> classify(const ArchPlaces& places);

/// An arch as it is told in a line: everything not named stands, except third molars.
struct ToldArch {
    Arch arch{};
    ToothSet missing{};
    ToothSet notReplaced{};    ///< missing and staying so; may be repeated under missing
    ToothSet toBeExtracted{};  ///< counts as missing
    ToothSet abutments{};      ///< third molars that stand and carry a part
    ToothSet replaced{};       ///< third molars that are missing and to be replaced
};

ArchPlaces placesOf(const ToldArch& told);

/// The places of the arch a prescription works on. A third molar stands only if a part leans on
/// it; teeth planned for extraction count as missing (Applegate's first and third rule).
ArchPlaces placesOf(const Prescription& prescription);

std::optional<Kennedy> classify(const Prescription& prescription);

}  // namespace domain
