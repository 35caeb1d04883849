#include "domain/production/legal_fields.h"

#include <algorithm>

#include "domain/design/design_view.h"

namespace domain {
namespace {

using Lacks = std::vector<std::string>;

Lacks unlessGiven(const std::optional<std::string>& text, std::string_view what) {
    if (!isBlank(text)) return {};
    return {"no " + std::string{what}};
}

Lacks laboratoryName(const LegalFacts& facts) {
    return unlessGiven(facts.laboratoryName, "name of the laboratory");
}
Lacks laboratoryAddress(const LegalFacts& facts) {
    return unlessGiven(facts.laboratoryAddress, "address of the laboratory");
}
Lacks laboratoryRegistration(const LegalFacts& facts) {
    if (!facts.laboratoryMustRegister) return {};
    return unlessGiven(facts.laboratoryRegistration, "registration of the laboratory");
}
Lacks prescriberName(const LegalFacts& facts) {
    return unlessGiven(facts.prescriberName, "name of the prescriber");
}
Lacks prescriberAddress(const LegalFacts& facts) {
    return unlessGiven(facts.prescriberAddress, "address of the prescriber");
}
Lacks prescriberRegistration(const LegalFacts& facts) {
    return unlessGiven(facts.prescriberRegistration, "licence or registration of the prescriber");
}
Lacks prescriberContact(const LegalFacts& facts) {
    return unlessGiven(facts.prescriberContact, "contact of the prescriber");
}
Lacks patient(const LegalFacts& facts) {
    return unlessGiven(facts.patient, "name or number of the patient");
}

Lacks issued(const LegalFacts& facts) {
    if (facts.issued) return {};
    return {"no date of issue"};
}

Lacks pieces(const LegalFacts& facts) {
    if (facts.pieces.empty()) return {"no piece is described"};
    Lacks lacks;
    for (std::size_t at = 0; at < facts.pieces.size(); ++at)
        if (isBlank(facts.pieces[at]))
            lacks.push_back("piece " + std::to_string(at + 1) + " is not described");
    return lacks;
}

Lacks materials(const LegalFacts& facts) {
    if (facts.materials.empty()) return {"no material is named"};
    Lacks lacks;
    for (const NamedMaterial& material : facts.materials) {
        if (isBlank(material.type)) lacks.push_back("no type of material: " + material.part);
        if (isBlank(material.quality)) lacks.push_back("no quality of material: " + material.part);
    }
    return lacks;
}

Lacks clasps(const LegalFacts& facts) {
    if (!facts.clasps) return {"neither clasps nor \"not applicable\""};
    const auto* given = givenIn(facts.clasps);
    if (given != nullptr &&
        std::ranges::all_of(*given, [](const std::string& one) { return isBlank(one); }))
        return {"clasps, and nothing said of them"};
    return {};
}

Lacks occlusion(const LegalFacts& facts) {
    if (!facts.occlusion) return {"neither contacts nor \"not applicable\""};
    const std::string* given = givenIn(facts.occlusion);
    if (given != nullptr && isBlank(*given)) return {"contacts, and not said which"};
    return {};
}

Lacks signature(const LegalFacts& facts) {
    if (!facts.signature) return {"no signature"};
    if (facts.signature->kind == SignatureKind::OnPaper && isBlank(facts.signature->seenBy))
        return {"signed on paper; nobody here is named who saw it"};
    return {};
}

constexpr std::string_view kLaboratory =
    "West Virginia Code 30-4B-2(b)(1); Maine Title 32 section 1090(A); Maryland Health Occupations "
    "4-403; South Carolina R.39-8(A)(1)";
constexpr std::string_view kPrescriber =
    "West Virginia Code 30-4B-2(b)(6); Florida Administrative Code 64B5-17.006(c); South Carolina "
    "R.39-8(A)(2)";

constexpr RequiredRow<LegalFacts> kRows[] = {
    {.id = "legal.laboratory-name",
     .requirement = "The laboratory is named.",
     .question = "What is the name of the laboratory?",
     .source = kLaboratory,
     .lacks = laboratoryName},
    {.id = "legal.laboratory-address",
     .requirement = "The address of the laboratory is given.",
     .question = "What is the address of the laboratory?",
     .source = kLaboratory,
     .lacks = laboratoryAddress},
    {.id = "legal.laboratory-registration",
     .requirement = "Where laboratories are registered, the registration is given.",
     .question = "Under which number is the laboratory registered?",
     .source = "Florida Administrative Code 64B5-17.006(b); Kentucky Revised Statutes 313.550",
     .lacks = laboratoryRegistration},
    {.id = "legal.prescriber-name",
     .requirement = "The prescriber is named.",
     .question = "Who is the prescriber?",
     .source = kPrescriber,
     .lacks = prescriberName},
    {.id = "legal.prescriber-address",
     .requirement = "The address of the prescriber is given.",
     .question = "What is the address of the prescriber?",
     .source = kPrescriber,
     .lacks = prescriberAddress},
    {.id = "legal.prescriber-registration",
     .requirement = "The licence or registration number of the prescriber is given.",
     .question = "What is the licence or registration number of the prescriber?",
     .source = "Maine Title 32 section 1090(F); Florida Statutes 466.021; Maryland Health "
               "Occupations 4-403; South Carolina R.39-8(A)(2)",
     .lacks = prescriberRegistration},
    {.id = "legal.prescriber-contact",
     .requirement = "It is said how the prescriber can be reached.",
     .question = "How can the prescriber be reached?",
     .source = "South Carolina R.39-8(A)(2)",
     .lacks = prescriberContact},
    {.id = "legal.patient",
     .requirement = "The patient is given by name or number.",
     .question = "For which patient is it: a name, a number or a code?",
     .source = "Maine Title 32 section 1090(B); Montana Code 37-4-501; Florida Statutes 466.021; "
               "Maryland Health Occupations 4-403",
     .lacks = patient},
    {.id = "legal.issued",
     .requirement = "The date of issue is given.",
     .question = "On which day was the prescription issued?",
     .source = "West Virginia Code 30-4B-2(b)(5); Maine Title 32 section 1090(C); Montana Code "
               "37-4-501; Florida Statutes 466.021",
     .lacks = issued},
    {.id = "legal.pieces",
     .requirement = "Each separate piece of work is described.",
     .question = "What is to be made, piece by piece?",
     .source = "Florida Statutes 466.021: sufficient to identify each separate piece; Maine Title "
               "32 section 1090(D); West Virginia Code 30-4B-2(b)(4)",
     .lacks = pieces},
    {.id = "legal.materials",
     .requirement = "The materials are given by type and quality.",
     .question = "Of which materials, and of which quality?",
     .source = "Maine Title 32 section 1090(E); Montana Code 37-4-501: type and quality; South "
               "Carolina R.39-8(A)(4)",
     .lacks = materials},
    {.id = "legal.clasps",
     .requirement = "The types of clasps are given, or none is needed.",
     .question = "Which clasps, on which teeth? If none is needed, please say so.",
     .source = "South Carolina R.39-8(A)(4): types of clasps",
     .lacks = clasps},
    {.id = "legal.occlusion",
     .requirement = "The occlusal contacts in closure and in excursions are given, or there are "
                    "none to make.",
     .question = "How shall the teeth meet, in closure and in excursions?",
     .source = "South Carolina R.39-8(A)(4): occlusal contacts in centric and excursions",
     .lacks = occlusion},
    {.id = "legal.signature",
     .requirement = "The prescription is signed.",
     .question = "Has the prescriber signed, and who of us saw it?",
     .source = "West Virginia Code 30-4B-2(b)(6); Florida Administrative Code 64B5-17.006(f); "
               "Montana Code 37-4-501; South Carolina R.39-8(A)(5)",
     .lacks = signature},
};

std::string teethText(const std::vector<Tooth>& teeth, Notation notation) {
    std::string text;
    for (const Tooth tooth : teeth) text += (text.empty() ? "" : ", ") + nameOf(tooth, notation);
    return text;
}

/// What is made is one piece; what is changed of a denture that exists is one each.
std::vector<std::string> piecesOf(const Prescription& prescription) {
    const auto& appliance = prescription.appliance;
    if (!appliance) return {};
    const Notation notation = notationOf(prescription);
    const std::string what = wordsOf(*appliance) + ", " + wordsOf(prescription.arch);
    const ToothSet replaced = replacedTeeth(prescription);
    if (*appliance != Appliance::Repair && *appliance != Appliance::Addition) {
        const std::string teeth = teethText(replaced.teeth(), notation);
        return {teeth.empty() ? what : what + ", replacing " + teeth};
    }
    std::vector<std::string> pieces;
    for (const Saddle& saddle : prescription.saddles)
        pieces.push_back(what + ", saddle " + teethText(saddle.teeth, notation));
    for (const Clasp& clasp : prescription.clasps)
        pieces.push_back(what + ", clasp on " + nameOf(clasp.tooth, notation));
    for (const Rest& rest : prescription.rests)
        pieces.push_back(what + ", rest on " + nameOf(rest.tooth, notation));
    if (pieces.empty() && !isBlank(prescription.identity.remarks)) pieces.push_back(what);
    return pieces;
}

template <CodedEnum E>
std::optional<std::string> words(const std::optional<E>& value) {
    if (!value) return {};
    return wordsOf(*value);
}

bool hasResinSaddle(const Prescription& prescription) {
    return std::ranges::any_of(prescription.saddles,
                               [](const Saddle& saddle) { return saddle.base != BaseKind::Metal; });
}

/// Of a change to a denture that exists, only what is said to be used.
std::vector<NamedMaterial> materialsOf(const Prescription& prescription) {
    const bool isNew = isNewDenture(prescription);
    const Framework& framework = prescription.framework;
    const Base& base = prescription.base;
    const ArtificialTeeth& teeth = prescription.teeth;
    std::vector<NamedMaterial> materials;
    if ((isNew && !isInterim(prescription)) || framework.material)
        materials.push_back({"framework", words(framework.material), words(framework.making)});
    if ((isNew && (isInterim(prescription) || hasResinSaddle(prescription))) || base.resin)
        materials.push_back({"denture base", "resin", words(base.resin)});
    if ((isNew && !replacedTeeth(prescription).teeth().empty()) || teeth.material)
        materials.push_back({"teeth", words(teeth.material), teeth.mould});
    return materials;
}

WhereApplicable<std::vector<std::string>> claspsOf(const Prescription& prescription) {
    const Notation notation = notationOf(prescription);
    std::vector<std::string> said;
    for (const Clasp& clasp : prescription.clasps)
        said.push_back(nameOf(clasp.tooth, notation) + ": " + wordsOf(clasp.kind));
    if (!said.empty()) return said;
    if (isMetal(prescription) || !applianceOf(prescription)) return {};
    return NotApplicable{};
}

WhereApplicable<std::string> occlusionOf(const Prescription& prescription) {
    const Occlusion& occlusion = prescription.occlusion;
    if (occlusion.scheme) return wordsOf(*occlusion.scheme);
    const bool changesOne = applianceOf(prescription) && !isNewDenture(prescription);
    if (changesOne || occlusion.opposed == false) return NotApplicable{};
    return {};
}

}  // namespace

LegalFacts legalFactsOf(const Prescription& prescription, std::string laboratoryName,
                        std::string laboratoryAddress) {
    const Identity& identity = prescription.identity;
    return {.laboratoryName = std::move(laboratoryName),
            .laboratoryAddress = std::move(laboratoryAddress),
            .prescriberName = identity.prescriberName,
            .prescriberAddress = identity.prescriberAddress,
            .prescriberRegistration = identity.prescriberRegistration,
            .prescriberContact = identity.prescriberContact,
            .patient = isBlank(identity.patientReference) ? identity.patientName
                                                          : identity.patientReference,
            .issued = prescription.issued,
            .pieces = piecesOf(prescription),
            .materials = materialsOf(prescription),
            .clasps = claspsOf(prescription),
            .occlusion = occlusionOf(prescription),
            .signature = prescription.signature};
}

std::vector<Finding> lackingIn(const LegalFacts& facts) {
    return lackingBy<LegalFacts>(kRows, facts);
}

}  // namespace domain
