/// How long the papers of a device must be kept, and whether they may be purged yet.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "domain/base/date.h"
#include "domain/base/result.h"

namespace domain {

struct RetentionTerm {
    std::string_view id;     ///< never reworded, never reused
    std::string_view where;  ///< whose law it is
    int years{};
    bool implantsOnly{};  ///< no term of a removable denture; there to be seen that it was thought
                          ///< of
    std::string_view source;
};

/// Every term that is known, the longest first among those of one country.
std::span<const RetentionTerm> retentionTerms();
/// nullptr: there is none of that id.
const RetentionTerm* retentionTermOf(std::string_view id);
/// The longest of those that apply, the first of equals; nullptr where none does.
const RetentionTerm* longestOf(std::span<const RetentionTerm> applying);

/// The last day the papers must be kept, by the longest term that applies; nullopt where none does.
///
/// A term runs from the day of delivery, not counted, through the same date of its last year.
/// Delivered on 29 February and ending in a year without one, it runs through 1 March: 2028-02-29
/// and ten years give 2038-03-01. (Regulation (EEC, Euratom) 1182/71, article 3, from memory, would
/// let it end on 28 February; a day too long harms nobody.)
std::optional<Date> retentionEnds(Date delivered, std::span<const RetentionTerm> applying);

/// ErrorCode::Refused until the day after that one, with the last day they must be kept; refused as
/// well where no term applies, since nothing then says that they may go.
Result<Done> mayPurge(Date delivered, std::span<const RetentionTerm> applying, Date today);

}  // namespace domain
