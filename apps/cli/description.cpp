#include "apps/cli/description.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <nlohmann/json.hpp>

#include "domain/design/design_view.h"

namespace cli {
namespace {

using actions::Described;
using domain::ClaspMechanics;
using domain::Notation;
using domain::Prescription;
using domain::Range;
using domain::SaddleSpan;
using domain::Tooth;
using Rows = std::vector<std::vector<std::string>>;

/// "0.9 to 1.4 N", and "2.0 N" where both ends look the same.
std::string ranged(Range range, std::string_view unit, int decimals) {
    const std::string least = fixed(range.least, decimals);
    const std::string most = fixed(range.most, decimals);
    return (least == most ? least : least + " to " + most) + ' ' + std::string{unit};
}

std::string mm(double length, int decimals = 0) { return fixed(length, decimals) + " mm"; }

std::string nameOf(const std::optional<Tooth>& tooth, Notation notation) {
    return tooth ? domain::nameOf(*tooth, notation) : "-";
}

/// "14 to 15", by the teeth at its ends.
std::string teethOf(const Described& described, const SaddleSpan& span) {
    const Notation notation = notationOf(described.prescription);
    const std::string first =
        domain::nameOf(domain::toothAt(described.prescription, span.area.first), notation);
    const std::string last =
        domain::nameOf(domain::toothAt(described.prescription, span.area.last), notation);
    return first == last ? first : first + " to " + last;
}

std::string heldText(const SaddleSpan& span, Notation notation) {
    if (span.isSurrounded())
        return "at both ends, " + nameOf(span.right.clasped, notation) + " and " +
               nameOf(span.left.clasped, notation);
    const auto& one = span.right.clasped ? span.right.clasped : span.left.clasped;
    return one ? "at one end, " + nameOf(one, notation) : "at neither end";
}

Page saddlesPage(const Described& described) {
    Rows rows;
    for (const SaddleSpan& span : described.description.saddles)
        rows.push_back({teethOf(described, span), std::to_string(span.teeth), mm(span.along),
                        mm(span.straight), span.area.isFreeEnd() ? "free end" : "bounded",
                        heldText(span, notationOf(described.prescription))});
    if (rows.empty()) return Page{"saddles: none"};
    return table({"saddle", "teeth", "along the arch", "straight", "kind", "clasps hold it"}, rows);
}

Page fulcrumPage(const Described& described) {
    const Notation notation = notationOf(described.prescription);
    const auto& fulcrum = described.description.design.fulcrum;
    if (!fulcrum) {
        const auto kennedyClass = described.description.design.kennedyClass();
        const bool rocks = kennedyClass && *kennedyClass != domain::KennedyClass::III;
        return Page{std::string{"fulcrum line: none; "} +
                    (rocks ? "two rests for it to run through are not given" : "nothing rocks")};
    }
    Page page{"fulcrum line: through the rests on " +
              domain::nameOf(fulcrum->right.tooth, notation) + " and " +
              domain::nameOf(fulcrum->left.tooth, notation) + "; the far end of the base " +
              mm(fulcrum->loadArm()) + " from it"};
    for (const domain::RetainerArm& retainer : described.description.retainers)
        page.line("indirect retainer " + domain::nameOf(retainer.tooth, notation) + ": " +
                  (retainer.loadRatio > 0
                       ? mm(retainer.across) + " across, bears " + fixed(retainer.loadRatio, 1) +
                             " times the lifting load"
                       : mm(-retainer.across) + " on the side of the base or on the line"));
    if (const auto& seat = described.description.bestSeat)
        page.line("farthest firm seat across: " + domain::nameOf(seat->tooth, notation) + ", " +
                  (seat->kind == domain::RestKind::Occlusal ? wordsOf(seat->side) + ' ' : "") +
                  wordsOf(seat->kind) + " rest, " + mm(seat->distance) + " across");
    return page;
}

/// "12.4 mm* x 1.4 mm*"
std::string sizeText(const domain::DerivedArm& arm) {
    return mm(arm.shape.length, 1) + (arm.lengthIsDerived ? "*" : "") + " x " +
           mm(arm.shape.width, 1) + (arm.widthIsDerived ? "*" : "");
}

/// Two tables: one would be wider than a screen.
Page claspsPage(const Described& described) {
    const Notation notation = notationOf(described.prescription);
    const auto& clasps = described.description.clasps;
    Rows arms;
    Rows springs;
    for (const ClaspMechanics& clasp : clasps) {
        const std::string tooth = domain::nameOf(clasp.tooth, notation);
        arms.push_back({tooth, wordsOf(clasp.kind), std::string{clasp.material->name},
                        sizeText(clasp.arm), mm(clasp.deflection, 2)});
        springs.push_back(
            {tooth, ranged(clasp.force, "N", 1), ranged(clasp.rootStress, "MPa", 0),
             ranged(clasp.largestStress, "MPa", 0),
             fixed(clasp.setMargin.least, 1) + " to " + fixed(clasp.setMargin.most, 1),
             ranged(clasp.removal, "N", 1)});
    }
    Page page =
        clasps.empty()
            ? Page{"clasps: none that can be computed"}
            : table({"clasp", "kind", "arm of", "length x width", "undercut"}, arms)
                  .blank()
                  .add(table({"clasp", "tip force", "stress at root", "largest stress",
                              "set margin", "resists a pull of"},
                             springs))
                  .line("set margin: strength over largest stress; below 1 the arm bends for good");
    if (std::ranges::any_of(clasps, [](const auto& clasp) { return clasp.arm.isDerived(); }))
        page.line("* derived from the mean crown and the usual section");
    if (const auto open = described.prescription.clasps.size() - clasps.size(); open > 0)
        page.line(std::to_string(open) + " more without undercut, depth or material");
    return page;
}

Page connectorPage(const Described& described) {
    const Prescription& prescription = described.prescription;
    std::string text = "major connector: ";
    text += prescription.majorConnector ? wordsOf(prescription.majorConnector->kind) : "none named";
    if (const auto& span = described.description.connector)
        text += "; spans " + mm(span->across) + " straight across, " + mm(span->along) +
                " round the arch";
    Page page{text};
    if (const auto& volume = described.description.volume) {
        const auto& mass = described.description.mass;
        page.line("framework: about " + ranged(*volume, "cm^3", 2) +
                  (mass ? ", " + ranged(*mass, "g", 0) : ""));
    }
    return page;
}

Page scorePage(const Described& described) {
    const auto& completeness = described.completeness;
    std::string text = "complete: " + std::to_string(completeness.given) + " of " +
                       std::to_string(completeness.asked) + " items, " +
                       std::to_string(completeness.percent()) + " %";
    for (std::size_t at = 0; at < completeness.open.size(); ++at)
        text += (at == 0 ? "; open: " : ", ") + std::string{completeness.open[at]};
    return Page{"score: " + std::to_string(described.score.points()) +
                " of 4 (connector, retainer type, retainer position, rest position)"}
        .line(text);
}

Page headPage(const Described& described) {
    const Prescription& prescription = described.prescription;
    const auto& design = described.description.design;
    std::string text = wordsOf(prescription.arch) + " arch, ";
    text += design.kennedy ? "Kennedy " + design.kennedy->text() : "no Kennedy class";
    if (design.support) text += ", support by " + wordsOf(*design.support);
    if (prescription.framework.material)
        text += ", " + std::string{shortName(*prescription.framework.material)};
    const auto extent = design.form.extent();
    const bool measured = prescription.survey.archWidth || prescription.survey.archDepth;
    return Page{text}.line("arch form: " + mm(extent.width) + " wide, " + mm(extent.depth) +
                           " deep, " + (measured ? "as measured" : "the mean"));
}

Json json(Range range) { return {{"least", range.least}, {"most", range.most}}; }

Json toothOrNull(const std::optional<Tooth>& tooth) { return tooth ? Json(tooth->text()) : Json(); }

Json json(const ClaspMechanics& clasp) {
    return {{"tooth", clasp.tooth.text()},
            {"kind", codeOf(clasp.kind)},
            {"material", clasp.material->name},
            {"section", codeOf(clasp.arm.shape.section)},
            {"length-mm", clasp.arm.shape.length},
            {"length-derived", clasp.arm.lengthIsDerived},
            {"width-mm", clasp.arm.shape.width},
            {"width-derived", clasp.arm.widthIsDerived},
            {"tip-share", clasp.arm.shape.tip},
            {"radius-mm", clasp.arm.shape.radius},
            {"run-mm", clasp.arm.shape.run},
            {"undercut-mm", clasp.deflection},
            {"tip-force-N", json(clasp.force)},
            {"root-stress-MPa", json(clasp.rootStress)},
            {"largest-stress-MPa", json(clasp.largestStress)},
            {"largest-stress-at", clasp.largestAt},
            {"set-margin", json(clasp.setMargin)},
            {"removal-force-N", json(clasp.removal)}};
}

Json json(const SaddleSpan& span, const Prescription& prescription) {
    return {{"first", domain::toothAt(prescription, span.area.first).text()},
            {"last", domain::toothAt(prescription, span.area.last).text()},
            {"teeth", span.teeth},
            {"along-mm", span.along},
            {"straight-mm", span.straight},
            {"free-end", span.area.isFreeEnd()},
            {"held-right", toothOrNull(span.right.clasped)},
            {"held-left", toothOrNull(span.left.clasped)}};
}

Json fulcrumJson(const domain::Description& description) {
    const auto& fulcrum = description.design.fulcrum;
    if (!fulcrum) return {};
    Json retainers = Json::array();
    for (const domain::RetainerArm& retainer : description.retainers)
        retainers.push_back({{"tooth", retainer.tooth.text()},
                             {"across-mm", retainer.across},
                             {"load-ratio", retainer.loadRatio}});
    Json object = {{"right", fulcrum->right.tooth.text()},
                   {"left", fulcrum->left.tooth.text()},
                   {"load-arm-mm", fulcrum->loadArm()},
                   {"indirect-retainers", std::move(retainers)},
                   {"best-seat", Json()}};
    if (const auto& seat = description.bestSeat)
        object["best-seat"] = {{"tooth", seat->tooth.text()},
                               {"kind", codeOf(seat->kind)},
                               {"side", codeOf(seat->side)},
                               {"across-mm", seat->distance}};
    return object;
}

}  // namespace

std::string fixed(double value, int decimals) {
    std::array<char, 64> digits{};
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value,
                                   std::chars_format::fixed, decimals);
    return {digits.data(), end.ptr};
}

