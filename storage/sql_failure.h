/// What the database would not do, in plain words; an exception that never leaves storage.
#pragma once

#include <QSqlDatabase>
#include <QSqlError>
#include <filesystem>
#include <stdexcept>
#include <string>

#include "domain/base/result.h"

namespace storage {

class SqlFailure : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
    /// `during` is what was tried, for the failures that have no plain sentence of their own.
    SqlFailure(const QString& file, const QSqlError& error, const std::string& during);

    /// Somebody else is writing and does not come to an end.
    static SqlFailure busy(const std::filesystem::path& file);

    domain::Error error() const { return {domain::ErrorCode::Unavailable, what()}; }
};

}  // namespace storage
