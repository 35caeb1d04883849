/// The plain facts of how an order stands, and when each command is allowed by them: what decide.h
/// says in words, written a second time and independently of the code behind it.
#pragma once

#include <vector>

#include "domain/production/order.h"

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

/// The stages of a route, in order, written out from the descriptions of the routes.
std::vector<domain::Stage> stagesWrittenOut(domain::Route route);
/// Whether the dentist has the work during this stage.
bool isAtPractice(domain::Stage stage);

inline bool mayStart(const Facts& facts) {
    return facts.going() && facts.where == Whereabouts::ToDo &&
           (!isAtPractice(facts.due) || facts.complete);
}
inline bool mayFinish(const Facts& facts) {
    return facts.going() && facts.where == Whereabouts::InHand && facts.complete;
}
inline bool mayRecord(const Facts& facts) {
    const Whereabouts asked = isAtPractice(facts.due) ? Whereabouts::ToDo : Whereabouts::InHand;
    return facts.going() && facts.where == asked;
}
inline bool isOpen(const Facts& facts) { return facts.exists && !facts.closed(); }

inline bool mayRevise(const Facts& facts) {
    return isOpen(facts) && (facts.flagged || facts.found) && !(facts.inWork() && facts.out());
}

inline bool isBack(const Facts& facts) {
    return facts.inWork() && facts.where == Whereabouts::AtPractice;
}
inline bool mayGoBack(const Facts& facts) { return facts.going() && !facts.out(); }

/// Also when it was delivered.
inline bool mayRemake(const Facts& facts) {
    return facts.exists && !facts.replaced && !facts.purged &&
           (facts.status == domain::OrderStatus::Delivered || (facts.inWork() && !facts.out()));
}
inline bool maySend(const Facts& facts) {
    return mayGoBack(facts) && !isAtPractice(facts.due) && facts.due != domain::Stage::Receipt &&
           facts.due != domain::Stage::Inspection && facts.due != domain::Stage::Delivery;
}
inline bool isAtSite(const Facts& facts) {
    return facts.inWork() && facts.where == Whereabouts::AtSite;
}

}  // namespace support
