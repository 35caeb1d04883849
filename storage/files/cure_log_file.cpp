#include "storage/files/cure_log_file.h"

#include <algorithm>

#include "storage/digest.h"
#include "storage/files/plain_file.h"

namespace storage {
namespace {

using domain::CureReading;
using domain::Error;
using domain::ErrorCode;
using domain::Result;

constexpr std::string_view kHeading = "minutes,celsius";
constexpr std::size_t kLargest = 2'000'000;
/// A week: no cure lasts as long. In thousandths of a minute.
constexpr std::int64_t kLongest = 10'080'000;

/// nullopt: the line is no reading.
std::optional<CureReading> readingOf(std::string_view line) {
    const auto comma = line.find(',');
    if (comma == std::string_view::npos) return {};
    const auto thousandths = domain::parseDecimal(line.substr(0, comma), 1000, kLongest);
    const auto celsius =
        domain::parseDecimal(line.substr(comma + 1), domain::MillicelsiusUnit::kPerWritten,
                             domain::MillicelsiusUnit::kMost);
    if (!thousandths || !celsius) return {};
    return CureReading{domain::Seconds::of(domain::nearestQuotient(*thousandths * 60, 1000)),
                       domain::Temperature::of(*celsius)};
}

}  // namespace

Result<CureLogFile> readCureLog(std::string_view text, std::string_view fileName) {
    const auto refused = [&](int line, const std::string& why) {
        return Error{ErrorCode::Unusable,
                     std::string{fileName} + ':' + std::to_string(line) + ": " + why};
    };
    CureLogFile file{
        .readings = {},
        .digest = sha256({QByteArrayView{text.data(), static_cast<qsizetype>(text.size())}})};
    for (int number = 1; !text.empty(); ++number) {
        const auto end = std::min(text.find('\n'), text.size());
        std::string_view line = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        if (line.ends_with('\r')) line.remove_suffix(1);
        if (number == 1) {
            if (line != kHeading)
                return refused(1, "expected the heading \"" + std::string{kHeading} + '"');
            continue;
        }
        const auto reading = readingOf(line);
        if (!reading)
            return refused(number,
                           "expected minutes and degrees Celsius with a comma between, decimal "
                           "points and at most three decimals, as \"12.5,73.8\"");
        file.readings.push_back(*reading);
    }
    if (file.readings.empty()) return refused(1, "expected readings below the heading");
    return file;
}

Result<CureLogFile> loadCureLog(const std::filesystem::path& file) {
    const auto text = readPlainFile(file, {"a cure log", kLargest});
    if (!text) return text.error();
    return readCureLog(*text, file.string());
}

}  // namespace storage
