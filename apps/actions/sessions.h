/// Sessions: who is signed in and may act, and the limits of that.
#pragma once

#include <cstdint>
#include <string>

#include "apps/actions/laboratory.h"
#include "apps/actions/who.h"
#include "domain/workshop/person.h"
#include "storage/transaction.h"

namespace actions {

/// The person, if they are signed in, work here, and their role may. Counts as use of the session.
/// Every refusal says what to do or which roles may, and is recorded. For reading; what is written
/// is written by perform(), which asks the same.
domain::Result<domain::Person> authorise(const Laboratory& laboratory, const Who& who,
                                         domain::Permission permission);
/// Lets somebody look at the records: whoever is signed in and works here. Nothing is written but
/// a refusal, and that the session is in use, once a minute.
domain::Result<domain::Done> letLook(const Laboratory& laboratory, const Who& who);
/// What keeps somebody from what a permission is for as things stand, session and all, in a
/// sentence; empty when nothing does. Nothing is written.
domain::Result<std::string> whyRefused(const Laboratory& laboratory, const Who& who,
                                       domain::Permission permission);
/// What keeps a person from what a permission is for, in a sentence; empty when nothing does.
std::string whyNot(const domain::Workshop& workshop, const Who& who, domain::Permission permission);
/// Marks the session used, within a transaction. What keeps it from being used comes back as a
/// sentence, and nothing is marked; empty when nothing does.
domain::Result<std::string> useSession(const Laboratory& laboratory,
                                       storage::Transaction& transaction, const Who& who);
/// Ends the session if it rested too long.
domain::Result<domain::Done> endIfRested(const Laboratory& laboratory,
                                         storage::Transaction& transaction, const Who& who);
/// Counts as use without doing anything, as when somebody types. Refused when the session ended.
domain::Result<domain::Done> use(const Laboratory& laboratory, const Who& who);

/// Ends every session that rested too long, and says how many.
domain::Result<std::int64_t> lockIdle(const Laboratory& laboratory);
domain::Result<int> idleMinutes(const Laboratory& laboratory);
/// 1 to 720; for who may keep the workshop.
domain::Result<domain::Done> writeIdleMinutes(const Laboratory& laboratory, int minutes,
                                              const Who& who);

}  // namespace actions
