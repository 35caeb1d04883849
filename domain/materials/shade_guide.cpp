#include "domain/materials/shade_guide.h"

#include <algorithm>

#include "domain/base/colour_difference.h"

namespace domain {
namespace {

struct Row {
    const char* tab;
    LabColour colour;
};
/// Hundredths of L*, a* and b*; from memory.
constexpr Row kScale[] = {
    {"A1", LabColour::ofHundredths(7957, -161, 1305)},
    {"A2", LabColour::ofHundredths(7604, -8, 1673)},
    {"A3", LabColour::ofHundredths(7536, 136, 1961)},
    {"A3.5", LabColour::ofHundredths(7231, 148, 2181)},
    {"A4", LabColour::ofHundredths(6856, 158, 2100)},
    {"B1", LabColour::ofHundredths(7890, -176, 1233)},
    {"B2", LabColour::ofHundredths(7666, -162, 1662)},
    {"B3", LabColour::ofHundredths(7413, 47, 2234)},
    {"B4", LabColour::ofHundredths(7181, 50, 2215)},
    {"C1", LabColour::ofHundredths(7429, -126, 1256)},
    {"C2", LabColour::ofHundredths(7102, -22, 1672)},
    {"C3", LabColour::ofHundredths(6883, -1, 1668)},
    {"C4", LabColour::ofHundredths(6478, 159, 1866)},
    {"D2", LabColour::ofHundredths(7527, -54, 1347)},
    {"D3", LabColour::ofHundredths(7255, 62, 1614)},
    {"D4", LabColour::ofHundredths(7190, -100, 1780)},
};

bool alike(std::string_view a, std::string_view b) {
    const auto small = [](char letter) {
        return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
    };
    return std::ranges::equal(a, b, {}, small, small);
}

ShadeGuide made() {
    ShadeGuide guide{.name = "A-D scale", .source = "from memory", .tabs = {}};
    for (const Row& row : kScale) guide.tabs.push_back({row.tab, row.colour});
    return guide;
}

}  // namespace

std::span<const ShadeGuide> shippedGuides() {
    static const ShadeGuide kGuides[] = {made()};
    return kGuides;
}

const ShadeGuide& shippedGuide() { return shippedGuides().front(); }

const ShadeGuide* guideNamed(std::span<const ShadeGuide> guides, std::string_view name) {
    const auto found = std::ranges::find_if(
        guides, [&](const ShadeGuide& guide) { return alike(guide.name, name); });
    return found == guides.end() ? nullptr : &*found;
}

const ShadeTab* tabNamed(const ShadeGuide& guide, std::string_view name) {
    const auto found = std::ranges::find_if(
        guide.tabs, [&](const ShadeTab& tab) { return alike(tab.name, name); });
    return found == guide.tabs.end() ? nullptr : &*found;
}

std::vector<TabDistance> nearestTabs(const ShadeGuide& guide, LabColour colour) {
    std::vector<TabDistance> distances;
    for (const ShadeTab& tab : guide.tabs)
        if (tab.colour) distances.push_back({&tab, colourDifference(*tab.colour, colour)});
    std::ranges::stable_sort(distances, {}, &TabDistance::difference);
    return distances;
}

}  // namespace domain
