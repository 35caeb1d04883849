/// What the ledger stores of every part of an event: the frozen description of the stored bytes.
///
/// It stands apart from the order of any form and of any struct. Formats 1 to 3 hold the fields in
/// the order of the lines here, without their words; format 4 holds each under its word, whatever
/// the order. So: never reword, remove or reorder a line. A new field goes to the end of its part
/// as `coder.added(word, part.member)`, must be optional or a list, and needs no new format.
#pragma once

#include "domain/prescription/fields.h"
#include "domain/production/event.h"
#include "domain/workshop/workshop_event.h"

namespace storage {

void fields(auto& coder, domain::Is<domain::SealedText> auto& part) {
    coder.field("code", part.code);
    coder.field("digest", part.digest);
}
void fields(auto& coder, domain::Is<domain::Parties> auto& part) {
    coder.field("patient", part.patient);
    coder.field("prescriber", part.prescriber);
    coder.field("identity", part.identity);
}
void fields(auto& coder, domain::Is<domain::KeptAsPrescribed> auto& part) {
    coder.field("words", part.words);
    coder.field("recorded-by", part.recordedBy);
    coder.field("day", part.day);
}
void fields(auto& coder, domain::Is<domain::Finding> auto& part) {
    coder.field("rule", part.rule);
    coder.field("severity", part.severity);
    coder.field("tooth", part.tooth);
    coder.field("found", part.found);
    coder.field("requirement", part.requirement);
    coder.field("question", part.question);
    coder.field("source", part.source);
    coder.added("kept", part.kept);
}
void fields(auto& coder, domain::Is<domain::Revision> auto& part) {
    coder.field("parties", part.parties);
    coder.field("findings", part.findings);
    coder.field("prescription", part.prescription);
}
void fields(auto& coder, domain::Is<domain::Received> auto& part) {
    coder.field("revision", part.revision);
}
void fields(auto& coder, domain::Is<domain::Accepted> auto& part) {
    coder.field("route", part.route);
    coder.field("cautions", part.cautions);
    coder.field("reason", part.reason);
}
void fields(auto& coder, domain::Is<domain::StageStarted> auto& part) {
    coder.field("stage", part.stage);
}
void fields(auto& coder, domain::Is<domain::StageDone> auto& part) {
    coder.field("stage", part.stage);
}
void fields(auto& coder, domain::Is<domain::Flagged> auto& part) {
    coder.field("reason", part.reason);
    coder.field("note", part.note);
}
void fields(auto& coder, domain::Is<domain::Answered> auto& part) {
    coder.field("words", part.words);
    coder.field("revision", part.revision);
}

void fields(auto& coder, domain::Is<domain::StagePlan> auto& part) {
    coder.field("stage", part.stage);
    coder.field("skill", part.skill);
    coder.field("station", part.station);
    coder.field("usual", part.usual);
    coder.field("checklist", part.checklist);
    coder.field("demands", part.demands);
    coder.field("fall-back", part.fallBack);
}
void fields(auto& coder, domain::Is<domain::RoutePlan> auto& part) {
    coder.field("route", part.route);
    coder.field("arch", part.arch);
    coder.field("version", part.version);
    coder.field("stages", part.stages);
}
void fields(auto& coder, domain::Is<domain::Disinfection> auto& part) {
    coder.field("agent", part.agent);
    coder.field("contact", part.contact);
}
void fields(auto& coder, domain::Is<domain::Ticked> auto& part) { coder.field("item", part.item); }
void fields(auto& coder, domain::Is<domain::UndercutMeasured> auto& part) {
    coder.field("tooth", part.tooth);
    coder.field("depth", part.depth);
}
void fields(auto&, domain::Is<domain::TripodMarked> auto&) {}
void fields(auto& coder, domain::Is<domain::LotUsed> auto& part) {
    coder.field("lot", part.lot);
    coder.field("kind", part.kind);
    coder.field("amount", part.amount);
}
void fields(auto& coder, domain::Is<domain::NewMetal> auto& part) {
    coder.field("share", part.share);
}
void fields(auto& coder, domain::Is<domain::CastWeighed> auto& part) {
    coder.field("mass", part.mass);
}
void fields(auto& coder, domain::Is<domain::TeethSet> auto& part) {
    coder.field("mould", part.mould);
    coder.field("guide", part.guide);
    coder.field("tab", part.tab);
}
void fields(auto& coder, domain::Is<domain::CureLogged> auto& part) {
    coder.field("cycle", part.cycle);
    coder.field("sha256", part.sha256);
    coder.field("kept", part.kept);
}
void fields(auto& coder, domain::Is<domain::Disinfected> auto& part) {
    coder.field("disinfection", part.disinfection);
}
void fields(auto& coder, domain::Is<domain::EquipmentUsed> auto& part) {
    coder.field("equipment", part.equipment);
    coder.field("kind", part.kind);
    coder.field("responsibility", part.responsibility);
}
void fields(auto& coder, domain::Is<domain::BenchValue> auto& part) {
    coder.field("what", part.what);
    coder.field("value", part.value);
}
void fields(auto& coder, domain::Is<domain::StatementIssued> auto& part) {
    coder.field("statement", part.statement);
}

void fields(auto& coder, domain::Is<domain::Routed> auto& part) { coder.field("plan", part.plan); }
void fields(auto& coder, domain::Is<domain::Recorded> auto& part) {
    coder.field("stage", part.stage);
    coder.field("records", part.records);
}
void fields(auto& coder, domain::Is<domain::Returned> auto& part) {
    coder.field("stage", part.stage);
    coder.field("verdict", part.verdict);
    coder.field("back-to", part.backTo);
    coder.field("findings", part.findings);
    coder.field("disinfection", part.disinfection);
}
void fields(auto& coder, domain::Is<domain::Redone> auto& part) {
    coder.field("reason", part.reason);
    coder.field("from", part.from);
    coder.field("fault", part.fault);
    coder.field("note", part.note);
}
void fields(auto& coder, domain::Is<domain::RemakeOrdered> auto& part) {
    coder.field("replacement", part.replacement);
    coder.field("reason", part.reason);
    coder.field("fault", part.fault);
    coder.field("note", part.note);
}
void fields(auto& coder, domain::Is<domain::RemakeBegun> auto& part) {
    coder.field("first", part.first);
}
void fields(auto& coder, domain::Is<domain::CaseJoined> auto& part) {
    coder.field("leader", part.leader);
    coder.field("findings", part.findings);
}
void fields(auto& coder, domain::Is<domain::WorkSent> auto& part) {
    coder.field("stage", part.stage);
    coder.field("site", part.site);
}
void fields(auto& coder, domain::Is<domain::WorkBack> auto& part) {
    coder.field("stage", part.stage);
    coder.field("passed", part.passed);
    coder.field("note", part.note);
}
void fields(auto& coder, domain::Is<domain::Withdrawn> auto& part) {
    coder.field("reason", part.reason);
}
void fields(auto&, domain::Is<domain::Purged> auto&) {}

void fields(auto& coder, domain::Is<domain::PersonEntered> auto& part) {
    coder.field("role", part.role);
    coder.field("skills", part.skills);
}
void fields(auto&, domain::Is<domain::PersonLeft> auto&) {}
void fields(auto& coder, domain::Is<domain::CredentialGiven> auto& part) {
    coder.field("credential", part.credential);
    coder.added("digest", part.digest);
    coder.added("by", part.by);
}
void fields(auto& coder, domain::Is<domain::CredentialTaken> auto& part) {
    coder.field("credential", part.credential);
}
void fields(auto& coder, domain::Is<domain::AccessRefused> auto& part) {
    coder.field("command", part.command);
    coder.field("why", part.why);
}
void fields(auto& coder, domain::Is<domain::StationEntered> auto& part) {
    coder.field("kind", part.kind);
}
void fields(auto& coder, domain::Is<domain::Equipment> auto& part) {
    coder.field("kind", part.kind);
    coder.field("serial", part.serial);
    coder.field("calibration-due", part.calibrationDue);
}
void fields(auto& coder, domain::Is<domain::EquipmentEntered> auto& part) {
    coder.field("equipment", part.equipment);
}
void fields(auto& coder, domain::Is<domain::Calibrated> auto& part) {
    coder.field("due", part.due);
}
void fields(auto& coder, domain::Is<domain::Site> auto& part) {
    coder.field("name", part.name);
    coder.field("address", part.address);
    coder.field("registration", part.registration);
}
void fields(auto& coder, domain::Is<domain::SiteEntered> auto& part) {
    coder.field("site", part.site);
}
void fields(auto& coder, domain::Is<domain::Certificate> auto& part) {
    coder.field("material", part.material);
    coder.field("type", part.type);
    coder.field("proof-strength", part.proofStrength);
    coder.field("modulus", part.modulus);
    coder.field("elongation", part.elongation);
    coder.field("nickel", part.nickel);
    coder.field("beryllium", part.beryllium);
    coder.field("cadmium", part.cadmium);
    coder.field("resin", part.resin);
    coder.field("methacrylate-free", part.methacrylateFree);
}
void fields(auto& coder, domain::Is<domain::Lot> auto& part) {
    coder.field("kind", part.kind);
    coder.field("maker", part.maker);
    coder.field("product", part.product);
    coder.field("makers-number", part.makersNumber);
    coder.field("udi", part.udi);
    coder.field("expiry", part.expiry);
    coder.field("certificate", part.certificate);
    coder.field("amount", part.amount);
}
void fields(auto& coder, domain::Is<domain::LotReceived> auto& part) {
    coder.field("lot", part.lot);
}
void fields(auto& coder, domain::Is<domain::LotHeld> auto& part) {
    coder.field("reason", part.reason);
}
void fields(auto& coder, domain::Is<domain::LotReleased> auto& part) {
    coder.field("reason", part.reason);
}
void fields(auto& coder, domain::Is<domain::RouteSet> auto& part) {
    coder.field("plan", part.plan);
}
void fields(auto& coder, domain::Is<domain::ClockMarked> auto& part) {
    coder.field("fault", part.fault);
    coder.field("before", part.before);
}
void fields(auto& coder, domain::Is<domain::DateConfirmed> auto& part) {
    coder.field("day", part.day);
}
void fields(auto& coder, domain::Is<domain::SettingSet> auto& part) {
    coder.field("name", part.name);
    coder.field("before", part.before);
    coder.field("now", part.now);
    coder.field("secret", part.isSecret);
}
void fields(auto& coder, domain::Is<domain::ShadeTab> auto& part) {
    coder.field("name", part.name);
    coder.field("colour", part.colour);
}
void fields(auto& coder, domain::Is<domain::ShadeGuide> auto& part) {
    coder.field("name", part.name);
    coder.field("source", part.source);
    coder.field("tabs", part.tabs);
}
void fields(auto& coder, domain::Is<domain::GuideEntered> auto& part) {
    coder.field("guide", part.guide);
}
void fields(auto& coder, domain::Is<domain::CredentialKept> auto& part) {
    coder.field("credential", part.credential);
    coder.field("digest", part.digest);
}
void fields(auto& coder, domain::Is<domain::FoundCredential> auto& part) {
    coder.field("person", part.person);
    coder.field("credential", part.credential);
    coder.field("digest", part.digest);
}
void fields(auto& coder, domain::Is<domain::TakenOver> auto& part) {
    coder.field("settings", part.settings);
    coder.field("guides", part.guides);
    coder.field("credentials", part.credentials);
    coder.field("texts", part.texts);
}

}  // namespace storage
