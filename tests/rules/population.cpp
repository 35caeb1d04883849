#include "tests/rules/population.h"

#include <algorithm>

#include "domain/design/design_view.h"
#include "tests/support/designs.h"

namespace population {

using namespace domain;
using P = Prescription;

namespace {

int below(Chance& chance, std::size_t count) {
    return static_cast<int>(chance() % std::max<std::size_t>(count, 1));
}
bool oneIn(Chance& chance, int count) {
    return below(chance, static_cast<std::size_t>(count)) == 0;
}

/// A new prescription with every paper given, and nothing designed yet.
P papers(Arch arch) {
    P made = arch == Arch::Upper ? support::upperClassIIIMod1() : support::lowerClassI();
    made.statedClass = {};
    made.statedSupport = {};
    made.dentition = {};
    made.saddles.clear();
    made.rests.clear();
    made.clasps.clear();
    made.guidePlates.clear();
    made.minorConnectors.clear();
    made.indirectRetainers.clear();
    made.survey.abutments.clear();
    made.shades = {{.guide = "A-D scale", .tab = "A3"}};
    made.majorConnector = MajorConnector{.kind = arch == Arch::Upper ? ConnectorKind::PalatalPlate
                                                                     : ConnectorKind::LingualPlate};
    return made;
}

/// One to four spaces of one to four teeth.
void loseTeeth(P& p, Chance& chance) {
    const int spaces = 1 + below(chance, 4);
    for (int space = 0; space < spaces; ++space) {
        const int first = 1 + below(chance, 14);
        const int teeth = 1 + below(chance, 4);
        for (int position = first; position < std::min(first + teeth, 15); ++position)
            p.dentition.set(Tooth::at(p.arch, position), ToothState::Missing);
    }
}

void addRest(P& p, Tooth tooth, Surface side) {
    const bool front = tooth.kind() == ToothKind::Canine || tooth.kind() == ToothKind::Incisor;
    if (hasRest(p, tooth, side)) return;
    p.rests.push_back({.tooth = tooth,
                       .kind = front ? RestKind::Cingulum : RestKind::Occlusal,
                       .side = side,
                       .seatPrepared = true,
                       .seatDepth = 1500_um,
                       .clearance = 1600_um});
}

bool isClasped(const P& p, Tooth tooth) {
    return std::ranges::count(p.clasps, tooth, &Clasp::tooth) > 0;
}

/// A circumferential clasp from the given side into the far undercut.
void addCircumferential(P& p, Tooth tooth, Surface from) {
    if (isClasped(p, tooth)) return;
    addRest(p, tooth, from);
    p.clasps.push_back({.tooth = tooth,
                        .kind = ClaspKind::Circumferential,
                        .retentiveArm = Surface::Buccal,
                        .undercut = Undercut{from == Surface::Mesial ? UndercutPlace::DistoBuccal
                                                                     : UndercutPlace::MesioBuccal,
                                             250_um},
                        .material = ArmMaterial::CastCobaltChromium,
                        .reciprocation = Reciprocation{ReciprocalKind::Arm, Surface::Lingual}});
}

void addMesialRestBar(P& p, Tooth tooth) {
    if (isClasped(p, tooth)) return;
    addRest(p, tooth, Surface::Mesial);
    p.clasps.push_back(
        {.tooth = tooth,
         .kind = ClaspKind::Rpi,
         .retentiveArm = Surface::Buccal,
         .undercut = Undercut{UndercutPlace::MidBuccal, 250_um},
         .material = ArmMaterial::CastCobaltChromium,
         .reciprocation = Reciprocation{ReciprocalKind::MinorConnector, Surface::Lingual}});
    p.guidePlates.push_back(
        {.tooth = tooth, .face = Surface::Distal, .planePrepared = true, .planeHeight = 2000_um});
}

bool canBeClasped(const P& p, Tooth tooth) {
    return p.dentition.stands(tooth) && tooth.kind() != ToothKind::Incisor && !tooth.isThirdMolar();
}

std::vector<Tooth> standing(const P& p) {
    std::vector<Tooth> teeth;
    for (int position = 0; position < kTeethInArch; ++position)
        if (const Tooth tooth = Tooth::at(p.arch, position); canBeClasped(p, tooth))
            teeth.push_back(tooth);
    return teeth;
}

/// Rests and clasps at the ends of every space. False where an end has no tooth fit for it.
bool holdEnds(P& p) {
    const Design design = designOf(p);
    for (const EdentulousArea& area : design.areas)
        for (const Tooth tooth : abutmentsOf(design, area).teeth()) {
            const bool spaceIsDistal =
                (tooth.side() == Side::Right) == (tooth.position() > area.last);
            if (!canBeClasped(p, tooth)) return false;
            if (isBesideFreeEnd(design, tooth)) {
                if (tooth.kind() == ToothKind::Molar || !spaceIsDistal) return false;
                addMesialRestBar(p, tooth);
            } else {
                const Surface side = spaceIsDistal ? Surface::Distal : Surface::Mesial;
                addRest(p, tooth, side);
                addCircumferential(p, tooth, side);
            }
        }
    return true;
}

/// More clasps until there are enough of them, on both sides.
void holdEnough(P& p, Chance& chance) {
    const Design design = designOf(p);
    auto teeth = standing(p);
    std::ranges::shuffle(teeth, chance);
    const auto holds = [&](Side side) {
        return std::ranges::any_of(p.clasps,
                                   [&](const Clasp& clasp) { return clasp.tooth.side() == side; });
    };
    for (const Tooth tooth : teeth)
        if (p.clasps.size() < 4 || !holds(Side::Right) || !holds(Side::Left) ||
            p.rests.size() < 3) {
            if (isBesideFreeEnd(design, tooth)) continue;
            addCircumferential(p, tooth, oneIn(chance, 2) ? Surface::Mesial : Surface::Distal);
        }
}

void resistRocking(P& p) {
    const Design design = designOf(p);
    if (!design.fulcrum) return;
    const auto seat = bestSeat(p, design.form, *design.fulcrum);
    if (!seat) return;
    addRest(p, seat->tooth, seat->side);
    p.indirectRetainers = {{seat->tooth}};
}

void joinAndSurvey(P& p) {
    for (const Tooth tooth : abutments(p).teeth()) {
        p.minorConnectors.push_back({.tooth = tooth});
        AbutmentSurvey surveyed{.tooth = tooth, .heightOfContour = true};
        for (const Clasp& clasp : p.clasps)
            if (clasp.tooth == tooth)
                surveyed.undercuts.push_back(
                    {clasp.undercut->place, *clasp.undercut->depth + 50_um});
        p.survey.abutments.push_back(surveyed);
    }
}

template <typename Part>
Part& any(std::vector<Part>& parts, Chance& chance) {
    return parts[static_cast<std::size_t>(below(chance, parts.size()))];
}

bool isFreeEnded(const P& p) {
    return std::ranges::any_of(designOf(p).areas, &EdentulousArea::isFreeEnd);
}

constexpr Fault kFaults[] = {
    {"admin.registration",
     [](P& p, Chance&) {
         p.identity.prescriberRegistration = {};
         return true;
     }},
    {"admin.date-needed",
     [](P& p, Chance&) {
         p.needed = p.issued->plusDays(-1);
         return true;
     }},
    {"enclosure.disinfection",
     [](P& p, Chance& chance) {
         any(p.enclosures, chance).disinfection = {};
         return true;
     }},
    {"dentition.replaced-present",
     [](P& p, Chance& chance) {
         p.dentition.set(any(any(p.saddles, chance).teeth, chance), ToothState::Closed);
         return true;
     }},
    {"dentition.complete",
     [](P& p, Chance& chance) {
         auto& saddle = any(p.saddles, chance);
         if (saddle.teeth.size() < 2) return false;
         saddle.teeth.pop_back();
         return true;
     }},
    {"dentition.part-on-absent",
     [](P& p, Chance& chance) {
         any(p.rests, chance).tooth = any(any(p.saddles, chance).teeth, chance);
         return true;
     }},
    {"saddle.once",
     [](P& p, Chance& chance) {
         auto& saddle = any(p.saddles, chance);
         saddle.teeth.push_back(saddle.teeth.front());
         return true;
     }},
    {"rest.seat",
     [](P& p, Chance& chance) {
         any(p.rests, chance).seatPrepared = {};
         return true;
     }},
    {"rest.seat-depth",
     [](P& p, Chance& chance) {
         any(p.rests, chance).seatDepth = Microns::of(below(chance, 1000));
         return true;
     }},
    {"rest.kind",
     [](P& p, Chance& chance) {
         Rest& rest = any(p.rests, chance);
         rest.kind = rest.kind == RestKind::Occlusal ? RestKind::Incisal : RestKind::Occlusal;
         return true;
     }},
    {"rest.free-end",
     [](P& p, Chance&) {
         const Design design = designOf(p);
         for (const EdentulousArea& area : design.areas) {
             if (!area.isFreeEnd()) continue;
             const ToothSet teeth = abutmentsOf(design, area);
             std::erase_if(p.rests, [&](const Rest& rest) { return teeth.has(rest.tooth); });
             std::erase_if(p.clasps, [&](const Clasp& clasp) { return teeth.has(clasp.tooth); });
             return true;
         }
         return false;
     }},
    {"clasp.reciprocation",
     [](P& p, Chance& chance) {
         any(p.clasps, chance).reciprocation = {};
         return true;
     }},
    {"clasp.undercut-given",
     [](P& p, Chance& chance) {
         any(p.clasps, chance).undercut->depth = {};
         return true;
     }},
    {"clasp.undercut-measured",
     [](P& p, Chance& chance) {
         any(p.clasps, chance).undercut->depth = 1000_um;
         return true;
     }},
    {"clasp.undercut-material",
     [](P& p, Chance& chance) {
         any(p.clasps, chance).undercut->depth = Microns::of(255 + below(chance, 500));
         return true;
     }},
    {"clasp.one-retentive-arm",
     [](P& p, Chance& chance) {
         Clasp second = any(p.clasps, chance);
         second.retentiveArm = Surface::Lingual;
         p.clasps.push_back(second);
         return true;
     }},
    {"clasp.rest",
     [](P& p, Chance& chance) {
         const Tooth tooth = any(p.clasps, chance).tooth;
         std::erase_if(p.rests, [&](const Rest& rest) { return rest.tooth == tooth; });
         return true;
     }},
    {"clasp.bar-sulcus",
     [](P& p, Chance&) {
         p.survey.sulcusDepth = {};
         return std::ranges::any_of(p.clasps, [](const Clasp& clasp) { return isBar(clasp.kind); });
     }},
    {"clasp.elastic-limit",
     [](P& p, Chance& chance) {
         any(p.clasps, chance).arm = {.section = ArmSection::Round,
                                      .width = 1500_um,
                                      .tip = 1'000'000_ppm,
                                      .length = 8000_um};
         return true;
     }},
    {"indirect.required",
     [](P& p, Chance&) {
         p.indirectRetainers.clear();
         return isFreeEnded(p);
     }},
    {"indirect.position",
     [](P& p, Chance&) {
         const Design design = designOf(p);
         if (!design.fulcrum) return false;
         p.indirectRetainers = {{design.fulcrum->right.tooth}};
         return std::ranges::count(p.rests, design.fulcrum->right.tooth, &Rest::tooth) == 1;
     }},
    {"connector.arch",
     [](P& p, Chance&) {
         p.majorConnector->kind =
             p.arch == Arch::Upper ? ConnectorKind::LingualBar : ConnectorKind::PalatalStrap;
         return true;
     }},
    {"minor.joins",
     [](P& p, Chance& chance) {
         std::erase(p.minorConnectors, MinorConnector{any(p.minorConnectors, chance)});
         return true;
     }},
    {"survey.present",
     [](P& p, Chance& chance) {
         const Tooth tooth = any(p.clasps, chance).tooth;
         std::erase_if(p.survey.abutments,
                       [&](const AbutmentSurvey& surveyed) { return surveyed.tooth == tooth; });
         return true;
     }},
    {"survey.consistent",
     [](P& p, Chance& chance) {
         p.survey.abutments.push_back(any(p.survey.abutments, chance));
         return true;
     }},
    {"retention.kind",
     [](P& p, Chance& chance) {
         any(p.saddles, chance).retention = {};
         return true;
     }},
    {"finish-line.both",
     [](P& p, Chance& chance) {
         any(p.saddles, chance).finishLines.internal = {};
         return true;
     }},
    {"retention.tissue-stop",
     [](P& p, Chance&) {
         for (Saddle& saddle : p.saddles) saddle.tissueStop = false;
         return isFreeEnded(p);
     }},
    {"alloy.nickel",
     [](P& p, Chance&) {
         p.sensitivities = {.noneKnown = {}, .known = {Sensitivity::Nickel}};
         p.framework.nickel = 1000_ppm;
         return true;
     }},
    {"alloy.type",
     [](P& p, Chance& chance) {
         p.framework.modulus = Stiffness::of(below(chance, 150'000));
         return true;
     }},
    {"design.kennedy-stated",
     [](P& p, Chance&) {
         const auto kennedy = designOf(p).kennedy;
         if (!kennedy) return false;
         p.statedClass = kennedy->text() == "IV" ? "III" : "IV";
         return true;
     }},
    {"admin.signature",
     [](P& p, Chance&) {
         p.signature->date = support::examinationDay().plusDays(1);
         return true;
     }},
    {"clasp.opposed-by",
     [](P& p, Chance& chance) {
         Clasp& clasp = any(p.clasps, chance);
         std::erase_if(p.guidePlates,
                       [&](const GuidePlate& plate) { return plate.tooth == clasp.tooth; });
         clasp.reciprocation = Reciprocation{ReciprocalKind::GuidePlate, Surface::Lingual};
         return true;
     }},
    {"clasp.undercut-across",
     [](P& p, Chance& chance) {
         Clasp& clasp = any(p.clasps, chance);
         const bool distal = clasp.undercut->place == UndercutPlace::DistoBuccal;
         if (clasp.kind != ClaspKind::Circumferential ||
             hasRest(p, clasp.tooth, distal ? Surface::Distal : Surface::Mesial))
             return false;
         clasp.undercut->place = distal ? UndercutPlace::MesioBuccal : UndercutPlace::DistoBuccal;
         return true;
     }},
    {"clasp.on-bridge",
     [](P& p, Chance& chance) {
         p.dentition.set(any(p.clasps, chance).tooth, ToothState::Bridged);
         return true;
     }},
    {"guide.contact",
     [](P& p, Chance& chance) {
         const Tooth tooth = any(p.clasps, chance).tooth;
         const auto next = neighbour(tooth, Surface::Mesial);
         if (!next || !p.dentition.stands(*next)) return false;
         p.guidePlates.push_back({.tooth = tooth, .face = Surface::Mesial, .planePrepared = true});
         return true;
     }},
    {"alloy.one-casting",
     [](P& p, Chance& chance) {
         any(p.clasps, chance).material = ArmMaterial::CastGold;
         return true;
     }},
    {"connector.torus",
     [](P& p, Chance&) {
         p.survey.torus = true;
         p.majorConnector->relief = {};
         return true;
     }},
    {"alloy.cobalt-chromium",
     [](P& p, Chance& chance) {
         p.sensitivities = {.noneKnown = {}, .known = {Sensitivity::Chromium}};
         p.framework.material = FrameworkMaterial::Titanium;
         for (Clasp& clasp : p.clasps) clasp.material = {};
         any(p.clasps, chance).material = ArmMaterial::WroughtWire;
         return true;
     }},
    {"base.methacrylate",
     [](P& p, Chance&) {
         p.sensitivities = {.noneKnown = {}, .known = {Sensitivity::Methacrylate}};
         p.base.methacrylateFree = true;
         p.teeth.material = ToothMaterial::Polymer;
         return true;
     }},
    {"retention.free-end-metal",
     [](P& p, Chance&) {
         for (Saddle& saddle : p.saddles) saddle.base = BaseKind::Metal;
         return isFreeEnded(p);
     }},
    {"design.altered-cast",
     [](P& p, Chance&) {
         p.alteredCast = true;
         return !isFreeEnded(p);
     }},
    {"shade.tab-known",
     [](P& p, Chance&) {
         p.shades.front().tab = "A7";
         return true;
     }},
    {"design.sizes",
     [](P& p, Chance& chance) {
         any(p.rests, chance).seatDepth = 5000_um;
         return true;
     }},
};

}  // namespace

std::optional<P> cleanDesign(Chance& chance) {
    P p = papers(oneIn(chance, 2) ? Arch::Upper : Arch::Lower);
    loseTeeth(p, chance);
    const Design design = designOf(p);
    for (const EdentulousArea& area : design.areas) {
        Saddle saddle{.base = BaseKind::Resin,
                      .retention = ResinRetention::OpenLattice,
                      .finishLines = {.external = true, .internal = true, .offset = true},
                      .tissueStop = area.isFreeEnd()};
        for (int position = area.first; position <= area.last; ++position)
            saddle.teeth.push_back(Tooth::at(p.arch, position));
        p.saddles.push_back(std::move(saddle));
    }
    if (p.saddles.empty() || standing(p).size() < 5 || !holdEnds(p)) return {};
    holdEnough(p, chance);
    resistRocking(p);
    joinAndSurvey(p);
    const Design made = designOf(p);
    const bool rocks = isFreeEnded(p) ||
                       (made.kennedyClass() == KennedyClass::IV && made.support != Support::Tooth);
    if (p.clasps.size() < 4 || (rocks && p.indirectRetainers.empty())) return {};
    p.statedClass = made.kennedy->text();
    p.statedSupport = made.support;
    return p;
}

std::span<const Fault> faults() { return kFaults; }

}  // namespace population
