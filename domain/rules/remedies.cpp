#include "domain/rules/remedies.h"

#include <algorithm>

#include "domain/design/design_view.h"
#include "domain/rules/examine.h"

namespace domain {
namespace {

using P = Prescription;

/// Collects what may be tried, the likeliest first.
class Tries {
public:
    explicit Tries(const Examination& examination) : examination_{examination} {}

    const P& prescription() const noexcept { return examination_.prescription; }
    const Design& design() const noexcept { return examination_.design; }
    std::string name(Tooth tooth) const { return nameOf(tooth, notationOf(prescription())); }

    template <typename Change>
    void add(std::string says, Change change) {
        Remedy remedy{std::move(says), prescription()};
        change(remedy.changed);
        if (remedy.changed != prescription()) tries_.push_back(std::move(remedy));
    }
    std::vector<Remedy> take() && { return std::move(tries_); }

private:
    const Examination& examination_;
    std::vector<Remedy> tries_;
};

template <typename Part, typename Change>
void eachOn(std::vector<Part>& parts, Tooth tooth, Change change) {
    for (Part& part : parts)
        if (part.tooth == tooth) change(part);
}

constexpr Surface kProximal[] = {Surface::Mesial, Surface::Distal};

/// The rest that suits the tooth, in a seat that the prescriber then prepares.
Rest restOn(Tooth tooth, Surface side) {
    const bool posterior = tooth.kind() == ToothKind::Premolar || tooth.kind() == ToothKind::Molar;
    return {.tooth = tooth,
            .kind = posterior ? RestKind::Occlusal : RestKind::Cingulum,
            .side = side,
            .seatPrepared = true};
}

/// "a mesial occlusal rest on 34, in a prepared seat"
void addRest(Tries& tries, Tooth tooth, Surface side) {
    const Rest rest = restOn(tooth, side);
    tries.add("a " + wordsOf(side) + ' ' + wordsOf(rest.kind) + " rest on " + tries.name(tooth) +
                  ", in a seat you prepare",
              [&](P& p) { p.rests.push_back(rest); });
}

/// The side of the tooth that looks at a space, if one does.
std::optional<Surface> sideOfSpace(const Tries& tries, Tooth tooth) {
    for (const Surface side : kProximal) {
        const auto next = neighbour(tooth, side);
        if (next && std::ranges::any_of(tries.design().areas, [&](const EdentulousArea& area) {
                return isIn(tries.design(), area, *next);
            }))
            return side;
    }
    return {};
}

void restOnTheTooth(const Finding& finding, Tries& tries) {
    if (!finding.tooth) return;
    const auto beside = sideOfSpace(tries, *finding.tooth);
    if (beside) addRest(tries, *finding.tooth, *beside);
    for (const Surface side : kProximal)
        if (side != beside) addRest(tries, *finding.tooth, side);
}

void seatForRetainer(const Finding&, Tries& tries) {
    const auto& fulcrum = tries.design().fulcrum;
    if (!fulcrum) return;
    P rest = tries.prescription();
    for (std::size_t count = 0; count < kMostRemedies; ++count) {
        const auto seat = bestSeat(rest, tries.design().form, *fulcrum);
        if (!seat) return;
        const bool isThere = hasRest(tries.prescription(), seat->tooth, seat->side);
        tries.add((isThere ? "the rest on " : "a rest in a seat you prepare on ") +
                      tries.name(seat->tooth) + " as indirect retainer",
                  [&](P& p) {
                      if (!isThere) p.rests.push_back(restOn(seat->tooth, seat->side));
                      p.indirectRetainers = {{seat->tooth}};
                  });
        rest.dentition.set(seat->tooth, ToothState::NotReplaced);
    }
}

void otherFaceOfArm(const Finding& finding, Tries& tries) {
    if (!finding.tooth) return;
    const auto withUndercut = [&](P& p) {
        eachOn(p.clasps, *finding.tooth, [](Clasp& clasp) {
            if (clasp.undercut) clasp.retentiveArm = faceOf(clasp.undercut->place);
            if (clasp.retentiveArm && clasp.reciprocation)
                clasp.reciprocation->face = opposite(*clasp.retentiveArm);
        });
    };
    tries.add("the arm on the face of its undercut, and what opposes it on the other",
              withUndercut);
}

/// An undercut the survey found, as far as the arm may go into it.
void surveyedUndercut(const Finding& finding, Tries& tries) {
    const AbutmentSurvey* surveyed =
        finding.tooth ? surveyOf(tries.prescription(), *finding.tooth) : nullptr;
    if (surveyed == nullptr) return;
    for (const Undercut& undercut : surveyed->undercuts) {
        if (!undercut.depth) continue;
        const Microns depth = std::min(*undercut.depth, 250_um);
        tries.add(text(depth) + " of the " + wordsOf(undercut.place) + " undercut", [&](P& p) {
            eachOn(p.clasps, *finding.tooth, [&](Clasp& clasp) {
                clasp.undercut = Undercut{undercut.place, depth};
                clasp.retentiveArm = faceOf(undercut.place);
                if (clasp.reciprocation)
                    clasp.reciprocation->face = opposite(faceOf(undercut.place));
            });
        });
    }
}

void shallowerOrWire(const Finding& finding, Tries& tries) {
    if (!finding.tooth) return;
    const auto set = [&](auto change) {
        return [&, change](P& p) { eachOn(p.clasps, *finding.tooth, change); };
    };
    tries.add("0.25 mm of the undercut", set([](Clasp& clasp) {
                  if (clasp.undercut) clasp.undercut->depth = 250_um;
              }));
    tries.add("an arm of wrought wire",
              set([](Clasp& clasp) { clasp.material = ArmMaterial::WroughtWire; }));
}

void whatOpposes(const Finding& finding, Tries& tries) {
    if (!finding.tooth) return;
    const auto oppose = [&](ReciprocalKind kind) {
        return [&, kind](P& p) {
            eachOn(p.clasps, *finding.tooth, [&](Clasp& clasp) {
                const auto face = retentiveFace(clasp);
                clasp.reciprocation =
                    Reciprocation{kind, face ? opposite(*face) : Surface::Lingual};
            });
        };
    };
    tries.add("a reciprocal arm", oppose(ReciprocalKind::Arm));
    const auto& connector = tries.prescription().majorConnector;
    if (connector && (connector->kind == ConnectorKind::LingualPlate ||
                      connector->kind == ConnectorKind::PalatalPlate))
        tries.add("the plate", oppose(ReciprocalKind::Plate));
    tries.add("the minor connector", oppose(ReciprocalKind::MinorConnector));
}

void tipAcross(const Finding& finding, Tries& tries) {
    if (!finding.tooth) return;
    const auto mirrored = [](UndercutPlace place) {
        switch (place) {
            case UndercutPlace::MesioBuccal:
                return UndercutPlace::DistoBuccal;
            case UndercutPlace::DistoBuccal:
                return UndercutPlace::MesioBuccal;
            case UndercutPlace::MesioLingual:
                return UndercutPlace::DistoLingual;
            case UndercutPlace::DistoLingual:
                return UndercutPlace::MesioLingual;
            case UndercutPlace::MidBuccal:
            case UndercutPlace::MidLingual:
                break;
        }
        return place;
    };
    surveyedUndercut(finding, tries);
    tries.add("the undercut at the other end of the face", [&](P& p) {
        eachOn(p.clasps, *finding.tooth, [&](Clasp& clasp) {
            if (clasp.undercut) clasp.undercut->place = mirrored(clasp.undercut->place);
        });
    });
    tries.add("the rest at the other end of the tooth", [&](P& p) {
        eachOn(p.rests, *finding.tooth, [](Rest& rest) {
            if (rest.side) rest.side = opposite(*rest.side);
        });
    });
}

void connectors(Tries& tries, std::initializer_list<ConnectorKind> kinds) {
    for (const ConnectorKind kind : kinds)
        if (archOf(kind) == tries.prescription().arch)
            tries.add("a " + wordsOf(kind), [kind](P& p) {
                // The lengths given were those of the other one.
                p.majorConnector = MajorConnector{
                    .kind = kind,
                    .relief = p.majorConnector ? p.majorConnector->relief : std::nullopt};
            });
}

void otherConnector(const Finding&, Tries& tries) {
    connectors(tries, {ConnectorKind::DoublePalatalStrap, ConnectorKind::PalatalPlate,
                       ConnectorKind::PalatalStrap, ConnectorKind::LingualBar,
                       ConnectorKind::LingualPlate});
}

void plateInstead(const Finding&, Tries& tries) {
    connectors(tries, {ConnectorKind::LingualPlate, ConnectorKind::SublingualBar});
}

void overTheTorus(const Finding&, Tries& tries) {
    tries.add("relief over the torus", [](P& p) {
        if (p.majorConnector) p.majorConnector->relief = true;
    });
    connectors(tries, {ConnectorKind::Horseshoe, ConnectorKind::DoublePalatalStrap,
                       ConnectorKind::LabialBar});
}

void derivedClass(const Finding&, Tries& tries) {
    if (const auto& kennedy = tries.design().kennedy)
        tries.add(kennedy->text() + ", as the chart gives",
                  [&](P& p) { p.statedClass = kennedy->text(); });
}

void derivedSupport(const Finding&, Tries& tries) {
    if (const auto& support = tries.design().support)
        tries.add(wordsOf(*support) + ", as the design gives",
                  [&](P& p) { p.statedSupport = support; });
}

void chartedOtherwise(const Finding& finding, Tries& tries) {
    if (!finding.tooth) return;
    for (const ToothState state : {ToothState::Missing, ToothState::ToBeExtracted,
                                   ToothState::NotReplaced, ToothState::Closed})
        tries.add(tries.name(*finding.tooth) + " is " + wordsOf(state),
                  [&](P& p) { p.dentition.set(*finding.tooth, state); });
}

void faceOfTheSpace(const Finding& finding, Tries& tries) {
    const auto side = finding.tooth ? sideOfSpace(tries, *finding.tooth) : std::nullopt;
    if (!side) return;
    tries.add("the guide plate on the " + wordsOf(*side) + " face", [&](P& p) {
        eachOn(p.guidePlates, *finding.tooth, [&](GuidePlate& plate) { plate.face = *side; });
    });
}

void oneMelt(const Finding& finding, Tries& tries) {
    if (!finding.tooth) return;
    tries.add("the arm of the framework's alloy", [&](P& p) {
        eachOn(p.clasps, *finding.tooth, [](Clasp& clasp) { clasp.material = {}; });
    });
    tries.add("an arm of wrought wire", [&](P& p) {
        eachOn(p.clasps, *finding.tooth,
               [](Clasp& clasp) { clasp.material = ArmMaterial::WroughtWire; });
    });
}

void frameworkWithout(const Finding&, Tries& tries) {
    for (const FrameworkMaterial material :
         {FrameworkMaterial::Titanium, FrameworkMaterial::GoldTypeIv,
          FrameworkMaterial::Polyetheretherketone})
        tries.add("a framework of " + wordsOf(material), [material](P& p) {
            p.framework = Framework{.material = material, .making = FrameworkMaking::Milled};
            for (Clasp& clasp : p.clasps) clasp.material = {};
        });
}

void heldInTheResin(const Finding&, Tries& tries) {
    for (const auto& kind : enumCodes<ResinRetention>)
        tries.add("the resin held by " + wordsOf(kind.value), [&](P& p) {
            for (Saddle& saddle : p.saddles)
                if (saddle.base != BaseKind::Metal && !saddle.retention)
                    saddle.retention = kind.value;
        });
}

void beadsOnMetal(const Finding&, Tries& tries) {
    tries.add("beads on the metal base", [](P& p) {
        for (Saddle& saddle : p.saddles)
            if (saddle.base == BaseKind::Metal) saddle.retention = ResinRetention::Bead;
    });
}

void bothLines(const Finding&, Tries& tries) {
    tries.add("both finish lines, offset", [](P& p) {
        for (Saddle& saddle : p.saddles)
            if (saddle.base != BaseKind::Metal)
                saddle.finishLines = {.external = true, .internal = true, .offset = true};
    });
}

void restThatSuits(const Finding& finding, Tries& tries) {
    if (!finding.tooth) return;
    const RestKind kind = restOn(*finding.tooth, Surface::Mesial).kind;
    tries.add("a " + wordsOf(kind) + " rest", [&](P& p) {
        eachOn(p.rests, *finding.tooth, [&](Rest& rest) { rest.kind = kind; });
    });
}

void replacedOnce(const Finding& finding, Tries& tries) {
    if (!finding.tooth) return;
    tries.add(tries.name(*finding.tooth) + " once", [&](P& p) {
        bool seen = false;
        for (Saddle& saddle : p.saddles)
            std::erase_if(saddle.teeth, [&](Tooth tooth) {
                const bool again = tooth == *finding.tooth && seen;
                seen = seen || tooth == *finding.tooth;
                return again;
            });
    });
}

void castInstead(const Finding& finding, Tries& tries) {
    if (!finding.tooth) return;
    tries.add("a cast arm", [&](P& p) {
        eachOn(p.clasps, *finding.tooth, [](Clasp& clasp) { clasp.material = {}; });
    });
}

/// What may be tried against a finding of each rule.
struct Row {
    std::string_view rule;
    void (*propose)(const Finding&, Tries&);
};
constexpr Row kRows[] = {
    {"dentition.complete", chartedOtherwise},
    {"dentition.replaced-present", chartedOtherwise},
    {"saddle.once", replacedOnce},
    {"design.kennedy-stated", derivedClass},
    {"design.support-stated", derivedSupport},
    {"rest.bounded-saddle", restOnTheTooth},
    {"rest.free-end", restOnTheTooth},
    {"rest.kind", restThatSuits},
    {"clasp.rest", restOnTheTooth},
    {"clasp.ring-rest", restOnTheTooth},
    {"clasp.reciprocation", whatOpposes},
    {"clasp.opposed-by", whatOpposes},
    {"clasp.undercut-given", otherFaceOfArm},
    {"clasp.undercut-measured", surveyedUndercut},
    {"clasp.undercut-across", tipAcross},
    {"clasp.undercut-material", shallowerOrWire},
    {"clasp.elastic-limit", shallowerOrWire},
    {"clasp.wrought-embrasure", castInstead},
    {"indirect.required", seatForRetainer},
    {"indirect.position", seatForRetainer},
    {"indirect.seat", seatForRetainer},
    {"indirect.plate-alone", seatForRetainer},
    {"connector.given", otherConnector},
    {"connector.arch", otherConnector},
    {"connector.reaches", otherConnector},
    {"connector.torus", overTheTorus},
    {"connector.lingual-space", plateInstead},
    {"connector.bar-fits", plateInstead},
    {"guide.contact", faceOfTheSpace},
    {"retention.kind", heldInTheResin},
    {"retention.metal-base", beadsOnMetal},
    {"finish-line.both", bothLines},
    {"alloy.one-casting", oneMelt},
    {"alloy.nickel", frameworkWithout},
    {"alloy.cobalt-chromium", frameworkWithout},
};

bool isSame(const Finding& one, const Finding& other) {
    return one.rule == other.rule && one.tooth == other.tooth && one.found == other.found;
}

/// Whether the finding is gone from its place, and nothing refuses that did not before.
bool clears(const std::vector<Finding>& before, const std::vector<Finding>& after,
            const Finding& finding) {
    return std::ranges::none_of(after, [&](const Finding& now) {
        if (now.rule == finding.rule && now.tooth == finding.tooth) return true;
        return refuses(now) && std::ranges::none_of(before, [&](const Finding& was) {
                   return refuses(was) && isSame(was, now);
               });
    });
}

}  // namespace

std::vector<Remedy> remediesFor(const Examination& examination,
                                const std::vector<Finding>& findings, const Finding& finding) {
    const auto row = std::ranges::find(kRows, finding.rule, &Row::rule);
    if (row == std::end(kRows)) return {};
    Tries tries{examination};
    row->propose(finding, tries);
    std::vector<Remedy> remedies;
    for (Remedy& tried : std::move(tries).take()) {
        if (remedies.size() == kMostRemedies) break;
        const auto after =
            examine(tried.changed, examination.today, examination.limits, examination.guides);
        if (clears(findings, after, finding)) remedies.push_back(std::move(tried));
    }
    return remedies;
}

}  // namespace domain
