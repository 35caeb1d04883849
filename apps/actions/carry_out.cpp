#include "apps/actions/carry_out.h"

#include <algorithm>

#include "apps/actions/access.h"
#include "apps/actions/staleness.h"
#include "domain/production/evolve.h"
#include "domain/production/legal_fields.h"
#include "storage/files/prescription_file.h"
#include "storage/ledger.h"
#include "storage/projections.h"
#include "storage/sealed_texts.h"
#include "storage/workshop_store.h"

namespace actions {
namespace {

using domain::Error;
using domain::ErrorCode;
using domain::Event;
using domain::Order;
using domain::OrderNumber;
using domain::Result;
using storage::Transaction;

Error noSuchOrder(const OrderNumber& number) {
    return {ErrorCode::Unusable, "no such order: " + number.text()};
}

std::string toldOf(const Event& event) {
    return "order " + event.order.text() + ", " + wordsOf(kindOf(event)) + ", " + event.at.text();
}
std::string toldOf(const domain::WorkshopEvent& event) {
    return event.subject.text() + ", " + wordsOf(kindOf(event)) + ", " + event.at.text();
}

/// What a key was used for before, if it is the same deed; a refusal if it was another.
Result<std::optional<Outcome>> recorded(const Laboratory& laboratory,
                                        const std::optional<OrderNumber>& number,
                                        domain::EventKind kind, const std::string& key) {
    const auto events = storage::Ledger{laboratory.records()}.withKey(key);
    if (!events) return events.error();
    if (events->empty()) return std::optional<Outcome>{};
    for (const storage::LedgerEvent& each : *events) {
        const auto* event = std::get_if<Event>(&each);
        if (event == nullptr || kindOf(*event) != kind || (number && event->order != *number))
            continue;
        const auto order = storage::loadOrder(laboratory.records(), event->order);
        if (!order) return order.error();
        return std::optional{Outcome{**order, true}};
    }
    return Error{ErrorCode::Refused,
                 "this key was used for something else: " +
                     std::visit([](const auto& event) { return toldOf(event); }, events->front())};
}

/// Who was faster, when somebody decided on an order that has changed since they saw it.
Result<std::optional<Error>> overtaken(const Laboratory& laboratory, const OrderNumber& number,
                                       const Who& who) {
    const auto events = storage::Ledger{laboratory.records()}.eventsOf(number);
    if (!events) return events.error();
    if (events->empty()) return std::optional<Error>{noSuchOrder(number)};
    const Event& newest = events->back();
    if (!isStale(who.seen, newest.version)) return std::optional<Error>{};
    return std::optional{Error{ErrorCode::Conflict,
                               "order " + number.text() +
                                   " was changed meanwhile: " + wordsOf(kindOf(newest)) + " by " +
                                   newest.person.text() + ", " + newest.at.text() + " (version " +
                                   std::to_string(newest.version) + "); look at it again"}};
}

/// Only a command whose gate asks for them needs the names opened.
bool asksForLegalFields(const domain::Command& command, const Order& order) {
    if (std::holds_alternative<domain::SendWork>(command)) return true;
    const domain::StageStep* step = currentStep(order);
    return std::holds_alternative<domain::Finish>(command) && step != nullptr &&
           std::ranges::count(planOf(order, step->stage).demands, domain::Demand::LegalFields) > 0;
}

}  // namespace

Result<Order> Work::load(const OrderNumber& number) const {
    if (const auto touched = touched_.find(number); touched != touched_.end())
        return touched->second;
    auto loaded = storage::loadOrder(laboratory_.records(), number);
    if (!loaded) return loaded.error();
    if (!*loaded) return noSuchOrder(number);
    return **std::move(loaded);
}

Result<Order> Work::apply(const std::optional<OrderNumber>& number,
                          const domain::Command& command) {
    std::optional<Order> order;
    if (number) {
        auto loaded = load(*number);
        if (!loaded) return loaded;
        order = *std::move(loaded);
    }
    const auto workshop = storage::loadWorkshop(laboratory_.records());
    if (!workshop) return workshop.error();
    domain::Occasion occasion{.at = laboratory_.now(),
                              .person = who_.person,
                              .key = key_,
                              .workshop = *workshop,
                              .station = who_.station};
    if (order && asksForLegalFields(command, *order)) {
        auto lacking = legalLack(laboratory_, order->revision);
        if (!lacking) return lacking.error();
        occasion.legal = *std::move(lacking);
    }
    const auto events = decide(order, command, occasion);
    if (!events) return events.error();
    for (const Event& event : *events) order = evolve(std::move(order), event);
    events_.insert(events_.end(), events->begin(), events->end());
    touched_.insert_or_assign(order->number, *order);
    return *std::move(order);
}

Result<domain::Done> Work::keep() {
    const storage::Ledger ledger{laboratory_.records()};
    if (auto appended = ledger.append(transaction_, events_); !appended) return appended;
    for (const auto& touched : touched_) {
        std::vector<Event> own;
        std::ranges::copy_if(events_, std::back_inserter(own),
                             [&](const Event& event) { return event.order == touched.first; });
        if (auto put = storage::putProjections(transaction_, touched.second, own); !put) return put;
    }
    return domain::Done{};
}

Result<std::optional<domain::SealedText>> Work::seal(const std::optional<std::string>& text) {
    if (!text || text->empty()) return std::optional<domain::SealedText>{};
    auto sealed = storage::SealedTexts{laboratory_.records()}.seal(transaction_, *text);
    if (!sealed) return sealed.error();
    return std::optional{*std::move(sealed)};
}

Result<Outcome> carryOut(const Laboratory& laboratory, const std::optional<OrderNumber>& number,
                         domain::EventKind kind, domain::Permission permission, const Who& who,
                         const Deed& deed) {
    if (const auto allowed = authorise(laboratory, who, permission); !allowed)
        return allowed.error();
    const std::string key = keyOf(who);
    auto transaction = Transaction::begin(laboratory.records());
    if (!transaction) return transaction.error();
    Transaction under = *std::move(transaction);
    auto before = recorded(laboratory, number, kind, key);
    if (!before) return before.error();
    if (*before) return **std::move(before);
    if (number) {
        auto faster = overtaken(laboratory, *number, who);
        if (!faster) return faster.error();
        if (*faster) return **std::move(faster);
    }
    Work work{laboratory, under, who, key};
    auto order = deed(work);
    if (!order) return order.error();
    if (auto kept = work.keep(); !kept) return kept.error();
    if (auto committed = under.commit(); !committed) return committed.error();
    return Outcome{*std::move(order), false};
}

Result<domain::Prescription> inFull(const Laboratory& laboratory,
                                    const domain::Revision& revision) {
    const auto text = storage::SealedTexts{laboratory.records()}.open(revision.parties.identity);
    if (!text) return text.error();
    if (!*text) return revision.prescription;
    return storage::readPrescription(**text, "sealed text " + revision.parties.identity.code);
}

Result<std::vector<domain::Finding>> legalLack(const Laboratory& laboratory,
                                               const domain::Revision& revision) {
    const auto prescription = inFull(laboratory, revision);
    if (!prescription) return prescription.error();
    const auto head = letterhead(laboratory);
    if (!head) return head.error();
    return lackingIn(legalFactsOf(*prescription, head->name, head->address));
}

}  // namespace actions
