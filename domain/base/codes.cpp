#include "domain/base/codes.h"

#include <iterator>

namespace domain {
namespace {

/// Words that are not spoken as they are stored, dash by dash.
struct SpokenWord {
    std::string_view stored;
    std::string_view spoken;
};
constexpr SpokenWord kSpoken[] = {
    {"block-out", "block-out"},
    {"wax-up", "wax-up"},
    {"framework-try-in", "framework try-in"},
    {"tooth-set-up", "tooth set-up"},
    {"tooth-try-in", "tooth try-in"},
    {"half-and-half", "half-and-half"},
    {"back-action", "back-action"},
    {"t-bar", "T-bar"},
    {"half-t-bar", "half T-bar"},
    {"y-bar", "Y-bar"},
    {"i-bar", "I-bar"},
    {"rpi", "RPI"},
    {"rpa", "RPA"},
    {"mesio-buccal", "mesio-buccal"},
    {"mid-buccal", "mid-buccal"},
    {"disto-buccal", "disto-buccal"},
    {"mesio-lingual", "mesio-lingual"},
    {"mid-lingual", "mid-lingual"},
    {"disto-lingual", "disto-lingual"},
    {"heat-cured", "heat-cured"},
    {"self-cured", "self-cured"},
    {"light-cured", "light-cured"},
    {"microwave-cured", "microwave-cured"},
    {"gold-type-iv", "gold type IV"},
    {"cobalt-chromium", "cobalt-chromium"},
    {"nickel-chromium", "nickel-chromium"},
    {"cast-cobalt-chromium", "cast cobalt-chromium"},
    {"cast-nickel-chromium", "cast nickel-chromium"},
    {"iso3950", "ISO 3950"},
    {"universal", "Universal"},
    {"palmer", "Palmer"},
};

}  // namespace

std::string spoken(std::string_view word) {
    const auto row = std::ranges::find(kSpoken, word, &SpokenWord::stored);
    if (row != std::end(kSpoken)) return std::string{row->spoken};
    std::string text{word};
    std::ranges::replace(text, '-', ' ');
    return text;
}

std::string counted(std::size_t count, std::string_view thing) {
    return std::to_string(count) + ' ' + std::string{thing} + (count == 1 ? "" : "s");
}

}  // namespace domain
