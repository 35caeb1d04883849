#include "storage/signature.h"

#include <sodium.h>

#include <array>
#include <optional>

#include "storage/secrets.h"

namespace storage {
namespace {

template <std::size_t kSize>
using Bytes = std::array<unsigned char, kSize>;

/// nullopt: these are not the digits of so many bytes.
template <std::size_t kSize>
std::optional<Bytes<kSize>> bytesIn(std::string_view digits) {
    Bytes<kSize> bytes{};
    std::size_t length{};
    const bool isRead =
        digits.size() == 2 * kSize && sodium_hex2bin(bytes.data(), bytes.size(), digits.data(),
                                                     digits.size(), nullptr, &length, nullptr) == 0;
    if (!isRead || length != kSize) return {};
    return bytes;
}

template <std::size_t kSize>
std::string digitsOf(const Bytes<kSize>& bytes) {
    std::string digits(2 * kSize + 1, '\0');
    sodium_bin2hex(digits.data(), digits.size(), bytes.data(), bytes.size());
    digits.pop_back();
    return digits;
}

const unsigned char* bytesOf(std::string_view text) {
    return reinterpret_cast<const unsigned char*>(text.data());
}

struct Pair {
    Bytes<crypto_sign_PUBLICKEYBYTES> open{};
    Bytes<crypto_sign_SECRETKEYBYTES> secret{};
    Pair() = default;
    Pair(const Pair&) = default;
    Pair& operator=(const Pair&) = delete;
    ~Pair() { sodium_memzero(secret.data(), secret.size()); }
};

std::optional<Pair> pairOf(std::string_view seed) {
    const auto bytes = bytesIn<crypto_sign_SEEDBYTES>(seed);
    Pair pair;
    if (!bytes ||
        crypto_sign_seed_keypair(pair.open.data(), pair.secret.data(), bytes->data()) != 0)
        return {};
    return pair;
}

}  // namespace

std::string newSigningSeed() {
    static_assert(crypto_sign_SEEDBYTES == 32, "as many bytes as a token");
    return newToken();
}

std::string publicKeyOf(std::string_view seed) {
    const auto pair = pairOf(seed);
    return pair ? digitsOf(pair->open) : std::string{};
}

std::string signatureOf(std::string_view seed, std::string_view message) {
    const auto pair = pairOf(seed);
    if (!pair) return {};
    Bytes<crypto_sign_BYTES> signature{};
    crypto_sign_detached(signature.data(), nullptr, bytesOf(message), message.size(),
                         pair->secret.data());
    return digitsOf(signature);
}

bool isSignatureOf(std::string_view publicKey, std::string_view message,
                   std::string_view signature) {
    const auto key = bytesIn<crypto_sign_PUBLICKEYBYTES>(publicKey);
    const auto signedBy = bytesIn<crypto_sign_BYTES>(signature);
    return key && signedBy &&
           crypto_sign_verify_detached(signedBy->data(), bytesOf(message), message.size(),
                                       key->data()) == 0;
}

}  // namespace storage
