/// A finding: one thing a rule has to say about one prescription, kept as it was said.
///
/// It owns its words, so an order keeps what it was told even if the rule is worded anew later.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "domain/base/codes.h"
#include "domain/base/date.h"
#include "domain/base/id.h"
#include "domain/base/sealed_text.h"
#include "domain/teeth/numbering.h"
#include "domain/teeth/tooth.h"

namespace domain {

enum class Severity : std::uint8_t {
    Missing,   ///< incomplete: refused until answered
    Conflict,  ///< contradictory: refused until changed
    Caution,   ///< accepted only by a named person with a reason
};
template <>
inline constexpr std::array<EnumCode<Severity>, 3> enumCodes<Severity>{{
    {Severity::Missing, "missing"},
    {Severity::Conflict, "conflict"},
    {Severity::Caution, "caution"},
}};

/// The prescriber's signed word that it stays as prescribed all the same.
struct KeptAsPrescribed {
    SealedText words{};  ///< why
    PersonCode recordedBy{blankPersonCode()};
    Date day{Date::ofDays(0)};
    friend bool operator==(const KeptAsPrescribed&, const KeptAsPrescribed&) = default;
};

struct Finding {
    std::string rule{};  ///< the rule's id, as "clasp.reciprocation"
    Severity severity{};
    std::optional<Tooth> tooth{};  ///< where, if it is about one tooth
    std::string found{};           ///< what was found there, with its unit; never a name
    std::string requirement{};
    std::string question{};
    std::string source{};
    std::optional<KeptAsPrescribed> kept{};  ///< answered so; nullopt: not

    friend bool operator==(const Finding&, const Finding&) = default;
};

/// Whether it refuses, and the prescriber has not kept it as prescribed.
bool refuses(const Finding& finding) noexcept;
/// Whether the order must wait for the dentist: anything missing or in conflict.
bool blocks(const std::vector<Finding>& findings);

}  // namespace domain
