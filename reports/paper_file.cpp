#include "reports/paper_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>

#include "reports/paper_layout.h"

namespace reports {
namespace {

namespace fs = std::filesystem;
using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Result;

Error failed(const std::string& what, const fs::path& where) {
    return {ErrorCode::Unavailable, what + ' ' + where.string() + ": " +
                                        std::error_code{errno, std::generic_category()}.message()};
}

/// An open file that is closed again, whatever happens.
class Descriptor {
public:
    explicit Descriptor(int number) : number_{number} {}
    ~Descriptor() {
        if (number_ >= 0) ::close(number_);
    }
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;

    explicit operator bool() const noexcept { return number_ >= 0; }
    int number() const noexcept { return number_; }
    /// Closing may be where a full disk is told.
    bool close() noexcept {
        const int number = number_;
        number_ = -1;
        return ::close(number) == 0;
    }

private:
    int number_;
};

bool writeAll(int file, std::string_view bytes) {
    while (!bytes.empty()) {
        const ssize_t written = ::write(file, bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR) continue;
        if (written <= 0) return false;
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
}

Result<Done> fill(const fs::path& part, std::string_view bytes) {
    constexpr mode_t kOwnerOnly = 0600;
    Descriptor file{::open(part.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, kOwnerOnly)};
    if (!file) return failed("cannot create", part);
    if (!writeAll(file.number(), bytes)) return failed("cannot write", part);
    if (::fsync(file.number()) != 0) return failed("cannot force to disk", part);
    if (!file.close()) return failed("cannot close", part);
    return Done{};
}

Result<Done> keepFolder(const fs::path& folder) {
    const Descriptor opened{::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)};
    if (!opened) return failed("cannot open the folder", folder);
    if (::fsync(opened.number()) != 0) return failed("cannot force to disk the folder", folder);
    return Done{};
}

Result<Done> replaceFile(const fs::path& file, std::string_view bytes) {
    const fs::path folder = file.has_parent_path() ? file.parent_path() : fs::path{"."};
    fs::path part = folder / ('.' + file.filename().string() + '.' + std::to_string(::getpid()));
    auto filled = fill(part, bytes);
    if (filled && ::rename(part.c_str(), file.c_str()) != 0)
        filled = failed("cannot put in place", file);
    if (!filled) {
        ::unlink(part.c_str());
        return filled.error();
    }
    return keepFolder(folder);
}

}  // namespace

Result<std::string> pdfOf(const Paper& paper) {
    PdfDocument pdf{paper.head.size, paper.name + ' ' + paper.head.order, paper.head.printedAt};
    draw(pdf, paper);
    return pdf.bytes();
}

Result<Done> write(const Paper& paper, const fs::path& file) {
    const auto bytes = pdfOf(paper);
    if (!bytes) return bytes.error();
    if (file.filename().empty())
        return Error{ErrorCode::Unusable, "no file name in \"" + file.string() + "\""};
    return replaceFile(file, *bytes);
}

}  // namespace reports
