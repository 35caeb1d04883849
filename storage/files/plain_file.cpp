#include "storage/files/plain_file.h"

#include <fstream>
#include <sstream>
#include <system_error>

namespace storage {
namespace {

domain::Error unusable(const std::filesystem::path& file, const std::string& why) {
    return {domain::ErrorCode::Unusable, file.string() + ": " + why};
}

}  // namespace

domain::Result<std::string> readPlainFile(const std::filesystem::path& file,
                                          const Expected& expected) {
    std::error_code trouble;
    const auto status = std::filesystem::status(file, trouble);
    if (!std::filesystem::exists(status)) return unusable(file, "no such file");
    if (std::filesystem::is_directory(status))
        return unusable(file, "is a folder; expected " + expected.what + " file");
    if (!std::filesystem::is_regular_file(status))
        return unusable(file, "is not a plain file; expected " + expected.what + " file");
    const auto size = std::filesystem::file_size(file, trouble);
    if (trouble) return unusable(file, "cannot be read: " + trouble.message());
    if (size == 0) return unusable(file, "is empty; expected " + expected.what);
    if (size > expected.most)
        return unusable(file, "has " + std::to_string(size) + " bytes; " + expected.what +
                                  " has at most " + std::to_string(expected.most));
    std::ifstream stream{file, std::ios::binary};
    std::ostringstream text;
    text << stream.rdbuf();
    if (!stream || !text) return unusable(file, "cannot be read");
    return std::move(text).str();
}

}  // namespace storage
