/// Points to a text outside the ledger that the ledger commits to without containing it.
#pragma once

#include <string>

namespace domain {

struct SealedText {
    std::string code{};    ///< "T000042"
    std::string digest{};  ///< SHA-256 of salt and text, 64 hexadecimal digits
    friend bool operator==(const SealedText&, const SealedText&) = default;
};

}  // namespace domain
