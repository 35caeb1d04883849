#include "storage/kept_digest.h"

#include "storage/digest.h"
#include "storage/stored_values.h"

namespace storage {

std::string keptDigest(std::initializer_list<std::string_view> parts) {
    /// Apart from the hashes of the chains, from sealed texts and from tokens.
    constexpr char kKeptDomain = 5;
    QByteArray bytes(1, kKeptDomain);
    for (const std::string_view part : parts) {
        bytes += wholeBytes(static_cast<std::int64_t>(part.size()));
        bytes.append(part.data(), static_cast<qsizetype>(part.size()));
    }
    return sha256({bytes});
}

}  // namespace storage
