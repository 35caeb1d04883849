#include "apps/actions/badge_key.h"

#include "storage/settings_store.h"

namespace actions {
namespace {

constexpr std::string_view kSetting = "access.badge-key";

}  // namespace

using domain::Result;

Result<domain::Done> makeBadgeKey(const Laboratory& laboratory, storage::Transaction& work) {
    return storage::SettingsStore{laboratory.records()}.put(work, kSetting, storage::newToken());
}

Result<std::string> digestOfBadge(const Laboratory& laboratory, const storage::Secret& badge) {
    const auto key = storage::SettingsStore{laboratory.records()}.find(kSetting);
    if (!key) return key.error();
    if (!*key)
        return domain::Error{domain::ErrorCode::Unavailable,
                             "the records are damaged: the key of the badges is missing; restore "
                             "a copy, or sign in by password"};
    return storage::badgeDigest(**key, badge);
}

}  // namespace actions
