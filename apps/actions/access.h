/// Writing into the access log what somebody looked at and printed.
#pragma once

#include <filesystem>
#include <vector>

#include "apps/actions/laboratory.h"
#include "apps/actions/who.h"

namespace actions {

/// Somebody looked at the names of orders: noted once for each order, person and day, all in one
/// unit of work. What cannot be noted is not to be shown.
domain::Result<domain::Done> noteViewed(const Laboratory& laboratory, const Who& who,
                                        const std::vector<domain::OrderNumber>& numbers);

/// A paper that was written.
struct Printed {
    std::string about{};  ///< number of the order, or what else
    std::int64_t revision{};
    std::string paper{};  ///< its kind
    std::filesystem::path file{};
};
/// Commits to it by the digest of its file.
domain::Result<domain::Done> notePrinted(const Laboratory& laboratory, const Who& who,
                                         const Printed& printed);

}  // namespace actions
