#include "apps/actions/laboratory.h"

#include "apps/actions/settings.h"
#include "storage/backup.h"

namespace actions {
namespace {

/// Which setting keeps each part of the letterhead.
struct LetterheadRow {
    SettingRow setting;
    std::string Letterhead::* part;
};
constexpr LetterheadRow kLetterhead[] = {{kLaboratoryName, &Letterhead::name},
                                         {kLaboratoryAddress, &Letterhead::address},
                                         {kLaboratoryContact, &Letterhead::contact}};

}  // namespace

domain::Result<Laboratory> Laboratory::openExisting(const std::filesystem::path& folder,
                                                    const domain::Clock& clock,
                                                    const storage::KeyAccess& keys) {
    auto records = storage::Connection::open(folder, storage::Opening::Existing,
                                             storage::backupBeforeUpgrade(clock.now()), keys);
    if (!records) return records.error();
    return Laboratory{folder, clock, *std::move(records), storage::HashCost::Usual, keys.folder};
}

domain::Result<Laboratory> Laboratory::open(const std::filesystem::path& folder,
                                            const domain::Clock& clock, storage::HashCost cost,
                                            const storage::KeyAccess& keys) {
    auto records = storage::Connection::open(folder, storage::Opening::MakeIfMissing,
                                             storage::backupBeforeUpgrade(clock.now()), keys);
    if (!records) return records.error();
    return Laboratory{folder, clock, *std::move(records), cost, keys.folder};
}

bool Laboratory::isIn(const std::filesystem::path& folder) {
    std::error_code failure;
    const auto status = std::filesystem::symlink_status(folder / storage::kRecordsFile, failure);
    return status.type() != std::filesystem::file_type::not_found;
}

domain::Result<Letterhead> letterhead(const Laboratory& laboratory) {
    Letterhead head;
    for (const LetterheadRow& row : kLetterhead) {
        auto value = setting(laboratory, row.setting);
        if (!value) return value.error();
        head.*(row.part) = *std::move(value);
    }
    return head;
}

domain::Result<domain::Done> writeLetterhead(const Laboratory& laboratory, const Letterhead& head,
                                             const Who& who) {
    std::vector<std::pair<SettingRow, std::string>> values;
    for (const LetterheadRow& row : kLetterhead) values.emplace_back(row.setting, head.*(row.part));
    return writeSettings(laboratory, who, values);
}

}  // namespace actions
