#include <array>

#include "domain/route/stage.h"

namespace domain {
namespace {

constexpr Demand kDisinfection[] = {Demand::Disinfection};
constexpr Demand kAlloyLot[] = {Demand::AlloyLot};
constexpr Demand kBlankLot[] = {Demand::BlankLot};
constexpr Demand kPowderLot[] = {Demand::PowderLot};
constexpr Demand kResinLot[] = {Demand::ResinLot};
constexpr Demand kOtherPerson[] = {Demand::OtherPerson};
constexpr Demand kHandingOver[] = {Demand::Disinfection, Demand::LegalFields, Demand::Statement};

constexpr std::array<StageRow, enumCodes<Stage>.size()> kStages{{
    {Stage::Receipt, StageKind::Hands, false, "check what came, disinfect it, mark the casts",
     kDisinfection},
    {Stage::Survey, StageKind::Hands, true, "survey the cast, mark undercuts and tripod"},
    {Stage::BlockOut, StageKind::Hands, true, "block out undercuts, lay relief and beading"},
    {Stage::Duplication, StageKind::Hands, true, "duplicate the cast in refractory"},
    {Stage::WaxUp, StageKind::Hands, true, "wax the framework and its sprues"},
    {Stage::Investing, StageKind::MachineBatch, true, "invest and burn out"},
    {Stage::Casting, StageKind::MachineBatch, true, "cast the framework", kAlloyLot},
    {Stage::DigitalDesign, StageKind::Hands, true, "design the framework on the scan"},
    {Stage::Milling, StageKind::MachineBatch, true, "mill the framework", kBlankLot},
    {Stage::Printing, StageKind::MachineBatch, true, "print and heat-treat the framework",
     kPowderLot},
    {Stage::Finishing, StageKind::Hands, true, "devest, finish and fit to the cast"},
    {Stage::FrameworkTryIn, StageKind::AtPractice, false, "the dentist tries the framework in",
     kDisinfection},
    {Stage::ToothSetUp, StageKind::Hands, true, "set the teeth in wax"},
    {Stage::ToothTryIn, StageKind::AtPractice, false, "the dentist tries the teeth in",
     kDisinfection},
    {Stage::Joining, StageKind::Hands, true, "join the parts on the cast"},
    {Stage::Processing, StageKind::MachineBatch, true, "pack and cure the base", kResinLot},
    {Stage::Polishing, StageKind::Hands, true, "trim and polish"},
    {Stage::Inspection, StageKind::Hands, false, "inspect against the prescription", kOtherPerson},
    {Stage::Delivery, StageKind::Hands, false, "disinfect, pack with its papers, hand over",
     kHandingOver},
    {Stage::SaddleImpression, StageKind::AtPractice, false,
     "the dentist takes an impression of the free ends in the framework"},
    {Stage::AlteredCast, StageKind::Hands, true, "cut the cast and pour the free ends anew"},
    {Stage::FaultReview, StageKind::Hands, false,
     "find out why the first one failed, before it is repeated"},
}};

}  // namespace

std::span<const StageRow> stages() { return kStages; }

const StageRow& rowOf(Stage stage) { return kStages[static_cast<std::size_t>(stage)]; }

}  // namespace domain