Page page(const Described& described) {
    Page page = headPage(described);
    for (const auto& part : {saddlesPage, fulcrumPage, claspsPage, connectorPage, scorePage})
        page.blank().add(part(described));
    return page.blank()
        .line(
            "Computed from mean crowns and usual sections; a help to judge a design by, not a "
            "measurement.")
        .line("The prescriber decides.");
}

Json json(const Described& described) {
    const Prescription& prescription = described.prescription;
    const domain::Description& description = described.description;
    const domain::Design& design = description.design;
    Json saddles = Json::array();
    for (const SaddleSpan& span : description.saddles) saddles.push_back(json(span, prescription));
    Json clasps = Json::array();
    for (const ClaspMechanics& clasp : description.clasps) clasps.push_back(json(clasp));
    Json open = Json::array();
    for (const std::string_view item : described.completeness.open) open.push_back(item);
    const auto& connector = description.connector;
    return {{"arch", codeOf(prescription.arch)},
            {"kennedy", design.kennedy ? Json(design.kennedy->text()) : Json()},
            {"support", design.support ? Json(codeOf(*design.support)) : Json()},
            {"arch-width-mm", design.form.extent().width},
            {"arch-depth-mm", design.form.extent().depth},
            {"saddles", std::move(saddles)},
            {"fulcrum", fulcrumJson(description)},
            {"clasps", std::move(clasps)},
            {"connector-across-mm", connector ? Json(connector->across) : Json()},
            {"connector-along-mm", connector ? Json(connector->along) : Json()},
            {"framework-volume-cm3", description.volume ? json(*description.volume) : Json()},
            {"framework-mass-g", description.mass ? json(*description.mass) : Json()},
            {"score", described.score.points()},
            {"complete-percent", described.completeness.percent()},
            {"open-items", std::move(open)}};
}

}  // namespace cli
