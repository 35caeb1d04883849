#include <algorithm>

#include "domain/design/design_view.h"
#include "domain/materials/alloy_data.h"
#include "domain/rules/rule.h"
#include "domain/rules/sources.h"

namespace domain {

namespace {

void frameworkIsNamed(const Examination& examination, Findings& findings) {
    if (!isMetal(examination.prescription)) return;
    const Framework& framework = examination.prescription.framework;
    if (!framework.material) findings.add("no material of the framework");
    if (!framework.making) findings.add("the way of making the framework is not said");
}

bool exists(FrameworkMaterial material, FrameworkMaking making) {
    switch (material) {
        case FrameworkMaterial::CobaltChromium:
        case FrameworkMaterial::NickelChromium:
        case FrameworkMaterial::Titanium:
        case FrameworkMaterial::TitaniumAlloy:
            return true;
        case FrameworkMaterial::GoldTypeIv:
            return making != FrameworkMaking::Printed;
        case FrameworkMaterial::Polyetheretherketone:
            return making != FrameworkMaking::Cast;
        case FrameworkMaterial::Acetal:
            return making == FrameworkMaking::Milled;
    }
    return true;
}

void makingExists(const Examination& examination, Findings& findings) {
    const Framework& framework = examination.prescription.framework;
    if (framework.material && framework.making && !exists(*framework.material, *framework.making))
        findings.add(wordsOf(*framework.material) + ", " + wordsOf(*framework.making));
}

/// A wrought or a polymer arm is joined; a cast one is of the melt the framework is of.
void armsAreOfTheCasting(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    const Framework& framework = prescription.framework;
    if (!isMetal(prescription) || !framework.material || framework.making != FrameworkMaking::Cast)
        return;
    for (const Clasp& clasp : prescription.clasps) {
        if (!clasp.material || clasp.material == ArmMaterial::WroughtWire ||
            clasp.material == ArmMaterial::Polymer ||
            clasp.material == castArm(*framework.material))
            continue;
        findings.add(clasp.tooth, "an arm of " + wordsOf(*clasp.material) + " on " +
                                      findings.name(clasp.tooth) + ", and a framework of " +
                                      wordsOf(*framework.material));
    }
}

bool hasArm(const Prescription& prescription, ArmMaterial material) {
    return std::ranges::count(prescription.clasps, std::optional{material}, &Clasp::material) > 0;
}

void nickelIsAvoided(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isSensitive(prescription, Sensitivity::Nickel)) return;
    const Framework& framework = prescription.framework;
    if (framework.material == FrameworkMaterial::NickelChromium)
        findings.add("a nickel-sensitive patient, and a framework of nickel-chromium");
    else if (framework.nickel && *framework.nickel >= kNickelFree)
        findings.add("a nickel-sensitive patient, and " + text(*framework.nickel) +
                     " of nickel in the alloy; below " + text(kNickelFree) + " is asked");
    if (hasArm(prescription, ArmMaterial::CastNickelChromium))
        findings.add("a nickel-sensitive patient, and a clasp of nickel-chromium");
}

void nickelIsStated(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (isSensitive(prescription, Sensitivity::Nickel) &&
        prescription.framework.material == FrameworkMaterial::CobaltChromium &&
        !prescription.framework.nickel)
        findings.add(
            "a nickel-sensitive patient, and the nickel in the cobalt-chromium alloy is "
            "not stated");
}

void wroughtWireHoldsNoNickel(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isSensitive(prescription, Sensitivity::Nickel)) return;
    for (const Clasp& clasp : prescription.clasps)
        if (armMaterial(prescription, clasp) == ArmMaterial::WroughtWire)
            findings.add(clasp.tooth, "a nickel-sensitive patient, and a wrought arm on " +
                                          findings.name(clasp.tooth));
}

