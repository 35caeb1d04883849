#include "reports/words.h"

#include <algorithm>

#include "domain/design/kennedy.h"
#include "domain/design/support.h"
#include "reports/phrases.h"

namespace reports {
namespace {

using namespace domain;

std::string signatureText(const Prescription& prescription) {
    if (!prescription.signature) return std::string{kNotGiven};
    const Signature& signature = *prescription.signature;
    std::string text = wordsOf(signature.kind);
    if (signature.seenBy) text += ", seen by " + *signature.seenBy;
    if (signature.date) text += ", " + signature.date->text();
    return text;
}

std::string notationText(const Prescription& prescription) {
    if (!prescription.notation) return "not declared; read as ISO 3950";
    switch (*prescription.notation) {
        case Notation::Iso3950:
            return "ISO 3950";
        case Notation::Universal:
            return "Universal";
        case Notation::Palmer:
            return "Palmer";
    }
    return {};
}

/// What follows from the design, and what was prescribed where that is not the same.
std::string withStated(const std::string& found, const std::optional<std::string>& stated) {
    if (!stated) return found + ", not prescribed";
    return found + (*stated == found ? ", as prescribed" : "; prescribed as " + *stated);
}

std::string classText(const Prescription& prescription) {
    const auto kennedy = classify(prescription);
    return withStated(kennedy ? kennedy->text() : "none", prescription.statedClass);
}

std::string supportText(const Prescription& prescription) {
    const auto support = supportOf(prescription);
    const auto& stated = prescription.statedSupport;
    return withStated(support ? wordsOf(*support) : "none",
                      stated ? std::optional{wordsOf(*stated)} : std::nullopt);
}

Facts dentitionFacts(const Prescription& prescription) {
    Facts facts;
    const Notation notation = notationOf(prescription);
    facts.facts.push_back(
        fact("To be replaced", teethText(replacedTeeth(prescription).teeth(), notation)));
    constexpr std::pair<ToothState, std::string_view> kStates[] = {
        {ToothState::ToBeExtracted, "To be extracted"},
        {ToothState::NotReplaced, "Missing, not replaced"},
        {ToothState::Closed, "Space closed"},
        {ToothState::Bridged, "Bridge or implant"}};
    for (const auto& [state, label] : kStates) {
        std::vector<Tooth> teeth;
        for (const Tooth tooth : prescription.dentition.all(state).teeth())
            if (tooth.arch() == prescription.arch) teeth.push_back(tooth);
        if (!teeth.empty())
            facts.facts.push_back(fact(std::string{label}, teethText(teeth, notation)));
    }
    return facts;
}

std::string finishText(const FinishLines& lines) {
    std::vector<std::string> parts;
    if (lines.external.value_or(false)) parts.emplace_back("external");
    if (lines.internal.value_or(false)) parts.emplace_back("internal");
    if (parts.empty()) return lines.external || lines.internal ? "none" : std::string{kNotGiven};
    std::string text = joined(parts, " and ");
    if (lines.offset) text += *lines.offset ? ", offset" : ", not offset";
    return text;
}

Table saddleTable(const Prescription& prescription) {
    Table table{.columns = {"Saddle", "Base", "Resin held by", "Finish lines", "Tissue stop"},
                .shares = {0.24, 0.14, 0.20, 0.28, 0.14},
                .rows = {}};
    // An all-resin denture holds its resin on nothing, so the blanks of the rest are no gaps.
    const bool allResin = prescription.appliance == Appliance::InterimResin;
    const auto ofMetal = [&](const std::string& words) {
        return allResin && words == kNotGiven ? std::string{"\u2013"} : words;
    };
    for (const Saddle& saddle : prescription.saddles)
        table.rows.push_back({teethText(saddle.teeth, notationOf(prescription)), given(saddle.base),
                              ofMetal(given(saddle.retention)),
                              ofMetal(finishText(saddle.finishLines)),
                              ofMetal(given(saddle.tissueStop))});
    return table;
}

Table restTable(const Prescription& prescription) {
    Table table{.columns = {"Rest on", "Kind", "Seat", "Seat depth", "Room to the opposing tooth"},
                .shares = {0.24, 0.20, 0.20, 0.14, 0.22},
                .rows = {}};
    for (const Rest& rest : prescription.rests) {
        std::string place = nameOf(rest.tooth, notationOf(prescription));
        if (std::ranges::any_of(prescription.indirectRetainers, [&](const IndirectRetainer& one) {
                return one.tooth == rest.tooth;
            }))
            place += ", indirect retainer";
        const std::string side = rest.side ? wordsOf(*rest.side) + ' ' : std::string{};
        std::string seat = given(rest.seatPrepared, "prepared", "not prepared yet");
        if (rest.floorAngle) seat += ", floor at " + text(*rest.floorAngle);
        table.rows.push_back({place, side + wordsOf(rest.kind), std::move(seat),
                              given(rest.seatDepth), given(rest.clearance)});
    }
    return table;
}

/// "cast gold, round, 1 mm wide, tip 80 %, 15 mm long", as far as it is given.
std::string armText(const Clasp& clasp) {
    std::string words = given(clasp.material);
    const ClaspArm& arm = clasp.arm;
    if (arm.section) words += ", " + wordsOf(*arm.section);
    if (arm.width) words += ", " + text(*arm.width) + " wide";
    if (arm.tip) words += ", tip " + text(*arm.tip);
    if (arm.length) words += ", " + text(*arm.length) + " long";
    return words;
}

Table claspTable(const Prescription& prescription) {
    Table table{.columns = {"Clasp on", "Kind", "Arm on", "Undercut", "Arm made of", "Opposed by"},
                .shares = {0.10, 0.16, 0.09, 0.23, 0.22, 0.20},
                .rows = {}};
    for (const Clasp& clasp : prescription.clasps) {
        const std::string undercut =
            clasp.undercut ? wordsOf(clasp.undercut->place) + ", " + given(clasp.undercut->depth)
                           : std::string{kNotGiven};
        const std::string opposed = clasp.reciprocation ? wordsOf(clasp.reciprocation->face) + ' ' +
                                                              wordsOf(clasp.reciprocation->kind)
                                                        : std::string{kNotGiven};
        table.rows.push_back({nameOf(clasp.tooth, notationOf(prescription)), wordsOf(clasp.kind),
                              given(clasp.retentiveArm), undercut, armText(clasp), opposed});
    }
    return table;
}

Table guideTable(const Prescription& prescription) {
    Table table{.columns = {"Guide plate on", "Face", "Guide plane", "Height"},
                .shares = {0.24, 0.20, 0.28, 0.28},
                .rows = {}};
    for (const GuidePlate& plate : prescription.guidePlates)
        table.rows.push_back({nameOf(plate.tooth, notationOf(prescription)), wordsOf(plate.face),
                              given(plate.planePrepared, "prepared", "not prepared yet"),
                              given(plate.planeHeight)});
    return table;
}

std::string connectorText(const Prescription& prescription) {
    if (!prescription.majorConnector) return std::string{kNotGiven};
    const MajorConnector& connector = *prescription.majorConnector;
    std::vector<std::string> parts{wordsOf(connector.kind)};
    const bool upper = archOf(connector.kind) == Arch::Upper;
    if (connector.width) parts.push_back(text(*connector.width) + (upper ? " wide" : " high"));
    if (connector.opening) parts.push_back("opening " + text(*connector.opening));
    if (connector.gingivalClearance)
        parts.push_back(text(*connector.gingivalClearance) + " from the gingival margin");
    if (connector.beading) parts.emplace_back(*connector.beading ? "beaded" : "not beaded");
    if (connector.relief) parts.emplace_back(*connector.relief ? "relieved" : "not relieved");
    return joined(parts);
}

std::string minorText(const Prescription& prescription) {
    std::vector<std::string> parts;
    for (const MinorConnector& minor : prescription.minorConnectors)
        parts.push_back(nameOf(minor.tooth, notationOf(prescription)) +
                        (minor.side ? ' ' + wordsOf(*minor.side) : ""));
    return parts.empty() ? std::string{kNotGiven} : joined(parts);
}

std::string indirectText(const Prescription& prescription) {
    std::vector<Tooth> teeth;
    for (const IndirectRetainer& one : prescription.indirectRetainers) teeth.push_back(one.tooth);
    return teeth.empty() ? "none" : teethText(teeth, notationOf(prescription));
}

std::string shadeText(const Prescription& prescription) {
    std::vector<std::string> parts;
    for (const Shade& shade : prescription.shades)
        parts.push_back(shade.tab + " (" + shade.guide + ")" +
                        (shade.teeth.empty()
                             ? ", all replaced teeth"
                             : " for " + teethText(shade.teeth, notationOf(prescription))) +
                        (shade.measured ? ", tooth measured L* a* b* " + shade.measured->text()
                                        : std::string{}));
    return parts.empty() ? std::string{kNotGiven} : joined(parts, "; ");
}

std::string pathText(const Survey& survey) {
    if (!survey.path) return std::string{kNotGiven};
    const std::string tilt = text(survey.path->tilt);
    return survey.path->towards == TiltDirection::None
               ? "at right angles to the occlusal plane (" + tilt + ")"
               : "tilted " + tilt + " towards " + wordsOf(survey.path->towards);
}

Table surveyTable(const Prescription& prescription) {
    Table table{.columns = {"Surveyed tooth", "Height of contour", "Undercuts"},
                .shares = {0.20, 0.24, 0.56},
                .rows = {}};
    for (const AbutmentSurvey& abutment : prescription.survey.abutments) {
        std::vector<std::string> undercuts;
        for (const Undercut& undercut : abutment.undercuts)
            undercuts.push_back(wordsOf(undercut.place) + ' ' + given(undercut.depth));
        std::string found = undercuts.empty() ? "none recorded" : joined(undercuts, "; ");
        if (abutment.tissueUndercut) found += "; of the tissue " + text(*abutment.tissueUndercut);
        if (abutment.highFrenum)
            found += *abutment.highFrenum ? "; high frenum" : "; no high frenum";
        table.rows.push_back({nameOf(abutment.tooth, notationOf(prescription)),
                              given(abutment.heightOfContour, "marked", "not marked"),
                              std::move(found)});
    }
    return table;
}

std::string alteredCastText(const Prescription& prescription) {
    return prescription.alteredCast.value_or(false) ? ", altered cast" : "";
}

std::string remakeText(const Prescription& prescription) {
    if (!prescription.remake) return {};
    const auto& reason = prescription.remake->reason;
    return ", made again" + (reason ? ": " + wordsOf(*reason) : std::string{});
}

void addTable(std::vector<Block>& blocks, Table table) {
    if (!table.rows.empty()) blocks.emplace_back(std::move(table));
}

}  // namespace

std::string teethText(const std::vector<Tooth>& teeth, Notation notation) {
    std::vector<std::string> names;
    names.reserve(teeth.size());
    for (const Tooth tooth : teeth) names.push_back(nameOf(tooth, notation));
    return names.empty() ? std::string{kNotGiven} : joined(names);
}

std::string sensitivityText(const Sensitivities& sensitivities) {
    if (!sensitivities.known.empty()) {
        std::vector<std::string> parts;
        for (const Sensitivity one : sensitivities.known) parts.push_back(wordsOf(one));
        return joined(parts);
    }
    return sensitivities.noneKnown.value_or(false) ? "none known" : std::string{kNotGiven};
}

std::string placeText(const Finding& finding, Notation notation) {
    return finding.tooth ? "Tooth " + nameOf(*finding.tooth, notation) : "Whole denture";
}

std::string caseText(const Prescription& prescription) {
    const auto kennedy = classify(prescription);
    std::vector<std::string> parts;
    if (prescription.appliance) parts.push_back(wordsOf(*prescription.appliance));
    parts.push_back(wordsOf(prescription.arch) + " arch");
    if (kennedy) parts.push_back("Kennedy class " + kennedy->text());
    if (prescription.framework.material)
        parts.emplace_back(shortName(*prescription.framework.material));
    return capital(joined(parts));
}

std::vector<Block> partyBlocks(const Prescription& prescription) {
    const Identity& identity = prescription.identity;
    std::vector<Fact> facts{fact("Patient reference", given(identity.patientReference)),
                            fact("Patient", given(identity.patientName)),
                            fact("Prescriber", given(identity.prescriberName)),
                            fact("Registration", given(identity.prescriberRegistration)),
                            fact("Address", given(identity.prescriberAddress)),
                            fact("Contact", given(identity.prescriberContact)),
                            fact("Issued", given(prescription.issued)),
                            fact("Needed", given(prescription.needed)),
                            fact("Signature", signatureText(prescription)),
                            fact("Sensitivities", sensitivityText(prescription.sensitivities))};
    if (identity.remarks) facts.push_back(fact("Remarks", given(identity.remarks)));
    return {Heading{"Patient, prescriber, dates"}, Facts{std::move(facts)}};
}

std::vector<Block> designBlocks(const Prescription& prescription) {
    Facts facts{{fact("Appliance", given(prescription.appliance) + remakeText(prescription) +
                                       alteredCastText(prescription)),
                 fact("Arch", wordsOf(prescription.arch)),
                 fact("Kennedy class", classText(prescription)),
                 fact("Support", supportText(prescription)),
                 fact("Teeth written in", notationText(prescription))}};
    for (Fact& one : dentitionFacts(prescription).facts) facts.facts.push_back(std::move(one));
    facts.facts.push_back(fact("Major connector", connectorText(prescription)));
    if (prescription.appliance != Appliance::InterimResin || !prescription.minorConnectors.empty())
        facts.facts.push_back(fact("Minor connectors", minorText(prescription)));
    facts.facts.push_back(fact("Indirect retainers", indirectText(prescription)));
    std::vector<Block> blocks{Heading{"Design"}, std::move(facts)};
    addTable(blocks, saddleTable(prescription));
    addTable(blocks, restTable(prescription));
    addTable(blocks, claspTable(prescription));
    addTable(blocks, guideTable(prescription));
    return blocks;
}

std::vector<Block> materialBlocks(const Prescription& prescription) {
    const Framework& framework = prescription.framework;
    const Base& base = prescription.base;
    Facts facts;
    if (prescription.appliance != Appliance::InterimResin || framework.material) {
        facts.facts = {
            fact("Framework", given(framework.material)), fact("Making", given(framework.making)),
            fact("Nickel", given(framework.nickel)), fact("Beryllium", given(framework.beryllium)),
            fact("Cadmium", given(framework.cadmium))};
        if (framework.modulus) facts.facts.push_back(fact("Modulus", text(*framework.modulus)));
        if (framework.proofStrength)
            facts.facts.push_back(fact("0.2 % proof strength", text(*framework.proofStrength)));
        if (framework.elongation)
            facts.facts.push_back(fact("Elongation", text(*framework.elongation)));
    }
    for (Fact& one : std::vector<Fact>{
             fact("Base resin", given(base.resin)),
             fact("Methacrylate", given(base.methacrylateFree, "free of it", "contained")),
             fact("Base colour", given(base.colour)),
             fact("Artificial teeth", given(prescription.teeth.material)),
             fact("Mould", given(prescription.teeth.mould)), fact("Shade", shadeText(prescription)),
             fact("Occlusion", given(prescription.occlusion.scheme)),
             fact("Jaw relation", given(prescription.occlusion.jawRelation)),
             fact("Opposed", given(prescription.occlusion.opposed, "by teeth", "by none"))})
        facts.facts.push_back(std::move(one));
    return {Heading{"Materials, shade, occlusion"}, std::move(facts)};
}

std::vector<Block> surveyBlocks(const Prescription& prescription) {
    const Survey& survey = prescription.survey;
    if (survey == Survey{} && prescription.appliance == Appliance::InterimResin) return {};
    Facts facts{{fact("Path of insertion", pathText(survey)),
                 fact("Tripod marks", given(survey.tripodMarked, "on the cast", "none"))}};
    if (prescription.arch == Arch::Lower)
        facts.facts.push_back(fact("Depth to the floor", given(survey.lingualDepth)));
    facts.facts.push_back(fact("Depth of the sulcus", given(survey.sulcusDepth)));
    facts.facts.push_back(fact("Torus", given(survey.torus, "present", "none")));
    if (survey.archWidth) facts.facts.push_back(fact("Arch width", text(*survey.archWidth)));
    if (survey.archDepth) facts.facts.push_back(fact("Arch depth", text(*survey.archDepth)));
    std::vector<Block> blocks{Heading{"Survey"}, std::move(facts)};
    addTable(blocks, surveyTable(prescription));
    return blocks;
}

std::vector<Block> enclosureBlocks(const Prescription& prescription) {
    std::vector<Block> blocks{Heading{"Enclosed"}};
    Table table{.columns = {"What came", "Disinfected with", "For", "SHA-256 of the file"},
                .shares = {0.26, 0.30, 0.12, 0.32},
                .rows = {}};
    for (const Enclosure& enclosure : prescription.enclosures) {
        const bool physical = isPhysical(enclosure.kind);
        const auto& done = enclosure.disinfection;
        const std::string none = physical ? std::string{kNotGiven} : std::string{"\u2013"};
        std::string what = wordsOf(enclosure.kind);
        if (enclosure.identified)
            what +=
                *enclosure.identified ? ", marked for this order" : ", MARKED FOR ANOTHER ORDER";
        table.rows.push_back({std::move(what), done ? done->agent : none,
                              done ? text(done->contact) : none,
                              enclosure.sha256.value_or("\u2013")});
    }
    if (table.rows.empty())
        blocks.emplace_back(Paragraph{.text = "Nothing is listed as enclosed.", .quiet = false});
    addTable(blocks, std::move(table));
    return blocks;
}

std::vector<Finding> inSheetOrder(const std::vector<Finding>& findings) {
    std::vector<Finding> sorted = findings;
    std::erase_if(sorted, [](const Finding& finding) { return finding.kept.has_value(); });
    std::ranges::stable_sort(sorted, {}, &Finding::severity);
    return sorted;
}

}  // namespace reports
