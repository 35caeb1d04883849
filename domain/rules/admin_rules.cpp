#include "domain/design/design_view.h"
#include "domain/rules/rule.h"
#include "domain/rules/sources.h"

namespace domain {

namespace {

void prescriberIsNamed(const Examination& examination, Findings& findings) {
    const Identity& identity = examination.prescription.identity;
    if (isBlank(identity.prescriberName)) findings.add("no name of the prescriber");
    if (isBlank(identity.prescriberAddress)) findings.add("no address of the prescriber");
    if (isBlank(identity.prescriberContact)) findings.add("no contact of the prescriber");
}

void prescriberIsRegistered(const Examination& examination, Findings& findings) {
    if (isBlank(examination.prescription.identity.prescriberRegistration))
        findings.add("no licence or registration number");
}

void patientIsNamed(const Examination& examination, Findings& findings) {
    const Identity& identity = examination.prescription.identity;
    if (isBlank(identity.patientReference) && isBlank(identity.patientName))
        findings.add("neither a name nor a code of the patient");
}

void isDated(const Examination& examination, Findings& findings) {
    const auto& issued = examination.prescription.issued;
    if (!issued) return findings.add("no date");
    if (*issued > examination.today)
        findings.contradict("dated " + issued->text() + ", after " + examination.today.text());
}

void dayNeededIsGiven(const Examination& examination, Findings& findings) {
    const auto& needed = examination.prescription.needed;
    const auto& issued = examination.prescription.issued;
    if (!needed) return findings.add("no day on which it is needed");
    // A change of a denture that exists may be made while the patient waits.
    const Date least =
        isNewDenture(examination.prescription) ? examination.today.plusDays(1) : examination.today;
    if (*needed < least)
        findings.contradict("needed on " + needed->text() + ", and today is " +
                            examination.today.text());
    else if (issued && *needed < *issued)
        findings.contradict("needed on " + needed->text() + ", issued on " + issued->text());
}

void isSigned(const Examination& examination, Findings& findings) {
    const auto& signature = examination.prescription.signature;
    if (!signature) return findings.add("no signature");
    if (signature->date && *signature->date > examination.today)
        findings.contradict("signed on " + signature->date->text() + ", after " +
                            examination.today.text());
    if (signature->kind == SignatureKind::OnPaper && isBlank(signature->seenBy))
        findings.add("signed on paper; nobody here is named who saw it");
}

void workIsDescribed(const Examination& examination, Findings& findings) {
    const Prescription& prescription = examination.prescription;
    if (!prescription.appliance) return findings.add("the kind of work is not said");
    const bool changesOne = *prescription.appliance == Appliance::Repair ||
                            *prescription.appliance == Appliance::Addition;
    const bool named = !prescription.saddles.empty() || !prescription.clasps.empty() ||
                       !prescription.rests.empty() || !isBlank(prescription.identity.remarks);
    if (changesOne && !named) findings.add("what is to be repaired or added is not said");
}

/// Working days between today, not counted, and the day it is needed.
Days workingDays(Date today, Date needed) {
    std::int64_t count = 0;
    for (Date day = today.plusDays(1); day <= needed; day = day.plusDays(1))
        if (day.isWeekday()) ++count;
    return Days::of(count);
}

Days usualTime(Appliance appliance, const HouseLimits& limits) {
    switch (appliance) {
        case Appliance::MetalFramework:
            return limits.frameworkTime;
        case Appliance::InterimResin:
            return limits.interimTime;
        case Appliance::Repair:
        case Appliance::Addition:
        case Appliance::Reline:
            return limits.changeTime;
    }
    return {};
}

void dayNeededCanBeKept(const Examination& examination, Findings& findings) {
    const auto& needed = examination.prescription.needed;
    const auto appliance = applianceOf(examination.prescription);
    // A day that is past is for admin.date-needed to say; one a year ahead is time enough.
    if (!appliance || !needed || *needed <= examination.today ||
        *needed > examination.today.plusDays(DayUnit::kMost))
        return;
    const Days given = workingDays(examination.today, *needed);
    const Days usual = usualTime(*appliance, examination.limits);
    if (given < usual)
        findings.add("needed on " + needed->text() + ", in " + std::to_string(given.count()) +
                     " working days; this laboratory takes " + std::to_string(usual.count()));
}

void remakeSaysWhy(const Examination& examination, Findings& findings) {
    const auto& remake = examination.prescription.remake;
    if (remake && !remake->reason) findings.add("made again, and not said why");
}

constexpr Rule kRules[] = {
    {.id = "admin.prescriber",
     .severity = Severity::Missing,
     .ground = Ground::Law,
     .requirement = "The prescriber is given by name, address and contact.",
     .question = "Please give your name, the address of the practice, and how we can reach you.",
     .source = source::kMdr,
     .check = prescriberIsNamed},
    {.id = "admin.registration",
     .severity = Severity::Caution,
     .ground = Ground::Law,
     .requirement = "The licence or registration number of the prescriber is given.",
     .question = "Please give your licence or registration number.",
     .source =
         "Florida Statutes 466.021; Maine Title 32 section 1090; South Carolina R.39-8(A)(2): "
         "asked where such a law holds; Regulation (EU) 2017/745, Annex XIII does not ask it",
     .check = prescriberIsRegistered},
    {.id = "admin.patient-reference",
     .severity = Severity::Missing,
     .ground = Ground::Law,
     .requirement = "The patient is given by name, acronym or code.",
     .question = "For which patient is this? A name, an acronym or a code will do.",
     .source = "Regulation (EU) 2017/745, Annex XIII section 1: by name, an acronym or a numerical "
               "code; Montana Code 37-4-501",
     .check = patientIsNamed},
    {.id = "admin.date-issued",
     .severity = Severity::Missing,
     .ground = Ground::Law,
     .requirement = "The prescription is dated, not later than the day it is received.",
     .question = "On which day did you issue this prescription?",
     .source = "Montana Code 37-4-501; West Virginia Code 30-4B-2(b)(5); Florida Statutes 466.021",
     .check = isDated},
    {.id = "admin.date-needed",
     .severity = Severity::Caution,
     .ground = Ground::Definition,
     .requirement = "The day the work is needed is given and has not passed; a new denture is not "
                    "needed on the day it is ordered.",
     .question = "On which day do you need the work back?",
     .source =
         "teaching notes after McCracken's Removable Partial Prosthodontics: the desired "
         "completion date is one of the items of a work authorisation; secondary source; that "
         "it cannot have passed, by definition",
     .check = dayNeededIsGiven},
    {.id = "admin.signature",
     .severity = Severity::Missing,
     .ground = Ground::Law,
     .requirement = "The prescription is signed: on paper, seen by a person of the laboratory who "
                    "is named, or electronically.",
     .question = "Please sign the prescription.",
     .source = "Florida Administrative Code 64B5-17.006; Montana Code 37-4-501; South Carolina "
               "R.39-8(A)(5)",
     .check = isSigned},
    {.id = "admin.description",
     .severity = Severity::Missing,
     .ground = Ground::Law,
     .requirement = "The work is described: a new framework denture, an interim denture, a repair, "
                    "an addition or a reline, and of what.",
     .question = "What are we to make: a framework denture, an interim denture, a repair, an "
                 "addition or a reline? If a repair or an addition: of what?",
     .source = "Florida Statutes 466.021: sufficient to identify each separate piece; South "
               "Carolina R.39-8(A)(4)",
     .check = workIsDescribed},
    {.id = "admin.date-achievable",
     .severity = Severity::Caution,
     .ground = Ground::School,
     .requirement = "Between receipt and the day it is needed lie as many working days as the "
                    "laboratory takes.",
     .question = "We usually take longer than this. May it be later, or on which day can we bring "
                 "the next try-in?",
     .source = "receipt day not counted: University of Maryland, laboratory schedule; published "
               "schedules of laboratories, 10 to 25 working days for a cast denture; settings of "
               "the laboratory, 10 for a framework, 5 for an interim denture, 1 for a change",
     .check = dayNeededCanBeKept},
    {.id = "remake.reason",
     .severity = Severity::Caution,
     .ground = Ground::Practice,
     .requirement = "Where a denture is made again, it is said why.",
     .question = "Why is this denture made again: does it not fit, did it fracture, was the "
                 "design, the shade or the occlusion wrong, or was it lost?",
     .source = "common practice, no source",
     .check = remakeSaysWhy},
};

}  // namespace

std::span<const Rule> adminRules() { return kRules; }

}  // namespace domain
