#include "tests/fuzz/faults.h"

#include <algorithm>
#include <cctype>

#include "domain/rules/examine.h"
#include "storage/files/prescription_file.h"
#include "tests/support/designs.h"

namespace fuzz {

using namespace domain;

namespace {

bool isLetter(char letter) { return std::isalpha(static_cast<unsigned char>(letter)) != 0; }

/// Whether a text holds what a number that is none is written as.
bool holdsNoNumber(std::string_view text) {
    for (const std::string_view word : {"nan", "inf"})
        for (auto at = text.find(word); at != std::string_view::npos;
             at = text.find(word, at + 1)) {
            const auto end = at + word.size();
            const bool begins = at == 0 || !isLetter(text[at - 1]);
            if (begins && (end == text.size() || !isLetter(text[end]))) return true;
        }
    return false;
}

std::string faultOf(const Finding& finding) {
    if (finding.rule.empty()) return "a finding without a rule";
    const bool known =
        std::ranges::any_of(allRules(), [&](const Rule* rule) { return rule->id == finding.rule; });
    if (!known) return finding.rule + ": no such rule";
    if (finding.found.empty()) return finding.rule + ": a finding that found nothing";
    if (finding.requirement.empty()) return finding.rule + ": no requirement";
    if (finding.question.empty()) return finding.rule + ": no question";
    if (finding.source.empty()) return finding.rule + ": no source";
    if (holdsNoNumber(finding.found)) return finding.rule + ": " + finding.found;
    return {};
}

}  // namespace

std::string faultOf(std::string_view text) {
    const auto read = storage::readPrescription(text, "fuzz.json");
    if (!read) {
        if (!read.error().message.starts_with("fuzz.json:"))
            return "a refusal that does not name the file: " + read.error().message;
        return {};
    }
    for (const Finding& finding : examine(*read, support::examinationDay()))
        if (const std::string fault = faultOf(finding); !fault.empty()) return fault;
    const std::string written = storage::writePrescription(*read);
    const auto again = storage::readPrescription(written, "fuzz.json");
    if (!again) return "cannot read what was written: " + again.error().message;
    if (*again != *read) return "another prescription after writing and reading";
    if (storage::writePrescription(*again) != written) return "written in two ways";
    return {};
}

}  // namespace fuzz
