/// What differs from one database to the next; everything else is in the dialect they share.
#pragma once

#include <string_view>

namespace storage {

struct Dialect {
    std::string_view driver;  ///< of Qt Sql
    std::string_view begin;   ///< starts a transaction that is going to write
    /// Writes a number of the file's head where it stands already.
    std::string_view rewriteHead;
    std::string_view identity;  ///< {identity}: a key the database counts up
    std::string_view position;  ///< {position}: a key we count up ourselves
    std::string_view bytes;     ///< {bytes}
};

/// Deferred transactions lose updates when two programs read, then write; immediate ones wait.
inline constexpr Dialect kSqlite{.driver = "QSQLITE",
                                 .begin = "BEGIN IMMEDIATE",
                                 .rewriteHead = "PRAGMA user_version = 0",
                                 .identity = "INTEGER PRIMARY KEY",
                                 .position = "INTEGER PRIMARY KEY",
                                 .bytes = "BLOB"};

}  // namespace storage
