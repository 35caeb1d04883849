#include "storage/backup_file.h"

#include <fcntl.h>
#include <sys/stat.h>

#include <QCryptographicHash>
#include <charconv>
#include <cstdio>
#include <optional>

namespace storage {
namespace {

namespace fs = std::filesystem;
using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Result;

constexpr std::string_view kDigestWord = "sha256 ";
constexpr std::string_view kManifestWord = " manifest ";
constexpr std::size_t kDigestDigits = 64;
constexpr std::size_t kLengthDigits = 8;
static_assert(kEndBytes ==
              kDigestWord.size() + kDigestDigits + kManifestWord.size() + kLengthDigits + 1);
constexpr std::int64_t kMostManifestBytes = 1 << 20;
/// How every SQLite file begins: https://www.sqlite.org/fileformat.html, 1.3.
constexpr std::string_view kSqliteMagic{"SQLite format 3\0", 16};

Error unusable(const fs::path& file, const std::string& why) {
    return {ErrorCode::Unusable, file.string() + ": " + why};
}

template <typename Number>
std::optional<Number> whole(std::string_view written) {
    const std::string digits{written};
    Number value{};
    const char* end = digits.data() + digits.size();
    const auto read = std::from_chars(digits.data(), end, value);
    if (read.ec != std::errc{} || read.ptr != end) return {};
    return value;
}

/// The part of a text before the next `mark`, which is taken off with it.
std::string_view take(std::string_view& text, char mark) {
    const auto end = std::min(text.find(mark), text.size());
    const std::string_view taken = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    return taken;
}

/// A line "name value" by its value.
struct Line {
    std::string_view name;
    bool (*read)(Manifest&, std::string_view);
};

template <std::int64_t Manifest::* Field>
bool readWhole(Manifest& manifest, std::string_view value) {
    const auto number = whole<std::int64_t>(value);
    if (number) manifest.*Field = *number;
    return number && *number >= 0;
}
template <std::string Manifest::* Field>
bool readText(Manifest& manifest, std::string_view value) {
    manifest.*Field = value;
    return true;
}
bool readMade(Manifest& manifest, std::string_view value) {
    const auto number = whole<std::int64_t>(take(value, ' '));
    if (number) manifest.made = domain::Instant::ofMicroseconds(*number);
    return number.has_value();
}
bool readTable(Manifest& manifest, std::string_view value) {
    const std::string_view name = take(value, ' ');
    const auto rows = whole<std::int64_t>(take(value, ' '));
    const auto sum = whole<std::int64_t>(value);
    if (!rows || !sum) return false;
    manifest.tables.push_back({std::string{name}, *rows, sum});
    return true;
}

constexpr std::string_view kFirstLine = "framewright-backup 1";
constexpr Line kLines[] = {{"made", &readMade},
                           {"program", &readText<&Manifest::program>},
                           {"schema", &readWhole<&Manifest::schema>},
                           {"needs", &readWhole<&Manifest::needs>},
                           {"entries", &readWhole<&Manifest::entries>},
                           {"head", &readText<&Manifest::head>},
                           {"first", &readText<&Manifest::first>},
                           {"table", &readTable},
                           {"database", &readWhole<&Manifest::databaseBytes>}};

/// What the end line says.
struct End {
    std::string digest;
    std::int64_t manifestBytes{};
};

std::optional<End> endOf(std::string_view line) {
    if (line.size() != static_cast<std::size_t>(kEndBytes)) return {};
    const auto length =
        whole<std::int64_t>(line.substr(line.size() - kLengthDigits - 1, kLengthDigits));
    const std::string digest{line.substr(kDigestWord.size(), kDigestDigits)};
    if (!length || *length <= 0 || line != endLine(digest, static_cast<std::size_t>(*length)))
        return {};
    return End{digest, *length};
}

Result<std::string> bytesAt(const Descriptor& file, std::int64_t offset, std::int64_t count,
                            const fs::path& path) {
    std::string bytes;
    const auto read = readRange(file, offset, count, path, [&](std::string_view piece) {
        bytes += piece;
        return Result<Done>{Done{}};
    });
    if (!read) return read.error();
    return bytes;
}

/// Why a file that does not end as a backup is none.
Error noBackup(const Descriptor& file, std::int64_t size, const fs::path& path) {
    const auto wanted = std::min(size, static_cast<std::int64_t>(kSqliteMagic.size()));
    const auto begin = bytesAt(file, 0, wanted, path);
    if (begin && *begin == kSqliteMagic)
        return unusable(path,
                        "is a database without the end of a backup: it was cut short or altered "
                        "there, or it is a copy made by hand, which may be torn; expected a file "
                        "written by framewright backup");
    return unusable(path, "is not a backup; expected a file written by framewright backup");
}

Result<Descriptor> openedPlain(const fs::path& path) {
    Descriptor file{::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK)};
    if (!file)
        return unusable(path, errno == ENOENT ? std::string{"no such file"}
                                              : diskError("cannot open", path).message);
    struct stat found{};
    if (::fstat(file.number(), &found) != 0) return diskError("cannot look at", path);
    if (!S_ISREG(found.st_mode)) return unusable(path, "is not a plain file; a backup is one");
    return file;
}

std::int64_t sizeOf(const Descriptor& file) {
    struct stat found{};
    return ::fstat(file.number(), &found) == 0 ? std::int64_t{found.st_size} : 0;
}

}  // namespace

