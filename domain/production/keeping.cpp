#include "domain/production/keeping.h"

#include <algorithm>

#include "domain/rules/rule.h"

namespace domain {
namespace {

bool isAt(const Finding& finding, const Keep& keep) {
    return finding.rule == keep.rule && (!keep.tooth || finding.tooth == keep.tooth);
}

std::string placeOf(const Keep& keep, Notation notation) {
    return keep.rule + (keep.tooth ? " on " + nameOf(*keep.tooth, notation) : "");
}

/// Why the line cannot be taken, or nothing.
std::optional<Error> refusal(const std::vector<Finding>& findings, const Keep& keep,
                             Notation notation) {
    const std::string place = placeOf(keep, notation);
    bool there = false;
    for (const Finding& finding : findings) {
        if (!isAt(finding, keep)) continue;
        there = true;
        if (finding.severity == Severity::Caution)
            return Error{ErrorCode::Refused, place +
                                                 " is a caution: whoever accepts the order "
                                                 "takes it, with a reason"};
        if (!mayBeKept(finding))
            return Error{ErrorCode::Refused, place + " cannot be kept as prescribed: " +
                                                 std::string{whyNotKept(finding)} + "; " +
                                                 finding.question};
    }
    if (there) return {};
    return Error{ErrorCode::Refused, "nothing was found by " + place};
}

}  // namespace

Result<std::vector<Finding>> keptAsPrescribed(std::vector<Finding> findings,
                                              const std::vector<Keep>& keeps,
                                              const PersonCode& recordedBy, Date day,
                                              Notation notation) {
    for (const Keep& keep : keeps) {
        if (auto error = refusal(findings, keep, notation)) return *std::move(error);
        for (Finding& finding : findings)
            if (isAt(finding, keep)) finding.kept = KeptAsPrescribed{keep.words, recordedBy, day};
    }
    return findings;
}

std::vector<Finding> stillKept(std::vector<Finding> found, const std::vector<Finding>& before) {
    for (Finding& finding : found) {
        const auto same = std::ranges::find_if(before, [&](const Finding& other) {
            return other.rule == finding.rule && other.tooth == finding.tooth &&
                   other.found == finding.found && other.severity == finding.severity;
        });
        if (same != before.end() && !finding.kept) finding.kept = same->kept;
    }
    return found;
}

}  // namespace domain
