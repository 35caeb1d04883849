#include "domain/design/clasp_mechanics.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "domain/design/possible_sizes.h"
#include "domain/teeth/crown_size.h"

namespace domain {
namespace {

// How far derived sizes may be off, as a share; assumed.
constexpr double kLengthDoubt = 0.1;
constexpr double kBarLengthDoubt = 0.2;
constexpr double kWidthDoubt = 0.07;
// Below the height of contour the tip lies 2 to 3 mm down (angle of convergence 7.1 to 4.8 degrees
// at 0.25 mm); friction of metal on wet enamel 0.1 to 0.3. Both assumed.
constexpr Range kHeightBelowContour{2, 3};
constexpr Range kFriction{0.1, 0.3};

struct UsualSection {
    ArmSection section{};
    double width{};  ///< mm at the root
    double tip{};
};

UsualSection usualSection(const Clasp& clasp, ArmMaterial material) noexcept {
    switch (material) {
        case ArmMaterial::CastCobaltChromium:
        case ArmMaterial::CastNickelChromium:
        case ArmMaterial::CastGold:
        case ArmMaterial::CastTitanium:
            if (isBar(clasp.kind)) return {ArmSection::HalfRound, 1.8, 0.6};
            return {ArmSection::HalfRound, clasp.tooth.kind() == ToothKind::Molar ? 1.4 : 1.2, 0.5};
        case ArmMaterial::WroughtWire:
            return {ArmSection::Round, 1.0, 1.0};
        case ArmMaterial::Polymer:
            return {ArmSection::HalfRound, 3.0, 0.8};
    }
    return {};
}

/// Once round an ellipse (Ramanujan's first formula).
double wayRound(CrownSize crown) noexcept {
    const double a = millimetres(crown.mesiodistal) / 2;
    const double b = millimetres(crown.buccolingual) / 2;
    return std::numbers::pi * (3 * (a + b) - std::sqrt((3 * a + b) * (a + 3 * b)));
}

bool endsAtMiddle(const Clasp& clasp) noexcept {
    return clasp.undercut && (clasp.undercut->place == UndercutPlace::MidBuccal ||
                              clasp.undercut->place == UndercutPlace::MidLingual);
}

/// How far round the crown the arm runs, as a share of the way round.
double shareRound(const Clasp& clasp) noexcept {
    if (clasp.kind == ClaspKind::BackAction) return 4.0 / 8;
    return endsAtMiddle(clasp) ? 2.0 / 8 : 3.0 / 8;
}

/// What of an arm from above lies on the crown.
double onTheCrown(const Clasp& clasp) noexcept {
    return shareRound(clasp) * wayRound(crownSize(clasp.tooth));
}

double usualLength(const Clasp& clasp, ArmMaterial material) noexcept {
    constexpr double kUpFromTheVestibule = 7;
    constexpr double kFromTheBase = 8;
    if (isBar(clasp.kind))
        return millimetres(crownSize(clasp.tooth).mesiodistal) + kUpFromTheVestibule;
    return onTheCrown(clasp) + (material == ArmMaterial::WroughtWire ? kFromTheBase : 0);
}

/// A bar stands straight up to its tip; an arm from above follows the crown.
double usualRadius(const Clasp& clasp) noexcept {
    if (isBar(clasp.kind)) return 0;
    const CrownSize crown = crownSize(clasp.tooth);
    return (millimetres(crown.mesiodistal) + millimetres(crown.buccolingual)) / 4;
}

/// Whether what is given of the clasp can be; what is derived always can.
bool canBe(const Clasp& clasp) noexcept {
    const ClaspArm& arm = clasp.arm;
    const auto holds = [](auto bounds, const auto& size) { return !size || bounds.holds(*size); };
    return *clasp.undercut->depth > 0_um && possible::kUndercut.holds(*clasp.undercut->depth) &&
           holds(possible::kArmLength, arm.length) && holds(possible::kArmWidth, arm.width) &&
           holds(possible::kArmTip, arm.tip);
}

/// The arm at the stiff (1) or the soft (-1) end of its doubt.
ArmShape atEnd(const DerivedArm& arm, bool bar, double stiff) noexcept {
    ArmShape shape = arm.shape;
    const double lengthDoubt = bar ? kBarLengthDoubt : kLengthDoubt;
    if (arm.lengthIsDerived) {
        shape.length *= 1 - stiff * lengthDoubt;
        shape.run *= 1 - stiff * lengthDoubt;
    }
    if (arm.widthIsDerived) shape.width *= 1 + stiff * kWidthDoubt;
    return shape;
}

}  // namespace

std::optional<ArmMaterial> castArm(FrameworkMaterial material) noexcept {
    switch (material) {
        case FrameworkMaterial::CobaltChromium:
            return ArmMaterial::CastCobaltChromium;
        case FrameworkMaterial::NickelChromium:
            return ArmMaterial::CastNickelChromium;
        case FrameworkMaterial::GoldTypeIv:
            return ArmMaterial::CastGold;
        case FrameworkMaterial::Titanium:
        case FrameworkMaterial::TitaniumAlloy:
            return ArmMaterial::CastTitanium;
        case FrameworkMaterial::Polyetheretherketone:
        case FrameworkMaterial::Acetal:
            return ArmMaterial::Polymer;
    }
    return {};
}

std::optional<ArmMaterial> armMaterial(const Prescription& prescription, const Clasp& clasp) {
    if (clasp.material) return clasp.material;
    if (clasp.kind == ClaspKind::Combination) return ArmMaterial::WroughtWire;
    if (!prescription.framework.material) return {};
    return castArm(*prescription.framework.material);
}

const Material* armProperties(const Prescription& prescription, const Clasp& clasp) {
    const auto material = armMaterial(prescription, clasp);
    if (!material) return nullptr;
    const Framework& framework = prescription.framework;
    if (framework.material && castArm(*framework.material) == material)
        return &materialOf(*framework.material, framework.making.value_or(FrameworkMaking::Cast));
    return &materialOf(*material);
}

DerivedArm armOf(const Clasp& clasp, ArmMaterial material) noexcept {
    const UsualSection usual = usualSection(clasp, material);
    const ClaspArm& given = clasp.arm;
    const double length = given.length ? millimetres(*given.length) : usualLength(clasp, material);
    const double tip = static_cast<double>(given.tip.value_or(Share{}).count()) / 1'000'000;
    return {.shape = {.section = given.section.value_or(usual.section),
                      .width = given.width ? millimetres(*given.width) : usual.width,
                      .tip = given.tip ? tip : usual.tip,
                      .length = length,
                      .radius = usualRadius(clasp),
                      .run = isBar(clasp.kind) ? 0 : std::max(0.0, length - onTheCrown(clasp))},
            .lengthIsDerived = !given.length,
            .widthIsDerived = !given.width};
}

double removalForce(double tipForce, double slopeTangent, double friction) noexcept {
    return tipForce * (friction + slopeTangent) / (1 - friction * slopeTangent);
}

std::optional<ClaspMechanics> mechanicsOf(const Prescription& prescription, const Clasp& clasp) {
    const auto material = armMaterial(prescription, clasp);
    if (!material || !clasp.undercut || !clasp.undercut->depth || !canBe(clasp)) return {};
    const double deflection = millimetres(*clasp.undercut->depth);
    const DerivedArm arm = armOf(clasp, *material);

    const Material* properties = armProperties(prescription, clasp);
    const Range modulus{properties->modulus.range.least * 1000,
                        properties->modulus.range.most * 1000};
    const bool bar = isBar(clasp.kind);
    const ArmLoad soft = loadOf(atEnd(arm, bar, -1), modulus.least, deflection);
    const ArmLoad stiff = loadOf(atEnd(arm, bar, 1), modulus.most, deflection);
    const ArmLoad usual = loadOf(arm.shape, modulus.middle(), deflection);
    const Range strength = properties->strength.range;
    const double flat = deflection / kHeightBelowContour.most;
    const double steep = deflection / kHeightBelowContour.least;
    return ClaspMechanics{
        .tooth = clasp.tooth,
        .kind = clasp.kind,
        .arm = arm,
        .material = properties,
        .deflection = deflection,
        .force = {soft.force, stiff.force},
        .rootStress = Range::between(soft.rootStress, stiff.rootStress),
        .largestStress = {soft.largestStress, stiff.largestStress},
        .largestAt = usual.largestAt,
        .setMargin = {strength.least / stiff.largestStress, strength.most / soft.largestStress},
        .removal = {removalForce(soft.force, flat, kFriction.least),
                    removalForce(stiff.force, steep, kFriction.most)}};
}

}  // namespace domain
