#include "storage/integrity.h"

#include <map>

#include "storage/migrator.h"
#include "storage/statement.h"

namespace storage {
namespace {

using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Result;
using Problems = std::vector<std::string>;

/// As many as a person reads.
constexpr std::string_view kIntegrityCheck = "PRAGMA integrity_check(10)";
constexpr std::string_view kForeignKeyCheck = "PRAGMA foreign_key_check";
constexpr std::string_view kSound = "ok";

/// What a database is made of but for its rows: "table ledger" and the statement that made it.
/// What SQLite keeps for itself (sqlite_stat1 ...) says nothing about the records.
constexpr std::string_view kParts =
    "SELECT type, name, sql FROM sqlite_schema "
    "WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite^_%' ESCAPE '^'";
using Parts = std::map<std::string, std::string>;

Parts partsOf(const QSqlDatabase& database) {
    Parts parts;
    Statement rows{database, Sql{std::string{kParts}}};
    rows.run();
    while (rows.next()) parts[rows.text("type") + ' ' + rows.text("name")] = rows.text("sql");
    return parts;
}

Problems differences(const Parts& found, const Parts& expected, bool isNewer) {
    Problems problems;
    for (const auto& [part, sql] : expected) {
        const auto there = found.find(part);
        if (there == found.end())
            problems.push_back("the " + part + " is missing");
        else if (!isNewer && there->second != sql)
            problems.push_back("the " + part + " is not as it was made");
    }
    if (isNewer) return problems;
    for (const auto& [part, sql] : found)
        if (!expected.contains(part))
            problems.push_back("the " + part + " does not belong to the records");
    return problems;
}

/// The steps as they were taken, with what each wrote about itself.
struct Step {
    Value description;
    Value needs;
    friend bool operator==(const Step&, const Step&) = default;
};
using Steps = std::map<std::int64_t, Step>;

Steps stepsOf(Connection& connection) {
    Steps steps;
    Statement rows{connection, "schema_step_all"};
    rows.run();
    while (rows.next())
        steps[rows.whole("step")] = {rows.value("description"), rows.value("needs")};
    return steps;
}

/// A newer program has taken more steps than this one knows; every other is as it was written.
void compareSteps(Problems& problems, const Steps& found, const Steps& known) {
    for (const auto& [number, step] : known)
        if (const auto there = found.find(number); there == found.end())
            problems.push_back("schema step " + std::to_string(number) + " is missing");
        else if (there->second != step)
            problems.push_back("schema step " + std::to_string(number) + " is not as it was taken");
    // Steps are taken one after the other, by whatever program.
    std::int64_t expected = 1;
    for (const auto& [number, step] : found) {
        if (number != expected)
            problems.push_back("schema step " + std::to_string(number) + " does not follow step " +
                               std::to_string(expected - 1));
        expected = number + 1;
    }
}

}  // namespace

Result<Problems> engineProblems(Connection& connection) try {
    Problems problems;
    Statement integrity{connection.database(), Sql{std::string{kIntegrityCheck}}};
    integrity.run();
    while (integrity.next())
        if (std::string found = integrity.text("integrity_check"); found != kSound)
            problems.push_back("the file is damaged: " + std::move(found));
    if (!problems.empty()) return problems;
    Statement orphans{connection.database(), Sql{std::string{kForeignKeyCheck}}};
    orphans.run();
    while (orphans.next())
        problems.push_back("a row of " + orphans.text("table") + " refers to a row of " +
                           orphans.text("parent") + " that is not there");
    return problems;
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<Done> checkEngine(Connection& connection) {
    const auto problems = engineProblems(connection);
    if (!problems) return problems.error();
    if (problems->empty()) return Done{};
    return Error{ErrorCode::Unavailable, "the records in " + connection.file().string() + ": " +
                                             problems->front() + "; restore a backup"};
}

Result<Problems> schemaProblems(Connection& connection) try {
    const auto model = Connection::inMemory();
    if (!model) return model.error();
    const auto taken = schemaStep(connection);
    const auto known = schemaStep(**model);
    if (!taken || !known) return taken ? known.error() : taken.error();
    Problems problems =
        differences(partsOf(connection.database()), partsOf((**model).database()), *taken > *known);
    compareSteps(problems, stepsOf(connection), stepsOf(**model));
    // A forged step would otherwise excuse whatever was added to the schema.
    if (*taken > *known)
        problems.push_back("the records say they are of schema " + std::to_string(*taken) +
                           ", made by a newer program; this one knows schema " +
                           std::to_string(*known) +
                           " and cannot prove what follows it: verify with the newer program");
    return problems;
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace storage
