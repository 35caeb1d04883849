#include "reports/cautions.h"

#include "reports/words.h"

namespace reports {
namespace {

using namespace domain;

constexpr Share kNegligible = 1000_ppm;  // 0.1 %

bool isMetal(FrameworkMaterial material) {
    return material != FrameworkMaterial::Polyetheretherketone &&
           material != FrameworkMaterial::Acetal;
}

}  // namespace

Hazards hazardsOf(const Prescription& prescription) {
    const Framework& framework = prescription.framework;
    const bool metal = framework.material && isMetal(*framework.material);
    return {.metal = metal,
            .cobalt = framework.material == FrameworkMaterial::CobaltChromium,
            .nickel = framework.material == FrameworkMaterial::NickelChromium ||
                      (metal && framework.nickel.value_or(0_ppm) >= kNegligible),
            .monomer = !prescription.base.methacrylateFree.value_or(false)};
}

std::vector<std::string> benchCautions(const Hazards& hazards) {
    std::vector<std::string> paragraphs;
    if (hazards.cobalt)
        paragraphs.emplace_back(
            "Cobalt: this alloy contains cobalt, which European law classes as able to cause "
            "cancer above 0.1 % (Regulation (EU) 2017/745, Annex I, 10.4). Grind and blast under "
            "extraction, with a mask that holds back fine dust.");
    if (hazards.nickel)
        paragraphs.emplace_back(
            "Nickel: this alloy contains nickel, a frequent cause of contact allergy. Not for a "
            "patient or a technician who is sensitive to it.");
    if (hazards.metal)
        paragraphs.emplace_back(
            "Beryllium and cadmium: before casting or grinding, read on the maker's certificate "
            "that the alloy keeps the limits of ISO 22674. Their dust and vapour are poisonous.");
    if (hazards.monomer)
        paragraphs.emplace_back(
            "Monomer: methacrylate liquid irritates and can make skin and airways allergic; its "
            "vapour catches fire. Gloves that resist it, extraction, no flame.");
    return paragraphs;
}

std::vector<std::string> wearerCautions(const Hazards& hazards) {
    std::vector<std::string> paragraphs;
    if (hazards.cobalt)
        paragraphs.emplace_back(
            "Cobalt: the metal contains more than 0.1 % of cobalt, which European law classes as "
            "able to cause cancer (Regulation (EU) 2017/745, Annex I, 10.4). Not for a wearer who "
            "is allergic to cobalt or chromium.");
    if (hazards.nickel)
        paragraphs.emplace_back(
            "Nickel: the metal contains nickel, a frequent cause of contact allergy. Not for a "
            "wearer who is allergic to it.");
    if (hazards.monomer)
        paragraphs.emplace_back(
            "Resin: it contains methacrylate, of which a little remains after curing and can "
            "irritate or cause allergy.");
    return paragraphs;
}

std::string infectionCaution() {
    return "Infection: whatever has been in a mouth is treated as contaminated until it is "
           "disinfected, on receipt and again before it goes back, and is marked with what and for "
           "how long.";
}

std::string deferenceCaution() {
    return "The laboratory makes what the prescriber prescribes. In every clinical matter it "
           "defers to the prescriber, to local law and codes, and to licensed practice.";
}

CautionFrame cautionFrame(const Prescription& prescription) {
    CautionFrame frame{.title = "Cautions", .paragraphs = {}};
    auto& paragraphs = frame.paragraphs;
    const std::string sensitive = sensitivityText(prescription.sensitivities);
    if (sensitive == kNotGiven)
        paragraphs.emplace_back(
            "Sensitivities: not stated. Until the prescriber answers, treat them as unknown, not "
            "as none.");
    else
        paragraphs.push_back("Sensitivities, as the prescriber states them: " + sensitive + ".");
    for (std::string& one : benchCautions(hazardsOf(prescription)))
        paragraphs.push_back(std::move(one));
    paragraphs.push_back(infectionCaution());
    paragraphs.push_back(deferenceCaution() +
                         " The picture shows a mean arch, not the measures of this patient.");
    return frame;
}

}  // namespace reports
