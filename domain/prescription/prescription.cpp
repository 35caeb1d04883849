#include "domain/prescription/prescription.h"

#include <algorithm>

namespace domain {

ToothSet replacedTeeth(const Prescription& prescription) {
    ToothSet teeth;
    for (const Saddle& saddle : prescription.saddles)
        for (const Tooth tooth : saddle.teeth) teeth.add(tooth);
    return teeth;
}

ToothSet abutments(const Prescription& prescription) {
    ToothSet teeth;
    for (const Rest& rest : prescription.rests) teeth.add(rest.tooth);
    for (const Clasp& clasp : prescription.clasps) teeth.add(clasp.tooth);
    for (const GuidePlate& plate : prescription.guidePlates) teeth.add(plate.tooth);
    for (const MinorConnector& connector : prescription.minorConnectors) teeth.add(connector.tooth);
    return teeth;
}

namespace {

/// What an enclosure of one arch is to the other.
constexpr std::pair<EnclosureKind, EnclosureKind> kOpposite[] = {
    {EnclosureKind::WorkingCast, EnclosureKind::OpposingCast},
    {EnclosureKind::WorkingImpression, EnclosureKind::OpposingImpression},
    {EnclosureKind::WorkingScan, EnclosureKind::OpposingScan}};

EnclosureKind opposite(EnclosureKind kind) {
    for (const auto& [working, opposing] : kOpposite) {
        if (kind == working) return opposing;
        if (kind == opposing) return working;
    }
    return kind;
}

}  // namespace

Prescription withEnclosuresOf(Prescription prescription, const Prescription& companion) {
    for (Enclosure enclosure : companion.enclosures) {
        // A denture that is worn belongs to its own arch alone.
        const bool otherArch = companion.arch != prescription.arch;
        if (otherArch && enclosure.kind == EnclosureKind::PresentDenture) continue;
        if (otherArch) enclosure.kind = opposite(enclosure.kind);
        if (std::ranges::count(prescription.enclosures, enclosure.kind, &Enclosure::kind) == 0)
            prescription.enclosures.push_back(std::move(enclosure));
    }
    return prescription;
}

Prescription withoutIdentity(Prescription prescription) {
    prescription.identity = {};
    return prescription;
}

}  // namespace domain
