/// What every room works with: the records, who is signed in, the questions it may ask, the look.
#pragma once

#include <optional>

#include "apps/actions/orders.h"
#include "apps/actions/sign_in.h"
#include "apps/desktop/dialogs.h"
#include "apps/desktop/look.h"

namespace desktop {

struct Desk {
    const actions::Laboratory& laboratory;
    Dialogs& dialogs;
    const Look& look;
    std::optional<actions::Session> who{};  ///< nothing is changed before somebody signs in
};

/// Whoever is signed in, as the actions ask for them. Somebody must be.
inline actions::Who asWho(const actions::Session& session) {
    return {.person = session.person, .token = session.token, .station = session.station};
}

}  // namespace desktop
