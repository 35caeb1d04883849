#include "reports/words.h"

namespace reports {
namespace {

using namespace domain;

bool isMetal(FrameworkMaterial material) {
    return material != FrameworkMaterial::Polyetheretherketone &&
           material != FrameworkMaterial::Acetal;
}

void addAlloyCautions(std::vector<std::string>& paragraphs, const Framework& framework) {
    if (!framework.material || !isMetal(*framework.material)) return;
    if (*framework.material == FrameworkMaterial::CobaltChromium)
        paragraphs.emplace_back(
            "Cobalt: this alloy contains cobalt, which European law classes as able to cause "
            "cancer above 0.1 % (Regulation (EU) 2017/745, Annex I, 10.4). Grind and blast under "
            "extraction, with a mask that holds back fine dust.");
    if (*framework.material == FrameworkMaterial::NickelChromium ||
        framework.nickel.value_or(0_ppm) >= 1000_ppm)
        paragraphs.emplace_back(
            "Nickel: this alloy contains nickel, a frequent cause of contact allergy. Not for a "
            "patient or a technician who is sensitive to it.");
    paragraphs.emplace_back(
        "Beryllium and cadmium: before casting or grinding, read on the maker's certificate that "
        "the alloy keeps the limits of ISO 22674. Their dust and vapour are poisonous.");
}

}  // namespace

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
    addAlloyCautions(paragraphs, prescription.framework);
    if (!prescription.base.methacrylateFree.value_or(false))
        paragraphs.emplace_back(
            "Monomer: methacrylate liquid irritates and can make skin and airways allergic; its "
            "vapour catches fire. Gloves that resist it, extraction, no flame.");
    paragraphs.emplace_back(
        "Infection: whatever has been in a mouth is treated as contaminated until it is "
        "disinfected, on receipt and again before it goes back, and is marked with what and for "
        "how long.");
    paragraphs.emplace_back(
        "The laboratory makes what the prescriber prescribes. In every clinical matter it defers "
        "to the prescriber, to local law and codes, and to licensed practice. The picture shows a "
        "mean arch, not the measures of this patient.");
    return frame;
}

}  // namespace reports
