/// A small model of an order's life, independent of the code it is compared with: a few facts, the
/// stages with their attempts, what was recorded, and what is left of each lot.
#pragma once

#include <array>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "tests/support/floor.h"
#include "tests/support/floor_facts.h"

namespace model {

enum class Progress { ToDo, InHand, Done };

struct ModelStage {
    domain::Stage stage{};
    Progress progress{};
    int attempt{1};
    bool complete{};                ///< everything the gate asks for was recorded
    std::set<std::string> hands{};  ///< who started, recorded or finished this attempt
};

struct Model {
    support::Facts facts{.exists = false};
    std::vector<ModelStage> stages{};
    std::size_t at{};  ///< the due one
    int questions{};   ///< of the bench, unanswered
    int version{};
    int records{};  ///< ever made
    bool joined{};
    std::set<std::string> cautions{};  ///< of the newest examination
    std::set<std::string> taken{};     ///< whose cautions somebody took
    std::map<domain::LotKind, std::int64_t> left{};
    std::string inspectedBy{};

    ModelStage& due() { return stages[at]; }
    const ModelStage& due() const { return stages[at]; }
    /// Puts what follows from the rest into the facts.
    void settle();
    /// A stage the route has not goes by the one after receipt.
    void undoFrom(domain::Stage stage);
    /// Whether somebody made a part of the device.
    bool isMaker(const std::string& person) const;
};

/// One step of a random life. The numbers choose among what is possible.
struct Move {
    int kind{};
    int variant{};
    int who{};
    int minutes{};  ///< the clock moves by; may be negative
};

/// A command made from a move, with what the model expects of it.
struct Attempt {
    std::string name;  ///< of the edge of the workflow
    domain::Command command;
    bool allowed{};
    void (*happens)(Model&, const Attempt&);  ///< what it makes of the model
    std::string person{"MK"};
    std::int64_t daysLater{};
    std::int64_t events{1};
    int number{};  ///< for whatever the command needs to hand on
};

/// The command a move stands for, as things are.
Attempt attemptOf(const Move& move, const Model& model, const support::Bench& bench);

/// The names of all attempts that can be allowed, and of all that can be refused.
struct Edges {
    std::set<std::string> allowed{};
    std::set<std::string> refused{};
};
Edges everyEdge();

}  // namespace model
