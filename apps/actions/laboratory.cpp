#include "apps/actions/laboratory.h"

#include "apps/actions/settings.h"
#include "storage/records_file.h"

namespace actions {
namespace {

/// Which setting keeps each part of the letterhead.
struct LetterheadRow {
    SettingRow setting;
    std::string Letterhead::*part;
};
constexpr LetterheadRow kLetterhead[] = {{kLaboratoryName, &Letterhead::name},
                                         {kLaboratoryAddress, &Letterhead::address},
                                         {kLaboratoryContact, &Letterhead::contact}};

}  // namespace

domain::Result<Laboratory> Laboratory::open(const std::filesystem::path& folder,
                                            const domain::Clock& clock, storage::HashCost cost) {
    auto records = storage::Connection::open(folder);
    if (!records) return records.error();
    return Laboratory{folder, clock, *std::move(records), cost};
}

bool Laboratory::isIn(const std::filesystem::path& folder) {
    return std::filesystem::exists(folder / storage::kRecordsFile);
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
