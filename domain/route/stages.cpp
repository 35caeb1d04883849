#include <array>

#include "domain/production/stage.h"

namespace domain {
namespace {

constexpr std::array<StageRow, enumCodes<Stage>.size()> kStages{{
    {Stage::Receipt, StageKind::Hands, "check what came, disinfect it, mark the casts"},
    {Stage::Survey, StageKind::Hands, "survey the cast, mark undercuts and tripod"},
    {Stage::BlockOut, StageKind::Hands, "block out undercuts, lay relief and beading"},
    {Stage::Duplication, StageKind::Hands, "duplicate the cast in refractory"},
    {Stage::WaxUp, StageKind::Hands, "wax the framework and its sprues"},
    {Stage::Investing, StageKind::MachineBatch, "invest and burn out"},
    {Stage::Casting, StageKind::MachineBatch, "cast the framework"},
    {Stage::DigitalDesign, StageKind::Hands, "design the framework on the scan"},
    {Stage::Milling, StageKind::MachineBatch, "mill the framework"},
    {Stage::Printing, StageKind::MachineBatch, "print and heat-treat the framework"},
    {Stage::Finishing, StageKind::Hands, "devest, finish and fit to the cast"},
    {Stage::FrameworkTryIn, StageKind::AtPractice, "the dentist tries the framework in"},
    {Stage::ToothSetUp, StageKind::Hands, "set the teeth in wax"},
    {Stage::ToothTryIn, StageKind::AtPractice, "the dentist tries the teeth in"},
    {Stage::Joining, StageKind::Hands, "join the parts on the cast"},
    {Stage::Processing, StageKind::MachineBatch, "pack and cure the base"},
    {Stage::Polishing, StageKind::Hands, "trim and polish"},
    {Stage::Inspection, StageKind::Hands, "inspect against the prescription"},
    {Stage::Delivery, StageKind::Hands, "disinfect, pack with its papers, hand over"},
    {Stage::SaddleImpression, StageKind::AtPractice,
     "the dentist takes an impression of the free ends in the framework"},
    {Stage::AlteredCast, StageKind::Hands, "cut the cast and pour the free ends anew"},
    {Stage::FaultReview, StageKind::Hands,
     "find out why the first one failed, before it is repeated"},
}};

}  // namespace

std::span<const StageRow> stages() { return kStages; }

const StageRow& rowOf(Stage stage) { return kStages[static_cast<std::size_t>(stage)]; }

}  // namespace domain
