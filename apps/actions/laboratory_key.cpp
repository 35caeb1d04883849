#include "apps/actions/laboratory_key.h"

#include "apps/actions/settings.h"
#include "storage/settings_store.h"

namespace actions {
namespace {

domain::Result<std::optional<std::string>> keyIn(const Laboratory& laboratory) {
    return storage::hmacKeyOf(laboratory.records());
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

}  // namespace actions
