#include "apps/desktop/models/mark.h"

#include "apps/desktop/models/words.h"

namespace models {
namespace {

Mark shapeOf(domain::Stage stage, domain::StageStatus status) {
    switch (status) {
        case domain::StageStatus::ToDo:
            return Mark::ToDo;
        case domain::StageStatus::Done:
            return Mark::Done;
        case domain::StageStatus::InHand:
            break;
    }
    switch (domain::rowOf(stage).kind) {
        case domain::StageKind::Hands:
            return Mark::InHand;
        case domain::StageKind::MachineBatch:
            return Mark::Waiting;
        case domain::StageKind::AtPractice:
            return Mark::Away;
    }
    return Mark::InHand;
}

/// `stage` is the shape of the stage the order stands at, if there is one.
Mark shapeOf(domain::OrderStatus status, domain::WaitsFor waits, std::optional<Mark> stage) {
    if (status == domain::OrderStatus::Delivered) return Mark::Done;
    if (waits == domain::WaitsFor::Dentist && stage != Mark::Away) return Mark::Asked;
    if (waits == domain::WaitsFor::Manager) return Mark::ToDo;
    return stage.value_or(Mark::ToDo);
}

}  // namespace

Marked markOf(const actions::FloorLine& line) {
    std::optional<Mark> stage;
    if (line.stage && line.stageStatus) stage = shapeOf(*line.stage, *line.stageStatus);
    return {shapeOf(line.status, line.waitsFor, stage), text(line.holdUp)};
}

Marked markOf(const domain::Order& order) {
    std::optional<Mark> stage;
    if (const auto* step = currentStep(order)) stage = shapeOf(step->stage, step->status);
    return {shapeOf(order.status, waitsFor(order), stage), text(holdUp(order))};
}

Marked markOf(domain::Stage stage, domain::StageStatus status) {
    const Mark mark = shapeOf(stage, status);
    return {mark, mark == Mark::Waiting ? QStringLiteral("in hand, at the machine") : spoken(mark)};
}

Marked markOf(domain::Severity severity) {
    switch (severity) {
        case domain::Severity::Missing:
            return {Mark::Asked, spoken(severity)};
        case domain::Severity::Conflict:
            return {Mark::Refused, spoken(severity)};
        case domain::Severity::Caution:
            return {Mark::Caution, spoken(severity)};
    }
    return {};
}

}  // namespace models
