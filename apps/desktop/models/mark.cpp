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

}  // namespace

Marked markOf(const actions::FloorLine& line) {
    const QString word = text(line.holdUp);
    if (line.status == domain::OrderStatus::Delivered) return {Mark::Done, word};
    const bool away =
        line.stage && line.stageStatus && shapeOf(*line.stage, *line.stageStatus) == Mark::Away;
    if (line.waitsFor == domain::WaitsFor::Dentist && !away) return {Mark::Asked, word};
    if (line.waitsFor == domain::WaitsFor::Manager || !line.stage || !line.stageStatus)
        return {Mark::ToDo, word};
    return {shapeOf(*line.stage, *line.stageStatus), word};
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
