#include "apps/actions/settings.h"

#include <array>
#include <charconv>
#include <sstream>

namespace actions {
namespace {

using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Result;

constexpr std::array kRows{kLaboratoryName, kLaboratoryAddress, kLaboratoryContact, kIdleMinutes,
                           kRetentionTerms, kBackupFolder,      kHmacKey,           kSigningSeed,
                           kSigningKey,     kLongestPause};

std::optional<std::int64_t> wholeIn(const std::string& text) {
    std::int64_t value{};
    const char* end = text.data() + text.size();
    const auto read = std::from_chars(text.data(), end, value);
    if (read.ec != std::errc{} || read.ptr != end) return {};
    return value;
}

/// Why a value does not fit its setting; nullopt when it does.
std::optional<std::string> unfit(const SettingRow& row, const std::string& value) {
    switch (row.form) {
        case SettingForm::Text:
        case SettingForm::Secret:
            return {};
        case SettingForm::WholeNumber: {
            const auto whole = wholeIn(value);
            if (whole && *whole >= row.least && *whole <= row.most) return {};
            return std::to_string(row.least) + " to " + std::to_string(row.most) +
                   " was expected, not " + value;
        }
        case SettingForm::RetentionTerms: {
            const auto terms = termsIn(value);
            return terms ? std::nullopt : std::optional{terms.error().message};
        }
    }
    return {};
}

}  // namespace

std::span<const SettingRow> settingRows() { return kRows; }

Result<std::string> setting(const Laboratory& laboratory, const SettingRow& row) {
    const storage::SettingsStore store{laboratory.records()};
    auto value =
        row.form == SettingForm::Secret ? store.findSecret(row.name) : store.find(row.name);
    if (!value) return value.error();
    if (!*value) return std::string{row.usual};
    if (unfit(row, **value))
        return Error{ErrorCode::Unavailable, "the records are damaged: " + std::string{row.name} +
                                                 " is \"" + **value + '"'};
    return **std::move(value);
}

Result<std::int64_t> wholeSetting(const Laboratory& laboratory, const SettingRow& row) {
    const auto value = setting(laboratory, row);
    if (!value) return value.error();
    return *wholeIn(*value);
}

Result<Done> putSetting(const Laboratory& laboratory, UnitOfWork& unit, const SettingRow& row,
                        const std::string& value) {
    if (const auto why = unfit(row, value)) return Error{ErrorCode::Unusable, *why};
    const storage::SettingsStore store{laboratory.records()};
    const bool isSecret = row.form == SettingForm::Secret;
    const auto committed = [&]() -> Result<std::optional<std::string>> {
        auto stored = store.find(row.name);
        if (!stored || !*stored || !isSecret) return stored;
        return std::optional{storage::settingDigest(row.name, **stored)};
    };
    const auto before = committed();
    if (!before) return before.error();
    if (auto put = isSecret ? store.putSecret(unit.transaction(), row.name, value)
                            : store.put(unit.transaction(), row.name, value);
        !put)
        return put;
    const auto now = committed();
    if (!now) return now.error();
    // "limit.chewing-force" is one of the settings "limit".
    const std::string group{row.name.substr(0, row.name.find('.'))};
    return unit.record({domain::SubjectKind::Setting, group},
                       domain::SettingSet{.name = std::string{row.name},
                                          .before = *before,
                                          .now = now->value_or(std::string{}),
                                          .isSecret = isSecret});
}

Result<Done> writeSettings(const Laboratory& laboratory, const Who& who,
                           const std::vector<std::pair<SettingRow, std::string>>& values) {
    std::string command = commandOf({"set"});
    for (const auto& [row, value] : values) command += commandOf({std::string{row.name}, value});
    const auto kept = perform(laboratory, who, {domain::Permission::KeepWorkshop, command, {}},
                              [&](UnitOfWork& unit) -> Result<Done> {
                                  for (const auto& [row, value] : values)
                                      if (auto put = putSetting(laboratory, unit, row, value); !put)
                                          return put;
                                  return Done{};
                              });
    if (!kept) return kept.error();
    return Done{};
}

Result<std::vector<domain::RetentionTerm>> termsIn(const std::string& ids) {
    std::vector<domain::RetentionTerm> terms;
    std::string known;
    for (const domain::RetentionTerm& term : domain::retentionTerms())
        known.append(known.empty() ? "" : ", ").append(term.id);
    std::istringstream list{ids};
    for (std::string id; std::getline(list >> std::ws, id, ',');) {
        const domain::RetentionTerm* term = domain::retentionTermOf(id);
        if (term == nullptr)
            return Error{ErrorCode::Unusable,
                         id.insert(0, 1, '"')
                             .append("\" is no term of retention; expected some of: ")
                             .append(known)};
        terms.push_back(*term);
    }
    if (terms.empty())
        return Error{ErrorCode::Unusable, "a term of retention was expected: " + known};
    return terms;
}

}  // namespace actions