void cobaltAndChromiumAreAvoided(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    const bool cobalt = isSensitive(prescription, Sensitivity::Cobalt);
    const bool chromium = isSensitive(prescription, Sensitivity::Chromium);
    const auto& material = prescription.framework.material;
    if ((cobalt || chromium) && (material == FrameworkMaterial::CobaltChromium ||
                                 hasArm(prescription, ArmMaterial::CastCobaltChromium)))
        findings.add(std::string{"a patient sensitive to "} + (cobalt ? "cobalt" : "chromium") +
                     ", and an alloy of cobalt-chromium");
    if (chromium && (material == FrameworkMaterial::NickelChromium ||
                     hasArm(prescription, ArmMaterial::CastNickelChromium)))
        findings.add("a patient sensitive to chromium, and an alloy of nickel-chromium");
    for (const Clasp& clasp : prescription.clasps)
        if ((cobalt || chromium) && armMaterial(prescription, clasp) == ArmMaterial::WroughtWire)
            findings.advise(clasp.tooth, std::string{"a patient sensitive to "} +
                                             (chromium ? "chromium" : "cobalt") +
                                             ", and a wrought arm on " +
                                             findings.name(clasp.tooth) + " of a wire not named");
}

void hazardousElementsAreAbsent(const Examination& examination, Findings& findings) {
    const Framework& framework = examination.prescription.framework;
    const auto check = [&](const std::optional<Share>& share, std::string_view element) {
        if (share && *share > kMostHazardous)
            findings.add(text(*share) + " of " + std::string{element} + "; at most " +
                         text(kMostHazardous) + " is allowed");
    };
    check(framework.beryllium, "beryllium");
    check(framework.cadmium, "cadmium");
}

bool isAlloy(FrameworkMaterial material) {
    return material != FrameworkMaterial::Polyetheretherketone &&
           material != FrameworkMaterial::Acetal;
}

void alloyIsOfTypeFive(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    const Framework& framework = prescription.framework;
    if (!isMetal(prescription) || !framework.material || !isAlloy(*framework.material)) return;
    const TypeLimits limits = limitsOf(AlloyType::Type5);
    const auto ask = [&](const auto& declared, auto least, std::string_view what) {
        if (!declared || *declared >= least) return;
        std::string found =
            std::string{what} + ": " + text(*declared) + " declared; type 5 asks " + text(least);
        findings.add(std::move(found));
    };
    ask(framework.modulus, limits.modulus, "modulus");
    ask(framework.proofStrength, limits.proofStrength, "0.2 % proof strength");
    ask(framework.elongation, limits.elongation, "elongation");
}

void uncommonMaterialIsConfirmed(const Examination& examination, Findings& findings) {
    const auto& material = examination.prescription.framework.material;
    if (!material) return;
    switch (*material) {
        case FrameworkMaterial::Titanium:
        case FrameworkMaterial::TitaniumAlloy:
        case FrameworkMaterial::Polyetheretherketone:
        case FrameworkMaterial::Acetal:
            return findings.add("a framework of " + wordsOf(*material));
        case FrameworkMaterial::CobaltChromium:
        case FrameworkMaterial::NickelChromium:
        case FrameworkMaterial::GoldTypeIv:
            return;
    }
}

void sensitivitiesAreStated(const Examination& examination, Findings& findings) {
    const Sensitivities& sensitivities = examination.prescription.sensitivities;
    const bool noneKnown = sensitivities.noneKnown == true;
    if (!noneKnown && sensitivities.known.empty())
        findings.add("neither a sensitivity nor \"none known\"");
    if (noneKnown && !sensitivities.known.empty())
        findings.contradict("\"none known\", and " + wordsOf(sensitivities.known.front()));
}

bool holdsResin(const Prescription& prescription) {
    const auto appliance = applianceOf(prescription);
    if (appliance == Appliance::InterimResin || appliance == Appliance::Reline) return true;
    return std::ranges::any_of(prescription.saddles, [](const Saddle& saddle) {
        return saddle.base != BaseKind::Metal || saddle.retention;
    });
}

