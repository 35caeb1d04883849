#include "domain/design/design_view.h"
#include "domain/rules/rule.h"
#include "domain/rules/sources.h"

namespace domain {

namespace {

/// "saddle 24, 25, 26"
std::string named(const Findings& findings, const Saddle& saddle) {
    std::string teeth;
    for (const Tooth tooth : saddle.teeth)
        teeth += (teeth.empty() ? " " : ", ") + findings.name(tooth);
    return "saddle" + teeth;
}

bool isLattice(const Saddle& saddle) {
    return saddle.retention == ResinRetention::OpenLattice ||
           saddle.retention == ResinRetention::Mesh;
}

/// The check of one saddle of a metal framework.
template <void (*check)(const Design&, const Saddle&, Findings&)>
void eachSaddle(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isMetal(prescription)) return;
    for (const Saddle& saddle : prescription.saddles) check(examination.design, saddle, findings);
}

void retentionIsNamed(const Design& /*design*/, const Saddle& saddle, Findings& findings) {
    if (saddle.base != BaseKind::Metal && !saddle.retention)
        findings.add(named(findings, saddle) + ": how the resin is held is not said");
}

void metalBaseHasNoLattice(const Design& /*design*/, const Saddle& saddle, Findings& findings) {
    if (saddle.base == BaseKind::Metal && isLattice(saddle))
        findings.add(named(findings, saddle) + ": " + wordsOf(*saddle.retention) +
                     " on a metal base");
}

void resinNeedsNoFramework(const Examination& examination, Findings& findings) {
    if (!isInterim(examination.prescription)) return;
    for (const Saddle& saddle : examination.prescription.saddles) {
        // A mesh may strengthen resin: it need not hold it.
        if (saddle.retention && saddle.retention != ResinRetention::Mesh)
            findings.add(named(findings, saddle) + ": " + wordsOf(*saddle.retention) +
                         " in an all-resin denture");
        if (saddle.base == BaseKind::Metal)
            findings.add(named(findings, saddle) + ": a metal base in an all-resin denture");
    }
}

void freeEndCanBeRelined(const Design& design, const Saddle& saddle, Findings& findings) {
    if (saddle.base == BaseKind::Metal && isFreeEnd(design, saddle))
        findings.add(named(findings, saddle) + ": a metal base on a free end");
}

void freeEndHasTissueStop(const Design& design, const Saddle& saddle, Findings& findings) {
    if (isLattice(saddle) && saddle.tissueStop != true && isFreeEnd(design, saddle))
        findings.add(named(findings, saddle) + ": no tissue stop under its free end");
}

void finishLinesAreGiven(const Design& /*design*/, const Saddle& saddle, Findings& findings) {
    if (saddle.base == BaseKind::Metal) return;
    if (saddle.finishLines.external != true)
        findings.add(named(findings, saddle) + ": no external finish line");
    if (saddle.finishLines.internal != true)
        findings.add(named(findings, saddle) + ": no internal finish line");
}

void finishLinesAreOffset(const Design& /*design*/, const Saddle& saddle, Findings& findings) {
    if (saddle.finishLines.offset == false)
        findings.add(named(findings, saddle) + ": the finish lines lie on top of each other");
}

constexpr Rule kRules[] = {
    {.id = "retention.kind",
     .severity = Severity::Caution,
     .ground = Ground::Practice,
     .requirement = "Every resin saddle on metal names what holds the resin: an open lattice, a "
                    "mesh, or beads.",
     .question =
         "What shall hold the resin of this saddle: an open lattice, a mesh, or beads? Or is "
         "its base of metal?",
     .source = source::kCommonPractice,
     .check = eachSaddle<retentionIsNamed>},
    {.id = "retention.metal-base",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "A metal base holds resin by beads, not by a lattice or a mesh.",
     .question =
         "A metal base cannot have a lattice. Is the base of metal, with beads, or of resin "
         "on a lattice?",
     .source = "by definition: a lattice is open, a metal base is solid metal on the tissue",
     .check = eachSaddle<metalBaseHasNoLattice>},
    {.id = "retention.all-resin",
     .severity = Severity::Caution,
     .ground = Ground::Practice,
     .requirement = "An all-resin denture has no retention framework and no metal base; a mesh may "
                    "strengthen it.",
     .question =
         "An interim denture of resin alone has no metal in its base. Is a framework denture "
         "meant?",
     .source = source::kCommonPractice,
     .check = resinNeedsNoFramework},
    {.id = "retention.tissue-stop",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "The lattice of a free end has a tissue stop.",
     .question = "Shall the lattice of the free end stand on a tissue stop?",
     .source = source::kMcCracken,
     .check = eachSaddle<freeEndHasTissueStop>},
    {.id = "retention.free-end-metal",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement =
         "The base of a free end is of resin, which can be relined as the ridge shrinks.",
     .question = "A metal base on a free end cannot be relined. Is it intended?",
     .source = source::kMcCracken,
     .check = eachSaddle<freeEndCanBeRelined>},
    {.id = "finish-line.both",
     .severity = Severity::Caution,
     .ground = Ground::Practice,
     .requirement = "Where resin meets metal there is an external and an internal finish line.",
     .question = "Shall this saddle have an external and an internal finish line, as usual?",
     .source = source::kCommonPractice,
     .check = eachSaddle<finishLinesAreGiven>},
    {.id = "finish-line.offset",
     .severity = Severity::Caution,
     .ground = Ground::Published,
     .requirement = "The external and the internal finish line do not lie on top of each other.",
     .question = "Finish lines on top of each other weaken the framework. May we offset them?",
     .source = "University of Oklahoma, removable partial denture review questions, question 142",
     .check = eachSaddle<finishLinesAreOffset>},
};

}  // namespace

std::span<const Rule> retentionRules() { return kRules; }

}  // namespace domain
