/// The prescriber's signature: on paper, seen by someone of the laboratory, or electronic.
#pragma once

#include <optional>
#include <string>

#include "domain/base/codes.h"
#include "domain/base/date.h"

namespace domain {

enum class SignatureKind : std::uint8_t { OnPaper, Electronic };
template <>
inline constexpr std::array<EnumCode<SignatureKind>, 2> enumCodes<SignatureKind>{{
    {SignatureKind::OnPaper, "on-paper"},
    {SignatureKind::Electronic, "electronic"},
}};

struct Signature {
    SignatureKind kind{};
    std::optional<std::string> seenBy{};  ///< on paper: the code of the person who saw it
    std::optional<Date> date{};
    friend bool operator==(const Signature&, const Signature&) = default;
};

}  // namespace domain
