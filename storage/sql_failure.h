/// What the database would not do, in plain words; an exception that never leaves storage.
#pragma once

#include <QSqlDatabase>
#include <QSqlError>
#include <stdexcept>
#include <string>

#include "domain/base/result.h"

namespace storage {

class SqlFailure : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
    /// `during` is what was tried, for the failures that have no plain sentence of their own.
    SqlFailure(const QString& file, const QSqlError& error, const std::string& during);

    domain::Error error() const { return {domain::ErrorCode::Unavailable, what()}; }
};

}  // namespace storage
