/// Writing into the access log what somebody looked at and printed.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "apps/actions/laboratory.h"
#include "apps/actions/who.h"

namespace actions {

/// Somebody looked at the names of orders: noted once for each order, person and day, all in one
/// unit of work. What cannot be noted is not to be shown.
domain::Result<domain::Done> noteViewed(const Laboratory& laboratory, const Who& who,
                                        const std::vector<domain::OrderNumber>& numbers);

/// A paper that is being written.
struct Printed {
    std::string about{};  ///< number of the order, or what else
    std::int64_t revision{};
    std::string paper{};  ///< its kind
};
/// Commits to it by the digest of its bytes. `name`: of its file in papers/, by which verifying
/// finds it; nullopt where it goes elsewhere.
domain::Result<domain::Done> notePrinted(const Laboratory& laboratory, const Who& who,
                                         const Printed& printed,
                                         const std::optional<std::string>& name,
                                         std::string_view pdf);

/// Something that is no paper leaves the records as a file. `what`: "backup"; `digest`: its
/// SHA-256.
domain::Result<domain::Done> noteExported(const Laboratory& laboratory, const Who& who,
                                          const std::string& what, const std::string& digest);

}  // namespace actions
