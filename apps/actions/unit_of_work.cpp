#include "apps/actions/unit_of_work.h"

#include <algorithm>

#include "apps/actions/clock.h"
#include "apps/actions/credential_check.h"
#include "apps/actions/laboratory_key.h"
#include "apps/actions/legal_lack.h"
#include "apps/actions/refusals.h"
#include "apps/actions/sessions.h"
#include "apps/actions/staleness.h"
#include "domain/production/evolve.h"
#include "storage/access_log.h"
#include "storage/ledger.h"
#include "storage/projections.h"
#include "storage/sealed_texts.h"

namespace actions {
namespace {

using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Event;
using domain::Order;
using domain::OrderNumber;
using domain::Result;
using domain::WorkshopEvent;
using storage::LedgerEvent;
using storage::Transaction;

Error noSuchOrder(const OrderNumber& number) {
    return {ErrorCode::Unusable, "no such order: " + number.text()};
}

std::string toldOf(const Event& event) {
    return "order " + event.order.text() + ", " + wordsOf(kindOf(event)) + ", " + event.at.text();
}
std::string toldOf(const WorkshopEvent& event) {
    return event.subject.text() + ", " + wordsOf(kindOf(event)) + ", " + event.at.text();
}

Error overtaken(const Event& newest) {
    return {ErrorCode::Conflict, "order " + newest.order.text() +
                                     " was changed meanwhile: " + wordsOf(kindOf(newest)) + " by " +
                                     newest.person.text() + ", " + newest.at.text() + " (version " +
                                     std::to_string(newest.version) + "); look at it again"};
}

/// What was recorded before under the same key, for the same command of the same person.
struct Before {
    domain::Instant at{};
    std::optional<OrderNumber> order{};  ///< the first one it touched
};

/// nullopt: the key is new. Refused where it was used by somebody else or for something else.
/// `key`: theirs as it is kept; earlier programs kept it as it was given.
Result<std::optional<Before>> before(const Laboratory& laboratory, const Who& who,
                                     const std::string& key, const std::string& command) {
    const storage::Ledger ledger{laboratory.records()};
    auto events = ledger.withKey(key);
    if (events && events->empty() && key != who.key) events = ledger.withKey(who.key);
    if (!events) return events.error();
    if (events->empty()) return std::optional<Before>{};
    // What was asked, not that a password was hashed anew on the way.
    const auto order = std::ranges::find_if(
        *events, [](const LedgerEvent& event) { return std::holds_alternative<Event>(event); });
    return std::visit(
        [&](const auto& first) -> Result<std::optional<Before>> {
            const std::string told = toldOf(first);
            // What was recorded before commands had digests is known by its key alone.
            const bool isOther = !first.command.empty() && first.command != command;
            if (isOther || first.person != who.person)
                return Error{ErrorCode::Refused, "this key was used for something else: " + told +
                                                     ", by " + first.person.text() +
                                                     "; take another key"};
            Before recorded{.at = first.at};
            if constexpr (std::is_same_v<decltype(first), const Event&>)
                recorded.order = first.order;
            return std::optional{recorded};
        },
        order == events->end() ? events->front() : *order);
}

/// Only a command whose gate asks for them needs the names opened.
bool asksForLegalFields(const domain::Command& command, const Order& order) {
    if (std::holds_alternative<domain::SendWork>(command)) return true;
    const domain::StageStep* step = currentStep(order);
    return std::holds_alternative<domain::Finish>(command) && step != nullptr &&
           std::ranges::count(planOf(order, step->stage).demands, domain::Demand::LegalFields) > 0;
}

}  // namespace

std::string commandOf(const std::vector<std::string>& words) {
    std::string command;
    for (const std::string& word : words) command += std::to_string(word.size()) + ':' + word + ',';
    return command;
}

Result<UnitOfWork::ReadOrder*> UnitOfWork::read(const OrderNumber& number) {
    if (const auto known = orders_.find(number); known != orders_.end()) return &known->second;
    const auto events = storage::Ledger{laboratory_.records()}.eventsOf(number);
    if (!events) return events.error();
    if (events->empty()) return noSuchOrder(number);
    auto order = storage::foldOrder(*events);
    if (!order) return order.error();
    return &orders_.emplace(number, ReadOrder{*std::move(order), events->back()}).first->second;
}

Result<Order> UnitOfWork::order(const OrderNumber& number) {
    const auto known = read(number);
    if (!known) return known.error();
    return (*known)->order;
}

Result<const Event*> UnitOfWork::newest(const OrderNumber& number) {
    const auto known = read(number);
    if (!known) return known.error();
    return &(*known)->newest;
}

Result<Order> UnitOfWork::apply(const std::optional<OrderNumber>& number,
                                const domain::Command& command) {
    std::optional<Order> order;
    if (number) {
        const auto known = read(*number);
        if (!known) return known.error();
        order = (*known)->order;
    }
    domain::Occasion occasion{.at = at_,
                              .person = who_.person,
                              .key = key_,
                              .workshop = workshop(),
                              .station = who_.station,
                              .command = command_};
    if (order && asksForLegalFields(command, *order)) {
        auto lacking = legalLack(laboratory_, order->revision);
        if (!lacking) return lacking.error();
        occasion.legal = *std::move(lacking);
    }
    const auto events = decide(order, command, occasion);
    if (!events) return events.error();
    for (const Event& event : *events) order = evolve(std::move(order), event);
    events_.insert(events_.end(), events->begin(), events->end());
    orders_.insert_or_assign(order->number, ReadOrder{*order, events->back(), true});
    return *std::move(order);
}

Result<Done> UnitOfWork::record(const domain::Subject& subject, domain::WorkshopHappening what) {
    auto event = decide(workshop(), subject, std::move(what), {at_, who_.person, key_, command_});
    if (!event) return event.error();
    if (!changed_) changed_ = *workshop_;
    changed_ = evolve(*std::move(changed_), *event);
    events_.emplace_back(*std::move(event));
    return Done{};
}

Result<std::optional<domain::SealedText>> UnitOfWork::seal(const std::optional<std::string>& text) {
    if (!text || text->empty()) return std::optional<domain::SealedText>{};
    auto sealed = storage::SealedTexts{laboratory_.records()}.seal(transaction_, *text);
    if (!sealed) return sealed.error();
    sealed_.push_back(*sealed);
    return std::optional{*std::move(sealed)};
}

Result<Done> UnitOfWork::note(domain::AccessHappening what) {
    return storage::AccessLog{laboratory_.records()}.append(
        transaction_,
        {.at = at_, .person = who_.person, .station = who_.station, .what = std::move(what)});
}

Result<Done> UnitOfWork::dropUnusedTexts() {
    const auto isTakenUp = [&](const domain::SealedText& text) {
        return std::ranges::any_of(events_, [&](const LedgerEvent& event) {
            return std::ranges::count(storage::sealedTextsIn(event), text) > 0;
        });
    };
    const storage::SealedTexts texts{laboratory_.records()};
    for (const domain::SealedText& text : sealed_)
        if (!isTakenUp(text))
            if (auto removed = texts.remove(transaction_, text); !removed) return removed;
    return Done{};
}

Result<Done> UnitOfWork::keep() {
    if (auto dropped = dropUnusedTexts(); !dropped) return dropped;
    if (events_.empty()) return Done{};
    const storage::Ledger ledger{laboratory_.records()};
    if (auto appended = ledger.append(transaction_, events_); !appended) return appended;
    for (const auto& [number, read] : orders_) {
        if (!read.isTouched) continue;
        std::vector<Event> own;
        for (const LedgerEvent& any : events_)
            if (const auto* event = std::get_if<Event>(&any);
                event != nullptr && event->order == number)
                own.push_back(*event);
        if (auto put = storage::putProjections(transaction_, read.order, own); !put) return put;
    }
    return Done{};
}

/// One run of a unit of work, from the first check to the commit.
class Performance {
public:
    Performance(const Laboratory& laboratory, const Who& who, const Deed& deed)
        : laboratory_{laboratory}, who_{who}, deed_{deed} {}

