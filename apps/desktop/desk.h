/// What every room works with: the records, the person, the questions it may ask, the look.
#pragma once

#include <optional>

#include "apps/actions/orders.h"
#include "apps/desktop/dialogs.h"
#include "apps/desktop/look.h"

namespace desktop {

struct Desk {
    const actions::Laboratory& laboratory;
    Dialogs& dialogs;
    const Look& look;
    std::optional<domain::PersonCode> who{};  ///< nothing is changed before somebody says who
};

}  // namespace desktop
