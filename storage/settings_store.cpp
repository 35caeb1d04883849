#include "storage/settings_store.h"

#include "storage/statement.h"

namespace storage {

domain::Result<std::optional<std::string>> SettingsStore::find(std::string_view name) const try {
    Statement query{connection_, "setting_find"};
    query.bind("name", std::string{name}).run();
    if (!query.next()) return std::optional<std::string>{};
    return std::optional{query.text("content")};
} catch (const SqlFailure& failure) {
    return failure.error();
}

domain::Result<domain::Done> SettingsStore::put(Transaction& transaction, std::string_view name,
                                                const std::string& value) const try {
    Statement{transaction.connection(), "setting_put"}
        .bind({{"name", std::string{name}}, {"content", value}})
        .run();
    return domain::Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace storage
