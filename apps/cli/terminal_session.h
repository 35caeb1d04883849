/// The session of a terminal: whoever signed in there last, and nobody else.
///
/// It lies in a file of mode 0600 in a folder of mode 0700 that belongs to the user of the system:
/// framewright/ in $XDG_RUNTIME_DIR, or, where there is none, framewright/sessions/ in
/// $XDG_STATE_HOME or ~/.local/state. Its name is made of the records' folder and of the terminal's
/// session in the system (its id, and when its first process began: ids are used again), so that
/// another terminal, another user and other records have another one.
#pragma once

#include <filesystem>
#include <optional>

#include "apps/actions/sign_in.h"

namespace cli {

/// nullopt: nobody signed in here. Files that somebody else could have written are passed over.
std::optional<actions::Session> sessionHere(const std::filesystem::path& records);
/// In the place of whoever signed in here before. ErrorCode::Unavailable.
domain::Result<domain::Done> keepSessionHere(const std::filesystem::path& records,
                                             const actions::Session& session);
void forgetSessionHere(const std::filesystem::path& records);

}  // namespace cli
