#include "apps/actions/work.h"

#include <algorithm>
#include <cstdlib>

#include "apps/actions/laboratory_key.h"
#include "apps/actions/legal_lack.h"
#include "apps/actions/unit_of_work.h"
#include "storage/ledger.h"
#include "storage/order_register.h"

namespace actions {
namespace {

using domain::Command;
using domain::Error;
using domain::ErrorCode;
using domain::Order;
using domain::OrderNumber;
using domain::Permission;
using domain::Result;
using domain::StageRecord;

/// The order first, then those that travel with it and stand at the same stage.
Result<std::vector<OrderNumber>> ordersOf(const Laboratory& laboratory, UnitOfWork& work,
                                          const Target& target) {
    std::vector<OrderNumber> numbers{target.number};
    if (!target.together) return numbers;
    const auto order = work.order(target.number);
    if (!order) return order.error();
    const auto rows = storage::OrderRegister{laboratory.records()}.ofCase(
        order->caseLeader.value_or(target.number));
    if (!rows) return rows.error();
    const auto* step = currentStep(*order);
    for (const storage::RegisterRow& row : *rows)
        if (row.number != target.number && step != nullptr && row.stage == step->stage)
            numbers.push_back(row.number);
    if (numbers.size() == 1)
        return Error{ErrorCode::Refused, "order " + target.number.text() +
                                             ": no other order of its case stands at this stage"};
    return numbers;
}

using Prepare = std::function<Result<Command>(UnitOfWork&)>;

/// The same command for each order of a target, all or none.
Result<Outcome> forEach(const Laboratory& laboratory, const Target& target, Permission permission,
                        const std::string& command, const Who& who, const Prepare& prepare) {
    const std::string together = target.together ? "together" : "";
    return perform(
        laboratory, who,
        {permission, commandOf({target.number.text(), together}) + command, target.number},
        [&](UnitOfWork& work) -> Result<Order> {
            const auto numbers = ordersOf(laboratory, work, target);
            if (!numbers) return numbers.error();
            const auto given = prepare(work);
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

/// A record with what the laboratory knows about its lot or equipment, and its words sealed.
Result<StageRecord> completed(UnitOfWork& work, const GivenRecord& given) {
    const domain::Workshop& workshop = work.workshop();
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

constexpr std::int64_t kSameScanMicroseconds = 10'000'000;

/// Whether a scan follows a start or an end of a stage by the same person so fast that it must be
/// the same scan; a clock that was put back makes none of it another.
bool isSameScan(const domain::Event& newest, const UnitOfWork& work) {
    const bool isTransition = std::holds_alternative<domain::StageStarted>(newest.what) ||
                              std::holds_alternative<domain::StageDone>(newest.what);
    return isTransition && newest.key.starts_with(kScanKey) && newest.person == work.who().person &&
           std::abs(work.at().microseconds() - newest.at.microseconds()) < kSameScanMicroseconds;
}

}  // namespace

Result<Outcome> start(const Laboratory& laboratory, const Target& target,
                      std::optional<domain::Stage> stage, const Who& who) {
    return forEach(laboratory, target, Permission::WorkStages,
                   commandOf({"start", wordIfAny(stage)}), who,
                   [&](UnitOfWork&) -> Result<Command> { return Command{domain::Start{stage}}; });
}

Result<Outcome> finish(const Laboratory& laboratory, const Target& target,
                       std::optional<domain::Stage> stage, const Who& who) {
    return forEach(laboratory, target, Permission::WorkStages,
                   commandOf({"finish", wordIfAny(stage)}), who,
                   [&](UnitOfWork&) -> Result<Command> { return Command{domain::Finish{stage}}; });
}

Result<Outcome> scan(const Laboratory& laboratory, const OrderNumber& number, const Who& who) {
    Who scanning = who;
    scanning.key = std::string{kScanKey} + keyOf(who);
    std::optional<domain::Instant> before;
    auto scanned = perform(
        laboratory, scanning, {Permission::WorkStages, commandOf({"scan", number.text()}), number},
        [&](UnitOfWork& work) -> Result<Order> {
            const auto newest = work.newest(number);
            if (!newest) return newest.error();
            const auto order = work.order(number);
            if (!order) return order.error();
            if (isSameScan(**newest, work)) {
                before = (*newest)->at;
                return *order;
            }
            const domain::StageStep* step = currentStep(*order);
            const bool inHand = step != nullptr && step->status == domain::StageStatus::InHand;
            return work.apply(number,
                              inHand ? Command{domain::Finish{}} : Command{domain::Start{}});
        });
    if (!scanned || !before) return scanned;
    return Outcome{scanned->order, true, before};
}

Result<Outcome> record(const Laboratory& laboratory, const OrderNumber& number,
                       std::optional<domain::Stage> stage, const std::vector<GivenRecord>& records,
                       const Who& who) {
    std::string words = commandOf({"record", wordIfAny(stage)});
    for (const GivenRecord& given : records)
        words += commandOf({storage::encodeRecord(given.record), wordIfAny(given.responsibility)});
    return forEach(laboratory, {number, false}, Permission::WorkStages, words, who,
                   [&](UnitOfWork& work) -> Result<Command> {
                       domain::Record command{.stage = stage};
                       for (const GivenRecord& given : records) {
                           auto whole = completed(work, given);
                           if (!whole) return whole.error();
                           command.records.push_back(*std::move(whole));
                       }
                       return Command{std::move(command)};
                   });
}

Result<Outcome> takeReturn(const Laboratory& laboratory, const Target& target,
                           const Return& returned, const Who& who) {
    const std::string command =
        commandOf({"return", std::string{codeOf(returned.verdict)}, wordIfAny(returned.backTo),
                   wordIfAny(returned.findings), returned.disinfection.agent,
                   std::to_string(returned.disinfection.contact.count())});
    return forEach(
        laboratory, target, Permission::TakeReturns, command, who,
        [&](UnitOfWork& work) -> Result<Command> {
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
    const std::string command =
        commandOf({"redo", std::string{codeOf(reason)}, std::string{codeOf(from)}, wordIfAny(fault),
                   wordIfAny(note)});
    return forEach(laboratory, {number, false}, Permission::RedoStages, command, who,
                   [&](UnitOfWork& work) -> Result<Command> {
                       auto sealed = work.seal(note);
                       if (!sealed) return sealed.error();
                       return Command{domain::Redo{reason, from, fault, *std::move(sealed)}};
                   });
}

Result<Outcome> sendWork(const Laboratory& laboratory, const OrderNumber& number,
                         const domain::ThingCode& site, const Who& who) {
    return forEach(laboratory, {number, false}, Permission::SendWorkOut,
                   commandOf({"send-work", site.text()}), who,
                   [&](UnitOfWork&) -> Result<Command> { return Command{domain::SendWork{site}}; });
}

Result<Outcome> takeWorkBack(const Laboratory& laboratory, const OrderNumber& number, bool passed,
                             const std::optional<std::string>& note, const Who& who) {
    const std::string command =
        commandOf({"take-work-back", passed ? "passed" : "failed", wordIfAny(note)});
    return forEach(laboratory, {number, false}, Permission::TakeReturns, command, who,
                   [&](UnitOfWork& work) -> Result<Command> {
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
    const auto workshop = laboratory.workshop();
    if (!workshop) return workshop.error();
    std::optional<std::vector<domain::Finding>> legal;
    const auto demands = planOf(**order, step->stage).demands;
    if (std::ranges::count(demands, domain::Demand::LegalFields) > 0) {
        auto lacking = legalLack(laboratory, (*order)->revision);
        if (!lacking) return lacking.error();
        legal = *std::move(lacking);
    }
    return domain::lackingAt({**order, step->stage, **workshop, person, laboratory.today(), legal});
}

}  // namespace actions
