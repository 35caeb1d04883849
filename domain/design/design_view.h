/// Small questions the rules and the pictures put to a design.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "domain/design/design.h"
#include "domain/prescription/prescription.h"

namespace domain {

/// Nothing written, or nothing but spaces.
bool isBlank(const std::string& text);
bool isBlank(const std::optional<std::string>& text);

/// "7.5 mm given; this laboratory asks 8 mm"
std::string tooLittle(Microns given, Microns houseLimit);

/// What is ordered. A prescription that does not say so but describes a framework is taken for one,
/// so that the first question sheet already asks everything.
std::optional<Appliance> applianceOf(const Prescription& prescription);
bool isMetal(const Prescription& prescription);
bool isInterim(const Prescription& prescription);
/// A denture made from nothing, not work on one that exists.
bool isNewDenture(const Prescription& prescription);

/// A tooth the prescription names, and what for ("rest", "saddle").
struct NamedTooth {
    Tooth tooth{11_fdi};
    std::string_view what{};
    bool leans{};  ///< whether a part of the denture leans on it
};
std::vector<NamedTooth> namedTeeth(const Prescription& prescription);

/// Whether a canine, premolar or molar stands on that side of the arch, third molars apart: a tooth
/// to clasp or to end a plate on.
bool hasAbutment(const Prescription& prescription, Side side);

bool hasRest(const Prescription& prescription, Tooth tooth);
/// A cingulum or incisal rest without a side counts for both.
bool hasRest(const Prescription& prescription, Tooth tooth, Surface side);
bool hasMinorConnector(const Prescription& prescription, Tooth tooth);

/// The next tooth along the arch on that side, standing or not; none behind a third molar.
std::optional<Tooth> neighbour(Tooth tooth, Surface side) noexcept;
/// The side of the neighbour that looks back at the tooth.
Surface facing(Tooth tooth, Surface side) noexcept;

/// A position of its arch as a tooth.
Tooth toothAt(const Prescription& prescription, int position) noexcept;
/// The teeth standing next to an area.
ToothSet abutmentsOf(const Design& design, const EdentulousArea& area);
bool isBesideFreeEnd(const Design& design, Tooth tooth);
/// Whether the tooth lies in the area.
bool isIn(const Design& design, const EdentulousArea& area, Tooth tooth) noexcept;
/// Whether any tooth of the saddle lies in a free-end area.
bool isFreeEnd(const Design& design, const Saddle& saddle);

/// The face the retentive arm runs on: as said, else that of its undercut.
std::optional<Surface> retentiveFace(const Clasp& clasp);

const AbutmentSurvey* surveyOf(const Prescription& prescription, Tooth tooth);
bool isSensitive(const Prescription& prescription, Sensitivity sensitivity);

}  // namespace domain
