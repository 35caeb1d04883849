#include "storage/secrets.h"

#include <sodium.h>

#include <QString>
#include <algorithm>
#include <array>
#include <cstdlib>

#include "storage/digest.h"

namespace storage {
namespace {

/// Keeps the digests of tokens apart from the hashes of the ledger and of sealed texts.
constexpr char kTokenDomain[] = {2};
/// No badge begins with it.
constexpr char kCommandDomain[] = {3};
constexpr std::size_t kTokenBytes = 32;
/// No I, L, O or U: nothing is mistaken for another, and no words appear by accident.
constexpr std::string_view kLetters = "0123456789abcdefghjkmnpqrstvwxyz";
static_assert(kLetters.size() == 32);

struct Cost {
    unsigned long long passes;
    std::size_t bytes;
};

constexpr Cost limitsOf(HashCost cost) {
    switch (cost) {
        case HashCost::Usual:
            return {crypto_pwhash_argon2id_OPSLIMIT_INTERACTIVE,
                    crypto_pwhash_argon2id_MEMLIMIT_INTERACTIVE};
        case HashCost::Light:
            return {crypto_pwhash_argon2id_OPSLIMIT_MIN, crypto_pwhash_argon2id_MEMLIMIT_MIN};
    }
    return {};
}

/// libsodium wants this once before anything else. It fails only where the machine gives no random
/// numbers, and then nothing here may go on.
void ready() {
    static const bool kReady = sodium_init() >= 0;
    if (!kReady) std::abort();
}

void wipe(std::string& text) { sodium_memzero(text.data(), text.size()); }

/// The string as libsodium reads it: zeros up to a fixed length. Empty when it does not fit.
using Encoded = std::array<char, crypto_pwhash_STRBYTES>;
Encoded encoded(const std::string& hash) {
    Encoded held{};
    if (hash.size() < held.size()) std::ranges::copy(hash, held.begin());
    return held;
}

std::string hex(const unsigned char* bytes, std::size_t count) {
    std::string text(count * 2 + 1, '\0');
    sodium_bin2hex(text.data(), text.size(), bytes, count);
    text.pop_back();
    return text;
}

}  // namespace

Secret::Secret(std::string text) {
    ready();
    QString wide = QString::fromStdString(text);
    QString plain = wide.normalized(QString::NormalizationForm_KC);
    QByteArray bytes = plain.toUtf8();
    text_.assign(bytes.constData(), static_cast<std::size_t>(bytes.size()));
    wipe(text);
    sodium_memzero(wide.data(), static_cast<std::size_t>(wide.size()) * sizeof(QChar));
    sodium_memzero(plain.data(), static_cast<std::size_t>(plain.size()) * sizeof(QChar));
    sodium_memzero(bytes.data(), static_cast<std::size_t>(bytes.size()));
}

Secret::~Secret() { wipe(text_); }

std::size_t Secret::characters() const {
    // A byte 10xxxxxx of UTF-8 goes on with a character and begins none.
    return static_cast<std::size_t>(std::ranges::count_if(
        text_, [](char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U; }));
}

domain::Result<std::string> hashOf(const Secret& secret, HashCost cost) {
    ready();
    const Cost limits = limitsOf(cost);
    Encoded hash{};
    if (crypto_pwhash_str_alg(hash.data(), secret.text().data(), secret.text().size(),
                              limits.passes, limits.bytes, crypto_pwhash_ALG_ARGON2ID13) != 0)
        return domain::Error{domain::ErrorCode::Unavailable,
                             "no memory to hash a secret: 64 MiB were asked for; close something "
                             "and try again"};
    return std::string{hash.data()};
}

bool isHashOf(const std::string& hash, const Secret& secret) {
    ready();
    return crypto_pwhash_str_verify(encoded(hash).data(), secret.text().data(),
                                    secret.text().size()) == 0;
}

bool needsRehash(const std::string& hash, HashCost cost) {
    ready();
    const Cost limits = limitsOf(cost);
    return crypto_pwhash_str_needs_rehash(encoded(hash).data(), limits.passes, limits.bytes) != 0;
}

std::string newToken() {
    ready();
    std::array<unsigned char, kTokenBytes> bytes{};
    randombytes_buf(bytes.data(), bytes.size());
    std::string token = hex(bytes.data(), bytes.size());
    sodium_memzero(bytes.data(), bytes.size());
    return token;
}

Secret newOneTimeSecret() {
    ready();
    constexpr int kGroups = 4;
    constexpr int kGroupLength = 5;
    std::string text;
    for (int group = 0; group < kGroups; ++group) {
        if (group > 0) text += '-';
        for (int place = 0; place < kGroupLength; ++place)
            text += kLetters[randombytes_uniform(kLetters.size())];
    }
    return Secret{std::move(text)};
}

std::string tokenDigest(std::string_view token) {
    return sha256({QByteArrayView{kTokenDomain, sizeof kTokenDomain},
                   QByteArrayView{token.data(), static_cast<qsizetype>(token.size())}});
}

std::string keyedDigest(std::string_view key, std::initializer_list<std::string_view> parts) {
    ready();
    const auto bytes = [](std::string_view text) {
        return reinterpret_cast<const unsigned char*>(text.data());
    };
    crypto_auth_hmacsha256_state state{};
    crypto_auth_hmacsha256_init(&state, bytes(key), key.size());
    for (const std::string_view part : parts)
        crypto_auth_hmacsha256_update(&state, bytes(part), part.size());
    std::array<unsigned char, crypto_auth_hmacsha256_BYTES> digest{};
    crypto_auth_hmacsha256_final(&state, digest.data());
    sodium_memzero(&state, sizeof state);
    return hex(digest.data(), digest.size());
}

std::string badgeDigest(std::string_view key, const Secret& badge) {
    return keyedDigest(key, {badge.text()});
}

std::string commandDigest(std::string_view key, std::string_view command) {
    return keyedDigest(key, {std::string_view{kCommandDomain, sizeof kCommandDomain}, command});
}

}  // namespace storage
