#include "storage/identity_cipher.h"

#include <sodium.h>

#include <cstdlib>
#include <sstream>

#include "storage/stored_values.h"

namespace storage {
namespace {

using domain::Error;
using domain::ErrorCode;
using domain::Result;
using Cipher = std::shared_ptr<const IdentityCipher>;

static_assert(kNonceBytes == crypto_aead_xchacha20poly1305_ietf_NPUBBYTES);
static_assert(KeyBytes::kSize == crypto_aead_xchacha20poly1305_ietf_KEYBYTES);
static_assert(KeyBytes::kSize == crypto_kdf_KEYBYTES);
constexpr std::size_t kTagBytes = crypto_aead_xchacha20poly1305_ietf_ABYTES;

/// Which key is derived from the identity key; never another number for one that exists.
enum class Derived : std::uint8_t { Sealing = 1, Matching = 2 };
constexpr char kDerivedFor[crypto_kdf_CONTEXTBYTES + 1] = "fwIdent1";

/// What a locked key is called among the places of sealed values.
constexpr std::string_view kLockedKey = "identity-key";
constexpr std::string_view kAlgorithm = "argon2id";
/// More than any of our own costs: a hostile file cannot ask for all the memory there is.
constexpr unsigned long long kMostPasses = 16;
constexpr std::size_t kMostBytes = std::size_t{1} << 30;

/// libsodium wants this once. It fails only where the machine gives no random numbers.
void ready() {
    static const bool kReady = sodium_init() >= 0;
    if (!kReady) std::abort();
}

const unsigned char* bytesOf(QByteArrayView bytes) {
    return reinterpret_cast<const unsigned char*>(bytes.data());
}

std::string hexOf(std::span<const unsigned char> bytes) {
    std::string text(bytes.size() * 2 + 1, '\0');
    sodium_bin2hex(text.data(), text.size(), bytes.data(), bytes.size());
    text.pop_back();
    return text;
}

bool readHex(const std::string& digits, std::span<unsigned char> bytes) {
    if (digits.size() != bytes.size() * 2) return false;
    std::size_t read = 0;
    return sodium_hex2bin(bytes.data(), bytes.size(), digits.data(), digits.size(), nullptr, &read,
                          nullptr) == 0 &&
           read == bytes.size();
}

/// A key from a secret a person keeps (RFC 9106).
struct Stretching {
    unsigned long long passes{};
    std::size_t bytes{};
    std::array<unsigned char, crypto_pwhash_SALTBYTES> salt{};
};

Stretching stretchingOf(HashCost cost) {
    Stretching how;
    switch (cost) {
        case HashCost::Usual:
            how.passes = crypto_pwhash_argon2id_OPSLIMIT_INTERACTIVE;
            how.bytes = crypto_pwhash_argon2id_MEMLIMIT_INTERACTIVE;
            break;
        case HashCost::Light:
            how.passes = crypto_pwhash_argon2id_OPSLIMIT_MIN;
            how.bytes = crypto_pwhash_argon2id_MEMLIMIT_MIN;
            break;
    }
    randombytes_buf(how.salt.data(), how.salt.size());
    return how;
}

bool stretch(const Secret& secret, const Stretching& how, KeyBytes& key) {
    return crypto_pwhash(key.bytes().data(), key.bytes().size(), secret.text().data(),
                         secret.text().size(), how.salt.data(), how.passes, how.bytes,
                         crypto_pwhash_ALG_ARGON2ID13) == 0;
}

Error noMemory() {
    return {ErrorCode::Unavailable,
            "no memory to hash a secret: 64 MiB were asked for; close something and try again"};
}

Nonce newNonce() {
    Nonce nonce{};
    randombytes_buf(nonce.data(), nonce.size());
    return nonce;
}

/// Nonce, ciphertext and tag in one.
QByteArray sealedWhole(const KeyBytes& key, QByteArrayView associated, std::string_view text) {
    const Nonce nonce = newNonce();
    QByteArray whole{reinterpret_cast<const char*>(nonce.data()),
                     static_cast<qsizetype>(nonce.size())};
    whole.append(sealBytes(key, nonce, associated, text));
    return whole;
}

std::optional<std::string> openedWhole(const KeyBytes& key, QByteArrayView associated,
                                       QByteArrayView whole) {
    if (whole.size() < qsizetype{kNonceBytes + kTagBytes}) return {};
    Nonce nonce{};
    std::copy_n(bytesOf(whole), nonce.size(), nonce.begin());
    return openBytes(key, nonce, associated, whole.sliced(kNonceBytes));
}

QByteArray associatedWith(const SealedPlace& place) {
    return lengthPrefixed({place.table, place.row, place.column});
}

}  // namespace

KeyBytes::~KeyBytes() { sodium_memzero(bytes_.data(), bytes_.size()); }

QByteArray sealBytes(const KeyBytes& key, const Nonce& nonce, QByteArrayView associated,
                     std::string_view text) {
    QByteArray sealed{static_cast<qsizetype>(text.size() + kTagBytes), Qt::Uninitialized};
    crypto_aead_xchacha20poly1305_ietf_encrypt(
        reinterpret_cast<unsigned char*>(sealed.data()), nullptr,
        reinterpret_cast<const unsigned char*>(text.data()), text.size(), bytesOf(associated),
        static_cast<unsigned long long>(associated.size()), nullptr, nonce.data(),
        key.bytes().data());
    return sealed;
}

std::optional<std::string> openBytes(const KeyBytes& key, const Nonce& nonce,
                                     QByteArrayView associated, QByteArrayView sealed) {
    if (sealed.size() < static_cast<qsizetype>(kTagBytes)) return {};
    std::string text(static_cast<std::size_t>(sealed.size()) - kTagBytes, '\0');
    if (crypto_aead_xchacha20poly1305_ietf_decrypt(
            reinterpret_cast<unsigned char*>(text.data()), nullptr, nullptr, bytesOf(sealed),
            static_cast<unsigned long long>(sealed.size()), bytesOf(associated),
            static_cast<unsigned long long>(associated.size()), nonce.data(),
            key.bytes().data()) != 0)
        return {};
    return text;
}

QByteArray lengthPrefixed(std::initializer_list<std::string_view> words) {
    QByteArray bytes;
    for (const std::string_view word : words) {
        bytes.append(wholeBytes(static_cast<std::int64_t>(word.size())));
        bytes.append(word.data(), static_cast<qsizetype>(word.size()));
    }
    return bytes;
}

IdentityCipher::IdentityCipher(const KeyBytes& key) : key_{key} {
    ready();
    const auto derive = [&](KeyBytes& derived, Derived which) {
        crypto_kdf_derive_from_key(derived.bytes().data(), derived.bytes().size(),
                                   static_cast<std::uint64_t>(which), kDerivedFor,
                                   key_.bytes().data());
    };
    derive(sealing_, Derived::Sealing);
    derive(matching_, Derived::Matching);
}

Cipher IdentityCipher::random() {
    ready();
    KeyBytes key;
    randombytes_buf(key.bytes().data(), key.bytes().size());
    return Cipher{new IdentityCipher{key}};
}

Cipher IdentityCipher::ofDigits(const std::string& digits) {
    KeyBytes key;
    return readHex(digits, key.bytes()) ? Cipher{new IdentityCipher{key}} : nullptr;
}

QByteArray IdentityCipher::seal(const SealedPlace& place, std::string_view text) const {
    return sealedWhole(sealing_, associatedWith(place), text);
}

Result<std::string> IdentityCipher::open(const SealedPlace& place, const QByteArray& sealed) const {
    if (auto text = openedWhole(sealing_, associatedWith(place), sealed)) return *std::move(text);
    return Error{ErrorCode::Unavailable, "what is sealed in " + std::string{place.table} + ", " +
                                             std::string{place.column} +
                                             ", does not open with the identity key: it was "
                                             "altered, or belongs elsewhere"};
}

std::string IdentityCipher::digest(std::string_view purpose, std::string_view text) const {
    const QByteArray words = lengthPrefixed({purpose, text});
    const auto key = matching_.bytes();
    return keyedDigest({reinterpret_cast<const char*>(key.data()), key.size()},
                       {{words.constData(), static_cast<std::size_t>(words.size())}});
}

std::string IdentityCipher::checkValue(const std::string& laboratory) const {
    return digest("check", laboratory);
}

Secret IdentityCipher::digits() const { return Secret{hexOf(key_.bytes())}; }

Result<std::string> IdentityCipher::lockedBy(const Secret& secret, std::string_view purpose,
                                             const std::string& laboratory, HashCost cost) const {
    const Stretching how = stretchingOf(cost);
    KeyBytes key;
    if (!stretch(secret, how, key)) return noMemory();
    const Secret own = digits();
    const QByteArray sealed =
        sealedWhole(key, lengthPrefixed({kLockedKey, laboratory, purpose}), own.text());
    std::string text{kAlgorithm};
    text.append(" ").append(std::to_string(how.passes));
    text.append(" ").append(std::to_string(how.bytes));
    text.append(" ").append(hexOf(how.salt));
    text.append(" ").append(sealed.toHex().toStdString());
    return text;
}

Result<Cipher> IdentityCipher::unlocked(const std::string& locked, const Secret& secret,
                                        std::string_view purpose, const std::string& laboratory) {
    ready();
    const Error wrong{ErrorCode::Unusable, "what was locked with a secret is damaged"};
    std::istringstream words{locked};
    std::string algorithm;
    std::string salt;
    std::string sealed;
    std::string more;
    Stretching how;
    words >> algorithm >> how.passes >> how.bytes >> salt >> sealed;
    if (!words || words >> more || algorithm != kAlgorithm || !readHex(salt, how.salt) ||
        how.passes < crypto_pwhash_argon2id_OPSLIMIT_MIN || how.passes > kMostPasses ||
        how.bytes < crypto_pwhash_argon2id_MEMLIMIT_MIN || how.bytes > kMostBytes)
        return wrong;
    KeyBytes key;
    if (!stretch(secret, how, key)) return noMemory();
    auto text = openedWhole(key, lengthPrefixed({kLockedKey, laboratory, purpose}),
                            QByteArray::fromHex(QByteArray::fromStdString(sealed)));
    if (!text) return Cipher{};
    Cipher cipher = ofDigits(*text);
    sodium_memzero(text->data(), text->size());
    if (cipher == nullptr) return wrong;
    return cipher;
}

}  // namespace storage
