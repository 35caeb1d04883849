#include "domain/workshop/workshop.h"

#include <algorithm>

namespace domain {
namespace {

using Objection = std::optional<Error>;

Objection refused(const Subject& subject, std::string why) {
    return Error{ErrorCode::Refused, subject.text() + ": " + std::move(why)};
}

Objection unknown(const Subject& subject, std::string_view sort) {
    return Error{ErrorCode::Unusable, subject.text() + ": there is no such " + std::string{sort}};
}

/// Whether somebody else manages the laboratory and can sign in to do it. A badge alone is not
/// enough: giving a role asks for the password.
bool othersManage(const Workshop& workshop, const PersonCode& code) {
    return std::ranges::any_of(workshop.people, [&](const auto& entry) {
        const Person& person = entry.second;
        return entry.first != code && !person.left && person.role == Role::Manager &&
               person.hasOwnPassword;
    });
}

constexpr std::string_view kNobodyElseManages =
    "nobody else manages here with a password of their own; enter another manager first, who "
    "chooses one";

struct Objections {
    const Workshop& workshop;
    const Subject& subject;
    Instant at;
    const PersonCode& by;

    Objection operator()(const PersonEntered& entered) const {
        const auto code = *PersonCode::parse(subject.code);
        const auto known = workshop.people.find(code);
        const bool manages =
            workshop.people.empty() || (known != workshop.people.end() && !known->second.left &&
                                        known->second.role == Role::Manager);
        if (manages && entered.role != Role::Manager && !othersManage(workshop, code))
            return refused(subject, "a manager was expected: " + std::string{kNobodyElseManages});
        if (known != workshop.people.end() && known->second.left)
            return refused(subject, "this code belonged to somebody who left; choose another");
        return {};
    }
    Objection operator()(const PersonLeft&) const {
        const auto code = *PersonCode::parse(subject.code);
        const Person* person = workshop.worker(code);
        if (person == nullptr) return unknown(subject, "person");
        if (person->role == Role::Manager && !othersManage(workshop, code))
            return refused(subject, std::string{kNobodyElseManages});
        return {};
    }
    Objection operator()(const CredentialGiven& given) const {
        // One that somebody else gives takes the place of their own.
        return given.credential == Credential::Password && by.text() != subject.code ? ownPassword()
                                                                                     : person();
    }
    Objection operator()(const CredentialTaken& taken) const {
        return taken.credential == Credential::Password ? ownPassword() : person();
    }
    Objection operator()(const AccessRefused&) const { return {}; }
    Objection operator()(const StationEntered&) const { return {}; }
    Objection operator()(const EquipmentEntered& entered) const {
        if (entered.equipment.serial.empty())
            return refused(subject, "its maker's serial number was expected");
        return {};
    }
    Objection operator()(const Calibrated& calibrated) const {
        if (!workshop.equipment.contains(*ThingCode::parse(subject.code)))
            return unknown(subject, "equipment");
        if (calibrated.due < at.day())
            return refused(subject, "a day to come was expected, not " + calibrated.due.text());
        return {};
    }
    Objection operator()(const SiteEntered& entered) const {
        if (entered.site.name.empty() || entered.site.address.empty())
            return refused(subject, "its name and address were expected");
        return {};
    }
    Objection operator()(const LotReceived& received) const {
        const Lot& lot = received.lot;
        if (workshop.lots.contains(*ThingCode::parse(subject.code)))
            return refused(subject, "this code is taken by another lot");
        if (lot.maker.empty() || lot.product.empty() || lot.makersNumber.empty())
            return refused(subject, "maker, product and the maker's number were expected");
        if (lot.amount <= 0) return refused(subject, "an amount above 0 was expected");
        return {};
    }
    Objection operator()(const LotHeld&) const {
        const KeptLot* kept = lot();
        if (kept == nullptr) return unknown(subject, "lot");
        return kept->held ? refused(subject, "it is in quarantine already") : Objection{};
    }
    Objection operator()(const LotReleased&) const {
        const KeptLot* kept = lot();
        if (kept == nullptr) return unknown(subject, "lot");
        return kept->held ? Objection{} : refused(subject, "it is not in quarantine");
    }
    Objection operator()(const RouteSet& set) const {
        const auto flaws = flawsOf(set.plan);
        if (!flaws.empty()) return refused(subject, flaws.front());
        const auto version = workshop.planFor(set.plan.route, set.plan.arch).version;
        if (set.plan.version != version + 1)
            return refused(subject, "version " + std::to_string(version + 1) +
                                        " was expected: somebody changed it meanwhile");
        return {};
    }
    Objection operator()(const SettingSet& set) const {
        if (set.name.starts_with(subject.code + '.')) return {};
        return refused(subject, "the setting " + set.name + " is none of these");
    }
    Objection operator()(const GuideEntered& entered) const {
        return entered.guide.name.empty() ? refused(subject, "its name was expected") : Objection{};
    }
    Objection operator()(const CredentialKept&) const { return person(); }
    Objection operator()(const TakenOver&) const { return {}; }

