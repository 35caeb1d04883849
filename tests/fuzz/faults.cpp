#include "tests/fuzz/faults.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <initializer_list>

#include "domain/design/design.h"
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

bool areNumbers(std::initializer_list<double> figures) {
    return std::ranges::all_of(figures, [](double figure) { return std::isfinite(figure); });
}

bool isRange(Range range) {
    return areNumbers({range.least, range.most}) && range.least <= range.most;
}

std::string faultOf(const ClaspMechanics& clasp) {
    if (!areNumbers({clasp.deflection, clasp.largestAt})) return "a clasp that bends by no number";
    for (const Range& range :
         {clasp.force, clasp.rootStress, clasp.largestStress, clasp.setMargin, clasp.removal})
        if (!isRange(range)) return "a clasp with forces that are no numbers";
    return {};
}

/// What is computed for people to read.
std::string faultOf(const Description& description) {
    for (const SaddleSpan& saddle : description.saddles)
        if (!areNumbers({saddle.along, saddle.straight})) return "a saddle of no length";
    for (const RetainerArm& retainer : description.retainers)
        if (!areNumbers({retainer.across, retainer.loadRatio})) return "a retainer at no distance";
    for (const ClaspMechanics& clasp : description.clasps)
        if (std::string fault = faultOf(clasp); !fault.empty()) return fault;
    if (description.bestSeat && !areNumbers({description.bestSeat->distance}))
        return "a seat at no distance";
    if (description.connector &&
        !areNumbers({description.connector->across, description.connector->along}))
        return "a connector of no length";
    if (description.volume && !isRange(*description.volume)) return "a framework of no volume";
    if (description.mass && !isRange(*description.mass)) return "a framework of no mass";
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
        if (std::string fault = faultOf(finding); !fault.empty()) return fault;
    if (std::string fault = faultOf(descriptionOf(*read)); !fault.empty()) return fault;
    const std::string written = storage::writePrescription(*read);
    const auto again = storage::readPrescription(written, "fuzz.json");
    if (!again) return "cannot read what was written: " + again.error().message;
    if (*again != *read) return "another prescription after writing and reading";
    if (storage::writePrescription(*again) != written) return "written in two ways";
    return {};
}

}  // namespace fuzz
