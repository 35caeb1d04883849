#include "storage/settings_store.h"

#include "storage/kept_digest.h"
#include "storage/statement.h"

namespace storage {
namespace {

/// In hexadecimal digits, since the column holds text.
std::string sealedSetting(const IdentityCipher& cipher, std::string_view name,
                          const std::string& value) {
    return cipher.seal({"setting", name, "content"}, value).toHex().toStdString();
}

}  // namespace

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

domain::Result<std::optional<std::string>> SettingsStore::findSecret(std::string_view name) const {
    auto content = find(name);
    if (!content || !*content) return content;
    const auto cipher = connection_.identity();
    if (!cipher) return cipher.error();
    auto value = (**cipher).open({"setting", name, "content"},
                                 QByteArray::fromHex(QByteArray::fromStdString(**content)));
    if (!value) return value.error();
    return std::optional{*std::move(value)};
}

domain::Result<domain::Done> SettingsStore::putSecret(Transaction& transaction,
                                                      std::string_view name,
                                                      const std::string& value) const {
    const auto cipher = connection_.identity();
    if (!cipher) return cipher.error();
    return put(transaction, name, sealedSetting(**cipher, name, value));
}

domain::Result<domain::Done> encryptSettings(Transaction& work, const IdentityCipher& cipher) {
    const SettingsStore settings{work.connection()};
    const auto clear = settings.find(kHmacKeySetting);
    if (!clear) return clear.error();
    if (!*clear) return domain::Done{};
    return settings.put(work, kHmacKeySetting, sealedSetting(cipher, kHmacKeySetting, **clear));
}

domain::Result<std::optional<std::string>> hmacKeyOf(Connection& connection) {
    return SettingsStore{connection}.findSecret(kHmacKeySetting);
}

std::string settingDigest(std::string_view name, const std::string& stored) {
    return keptDigest({"setting", name, stored});
}

}  // namespace storage
