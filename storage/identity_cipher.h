/// Identity at rest: what names people is kept encrypted, under a key that lies outside the
/// records.
///
/// XChaCha20-Poly1305 (draft-irtf-cfrg-xchacha, through libsodium) with a random nonce of 24 bytes
/// before each ciphertext. A sealed value opens only where it was sealed: table, row and column are
/// authenticated with it. What must be found again, as a patient by their name, becomes a keyed
/// digest (HMAC-SHA-256, RFC 2104) instead. Both use keys of their own, derived from the one key.
#pragma once

#include <QByteArray>
#include <array>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "domain/base/result.h"
#include "storage/secrets.h"

namespace storage {

/// Where a sealed value lies. `row`: what the row is known by, as its key.
struct SealedPlace {
    std::string_view table{};
    std::string_view row{};
    std::string_view column{};
};

/// 32 bytes that are wiped when they are no longer held.
class KeyBytes {
public:
    static constexpr std::size_t kSize = 32;

    KeyBytes() = default;
    KeyBytes(const KeyBytes&) = default;
    KeyBytes& operator=(const KeyBytes&) = delete;
    ~KeyBytes();

    std::span<unsigned char, kSize> bytes() noexcept { return bytes_; }
    std::span<const unsigned char, kSize> bytes() const noexcept { return bytes_; }

private:
    std::array<unsigned char, kSize> bytes_{};
};

inline constexpr std::size_t kNonceBytes = 24;
using Nonce = std::array<unsigned char, kNonceBytes>;

/// AEAD_XChaCha20_Poly1305 as the draft has it: ciphertext and tag, without the nonce.
QByteArray sealBytes(const KeyBytes& key, const Nonce& nonce, QByteArrayView associated,
                     std::string_view text);
/// nullopt when key, nonce, associated data or a byte is another.
std::optional<std::string> openBytes(const KeyBytes& key, const Nonce& nonce,
                                     QByteArrayView associated, QByteArrayView sealed);
/// Words as associated data: each after its length in 8 bytes, so that none runs into the next.
QByteArray lengthPrefixed(std::initializer_list<std::string_view> words);

class IdentityCipher {
public:
    /// With a key nobody has.
    static std::shared_ptr<const IdentityCipher> random();
    /// Of 64 hexadecimal digits; nullptr for anything else.
    static std::shared_ptr<const IdentityCipher> ofDigits(const std::string& digits);

    IdentityCipher(const IdentityCipher&) = delete;
    IdentityCipher& operator=(const IdentityCipher&) = delete;
    ~IdentityCipher() = default;

    /// Nonce, ciphertext and tag: 40 bytes more than the text.
    QByteArray seal(const SealedPlace& place, std::string_view text) const;
    /// ErrorCode::Unavailable when it was sealed under another key or elsewhere, or was altered.
    domain::Result<std::string> open(const SealedPlace& place, const QByteArray& sealed) const;

    /// 64 hexadecimal digits, the same for the same text and purpose; they say nothing to anybody
    /// without the key. Digests of one purpose cannot be told to be those of another.
    std::string digest(std::string_view purpose, std::string_view text) const;

    /// By what the records of a laboratory know their key: a digest of the laboratory's id.
    std::string checkValue(const std::string& laboratory) const;

    /// The key in 64 hexadecimal digits, for a key file.
    Secret digits() const;
    /// The key as only a secret opens it: "argon2id PASSES BYTES SALT SEALED", the last two in
    /// hexadecimal digits. `purpose` and laboratory are authenticated with it.
    /// ErrorCode::Unavailable without the memory to hash.
    domain::Result<std::string> lockedBy(const Secret& secret, std::string_view purpose,
                                         const std::string& laboratory, HashCost cost) const;
    /// What lockedBy() locked. nullptr: another secret. ErrorCode::Unusable where the text is none.
    static domain::Result<std::shared_ptr<const IdentityCipher>> unlocked(
        const std::string& locked, const Secret& secret, std::string_view purpose,
        const std::string& laboratory);

private:
    explicit IdentityCipher(const KeyBytes& key);

    KeyBytes key_;
    KeyBytes sealing_;
    KeyBytes matching_;
};

}  // namespace storage
