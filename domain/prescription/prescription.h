/// What the dentist asked for: the whole work order for one removable partial denture.
///
/// Everything a prescription may leave open is optional or empty here; whether it may stay open is
/// for the rules (domain/rules) to say.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "domain/base/date.h"
#include "domain/prescription/clasp.h"
#include "domain/prescription/connector.h"
#include "domain/prescription/dentition.h"
#include "domain/prescription/enclosure.h"
#include "domain/prescription/material.h"
#include "domain/prescription/occlusion.h"
#include "domain/prescription/remake.h"
#include "domain/prescription/rest.h"
#include "domain/prescription/saddle.h"
#include "domain/prescription/sensitivity.h"
#include "domain/prescription/shade.h"
#include "domain/prescription/signature.h"
#include "domain/prescription/survey.h"
#include "domain/teeth/numbering.h"

namespace domain {

enum class Appliance : std::uint8_t {
    MetalFramework,  ///< a definitive denture on a cast, milled or printed framework
    InterimResin,    ///< an all-resin denture for months, not years
    Repair,
    Addition,  ///< of a tooth or clasp to a denture that exists
    Reline,
};
template <>
inline constexpr std::array<EnumCode<Appliance>, 5> enumCodes<Appliance>{{
    {Appliance::MetalFramework, "metal-framework"},
    {Appliance::InterimResin, "interim-resin"},
    {Appliance::Repair, "repair"},
    {Appliance::Addition, "addition"},
    {Appliance::Reline, "reline"},
}};

enum class Support : std::uint8_t { Tooth, ToothAndTissue, Tissue };
template <>
inline constexpr std::array<EnumCode<Support>, 3> enumCodes<Support>{{
    {Support::Tooth, "tooth"},
    {Support::ToothAndTissue, "tooth-and-tissue"},
    {Support::Tissue, "tissue"},
}};

/// Who it is for and who asks for it. Nothing of this ever enters the ledger: it holds codes.
struct Identity {
    std::optional<std::string> patientReference{};  ///< the practice's own name, acronym or code
    std::optional<std::string> patientName{};
    std::optional<std::string> prescriberName{};
    std::optional<std::string> prescriberAddress{};
    std::optional<std::string> prescriberContact{};
    std::optional<std::string> prescriberRegistration{};
    std::optional<std::string> remarks{};  ///< free text may name anybody, so it stays here too
    friend bool operator==(const Identity&, const Identity&) = default;
};

struct Prescription {
    Identity identity{};
    std::optional<Date> issued{};
    std::optional<Date> needed{};
    std::optional<Signature> signature{};

    std::optional<Appliance> appliance{};
    std::optional<Remake> remake{};  ///< given where one is made again
    /// Whether the free ends are impressed anew in the framework, and the cast altered to that.
    std::optional<bool> alteredCast{};
    Arch arch{};
    std::optional<Notation> notation{};  ///< nullopt: not declared; teeth were read as ISO 3950
    std::optional<std::string> statedClass{};  ///< Kennedy, as "III mod 1"
    std::optional<Support> statedSupport{};

    Dentition dentition{};
    std::vector<Saddle> saddles{};
    std::vector<Rest> rests{};
    std::vector<Clasp> clasps{};
    std::vector<GuidePlate> guidePlates{};
    std::optional<MajorConnector> majorConnector{};
    std::vector<MinorConnector> minorConnectors{};
    std::vector<IndirectRetainer> indirectRetainers{};

    Framework framework{};
    Base base{};
    ArtificialTeeth teeth{};
    std::vector<Shade> shades{};
    Occlusion occlusion{};
    Survey survey{};
    std::vector<Enclosure> enclosures{};
    Sensitivities sensitivities{};

    friend bool operator==(const Prescription&, const Prescription&) = default;
};

/// All teeth its saddles replace.
ToothSet replacedTeeth(const Prescription& prescription);

/// All teeth its rests, clasps, guide plates and minor connectors lean on.
ToothSet abutments(const Prescription& prescription);

/// The same prescription with nobody's name in it: what the ledger may hold.
Prescription withoutIdentity(Prescription prescription);

/// The same with what came for another order of the patient and serves this one too: the working
/// cast of the other arch is the opposing cast of this. What it has itself stays as it is.
Prescription withEnclosuresOf(Prescription prescription, const Prescription& companion);

/// The notation its teeth are written in; ISO 3950 where none was declared.
inline Notation notationOf(const Prescription& prescription) {
    return prescription.notation.value_or(Notation::Iso3950);
}

}  // namespace domain
