#include "storage/migrator.h"

#include <QDir>
#include <QFile>
#include <algorithm>
#include <charconv>
#include <optional>

#include "storage/integrity.h"
#include "storage/statement.h"
#include "storage/transaction.h"

namespace storage {
namespace {

using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Result;

constexpr std::string_view kComment = "-- ";
constexpr std::string_view kNeeds = "-- needs ";
constexpr std::string_view kNext = "-- next";

std::string_view takeLine(std::string_view& text) {
    const auto end = std::min(text.find('\n'), text.size());
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    return line;
}

std::optional<std::int64_t> number(std::string_view digits) {
    std::int64_t value{};
    const auto [end, failure] =
        std::from_chars(digits.data(), digits.data() + digits.size(), value);
    if (failure != std::errc{} || end != digits.data() + digits.size()) return {};
    return value;
}

std::string inDialect(std::string text, const Dialect& dialect) {
    const std::pair<std::string_view, std::string_view> tokens[] = {
        {"{identity}", dialect.identity},
        {"{position}", dialect.position},
        {"{bytes}", dialect.bytes}};
    for (const auto& [token, words] : tokens)
        for (auto at = text.find(token); at != std::string::npos; at = text.find(token, at))
            text.replace(at, token.size(), words);
    return text;
}

/// How far records have come.
struct SchemaState {
    std::int64_t step{};
    std::int64_t needs{};
};

SchemaState stateOf(Connection& connection) {
    Statement table{connection.database(),
                    Sql{"SELECT name FROM sqlite_schema WHERE name = 'schema_step'"}};
    if (!table.run().next()) return {};
    Statement newest{connection, "schema_step_newest"};
    newest.run().next();
    return {newest.wholeIfAny("step").value_or(0), newest.wholeIfAny("needs").value_or(0)};
}

std::int64_t entriesIn(Connection& connection) {
    Statement head{connection, "ledger_head_all"};
    return head.run().next() ? head.whole("entries") : 0;
}

Result<Done> take(Transaction& transaction, const Migration& migration) {
    for (const std::string& statement : migration.statements)
        Statement{transaction.database(), Sql{statement}}.run();
    Statement{transaction.connection(), "schema_step_insert"}
        .bind({{"step", migration.step},
               {"description", migration.description},
               {"needs", migration.needs}})
        .run();
    return migration.code ? migration.code(transaction) : Done{};
}

}  // namespace

Result<Migration> parseMigration(std::int64_t step, std::string_view text, const Dialect& dialect) {
    const Error wrong{ErrorCode::Unusable,
                      "migration " + std::to_string(step) +
                          ": a line \"-- description\", a line \"-- needs N\" and statements "
                          "parted by lines \"-- next\" were expected"};
    const std::string_view first = takeLine(text);
    const std::string_view second = takeLine(text);
    if (!first.starts_with(kComment) || !second.starts_with(kNeeds)) return wrong;
    const auto needs = number(second.substr(kNeeds.size()));
    if (!needs) return wrong;
    Migration migration{
        .step = step, .description = std::string{first.substr(kComment.size())}, .needs = *needs};
    migration.statements.emplace_back();
    while (!text.empty()) {
        const std::string_view line = takeLine(text);
        if (line == kNext)
            migration.statements.emplace_back();
        else
            migration.statements.back().append(line).push_back('\n');
    }
    for (std::string& statement : migration.statements) {
        if (statement.find_first_not_of(" \n") == std::string::npos) return wrong;
        statement = inDialect(std::move(statement), dialect);
    }
    return migration;
}

Result<std::vector<Migration>> migrations(const Dialect& dialect) {
    std::vector<Migration> steps;
    const QDir folder{QStringLiteral(":/storage/migrations")};
    for (const QString& name :
         folder.entryList({QStringLiteral("*.sql")}, QDir::Files, QDir::Name)) {
        QFile file{folder.filePath(name)};
        const auto step = number(name.section('_', 0, 0).toStdString());
        if (!step || *step != static_cast<std::int64_t>(steps.size()) + 1 ||
            !file.open(QIODevice::ReadOnly))
            return Error{ErrorCode::Unusable,
                         "migration " + name.toStdString() + " is out of order or unreadable"};
        auto migration = parseMigration(*step, file.readAll().toStdString(), dialect);
        if (!migration) return migration.error();
        steps.push_back(*std::move(migration));
    }
    return steps;
}

Result<std::int64_t> schemaStep(Connection& connection) try {
    if (const auto taken = stateOf(connection).step; taken > 0) return taken;
    return Error{
        ErrorCode::Unavailable,
        "the records in " + connection.file().string() +
            " hold no schema step: they were emptied, or never finished; restore a backup, "
            "or remove the file if there never were any records"};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<Done> migrate(Connection& connection, std::span<const Migration> steps,
                     const std::function<Result<Done>(Transaction&)>& afterwards,
                     const BeforeUpgrade& before) try {
    const std::int64_t known = steps.empty() ? 0 : steps.back().step;
    SchemaState state = stateOf(connection);
    if (state.needs > known)
        return Error{ErrorCode::Unavailable,
                     "the records in " + connection.file().string() + " are of schema " +
                         std::to_string(state.step) +
                         ", made by a newer program; this one knows schema " +
                         std::to_string(known) + ": use the newer program"};
    if (state.step > 0 && state.step < known) {
        if (auto sound = checkEngine(connection); !sound) return sound;
        if (before && entriesIn(connection) > 0)
            if (auto ready = before(connection, state.step); !ready) return ready;
    }
    for (const Migration& migration : steps) {
        if (migration.step <= state.step) continue;
        auto transaction = Transaction::begin(connection);
        if (!transaction) return transaction.error();
        Transaction work = *std::move(transaction);
        // Another program may have taken the step while this one waited to begin.
        state = stateOf(connection);
        if (migration.step <= state.step) continue;
        work.journalHead();
        if (auto taken = take(work, migration); !taken) return taken;
        if (afterwards && &migration == &steps.back())
            if (auto done = afterwards(work); !done) return done.error();
        if (auto committed = work.commit(); !committed) return committed.error();
    }
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace storage
