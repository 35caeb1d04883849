#include "tests/support/designs.h"

#include <initializer_list>
#include <utility>

namespace support {

using namespace domain;

namespace {

Date day(std::string_view text) { return Date::parse(text).value(); }

Rest occlusal(Tooth tooth, Surface side) {
    return {.tooth = tooth,
            .kind = RestKind::Occlusal,
            .side = side,
            .seatPrepared = true,
            .seatDepth = 1500_um,
            .clearance = 1600_um};
}

Rest cingulum(Tooth tooth) {
    return {.tooth = tooth,
            .kind = RestKind::Cingulum,
            .side = {},
            .seatPrepared = true,
            .seatDepth = 1500_um,
            .clearance = 1600_um};
}

constexpr Reciprocation kLingualArm{ReciprocalKind::Arm, Surface::Lingual};
constexpr Reciprocation kBuccalArm{ReciprocalKind::Arm, Surface::Buccal};
constexpr Reciprocation kLingualPlate{ReciprocalKind::Plate, Surface::Lingual};
constexpr Reciprocation kLingualStrut{ReciprocalKind::MinorConnector, Surface::Lingual};

/// A cast cobalt-chromium arm in 0.25 mm.
Clasp cast(Tooth tooth, ClaspKind kind, UndercutPlace place, Reciprocation opposed) {
    return {.tooth = tooth,
            .kind = kind,
            .retentiveArm = faceOf(place),
            .undercut = Undercut{place, 250_um},
            .material = ArmMaterial::CastCobaltChromium,
            .reciprocation = opposed};
}

/// A wrought arm in 0.5 mm.
Clasp wrought(Tooth tooth, ClaspKind kind, UndercutPlace place, Reciprocation opposed) {
    Clasp clasp = cast(tooth, kind, place, opposed);
    clasp.undercut->depth = 500_um;
    clasp.material = ArmMaterial::WroughtWire;
    return clasp;
}

GuidePlate guide(Tooth tooth, Surface face, Microns height) {
    return {.tooth = tooth, .face = face, .planePrepared = true, .planeHeight = height};
}

Saddle resinSaddle(std::initializer_list<Tooth> teeth, ResinRetention retention, bool freeEnd) {
    return {.teeth = teeth,
            .base = BaseKind::Resin,
            .retention = retention,
            .finishLines = {.external = true, .internal = true, .offset = true},
            .tissueStop = freeEnd};
}

Enclosure disinfected(EnclosureKind kind) {
    return {.kind = kind,
            .disinfection = Disinfection{"sodium hypochlorite 0.5 %", 10_min},
            .sha256 = {}};
}

Enclosure scan(EnclosureKind kind, std::string sha256) {
    return {.kind = kind, .disinfection = {}, .sha256 = std::move(sha256)};
}

Prescription ordered(Appliance appliance, Arch arch) {
    Prescription made;
    made.issued = day("2026-11-20");
    made.needed = day("2026-12-18");
    made.signature = Signature{SignatureKind::OnPaper, "MK", day("2026-11-20")};
    made.appliance = appliance;
    made.arch = arch;
    made.notation = Notation::Iso3950;
    made.base = {.resin = BaseResin::HeatCured, .methacrylateFree = false, .colour = "medium pink"};
    made.teeth = {.material = ToothMaterial::Polymer, .mould = "match neighbours"};
    made.shades = {{.guide = "A-D scale", .tab = "A3", .teeth = {}}};
    made.occlusion = {.scheme = OcclusalScheme::AsExisting,
                      .jawRelation = JawRelation::StableStops,
                      .opposed = true};
    made.enclosures = {disinfected(EnclosureKind::WorkingImpression),
                       disinfected(EnclosureKind::OpposingImpression)};
    made.sensitivities = {.noneKnown = true, .known = {}};
    return made;
}

Prescription castFramework(Arch arch) {
    Prescription made = ordered(Appliance::MetalFramework, arch);
    made.framework = {.material = FrameworkMaterial::CobaltChromium,
                      .making = FrameworkMaking::Cast,
                      .nickel = 0_ppm,
                      .beryllium = 0_ppm,
                      .cadmium = 0_ppm};
    made.survey.path = InsertionPath{Millidegrees::of(0), TiltDirection::None};
    made.survey.tripodMarked = true;
    made.survey.torus = false;
    return made;
}

/// Charts the saddles' teeth as missing and puts a minor connector and survey data on every
/// abutment: the undercut a clasp engages, measured a little deeper than it needs.
void complete(Prescription& made) {
    for (const Tooth tooth : replacedTeeth(made).teeth())
        made.dentition.set(tooth, ToothState::Missing);
    for (const Tooth tooth : abutments(made).teeth()) {
        made.minorConnectors.push_back({.tooth = tooth, .side = {}});
        AbutmentSurvey surveyed{.tooth = tooth, .heightOfContour = true, .undercuts = {}};
        for (const Clasp& clasp : made.clasps)
            if (clasp.tooth == tooth && clasp.undercut)
                surveyed.undercuts.push_back(
                    {clasp.undercut->place, *clasp.undercut->depth + 50_um});
        made.survey.abutments.push_back(std::move(surveyed));
    }
}

MajorConnector upperConnector(ConnectorKind kind, Microns width) {
    return {.kind = kind,
            .width = width,
            .gingivalClearance = 6000_um,
            .opening = {},
            .beading = true,
            .relief = false};
}

MajorConnector lowerConnector(ConnectorKind kind, Microns height) {
    return {.kind = kind,
            .width = height,
            .gingivalClearance = 4000_um,
            .opening = {},
            .beading = false,
            .relief = true};
}

}  // namespace

Date examinationDay() { return day("2026-11-25"); }

Prescription upperClassIIIMod1() {
    Prescription made = castFramework(Arch::Upper);
    made.identity = {.patientReference = "P-1041",
                     .patientName = "Amélie Brûlé-Čapková",
                     .prescriberName = "Dr Søren Ångmark",
                     .prescriberAddress = "4 Quay Lane, Westhaven",
                     .prescriberContact = "desk@quaylane.example",
                     .prescriberRegistration = "D-20417",
                     .remarks = {}};
    made.statedClass = "III mod 1";
    made.statedSupport = Support::Tooth;
    made.saddles = {resinSaddle({15_fdi, 14_fdi}, ResinRetention::OpenLattice, false),
                    resinSaddle({24_fdi, 25_fdi, 26_fdi}, ResinRetention::OpenLattice, false)};
    made.rests = {occlusal(16_fdi, Surface::Mesial), cingulum(13_fdi), cingulum(23_fdi),
                  occlusal(27_fdi, Surface::Mesial)};
    made.clasps = {
        cast(16_fdi, ClaspKind::Circumferential, UndercutPlace::DistoBuccal, kLingualArm),
        cast(13_fdi, ClaspKind::IBar, UndercutPlace::MidBuccal, kLingualPlate),
        cast(23_fdi, ClaspKind::IBar, UndercutPlace::MidBuccal, kLingualPlate),
        cast(27_fdi, ClaspKind::Circumferential, UndercutPlace::DistoBuccal, kLingualArm)};
    made.guidePlates = {
        guide(16_fdi, Surface::Mesial, 3000_um), guide(13_fdi, Surface::Distal, 3000_um),
        guide(23_fdi, Surface::Distal, 3000_um), guide(27_fdi, Surface::Mesial, 3000_um)};
    made.majorConnector = upperConnector(ConnectorKind::PalatalStrap, 10'000_um);
    made.survey.sulcusDepth = 8000_um;
    complete(made);
    return made;
}

Prescription lowerClassI() {
    Prescription made = castFramework(Arch::Lower);
    made.identity = {.patientReference = "P-1042",
                     .patientName = "Ευρυδίκη Θαλασσινή",
                     .prescriberName = "Dr Κλεάνθης Πευκάς",
                     .prescriberAddress = "17 Harbour Rise, Westhaven",
                     .prescriberContact = "rooms@harbourrise.example",
                     .prescriberRegistration = "D-20518",
                     .remarks = "Second molars stand opposite on both sides."};
    made.statedClass = "I";
    made.statedSupport = Support::ToothAndTissue;
    made.saddles = {resinSaddle({47_fdi, 46_fdi, 45_fdi}, ResinRetention::OpenLattice, true),
                    resinSaddle({35_fdi, 36_fdi, 37_fdi}, ResinRetention::OpenLattice, true)};
    made.rests = {occlusal(44_fdi, Surface::Mesial), cingulum(43_fdi), cingulum(33_fdi),
                  occlusal(34_fdi, Surface::Mesial)};
    made.clasps = {cast(44_fdi, ClaspKind::Rpi, UndercutPlace::MidBuccal, kLingualStrut),
                   cast(34_fdi, ClaspKind::Rpi, UndercutPlace::MidBuccal, kLingualStrut)};
    made.guidePlates = {guide(44_fdi, Surface::Distal, 2000_um),
                        guide(34_fdi, Surface::Distal, 2000_um)};
    made.indirectRetainers = {{43_fdi}, {33_fdi}};
    made.majorConnector = lowerConnector(ConnectorKind::LingualBar, 4500_um);
    made.survey.lingualDepth = 9000_um;
    made.survey.sulcusDepth = 8000_um;
    made.occlusion.jawRelation = JawRelation::OcclusionRims;
    complete(made);
    return made;
}

Prescription upperClassIIMod1() {
    Prescription made = castFramework(Arch::Upper);
    made.identity = {.patientReference = "P-1043",
                     .patientName = "Милорад Звездин",
                     .prescriberName = "Dr Inés Quintañar",
                     .prescriberAddress = "2 Mill Court, Eastmere",
                     .prescriberContact = "post@millcourt.example",
                     .prescriberRegistration = "D-20633",
                     .remarks = {}};
    made.statedClass = "II mod 1";
    made.statedSupport = Support::ToothAndTissue;
    made.saddles = {resinSaddle({17_fdi, 16_fdi, 15_fdi}, ResinRetention::OpenLattice, true),
                    resinSaddle({25_fdi, 26_fdi}, ResinRetention::Mesh, false)};
    made.rests = {occlusal(14_fdi, Surface::Mesial), cingulum(23_fdi),
                  occlusal(24_fdi, Surface::Distal), occlusal(27_fdi, Surface::Mesial)};
    made.clasps = {
        cast(14_fdi, ClaspKind::Rpi, UndercutPlace::MidBuccal, kLingualStrut),
        cast(24_fdi, ClaspKind::Circumferential, UndercutPlace::MesioBuccal, kLingualArm),
        cast(27_fdi, ClaspKind::Circumferential, UndercutPlace::DistoBuccal, kLingualArm)};
    made.guidePlates = {guide(14_fdi, Surface::Distal, 2000_um),
                        guide(24_fdi, Surface::Distal, 3000_um),
                        guide(27_fdi, Surface::Mesial, 3500_um)};
    made.indirectRetainers = {{23_fdi}};
    made.majorConnector = upperConnector(ConnectorKind::DoublePalatalStrap, 8000_um);
    made.majorConnector->opening = 16'000_um;
    made.survey.sulcusDepth = 7500_um;
    made.survey.path = InsertionPath{Millidegrees::of(4500), TiltDirection::Posterior};
    made.occlusion = {.scheme = OcclusalScheme::CanineGuided,
                      .jawRelation = JawRelation::InterocclusalRecord,
                      .opposed = true};
    made.enclosures.push_back(disinfected(EnclosureKind::JawRelationRecord));
    complete(made);
    return made;
}

Prescription lowerClassIIMod1() {
    Prescription made = castFramework(Arch::Lower);
    made.identity = {.patientReference = "P-1044",
                     .patientName = "Tomé Vasconço",
                     .prescriberName = "Dr Inés Quintañar",
                     .prescriberAddress = "2 Mill Court, Eastmere",
                     .prescriberContact = "post@millcourt.example",
                     .prescriberRegistration = "D-20633",
                     .remarks = {}};
    made.notation = Notation::Universal;
    made.statedClass = "II mod 1";
    made.statedSupport = Support::ToothAndTissue;
    made.saddles = {resinSaddle({35_fdi, 36_fdi, 37_fdi}, ResinRetention::OpenLattice, true),
                    resinSaddle({46_fdi}, ResinRetention::Bead, false)};
    made.saddles[1].base = BaseKind::Metal;
    made.rests = {occlusal(47_fdi, Surface::Mesial), occlusal(45_fdi, Surface::Distal),
                  occlusal(44_fdi, Surface::Mesial), occlusal(34_fdi, Surface::Distal)};
    made.clasps = {
        cast(47_fdi, ClaspKind::Circumferential, UndercutPlace::DistoBuccal, kLingualArm),
        cast(45_fdi, ClaspKind::Circumferential, UndercutPlace::MesioBuccal, kLingualArm),
        wrought(34_fdi, ClaspKind::Combination, UndercutPlace::MesioBuccal, kLingualArm)};
    made.guidePlates = {guide(47_fdi, Surface::Mesial, 3000_um),
                        guide(45_fdi, Surface::Distal, 3000_um),
                        guide(34_fdi, Surface::Distal, 2000_um)};
    made.indirectRetainers = {{44_fdi}};
    made.majorConnector = lowerConnector(ConnectorKind::LingualPlate, 4500_um);
    made.majorConnector->gingivalClearance = {};  // it covers the margin, as a plate does
    made.survey.lingualDepth = 6000_um;
    made.occlusion.jawRelation = JawRelation::InterocclusalRecord;
    made.enclosures.push_back(disinfected(EnclosureKind::JawRelationRecord));
    complete(made);
    return made;
}

Prescription upperClassIV() {
    Prescription made = castFramework(Arch::Upper);
    made.identity = {.patientReference = "P-1045",
                     .patientName = "Łucja Świętosz",
                     .prescriberName = "Dr Søren Ångmark",
                     .prescriberAddress = "4 Quay Lane, Westhaven",
                     .prescriberContact = "desk@quaylane.example",
                     .prescriberRegistration = "D-20417",
                     .remarks = {}};
    made.signature = Signature{SignatureKind::Electronic, {}, day("2026-11-20")};
    made.statedClass = "IV";
    made.statedSupport = Support::ToothAndTissue;
    made.saddles = {resinSaddle({12_fdi, 11_fdi, 21_fdi, 22_fdi}, ResinRetention::Mesh, false)};
    made.rests = {occlusal(17_fdi, Surface::Mesial),
                  occlusal(16_fdi, Surface::Distal),
                  cingulum(13_fdi),
                  cingulum(23_fdi),
                  occlusal(26_fdi, Surface::Distal),
                  occlusal(27_fdi, Surface::Mesial)};
    made.clasps = {cast(17_fdi, ClaspKind::Embrasure, UndercutPlace::DistoBuccal, kLingualArm),
                   cast(16_fdi, ClaspKind::Embrasure, UndercutPlace::MesioBuccal, kLingualArm),
                   cast(26_fdi, ClaspKind::Embrasure, UndercutPlace::MesioBuccal, kLingualArm),
                   cast(27_fdi, ClaspKind::Embrasure, UndercutPlace::DistoBuccal, kLingualArm)};
    made.guidePlates = {guide(13_fdi, Surface::Mesial, 3000_um),
                        guide(23_fdi, Surface::Mesial, 3000_um)};
    made.indirectRetainers = {{17_fdi}, {27_fdi}};
    made.majorConnector = upperConnector(ConnectorKind::Horseshoe, 7000_um);
    made.shades = {{.guide = "A-D scale", .tab = "A2", .teeth = {11_fdi, 21_fdi}},
                   {.guide = "A-D scale", .tab = "A3", .teeth = {12_fdi, 22_fdi}}};
    made.enclosures = {scan(EnclosureKind::WorkingScan,
                            "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08"),
                       scan(EnclosureKind::OpposingScan,
                            "60303ae22b998861bce3b28f33eec1be758a213c86c93c076dbe9f558c11c752"),
                       {.kind = EnclosureKind::Photograph, .disinfection = {}, .sha256 = {}}};
    complete(made);
    return made;
}

Prescription lowerClassIIIMod1() {
    Prescription made = castFramework(Arch::Lower);
    made.identity = {.patientReference = "P-1046",
                     .patientName = "Jörn Überweg",
                     .prescriberName = "Dr Κλεάνθης Πευκάς",
                     .prescriberAddress = "17 Harbour Rise, Westhaven",
                     .prescriberContact = "rooms@harbourrise.example",
                     .prescriberRegistration = "D-20518",
                     .remarks = "The left second molar has tipped towards the space."};
    made.statedClass = "III mod 1";
    made.statedSupport = Support::Tooth;
    made.saddles = {resinSaddle({46_fdi}, ResinRetention::Mesh, false),
                    resinSaddle({36_fdi}, ResinRetention::Mesh, false)};
    made.rests = {occlusal(47_fdi, Surface::Mesial), occlusal(45_fdi, Surface::Distal),
                  occlusal(35_fdi, Surface::Distal), occlusal(37_fdi, Surface::Mesial),
                  occlusal(37_fdi, Surface::Distal)};
    made.clasps = {
        cast(47_fdi, ClaspKind::Circumferential, UndercutPlace::DistoBuccal, kLingualArm),
        cast(45_fdi, ClaspKind::Circumferential, UndercutPlace::MesioBuccal, kLingualArm),
        cast(35_fdi, ClaspKind::Circumferential, UndercutPlace::MesioBuccal, kLingualArm),
        cast(37_fdi, ClaspKind::Ring, UndercutPlace::MesioLingual, kBuccalArm)};
    made.guidePlates = {
        guide(47_fdi, Surface::Mesial, 3000_um), guide(45_fdi, Surface::Distal, 3000_um),
        guide(35_fdi, Surface::Distal, 3000_um), guide(37_fdi, Surface::Mesial, 3000_um)};
    made.majorConnector = lowerConnector(ConnectorKind::LingualBar, 4000_um);
    made.survey.lingualDepth = 8500_um;
    complete(made);
    return made;
}

Prescription interimUpper() {
    Prescription made = ordered(Appliance::InterimResin, Arch::Upper);
    made.identity = {.patientReference = "P-1047",
                     .patientName = "Oriol Daurell",
                     .prescriberName = "Dr Inés Quintañar",
                     .prescriberAddress = "2 Mill Court, Eastmere",
                     .prescriberContact = "post@millcourt.example",
                     .prescriberRegistration = "D-20633",
                     .remarks = "Worn until the definitive denture is made."};
    made.statedClass = "III mod 2";
    made.statedSupport = Support::Tissue;
    for (const auto& teeth :
         {std::vector<Tooth>{16_fdi, 15_fdi}, std::vector<Tooth>{12_fdi}, {26_fdi}})
        made.saddles.push_back({.teeth = teeth,
                                .base = BaseKind::Resin,
                                .retention = {},
                                .finishLines = {},
                                .tissueStop = {}});
    made.clasps = {
        wrought(17_fdi, ClaspKind::Circumferential, UndercutPlace::DistoBuccal, kLingualPlate),
        wrought(14_fdi, ClaspKind::Circumferential, UndercutPlace::MesioBuccal, kLingualPlate),
        wrought(27_fdi, ClaspKind::Circumferential, UndercutPlace::DistoBuccal, kLingualPlate)};
    made.majorConnector = MajorConnector{.kind = ConnectorKind::PalatalPlate,
                                         .width = {},
                                         .gingivalClearance = {},
                                         .opening = {},
                                         .beading = {},
                                         .relief = {}};
    for (const Tooth tooth : replacedTeeth(made).teeth())
        made.dentition.set(tooth, ToothState::Missing);
    return made;
}

}  // namespace support
