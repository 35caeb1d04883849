// Keeps the identity keys of a test program, and of every program it starts, in a folder of their
// own. Linked into each of them.
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <string>

namespace {

constexpr const char* kPlace = "FRAMEWRIGHT_KEYS";

/// Made before main() and removed after it, by the process that made it alone.
class OwnKeys {
public:
    OwnKeys() {
        if (std::getenv(kPlace) != nullptr) return;
        std::error_code failure;
        std::string folder =
            (std::filesystem::temp_directory_path(failure) / "framewright-keys-XXXXXX").string();
        if (::mkdtemp(folder.data()) == nullptr) std::abort();
        ::setenv(kPlace, folder.c_str(), 1);
        folder_ = folder;
    }
    OwnKeys(const OwnKeys&) = delete;
    OwnKeys& operator=(const OwnKeys&) = delete;
    ~OwnKeys() {
        std::error_code ignored;
        if (!folder_.empty() && ::getpid() == owner_) std::filesystem::remove_all(folder_, ignored);
    }

private:
    std::filesystem::path folder_;
    ::pid_t owner_{::getpid()};
};

const OwnKeys kOwnKeys;

}  // namespace
