#include "domain/design/design_score.h"

#include <algorithm>

#include "domain/design/design_view.h"

namespace domain {
namespace {

using P = Prescription;

constexpr std::string_view kStatutes =
    "Florida Administrative Code 64B5-17.006; Montana Code 37-4-501; South Carolina R.39-8(A)";
constexpr std::string_view kMdr = "Regulation (EU) 2017/745, Annex XIII section 1";
constexpr std::string_view kSui = "Sui et al., Journal of Prosthodontics 2014;23(8)";
constexpr std::string_view kTabriz = "survey of 600 prescriptions in Tabriz, 2016";
constexpr std::string_view kNassani = "Nassani and Alotaibi, European Oral Research 2020";
constexpr std::string_view kCommonPractice = "common practice, no source";

bool always(const P&) { return true; }
/// What a prescription may say and need not.
bool never(const P&) { return false; }
bool hasSaddles(const P& p) { return !p.saddles.empty() && isNewDenture(p); }
bool claspIsPlaced(const Clasp& clasp) { return retentiveFace(clasp).has_value(); }
bool restIsPlaced(const Rest& rest) { return rest.kind != RestKind::Occlusal || rest.side; }

/// Whether there is one, and all of them are so.
template <typename Part>
bool allOf(const std::vector<Part>& parts, bool (*holds)(const Part&)) {
    return !parts.empty() && std::ranges::all_of(parts, holds);
}

constexpr Item kItems[] = {
    {"prescriber", kStatutes, always,
     [](const P& p) { return !isBlank(p.identity.prescriberName); }},
    {"address of the prescriber", kStatutes, always,
     [](const P& p) { return !isBlank(p.identity.prescriberAddress); }},
    {"registration of the prescriber", kStatutes, always,
     [](const P& p) { return !isBlank(p.identity.prescriberRegistration); }},
    {"patient", kMdr, always,
     [](const P& p) {
         return !isBlank(p.identity.patientReference) || !isBlank(p.identity.patientName);
     }},
    {"date of issue", kStatutes, always, [](const P& p) { return p.issued.has_value(); }},
    {"day it is needed", kCommonPractice, always, [](const P& p) { return p.needed.has_value(); }},
    {"signature", kStatutes, always, [](const P& p) { return p.signature.has_value(); }},
    {"kind of work", kStatutes, always, [](const P& p) { return p.appliance.has_value(); }},
    {"notation of the teeth", "ISO 3950", isNewDenture,
     [](const P& p) { return p.notation.has_value(); }},
    {"Kennedy class", kCommonPractice, never, [](const P& p) { return p.statedClass.has_value(); }},
    {"support", kCommonPractice, never, [](const P& p) { return p.statedSupport.has_value(); }},
    {"sensitivities", kMdr, always,
     [](const P& p) { return p.sensitivities.noneKnown || !p.sensitivities.known.empty(); }},
    {"list of what is enclosed", kCommonPractice, always,
     [](const P& p) { return !p.enclosures.empty(); }},
    {"disinfection", kSui, [](const P& p) { return !p.enclosures.empty(); },
     [](const P& p) {
         return !p.enclosures.empty() &&
                std::ranges::all_of(p.enclosures, [](const Enclosure& enclosure) {
                    return !isPhysical(enclosure.kind) || enclosure.disinfection;
                });
     }},
    {"teeth to be replaced", kCommonPractice, isNewDenture,
     [](const P& p) { return !p.saddles.empty(); }},
    {"major connector", kNassani, isMetal, [](const P& p) { return p.majorConnector.has_value(); }},
    {"clasps: kind and tooth", kSui, isMetal, [](const P& p) { return !p.clasps.empty(); }},
    {"clasps: face of the arm", kNassani, isMetal,
     [](const P& p) { return allOf(p.clasps, claspIsPlaced); }},
    {"clasps: undercut", kCommonPractice, isMetal,
     [](const P& p) {
         return allOf<Clasp>(
             p.clasps, [](const Clasp& clasp) { return clasp.undercut && clasp.undercut->depth; });
     }},
    {"clasps: what opposes the arm", kCommonPractice, isMetal,
     [](const P& p) {
         return allOf<Clasp>(p.clasps,
                             [](const Clasp& clasp) { return clasp.reciprocation.has_value(); });
     }},
    {"rests: tooth and side", kNassani, isMetal,
     [](const P& p) { return allOf(p.rests, restIsPlaced); }},
    {"rests: seats prepared or not", kNassani, isMetal,
     [](const P& p) {
         return allOf<Rest>(p.rests,
                            [](const Rest& rest) { return rest.seatPrepared.has_value(); });
     }},
    {"guide plates", kCommonPractice, never, [](const P& p) { return !p.guidePlates.empty(); }},
    {"indirect retainers", kCommonPractice, never,
     [](const P& p) { return !p.indirectRetainers.empty(); }},
    {"minor connectors", kCommonPractice, isMetal,
     [](const P& p) { return !p.minorConnectors.empty(); }},
    {"survey and path of insertion", kCommonPractice, isMetal,
     [](const P& p) { return !p.survey.abutments.empty() && p.survey.path; }},
    {"material of the framework", kStatutes, isMetal,
     [](const P& p) { return p.framework.material && p.framework.making; }},
    {"base resin", kStatutes, hasSaddles, [](const P& p) { return p.base.resin.has_value(); }},
    {"material of the teeth", kStatutes, never,
     [](const P& p) { return p.teeth.material.has_value(); }},
    {"shade", kSui, hasSaddles, [](const P& p) { return !p.shades.empty(); }},
    {"mould", kTabriz, hasSaddles, [](const P& p) { return !isBlank(p.teeth.mould); }},
    {"colour of the base", kCommonPractice, hasSaddles,
     [](const P& p) { return !isBlank(p.base.colour); }},
    {"jaw relation", kCommonPractice, isNewDenture,
     [](const P& p) { return p.occlusion.jawRelation.has_value(); }},
    {"occlusal scheme", kStatutes, isNewDenture,
     [](const P& p) { return p.occlusion.scheme.has_value(); }},
};

}  // namespace

DesignScore scoreOf(const Prescription& prescription) {
    return {.connector = prescription.majorConnector.has_value(),
            .retainerType = !prescription.clasps.empty(),
            .retainerPosition = allOf(prescription.clasps, claspIsPlaced),
            .restPosition = allOf(prescription.rests, restIsPlaced)};
}

std::span<const Item> items() { return kItems; }

Completeness completenessOf(const Prescription& prescription) {
    Completeness completeness;
    for (const Item& item : kItems) {
        if (!item.asked(prescription)) continue;
        ++completeness.asked;
        if (item.given(prescription))
            ++completeness.given;
        else
            completeness.open.push_back(item.name);
    }
    return completeness;
}

}  // namespace domain
