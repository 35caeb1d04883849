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
        case domain::StageKind::Waiting:
            return Mark::Waiting;
        case domain::StageKind::AtPractice:
            return Mark::Away;
    }
    return Mark::InHand;
}

/// `stage` is the shape of the stage the order stands at, if there is one.
Mark shapeOf(domain::OrderStatus status, domain::WaitsFor waits, std::optional<Mark> stage) {
    if (status == domain::OrderStatus::Delivered) return Mark::Done;
    if (status == domain::OrderStatus::Withdrawn || status == domain::OrderStatus::Remade)
        return Mark::Refused;
    if (waits == domain::WaitsFor::Site) return Mark::Away;
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

QString waitedFor(domain::WaitsFor whom, Mark mark, const QString& length) {
    switch (whom) {
        case domain::WaitsFor::Nobody:
            return {};
        case domain::WaitsFor::Dentist:
        case domain::WaitsFor::Site:
            return (mark == Mark::Away ? QStringLiteral("away %1") : QStringLiteral("asked %1"))
                .arg(length);
        case domain::WaitsFor::Manager:
        case domain::WaitsFor::Bench:
            return QStringLiteral("since %1").arg(length);
    }
    return {};
}

QString waitingWords(const domain::Order& order, Mark mark, domain::Instant now) {
    if (isClosed(order)) return {};
    const auto whom = waitsFor(order);
    return QStringLiteral("waits for the %1, %2 · with the laboratory %3")
        .arg(spoken(whom), waitedFor(whom, mark, ago(order.waiting.since, now)),
             lengthWords(laboratoryTime(order, now)));
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
