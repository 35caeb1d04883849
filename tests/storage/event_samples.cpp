#include "tests/storage/event_samples.h"

#include "tests/storage/records.h"
#include "tests/support/designs.h"
#include "tests/support/floor.h"

namespace support {
namespace {

using namespace domain;

const SealedText kSealed{"T000001", std::string(64, 'a')};

/// What the rules found in it on the day the samples were made; they have changed since.
std::vector<Finding> findingsOfThatDay() {
    return {
        {.rule = "admin.prescriber",
         .severity = Severity::Missing,
         .tooth = {},
         .found = "no contact of the prescriber",
         .requirement = "The prescriber is given by name, address and contact.",
         .question =
             "Please give your name, the address of the practice, and how we can reach you.",
         .source = "Regulation (EU) 2017/745, Annex XIII section 1; Montana Code 37-4-501; Maine "
                   "Title 32 section 1090; South Carolina R.39-8(A)"},
        {.rule = "admin.registration",
         .severity = Severity::Missing,
         .tooth = {},
         .found = "no licence or registration number",
         .requirement = "The licence or registration number of the prescriber is given.",
         .question = "Please give your licence or registration number.",
         .source =
             "Florida Statutes 466.021; Maine Title 32 section 1090; South Carolina R.39-8(A)(2)"},
        {.rule = "admin.date-issued",
         .severity = Severity::Missing,
         .tooth = {},
         .found = "no date",
         .requirement = "The prescription is dated, not later than the day it is received.",
         .question = "On which day did you issue this prescription?",
         .source =
             "Montana Code 37-4-501; West Virginia Code 30-4B-2(b)(5); Florida Statutes 466.021"},
        {.rule = "admin.signature",
         .severity = Severity::Missing,
         .tooth = {},
         .found = "no signature",
         .requirement = "The prescription is signed: on paper, seen by a person of the laboratory "
                        "who is named, or electronically.",
         .question = "Please sign the prescription.",
         .source = "Florida Administrative Code 64B5-17.006; Montana Code 37-4-501; South Carolina "
                   "R.39-8(A)(5)"},
        {.rule = "admin.description",
         .severity = Severity::Missing,
         .tooth = {},
         .found = "the kind of work is not said",
         .requirement = "The work is described: a new framework denture, an interim denture, a "
                        "repair, an addition or a reline, and of what.",
         .question = "What are we to make: a framework denture, an interim denture, a repair, an "
                     "addition or a reline? If a repair or an addition: of what?",
         .source = "Florida Statutes 466.021: sufficient to identify each separate piece; South "
                   "Carolina R.39-8(A)(4)"},
        {.rule = "enclosure.working",
         .severity = Severity::Missing,
         .tooth = {},
         .found = "no cast, impression or scan of the lower arch",
         .requirement = "A cast, an impression or a scan of the working arch came; for work on a "
                        "denture that exists, the denture will do.",
         .question =
             "Please send a master cast, an impression or a scan of the arch to be treated.",
         .source = "common practice, no source"},
        {.rule = "sensitivity.stated",
         .severity = Severity::Missing,
         .tooth = {},
         .found = "neither a sensitivity nor \"none known\"",
         .requirement = "Known sensitivities of the patient are stated, \"none known\" included.",
         .question = "Is the patient sensitive to nickel, cobalt, chromium, methacrylate or latex? "
                     "If none is known, please say so.",
         .source = "Regulation (EU) 2017/745, Annex I, section 10; that it is asked each time is "
                   "common practice, no source"},
    };
}

Revision revisionOf(const Prescription& prescription, std::vector<Finding> findings) {
    return {withoutIdentity(prescription), {"P00001", "D00001", kSealed}, std::move(findings)};
}

Event eventOf(Happening what) {
    return {.order = orderNumber(1),
            .version = 3,
            .at = minute(5),
            .person = person("MK"),
            .key = "clé-7",
            .what = std::move(what)};
}

Event atStation(Event event) {
    event.station = "WAX-2";
    return event;
}

WorkshopEvent eventOf(const Subject& subject, WorkshopHappening what) {
    return {.subject = subject,
            .version = 7,
            .at = minute(3),
            .person = person("MK"),
            .key = "clé-9",
            .what = std::move(what)};
}

Lot describedLot() {
    return {.kind = LotKind::Alloy,
            .maker = "Südmeer Materials",
            .product = "stock alloy",
            .makersNumber = "N-1",
            .udi = "(01)00000000000000(10)N-1",
            .expiry = Date::parse("2027-12-31"),
            .certificate = {.material = FrameworkMaterial::CobaltChromium,
                            .type = AlloyType::Type5,
                            .proofStrength = 500_MPa,
                            .modulus = 220_GPa,
                            .elongation = 40'000_ppm,
                            .nickel = 0_ppm,
                            .beryllium = 0_ppm,
                            .cadmium = 0_ppm,
                            .resin = BaseResin::HeatCured,
                            .methacrylateFree = false},
            .amount = 1'000'000};
}

}  // namespace

std::vector<StageRecord> everyRecord() {
    const ThingCode code = thing("AL-204");
    return {Ticked{"seats fully"},
            UndercutMeasured{14_fdi, 250_um},
            TripodMarked{},
            LotUsed{code, LotKind::Alloy, 23'400},
            NewMetal{500'000_ppm},
            CastWeighed{18'400_mg},
            TeethSet{"M-12", "A-D scale", "A3"},
            CureLogged{"long-74", std::string(64, 'b'), true},
            Disinfected{{"sodium hypochlorite 0.5 %", 10_min}},
            EquipmentUsed{code, EquipmentKind::Caster, kSealed},
            BenchValue{"alloy charge", "42.3 g"},
            StatementIssued{kSealed}};
}

std::vector<Event> orderSamples() {
    const Revision small = revisionOf(smallPrescription(), findingsOfThatDay());
    return {
        eventOf(Received{small}),
        eventOf(Accepted{Route::CastFramework, {}, {}}),
        eventOf(Accepted{Route::Reline, {"clasp.rest", "shade.given"}, kSealed}),
        eventOf(StageStarted{Stage::WaxUp}),
        eventOf(StageDone{Stage::Delivery}),
        eventOf(Flagged{FlagReason::Other, {}}),
        eventOf(Flagged{FlagReason::CastDamaged, kSealed}),
        eventOf(Answered{kSealed, {}}),
        eventOf(Answered{{}, small}),
        eventOf(Routed{shippedPlan(Route::Repair, Arch::Lower)}),
        eventOf(Recorded{Stage::Casting, everyRecord()}),
        eventOf(Returned{Stage::ToothTryIn, ReturnVerdict::GoOn, {}, {}, {"agent", 10_min}}),
        eventOf(Returned{
            Stage::ToothTryIn, ReturnVerdict::GoBack, Stage::ToothSetUp, kSealed, {"a", 1_min}}),
        eventOf(Redone{RedoReason::Other, Stage::WaxUp, Stage::Survey, kSealed}),
        eventOf(RemakeOrdered{orderNumber(2), RemakeReason::Lost, {}, {}}),
        eventOf(RemakeOrdered{orderNumber(2), RemakeReason::Lost, Stage::Casting, kSealed}),
        eventOf(RemakeBegun{orderNumber(2)}),
        eventOf(CaseJoined{orderNumber(2)}),
        eventOf(WorkSent{Stage::Casting, thing("CAST-SHOP")}),
        eventOf(WorkBack{Stage::Casting, false, kSealed}),
        eventOf(Withdrawn{kSealed}),
        eventOf(Purged{}),
        atStation(eventOf(StageStarted{Stage::WaxUp})),
        eventOf(Received{revisionOf(upperClassIIIMod1(), {})}),
        eventOf(CaseJoined{orderNumber(2), std::vector<Finding>{}})};
}

std::vector<WorkshopEvent> workshopSamples() {
    const Subject who{SubjectKind::Person, "TE"};
    const Subject lot{SubjectKind::Lot, "AL-204"};
    const Subject tool{SubjectKind::Equipment, "caster-1"};
    return {eventOf(who, PersonEntered{Role::Technician, {Skill::Casting, Skill::Waxing}}),
            eventOf(who, PersonEntered{Role::Viewer, {}}),
            eventOf(who, PersonLeft{}),
            eventOf(who, CredentialGiven{Credential::Badge}),
            eventOf(who, CredentialTaken{Credential::Password}),
            eventOf({SubjectKind::Access, "TE"}, AccessRefused{"keep-lots", "a viewer may not"}),
            eventOf({SubjectKind::Station, "B-1"}, StationEntered{StationKind::WaxBench}),
            eventOf(tool, EquipmentEntered{{EquipmentKind::Caster, "S-1", {}}}),
            eventOf(tool, EquipmentEntered{{EquipmentKind::Caster, "S-1", floorDay()}}),
            eventOf(tool, Calibrated{floorDay()}),
            eventOf({SubjectKind::Site, "CAST"}, SiteEntered{{"Casting Shop", "2 Harbour", "R-1"}}),
            eventOf(lot, LotReceived{describedLot()}),
            eventOf(lot, LotReceived{{.kind = LotKind::Teeth, .maker = "Southmere"}}),
            eventOf(lot, LotHeld{sealedWords()}),
            eventOf(lot, LotReleased{}),
            eventOf({SubjectKind::Route, "reline-upper"},
                    RouteSet{shippedPlan(Route::Reline, Arch::Upper)})};
}

std::vector<WorkshopEvent> laterWorkshopSamples() {
    const Subject who{SubjectKind::Person, "TE"};
    const std::string digest(64, 'c');
    const ShadeGuide guide{.name = "house scale",
                           .source = "entered by the laboratory",
                           .tabs = {{"A1", LabColour::parse(kLabExample)}, {"A2", {}}}};
    const SettingSet key{.name = "access.badge-key", .before = {}, .now = digest, .isSecret = true};
    return {eventOf({SubjectKind::Clock, "machine"}, ClockMarked{ClockFault::Behind, minute(7)}),
            eventOf({SubjectKind::Clock, "machine"}, DateConfirmed{floorDay()}),
            eventOf(who, CredentialGiven{Credential::Password, digest}),
            eventOf({SubjectKind::Setting, "laboratory"},
                    SettingSet{.name = "laboratory.name", .before = {}, .now = "Südmeer"}),
            eventOf({SubjectKind::Setting, "laboratory"},
                    SettingSet{.name = "laboratory.name", .before = "Südmeer", .now = ""}),
            eventOf({SubjectKind::Setting, "access"}, key),
            eventOf({SubjectKind::Guide, "shades"}, GuideEntered{guide}),
            eventOf(who, CredentialKept{Credential::Badge, digest}),
            eventOf({SubjectKind::Records, "tables"}, TakenOver{}),
            eventOf({SubjectKind::Records, "tables"},
                    TakenOver{.settings = {key},
                              .guides = {guide},
                              .credentials = {{"TE", Credential::Password, digest}},
                              .texts = {kSealed}}),
            eventOf(who, CredentialGiven{Credential::Password, digest, GivenBy::RecoveryCode})};
}

std::vector<AccessEntry> accessSamples() {
    const std::string digest(64, 'd');
    const auto entryOf = [](AccessHappening what) {
        return AccessEntry{.at = minute(3), .person = person("MK"), .what = std::move(what)};
    };
    AccessEntry atStation = entryOf(SignedIn{digest});
    atStation.station = "WAX-2";
    return {entryOf(SignedIn{digest}),
            atStation,
            entryOf(SignedOut{digest, SignOutReason::Rested}),
            entryOf(SessionFound{digest, 17, {}}),
            entryOf(SessionFound{digest, 17, 18}),
            entryOf(AttemptsCounted{}),
            entryOf(AttemptsCounted{5, 19}),
            entryOf(AccessDenied{"keep-lots", "a viewer may not"}),
            entryOf(IdentityViewed{"26000001"}),
            entryOf(PaperPrinted{"26000001", 2, "ticket", digest}),
            entryOf(Exported{"backup", digest}),
            entryOf(PaperPrinted{"26000001", 2, "ticket", digest, "26000001-ticket-r2.pdf"})};
}

Event keptSample() {
    Revision revision = revisionOf(smallPrescription(), findingsOfThatDay());
    revision.findings.resize(1);
    revision.findings.front().kept =
        KeptAsPrescribed{kSealed, person("MK"), *Date::parse("2026-12-01")};
    return eventOf(Answered{{}, std::move(revision)});
}

}  // namespace support
