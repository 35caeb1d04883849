#include "tests/bench/figures.h"

#include <iomanip>
#include <ostream>
#include <sstream>

namespace bench {
namespace {

std::string shortened(double value) {
    std::ostringstream text;
    text << std::setprecision(value < 1000 ? 3 : 6) << value;
    return text.str();
}

std::string worded(const Goal& goal) {
    return (goal.isFloor ? ">= " : "< ") + shortened(goal.bound);
}

}  // namespace

bool isMet(const Figure& figure) {
    if (!figure.goal) return true;
    return figure.goal->isFloor ? figure.value >= figure.goal->bound
                                : figure.value < figure.goal->bound;
}

std::string jsonOf(const Figure& figure) {
    std::ostringstream text;
    text << "{\"orders\":" << figure.orders << ",\"what\":\"" << figure.what << "\",\"unit\":\""
         << figure.unit << "\",\"value\":" << std::setprecision(6) << figure.value;
    if (figure.goal)
        text << ",\"goal\":\"" << worded(*figure.goal)
             << "\",\"met\":" << (isMet(figure) ? "true" : "false");
    text << '}';
    return text.str();
}

void printTable(std::ostream& out, const std::vector<Figure>& figures) {
    constexpr int kOrders = 8;
    constexpr int kWhat = 50;
    constexpr int kValue = 12;
    constexpr int kUnit = 18;
    constexpr int kGoal = 10;
    const auto row = [&](const std::string& orders, const std::string& what,
                         const std::string& value, const std::string& unit, const std::string& goal,
                         const std::string& met) {
        out << std::right << std::setw(kOrders) << orders << "  " << std::left << std::setw(kWhat)
            << what << std::right << std::setw(kValue) << value << ' ' << std::left
            << std::setw(kUnit) << unit << std::setw(kGoal) << goal << met << '\n';
    };
    row("orders", "what", "figure", "", "goal", "met?");
    for (const Figure& each : figures)
        row(each.orders == 0 ? "" : std::to_string(each.orders), each.what, shortened(each.value),
            each.unit, each.goal ? worded(*each.goal) : "",
            !each.goal ? "" : (isMet(each) ? "yes" : "NO"));
}

}  // namespace bench
