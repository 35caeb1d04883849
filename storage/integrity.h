/// What SQLite itself and the list of tables say about the state of the records.
#pragma once

#include <string>
#include <vector>

#include "domain/base/result.h"
#include "storage/connection.h"

namespace storage {

/// What the engine's own checks find, one sentence each: damaged pages, rows that differ from an
/// index, rows that refer to none. Every row of a table that neither the ledger nor what follows
/// from it proves lies in an index as a whole, so a value that changed on the disk shows here.
domain::Result<std::vector<std::string>> engineProblems(Connection& connection);
/// The first of them, as an error.
domain::Result<domain::Done> checkEngine(Connection& connection);

/// Tables, indexes and triggers that are missing, of another make, or too many, and steps of the
/// schema that are not as they were taken. Of records whose newest step is not known here: what is
/// missing, and that this program cannot prove the rest, whether a newer one took the step or not.
domain::Result<std::vector<std::string>> schemaProblems(Connection& connection);

}  // namespace storage
