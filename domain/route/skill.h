/// What a person has learnt, and what a stage asks of whoever works it.
#pragma once

#include "domain/base/codes.h"

namespace domain {

/// What a person has learnt; a stage asks for one.
enum class Skill : std::uint8_t {
    Reception,
    Plaster,
    Surveying,
    Waxing,
    Casting,
    DigitalDesign,
    MetalWork,
    ToothSetting,
    ResinWork,
    Inspection,
};
template <>
inline constexpr std::array<EnumCode<Skill>, 10> enumCodes<Skill>{{
    {Skill::Reception, "reception"},
    {Skill::Plaster, "plaster"},
    {Skill::Surveying, "surveying"},
    {Skill::Waxing, "waxing"},
    {Skill::Casting, "casting"},
    {Skill::DigitalDesign, "digital-design"},
    {Skill::MetalWork, "metal-work"},
    {Skill::ToothSetting, "tooth-setting"},
    {Skill::ResinWork, "resin-work"},
    {Skill::Inspection, "inspection"},
}};

}  // namespace domain