void methacrylateIsAvoided(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (isSensitive(prescription, Sensitivity::Methacrylate) && holdsResin(prescription) &&
        prescription.base.methacrylateFree != true)
        findings.add("a patient sensitive to methacrylate, and a base not said to be free of it");
    if (isSensitive(prescription, Sensitivity::Methacrylate) &&
        prescription.teeth.material == ToothMaterial::Polymer)
        findings.advise(
            "a patient sensitive to methacrylate, and polymer teeth, which are mostly "
            "made of it");
}

void baseIsNamed(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    const bool asked = isNewDenture(prescription) || applianceOf(prescription) == Appliance::Reline;
    if (asked && holdsResin(prescription) && !prescription.base.resin)
        findings.add("neither the base resin nor its cure is said");
}

void teethAreHeld(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!isMetal(prescription) || !prescription.teeth.material) return;
    for (const Saddle& saddle : prescription.saddles)
        if (saddle.base == BaseKind::Metal && !saddle.retention && !saddle.teeth.empty())
            findings.add(saddle.teeth.front(),
                         wordsOf(*prescription.teeth.material) +
                             " teeth on a metal base that has no beads to hold them");
}

constexpr Rule kRules[] = {
    {.id = "alloy.given",
     .severity = Severity::Missing,
     .ground = Ground::Law,
     .requirement = "The material of the framework and the way of making it are given.",
     .question = "Of what shall the framework be, and how made: cast, milled or printed?",
     .source = "Montana Code 37-4-501 and Maine Title 32 section 1090: type and quality of the "
               "materials; Florida Administrative Code 64B5-17.006",
     .check = frameworkIsNamed},
    {.id = "alloy.making",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "The way of making exists for the material.",
     .question = "This material is not made that way. Which material, or which way of making, is "
                 "meant?",
     .source = "by definition: an alloy is cast, milled or printed, a polymer framework is not "
               "cast; common practice, no source",
     .check = makingExists},
    {.id = "alloy.one-casting",
     .severity = Severity::Conflict,
     .ground = Ground::Definition,
     .requirement = "Arms cast with the framework are of its alloy.",
     .question =
         "The framework and this arm cannot be cast in one. Of which alloy shall they be, or "
         "shall the arm be of wire?",
     .source = "by definition: one casting is of one melt",
     .check = armsAreOfTheCasting},
    {.id = "alloy.nickel",
     .severity = Severity::Conflict,
     .ground = Ground::Safety,
     .requirement = "No alloy with 0.1 % of nickel or more goes to a nickel-sensitive patient.",
     .question = "The patient is sensitive to nickel and the alloy holds nickel. Which alloy shall "
                 "we take instead?",
     .source = "ISO 22674: \"nickel free\" only below 0.1 %; that it is kept from a sensitive "
               "patient is patient safety, common practice, no source",
     .check = nickelIsAvoided},
    {.id = "alloy.nickel-stated",
     .severity = Severity::Missing,
     .ground = Ground::Safety,
     .requirement = "For a nickel-sensitive patient the nickel in a cobalt-chromium alloy is "
                    "stated: such alloys hold between none and 30 %.",
     .question =
         "The patient is sensitive to nickel. How much nickel may the alloy hold, or may we "
         "take one declared nickel free?",
     .source = "ISO 22674:2022, clause 5.2.3: nickel above 0.1 % is declared",
     .check = nickelIsStated},
    {.id = "alloy.nickel-wire",
     .severity = Severity::Caution,
     .ground = Ground::Safety,
     .requirement = "For a nickel-sensitive patient wrought arms are of a wire without nickel.",
     .question =
         "The patient is sensitive to nickel, and most clasp wire holds some. May we take a "
         "wire without nickel, or cast the arm?",
     .source =
         "common practice, no source; austenitic stainless steels hold 8 % of nickel and more, "
         "from memory",
     .check = wroughtWireHoldsNoNickel},
    {.id = "alloy.cobalt-chromium",
     .severity = Severity::Conflict,
     .ground = Ground::Safety,
     .requirement = "No alloy of cobalt or chromium goes to a patient sensitive to it.",
     .question = "The patient is sensitive to a metal this alloy is made of. Which alloy shall we "
                 "take instead?",
     .source = "patient safety; Regulation (EU) 2017/745, Annex I, section 10",
     .check = cobaltAndChromiumAreAvoided},
    {.id = "alloy.hazardous",
     .severity = Severity::Conflict,
     .ground = Ground::Safety,
     .requirement = "The alloy holds no more beryllium and no more cadmium than ISO 22674 allows.",
     .question =
         "This alloy holds a hazardous element above the limit of the standard. Which alloy "
         "shall we take instead?",
     .source = "ISO 22674:2022, clause 5.2, hazardous elements; the limit of 0.02 % from memory",
     .check = hazardousElementsAreAbsent},
    {.id = "alloy.type",
     .severity = Severity::Caution,
     .ground = Ground::Published,
     .requirement =
         "An alloy for thin frameworks with clasps is of type 5 by ISO 22674 as far as its "
         "maker declares it: modulus 150 GPa, proof strength 500 MPa, elongation 2 %.",
     .question =
         "As declared, this alloy is too weak or too soft for a thin framework with clasps. "
         "Which alloy shall we take instead?",
     .source = "ISO 22674, type 5 (values by Advances in Materials Science and Engineering 2018, "
               "article 8213023, table 2); type 4 is listed for highly loaded partial dentures too",
     .check = alloyIsOfTypeFive},
    {.id = "alloy.uncommon",
     .severity = Severity::Caution,
     .ground = Ground::Practice,
     .requirement = "A framework of titanium or of a polymer is less established: the prescriber "
                    "confirms it.",
     .question =
         "Frameworks of this material are less established than cast cobalt-chromium. Do you "
         "confirm it?",
     .source = source::kCommonPractice,
     .check = uncommonMaterialIsConfirmed},
    {.id = "sensitivity.stated",
     .severity = Severity::Missing,
     .ground = Ground::Safety,
     .requirement = "Known sensitivities of the patient are stated, \"none known\" included.",
     .question = "Is the patient sensitive to nickel, cobalt, chromium, methacrylate or latex? If "
                 "none is known, please say so.",
     .source =
         "Regulation (EU) 2017/745, Annex I, section 10; that it is asked each time is common "
         "practice, no source",
     .check = sensitivitiesAreStated},
    {.id = "base.methacrylate",
     .severity = Severity::Conflict,
     .ground = Ground::Safety,
     .requirement = "No methacrylate goes to a patient sensitive to it, in the base or the teeth.",
     .question = "The patient is sensitive to methacrylate. Which base free of it shall we take?",
     .source = "patient safety; ISO 20795-1: most base resins are methacrylates and hold residual "
               "monomer",
     .check = methacrylateIsAvoided},
    {.id = "base.given",
     .severity = Severity::Missing,
     .ground = Ground::Law,
     .requirement = "The base resin and its cure are given.",
     .question =
         "Which base resin shall we take: heat-cured, self-cured, thermoplastic, light-cured "
         "or microwave-cured?",
     .source = "ISO 20795-1, types 1 to 5; Montana Code 37-4-501: type of the materials",
     .check = baseIsNamed},
    {.id = "teeth.bond",
     .severity = Severity::Caution,
     .ground = Ground::Published,
     .requirement = "The base can hold the artificial teeth: polymer teeth bond to resin, ceramic "
                    "ones are held in it, and neither is held by bare metal.",
     .question = "The base of this saddle is bare metal. Shall it have beads and resin to hold the "
                 "teeth?",
     .source = "ISO 22112: bonding of polymer teeth, retention of ceramic ones",
     .check = teethAreHeld},
};

}  // namespace

std::span<const Rule> materialRules() { return kRules; }

}  // namespace domain
