/// Orders in every state they can stand in, each with the plain facts that say which state it is.
///
/// The facts are noted while a state is brought about; they are not read off the order.
#pragma once

#include <string>
#include <vector>

#include "tests/support/floor.h"

namespace support {

/// Where the work on the due stage is.
enum class Whereabouts { ToDo, InHand, AtSite, AtPractice };

struct Facts {
    bool exists{true};
    domain::OrderStatus status{domain::OrderStatus::Received};
    bool missing{};    ///< a finding that blocks stands
    bool caution{};    ///< one that nobody has taken stands
    bool found{};      ///< the examination found anything at all
    bool flagged{};    ///< a question of the bench is open
    bool remakeDue{};  ///< the dentist asked for it at a try-in
    bool replaced{};   ///< another order makes it again
    bool purged{};
    bool routed{true};                     ///< the prescription says how it is made
    domain::Route route{};                 ///< how it was prescribed
    domain::Stage due{};                   ///< of an order in work
    Whereabouts where{Whereabouts::ToDo};  ///< likewise
    bool complete{};                       ///< what the gate asks for is on record

    bool closed() const {
        return status != domain::OrderStatus::Received && status != domain::OrderStatus::InWork;
    }
    bool inWork() const { return exists && status == domain::OrderStatus::InWork; }
    /// Nothing keeps the bench from working.
    bool going() const { return inWork() && !flagged && !missing && !caution && !remakeDue; }
    bool out() const { return where == Whereabouts::AtSite || where == Whereabouts::AtPractice; }
};

struct State {
    std::string name;
    Bench bench;
    Facts facts;
};

/// The stages of a route, in order, written out from the descriptions of the routes.
std::vector<domain::Stage> stagesWrittenOut(domain::Route route);
/// Whether the dentist has the work during this stage.
bool isAtPractice(domain::Stage stage);

std::vector<State> everyState();

}  // namespace support