Census censusOf(const Manifest& manifest) {
    return {.schema = manifest.schema,
            .needs = manifest.needs,
            .entries = manifest.entries,
            .head = manifest.head,
            .first = manifest.first,
            .tables = manifest.tables};
}

std::string writeManifest(const Manifest& manifest) {
    const auto number = [](std::int64_t value) { return std::to_string(value); };
    std::string text = std::string{kFirstLine} + "\nmade " + number(manifest.made.microseconds()) +
                       ' ' + manifest.made.text() + "\nprogram " + manifest.program + "\nschema " +
                       number(manifest.schema) + "\nneeds " + number(manifest.needs) +
                       "\nentries " + number(manifest.entries) + "\nhead " + manifest.head +
                       "\nfirst " + manifest.first + '\n';
    for (const TableCount& table : manifest.tables)
        text += "table " + table.name + ' ' + number(table.rows) + ' ' +
                number(table.sum.value_or(0)) + '\n';
    return text + "database " + number(manifest.databaseBytes) + '\n';
}

Result<Manifest> readManifest(std::string_view text) {
    const Error wrong{ErrorCode::Unusable, "the manifest is not one of format 1"};
    Manifest manifest;
    std::string_view rest = text;
    if (take(rest, '\n') != kFirstLine) return wrong;
    while (!rest.empty()) {
        std::string_view value = take(rest, '\n');
        const std::string_view name = take(value, ' ');
        bool read = false;
        for (const Line& line : kLines)
            if (line.name == name) read = line.read(manifest, value);
        if (!read) return wrong;
    }
    // Twice, missing, out of order, or written in another way: it is not what we write.
    if (writeManifest(manifest) != text) return wrong;
    return manifest;
}

std::string endLine(const std::string& digest, std::size_t manifestBytes) {
    std::string length = std::to_string(manifestBytes);
    length.insert(0, kLengthDigits - std::min(length.size(), kLengthDigits), '0');
    return std::string{kDigestWord} + digest + std::string{kManifestWord} + length + '\n';
}

Result<BackupFile> BackupFile::open(const fs::path& path) {
    auto opened = openedPlain(path);
    if (!opened) return opened.error();
    Descriptor file = *std::move(opened);
    const std::int64_t size = sizeOf(file);
    if (size < kEndBytes) return noBackup(file, size, path);
    const auto line = bytesAt(file, size - kEndBytes, kEndBytes, path);
    if (!line) return line.error();
    const auto end = endOf(*line);
    if (!end) return noBackup(file, size, path);
    const std::int64_t covered = size - kEndBytes;
    if (end->manifestBytes > std::min(covered, kMostManifestBytes))
        return unusable(path, "was altered or cut short: its end names a manifest of " +
                                  std::to_string(end->manifestBytes) + " bytes, and " +
                                  std::to_string(covered) + " stand before it");
    const auto text = bytesAt(file, covered - end->manifestBytes, end->manifestBytes, path);
    if (!text) return text.error();
    auto manifest = readManifest(*text);
    if (!manifest) return unusable(path, "was altered: " + manifest.error().message);
    if (manifest->databaseBytes != covered - end->manifestBytes)
        return unusable(
            path, "was altered or cut short: " + std::to_string(covered - end->manifestBytes) +
                      " bytes of records are there, and its manifest says " +
                      std::to_string(manifest->databaseBytes));
    return BackupFile{path, std::move(file), *std::move(manifest), end->digest, covered};
}

Result<Done> BackupFile::read(const std::function<Result<Done>(std::string_view)>& piece) const {
    QCryptographicHash hash{QCryptographicHash::Sha256};
    const auto add = [&](std::string_view bytes) {
        hash.addData(QByteArrayView{bytes.data(), static_cast<qsizetype>(bytes.size())});
    };
    const std::int64_t records = manifest_.databaseBytes;
    auto read = readRange(file_, 0, records, path_, [&](std::string_view bytes) {
        add(bytes);
        return piece ? piece(bytes) : Result<Done>{Done{}};
    });
    if (read)
        read = readRange(file_, records, coveredBytes_ - records, path_, [&](std::string_view b) {
            add(b);
            return Result<Done>{Done{}};
        });
    if (!read) return read;
    const std::string found = hash.result().toHex().toStdString();
    if (found == digest_) return Done{};
    return unusable(path_, "was altered after it was made: its SHA-256 is " + found +
                               ", and its end says " + digest_);
}

}  // namespace storage
