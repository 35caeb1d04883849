#include <algorithm>

#include "domain/production/gate.h"

namespace domain {
namespace {

/// How far a measured undercut may lie from the prescribed one: common practice, no source.
constexpr Microns kUndercutTolerance = 50_um;
/// The least share of new metal in a melt; common practice, no source.
constexpr Share kLeastNewMetal = 500'000_ppm;

struct GateRow;

/// Collects what one demand lacks.
class Lacking {
public:
    Lacking(const GateRow& row, std::vector<Finding>& findings) : row_{row}, findings_{findings} {}
    void add(std::string found, std::optional<Tooth> tooth = {}) {
        put(Severity::Missing, std::move(found), tooth);
    }
    void contradict(std::string found, std::optional<Tooth> tooth = {}) {
        put(Severity::Conflict, std::move(found), tooth);
    }
    void take(const std::vector<Finding>& findings) {
        findings_.insert(findings_.end(), findings.begin(), findings.end());
    }

private:
    void put(Severity severity, std::string found, std::optional<Tooth> tooth);
    const GateRow& row_;
    std::vector<Finding>& findings_;
};

struct GateRow {
    Demand demand{};
    std::string_view requirement;
    std::string_view todo;  ///< what to do at the bench
    std::string_view source;
    void (*check)(const GateView&, Lacking&);
};

void Lacking::put(Severity severity, std::string found, std::optional<Tooth> tooth) {
    findings_.push_back({.rule = "gate." + std::string{codeOf(row_.demand)},
                         .severity = severity,
                         .tooth = tooth,
                         .found = std::move(found),
                         .requirement = std::string{row_.requirement},
                         .question = std::string{row_.todo},
                         .source = std::string{row_.source}});
}

template <typename Kind>
std::vector<Kind> all(const GateView& view) {
    std::vector<Kind> found;
    for (const StageRecord& record : recordsOf(view.order, view.stage))
        if (const auto* kind = std::get_if<Kind>(&record)) found.push_back(*kind);
    return found;
}

void undercuts(const GateView& view, Lacking& lacking) {
    const auto measured = all<UndercutMeasured>(view);
    for (const Clasp& clasp : view.order.prescription().clasps) {
        if (!clasp.retentiveArm) continue;
        const auto last = std::find_if(measured.rbegin(), measured.rend(),
                                       [&](const auto& each) { return each.tooth == clasp.tooth; });
        if (last == measured.rend()) {
            lacking.add("undercut at the tip not measured", clasp.tooth);
            continue;
        }
        const auto asked = clasp.undercut ? clasp.undercut->depth : std::nullopt;
        const auto off = [&] {
            return std::max(last->depth, *asked) - std::min(last->depth, *asked);
        };
        if (asked && off() > kUndercutTolerance)
            lacking.contradict(text(last->depth) + " measured, " + text(*asked) + " prescribed",
                               clasp.tooth);
    }
}

void tripod(const GateView& view, Lacking& lacking) {
    if (all<TripodMarked>(view).empty()) lacking.add("tripod marks not recorded");
}

/// A lot of a kind was used, and nothing speaks against it now.
void lot(const GateView& view, Lacking& lacking, LotKind kind) {
    bool any = false;
    for (const LotUsed& use : all<LotUsed>(view)) {
        any = any || use.kind == kind;
        const auto kept = view.workshop.lots.find(use.lot);
        if (use.kind != kind || kept == view.workshop.lots.end() || !kept->second.held) continue;
        lacking.contradict("lot " + use.lot.text() + " is in quarantine");
    }
    if (!any) lacking.add("no lot of " + wordsOf(kind) + " recorded");
}

/// Equipment of a kind was used, and its calibration holds or somebody answers for it.
void equipment(const GateView& view, Lacking& lacking, EquipmentKind kind) {
    bool any = false;
    const auto uses = all<EquipmentUsed>(view);
    const auto isAnsweredFor = [&](const EquipmentUsed& use) {
        return std::ranges::any_of(uses, [&](const EquipmentUsed& other) {
            return other.equipment == use.equipment && other.responsibility;
        });
    };
    for (const EquipmentUsed& use : uses) {
        if (use.kind != kind) continue;
        any = true;
        const auto known = view.workshop.equipment.find(use.equipment);
        const auto due =
            known == view.workshop.equipment.end() ? std::nullopt : known->second.calibrationDue;
        if (due && *due < view.today && !isAnsweredFor(use))
            lacking.contradict(use.equipment.text() + ": its calibration was due on " +
                               due->text());
    }
    if (!any) lacking.add("no " + wordsOf(kind) + " recorded");
}

template <LotKind kKind>
void lotOf(const GateView& view, Lacking& lacking) {
    lot(view, lacking, kKind);
}
template <EquipmentKind kKind>
void equipmentOf(const GateView& view, Lacking& lacking) {
    equipment(view, lacking, kKind);
}

void newMetal(const GateView& view, Lacking& lacking) {
    const auto shares = all<NewMetal>(view);
    if (shares.empty())
        lacking.add("share of new metal not recorded");
    else if (shares.back().share < kLeastNewMetal)
        lacking.contradict(text(shares.back().share) + " of new metal; at least " +
                           text(kLeastNewMetal) + " is asked");
}

void castMass(const GateView& view, Lacking& lacking) {
    if (all<CastWeighed>(view).empty()) lacking.add("mass of the casting not recorded");
}

bool isPrescribed(const TeethSet& set, const Prescription& prescription) {
    return prescription.shades.empty() ||
           std::ranges::any_of(prescription.shades, [&](const Shade& shade) {
               return shade.guide == set.guide && shade.tab == set.tab;
           });
}

void mouldAndShade(const GateView& view, Lacking& lacking) {
    const auto sets = all<TeethSet>(view);
    if (sets.empty()) lacking.add("mould and shade of the teeth not recorded");
    for (const TeethSet& set : sets)
        if (!isPrescribed(set, view.order.prescription()))
            lacking.contradict("shade " + set.tab + " of " + set.guide + " was not prescribed");
}

/// Heat-cured and microwave-cured resin is cured by a cycle; the other kinds set by themselves.
bool isCuredByHeat(const Prescription& prescription) {
    const auto resin = prescription.base.resin;
    return !resin || *resin == BaseResin::HeatCured || *resin == BaseResin::MicrowaveCured;
}

void cureLog(const GateView& view, Lacking& lacking) {
    if (!isCuredByHeat(view.order.prescription())) return;
    const auto logs = all<CureLogged>(view);
    if (logs.empty())
        lacking.add("log of the cure not recorded");
    else if (!logs.back().kept)
        lacking.contradict("the log does not keep the cycle " + logs.back().cycle);
}

void curingBath(const GateView& view, Lacking& lacking) {
    if (view.order.prescription().base.resin.value_or(BaseResin::HeatCured) == BaseResin::HeatCured)
        equipment(view, lacking, EquipmentKind::CuringBath);
}

void otherPerson(const GateView& view, Lacking& lacking) {
    if (std::ranges::count(makersOf(view.order), view.person) > 0)
        lacking.contradict(view.person.text() + " made a part of it");
}

void disinfection(const GateView& view, Lacking& lacking) {
    const auto done = all<Disinfected>(view);
    if (done.empty())
        lacking.add("disinfection not recorded");
    else if (done.back().disinfection.agent.empty() ||
             done.back().disinfection.contact.count() <= 0)
        lacking.add("disinfection without its agent or its contact time");
}

void legalFields(const GateView& view, Lacking& lacking) {
    if (view.legal)
        lacking.take(*view.legal);
    else
        lacking.add("the legal contents of the prescription were not looked at");
}

void statement(const GateView& view, Lacking& lacking) {
    if (all<StatementIssued>(view).empty()) lacking.add("statement not issued");
}

constexpr std::string_view kPractice = "common practice, no source";
constexpr std::string_view kTrace =
    "ISO 13485:2016, 7.5.9 (from memory); South Carolina Code 40-15-125: list of all materials";
constexpr std::string_view kCalibration = "ISO 13485:2016, 7.6 (from memory)";

constexpr std::array<GateRow, enumCodes<Demand>.size()> kGates{{
    {Demand::Undercuts,
     "The undercut at every retentive tip is measured and within 0.05 mm of the prescribed one.",
     "Measure it with the gauge, or flag that it is not there.", kPractice, &undercuts},
    {Demand::TripodMarks, "The cast carries tripod marks, so that its tilt can be found again.",
     "Mark three points and record it.", "teaching sets on surveying: three marks in one plane",
     &tripod},
    {Demand::Surveyor, "The surveyor is recorded and its calibration holds.",
     "Record the surveyor.", kCalibration, &equipmentOf<EquipmentKind::Surveyor>},
    {Demand::InvestmentLot, "The lot of the investment is recorded.", "Scan the lot.", kTrace,
     &lotOf<LotKind::Investment>},
    {Demand::Furnace, "The furnace is recorded and its calibration holds.", "Record the furnace.",
     kCalibration, &equipmentOf<EquipmentKind::Furnace>},
    {Demand::AlloyLot, "The lot of the alloy is recorded with its mass.", "Scan the lot.", kTrace,
     &lotOf<LotKind::Alloy>},
    {Demand::NewMetal, "The melt holds at least half new metal, and its share is recorded.",
     "Record the share of new metal.", kPractice, &newMetal},
    {Demand::CastMass, "The mass of the casting is recorded.", "Weigh the casting.", kTrace,
     &castMass},
    {Demand::Caster, "The caster is recorded and its calibration holds.", "Record the caster.",
     kCalibration, &equipmentOf<EquipmentKind::Caster>},
    {Demand::BlankLot, "The lot of the milling blank is recorded.", "Scan the lot.", kTrace,
     &lotOf<LotKind::MillingBlank>},
    {Demand::Mill, "The mill is recorded and its calibration holds.", "Record the mill.",
     kCalibration, &equipmentOf<EquipmentKind::Mill>},
    {Demand::PowderLot, "The lot of the metal powder is recorded.", "Scan the lot.", kTrace,
     &lotOf<LotKind::MetalPowder>},
    {Demand::Printer, "The printer is recorded and its calibration holds.", "Record the printer.",
     kCalibration, &equipmentOf<EquipmentKind::Printer>},
    {Demand::ToothLots, "The lots of the artificial teeth are recorded.", "Scan the lots.", kTrace,
     &lotOf<LotKind::Teeth>},
    {Demand::MouldAndShade, "Mould and shade are recorded, and the shade is the prescribed one.",
     "Record mould, guide and tab.", kPractice, &mouldAndShade},
    {Demand::ResinLot, "The lot of the base resin is recorded.", "Scan the lot.", kTrace,
     &lotOf<LotKind::ResinPowder>},
    {Demand::CureLog, "The log of the cure keeps its cycle.",
     "Record the log; if it fails, do the stage again.",
     "published cure cycles; monomer boils at 100.8 C", &cureLog},
    {Demand::CuringBath, "The curing bath is recorded and its calibration holds.",
     "Record the curing bath.", kCalibration, &curingBath},
    {Demand::OtherPerson, "The device is inspected by somebody who did not make it.",
     "Let another person inspect it.",
     "EU GMP Annex 11, 15: maker and checker differ (from memory, an anchor only)", &otherPerson},
    {Demand::Disinfection,
     "What comes or goes is disinfected; agent and contact time are recorded.",
     "Disinfect it and record with what and how long.",
     "CDC guidelines for infection control in dental health-care settings, 2003", &disinfection},
    {Demand::LegalFields, "Nothing the law asks of a prescription is lacking.",
     "Ask the dentist for what is lacking.", "union of the state laws on work authorizations",
     &legalFields},
    {Demand::Statement, "The statement for a custom-made device is issued before delivery.",
     "Issue the statement.", "Regulation (EU) 2017/745, article 52(8) and Annex XIII", &statement},
}};

void checklist(const GateView& view, const StagePlan& plan, std::vector<Finding>& findings) {
    const auto ticked = all<Ticked>(view);
    for (const std::string& item : plan.checklist)
        if (std::ranges::count(ticked, item, &Ticked::item) == 0)
            findings.push_back({.rule = "gate.checklist",
                                .severity = Severity::Missing,
                                .tooth = {},
                                .found = "not ticked: " + item,
                                .requirement = "Every line of the checklist is ticked.",
                                .question = "Look, and tick it.",
                                .source = std::string{kPractice}});
}

}  // namespace

std::vector<Finding> lackingAt(const GateView& view) {
    std::vector<Finding> findings;
    const StagePlan plan = planOf(view.order, view.stage);
    checklist(view, plan, findings);
    for (const Demand demand : plan.demands) {
        const GateRow& row = kGates[static_cast<std::size_t>(demand)];
        Lacking lacking{row, findings};
        row.check(view, lacking);
    }
    return findings;
}

std::string listed(const std::vector<Finding>& lacking, Notation notation) {
    std::string list;
    for (const Finding& finding : lacking) {
        if (!list.empty()) list += "; ";
        if (finding.tooth) list += "tooth " + nameOf(*finding.tooth, notation) + ": ";
        list += finding.found;
    }
    return list;
}

}  // namespace domain
