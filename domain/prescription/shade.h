/// The colour of the artificial teeth, as a tab of a named guide.
#pragma once

#include <string>
#include <vector>

#include "domain/teeth/tooth.h"

namespace domain {

struct Shade {
    std::string guide{};
    std::string tab{};
    std::vector<Tooth> teeth{};  ///< empty: all replaced teeth
    friend bool operator==(const Shade&, const Shade&) = default;
};

}  // namespace domain
