#include <algorithm>
#include <cmath>

#include "domain/design/design_view.h"
#include "domain/rules/rule.h"
#include "domain/rules/sources.h"

namespace domain {

namespace {

std::string rounded(double length) { return std::to_string(std::lround(length)) + " mm"; }

bool rocks(const Design& design) {
    const auto kennedyClass = design.kennedyClass();
    if (!kennedyClass) return false;
    switch (*kennedyClass) {
        case KennedyClass::I:
        case KennedyClass::II:
            return true;
        case KennedyClass::III:
            return false;
        case KennedyClass::IV:
            return design.support != Support::Tooth;
    }
    return false;
}

void indirectRetainerIsNamed(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    const Design& design = examination.design;
    if (!isMetal(prescription) || !rocks(design) || !prescription.indirectRetainers.empty()) return;
    const std::string lacking = "Class " + std::string{codeOf(*design.kennedyClass())} +
                                ", and no indirect retainer is named";
    if (!design.fulcrum) return findings.add(lacking);
    const auto best = bestSeat(prescription, design.form, *design.fulcrum);
    if (!best)
        return findings.advise(lacking +
                               "; no tooth across the fulcrum line can carry its seat: "
                               "what holds is the full extension of the base");
    findings.add(lacking + "; a seat on " + findings.name(best->tooth) + " would lie " +
                 rounded(best->distance) + " across the fulcrum line");
}

/// mm across the fulcrum line of the farthest rest of the retainer; nullopt: it has none.
std::optional<double> acrossOf(const Examination& examination, const IndirectRetainer& retainer) {
    std::optional<double> farthest;
    for (const Rest& rest : examination.prescription.rests)
        if (rest.tooth == retainer.tooth)
            farthest = std::max(
                farthest.value_or(-1000),
                examination.design.fulcrum->across(placeOf(examination.design.form, rest)));
    return farthest;
}

void indirectRetainerIsAcross(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    const auto& fulcrum = examination.design.fulcrum;
    if (!isMetal(prescription) || !fulcrum) return;
    for (const IndirectRetainer& retainer : prescription.indirectRetainers) {
        const auto across = acrossOf(examination, retainer);
        if (across && *across <= Fulcrum::kOnTheLine)
            findings.add(retainer.tooth, "the rest on " + findings.name(retainer.tooth) +
                                             " does not lie across the fulcrum line");
    }
}

/// Whether the retainer could lie much farther away than the farthest one does.
void indirectRetainerIsFarAway(const Examination& examination, Findings& findings) {
    constexpr double kMuch = 1.5;
    const Prescription& prescription = examination.prescription;
    const Design& design = examination.design;
    if (!isMetal(prescription) || !design.fulcrum) return;
    std::optional<double> farthest;
    for (const IndirectRetainer& retainer : prescription.indirectRetainers)
        if (const auto across = acrossOf(examination, retainer))
            farthest = std::max(farthest.value_or(*across), *across);
    const auto best = bestSeat(prescription, design.form, *design.fulcrum);
    if (!farthest || *farthest <= Fulcrum::kOnTheLine || !best ||
        best->distance < kMuch * *farthest)
        return;
    findings.advise(best->tooth, "the indirect retainer lies " + rounded(*farthest) +
                                     " across the fulcrum line; a seat on " +
                                     findings.name(best->tooth) + " would lie " +
                                     rounded(best->distance) + " across");
}

void indirectRetainerIsPlaced(const Examination& examination, Findings& findings) {
    indirectRetainerIsAcross(examination, findings);
    indirectRetainerIsFarAway(examination, findings);
}

bool isPlate(const Prescription& prescription) {
    if (!prescription.majorConnector) return false;
    const ConnectorKind kind = prescription.majorConnector->kind;
    return kind == ConnectorKind::LingualPlate || kind == ConnectorKind::CingulumBar ||
           kind == ConnectorKind::DoubleLingualBar;
}

void indirectRetainerIsSeated(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isMetal(prescription)) return;
    for (const IndirectRetainer& retainer : prescription.indirectRetainers) {
        const Tooth tooth = retainer.tooth;
        const bool unprepared = std::ranges::any_of(prescription.rests, [&](const Rest& rest) {
            return rest.tooth == tooth && rest.seatPrepared == false;
        });
        if (unprepared)
            findings.add(tooth,
                         "the rest on " + findings.name(tooth) + " lies in no prepared seat");
        else if (!hasRest(prescription, tooth) && !isPlate(prescription))
            findings.add(tooth, "no rest on " + findings.name(tooth));
    }
}

void plateAloneRetainsNothing(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isMetal(prescription) || !isPlate(prescription)) return;
    for (const IndirectRetainer& retainer : prescription.indirectRetainers)
        if (!hasRest(prescription, retainer.tooth))
            findings.add(retainer.tooth, "only the " + wordsOf(prescription.majorConnector->kind) +
                                             " lies on " + findings.name(retainer.tooth));
}

constexpr Rule kRules[] = {
    {.id = "indirect.required",
     .severity = Severity::Missing,
     .ground = Ground::Published,
     .requirement = "A denture that rocks about a fulcrum line (Class I, II, and a long Class IV) "
                    "has an indirect retainer.",
     .question = "Which rest shall be the indirect retainer, across the fulcrum line from the free "
                 "end?",
     .source = "Avant: all extension-base partial dentures retained by clasps need indirect "
               "retention; Class IV by teaching notes after McCracken, secondary source",
     .check = indirectRetainerIsNamed},
    {.id = "indirect.position",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "The indirect retainer lies on the other side of the fulcrum line from the "
                    "base, and as far away as practicable.",
     .question =
         "Which rest across the fulcrum line from the base, and as far from it as practicable, "
         "shall resist the rocking?",
     .source = "Glossary of Prosthodontic Terms, indirect retainer; the line through the most "
               "posterior rest of each side by teaching notes after McCracken, secondary source",
     .check = indirectRetainerIsPlaced},
    {.id = "indirect.seat",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "An indirect retainer rests on a definite seat.",
     .question = "The indirect retainer needs a rest in a prepared seat. Is one prepared on this "
                 "tooth?",
     .source = source::kMcCracken,
     .check = indirectRetainerIsSeated},
    {.id = "indirect.plate-alone",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "A lingual plate or a cingulum bar without rests is no indirect retainer.",
     .question = "The plate alone is no indirect retainer. On which tooth may it end in a rest?",
     .source = source::kMcCracken,
     .check = plateAloneRetainsNothing},
};

}  // namespace

std::span<const Rule> indirectRules() { return kRules; }

}  // namespace domain
