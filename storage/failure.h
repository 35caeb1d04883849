/// A statement that failed: thrown inside storage only, and turned into an Error at its edge.
#pragma once

#include <QSqlError>
#include <stdexcept>
#include <string>

#include "domain/base/result.h"

namespace storage {

class SqlFailure : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
    /// `doing` says what was tried; the driver's words and plain advice follow.
    SqlFailure(const std::string& doing, const QSqlError& error);
};

/// Runs `read`, and turns a SqlFailure into ErrorCode::Unavailable.
template <typename Read>
auto guarded(Read read) -> decltype(read()) {
    try {
        return read();
    } catch (const SqlFailure& failure) {
        return domain::Error{domain::ErrorCode::Unavailable, failure.what()};
    }
}

}  // namespace storage