    /// What was recorded before under the same key, or nullopt when the body was run and kept.
    template <typename Body>
    Result<std::optional<Before>> run(const Body& body) {
        if (auto marked = markClock(); !marked) return marked.error();
        if (deed_.asksPassword)
            if (auto proved = provePassword(); !proved) return proved.error();
        auto done = within(body);
        if (!denial_) {
            // What was refused for what it asks is still use of the session.
            if (!done && deed_.permission)
                if (auto used = use(laboratory_, who_); !used) return done.error();
            return done;
        }
        return refuse(laboratory_, who_, codeOf(*deed_.permission), *denial_);
    }

private:
    template <typename Body>
    Result<std::optional<Before>> within(const Body& body) {
        auto begun = Transaction::begin(laboratory_.records());
        if (!begun) return begun.error();
        Transaction transaction = *std::move(begun);
        const auto workshop = laboratory_.workshop();
        if (!workshop) return workshop.error();
        if (deed_.permission)
            if (auto allowed = allow(transaction, **workshop); !allowed) return allowed.error();
        auto command = digestOfCommand(laboratory_, deed_.command);
        if (!command) return command.error();
        if (!who_.key.empty()) {
            auto key = keptKey(laboratory_, who_.key);
            if (!key) return key.error();
            auto recorded = before(laboratory_, who_, *key, *command);
            if (!recorded) return recorded.error();
            if (*recorded) {
                if (auto committed = transaction.commit(); !committed) return committed.error();
                return recorded;
            }
            who_.key = *std::move(key);
        }
        const auto at = timeOfEntry();
        if (!at) return at.error();
        UnitOfWork unit{laboratory_, who_,        std::move(transaction), **workshop,
                        *at,         keyOf(who_), *std::move(command)};
        if (auto fresh = checkVersion(unit); !fresh) return fresh.error();
        if (deed_.asksPassword)
            if (auto settled = settleProof(unit); !settled) return settled.error();
        if (auto done = body(unit); !done) return done.error();
        if (auto kept = unit.keep(); !kept) return kept.error();
        if (auto committed = unit.transaction_.commit(); !committed) return committed.error();
        return std::optional<Before>{};
    }

