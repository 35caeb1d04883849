/// What the laboratory sets for itself, in one table: each setting by its name, with its form, what
/// holds until it is set, and where that comes from. The limits of the rules (`limit.NAME`) are
/// described beside their defaults in domain/rules/house_limits.h.
#pragma once

#include <span>

#include "apps/actions/unit_of_work.h"
#include "storage/settings_store.h"

namespace actions {

enum class SettingForm : std::uint8_t { Text, WholeNumber, RetentionTerms, Secret };

struct SettingRow {
    std::string_view name;
    SettingForm form{};
    std::string_view usual{};   ///< until it is set
    std::string_view source{};  ///< of what is usual
    std::int64_t least{};       ///< of a whole number
    std::int64_t most{};
};

inline constexpr SettingRow kLaboratoryName{.name = "laboratory.name"};
inline constexpr SettingRow kLaboratoryAddress{.name = "laboratory.address"};
inline constexpr SettingRow kLaboratoryContact{.name = "laboratory.contact"};
/// How long a session may rest before it ends.
inline constexpr SettingRow kIdleMinutes{.name = "access.idle-minutes",
                                         .form = SettingForm::WholeNumber,
                                         .usual = "15",
                                         .source = "common practice, no source",
                                         .least = 1,
                                         .most = 720};
/// How many days the laboratory pauses at most before a clock that far ahead is taken for wrong.
inline constexpr SettingRow kLongestPause{.name = "clock.longest-pause-days",
                                          .form = SettingForm::WholeNumber,
                                          .usual = "45",
                                          .source = "common practice, no source",
                                          .least = 1,
                                          .most = 400};
inline constexpr SettingRow kRetentionTerms{
    .name = "retention.terms",
    .form = SettingForm::RetentionTerms,
    .usual = "eu",
    .source = "Regulation (EU) 2017/745, Annex XIII, 4: the longest of the terms that are known"};
/// Where backups go when no folder is named; empty: backups/ in the laboratory's folder.
inline constexpr SettingRow kBackupFolder{.name = "backup.folder"};
inline constexpr SettingRow kHmacKey{.name = storage::kHmacKeySetting, .form = SettingForm::Secret};
/// What checkpoints are signed with, and the public key that checks them.
inline constexpr SettingRow kSigningSeed{.name = "checkpoint.seed", .form = SettingForm::Secret};
inline constexpr SettingRow kSigningKey{.name = "checkpoint.public-key"};

/// Every setting there is but the limits.
std::span<const SettingRow> settingRows();

/// As set last, or what is usual. ErrorCode::Unavailable where the records hold what does not fit.
domain::Result<std::string> setting(const Laboratory& laboratory, const SettingRow& row);
domain::Result<std::int64_t> wholeSetting(const Laboratory& laboratory, const SettingRow& row);

/// Sets it within a unit of work. ErrorCode::Unusable says what was expected.
domain::Result<domain::Done> putSetting(const Laboratory& laboratory, UnitOfWork& unit,
                                        const SettingRow& row, const std::string& value);
/// Sets several at once; for who may keep the workshop.
domain::Result<domain::Done> writeSettings(
    const Laboratory& laboratory, const Who& who,
    const std::vector<std::pair<SettingRow, std::string>>& values);

/// "eu, us-fl": each id must be that of a term. ErrorCode::Unusable names the terms there are.
domain::Result<std::vector<domain::RetentionTerm>> termsIn(const std::string& ids);

}  // namespace actions
