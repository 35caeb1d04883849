#include "storage/sql_failure.h"

#include <array>
#include <string_view>

namespace storage {
namespace {

constexpr std::string_view kBusy =
    "another program kept them busy for more than 5 seconds; try again";

struct PlainWords {
    int code;  ///< SQLite's primary result code
    std::string_view words;
};
constexpr std::array kPlainWords{
    PlainWords{5, kBusy},
    PlainWords{6, "another part of this program is writing to them; try again"},
    PlainWords{7, "there is not enough memory; close other programs and try again"},
    PlainWords{8, "they cannot be written: the file or its folder is read-only"},
    PlainWords{10, "the disk reported an error while reading or writing"},
    PlainWords{11, "the file is damaged; restore a backup"},
    PlainWords{13, "the disk is full"},
    PlainWords{14, "the file cannot be opened; look at the rights of the file and its folder"},
    PlainWords{26, "the file is not a database"},
};

std::string placeOf(const std::string& file) { return "the records in " + file + ": "; }

std::string sentence(const QString& file, const QSqlError& error, const std::string& during) {
    const std::string place = placeOf(file.toStdString());
    // The extended code tells more; its lowest byte is the primary one.
    const int code = error.nativeErrorCode().toInt() & 0xff;
    for (const PlainWords& plain : kPlainWords)
        if (plain.code == code) return place + std::string{plain.words};
    return place + during + " failed: " + error.databaseText().toStdString() + " (" +
           error.nativeErrorCode().toStdString() + ")";
}

}  // namespace

SqlFailure::SqlFailure(const QString& file, const QSqlError& error, const std::string& during)
    : std::runtime_error{sentence(file, error, during)} {}

SqlFailure SqlFailure::busy(const std::filesystem::path& file) {
    return SqlFailure{placeOf(file.string()) + std::string{kBusy}};
}

}  // namespace storage