    /// Records that the clock was found wrong, with both times, and tells it.
    Result<Done> markClock() const {
        const auto seen = lookAtClock(laboratory_);
        if (!seen) return seen.error();
        if (!*seen) return Done{};
        auto begun = Transaction::begin(laboratory_.records());
        if (!begun) return begun.error();
        // Another program may have marked it meanwhile.
        const auto doubt = lookAtClock(laboratory_);
        if (!doubt) return doubt.error();
        if (!*doubt) return Done{};
        const auto workshop = laboratory_.workshop();
        if (!workshop) return workshop.error();
        UnitOfWork unit{laboratory_, who_,         *std::move(begun),
                        **workshop,  (**doubt).at, keyOf({.person = who_.person}),
                        {}};
        const domain::ClockMarked mark{(**doubt).fault, (**doubt).before};
        if (auto done = unit.record(clockSubject(), mark); !done) return done;
        if (auto kept = unit.keep(); !kept) return kept;
        if (auto committed = unit.transaction_.commit(); !committed) return committed;
        laboratory_.tell(toldOf(**doubt));
        return Done{};
    }
    /// Never before the newest entry, see domain/workshop/clock_check.h.
    Result<domain::Instant> timeOfEntry() const {
        const auto newest = storage::Ledger{laboratory_.records()}.newestAt();
        if (!newest) return newest.error();
        const domain::Instant now = laboratory_.now();
        if (!*newest) return now;
        if (now.microseconds() < (**newest).microseconds() - domain::kToleratedStepBack)
            return Error{ErrorCode::Conflict,
                         "the clock of the machine was put back just now; try again"};
        return domain::entryTime(**newest, now);
    }

