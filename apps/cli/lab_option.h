/// Which laboratory a call works in: the option --lab, or the XDG data folder.
#pragma once

#include <filesystem>

#include "apps/actions/house.h"
#include "apps/cli/verb.h"

namespace cli {

/// The clock of the machine, for every verb but the demo.
const domain::Clock& machineClock();

/// Where the records live.
std::filesystem::path labFolder(const Call& call);
/// Opens them; where there are none nothing is made. The one way a verb comes to them, so this is
/// where it is refused whoever is not signed in, unless the verb needs no session.
domain::Result<actions::Laboratory> laboratoryOf(const Call& call);
/// Likewise; where their identity key is not to be had, they open without it.
domain::Result<actions::Laboratory> laboratoryToVerify(const Call& call);
/// How identity keys are come by at the command line: the passphrase of a locked one is asked for.
storage::KeyAccess keyAccess();
/// Makes them if there are none: for the verb that sets a laboratory up.
domain::Result<actions::Laboratory> newLaboratoryOf(const Call& call);
/// Its limits and guides; the documented defaults where there are no records yet, unless --lab says
/// that there are.
domain::Result<actions::House> houseOf(const Call& call);

}  // namespace cli
