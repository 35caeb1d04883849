#include "storage/census.h"

#include <algorithm>

#include "storage/integrity.h"
#include "storage/ledger.h"
#include "storage/migrator.h"
#include "storage/records_check.h"
#include "storage/sealed_texts.h"
#include "storage/statement.h"

namespace storage {
namespace {

using domain::Result;

const std::string kNoHash(64, '0');

std::vector<std::string> namesIn(const QSqlDatabase& database, const std::string& sql) {
    Statement rows{database, Sql{sql}};
    rows.run();
    std::vector<std::string> names;
    while (rows.next()) names.push_back(rows.text("name"));
    return names;
}

/// A name as SQL takes it, whatever stands in it; `with` is the quote.
std::string quoted(const std::string& name, char with) {
    std::string text{with};
    for (const char c : name) text.append(c == with ? 2 : 1, c);
    return text + with;
}

std::int64_t rowsOf(const QSqlDatabase& database, const std::string& table) {
    Statement count{database, Sql{"SELECT COUNT(*) AS number FROM " + quoted(table, '"')}};
    count.run().next();
    return count.whole("number");
}

std::int64_t sumOf(const QSqlDatabase& database, const std::string& table) {
    std::string sum = "0";
    for (const std::string& column :
         namesIn(database, "SELECT name FROM pragma_table_info(" + quoted(table, '\'') + ")")) {
        const std::string cell = quoted(column, '"');
        sum.append(" + COALESCE(SUM(CASE TYPEOF(")
            .append(cell)
            .append(") WHEN 'integer' THEN ")
            .append(cell)
            .append(" % 1000003 ELSE LENGTH(CAST(")
            .append(cell)
            .append(" AS BLOB)) END), 0)");
    }
    Statement total{database, Sql{"SELECT " + sum + " AS total FROM " + quoted(table, '"')}};
    total.run().next();
    return total.whole("total");
}

template <typename T>
void compare(std::vector<std::string>& list, const std::string& what, const T& original,
             const T& copy) {
    const auto told = [](const auto& value) {
        if constexpr (std::is_same_v<T, std::string>)
            return value;
        else
            return std::to_string(value);
    };
    if (original != copy)
        list.push_back(what + ": " + told(copy) + " in the copy, " + told(original) +
                       " in the records");
}

void compareTables(std::vector<std::string>& list, const std::vector<TableCount>& original,
                   const std::vector<TableCount>& copy) {
    for (const TableCount& table : original) {
        const auto same = std::ranges::find(copy, table.name, &TableCount::name);
        if (same == copy.end()) {
            list.push_back("table " + table.name + " is not in the copy");
            continue;
        }
        compare(list, "rows of " + table.name, table.rows, same->rows);
        if (table.sum && same->sum) compare(list, "sum over " + table.name, *table.sum, *same->sum);
    }
    for (const TableCount& table : copy)
        if (std::ranges::find(original, table.name, &TableCount::name) == original.end())
            list.push_back("table " + table.name + " is in the copy alone");
}

/// What the code of this program can say about records of its own schema.
Result<std::vector<std::string>> problemsOfOwnSchema(Connection& connection) {
    auto schema = schemaProblems(connection);
    if (!schema || !schema->empty()) return schema;
    auto report = checkRecords(connection);
    if (!report) return report.error();
    RecordsReport whole = *std::move(report);
    return std::move(whole.problems);
}

/// What holds in every schema: the head is the newest entry.
Result<std::vector<std::string>> problemsOfHead(Connection& connection) try {
    const Census now = takeCensus(connection, CensusDepth::Rows);
    if (hashOfEntry(connection, now.entries).value_or(kNoHash) == now.head &&
        !hashOfEntry(connection, now.entries + 1))
        return std::vector<std::string>{};
    return std::vector<std::string>{"the head of the ledger does not belong to its newest entry"};
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace

Census takeCensus(Connection& connection, CensusDepth depth) {
    const Snapshot snapshot{connection};
    const QSqlDatabase& database = connection.database();
    Census census;
    Statement step{connection, "schema_step_newest"};
    if (step.run().next()) {
        census.schema = step.wholeIfAny("step").value_or(0);
        census.needs = step.wholeIfAny("needs").value_or(0);
    }
    Statement head{connection, "ledger_head_all"};
    if (!head.run().next())
        throw SqlFailure{"the head of the ledger is missing; verify the records"};
    census.entries = head.whole("entries");
    census.head = head.text("hash");
    census.first = hashOfEntry(connection, 1).value_or(kNoHash);
    for (const std::string& table :
         namesIn(database,
                 "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE "
                 "'sqlite@_%' ESCAPE '@' ORDER BY name"))
        census.tables.push_back({table, rowsOf(database, table),
                                 depth == CensusDepth::RowsAndSums
                                     ? std::optional{sumOf(database, table)}
                                     : std::nullopt});
    return census;
}

Result<Census> censusIn(Connection& connection) try {
    return takeCensus(connection, CensusDepth::RowsAndSums);
} catch (const SqlFailure& failure) {
    return failure.error();
}

std::vector<std::string> censusDifferences(const Census& original, const Census& copy) {
    std::vector<std::string> list;
    compare(list, "schema", original.schema, copy.schema);
    compare(list, "entries of the ledger", original.entries, copy.entries);
    compare(list, "head of the ledger", original.head, copy.head);
    compare(list, "first entry of the ledger", original.first, copy.first);
    compareTables(list, original.tables, copy.tables);
    return list;
}

std::optional<std::string> hashOfEntry(Connection& connection, std::int64_t position) {
    Statement entry{connection, "ledger_hash_at"};
    if (!entry.bind("position", position).run().next()) return {};
    return entry.text("hash");
}

Result<std::vector<std::string>> problemsIn(Connection& connection) {
    auto engine = engineProblems(connection);
    // Nothing that is read from a damaged file proves anything.
    if (!engine || !engine->empty()) return engine;
    const auto steps = migrations(connection.dialect());
    if (!steps) return steps.error();
    const auto taken = schemaStep(connection);
    if (!taken) return taken.error();
    return *taken < steps->back().step ? problemsOfHead(connection)
                                       : problemsOfOwnSchema(connection);
}

}  // namespace storage
