#include "tests/bench/bench_laboratory.h"

#include "apps/actions/lots.h"
#include "apps/actions/people.h"
#include "apps/actions/workshop.h"
#include "tests/support/floor.h"

namespace bench {
namespace {

using actions::Laboratory;
using domain::Done;
using domain::Result;
using domain::Stage;

constexpr const char* kPassword = "a lamp over every bench";
constexpr std::int64_t kPlenty = 1'000'000'000'000;  // milligrams, or pieces

std::vector<domain::Skill> everySkill() {
    std::vector<domain::Skill> skills;
    skills.reserve(domain::enumCodes<domain::Skill>.size());
    for (const auto& code : domain::enumCodes<domain::Skill>) skills.push_back(code.value);
    return skills;
}

domain::PersonCode codeOfPerson(std::string_view code) { return *domain::PersonCode::parse(code); }

Result<Done> enterPerson(const Laboratory& laboratory, std::string_view code, domain::Role role,
                         const actions::Who& manager) {
    const auto person = codeOfPerson(code);
    auto entered = actions::enterPerson(laboratory, person, role, everySkill(), manager);
    if (!entered) return entered;
    const auto once = actions::resetPassword(laboratory, person, manager);
    if (!once) return once.error();
    return actions::givePassword(laboratory, person, *once, actions::Secret{kPassword});
}

Result<Done> enterPeople(const Laboratory& laboratory) {
    const auto made = actions::setUp(laboratory, codeOfPerson(kManager), everySkill(),
                                     actions::Secret{kPassword});
    if (!made) return made.error();
    const auto manager = signedIn(laboratory, kManager);
    if (!manager) return manager.error();
    std::vector<std::pair<std::string_view, domain::Role>> people{
        {"OR", domain::Role::Manager},
        {kInspector, domain::Role::Inspector},
        {"IQ", domain::Role::Inspector}};
    for (const auto code : kTechnicians) people.emplace_back(code, domain::Role::Technician);
    for (const auto& [code, role] : people)
        if (auto done = enterPerson(laboratory, code, role, *manager); !done) return done;
    return Done{};
}

Result<Done> enterThings(const Laboratory& laboratory, const actions::Who& manager) {
    for (const auto& kind : domain::enumCodes<domain::StationKind>)
        if (auto done =
                actions::enterStation(laboratory, stationCode(kind.value), kind.value, manager);
            !done)
            return done.error();
    for (const auto& [code, equipment] : support::floorWorkshop().equipment)
        if (auto done = actions::enterEquipment(laboratory, code, equipment, manager); !done)
            return done.error();
    return Done{};
}

Result<Done> receiveLots(const Laboratory& laboratory, const actions::Who& manager) {
    const domain::Workshop stock = support::floorWorkshop();
    const auto receive = [&](const domain::ThingCode& code, domain::LotKind kind) -> Result<Done> {
        domain::Lot lot = stock.lots.at(support::lotOn(kind)).lot;
        lot.makersNumber = "N-" + code.text();
        lot.amount = kPlenty;
        auto done = actions::receiveLot(laboratory, code, lot, manager);
        if (!done) return done.error();
        return Done{};
    };
    for (const auto& kind : domain::enumCodes<domain::LotKind>)
        for (int count = 0; count < kLotsOfAKind; ++count)
            if (auto done = receive(lotCode(kind.value, count), kind.value); !done) return done;
    return receive(support::thing(kPooledLot), domain::LotKind::ResinLiquid);
}

/// Here an interim denture goes from the casts to the flask at once.
Result<Done> shortenRoute(const Laboratory& laboratory, const actions::Who& manager) {
    for (const Stage stage : {Stage::ToothSetUp, Stage::ToothTryIn, Stage::Polishing}) {
        actions::StageChange change;
        change.stage = stage;
        change.out = true;
        auto done = actions::changeRoute(laboratory, domain::Route::InterimResin,
                                         domain::Arch::Upper, change, manager);
        if (!done) return done.error();
    }
    return Done{};
}

}  // namespace

domain::ThingCode lotCode(domain::LotKind kind, int count) {
    return support::thing(std::string{codeOf(kind)} + '-' + std::to_string(count));
}

domain::ThingCode stationCode(domain::StationKind kind) {
    return support::thing(std::string{codeOf(kind)} + "-1");
}

Result<Done> furnish(const Laboratory& laboratory) {
    if (auto people = enterPeople(laboratory); !people) return people;
    const auto manager = signedIn(laboratory, kManager);
    if (!manager) return manager.error();
    auto head = actions::writeLetterhead(
        laboratory, {kLaboratoryName, kLaboratoryAddress, "bench@westhaven.example"}, *manager);
    if (!head) return head;
    if (auto things = enterThings(laboratory, *manager); !things) return things;
    if (auto lots = receiveLots(laboratory, *manager); !lots) return lots;
    return shortenRoute(laboratory, *manager);
}

Result<actions::Who> signedIn(const Laboratory& laboratory, std::string_view person) {
    const auto code = codeOfPerson(person);
    const auto session = actions::signIn(laboratory, code, actions::Secret{kPassword}, {});
    if (!session) return session.error();
    return actions::proving({.person = code, .token = session->token}, actions::Secret{kPassword});
}

}  // namespace bench
