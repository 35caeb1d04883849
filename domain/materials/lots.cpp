#include <algorithm>

#include "domain/materials/lot.h"

namespace domain {
namespace {

struct Use {
    const KeptLot& kept;
    std::int64_t amount;
    const Prescription& prescription;
    Date today;

    const Lot& lot() const { return kept.lot; }
    const Certificate& certificate() const { return kept.lot.certificate; }
    bool sensitiveTo(Sensitivity sensitivity) const {
        return std::ranges::count(prescription.sensitivities.known, sensitivity) > 0;
    }
};

using Objection = std::optional<std::string>;

Objection isHeld(const Use& use) {
    if (!use.kept.held) return {};
    return "it is in quarantine; release it or take another lot";
}

Objection isExpired(const Use& use) {
    if (!use.lot().expiry || use.today <= *use.lot().expiry) return {};
    return "it expired on " + use.lot().expiry->text() + "; take a lot that is in date";
}

Objection isTooLittle(const Use& use) {
    if (use.amount <= 0) return "an amount above 0 was expected";
    if (use.amount <= use.kept.left()) return {};
    return "only " + amountText(use.lot().kind, std::max<std::int64_t>(use.kept.left(), 0)) +
           " of it are left, and " + amountText(use.lot().kind, use.amount) + " were asked";
}

Objection isUncertified(const Use& use) {
    if (!isFrameworkMetal(use.lot().kind) || use.certificate().material) return {};
    return "its certificate does not say which material it is; enter that first";
}

Objection isAnotherMaterial(const Use& use) {
    const auto asked = use.prescription.framework.material;
    const auto material = use.certificate().material;
    if (!isFrameworkMetal(use.lot().kind) || !asked || !material || asked == material) return {};
    return "it is " + wordsOf(*material) + ", and the prescription asks for " + wordsOf(*asked);
}

Objection holdsNickel(const Use& use) {
    if (!isFrameworkMetal(use.lot().kind) || !use.sensitiveTo(Sensitivity::Nickel)) return {};
    const auto nickel = use.certificate().nickel;
    if (nickel && *nickel < kNickelFree) return {};
    return "the patient is sensitive to nickel, and its certificate " +
           (nickel ? "states " + text(*nickel) : std::string{"does not state how much it holds"}) +
           "; below " + text(kNickelFree) + " is asked";
}

Objection holdsWhatThePatientDoesNotBear(const Use& use) {
    const auto material = use.certificate().material;
    if (!material) return {};
    const bool cobalt = *material == FrameworkMaterial::CobaltChromium;
    if (cobalt && use.sensitiveTo(Sensitivity::Cobalt))
        return "the patient is sensitive to cobalt, and it holds cobalt";
    if ((cobalt || *material == FrameworkMaterial::NickelChromium) &&
        use.sensitiveTo(Sensitivity::Chromium))
        return "the patient is sensitive to chromium, and it holds chromium";
    return {};
}

Objection isHazardous(const Use& use) {
    const std::pair<std::optional<Share>, std::string_view> limited[] = {
        {use.certificate().beryllium, "beryllium"}, {use.certificate().cadmium, "cadmium"}};
    for (const auto& [share, name] : limited)
        if (share && *share > kMostHazardous)
            return "it holds " + text(*share) + " of " + std::string{name} +
                   ", and ISO 22674 allows at most " + text(kMostHazardous);
    return {};
}

Objection isAnotherResin(const Use& use) {
    const auto asked = use.prescription.base.resin;
    const auto resin = use.certificate().resin;
    if (!asked || !resin || asked == resin) return {};
    return "it is " + wordsOf(*resin) + ", and the prescription asks for " + wordsOf(*asked);
}

Objection holdsMethacrylate(const Use& use) {
    const bool isResin =
        use.lot().kind == LotKind::ResinPowder || use.lot().kind == LotKind::ResinLiquid;
    if (!isResin || !use.sensitiveTo(Sensitivity::Methacrylate) ||
        use.certificate().methacrylateFree.value_or(false))
        return {};
    return "the patient is sensitive to methacrylate, and it is not certified free of it";
}

constexpr Objection (*kObjections[])(const Use&) = {&isHeld,
                                                    &isExpired,
                                                    &isTooLittle,
                                                    &isUncertified,
                                                    &isAnotherMaterial,
                                                    &holdsNickel,
                                                    &holdsWhatThePatientDoesNotBear,
                                                    &isHazardous,
                                                    &isAnotherResin,
                                                    &holdsMethacrylate};

}  // namespace

std::string amountText(LotKind kind, std::int64_t amount) {
    if (kind == LotKind::Teeth) return std::to_string(amount) + " pcs";
    return text(Milligrams::of(amount));
}

std::optional<std::string> unsuitable(const KeptLot& lot, std::int64_t amount,
                                      const Prescription& prescription, Date today) {
    for (const auto objection : kObjections)
        if (auto why = objection({lot, amount, prescription, today})) return why;
    return {};
}

}  // namespace domain
