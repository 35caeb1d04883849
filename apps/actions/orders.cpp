#include "apps/actions/orders.h"

#include <set>

#include "apps/actions/clock.h"
#include "apps/actions/house.h"
#include "apps/actions/laboratory_key.h"
#include "apps/actions/legal_lack.h"
#include "apps/actions/paper_erasure.h"
#include "apps/actions/unit_of_work.h"
#include "storage/files/prescription_file.h"
#include "storage/ledger.h"
#include "storage/order_register.h"
#include "storage/party_store.h"
#include "storage/sealed_texts.h"
#include "storage/wiped_journal.h"

namespace actions {
namespace {

using domain::Order;
using domain::OrderNumber;
using domain::Permission;
using domain::Prescription;
using domain::Result;
using domain::Revision;
using storage::Transaction;

/// What is found in a prescription, with what came for the leader of its case.
Result<std::vector<domain::Finding>> findingsOf(const Laboratory& laboratory,
                                                const Prescription& prescription,
                                                const std::optional<OrderNumber>& leader) {
    const auto house = houseOf(laboratory);
    if (!house) return house.error();
    if (!leader) return examine(prescription, laboratory.today(), house->limits, house->guides);
    const auto first = storage::loadOrder(laboratory.records(), *leader);
    if (!first) return first.error();
    return examine(withEnclosuresOf(prescription, (*first)->prescription()), laboratory.today(),
                   house->limits, house->guides);
}

/// A prescription made fit for the ledger: examined, its people turned into codes, and the whole
/// of it, names included, sealed outside.
Result<Revision> revisionOf(const Laboratory& laboratory, Transaction& work,
                            const Prescription& prescription,
                            const std::optional<OrderNumber>& leader) {
    auto findings = findingsOf(laboratory, prescription, leader);
    if (!findings) return findings.error();
    const storage::PartyStore people{laboratory.records()};
    auto prescriber = people.prescriberCode(work, prescription.identity);
    if (!prescriber) return prescriber.error();
    auto patient = people.patientCode(work, *prescriber, prescription.identity);
    if (!patient) return patient.error();
    const storage::SealedTexts texts{laboratory.records()};
    auto sealed = texts.seal(work, storage::writePrescription(prescription));
    if (!sealed) return sealed.error();
    return Revision{withoutIdentity(prescription),
                    {*std::move(patient), *std::move(prescriber), *std::move(sealed)},
                    *std::move(findings)};
}

/// The same prescription logged again without a key of its own is the same deed, unless that order
/// was withdrawn meanwhile.
Result<std::string> keyOf(const Laboratory& laboratory, const std::string& prescription) {
    const auto digest = digestOfCommand(laboratory, "prescription " + prescription);
    if (!digest) return digest.error();
    const std::string base = std::string{kPrescriptionKey} + *digest;
    std::string key = base;
    for (int again = 2;; ++again) {
        const auto events = storage::Ledger{laboratory.records()}.withKey(key);
        if (!events) return events.error();
        const auto* first =
            events->empty() ? nullptr : std::get_if<domain::Event>(&events->front());
        if (first == nullptr) return key;
        const auto order = storage::loadOrder(laboratory.records(), first->order);
        if (!order) return order.error();
        if (!*order || (*order)->status != domain::OrderStatus::Withdrawn) return key;
        key = base + '-' + std::to_string(again);
    }
}

/// A new order for a prescription, within a deed.
Result<Order> logged(const Laboratory& laboratory, UnitOfWork& work,
                     const Prescription& prescription, const std::optional<OrderNumber>& replaces) {
    const storage::OrderRegister orders{laboratory.records()};
    const auto number = orders.nextNumber(work.transaction(), laboratory.today());
    if (!number) return number.error();
    auto revision = revisionOf(laboratory, work.transaction(), prescription, {});
    if (!revision) return revision.error();
    return work.apply({}, domain::Receive{*number, *std::move(revision), replaces});
}

/// The prescription with a change that was offered for what was prescribed, and by what was taken
/// before it. Offers are numbered as for what was prescribed, and known again by their words.
Result<Prescription> changed(const Laboratory& laboratory, const Prescription& prescribed,
                             const Prescription& soFar, const Order& order, const TakeGiven& take) {
    const auto house = houseOf(laboratory);
    if (!house) return house.error();
    const auto place = take.rule + (take.tooth ? " on " + take.tooth->text() : std::string{});
    const auto refused = [&](std::string why) {
        return domain::Error{domain::ErrorCode::Refused,
                             "order " + order.number.text() + ": " + std::move(why)};
    };
    const auto& findings = order.revision.findings;
    const auto finding = std::ranges::find_if(findings, [&](const domain::Finding& each) {
        return each.rule == take.rule && each.tooth == take.tooth;
    });
    if (finding == findings.end()) return refused("nothing was found by " + place);
    const domain::Date today = laboratory.today();
    const auto remedies = Trial{prescribed, today, *house}.remedies(*finding);
    const auto count = static_cast<std::int64_t>(remedies.size());
    if (take.offer < 1 || take.offer > count)
        return refused(place + ": there is no offer " + std::to_string(take.offer) + "; " +
                       std::to_string(count) + (count == 1 ? " is made" : " are made"));
    const std::string& says = remedies[static_cast<std::size_t>(take.offer - 1)].says;
    const Trial now{soFar, today, *house};
    if (!now.finds(*finding)) return refused(place + " is settled by another change taken already");
    const auto left = now.remedies(*finding);
    const auto same = std::ranges::find(left, says, &domain::Remedy::says);
    if (same == left.end())
        return refused(place + ": \"" + says +
                       "\" does not go together with the other changes taken");
    return same->changed;
}

/// The dentist's answer made fit for the ledger: examined, and its words sealed.
Result<domain::Answer> answerOf(const Laboratory& laboratory, UnitOfWork& work,
                                const OrderNumber& number, const AnswerGiven& given) {
    domain::Answer answer;
    auto sealed = work.seal(given.words);
    if (!sealed) return sealed.error();
    answer.words = *std::move(sealed);
    for (const KeepGiven& keep : given.keeps) {
        auto why = work.seal(keep.words);
        if (!why) return why.error();
        if (!*why)
            return domain::Error{domain::ErrorCode::Unusable,
                                 keep.rule + ": why it is kept as prescribed was expected"};
        answer.keeps.push_back({keep.rule, keep.tooth, **std::move(why)});
    }
    if (!given.prescription && given.keeps.empty() && given.takes.empty()) return answer;
    const auto order = work.order(number);
    if (!order) return order.error();
    Result<Prescription> answered =
        given.prescription ? *given.prescription : inFull(laboratory, order->revision);
    if (!answered) return answered.error();
    const Prescription prescribed = *answered;
    for (const TakeGiven& take : given.takes) {
        answered = changed(laboratory, prescribed, *answered, *order, take);
        if (!answered) return answered.error();
    }
    auto revision = revisionOf(laboratory, work.transaction(), *answered, order->caseLeader);
    if (!revision) return revision.error();
    answer.revision = *std::move(revision);
    return answer;
}

/// Every text that the events of an order point to.
Result<domain::Done> eraseWords(const Laboratory& laboratory, UnitOfWork& work,
                                const std::vector<domain::Event>& events) {
    const storage::SealedTexts texts{laboratory.records()};
    for (const domain::Event& event : events)
        for (const domain::SealedText& sealed : storage::sealedTextsIn(event))
            if (auto erased = texts.erase(work.transaction(), sealed); !erased) return erased;
    return domain::Done{};
}

/// The codes of one sort of party that the events of an order name.
std::set<std::string> partiesIn(const std::vector<domain::Event>& events,
                                std::string domain::Parties::* code) {
    std::set<std::string> codes;
    for (const domain::Event& event : events) {
        if (const auto* received = std::get_if<domain::Received>(&event.what))
            codes.insert(received->revision.parties.*code);
        if (const auto* answered = std::get_if<domain::Answered>(&event.what))
            if (answered->revision) codes.insert(answered->revision->parties.*code);
    }
    return codes;
}

/// What patients and prescribers are matched by names them too: forgotten with the last order that
/// has their names.
Result<domain::Done> forgetParties(const Laboratory& laboratory, UnitOfWork& work,
                                   const std::vector<domain::Event>& events) {
    struct Row {
        storage::Party party;
        std::string domain::Parties::* code;
        Result<domain::Done> (storage::PartyStore::*forget)(storage::Transaction&,
                                                            const std::string&) const;
    };
    constexpr Row kParties[] = {
        {storage::Party::Patient, &domain::Parties::patient, &storage::PartyStore::forgetPatient},
        {storage::Party::Prescriber, &domain::Parties::prescriber,
         &storage::PartyStore::forgetPrescriber}};
    const storage::OrderRegister orders{laboratory.records()};
    const storage::PartyStore people{laboratory.records()};
    for (const Row& row : kParties)
        for (const std::string& code : partiesIn(events, row.code)) {
            const auto named = orders.isNamedElsewhere(row.party, code, events.front().order);
            if (!named) return named.error();
            if (*named) continue;
            if (auto forgot = (people.*row.forget)(work.transaction(), code); !forgot)
                return forgot;
        }
    return domain::Done{};
}

/// What a purge leaves outside the tables: the journal, and the papers of the order.
Result<domain::Done> finishPurge(const Laboratory& laboratory, const OrderNumber& number,
                                 storage::WipedJournal& journal) {
    const auto order = storage::loadOrder(laboratory.records(), number);
    if (!order) return order.error();
    if (!*order || !(*order)->purged) return domain::Done{};
    if (auto wiped = journal.wipe(); !wiped) return wiped;
    if (const auto papers = erasePapers(laboratory, number); !papers) return papers.error();
    return domain::Done{};
}

}  // namespace

Result<Outcome> log(const Laboratory& laboratory, const std::filesystem::path& file,
                    const Who& who) {
    const auto prescription = storage::loadPrescription(file);
    if (!prescription) return prescription.error();
    return log(laboratory, *prescription, who);
}

Result<Outcome> log(const Laboratory& laboratory, const Prescription& prescription,
                    const Who& who) {
    const std::string written = storage::writePrescription(prescription);
    Who keyed = who;
    if (keyed.key.empty()) {
        auto key = keyOf(laboratory, written);
        if (!key) return key.error();
        keyed.key = *std::move(key);
    }
    return perform(laboratory, keyed, {Permission::LogOrders, commandOf({"log", written}), {}},
                   [&](UnitOfWork& work) { return logged(laboratory, work, prescription, {}); });
}

Result<Outcome> accept(const Laboratory& laboratory, const OrderNumber& number,
                       const std::optional<std::string>& reason, const Who& who) {
    return perform(
        laboratory, who,
        {Permission::AcceptOrders, commandOf({"accept", number.text(), wordIfAny(reason)}), number},
        [&](UnitOfWork& work) -> Result<Order> {
            auto sealed = work.seal(reason);
            if (!sealed) return sealed.error();
            return work.apply(number, domain::Accept{*std::move(sealed)});
        });
}

Result<Outcome> flag(const Laboratory& laboratory, const OrderNumber& number,
                     domain::FlagReason reason, const std::optional<std::string>& note,
                     const Who& who) {
    return perform(
        laboratory, who,
        {Permission::AskQuestions,
         commandOf({"flag", number.text(), std::string{codeOf(reason)}, wordIfAny(note)}), number},
        [&](UnitOfWork& work) -> Result<Order> {
            auto sealed = work.seal(note);
            if (!sealed) return sealed.error();
            return work.apply(number, domain::Flag{reason, *std::move(sealed)});
        });
}

Result<Outcome> answer(const Laboratory& laboratory, const OrderNumber& number,
                       const AnswerGiven& given, const Who& who) {
    const auto& prescription = given.prescription;
    std::vector<std::string> words{"answer", number.text(), wordIfAny(given.words),
                                   prescription ? storage::writePrescription(*prescription) : ""};
    for (const TakeGiven& take : given.takes)
        words.insert(words.end(), {take.rule, take.tooth ? take.tooth->text() : std::string{},
                                   std::to_string(take.offer)});
    for (const KeepGiven& keep : given.keeps)
        words.insert(words.end(),
                     {keep.rule, keep.tooth ? keep.tooth->text() : std::string{}, keep.words});
    return perform(laboratory, who, {Permission::RecordAnswers, commandOf(words), number},
                   [&](UnitOfWork& work) -> Result<Order> {
                       auto answer = answerOf(laboratory, work, number, given);
                       if (!answer) return answer.error();
                       return work.apply(number, *std::move(answer));
                   });
}

Result<Outcome> withdraw(const Laboratory& laboratory, const OrderNumber& number,
                         const std::string& reason, const Who& who) {
    return perform(
        laboratory, who,
        {Permission::RecordAnswers, commandOf({"withdraw", number.text(), reason}), number},
        [&](UnitOfWork& work) -> Result<Order> {
            auto sealed = work.seal(reason);
            if (!sealed) return sealed.error();
            return work.apply(number, domain::Withdraw{*std::move(sealed)});
        });
}

Result<Outcome> joinCase(const Laboratory& laboratory, const OrderNumber& number,
                         const OrderNumber& leader, const Who& who) {
    return perform(
        laboratory, who,
        {Permission::LogOrders, commandOf({"case", number.text(), leader.text()}), number},
        [&](UnitOfWork& work) -> Result<Order> {
            auto first = work.order(leader);
            if (!first) return first.error();
            if (first->caseLeader)
                return domain::Error{domain::ErrorCode::Refused,
                                     "order " + leader.text() + " travels with the case of " +
                                         first->caseLeader->text() + "; name that"};
            const auto own = work.order(number);
            if (!own) return own.error();
            const auto full = inFull(laboratory, own->revision);
            if (!full) return full.error();
            auto findings = findingsOf(laboratory, *full, leader);
            if (!findings) return findings.error();
            return work.apply(
                number, domain::JoinCase{leader, first->revision.parties, *std::move(findings)});
        });
}

Result<Outcome> remake(const Laboratory& laboratory, const OrderNumber& number,
                       domain::RemakeReason reason, const std::optional<domain::Stage>& fault,
                       const std::optional<std::string>& note, const Who& who) {
    const std::string command = commandOf(
        {"remake", number.text(), std::string{codeOf(reason)}, wordIfAny(fault), wordIfAny(note)});
    return perform(laboratory, who, {Permission::OrderRemakes, command, number},
                   [&](UnitOfWork& work) -> Result<Order> {
                       auto first = work.order(number);
                       if (!first) return first.error();
                       auto prescription = inFull(laboratory, first->revision);
                       if (!prescription) return prescription.error();
                       Prescription again = *std::move(prescription);
                       again.remake = domain::Remake{reason};
                       auto replacement = logged(laboratory, work, again, number);
                       if (!replacement) return replacement;
                       auto sealed = work.seal(note);
                       if (!sealed) return sealed.error();
                       auto ended =
                           work.apply(number, domain::OrderRemake{replacement->number, reason,
                                                                  fault, *std::move(sealed)});
                       if (!ended) return ended;
                       return replacement;
                   });
}

Result<Outcome> purge(const Laboratory& laboratory, const OrderNumber& number, const Who& who) {
    storage::WipedJournal journal{laboratory.records()};
    auto purged =
        perform(laboratory, who,
                {Permission::KeepWorkshop, commandOf({"purge", number.text()}), number, true},
                [&](UnitOfWork& work) -> Result<Order> {
                    // A clock put ahead would end every term of retention.
                    if (const auto& doubt = work.workshop().clockDoubt)
                        return domain::Error{domain::ErrorCode::Refused, toldOf(*doubt)};
                    auto terms = retentionOf(laboratory);
                    if (!terms) return terms.error();
                    auto order = work.apply(number, domain::Purge{*std::move(terms)});
                    if (!order) return order;
                    const auto events = storage::Ledger{laboratory.records()}.eventsOf(number);
                    if (!events) return events.error();
                    if (auto erased = eraseWords(laboratory, work, *events); !erased)
                        return erased.error();
                    if (auto forgot = forgetParties(laboratory, work, *events); !forgot)
                        return forgot.error();
                    return order;
                });
    // Also where it was purged before: a program that was killed may have left what follows.
    if (auto finished = finishPurge(laboratory, number, journal); !finished)
        return finished.error();
    return purged;
}

}  // namespace actions
