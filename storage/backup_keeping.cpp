#include "storage/backup_keeping.h"

#include <algorithm>
#include <numeric>
#include <set>

namespace storage {
namespace {

std::string periodOf(const BackupMark& backup, KeptPeriod period) {
    constexpr std::size_t kYear = 4;   // "2026"
    constexpr std::size_t kMonth = 7;  // "2026-11"
    switch (period) {
        case KeptPeriod::State:
            return backup.head;
        case KeptPeriod::Month:
            return backup.made.day().text().substr(0, kMonth);
        case KeptPeriod::Year:
            return backup.made.day().text().substr(0, kYear);
    }
    return {};
}

/// From the newest to the oldest; of the same time, the later in the list first.
std::vector<std::size_t> newestFirst(std::span<const BackupMark> backups) {
    std::vector<std::size_t> order(backups.size());
    std::iota(order.rbegin(), order.rend(), std::size_t{0});
    std::ranges::stable_sort(order, [&](std::size_t left, std::size_t right) {
        return backups[left].made > backups[right].made;
    });
    return order;
}

}  // namespace

std::vector<std::size_t> superseded(std::span<const BackupMark> backups, std::size_t justMade,
                                    std::span<const KeepRule> rules) {
    std::set<std::size_t> kept{justMade};
    const auto order = newestFirst(backups);
    for (const KeepRule& rule : rules) {
        std::set<std::string> periods;
        for (const std::size_t at : order)
            if (periods.size() < rule.count &&
                periods.insert(periodOf(backups[at], rule.period)).second)
                kept.insert(at);
    }
    std::vector<std::size_t> rest;
    for (std::size_t at = 0; at < backups.size(); ++at)
        if (!kept.contains(at)) rest.push_back(at);
    return rest;
}

}  // namespace storage
