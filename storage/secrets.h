/// Passwords, PINs, badge codes and tokens: how they are kept so that nobody can read them back.
///
/// Passwords and PINs become Argon2id strings (RFC 9106, through libsodium) with a salt of their
/// own. Badge codes and tokens must be found again, so they become digests: a badge code by
/// HMAC-SHA-256 (RFC 2104) under a key of the laboratory, a token, which is 256 random bits, by
/// SHA-256.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>

#include "domain/base/result.h"

namespace storage {

/// A text nobody may see, brought to Unicode NFKC (UAX #15) so that every keyboard writes it
/// alike, and wiped from memory when it is no longer held.
class Secret {
public:
    Secret() = default;
    /// Wipes `text`. Bytes that are not UTF-8 become replacement characters.
    explicit Secret(std::string text);
    Secret(const Secret&) = default;
    Secret& operator=(const Secret&) = delete;
    ~Secret();

    const std::string& text() const noexcept { return text_; }
    /// How many Unicode characters it has.
    std::size_t characters() const;

private:
    std::string text_;
};

/// How much work one hash is. Usual: libsodium's INTERACTIVE, 64 MiB twice over. Light: the least
/// there is, for tests and the demo, whose secrets are printed in the open.
enum class HashCost { Usual, Light };

/// "$argon2id$v=19$m=65536,t=2,p=1$salt$hash". ErrorCode::Unavailable without the memory for it.
domain::Result<std::string> hashOf(const Secret& secret, HashCost cost);
/// Whether the hash is of this secret; false for what is no Argon2id string.
bool isHashOf(const std::string& hash, const Secret& secret);
/// Whether the hash was made at another cost, and should be made anew while the secret is at hand.
bool needsRehash(const std::string& hash, HashCost cost);

/// 256 random bits in 64 hexadecimal digits.
std::string newToken();
/// A secret to be read out once: 4 groups of 5 from 32 characters that are not mistaken for one
/// another, 100 random bits.
Secret newOneTimeSecret();
/// 64 hexadecimal digits.
std::string tokenDigest(std::string_view token);
/// HMAC-SHA-256 (RFC 2104) over parts laid end to end, 64 hexadecimal digits.
std::string keyedDigest(std::string_view key, std::initializer_list<std::string_view> parts);
/// keyedDigest() of a badge.
std::string badgeDigest(std::string_view key, const Secret& badge);
/// Likewise, kept apart from the digests of badges.
std::string commandDigest(std::string_view key, std::string_view command);

}  // namespace storage
