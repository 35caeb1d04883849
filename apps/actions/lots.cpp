#include "apps/actions/lots.h"

#include <algorithm>
#include <map>
#include <set>

#include "apps/actions/legal_lack.h"
#include "apps/actions/order_view.h"
#include "apps/actions/paper_places.h"
#include "apps/actions/sessions.h"
#include "apps/actions/unit_of_work.h"
#include "reports/recall_letter.h"
#include "storage/ledger.h"
#include "storage/lot_uses.h"
#include "storage/order_register.h"

namespace actions {
namespace {

using domain::Error;
using domain::ErrorCode;
using domain::Order;
using domain::OrderNumber;
using domain::Permission;
using domain::Result;
using domain::ThingCode;

domain::Subject subjectOf(const ThingCode& code) { return {domain::SubjectKind::Lot, code.text()}; }

/// Whether the device as it stands holds what an order used: the attempt in hand of the stage used
/// it. `count`: how often the order had used that lot before.
bool holds(const Order& order, const ThingCode& lot, std::size_t count) {
    for (const domain::KeptRecord& kept : order.records) {
        const auto* used = std::get_if<domain::LotUsed>(&kept.record);
        if (used == nullptr || used->lot != lot || count-- > 0) continue;
        const auto step = std::ranges::find(order.steps, kept.stage, &domain::StageStep::stage);
        return step != order.steps.end() && step->attempt == kept.attempt;
    }
    return false;
}

/// How often each order used each lot so far.
using Counts = std::map<std::pair<OrderNumber, ThingCode>, std::size_t>;

Result<TracedDevice> deviceOf(const Laboratory& laboratory, const storage::LotUse& use,
                              std::size_t before) {
    const auto order = storage::loadOrder(laboratory.records(), use.order);
    if (!order) return order.error();
    const auto row = storage::OrderRegister{laboratory.records()}.find(use.order);
    if (!row) return row.error();
    const auto full = inFull(laboratory, (*order)->revision);
    if (!full) return full.error();
    const auto& parties = (*order)->revision.parties;
    const auto& identity = full->identity;
    return TracedDevice{.order = use.order,
                        .status = (*order)->status,
                        .description = (*row)->description,
                        .patient = identity.patientReference.value_or(
                            identity.patientName.value_or(parties.patient)),
                        .prescriberCode = parties.prescriber,
                        .prescriber = identity.prescriberName.value_or(parties.prescriber),
                        .prescriberAddress = identity.prescriberAddress.value_or(std::string{}),
                        .amount = use.amount,
                        .stage = use.stage,
                        .isInDevice = holds(**order, use.lot, before),
                        .delivered = deliveredOn(**order)};
}

Result<std::vector<LotTrace>> traced(const Laboratory& laboratory, const std::string& lot) {
    const auto workshop = laboratory.workshop();
    if (!workshop) return workshop.error();
    std::vector<LotTrace> traces;
    for (const auto& [code, kept] : (*workshop)->lots)
        if (code.text() == lot || kept.lot.makersNumber == lot) traces.push_back({code, kept, {}});
    if (traces.empty())
        return Error{ErrorCode::Unusable, "there is no lot \"" + lot +
                                              "\"; give the laboratory's code of a lot or its "
                                              "maker's number"};
    for (LotTrace& trace : traces) {
        const auto uses = storage::LotUses{laboratory.records()}.ofLot(trace.code);
        if (!uses) return uses.error();
        Counts counts;
        for (const storage::LotUse& use : *uses) {
            auto device = deviceOf(laboratory, use, counts[{use.order, use.lot}]++);
            if (!device) return device.error();
            trace.devices.push_back(*std::move(device));
        }
    }
    return traces;
}

/// The orders whose device holds a lot and has not left for good.
std::int64_t undelivered(const LotTrace& trace) {
    std::set<OrderNumber> here;
    for (const TracedDevice& device : trace.devices)
        if (device.isInDevice && !device.delivered) here.insert(device.order);
    return static_cast<std::int64_t>(here.size());
}

/// The delivered devices of one prescriber that hold a lot, each once.
using Letters = std::map<std::string, std::vector<TracedDevice>>;

Letters lettersFor(const LotTrace& trace) {
    Letters letters;
    std::set<OrderNumber> seen;
    for (const TracedDevice& device : trace.devices)
        if (device.delivered && device.isInDevice && seen.insert(device.order).second)
            letters[device.prescriberCode].push_back(device);
    return letters;
}

reports::Recall letterOf(const LotTrace& trace, const std::vector<TracedDevice>& devices,
                         const std::string& reason, domain::Date today) {
    reports::Recall letter{
        .prescriber = devices.front().prescriber,
        .prescriberAddress = devices.front().prescriberAddress,
        .issued = today,
        .material = wordsOf(trace.kept.lot.kind) + ", " + trace.kept.lot.product,
        .lot = trace.kept.lot.makersNumber + " (ours: " + trace.code.text() + ")",
        .maker = trace.kept.lot.maker,
        .reason = reason,
        .toDo = {"Find the patients named below.", "Decide for each of them what is to be done.",
                 "Tell us what you decided, and send back what is to be "
                 "replaced."},
        .devices = {}};
    for (const TracedDevice& device : devices)
        letter.devices.push_back(
            {device.order, device.patient, device.description, device.delivered});
    return letter;
}

}  // namespace

Result<std::vector<LotLine>> lots(const Laboratory& laboratory) {
    const auto workshop = laboratory.workshop();
    if (!workshop) return workshop.error();
    std::vector<LotLine> lines;
    for (const auto& [code, kept] : (*workshop)->lots) lines.push_back({code, kept});
    return lines;
}

Result<Kept> receiveLot(const Laboratory& laboratory, const ThingCode& code, const domain::Lot& lot,
                        const Who& who) {
    const domain::WorkshopHappening received = domain::LotReceived{lot};
    return perform(laboratory, who,
                   {Permission::KeepLots,
                    commandOf({"receive-lot", code.text(), storage::encodeHappening(received)}),
                    {}},
                   [&](UnitOfWork& unit) { return unit.record(subjectOf(code), received); });
}

Result<Kept> holdLot(const Laboratory& laboratory, const ThingCode& code, const std::string& reason,
                     const Who& who) {
    return perform(laboratory, who,
                   {Permission::KeepLots, commandOf({"hold-lot", code.text(), reason}), {}},
                   [&](UnitOfWork& unit) -> Result<domain::Done> {
                       const auto sealed = unit.seal(reason);
                       if (!sealed) return sealed.error();
                       return unit.record(subjectOf(code), domain::LotHeld{*sealed});
                   });
}

Result<Kept> releaseLot(const Laboratory& laboratory, const ThingCode& code,
                        const std::string& reason, const Who& who) {
    return perform(
        laboratory, who,
        {Permission::TakeResponsibility, commandOf({"release-lot", code.text(), reason}), {}},
        [&](UnitOfWork& unit) -> Result<domain::Done> {
            const auto sealed = unit.seal(reason);
            if (!sealed) return sealed.error();
            return unit.record(subjectOf(code), domain::LotReleased{*sealed});
        });
}

Result<std::vector<LotTrace>> traceLot(const Laboratory& laboratory, const std::string& lot,
                                       const Who& who) {
    if (const auto allowed = authorise(laboratory, who, Permission::TraceLots); !allowed)
        return allowed.error();
    return traced(laboratory, lot);
}

Result<OrderTrace> traceOrder(const Laboratory& laboratory, const OrderNumber& number,
                              const Who& who) {
    if (const auto allowed = authorise(laboratory, who, Permission::TraceLots); !allowed)
        return allowed.error();
    const auto view = order(laboratory, number);
    if (!view) return view.error();
    const auto workshop = laboratory.workshop();
    if (!workshop) return workshop.error();
    OrderTrace trace{.order = number, .lots = {}, .deeds = {}};
    Counts counts;
    for (const HistoryLine& line : view->history) {
        trace.deeds.push_back(
            {line.event.at, line.event.person.text(), line.event.station, line.says});
        for (const storage::LotUse& use : storage::usesIn(line.event)) {
            const auto known = (*workshop)->lots.find(use.lot);
            trace.lots.push_back(
                {use.lot, known == (*workshop)->lots.end() ? domain::Lot{} : known->second.lot,
                 use.amount, use.stage, holds(view->order, use.lot, counts[{number, use.lot}]++)});
        }
    }
    return trace;
}

Result<Recalled> recall(const Laboratory& laboratory, const std::string& lot,
                        const std::string& reason, bool drill, const Who& who) {
    auto traces = traceLot(laboratory, lot, who);
    if (!traces) return traces.error();
    Recalled recalled{.traces = *std::move(traces)};
    auto head = paperHead(laboratory, who);
    if (!head) return head.error();
    std::set<std::string> patients;
    for (const LotTrace& trace : recalled.traces) {
        if (!drill && !trace.kept.held)
            if (auto held = holdLot(laboratory, trace.code, reason,
                                    {who.person, {}, who.token, who.station});
                !held)
                return held.error();
        recalled.undelivered += undelivered(trace);
        for (const auto& [prescriber, devices] : lettersFor(trace)) {
            for (const TracedDevice& device : devices)
                patients.insert(prescriber + '/' + device.patient);
            recalled.delivered += static_cast<std::int64_t>(devices.size());
            const auto letter =
                recallLetter(*head, letterOf(trace, devices, reason, laboratory.today()));
            auto file = writePaper(laboratory, letter,
                                   "recall-" + trace.code.text() + '-' + prescriber, true);
            if (!file) return file.error();
            recalled.letters.push_back(*std::move(file));
        }
    }
    recalled.patients = static_cast<std::int64_t>(patients.size());
    return recalled;
}

}  // namespace actions
