#include "domain/production/retention.h"

#include <algorithm>

namespace domain {
namespace {

constexpr RetentionTerm kTerms[] = {
    {.id = "eu",
     .where = "European Union",
     .years = 10,
     .source = "Regulation (EU) 2017/745, Annex XIII, 4: at least 10 years"},
    {.id = "eu-implant",
     .where = "European Union",
     .years = 15,
     .implantsOnly = true,
     .source =
         "Regulation (EU) 2017/745, Annex XIII, 4: at least 15 years for implantable devices"},
    {.id = "gb",
     .where = "Great Britain",
     .years = 5,
     .source = "UK Medical Devices Regulations 2002, after Directive 93/42/EEC, Annex VIII; from "
               "memory"},
    {.id = "us-fl", .where = "Florida", .years = 4, .source = "Florida Statutes 466.021"},
    {.id = "us-ok", .where = "Oklahoma", .years = 3, .source = "Oklahoma Statutes 59-328.36a"},
    {.id = "us-wv", .where = "West Virginia", .years = 2, .source = "West Virginia Code 30-4B-2"},
    {.id = "us-me", .where = "Maine", .years = 2, .source = "Maine Title 32 section 1090"},
    {.id = "us-mt", .where = "Montana", .years = 2, .source = "Montana Code 37-4-501"},
    {.id = "us-nc",
     .where = "North Carolina",
     .years = 2,
     .source = "North Carolina General Statutes 90-29.2"},
    {.id = "us-ms",
     .where = "Mississippi",
     .years = 2,
     .source = "Mississippi Code 73-9-55; as restated in secondary sources"},
    {.id = "us-ky",
     .where = "Kentucky",
     .years = 2,
     .source = "Kentucky Revised Statutes 313.550; as restated in secondary sources"},
    {.id = "us-ct",
     .where = "Connecticut",
     .years = 1,
     .source = "Connecticut General Statutes 20-122a; as restated in secondary sources"},
    {.id = "us-ny",
     .where = "New York",
     .years = 1,
     .source = "New York Education Law 6611; as restated in secondary sources"},
};

}  // namespace

std::span<const RetentionTerm> retentionTerms() { return kTerms; }

const RetentionTerm* retentionTermOf(std::string_view id) {
    const auto* const found = std::ranges::find(kTerms, id, &RetentionTerm::id);
    return found == std::ranges::end(kTerms) ? nullptr : found;
}

const RetentionTerm* longestOf(std::span<const RetentionTerm> applying) {
    if (applying.empty()) return nullptr;
    return &*std::ranges::max_element(applying, {}, &RetentionTerm::years);
}

std::optional<Date> retentionEnds(Date delivered, std::span<const RetentionTerm> applying) {
    const RetentionTerm* const longest = longestOf(applying);
    if (longest == nullptr) return {};
    return delivered.plusYears(longest->years);
}

Result<Done> mayPurge(Date delivered, std::span<const RetentionTerm> applying, Date today) {
    const auto last = retentionEnds(delivered, applying);
    if (!last)
        return Error{ErrorCode::Refused,
                     "no term of retention is chosen, so nothing says that these papers may go; "
                     "choose those that apply first"};
    if (today <= *last)
        return Error{ErrorCode::Refused, "these papers must be kept through " + last->text() +
                                             " (" + std::string{longestOf(applying)->source} +
                                             "); they may be purged from " +
                                             last->plusDays(1).text()};
    return Done{};
}

}  // namespace domain
