#include "apps/actions/work.h"

#include <algorithm>
#include <cstdlib>

#include "apps/actions/carry_out.h"
#include "storage/ledger.h"
#include "storage/order_register.h"
#include "storage/workshop_store.h"

namespace actions {
namespace {

using domain::Command;
using domain::Error;
using domain::ErrorCode;
using domain::EventKind;
using domain::Order;
using domain::OrderNumber;
using domain::Permission;
using domain::Result;
using domain::StageRecord;

/// The order first, then those that travel with it and stand at the same stage.
Result<std::vector<OrderNumber>> ordersOf(const Laboratory& laboratory, const Work& work,
                                          const Target& target) {
    std::vector<OrderNumber> numbers{target.number};
    if (!target.together) return numbers;
    const auto order = work.load(target.number);
    if (!order) return order.error();
    const auto rows = storage::OrderRegister{laboratory.records()}.all();
    if (!rows) return rows.error();
    const OrderNumber leader = order->caseLeader.value_or(target.number);
    const auto* step = currentStep(*order);
    for (const storage::RegisterRow& row : *rows)
        if (row.number != target.number && (row.number == leader || row.caseLeader == leader) &&
            step != nullptr && row.stage == step->stage)
            numbers.push_back(row.number);
    if (numbers.size() == 1)
        return Error{ErrorCode::Refused, "order " + target.number.text() +
                                             ": no other order of its case stands at this stage"};
    return numbers;
}

/// The same command for each order of a target, all or none.
Result<Outcome> forEach(const Laboratory& laboratory, const Target& target, EventKind kind,
                        Permission permission, const Who& who,
                        const std::function<Result<Command>(Work&)>& command) {
    return carryOut(laboratory, target.number, kind, permission, who,
                    [&](Work& work) -> Result<Order> {
                        const auto numbers = ordersOf(laboratory, work, target);
                        if (!numbers) return numbers.error();
                        const auto given = command(work);
                        if (!given) return given.error();
                        std::optional<Order> first;
                        for (const OrderNumber& number : *numbers) {
                            auto order = work.apply(number, *given);
                            if (!order) return order;
                            if (!first) first = *std::move(order);
                        }
                        return *std::move(first);
                    });
}

Result<Outcome> one(const Laboratory& laboratory, const OrderNumber& number, EventKind kind,
                    Permission permission, const Who& who,
                    const std::function<Result<Command>(Work&)>& command) {
    return forEach(laboratory, {number, false}, kind, permission, who, command);
}

/// A record with what the laboratory knows about its lot or equipment, and its words sealed.
Result<StageRecord> completed(const domain::Workshop& workshop, Work& work,
                              const GivenRecord& given) {
    StageRecord record = given.record;
    if (auto* use = std::get_if<domain::LotUsed>(&record))
        if (const auto lot = workshop.lots.find(use->lot); lot != workshop.lots.end()) {
            use->kind = lot->second.lot.kind;
            const bool counted = use->kind == domain::LotKind::Teeth;
            if (given.inPieces && *given.inPieces != counted)
                return Error{ErrorCode::Unusable,
                             "lot " + use->lot.text() + ": expected " +
                                 (counted ? "pieces, as \"6 pcs\"" : "a mass, as \"23.4 g\"")};
        }
    if (auto* use = std::get_if<domain::EquipmentUsed>(&record)) {
        if (const auto known = workshop.equipment.find(use->equipment);
            known != workshop.equipment.end())
            use->kind = known->second.kind;
        auto sealed = work.seal(given.responsibility);
        if (!sealed) return sealed.error();
        use->responsibility = *std::move(sealed);
    }
    return record;
}

constexpr std::string_view kScanKey = "scan-";
constexpr std::int64_t kSameScanMicroseconds = 10'000'000;

/// Whether a scan follows one of the same person so fast that it must be the same; a clock that was
/// put back makes none of it another.
bool isSameScan(const domain::Event& newest, const Who& who, domain::Instant now) {
    return newest.key.starts_with(kScanKey) && newest.person == who.person &&
           std::abs(now.microseconds() - newest.at.microseconds()) < kSameScanMicroseconds;
}

}  // namespace

Result<Outcome> start(const Laboratory& laboratory, const Target& target,
                      std::optional<domain::Stage> stage, const Who& who) {
    return forEach(laboratory, target, EventKind::StageStarted, Permission::WorkStages, who,
                   [&](Work&) -> Result<Command> { return Command{domain::Start{stage}}; });
}

Result<Outcome> finish(const Laboratory& laboratory, const Target& target,
                       std::optional<domain::Stage> stage, const Who& who) {
    return forEach(laboratory, target, EventKind::StageDone, Permission::WorkStages, who,
                   [&](Work&) -> Result<Command> { return Command{domain::Finish{stage}}; });
}

Result<Outcome> scan(const Laboratory& laboratory, const OrderNumber& number, const Who& who) {
    const auto order = storage::loadOrder(laboratory.records(), number);
    if (!order) return order.error();
    if (!*order) return Error{ErrorCode::Unusable, "no such order: " + number.text()};
    const auto events = storage::Ledger{laboratory.records()}.eventsOf(number);
    if (!events) return events.error();
    // Of the order as it was read: somebody else may have been faster between the two.
    const domain::Event& newest = events->at(static_cast<std::size_t>((*order)->version - 1));
    if (isSameScan(newest, who, laboratory.now())) return Outcome{**order, true};
    // Two scanners that read at once make the same key, and so one transition.
    Who keyed = who;
    keyed.key = std::string{kScanKey} + number.text() + '-' + std::to_string(newest.version) + '-' +
                who.person.text();
    const domain::StageStep* step = currentStep(**order);
    const bool inHand = step != nullptr && step->status == domain::StageStatus::InHand;
    return inHand ? finish(laboratory, {number}, {}, keyed)
                  : start(laboratory, {number}, {}, keyed);
}

Result<Outcome> record(const Laboratory& laboratory, const OrderNumber& number,
                       std::optional<domain::Stage> stage, const std::vector<GivenRecord>& records,
                       const Who& who) {
    return one(laboratory, number, EventKind::Recorded, Permission::WorkStages, who,
               [&](Work& work) -> Result<Command> {
                   const auto workshop = storage::loadWorkshop(laboratory.records());
                   if (!workshop) return workshop.error();
                   domain::Record command{.stage = stage};
                   for (const GivenRecord& given : records) {
                       auto whole = completed(*workshop, work, given);
                       if (!whole) return whole.error();
                       command.records.push_back(*std::move(whole));
                   }
                   return Command{std::move(command)};
               });
}

Result<Outcome> takeReturn(const Laboratory& laboratory, const Target& target,
                           const Return& returned, const Who& who) {
    return forEach(
        laboratory, target, EventKind::Returned, Permission::TakeReturns, who,
        [&](Work& work) -> Result<Command> {
            auto findings = work.seal(returned.findings);
            if (!findings) return findings.error();
            return Command{domain::TakeReturn{returned.verdict, returned.backTo,
                                              *std::move(findings), returned.disinfection}};
        });
}

Result<Outcome> redo(const Laboratory& laboratory, const OrderNumber& number,
                     domain::RedoReason reason, domain::Stage from,
                     std::optional<domain::Stage> fault, const std::optional<std::string>& note,
                     const Who& who) {
    return one(laboratory, number, EventKind::Redone, Permission::RedoStages, who,
               [&](Work& work) -> Result<Command> {
                   auto sealed = work.seal(note);
                   if (!sealed) return sealed.error();
                   return Command{domain::Redo{reason, from, fault, *std::move(sealed)}};
               });
}

Result<Outcome> sendWork(const Laboratory& laboratory, const OrderNumber& number,
                         const domain::ThingCode& site, const Who& who) {
    return one(laboratory, number, EventKind::WorkSent, Permission::SendWorkOut, who,
               [&](Work&) -> Result<Command> { return Command{domain::SendWork{site}}; });
}

Result<Outcome> takeWorkBack(const Laboratory& laboratory, const OrderNumber& number, bool passed,
                             const std::optional<std::string>& note, const Who& who) {
    return one(laboratory, number, EventKind::WorkBack, Permission::TakeReturns, who,
               [&](Work& work) -> Result<Command> {
                   auto sealed = work.seal(note);
                   if (!sealed) return sealed.error();
                   return Command{domain::TakeWorkBack{passed, *std::move(sealed)}};
               });
}

Result<std::vector<domain::Finding>> gate(const Laboratory& laboratory, const OrderNumber& number,
                                          const domain::PersonCode& person) {
    const auto order = storage::loadOrder(laboratory.records(), number);
    if (!order) return order.error();
    if (!*order) return Error{ErrorCode::Unusable, "no such order: " + number.text()};
    const domain::StageStep* step = currentStep(**order);
    if (step == nullptr || isClosed(**order)) return std::vector<domain::Finding>{};
    const auto workshop = storage::loadWorkshop(laboratory.records());
    if (!workshop) return workshop.error();
    std::optional<std::vector<domain::Finding>> legal;
    const auto demands = planOf(**order, step->stage).demands;
    if (std::ranges::count(demands, domain::Demand::LegalFields) > 0) {
        auto lacking = legalLack(laboratory, (*order)->revision);
        if (!lacking) return lacking.error();
        legal = *std::move(lacking);
    }
    return domain::lackingAt({**order, step->stage, *workshop, person, laboratory.today(), legal});
}

}  // namespace actions
