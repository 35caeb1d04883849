#include "apps/actions/laboratory_key.h"

#include "storage/settings_store.h"

namespace actions {
namespace {

domain::Result<std::optional<std::string>> keyIn(const Laboratory& laboratory) {
    return storage::SettingsStore{laboratory.records()}.findSecret(
        storage::kHmacKeySetting);
}

}  // namespace

using domain::Result;

Result<domain::Done> makeLaboratoryKey(const Laboratory& laboratory, storage::Transaction& work) {
    return storage::SettingsStore{laboratory.records()}.putSecret(
        work, storage::kHmacKeySetting, storage::newToken());
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
