#include <algorithm>
#include <array>
#include <fstream>
#include <iterator>

#include "storage/digest.h"
#include "storage/kept_check.h"
#include "storage/records_file.h"

namespace storage {
namespace {

namespace fs = std::filesystem;

/// Half a SHA-256: years of prints are held at once.
using Short = std::array<char, 16>;

Short shortOf(std::initializer_list<QByteArrayView> parts) {
    Short digits{};
    const QByteArray whole = QByteArray::fromHex(QByteArray::fromStdString(sha256(parts)));
    std::copy_n(whole.begin(), digits.size(), digits.begin());
    return digits;
}

QByteArrayView viewOf(const std::string& text) {
    return {text.data(), static_cast<qsizetype>(text.size())};
}

std::optional<std::string> bytesOf(const fs::path& file) {
    std::ifstream stream{file, std::ios::binary};
    std::string bytes{std::istreambuf_iterator<char>{stream}, {}};
    if (!stream) return {};
    return bytes;
}

class PapersCheck : public KeptCheck {
public:
    explicit PapersCheck(const fs::path& records)
        : folder_{records.parent_path() / kPapersFolder} {}

    void access(const domain::AccessEntry& entry) override {
        const auto* paper = std::get_if<domain::PaperPrinted>(&entry.what);
        if (paper == nullptr || !paper->name) return;
        papers_.push_back({shortOf({viewOf(*paper->name)}), shortOf({viewOf(paper->about)})});
        prints_.push_back(printOf(*paper->name, paper->digest));
    }
    void entry(const LedgerEvent& event) override {
        const auto* order = std::get_if<domain::Event>(&event);
        if (order != nullptr && std::holds_alternative<domain::Purged>(order->what))
            purged_.push_back(shortOf({viewOf(order->order.text())}));
    }
    void compare() override {
        std::ranges::sort(purged_);
        std::erase_if(papers_, [&](const auto& paper) {
            return std::ranges::binary_search(purged_, paper.about);
        });
        std::ranges::sort(papers_, {}, &PaperName::name);
        std::ranges::sort(prints_);
        std::vector<fs::path> files;
        std::error_code none;
        for (const auto& file : fs::directory_iterator{folder_, none}) files.push_back(file.path());
        std::ranges::sort(files);
        for (const fs::path& file : files) one(file);
    }

private:
    struct PaperName {
        Short name;
        Short about;
    };

    static Short printOf(const std::string& name, const std::string& digest) {
        return shortOf({viewOf(name), viewOf(digest)});
    }
    /// What was printed before prints were noted, or lies there otherwise, is not judged; nor is
    /// what a purge that was killed has not erased yet.
    void one(const fs::path& file) {
        const std::string name = file.filename().string();
        if (!std::ranges::binary_search(papers_, shortOf({viewOf(name)}), {}, &PaperName::name))
            return;
        std::error_code failure;
        if (fs::symlink_status(file, failure).type() != fs::file_type::regular)
            return found("the paper " + file.string() + " is no longer a plain file");
        const auto bytes = bytesOf(file);
        if (!bytes) return found("the paper " + file.string() + " cannot be read");
        if (!std::ranges::binary_search(prints_, printOf(name, sha256({viewOf(*bytes)}))))
            found("the paper " + file.string() + " is not what was printed");
    }

    fs::path folder_;
    std::vector<PaperName> papers_;
    std::vector<Short> prints_;
    std::vector<Short> purged_;
};

}  // namespace

std::unique_ptr<KeptCheck> papersCheck(Connection& connection) {
    return std::make_unique<PapersCheck>(connection.file());
}

}  // namespace storage
