/// The schema as an append-only list of numbered steps, brought up to date when records are opened.
#pragma once

#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "domain/base/result.h"
#include "storage/transaction.h"

namespace storage {

/// One file of storage/migrations, as "0001_first_records.sql". Its first line is the description,
/// "-- The ledger and ..."; its second, "-- needs 1", the oldest step a program must know to go on
/// using the records afterwards. Statements are parted by lines "-- next".
struct Migration {
    std::int64_t step{};
    std::string description{};
    std::int64_t needs{};
    std::vector<std::string> statements{};
    /// What SQL cannot do, within the same transaction; set by who opens the records.
    std::function<domain::Result<domain::Done>(Transaction&)> code{};
};

/// Replaces the tokens of the dialect. ErrorCode::Unusable when the first lines are missing.
domain::Result<Migration> parseMigration(std::int64_t step, std::string_view text,
                                         const Dialect& dialect);

/// The steps of this program, 1, 2, 3 ...
domain::Result<std::vector<Migration>> migrations(const Dialect& dialect);

/// The newest step that records have taken. ErrorCode::Unavailable when they have taken none: what
/// lies there was emptied or never finished.
domain::Result<std::int64_t> schemaStep(Connection& connection);

/// Takes the steps that are not taken yet, each in one transaction that also writes its number in
/// the table schema_step; `afterwards` runs within the last one, `before` ahead of the first when
/// the ledger has entries: where it fails, no step is taken. Refuses records that need a newer
/// program, and older ones in which the engine finds damage, which a new step would build upon.
/// ErrorCode::Unavailable.
domain::Result<domain::Done> migrate(
    Connection& connection, std::span<const Migration> steps,
    const std::function<domain::Result<domain::Done>(Transaction&)>& afterwards = {},
    const BeforeUpgrade& before = {});

}  // namespace storage
