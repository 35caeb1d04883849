#include "tests/domain/floor_states.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace support {

using namespace domain;

namespace {

Finding finding(Severity severity, std::string rule) {
    return {.rule = std::move(rule), .severity = severity};
}

void must(Bench& bench, const Command& command) {
    const auto given = bench.give(command);
    ASSERT_TRUE(given) << given.error().message;
}

Command revised(const Bench& bench, std::vector<Finding> findings) {
    Revision revision = bench.order->revision;
    revision.findings = std::move(findings);
    return Answer{.words = {}, .revision = std::move(revision)};
}

/// Collects states, each from a copy of the bench as it stands.
struct Collection {
    std::vector<State> states{};

    void add(std::string name, Bench bench, const Facts& facts) {
        states.push_back({std::move(name), std::move(bench), facts});
    }
    /// The same, and with a question of the bench open.
    void addAlsoFlagged(const std::string& name, const Bench& bench, Facts facts) {
        add(name, bench, facts);
        Bench asked = bench;
        must(asked, Flag{FlagReason::DesignUnclear, {}});
        facts.flagged = true;
        add(name + ", flagged", std::move(asked), facts);
    }
};

const std::vector<Finding> kMissing{finding(Severity::Missing, "survey.present")};
const std::vector<Finding> kCaution{finding(Severity::Caution, "survey.tilt")};

void addReceived(Collection& all, Route route, Arch arch, const std::string& name) {
    const Prescription made = prescriptionOn(route, arch);
    const Facts facts{.route = route};
    all.addAlsoFlagged(name + "received", benchOf(made), facts);
    Facts lacking = facts;
    lacking.missing = lacking.found = true;
    all.add(name + "received with something missing", benchOf(made, kMissing), lacking);
    Facts cautioned = facts;
    cautioned.caution = cautioned.found = true;
    all.addAlsoFlagged(name + "received with a caution", benchOf(made, kCaution), cautioned);
    Prescription vague = made;
    vague.appliance.reset();
    Facts vagueFacts = facts;
    vagueFacts.routed = false;
    all.add(name + "received, appliance not said", benchOf(vague), vagueFacts);
}

/// The due stage worked on the bench: to do, in hand, in hand with everything on record, away.
void addAtBench(Collection& all, Bench bench, Facts facts, const std::string& name) {
    all.addAlsoFlagged(name + "to do", bench, facts);
    const bool stays = facts.due == Stage::Receipt || facts.due == Stage::Inspection ||
                       facts.due == Stage::Delivery;
    if (!stays) {
        Bench sent = bench;
        must(sent, SendWork{thing("CAST-SHOP")});
        Facts away = facts;
        away.where = Whereabouts::AtSite;
        all.addAlsoFlagged(name + "at a site", sent, away);
    }
    must(bench, Start{});
    facts.where = Whereabouts::InHand;
    all.addAlsoFlagged(name + "in hand", bench, facts);
    bench.recordAll();
    facts.complete = true;
    all.addAlsoFlagged(name + "in hand and complete", bench, facts);
}

void addAtPractice(Collection& all, Bench bench, Facts facts, const std::string& name) {
    all.add(name + "to do", bench, facts);
    bench.recordAll();
    facts.complete = true;
    all.addAlsoFlagged(name + "ready to leave", bench, facts);
    must(bench, Start{});
    facts.where = Whereabouts::AtPractice;
    all.addAlsoFlagged(name + "at the practice", bench, facts);
    must(bench, TakeReturn{ReturnVerdict::Remake, {}, sealedWords(), properDisinfection()});
    // It has come back: nothing of it is at the practice any more.
    facts.where = Whereabouts::InHand;
    facts.remakeDue = true;
    all.addAlsoFlagged(name + "to be made again", bench, facts);
}

/// An answer in the middle of the work that brought findings of its own.
void addAnswered(Collection& all, const Bench& bench, const Facts& facts, const std::string& name) {
    Bench lacking = bench;
    must(lacking, Flag{FlagReason::DesignUnclear, {}});
    must(lacking, revised(lacking, kMissing));
    Facts lackingFacts = facts;
    lackingFacts.missing = lackingFacts.found = true;
    all.add(name + "answered with something missing", std::move(lacking), lackingFacts);
    Bench cautioned = bench;
    must(cautioned, Flag{FlagReason::DesignUnclear, {}});
    must(cautioned, revised(cautioned, kCaution));
    Facts cautionedFacts = facts;
    cautionedFacts.caution = cautionedFacts.found = true;
    all.addAlsoFlagged(name + "answered with a caution", cautioned, cautionedFacts);
    must(cautioned, Accept{sealedWords()});
    cautionedFacts.caution = false;
    all.add(name + "with a caution taken", std::move(cautioned), cautionedFacts);
}

void addClosed(Collection& all, const Bench& inWork, const Bench& delivered, const Facts& facts,
               const std::string& name) {
    constexpr std::int64_t kYearsOfMinutes = 60LL * 366 * 24 * 60;
    const std::vector<RetentionTerm> terms{retentionTerms().begin(), retentionTerms().end()};
    const auto add = [&](const std::string& how, Bench bench, OrderStatus status, bool replaced) {
        Facts closed = facts;
        closed.status = status;
        closed.replaced = replaced;
        all.add(name + how, bench, closed);
        bench.minutes += kYearsOfMinutes;
        must(bench, Purge{terms});
        bench.minutes -= kYearsOfMinutes;
        closed.purged = true;
        all.add(name + how + ", purged", std::move(bench), closed);
    };
    add("delivered", delivered, OrderStatus::Delivered, false);
    const OrderNumber other = *OrderNumber::make(26, 2);
    Bench again = delivered;
    must(again, OrderRemake{other, RemakeReason::Fractured, {}, {}});
    add("delivered and made again", std::move(again), OrderStatus::Delivered, true);
    Bench remade = inWork;
    must(remade, OrderRemake{other, RemakeReason::Fractured, {}, {}});
    add("remade", std::move(remade), OrderStatus::Remade, true);
    Bench withdrawn = inWork;
    must(withdrawn, Withdraw{sealedWords()});
    add("withdrawn", std::move(withdrawn), OrderStatus::Withdrawn, false);
}

void addRoute(Collection& all, Route route, Arch arch) {
    const std::string name = std::string{codeOf(route)} + ' ' + std::string{codeOf(arch)} + ": ";
    addReceived(all, route, arch, name);
    const Bench accepted = acceptedBench(prescriptionOn(route, arch));
    Bench bench = accepted;
    Facts facts{.status = OrderStatus::InWork, .route = route};
    for (const Stage stage : stagesWrittenOut(route)) {
        ASSERT_EQ(bench.due(), stage) << name;
        facts.due = stage;
        const std::string at = name + std::string{codeOf(stage)} + ' ';
        if (isAtPractice(stage))
            addAtPractice(all, bench, facts, at);
        else
            addAtBench(all, bench, facts, at);
        addAnswered(all, bench, facts, at);
        bench.passStage();
        if (testing::Test::HasFatalFailure()) return;
    }
    addClosed(all, accepted, bench, facts, name);
}

}  // namespace

std::vector<State> everyState() {
    Collection all;
    Facts none;
    none.exists = false;
    all.add("no order", Bench{}, none);
    for (const auto& route : enumCodes<Route>)
        for (const auto& arch : enumCodes<Arch>) addRoute(all, route.value, arch.value);
    return std::move(all.states);
}

}  // namespace support
