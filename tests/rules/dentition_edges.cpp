#include "tests/rules/edges.h"

namespace edges {

using namespace domain;
using namespace support;
using rule_cases::on;
using rule_cases::remove;
using P = Prescription;

namespace {

/// 16 of the upper arch alone is replaced, beside a standing 15 and 17.
P upperMolar() {
    P p = upperClassIIIMod1();
    p.saddles.pop_back();
    p.saddles.front().teeth = {16_fdi};
    chart(p, {14_fdi, 15_fdi, 24_fdi, 25_fdi, 26_fdi}, ToothState::Present);
    chart(p, {16_fdi}, ToothState::Missing);
    return p;
}

constexpr Edge kEdges[] = {
    {"dentition.notation", "a third molar charted", upperClassIIIMod1,
     [](P& p) {
         p = P{};
         chart(p, {18_fdi}, ToothState::Present);
     },
     1},
    {"dentition.notation", "a tooth of the opposing arch charted", upperClassIIIMod1,
     [](P& p) {
         p = P{};
         chart(p, {31_fdi}, ToothState::Missing);
     },
     1},
    {"dentition.partial", "only a bridge remains", interimUpper,
     [](P& p) {
         for (int position = 0; position < kTeethInArch; ++position)
             p.dentition.set(Tooth::at(Arch::Upper, position), ToothState::Missing);
         p.dentition.set(27_fdi, ToothState::Bridged);
     },
     0},
    {"dentition.partial", "only a third molar at the right end remains", interimUpper,
     [](P& p) {
         for (int position = 0; position < kTeethInArch; ++position)
             p.dentition.set(Tooth::at(Arch::Upper, position), ToothState::Missing);
         p.dentition.set(18_fdi, ToothState::Present);
     },
     0},
    {"dentition.partial", "only a third molar at the left end remains", interimUpper,
     [](P& p) {
         for (int position = 0; position < kTeethInArch; ++position)
             p.dentition.set(Tooth::at(Arch::Upper, position), ToothState::Missing);
         p.dentition.set(28_fdi, ToothState::Present);
     },
     0},
    {"dentition.partial", "a repair that replaces nothing", interimUpper,
     [](P& p) {
         order(p, Appliance::Repair);
         p.saddles.clear();
     },
     0},
    {"dentition.complete", "both ends of the arch", upperClassIIIMod1,
     [](P& p) { chart(p, {17_fdi, 27_fdi}, ToothState::Missing); }, 2},
    {"dentition.complete", "a repair", interimUpper,
     [](P& p) {
         order(p, Appliance::Repair);
         p.saddles.clear();
     },
     0},
    {"dentition.replaced-present", "a third molar that is not replaced", upperClassIIIMod1,
     [](P& p) {
         p.saddles.front().teeth.push_back(18_fdi);
         chart(p, {18_fdi}, ToothState::NotReplaced);
     },
     0},
    {"dentition.replaced-present", "a third molar that stands", upperClassIIIMod1,
     [](P& p) {
         p.saddles.front().teeth.push_back(18_fdi);
         chart(p, {18_fdi}, ToothState::Present);
     },
     1},
    {"dentition.replaced-present", "a second molar that is not replaced", upperClassIIIMod1,
     [](P& p) { chart(p, {26_fdi}, ToothState::NotReplaced); }, 1},
    {"dentition.part-on-absent", "a survey of a missing tooth", upperClassIIIMod1,
     [](P& p) { p.survey.abutments.front().tooth = 15_fdi; }, 0},
    {"design.kennedy-stated", "a repair", interimUpper,
     [](P& p) {
         order(p, Appliance::Repair);
         p.statedClass = "I";
     },
     0},
    {"design.kennedy-stated", "nothing to be replaced", upperClassIIIMod1,
     [](P& p) {
         p.saddles.clear();
         for (int position = 0; position < kTeethInArch; ++position)
             p.dentition.set(Tooth::at(Arch::Upper, position), ToothState::Present);
     },
     1},
    {"design.kennedy-stated", "no digit before zero", upperClassIIIMod1,
     [](P& p) { p.statedClass = "III mod /"; }, 1},
    {"design.kennedy-stated", "no digit behind nine", upperClassIIIMod1,
     [](P& p) { p.statedClass = "III mod :"; }, 1},
    {"design.kennedy-stated", "none of modification zero", upperMolar,
     [](P& p) { p.statedClass = "III mod 0"; }, 0},
    {"design.support-stated", "a repair", lowerClassI,
     [](P& p) {
         order(p, Appliance::Repair);
         p.statedSupport = Support::Tooth;
     },
     0},
    {"design.support-stated", "tissue alone where teeth carry", upperClassIIIMod1,
     [](P& p) { p.statedSupport = Support::Tissue; }, 1},
    {"design.support-stated", "teeth where tissue alone carries", interimUpper,
     [](P& p) { p.statedSupport = Support::Tooth; }, 1},
    {"design.support-stated", "a short space, the two schools", upperClassIIIMod1,
     [](P& p) { p.statedSupport = Support::ToothAndTissue; }, 0},

    {"rest.bounded-saddle", "beside a space of several teeth", upperClassIIIMod1,
     [](P& p) {
         remove(27_fdi, p.rests);
         remove(27_fdi, p.clasps);
         p.statedSupport = {};
     },
     1, Severity::Caution, "no rest on 27, beside the space of 24 to 26"},
    {"rest.bounded-saddle", "beside a space of one tooth", lowerClassIIIMod1,
     [](P& p) {
         remove(47_fdi, p.rests);
         remove(47_fdi, p.clasps);
         p.statedSupport = Support::Tooth;
     },
     1, Severity::Conflict, "no rest on 47, beside the space of 46"},
    {"rest.bounded-saddle", "an interim denture", interimUpper, [](P&) {}, 0},
    {"rest.bounded-saddle", "incisors at the ends, a rest on neither side", upperClassIV,
     [](P& p) {
         p.saddles.front().teeth = {11_fdi, 21_fdi};
         chart(p, {12_fdi, 22_fdi}, ToothState::Present);
         p.rests.clear();
     },
     2},
    {"rest.bounded-saddle", "incisors at the ends, rests on the canines", upperClassIV,
     [](P& p) {
         p.saddles.front().teeth = {11_fdi, 21_fdi};
         chart(p, {12_fdi, 22_fdi}, ToothState::Present);
     },
     0},
    {"rest.count", "no saddle and no rest", upperClassIIIMod1,
     [](P& p) {
         p.saddles.clear();
         p.rests.clear();
     },
     1},
    {"rest.seat-depth", "one micron less", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.rests).seatDepth = 999_um; }, 1},
    {"rest.seat-depth", "not measured", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.rests).seatDepth = {}; }, 0},
    {"rest.clearance", "one micron less", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.rests).clearance = 999_um; }, 1},
    {"rest.clearance", "not measured", upperClassIIIMod1,
     [](P& p) { on(16_fdi, p.rests).clearance = {}; }, 0},
    {"rest.lower-incisor", "an upper incisor", upperClassIIIMod1,
     [](P& p) { on(13_fdi, p.rests).tooth = 12_fdi; }, 0},
    {"saddle.one-space", "teeth of both arches, for another rule to say", upperClassIIIMod1,
     [](P& p) { p.saddles.front().teeth = {14_fdi, 34_fdi}; }, 0},
    {"saddle.one-space", "a saddle of no tooth", upperClassIIIMod1,
     [](P& p) { p.saddles.front().teeth.clear(); }, 0},
    {"design.part-twice", "an incisal and a cingulum rest at one side", upperClassIIIMod1,
     [](P& p) {
         p.rests.push_back(on(13_fdi, p.rests));
         p.rests.back().kind = RestKind::Incisal;
     },
     0},
    {"rest.floor-angle", "in an interim denture", interimUpper,
     [](P& p) { p.rests.push_back({.tooth = 17_fdi, .floorAngle = 120'000_mdeg}); }, 0},
};

}  // namespace

std::span<const Edge> dentitionEdges() { return kEdges; }

}  // namespace edges
