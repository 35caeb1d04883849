#include "domain/teeth/crown_size.h"

#include <array>

namespace domain {
namespace {

constexpr std::array<CrownSize, 8> kUpper{{{8500_um, 7000_um},
                                           {6500_um, 6000_um},
                                           {7500_um, 8000_um},
                                           {7000_um, 9000_um},
                                           {7000_um, 9000_um},
                                           {10000_um, 11000_um},
                                           {9000_um, 11000_um},
                                           {8500_um, 10000_um}}};
constexpr std::array<CrownSize, 8> kLower{{{5000_um, 6000_um},
                                           {5500_um, 6500_um},
                                           {7000_um, 7500_um},
                                           {7000_um, 7500_um},
                                           {7000_um, 8000_um},
                                           {11000_um, 10500_um},
                                           {10500_um, 10000_um},
                                           {10000_um, 9500_um}}};

}  // namespace

CrownSize crownSize(Tooth tooth) noexcept {
    const auto& table = tooth.arch() == Arch::Upper ? kUpper : kLower;
    return table[static_cast<std::size_t>(tooth.place() - 1)];
}

}  // namespace domain
