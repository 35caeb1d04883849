#include "storage/recovery_code.h"

#include <sodium.h>

#include <optional>
#include <string_view>

namespace storage {
namespace {

using domain::Error;
using domain::ErrorCode;
using domain::Result;

constexpr std::string_view kSigns = "0123456789abcdefghjkmnpqrstvwxyz";
static_assert(kSigns.size() == 32);
constexpr std::size_t kCodeSigns = 28;
constexpr std::size_t kGroup = 4;
/// Weights repeat after 31 signs, and then two that changed places would go unnoticed.
static_assert(kCodeSigns <= 31);

/// x^5 + x^2 + 1, whose root generates GF(32). From memory; the tests go through all powers.
constexpr unsigned kPolynomial = 0x25;
constexpr unsigned kOverflow = 0x20;

constexpr unsigned timesGenerator(unsigned value) {
    value <<= 1U;
    return (value & kOverflow) != 0 ? value ^ kPolynomial : value;
}

/// The weighted sum of signs, the last with weight 1.
class Sum {
public:
    void add(std::size_t sign) { sum_ = timesGenerator(sum_) ^ static_cast<unsigned>(sign); }
    /// The sign that makes it nothing.
    std::size_t missing() const { return timesGenerator(sum_); }
    bool isNothing() const { return sum_ == 0; }

private:
    unsigned sum_{0};
};

std::string grouped(const std::string& signs) {
    std::string text;
    for (std::size_t at = 0; at < signs.size(); at += kGroup)
        text.append(at == 0 ? "" : "-").append(signs, at, kGroup);
    return text;
}

/// nullopt: no sign of a code.
std::optional<char> signOf(char typed) {
    if (typed >= 'A' && typed <= 'Z') typed = static_cast<char>(typed - 'A' + 'a');
    if (typed == 'i' || typed == 'l') return '1';
    if (typed == 'o') return '0';
    return kSigns.find(typed) == std::string_view::npos ? std::nullopt : std::optional{typed};
}

bool parts(char typed) { return typed == ' ' || typed == '-' || typed == '\t'; }

}  // namespace

Secret newRecoveryCode() {
    std::string signs;
    Sum sum;
    while (signs.size() + 1 < kCodeSigns) {
        const std::size_t sign = randombytes_uniform(kSigns.size());
        sum.add(sign);
        signs += kSigns[sign];
    }
    signs += kSigns[sum.missing()];
    Secret code{grouped(signs)};
    sodium_memzero(signs.data(), signs.size());
    return code;
}

Result<Secret> readRecoveryCode(const Secret& typed) {
    std::string signs;
    Sum sum;
    for (const char each : typed.text()) {
        if (parts(each)) continue;
        const auto sign = signOf(each);
        if (!sign)
            return Error{ErrorCode::Unusable,
                         "a recovery code has the digits and the letters a to z without i, l, o "
                         "and u; something else was typed"};
        sum.add(kSigns.find(*sign));
        signs += *sign;
    }
    if (signs.size() != kCodeSigns)
        return Error{ErrorCode::Unusable, "a recovery code has " + std::to_string(kCodeSigns) +
                                              " signs, in seven groups of four; " +
                                              std::to_string(signs.size()) + " were typed"};
    if (!sum.isNothing())
        return Error{ErrorCode::Unusable,
                     "a sign of the recovery code was mistyped: its last sign does not fit the "
                     "others; compare it with the paper"};
    return Secret{grouped(signs)};
}

}  // namespace storage
