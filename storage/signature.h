/// Signatures by Ed25519 (RFC 8032), through libsodium. Keys and signatures are hexadecimal digits.
#pragma once

#include <string>
#include <string_view>

namespace storage {

/// 32 random bytes, 64 digits: what a signing key is made from.
std::string newSigningSeed();
/// The public key of a seed, 64 digits; empty when the seed is none.
std::string publicKeyOf(std::string_view seed);
/// 128 digits; empty when the seed is none.
std::string signatureOf(std::string_view seed, std::string_view message);
/// False for what is no key or no signature.
bool isSignatureOf(std::string_view publicKey, std::string_view message,
                   std::string_view signature);

}  // namespace storage
