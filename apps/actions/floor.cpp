#include "apps/actions/floor.h"

#include <algorithm>

#include "storage/floor_pages.h"
#include "storage/ledger.h"

namespace actions {
namespace {

using domain::Error;
using domain::ErrorCode;
using domain::OrderNumber;
using domain::Result;
using storage::LabelledOrder;

/// The laboratory's clock runs on while its own people are waited for.
std::int64_t timeSoFar(const storage::RegisterRow& row, domain::Instant now) {
    const bool runs =
        row.waitsFor == domain::WaitsFor::Manager || row.waitsFor == domain::WaitsFor::Bench;
    const std::int64_t since = now.microseconds() - row.changedAt.microseconds();
    return row.laboratoryTime + (runs ? std::max<std::int64_t>(since, 0) : 0);
}

FloorLine lineOf(const LabelledOrder& order, domain::Instant now) {
    const storage::RegisterRow& row = order.row;
    return {.number = row.number,
            .description = row.description,
            .status = row.status,
            .stage = row.stage,
            .stageStatus = row.stageStatus,
            .waitsFor = row.waitsFor,
            .holdUp = row.holdUp,
            .due = row.due,
            .receivedAt = row.receivedAt,
            .changedAt = row.changedAt,
            .patient = order.label ? order.label->patient : row.patientCode,
            .prescriber = order.label ? order.label->prescriber : row.prescriberCode,
            .caseLeader = row.caseLeader,
            .waitingSince = row.waitingSince,
            .laboratoryTime = timeSoFar(row, now)};
}

Result<std::vector<FloorLine>> linesOf(const Laboratory& laboratory,
                                       const Result<std::vector<LabelledOrder>>& orders) {
    if (!orders) return orders.error();
    std::vector<FloorLine> lines;
    lines.reserve(orders->size());
    for (const LabelledOrder& order : *orders) lines.push_back(lineOf(order, laboratory.now()));
    return lines;
}

}  // namespace

Result<std::vector<FloorLine>> floorPage(const Laboratory& laboratory,
                                         const std::optional<OrderNumber>& after,
                                         std::size_t most) {
    std::optional<storage::RegisterRow> seen;
    if (after) {
        auto row = storage::OrderRegister{laboratory.records()}.find(*after);
        if (!row) return row.error();
        if (!*row) return Error{ErrorCode::Unusable, "no such order: " + after->text()};
        seen = **std::move(row);
    }
    return linesOf(laboratory, storage::FloorPages{laboratory.records()}.open(seen, most));
}

Result<std::vector<FloorLine>> closedPage(const Laboratory& laboratory,
                                          const std::optional<OrderNumber>& before,
                                          std::size_t most) {
    return linesOf(laboratory, storage::FloorPages{laboratory.records()}.closed(before, most));
}

Result<std::vector<FloorLine>> floor(const Laboratory& laboratory) {
    return linesOf(laboratory, storage::FloorPages{laboratory.records()}.allOpen());
}

Result<std::vector<FloorLine>> findOrders(const Laboratory& laboratory, const std::string& words,
                                          const std::optional<OrderNumber>& before,
                                          std::size_t most) {
    const storage::FloorPages pages{laboratory.records()};
    const auto typed = OrderNumber::parse(words);
    const auto numbers = typed ? Result<std::vector<OrderNumber>>{std::vector{*typed}}
                               : storage::OrderLabels{laboratory.records()}.find(
                                     storage::searchWords(words), before, most);
    if (!numbers) return numbers.error();
    std::vector<FloorLine> lines;
    for (const OrderNumber& number : *numbers) {
        const auto order = pages.find(number);
        if (!order) return order.error();
        if (*order) lines.push_back(lineOf(**order, laboratory.now()));
    }
    return lines;
}

Result<std::int64_t> entries(const Laboratory& laboratory) {
    return storage::Ledger{laboratory.records()}.entries();
}

}  // namespace actions
