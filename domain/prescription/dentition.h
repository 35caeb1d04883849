/// What stands and what is missing in the mouth, tooth by tooth, as the dentist charted it.
#pragma once

#include <array>

#include "domain/base/codes.h"
#include "domain/teeth/tooth.h"
#include "domain/teeth/tooth_set.h"

namespace domain {

enum class ToothState : std::uint8_t {
    Present,
    Missing,        ///< and to be replaced by a saddle of this appliance
    ToBeExtracted,  ///< still standing; counts as missing before anything is classified
    NotReplaced,    ///< missing, and said to stay so
    Closed,         ///< missing, the space closed by drift
    Bridged,        ///< replaced already by a fixed bridge or an implant
};
template <>
inline constexpr std::array<EnumCode<ToothState>, 6> enumCodes<ToothState>{{
    {ToothState::Present, "present"},
    {ToothState::Missing, "missing"},
    {ToothState::ToBeExtracted, "to-be-extracted"},
    {ToothState::NotReplaced, "not-replaced"},
    {ToothState::Closed, "closed"},
    {ToothState::Bridged, "bridged"},
}};

/// The chart of both arches. A tooth nobody names is present, but a third molar nobody names is
/// missing and not replaced (Applegate's second rule: it is not considered).
class Dentition {
public:
    Dentition() {
        for (const Arch arch : {Arch::Upper, Arch::Lower})
            for (int position = 0; position < kTeethInArch; ++position)
                set(Tooth::at(arch, position), unnamed(Tooth::at(arch, position)));
    }

    static constexpr ToothState unnamed(Tooth tooth) noexcept {
        return tooth.isThirdMolar() ? ToothState::NotReplaced : ToothState::Present;
    }

    ToothState of(Tooth tooth) const noexcept {
        return states_[static_cast<std::size_t>(tooth.index())];
    }
    void set(Tooth tooth, ToothState state) noexcept {
        states_[static_cast<std::size_t>(tooth.index())] = state;
    }
    /// Whether a part of the appliance can lean on the tooth: present and not to be extracted.
    bool stands(Tooth tooth) const noexcept { return of(tooth) == ToothState::Present; }

    ToothSet all(ToothState state) const {
        ToothSet set;
        for (const Arch arch : {Arch::Upper, Arch::Lower})
            for (int position = 0; position < kTeethInArch; ++position)
                if (const Tooth tooth = Tooth::at(arch, position); of(tooth) == state)
                    set.add(tooth);
        return set;
    }

    friend bool operator==(const Dentition&, const Dentition&) = default;

private:
    std::array<ToothState, kTeethInMouth> states_{};
};

}  // namespace domain
