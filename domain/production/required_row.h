/// A table of what a legal paper must say: one row for each thing, checked all at once.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "domain/rules/finding.h"

namespace domain {

/// Said in so many words: there is none, and there need be none.
struct NotApplicable {
    friend constexpr bool operator==(NotApplicable, NotApplicable) = default;
};

/// Something the law asks for "where applicable": given, or said not to apply. nullopt is neither,
/// and a blank is never taken for "not applicable".
template <typename T>
using WhereApplicable = std::optional<std::variant<NotApplicable, T>>;

/// What was given; nullptr where it was said not to apply, or nothing was said.
template <typename T>
const T* givenIn(const WhereApplicable<T>& answer) noexcept {
    return answer ? std::get_if<T>(&*answer) : nullptr;
}

template <typename Facts>
struct RequiredRow {
    std::string_view id;           ///< never reworded, never reused
    std::string_view requirement;  ///< one sentence: what must be there
    std::string_view question;     ///< to the lab manager, in plain words
    std::string_view source;       ///< the law and the place in it
    /// What lacks, each in a few words without any name; empty: nothing.
    std::vector<std::string> (*lacks)(const Facts&);
};

/// What lacks by the rows of a table, in their order; each a finding that refuses.
template <typename Facts>
std::vector<Finding> lackingBy(std::span<const RequiredRow<Facts>> rows, const Facts& facts) {
    std::vector<Finding> findings;
    for (const RequiredRow<Facts>& row : rows)
        for (std::string& lack : row.lacks(facts))
            findings.push_back({.rule = std::string{row.id},
                                .severity = Severity::Missing,
                                .tooth = {},
                                .found = std::move(lack),
                                .requirement = std::string{row.requirement},
                                .question = std::string{row.question},
                                .source = std::string{row.source}});
    return findings;
}

}  // namespace domain