    /// Looks at the password before the transaction, which must not wait for it. Who may not anyway
    /// is not asked: allow() says so.
    Result<Done> provePassword() {
        const auto why = whyRefused(laboratory_, who_, *deed_.permission);
        if (!why) return why.error();
        if (!why->empty()) return Done{};
        if (!who_.password)
            return Error{ErrorCode::Refused,
                         who_.person.text() + " gives the password once more for this"};
        const Attempt attempt{.person = who_.person,
                              .credential = domain::Credential::Password,
                              .named = who_.person.text(),
                              .station = who_.station,
                              .asked = std::string{codeOf(*deed_.permission)}};
        auto proved = prove(laboratory_, attempt, *who_.password);
        if (!proved) return proved.error();
        if (proved->after.mustChange) return mustChange(laboratory_, *proved);
        proved_ = *std::move(proved);
        return Done{};
    }
    Result<Done> settleProof(UnitOfWork& unit) const {
        if (proved_) return settle(laboratory_, unit, *proved_);
        return Error{ErrorCode::Conflict, "who may do this was changed just now; try again"};
    }

    /// Session and permission.
    Result<Done> allow(Transaction& transaction, const domain::Workshop& workshop) {
        if (workshop.people.empty()) return notSetUp();
        auto flaw = useSession(laboratory_, transaction, who_);
        if (!flaw) return flaw.error();
        std::string why = *std::move(flaw);
        const bool isSignedIn = why.empty();
        if (isSignedIn) why = whyNot(workshop, who_, *deed_.permission);
        if (why.empty()) return Done{};
        denial_ = Denial{why, why, !isSignedIn};
        return Error{ErrorCode::Refused, why};
    }

    /// Whether the person decides on the order as it is.
    Result<Done> checkVersion(UnitOfWork& unit) const {
        if (!deed_.about) return Done{};
        const auto known = unit.read(*deed_.about);
        if (!known) return known.error();
        if (isStale(who_.seen, (*known)->order.version)) return overtaken((*known)->newest);
        return Done{};
    }

    const Laboratory& laboratory_;
    Who who_;
    const Deed& deed_;
    std::optional<Denial> denial_{};
    std::optional<Proved> proved_{};
};

Result<Outcome> perform(const Laboratory& laboratory, const Who& who, const Deed& deed,
                        const std::function<Result<Order>(UnitOfWork&)>& body) {
    std::optional<Order> answer;
    const auto done = Performance{laboratory, who, deed}.run([&](UnitOfWork& unit) -> Result<Done> {
        auto order = body(unit);
        if (!order) return order.error();
        answer = *std::move(order);
        return Done{};
    });
    if (!done) return done.error();
    if (!*done) return Outcome{*std::move(answer), false, {}};
    if (!(*done)->order)
        return Error{ErrorCode::Refused, "this key was used for something else; take another key"};
    const auto order = storage::loadOrder(laboratory.records(), *(*done)->order);
    if (!order) return order.error();
    return Outcome{**order, true, (*done)->at};
}

Result<Kept> perform(const Laboratory& laboratory, const Who& who, const Deed& deed,
                     const std::function<Result<Done>(UnitOfWork&)>& body) {
    const auto done = Performance{laboratory, who, deed}.run(body);
    if (!done) return done.error();
    if (!*done) return Kept{};
    laboratory.tell(recordedBefore((*done)->at));
    return Kept{true, (*done)->at};
}

Error refuse(const Laboratory& laboratory, const Who& who, std::string_view command,
             const Denial& denial) {
    const auto recorded =
        perform(laboratory, {.person = who.person, .station = who.station},
                {.command = commandOf({"refuse"})}, [&](UnitOfWork& unit) -> Result<Done> {
                    if (auto ended = endIfRested(laboratory, unit.transaction(), who); !ended)
                        return ended;
                    if (denial.isOfNobody) {
                        const auto isRecorded = countRefusal(laboratory, unit, who.station);
                        if (!isRecorded) return isRecorded.error();
                        if (!*isRecorded) return Done{};
                    }
                    return unit.note(domain::AccessDenied{std::string{command}, denial.recorded});
                });
    if (!recorded) return recorded.error();
    return {ErrorCode::Refused, denial.says};
}

Error notSetUp() {
    return {ErrorCode::Refused, "set the laboratory up first: framewright set-up CODE"};
}

}  // namespace actions
