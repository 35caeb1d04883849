#include "storage/failure.h"

namespace storage {
namespace {

/// What a person can do about an SQLite result code (its low byte).
std::string advice(int code) {
    switch (code & 0xFF) {
        case 5:  // SQLITE_BUSY
        case 6:  // SQLITE_LOCKED
            return "somebody else is writing; try again";
        case 8:  // SQLITE_READONLY
            return "the records cannot be written: check the folder's permissions";
        case 10:  // SQLITE_IOERR
            return "the disk reported an error; nothing of this was kept";
        case 11:  // SQLITE_CORRUPT
        case 26:  // SQLITE_NOTADB
            return "the file is damaged or is no records file: restore a backup";
        case 13:  // SQLITE_FULL
            return "the disk is full; nothing of this was kept";
        case 14:  // SQLITE_CANTOPEN
            return "the file cannot be opened: check the folder and its permissions";
        default:
            return {};
    }
}

std::string described(const std::string& doing, const QSqlError& error) {
    const std::string plain = advice(error.nativeErrorCode().toInt());
    const std::string driver = error.text().toStdString();
    return doing + ": " + (plain.empty() ? driver : plain + " (" + driver + ")");
}

}  // namespace

SqlFailure::SqlFailure(const std::string& doing, const QSqlError& error)
    : std::runtime_error{described(doing, error)} {}

}  // namespace storage
