#include "domain/production/statement.h"

#include <algorithm>

#include "domain/design/design_view.h"

namespace domain {
namespace {

using Lacks = std::vector<std::string>;

/// Name and address of `whom`, as far as either lacks.
void addParty(Lacks& lacks, const Party& party, const std::string& whom) {
    if (isBlank(party.name)) lacks.push_back("no name of " + whom);
    if (isBlank(party.address)) lacks.push_back("no address of " + whom);
}

Lacks manufacturer(const Statement& statement) {
    Lacks lacks;
    addParty(lacks, statement.manufacturer, "the manufacturer");
    return lacks;
}

Lacks sites(const Statement& statement) {
    if (statement.sites.empty()) return {"no manufacturing site"};
    Lacks lacks;
    for (std::size_t at = 0; at < statement.sites.size(); ++at) {
        const std::string which = "manufacturing site " + std::to_string(at + 1);
        addParty(lacks, statement.sites[at].party, which);
        if (isBlank(statement.sites[at].work))
            lacks.push_back("not said what was done at " + which);
    }
    return lacks;
}

Lacks representative(const Statement& statement) {
    if (!statement.representative)
        return {"neither an authorised representative nor \"not applicable\""};
    Lacks lacks;
    if (const Party* party = givenIn(statement.representative))
        addParty(lacks, *party, "the authorised representative");
    return lacks;
}

Lacks device(const Statement& statement) {
    Lacks lacks;
    if (!statement.device) lacks.emplace_back("no order number");
    if (isBlank(statement.description)) lacks.emplace_back("no description of the device");
    return lacks;
}

Lacks patient(const Statement& statement) {
    Lacks lacks;
    if (isBlank(statement.patientReference))
        lacks.emplace_back("no name, acronym or code of the patient");
    if (!statement.exclusiveUse) lacks.emplace_back("not stated that it is for that patient alone");
    return lacks;
}

Lacks prescriber(const Statement& statement) {
    Lacks lacks;
    if (isBlank(statement.prescriber.name)) lacks.emplace_back("no name of the prescriber");
    if (isBlank(statement.prescriber.qualification))
        lacks.emplace_back("no qualification or registration of the prescriber");
    return lacks;
}

Lacks institution(const Statement& statement) {
    const auto& answer = statement.prescriber.institution;
    if (!answer) return {"neither a health institution nor \"not applicable\""};
    const std::string* name = givenIn(answer);
    if (name != nullptr && isBlank(*name)) return {"no name of the health institution"};
    return {};
}

bool isSha256(const std::string& digest) {
    constexpr std::size_t kDigits = 64;
    return digest.size() == kDigits &&
           digest.find_first_not_of("0123456789abcdef") == std::string::npos;
}

Lacks characteristics(const Statement& statement) {
    const StatedCharacteristics& given = statement.characteristics;
    Lacks lacks;
    if (std::ranges::all_of(given.lines, [](const std::string& line) { return isBlank(line); }))
        lacks.emplace_back("no characteristics of the prescription");
    if (given.revision < 1) lacks.emplace_back("no revision of the prescription");
    if (!isSha256(given.digest)) lacks.emplace_back("no digest of the prescription");
    return lacks;
}

Lacks conformity(const Statement& statement) {
    if (!statement.conformity) return {"no declaration of conformity to Annex I"};
    Lacks lacks;
    const auto& exceptions = statement.conformity->exceptions;
    for (std::size_t at = 0; at < exceptions.size(); ++at) {
        const std::string which = "exception " + std::to_string(at + 1);
        if (isBlank(exceptions[at].requirement))
            lacks.push_back(which + " does not say which requirement is not met");
        if (isBlank(exceptions[at].grounds)) lacks.push_back(which + " gives no grounds");
    }
    return lacks;
}

Lacks substances(const Statement& statement) {
    if (!statement.substances) return {"neither substances nor \"not applicable\""};
    const std::string* detail = givenIn(statement.substances);
    if (detail != nullptr && isBlank(*detail)) return {"answered yes, without saying which"};
    return {};
}

constexpr std::string_view kSource = "Regulation (EU) 2017/745, Annex XIII, 1";

constexpr RequiredRow<Statement> kRows[] = {
    {.id = "statement.manufacturer",
     .requirement = "The manufacturer is given by name and address.",
     .question = "Under which name and address does the laboratory make its devices?",
     .source = kSource,
     .lacks = manufacturer},
    {.id = "statement.sites",
     .requirement = "Every site that made part of the device is given by name, address and what "
                    "was done there.",
     .question = "Where was each part made, subcontractors included: name, address, and what was "
                 "done there?",
     .source = kSource,
     .lacks = sites},
    {.id = "statement.representative",
     .requirement = "The authorised representative is given by name and address, or said not to "
                    "apply.",
     .question = "Is there an authorised representative? If not, please say \"not applicable\".",
     .source = kSource,
     .lacks = representative},
    {.id = "statement.device",
     .requirement = "The device can be identified: by the number of its order and a description.",
     .question = "Which order is it, and what was made?",
     .source = kSource,
     .lacks = device},
    {.id = "statement.patient",
     .requirement = "The device is stated to be for the exclusive use of one patient, identified "
                    "by a name, an acronym or a code.",
     .question = "For which patient is it, and for that patient alone?",
     .source = kSource,
     .lacks = patient},
    {.id = "statement.prescriber",
     .requirement = "The person who made the prescription is given by name, with the "
                    "qualification that national law authorises.",
     .question = "Who prescribed it, and by which qualification or registration?",
     .source = kSource,
     .lacks = prescriber},
    {.id = "statement.institution",
     .requirement = "The health institution of the prescriber is named, or said not to apply.",
     .question = "Does the prescriber act for a health institution: which one? If for none, please "
                 "say \"not applicable\".",
     .source = kSource,
     .lacks = institution},
    {.id = "statement.characteristics",
     .requirement = "The characteristics are those of the prescription, of a revision that is "
                    "named and sealed by its digest.",
     .question = "From which revision of the prescription are the characteristics taken?",
     .source = kSource,
     .lacks = characteristics},
    {.id = "statement.conformity",
     .requirement = "Conformity to the general safety and performance requirements of Annex I is "
                    "declared; each that is not fully met is named, with the grounds.",
     .question = "Does the device meet every requirement of Annex I? Which are not fully met, and "
                 "why?",
     .source = kSource,
     .lacks = conformity},
    {.id = "statement.substances",
     .requirement = "It is said whether the device contains a medicinal substance, or tissue or "
                    "cells of human or animal origin, and which.",
     .question = "Does it contain a medicinal substance, or tissue or cells of human or animal "
                 "origin? If none, please say so.",
     .source = kSource,
     .lacks = substances},
};

}  // namespace

std::vector<Finding> lackingIn(const Statement& statement) {
    return lackingBy<Statement>(kRows, statement);
}

}  // namespace domain
