/// One prepared SQL statement with named binds and typed columns. Throws SqlFailure.
#pragma once

#include <QByteArray>
#include <QSqlQuery>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "storage/sql_failure.h"

namespace storage {

class Connection;

/// What a column holds. Fractions are never stored by us; one that is found is damage.
using Value = std::variant<std::monostate, std::int64_t, double, std::string, QByteArray>;

template <typename T>
Value orNull(const std::optional<T>& value) {
    return value ? Value{*value} : Value{};
}

/// "12", "\"survey\"", "nothing", "16 bytes": a value, for messages.
std::string shown(const Value& value);

/// A column by its name, with what it holds or should hold.
struct Cell {
    std::string_view column;
    Value value;
};

/// A statement given as text; everything but pragmas, transactions and migrations has a file.
struct Sql {
    std::string text;
};

/// A prepared query and the names of its columns, kept by the connection for the next time.
struct PreparedQuery {
    QSqlQuery query;
    std::vector<std::string> columns{};
};

class Statement {
public:
    /// `name`: a file in storage/queries without its ending, as "ledger_insert". Prepared once for
    /// a connection; a second one of the same name in use at the same time is prepared anew.
    Statement(Connection& connection, std::string_view name);
    /// Prepared each time.
    Statement(const QSqlDatabase& database, const Sql& sql);
    Statement(const Statement&) = delete;
    Statement& operator=(const Statement&) = delete;
    ~Statement();

    /// Fills the bind `:name`.
    Statement& bind(std::string_view name, const Value& value);
    /// Fills the bind of each cell's column.
    Statement& bind(const std::vector<Cell>& cells);
    Statement& run();

    /// Steps to the next row; false after the last.
    bool next();
    Value value(std::string_view column) const;
    std::int64_t whole(std::string_view column) const;
    std::string text(std::string_view column) const;
    QByteArray bytes(std::string_view column) const;
    std::optional<std::int64_t> wholeIfAny(std::string_view column) const;
    std::optional<std::string> textIfAny(std::string_view column) const;

private:
    template <typename T>
    T typed(std::string_view column, std::string_view kind) const;
    void prepare(const QString& text);
    SqlFailure failure() const;

    Connection* connection_{nullptr};  ///< keeps the query afterwards; nullptr: nobody does
    QString file_;
    std::string name_;
    std::unique_ptr<PreparedQuery> prepared_;
};

}  // namespace storage
