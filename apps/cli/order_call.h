/// What all verbs about one order share: open the laboratory, read who and which, do, tell.
#pragma once

#include <functional>

#include "apps/actions/laboratory.h"
#include "apps/actions/outcome.h"
#include "apps/actions/who.h"
#include "apps/cli/verb.h"
#include "apps/cli/who_option.h"

namespace cli {

/// What a person needs to hear after a change; programs get the whole order.
Exit tell(const Call& call, const actions::Outcome& outcome);

using OrderAct = std::function<domain::Result<actions::Outcome>(
    const actions::Laboratory&, const domain::OrderNumber&, const actions::Who&)>;

/// Finds out who calls: whoOf(), or provenWhoOf() for what asks for the password once more.
using WhoReader = domain::Result<actions::Who> (*)(const Call&);

/// The first argument is the order.
domain::Result<Exit> actOnOrder(const Call& call, const OrderAct& act, WhoReader reader = &whoOf);

}  // namespace cli
