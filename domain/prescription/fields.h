/// The parts of a prescription, field by field, described once.
///
/// Whoever walks a prescription (the file reader and writer, the schema of the file, the intake
/// form) is a visitor with one member, `field(word, value)`, and calls describe(visitor, part).
/// The words are the keys of the prescription file and the labels of the form; they never change.
/// A field of type optional or vector may be left out; every other field must be given.
#pragma once

#include <concepts>
#include <type_traits>

#include "domain/prescription/prescription.h"

namespace domain {

/// A part by itself or as const, so that one description serves readers and writers.
template <typename T, typename Part>
concept Is = std::same_as<std::remove_const_t<T>, Part>;

/// A group of fields that always exists: in a file it may be left out, which means all open.
template <typename T>
concept FieldGroup = Is<T, FinishLines> || Is<T, ClaspArm> || Is<T, Framework> || Is<T, Base> ||
                     Is<T, ArtificialTeeth> || Is<T, Occlusion> || Is<T, Survey> ||
                     Is<T, Sensitivities> || Is<T, Identity>;

void describe(auto& visitor, Is<Identity> auto& part) {
    visitor.field("patient-reference", part.patientReference);
    visitor.field("patient-name", part.patientName);
    visitor.field("prescriber-name", part.prescriberName);
    visitor.field("prescriber-address", part.prescriberAddress);
    visitor.field("prescriber-contact", part.prescriberContact);
    visitor.field("prescriber-registration", part.prescriberRegistration);
    visitor.field("remarks", part.remarks);
}

void describe(auto& visitor, Is<Signature> auto& part) {
    visitor.field("kind", part.kind);
    visitor.field("seen-by", part.seenBy);
    visitor.field("date", part.date);
}

void describe(auto& visitor, Is<FinishLines> auto& part) {
    visitor.field("external", part.external);
    visitor.field("internal", part.internal);
    visitor.field("offset", part.offset);
}

void describe(auto& visitor, Is<Saddle> auto& part) {
    visitor.field("teeth", part.teeth);
    visitor.field("base", part.base);
    visitor.field("retention", part.retention);
    visitor.field("finish-lines", part.finishLines);
    visitor.field("tissue-stop", part.tissueStop);
}

void describe(auto& visitor, Is<Rest> auto& part) {
    visitor.field("tooth", part.tooth);
    visitor.field("kind", part.kind);
    visitor.field("side", part.side);
    visitor.field("seat-prepared", part.seatPrepared);
    visitor.field("seat-depth", part.seatDepth);
    visitor.field("clearance", part.clearance);
    visitor.field("floor-angle", part.floorAngle);
}

void describe(auto& visitor, Is<IndirectRetainer> auto& part) {
    visitor.field("tooth", part.tooth);
}

void describe(auto& visitor, Is<Undercut> auto& part) {
    visitor.field("place", part.place);
    visitor.field("depth", part.depth);
}

void describe(auto& visitor, Is<Reciprocation> auto& part) {
    visitor.field("kind", part.kind);
    visitor.field("face", part.face);
}

void describe(auto& visitor, Is<ClaspArm> auto& part) {
    visitor.field("section", part.section);
    visitor.field("width", part.width);
    visitor.field("tip", part.tip);
    visitor.field("length", part.length);
}

void describe(auto& visitor, Is<Clasp> auto& part) {
    visitor.field("tooth", part.tooth);
    visitor.field("kind", part.kind);
    visitor.field("retentive-arm", part.retentiveArm);
    visitor.field("undercut", part.undercut);
    visitor.field("material", part.material);
    visitor.field("reciprocation", part.reciprocation);
    visitor.field("arm", part.arm);
}

void describe(auto& visitor, Is<GuidePlate> auto& part) {
    visitor.field("tooth", part.tooth);
    visitor.field("face", part.face);
    visitor.field("plane-prepared", part.planePrepared);
    visitor.field("plane-height", part.planeHeight);
}

void describe(auto& visitor, Is<MajorConnector> auto& part) {
    visitor.field("kind", part.kind);
    visitor.field("width", part.width);
    visitor.field("gingival-clearance", part.gingivalClearance);
    visitor.field("opening", part.opening);
    visitor.field("beading", part.beading);
    visitor.field("relief", part.relief);
}

void describe(auto& visitor, Is<MinorConnector> auto& part) {
    visitor.field("tooth", part.tooth);
    visitor.field("side", part.side);
}

void describe(auto& visitor, Is<Framework> auto& part) {
    visitor.field("material", part.material);
    visitor.field("making", part.making);
    visitor.field("modulus", part.modulus);
    visitor.field("proof-strength", part.proofStrength);
    visitor.field("elongation", part.elongation);
    visitor.field("nickel", part.nickel);
    visitor.field("beryllium", part.beryllium);
    visitor.field("cadmium", part.cadmium);
}

void describe(auto& visitor, Is<Base> auto& part) {
    visitor.field("resin", part.resin);
    visitor.field("methacrylate-free", part.methacrylateFree);
    visitor.field("colour", part.colour);
}

void describe(auto& visitor, Is<ArtificialTeeth> auto& part) {
    visitor.field("material", part.material);
    visitor.field("mould", part.mould);
}

void describe(auto& visitor, Is<Shade> auto& part) {
    visitor.field("guide", part.guide);
    visitor.field("tab", part.tab);
    visitor.field("teeth", part.teeth);
    visitor.field("measured", part.measured);
}

void describe(auto& visitor, Is<Occlusion> auto& part) {
    visitor.field("scheme", part.scheme);
    visitor.field("jaw-relation", part.jawRelation);
    visitor.field("opposed", part.opposed);
}

void describe(auto& visitor, Is<AbutmentSurvey> auto& part) {
    visitor.field("tooth", part.tooth);
    visitor.field("height-of-contour", part.heightOfContour);
    visitor.field("undercuts", part.undercuts);
    visitor.field("tissue-undercut", part.tissueUndercut);
    visitor.field("high-frenum", part.highFrenum);
}

void describe(auto& visitor, Is<InsertionPath> auto& part) {
    visitor.field("tilt", part.tilt);
    visitor.field("towards", part.towards);
}

void describe(auto& visitor, Is<Survey> auto& part) {
    visitor.field("abutments", part.abutments);
    visitor.field("path", part.path);
    visitor.field("tripod-marked", part.tripodMarked);
    visitor.field("lingual-depth", part.lingualDepth);
    visitor.field("sulcus-depth", part.sulcusDepth);
    visitor.field("torus", part.torus);
    visitor.field("arch-width", part.archWidth);
    visitor.field("arch-depth", part.archDepth);
}

void describe(auto& visitor, Is<Disinfection> auto& part) {
    visitor.field("agent", part.agent);
    visitor.field("contact", part.contact);
}

void describe(auto& visitor, Is<Enclosure> auto& part) {
    visitor.field("kind", part.kind);
    visitor.field("disinfection", part.disinfection);
    visitor.field("identified", part.identified);
    visitor.field("sha256", part.sha256);
}

void describe(auto& visitor, Is<Sensitivities> auto& part) {
    visitor.field("none-known", part.noneKnown);
    visitor.field("known", part.known);
}

void describe(auto& visitor, Is<Remake> auto& part) { visitor.field("reason", part.reason); }

void describe(auto& visitor, Is<Prescription> auto& part) {
    visitor.field("identity", part.identity);
    visitor.field("issued", part.issued);
    visitor.field("needed", part.needed);
    visitor.field("signature", part.signature);
    visitor.field("appliance", part.appliance);
    visitor.field("remake", part.remake);
    visitor.field("altered-cast", part.alteredCast);
    visitor.field("arch", part.arch);
    visitor.field("notation", part.notation);
    visitor.field("stated-class", part.statedClass);
    visitor.field("stated-support", part.statedSupport);
    visitor.field("dentition", part.dentition);
    visitor.field("saddles", part.saddles);
    visitor.field("rests", part.rests);
    visitor.field("clasps", part.clasps);
    visitor.field("guide-plates", part.guidePlates);
    visitor.field("major-connector", part.majorConnector);
    visitor.field("minor-connectors", part.minorConnectors);
    visitor.field("indirect-retainers", part.indirectRetainers);
    visitor.field("framework", part.framework);
    visitor.field("base", part.base);
    visitor.field("teeth", part.teeth);
    visitor.field("shades", part.shades);
    visitor.field("occlusion", part.occlusion);
    visitor.field("survey", part.survey);
    visitor.field("enclosures", part.enclosures);
    visitor.field("sensitivities", part.sensitivities);
}

/// The dentition is charted by state: {"missing": ["14", "15"], "not-replaced": ["17"]}.
void describe(auto& visitor, Is<Dentition> auto& part) { visitor.chart(part); }

}  // namespace domain
