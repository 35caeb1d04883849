#include "tests/storage/event_samples.h"

#include "domain/rules/examine.h"
#include "tests/storage/records.h"
#include "tests/support/designs.h"
#include "tests/support/floor.h"

namespace support {
namespace {

using namespace domain;

const SealedText kSealed{"T000001", std::string(64, 'a')};

Revision revisionOf(const Prescription& prescription) {
    return {withoutIdentity(prescription),
            {"P00001", "D00001", kSealed},
            examine(prescription, examinationDay())};
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
    const Revision small = revisionOf(smallPrescription());
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
        eventOf(Received{revisionOf(upperClassIIIMod1())}),
        eventOf(CaseJoined{orderNumber(2), revisionOf(lowerClassI()).findings})};
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

}  // namespace support
