#include "apps/actions/laboratory_key.h"

#include <algorithm>

#include "apps/actions/settings.h"
#include "storage/settings_store.h"

namespace actions {
namespace {

domain::Result<std::optional<std::string>> keyIn(const Laboratory& laboratory) {
    return storage::hmacKeyOf(laboratory.records());
}

/// So many hexadecimal digits of a digest make a key: 128 bits.
constexpr std::size_t kDigestDigits = 32;

/// So many are too many to spell anything: a UUID as keyOf() in who.h makes them, or a digest.
constexpr std::size_t kFewestOfOurs = 32;

bool isOurs(std::string_view key) {
    return key.size() >= kFewestOfOurs && std::ranges::all_of(key, [](char c) {
               return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f') || c == '-';
           });
}

}  // namespace

using domain::Result;

Result<domain::Done> makeLaboratoryKey(const Laboratory& laboratory, UnitOfWork& work) {
    return putSetting(laboratory, work, kHmacKey, storage::newToken());
}

Result<std::string> digestOfBadge(const Laboratory& laboratory, const storage::Secret& badge) {
    const auto key = keyIn(laboratory);
    if (!key) return key.error();
    if (!*key)
        return domain::Error{domain::ErrorCode::Unavailable,
                             "the records are damaged: the key of the badges is missing; restore "
                             "a copy, or sign in by password"};
    return storage::badgeDigest(**key, badge);
}

Result<std::string> digestOfCommand(const Laboratory& laboratory, const std::string& command) {
    const auto key = keyIn(laboratory);
    if (!key) return key.error();
    return *key ? storage::commandDigest(**key, command) : std::string{};
}

Result<std::string> keptKey(const Laboratory& laboratory, const std::string& key) {
    std::string_view prefix;
    for (const std::string_view each : {kScanKey, kPrescriptionKey})
        if (key.starts_with(each)) prefix = each;
    const std::string own = key.substr(prefix.size());
    if (isOurs(own)) return key;
    const auto digest = digestOfCommand(laboratory, "key:" + own);
    if (!digest || digest->empty()) return digest ? Result<std::string>{key} : digest;
    return std::string{prefix} + digest->substr(0, kDigestDigits);
}

}  // namespace actions
