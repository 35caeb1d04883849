#include "apps/cli/order_call.h"

#include <nlohmann/json.hpp>

#include "apps/cli/lab_option.h"
#include "apps/cli/output.h"
#include "apps/cli/typed_words.h"

namespace cli {

using domain::Result;

Exit tell(const Call& call, const actions::Outcome& outcome) {
    if (call.has("json")) {
        Json object = json(outcome.order);
        object["repeated"] = outcome.repeated;
        if (outcome.before) object["recorded-before"] = outcome.before->text();
        print("order-1", object);
        return Exit::Done;
    }
    const domain::Order& order = outcome.order;
    print(Page{order.number.text() + "  " + holdUp(order) +
               (outcome.repeated ? "  (" + actions::recordedBefore(*outcome.before) + ')' : "")});
    return Exit::Done;
}

Result<Exit> actOnOrder(const Call& call, const OrderAct& act, WhoReader reader) {
    const auto number = numberOf(call.arguments().front());
    if (!number) return number.error();
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    const auto who = reader(call);
    if (!who) return who.error();
    const Result<actions::Outcome> outcome = act(*laboratory, *number, *who);
    if (!outcome) return outcome.error();
    return tell(call, *outcome);
}

}  // namespace cli
