#include "storage/files/shade_guide_file.h"

#include <algorithm>
#include <array>

#include "storage/files/plain_file.h"

namespace storage {
namespace {

using domain::Error;
using domain::ErrorCode;
using domain::LabColour;
using domain::Result;
using domain::ShadeTab;

constexpr std::string_view kHeading = "tab,L*,a*,b*";
constexpr std::size_t kLargest = 100'000;
constexpr std::size_t kMostTabs = 200;
constexpr std::size_t kLongestName = 40;

using Cells = std::array<std::string_view, 4>;

/// nullopt: not four cells.
std::optional<Cells> cellsOf(std::string_view line) {
    Cells cells;
    for (std::size_t at = 0; at < cells.size(); ++at) {
        const auto comma = line.find(',');
        if ((comma == std::string_view::npos) != (at + 1 == cells.size())) return {};
        cells[at] = line.substr(0, comma);
        line.remove_prefix(comma == std::string_view::npos ? line.size() : comma + 1);
    }
    return cells;
}

bool isName(std::string_view text) {
    return !text.empty() && text.size() <= kLongestName &&
           std::ranges::all_of(text, [](char letter) { return letter > 0x20 && letter < 0x7F; });
}

/// nullopt: the line is no tab.
std::optional<ShadeTab> tabOf(std::string_view line) {
    const auto cells = cellsOf(line);
    if (!cells || !isName((*cells)[0])) return {};
    ShadeTab tab{.name = std::string{(*cells)[0]}, .colour = {}};
    if ((*cells)[1].empty() && (*cells)[2].empty() && (*cells)[3].empty()) return tab;
    tab.colour = LabColour::parse(std::string{(*cells)[1]} + ' ' + std::string{(*cells)[2]} + ' ' +
                                  std::string{(*cells)[3]});
    if (!tab.colour) return {};
    return tab;
}

}  // namespace

Result<std::vector<ShadeTab>> readShadeTabs(std::string_view text, std::string_view fileName) {
    const auto refused = [&](int line, const std::string& why) {
        return Error{ErrorCode::Unusable,
                     std::string{fileName} + ':' + std::to_string(line) + ": " + why};
    };
    std::vector<ShadeTab> tabs;
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
        auto tab = tabOf(line);
        if (!tab)
            return refused(number,
                           "expected a tab, L*, a* and b* with commas between, as "
                           "\"A2,76.04,-0.08,16.73\", or \"A2,,,\" if it is not measured");
        if (std::ranges::count(tabs, tab->name, &ShadeTab::name) > 0)
            return refused(number, "the tab " + tab->name + " a second time; expected each once");
        if (tabs.size() == kMostTabs)
            return refused(number, "expected at most " + std::to_string(kMostTabs) + " tabs");
        tabs.push_back(*std::move(tab));
    }
    if (tabs.empty()) return refused(1, "expected at least one tab below the heading");
    return tabs;
}

Result<std::vector<ShadeTab>> loadShadeTabs(const std::filesystem::path& file) {
    const auto text = readPlainFile(file, {"a shade guide", kLargest});
    if (!text) return text.error();
    return readShadeTabs(*text, file.string());
}

}  // namespace storage
