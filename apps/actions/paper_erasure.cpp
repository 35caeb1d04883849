#include "apps/actions/paper_erasure.h"

#include <fcntl.h>
#include <unistd.h>

#include <algorithm>

#include "apps/actions/paper_places.h"
#include "storage/disk_file.h"
#include "storage/ledger.h"
#include "storage/lot_uses.h"

namespace actions {
namespace {

namespace fs = std::filesystem;
using domain::Done;
using domain::Result;

/// Plain files in papers/ whose names begin so, by name.
std::vector<fs::path> papersNamed(const Laboratory& laboratory, const std::string& beginning) {
    std::vector<fs::path> found;
    std::error_code ignored;
    for (const auto& entry : fs::directory_iterator{paperPlace(laboratory, false).papers, ignored})
        if (entry.is_regular_file(ignored) && !entry.is_symlink(ignored) &&
            entry.path().filename().string().starts_with(beginning))
            found.push_back(entry.path());
    std::ranges::sort(found);
    return found;
}

Result<Done> erase(const fs::path& paper) {
    const storage::Descriptor file{::open(paper.c_str(), O_WRONLY | O_CLOEXEC | O_NOFOLLOW)};
    if (!file) return storage::diskError("cannot erase", paper);
    std::error_code failure;
    const auto size = fs::file_size(paper, failure);
    const std::string zeros(failure ? 0 : static_cast<std::size_t>(size), '\0');
    if (auto done = storage::appendAll(file, zeros, paper); !done) return done;
    if (auto forced = storage::forceToDisk(file, paper); !forced) return forced;
    if (::unlink(paper.c_str()) != 0) return storage::diskError("cannot remove", paper);
    return storage::forceFolder(paper.parent_path());
}

}  // namespace

Result<std::vector<fs::path>> erasePapers(const Laboratory& laboratory,
                                          const domain::OrderNumber& number) {
    auto papers = papersNamed(laboratory, number.text() + '-');
    for (const fs::path& paper : papers)
        if (auto erased = erase(paper); !erased) return erased.error();
    return papers;
}

Result<std::vector<fs::path>> lettersAbout(const Laboratory& laboratory,
                                           const domain::OrderNumber& number) {
    const auto events = storage::Ledger{laboratory.records()}.eventsOf(number);
    if (!events) return events.error();
    std::vector<fs::path> letters;
    for (const domain::Event& event : *events)
        for (const storage::LotUse& use : storage::usesIn(event))
            for (fs::path& letter : papersNamed(laboratory, "recall-" + use.lot.text() + '-'))
                letters.push_back(std::move(letter));
    std::ranges::sort(letters);
    letters.erase(std::ranges::unique(letters).begin(), letters.end());
    return letters;
}

}  // namespace actions