    Objection operator()(const ClockMarked&) const { return {}; }
    Objection operator()(const DateConfirmed& confirmed) const {
        if (!workshop.clockDoubt)
            return refused(subject, "nothing is wrong with it: there is nothing to confirm");
        if (confirmed.day == at.day()) return {};
        return refused(subject, "it says " + at.text() + ", not " + confirmed.day.text() +
                                    ": set the clock of the machine first");
    }

private:
    Objection person() const {
        if (workshop.worker(*PersonCode::parse(subject.code)) == nullptr)
            return unknown(subject, "person");
        return {};
    }
    /// Whether a manager's own password may go.
    Objection ownPassword() const {
        const auto code = *PersonCode::parse(subject.code);
        const Person* person = workshop.worker(code);
        if (person == nullptr) return unknown(subject, "person");
        if (person->role == Role::Manager && person->hasOwnPassword &&
            !othersManage(workshop, code))
            return refused(subject, std::string{kNobodyElseManages});
        return {};
    }
    const KeptLot* lot() const {
        const auto found = workshop.lots.find(*ThingCode::parse(subject.code));
        return found == workshop.lots.end() ? nullptr : &found->second;
    }
};

struct Change {
    Workshop& workshop;
    const WorkshopEvent& event;

    PersonCode code() const { return *PersonCode::parse(event.subject.code); }
    ThingCode thing() const { return *ThingCode::parse(event.subject.code); }

    void operator()(const PersonEntered& entered) const {
        Person& person = workshop.people[code()];
        person.role = entered.role;
        person.skills = entered.skills;
        person.left = false;
    }
    void operator()(const PersonLeft&) const { workshop.people[code()].left = true; }
    void operator()(const CredentialGiven& given) const {
        if (given.credential == Credential::Password)
            workshop.people[code()].hasOwnPassword = event.person.text() == event.subject.code;
    }
    void operator()(const CredentialTaken& taken) const {
        if (taken.credential == Credential::Password)
            workshop.people[code()].hasOwnPassword = false;
    }
    void operator()(const AccessRefused&) const {}
    void operator()(const StationEntered& entered) const {
        workshop.stations.insert_or_assign(thing(), entered.kind);
    }
    void operator()(const EquipmentEntered& entered) const {
        workshop.equipment.insert_or_assign(thing(), entered.equipment);
    }
    void operator()(const Calibrated& calibrated) const {
        workshop.equipment[thing()].calibrationDue = calibrated.due;
    }
    void operator()(const SiteEntered& entered) const {
        workshop.sites.insert_or_assign(thing(), entered.site);
    }
    void operator()(const LotReceived& received) const {
        workshop.lots.insert_or_assign(thing(),
                                       KeptLot{.lot = received.lot, .received = event.at.day()});
    }
    void operator()(const LotHeld&) const { workshop.lots[thing()].held = true; }
    void operator()(const LotReleased&) const { workshop.lots[thing()].held = false; }
    void operator()(const RouteSet& set) const {
        workshop.routes.insert_or_assign({set.plan.route, set.plan.arch}, set.plan);
    }
    void operator()(const ClockMarked& marked) const {
        workshop.clockDoubt = ClockDoubt{marked.fault, marked.before, event.at};
    }
    void operator()(const DateConfirmed&) const { workshop.clockDoubt.reset(); }
    // What is kept beside the ledger lies in tables of its own.
    void operator()(const SettingSet&) const {}
    void operator()(const GuideEntered&) const {}
    void operator()(const CredentialKept&) const {}
    void operator()(const TakenOver&) const {}
};

/// What each kind of event is about, in the order of the variant.
constexpr std::array<SubjectKind, enumCodes<WorkshopEventKind>.size()> kSubjects{
    SubjectKind::Person, SubjectKind::Person,  SubjectKind::Person,    SubjectKind::Person,
    SubjectKind::Access, SubjectKind::Station, SubjectKind::Equipment, SubjectKind::Equipment,
    SubjectKind::Site,   SubjectKind::Lot,     SubjectKind::Lot,       SubjectKind::Lot,
    SubjectKind::Route,  SubjectKind::Clock,   SubjectKind::Clock,     SubjectKind::Setting,
    SubjectKind::Guide,  SubjectKind::Person,  SubjectKind::Records};

}  // namespace

std::optional<Subject> Subject::parse(std::string_view text) {
    const auto slash = text.find('/');
    if (slash == std::string_view::npos) return {};
    const auto kind = parseCode<SubjectKind>(text.substr(0, slash));
    const std::string_view code = text.substr(slash + 1);
    if (!kind || !isShortCode(code)) return {};
    return Subject{*kind, std::string{code}};
}

const Person* Workshop::worker(const PersonCode& code) const {
    const auto found = people.find(code);
    return found == people.end() || found->second.left ? nullptr : &found->second;
}

RoutePlan Workshop::planFor(Route route, Arch arch) const {
    const auto edited = routes.find({route, arch});
    return edited == routes.end() ? shippedPlan(route, arch) : edited->second;
}

Result<WorkshopEvent> decide(const Workshop& workshop, const Subject& subject,
                             WorkshopHappening what, const WorkshopOccasion& occasion) {
    if (!isShortCode(subject.code))
        return Error{ErrorCode::Unusable,
                     '"' + subject.code + "\" is no code; expected " + std::string{kShortCodeForm}};
    if (const SubjectKind expected = kSubjects[what.index()]; subject.kind != expected)
        return Error{ErrorCode::Unusable, subject.text() + ": a " + wordsOf(expected) +
                                              " was expected, not a " + wordsOf(subject.kind)};
    if (const auto objection =
            std::visit(Objections{workshop, subject, occasion.at, occasion.person}, what))
        return *objection;
    const auto known = workshop.versions.find(subject);
    return WorkshopEvent{.subject = subject,
                         .version = known == workshop.versions.end() ? 1 : known->second + 1,
                         .at = occasion.at,
                         .person = occasion.person,
                         .key = occasion.key,
                         .what = std::move(what),
                         .command = occasion.command};
}

Workshop evolve(Workshop workshop, const WorkshopEvent& event) {
    std::visit(Change{workshop, event}, event.what);
    workshop.versions[event.subject] = event.version;
    return workshop;
}

}  // namespace domain
