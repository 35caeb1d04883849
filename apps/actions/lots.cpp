#include "apps/actions/lots.h"

#include <algorithm>
#include <map>
#include <set>

#include "apps/actions/access.h"
#include "apps/actions/legal_lack.h"
#include "apps/actions/order_view.h"
#include "apps/actions/paper_places.h"
#include "apps/actions/sessions.h"
#include "apps/actions/unit_of_work.h"
#include "reports/recall_letter.h"
#include "storage/ledger.h"
#include "storage/lot_uses.h"

namespace actions {
namespace {

using domain::Error;
using domain::ErrorCode;
using domain::OrderNumber;
using domain::Permission;
using domain::Result;
using domain::ThingCode;

domain::Subject subjectOf(const ThingCode& code) { return {domain::SubjectKind::Lot, code.text()}; }

TracedDevice deviceOf(const storage::TracedUse& use) {
    return {.order = use.order,
            .status = use.status,
            .description = use.description,
            .patient = use.label ? use.label->patient : use.patientCode,
            .prescriberCode = use.prescriberCode,
            .prescriber = use.label ? use.label->prescriber : use.prescriberCode,
            .amount = use.amount,
            .stage = use.stage,
            .isInDevice = use.isInDevice,
            .delivered = use.delivered};
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
        const auto uses = storage::LotUses{laboratory.records()}.trace(trace.code);
        if (!uses) return uses.error();
        trace.devices.reserve(uses->size());
        std::ranges::transform(*uses, std::back_inserter(trace.devices), deviceOf);
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

/// Where a prescriber is written to, as on the newest of the orders; empty where it was erased.
Result<std::string> addressFor(const Laboratory& laboratory, const OrderNumber& number) {
    const auto order = storage::loadOrder(laboratory.records(), number);
    if (!order) return order.error();
    const auto full = inFull(laboratory, (*order)->revision);
    if (!full) return full.error();
    return full->identity.prescriberAddress.value_or(std::string{});
}

reports::Recall letterOf(const LotTrace& trace, const std::vector<TracedDevice>& devices,
                         const std::string& address, const std::string& reason,
                         domain::Date today) {
    reports::Recall letter{
        .prescriber = devices.front().prescriber,
        .prescriberAddress = address,
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
    auto traces = traced(laboratory, lot);
    if (!traces) return traces;
    std::set<OrderNumber> named;
    for (const LotTrace& trace : *traces)
        for (const TracedDevice& device : trace.devices) named.insert(device.order);
    if (auto noted = noteViewed(laboratory, who, {named.begin(), named.end()}); !noted)
        return noted.error();
    return traces;
}

Result<OrderTrace> traceOrder(const Laboratory& laboratory, const OrderNumber& number,
                              const Who& who) {
    if (const auto allowed = authorise(laboratory, who, Permission::TraceLots); !allowed)
        return allowed.error();
    const auto view = order(laboratory, number);
    if (!view) return view.error();
    // Words kept with what was done may name somebody.
    if (auto noted = noteViewed(laboratory, who, {number}); !noted) return noted.error();
    const auto workshop = laboratory.workshop();
    if (!workshop) return workshop.error();
    OrderTrace trace{.order = number, .lots = {}, .deeds = {}};
    const std::vector<bool> isInDevice = storage::inDevice(view->order);
    std::size_t place = 0;
    for (const HistoryLine& line : view->history) {
        trace.deeds.push_back(
            {line.event.at, line.event.person.text(), line.event.station, line.says});
        for (const storage::LotUse& use : storage::usesIn(line.event)) {
            const auto known = (*workshop)->lots.find(use.lot);
            trace.lots.push_back(
                {use.lot, known == (*workshop)->lots.end() ? domain::Lot{} : known->second.lot,
                 use.amount, use.stage, isInDevice.at(place++)});
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
            const auto address = addressFor(laboratory, devices.back().order);
            if (!address) return address.error();
            const auto letter =
                recallLetter(*head, letterOf(trace, devices, *address, reason, laboratory.today()));
            auto file =
                writePaper(laboratory, letter, "recall-" + trace.code.text() + '-' + prescriber,
                           true, {trace.code.text(), 1, "recall-letter"}, who);
            if (!file) return file.error();
            recalled.letters.push_back(*std::move(file));
        }
    }
    recalled.patients = static_cast<std::int64_t>(patients.size());
    return recalled;
}

}  // namespace actions
