/// What is kept beside the ledger and committed to in it: settings, shade guides, credentials. Each
/// change is an event; where what lies in a table is not what the newest event says, it was
/// altered.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "domain/base/codes.h"
#include "domain/base/sealed_text.h"
#include "domain/materials/shade_guide.h"

namespace domain {

enum class Credential : std::uint8_t { Password, Badge };
template <>
inline constexpr std::array<EnumCode<Credential>, 2> enumCodes<Credential>{{
    {Credential::Password, "password"},
    {Credential::Badge, "badge"},
}};

/// What lets a person have another credential, where it is neither their session nor the present
/// one.
enum class GivenBy : std::uint8_t { RecoveryCode };
template <>
inline constexpr std::array<EnumCode<GivenBy>, 1> enumCodes<GivenBy>{{
    {GivenBy::RecoveryCode, "recovery-code"},
}};

/// About the settings whose names begin with the code of its subject and a dot.
struct SettingSet {
    std::string name{};
    std::optional<std::string> before{};  ///< nullopt: it was never set
    std::string now{};
    bool isSecret{};  ///< then `before` and `now` are digests of what is stored
    friend bool operator==(const SettingSet&, const SettingSet&) = default;
};

/// What there was of that name before is in the event before this one.
struct GuideEntered {
    ShadeGuide guide{};
    friend bool operator==(const GuideEntered&, const GuideEntered&) = default;
};

/// The same password or PIN, kept anew, as at another cost.
struct CredentialKept {
    Credential credential{};
    std::string digest{};
    friend bool operator==(const CredentialKept&, const CredentialKept&) = default;
};

struct FoundCredential {
    std::string person{};
    Credential credential{};
    std::string digest{};
    friend bool operator==(const FoundCredential&, const FoundCredential&) = default;
};

/// What older records held when a program first committed to it: taken over as found, and nothing
/// is said about what it was before.
struct TakenOver {
    std::vector<SettingSet> settings{};
    std::vector<ShadeGuide> guides{};
    std::vector<FoundCredential> credentials{};
    std::vector<SealedText> texts{};  ///< that no event took up
    friend bool operator==(const TakenOver&, const TakenOver&) = default;
};

}  // namespace domain
