/// Digests of what is kept beside the ledger, as the ledger says them.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>

namespace storage {

/// SHA-256 of a byte 5 and each part after its length in 8 bytes; 64 hexadecimal digits.
std::string keptDigest(std::initializer_list<std::string_view> parts);

}  // namespace storage
