#include "apps/actions/laboratory.h"

#include "apps/actions/access.h"

#include "storage/settings_store.h"
#include "storage/transaction.h"

namespace actions {
namespace {

/// Where each part of the letterhead is kept among the settings.
struct LetterheadRow {
    std::string_view setting;
    std::string Letterhead::*part;
};
constexpr LetterheadRow kLetterhead[] = {{"laboratory.name", &Letterhead::name},
                                         {"laboratory.address", &Letterhead::address},
                                         {"laboratory.contact", &Letterhead::contact}};

}  // namespace

domain::Result<Laboratory> Laboratory::openExisting(const std::filesystem::path& folder,
                                                    const domain::Clock& clock) {
    auto records = storage::Connection::open(folder, storage::Opening::Existing);
    if (!records) return records.error();
    return Laboratory{folder, clock, *std::move(records), storage::HashCost::Usual};
}

domain::Result<Laboratory> Laboratory::open(const std::filesystem::path& folder,
                                            const domain::Clock& clock, storage::HashCost cost) {
    auto records = storage::Connection::open(folder, storage::Opening::MakeIfMissing);
    if (!records) return records.error();
    return Laboratory{folder, clock, *std::move(records), cost};
}

bool Laboratory::isIn(const std::filesystem::path& folder) {
    std::error_code failure;
    const auto status = std::filesystem::symlink_status(folder / storage::kRecordsFile, failure);
    return status.type() != std::filesystem::file_type::not_found;
}

domain::Result<Letterhead> letterhead(const Laboratory& laboratory) {
    const storage::SettingsStore settings{laboratory.records()};
    Letterhead head;
    for (const LetterheadRow& row : kLetterhead) {
        auto value = settings.find(row.setting);
        if (!value) return value.error();
        head.*(row.part) = value->value_or(std::string{});
    }
    return head;
}

domain::Result<domain::Done> writeLetterhead(const Laboratory& laboratory, const Letterhead& head,
                                             const Who& who) {
    if (const auto allowed = authorise(laboratory, who, domain::Permission::KeepWorkshop); !allowed)
        return allowed.error();
    auto transaction = storage::Transaction::begin(laboratory.records());
    if (!transaction) return transaction.error();
    storage::Transaction work = *std::move(transaction);
    const storage::SettingsStore settings{laboratory.records()};
    for (const LetterheadRow& row : kLetterhead)
        if (auto put = settings.put(work, row.setting, head.*(row.part)); !put) return put.error();
    return work.commit();
}

}  // namespace actions
