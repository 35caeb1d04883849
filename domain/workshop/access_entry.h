/// What the access log holds: who came and went, tried, looked at names, printed. One entry each,
/// never changed, in a chain of its own, so that the ledger does not grow by reading.
#pragma once

#include <optional>
#include <string>
#include <variant>

#include "domain/base/codes.h"
#include "domain/base/date.h"
#include "domain/base/id.h"

namespace domain {

struct SignedIn {
    std::string session{};  ///< digest of its token
    friend bool operator==(const SignedIn&, const SignedIn&) = default;
};

enum class SignOutReason : std::uint8_t { Asked, Rested, Replaced, CredentialsChanged };
template <>
inline constexpr std::array<EnumCode<SignOutReason>, 4> enumCodes<SignOutReason>{{
    {SignOutReason::Asked, "asked"},
    {SignOutReason::Rested, "rested"},
    {SignOutReason::Replaced, "replaced"},
    {SignOutReason::CredentialsChanged, "credentials-changed"},
}};
struct SignedOut {
    std::string session{};
    SignOutReason why{};
    friend bool operator==(const SignedOut&, const SignedOut&) = default;
};

/// A session that older records held when this log was begun.
struct SessionFound {
    std::string session{};
    std::int64_t opened{};  ///< microseconds
    std::optional<std::int64_t> ended{};
    friend bool operator==(const SessionFound&, const SessionFound&) = default;
};

/// How many attempts at the person's credentials failed in a row, after this entry, and until when
/// they are locked (microseconds).
struct AttemptsCounted {
    std::int64_t failures{};
    std::optional<std::int64_t> lockedUntil{};
    friend bool operator==(const AttemptsCounted&, const AttemptsCounted&) = default;
};

/// Somebody tried what they may not do, or could not prove who they are.
struct AccessDenied {
    std::string command{};  ///< the permission asked, or "sign-in"
    std::string why{};      ///< in our words
    friend bool operator==(const AccessDenied&, const AccessDenied&) = default;
};

/// Somebody looked at the names of an order: once for each order, person and day.
struct IdentityViewed {
    std::string order{};
    friend bool operator==(const IdentityViewed&, const IdentityViewed&) = default;
};

struct PaperPrinted {
    std::string about{};  ///< number of the order, or what else it is about
    std::int64_t revision{};
    std::string paper{};   ///< its kind
    std::string digest{};  ///< SHA-256 of the file
    /// Of the file in the papers folder of the laboratory; nullopt: it lies elsewhere.
    std::optional<std::string> name{};
    friend bool operator==(const PaperPrinted&, const PaperPrinted&) = default;
};

/// Something left the records as a file that is no paper.
struct Exported {
    std::string what{};    ///< "backup", "checkpoint"
    std::string digest{};  ///< SHA-256 of the file; of a backup, but for its last line
    friend bool operator==(const Exported&, const Exported&) = default;
};

using AccessHappening = std::variant<SignedIn, SignedOut, SessionFound, AttemptsCounted,
                                     AccessDenied, IdentityViewed, PaperPrinted, Exported>;

/// The stable word of each, in the order of the variant.
enum class AccessKind : std::uint8_t {
    SignedIn,
    SignedOut,
    SessionFound,
    AttemptsCounted,
    AccessDenied,
    IdentityViewed,
    PaperPrinted,
    Exported,
};
template <>
inline constexpr std::array<EnumCode<AccessKind>, 8> enumCodes<AccessKind>{{
    {AccessKind::SignedIn, "signed-in"},
    {AccessKind::SignedOut, "signed-out"},
    {AccessKind::SessionFound, "session-found"},
    {AccessKind::AttemptsCounted, "attempts-counted"},
    {AccessKind::AccessDenied, "access-denied"},
    {AccessKind::IdentityViewed, "identity-viewed"},
    {AccessKind::PaperPrinted, "paper-printed"},
    {AccessKind::Exported, "exported"},
}};

struct AccessEntry {
    Instant at{};
    PersonCode person;      ///< whom it is about
    std::string station{};  ///< empty: at none
    AccessHappening what{};
    friend bool operator==(const AccessEntry&, const AccessEntry&) = default;
};

inline AccessKind kindOf(const AccessEntry& entry) {
    return static_cast<AccessKind>(entry.what.index());
}

}  // namespace domain
