#include "storage/statement.h"

#include <sqlite3.h>

#include <QFile>
#include <QSqlDriver>
#include <QSqlError>
#include <QSqlRecord>
#include <QVariant>
#include <algorithm>
#include <utility>

#include "storage/connection.h"

namespace storage {
namespace {

struct Shown {
    std::string operator()(std::monostate) const { return "nothing"; }
    std::string operator()(std::int64_t whole) const { return std::to_string(whole); }
    std::string operator()(double fraction) const { return std::to_string(fraction); }
    std::string operator()(const std::string& text) const { return '"' + text + '"'; }
    std::string operator()(const QByteArray& bytes) const {
        return std::to_string(bytes.size()) + " bytes";
    }
};

struct Bound {
    QVariant operator()(std::monostate) const { return {}; }
    QVariant operator()(std::int64_t whole) const { return QVariant::fromValue<qlonglong>(whole); }
    QVariant operator()(double fraction) const { return fraction; }
    QVariant operator()(const std::string& text) const { return QString::fromStdString(text); }
    QVariant operator()(const QByteArray& bytes) const { return bytes; }
};

QString named(std::string_view name) {
    return QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size()));
}

QString queryText(std::string_view name) {
    QFile file{":/storage/queries/" + named(name) + ".sql"};
    if (!file.open(QIODevice::ReadOnly))
        throw SqlFailure{"no query " + std::string{name} + " in this program"};
    return QString::fromUtf8(file.readAll());
}

/// The driver takes the columns of a row, and does not look whether SQLite had the memory to give
/// them: a text would be read as an empty one.
bool lackedMemory(const QSqlQuery& query) {
    const QVariant handle = query.driver()->handle();
    if (qstrcmp(handle.typeName(), "sqlite3*") != 0) return false;
    return sqlite3_errcode(*static_cast<sqlite3* const*>(handle.constData())) == SQLITE_NOMEM;
}

SqlFailure noMemory(const QString& file, const std::string& name) {
    return {file, QSqlError{{}, {}, {}, QString::number(SQLITE_NOMEM)}, name};
}

}  // namespace

std::string shown(const Value& value) { return std::visit(Shown{}, value); }

Statement::Statement(Connection& connection, std::string_view name)
    : connection_{&connection},
      file_{connection.database().databaseName()},
      name_{name},
      prepared_{connection.takePrepared(name)} {
    connection.countStatement(name);
    if (prepared_) return;
    prepared_ = std::make_unique<PreparedQuery>(PreparedQuery{QSqlQuery{connection.database()}});
    prepare(queryText(name));
}

Statement::Statement(const QSqlDatabase& database, const Sql& sql)
    : file_{database.databaseName()},
      name_{sql.text},
      prepared_{std::make_unique<PreparedQuery>(PreparedQuery{QSqlQuery{database}})} {
    prepare(QString::fromStdString(sql.text));
}

Statement::~Statement() {
    if (!prepared_) return;
    // The driver may have given up one that failed, as where memory was short: it is made anew.
    if (prepared_->query.lastError().isValid()) return;
    prepared_->query.finish();
    if (connection_ != nullptr) connection_->keepPrepared(name_, std::move(prepared_));
}

SqlFailure Statement::failure() const { return {file_, prepared_->query.lastError(), name_}; }

void Statement::prepare(const QString& text) {
    prepared_->query.setForwardOnly(true);
    if (!prepared_->query.prepare(text)) throw failure();
}

Statement& Statement::bind(std::string_view name, const Value& value) {
    prepared_->query.bindValue(':' + named(name), std::visit(Bound{}, value));
    return *this;
}

Statement& Statement::bind(const std::vector<Cell>& cells) {
    for (const Cell& cell : cells) bind(cell.column, cell.value);
    return *this;
}

Statement& Statement::run() {
    if (!prepared_->query.exec()) throw failure();
    if (lackedMemory(prepared_->query)) throw noMemory(file_, name_);
    if (!prepared_->columns.empty()) return *this;
    const QSqlRecord record = prepared_->query.record();
    std::vector<std::string> columns;
    for (int at = 0; at < record.count(); ++at) {
        columns.push_back(record.fieldName(at).toStdString());
        if (columns.back().empty()) throw noMemory(file_, name_);
    }
    prepared_->columns = std::move(columns);
    return *this;
}

bool Statement::next() {
    if (prepared_->query.next()) {
        if (lackedMemory(prepared_->query)) throw noMemory(file_, name_);
        return true;
    }
    // The end and a failure look alike to next(); only the error tells them apart.
    if (prepared_->query.lastError().isValid()) throw failure();
    return false;
}

Value Statement::value(std::string_view column) const {
    const auto found = std::ranges::find(prepared_->columns, column);
    if (found == prepared_->columns.end())
        throw SqlFailure{name_ + " has no column " + std::string{column}};
    const QVariant held =
        prepared_->query.value(static_cast<int>(found - prepared_->columns.begin()));
    if (held.isNull()) return {};
    switch (held.typeId()) {
        case QMetaType::Int:
        case QMetaType::LongLong:
        case QMetaType::ULongLong:
            return std::int64_t{held.toLongLong()};
        case QMetaType::QString:
            return held.toString().toStdString();
        case QMetaType::QByteArray:
            return held.toByteArray();
        default:
            return held.toDouble();
    }
}

template <typename T>
T Statement::typed(std::string_view column, std::string_view kind) const {
    Value held = value(column);
    if (T* fitting = std::get_if<T>(&held)) return std::move(*fitting);
    throw SqlFailure{"the records in " + file_.toStdString() +
                     " are damaged: " + std::string{column} + " holds " + shown(held) + " where " +
                     std::string{kind} + " was expected"};
}

std::int64_t Statement::whole(std::string_view column) const {
    return typed<std::int64_t>(column, "a whole number");
}
std::string Statement::text(std::string_view column) const {
    return typed<std::string>(column, "a text");
}
QByteArray Statement::bytes(std::string_view column) const {
    return typed<QByteArray>(column, "bytes");
}
std::optional<std::int64_t> Statement::wholeIfAny(std::string_view column) const {
    if (value(column) == Value{}) return {};
    return whole(column);
}
std::optional<std::string> Statement::textIfAny(std::string_view column) const {
    if (value(column) == Value{}) return {};
    return text(column);
}

}  // namespace storage
