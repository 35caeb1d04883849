/// What was measured, held against its goal: printed as one table, and as a line of JSON each.
#pragma once

#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

namespace bench {

/// A goal a figure must stay under, or reach.
struct Goal {
    double bound{};
    bool isFloor{};  ///< true: at least; false: less than
};
inline Goal below(double bound) { return {bound, false}; }
inline Goal atLeast(double bound) { return {bound, true}; }

struct Figure {
    std::int64_t orders{};
    std::string what{};  ///< "start"
    std::string unit{};  ///< "ms CPU"
    double value{};
    std::optional<Goal> goal{};
};

bool isMet(const Figure& figure);
/// {"orders":1000,"what":"start","unit":"ms CPU","value":1.2,"goal":5,"met":true}
std::string jsonOf(const Figure& figure);
/// One row a figure: orders, what, figure, goal, met?
void printTable(std::ostream& out, const std::vector<Figure>& figures);

}  // namespace bench
