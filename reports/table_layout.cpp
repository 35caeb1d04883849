#include "reports/table_layout.h"

#include <algorithm>

#include "reports/marks.h"

namespace reports {
namespace {

constexpr double kTickColumn = kTickBox + 2.5;

class TableLayout {
public:
    TableLayout(PageFlow& flow, const Table& table)
        : flow_{flow}, table_{table}, indent_{table.ticks.empty() ? 0 : kTickColumn} {}

    void draw() {
        flow_.down(kStep / 2);
        flow_.keep(20);
        head();
        for (std::size_t at = 0; at < table_.rows.size(); ++at) row(at);
        flow_.down(kStep);
    }

private:
    double roomOf(std::size_t column) const {
        return (flow_.width() - indent_) * table_.shares[column];
    }

    std::vector<Cell> cellsOf(const std::vector<std::string>& texts, const Type& type) {
        std::vector<Cell> cells;
        double left = indent_;
        for (std::size_t column = 0; column < texts.size(); ++column) {
            const double room = roomOf(column);
            cells.push_back({left, type, flow_.broken(texts[column], type, room - kStep)});
            left += room;
        }
        return cells;
    }

    void head() {
        flow_.row(cellsOf(table_.columns, kSmall));
        flow_.down(kStep / 4);
        flow_.hairline(0, flow_.width(), kHair);
        flow_.down(kStep / 2);
    }

    void row(std::size_t at) {
        const auto cells = cellsOf(table_.rows[at], kPlain);
        const bool ticked = at < table_.ticks.size();
        double least = table_.writable ? kWritingLine - kStep * 0.75 : 0;
        if (ticked) least = std::max(least, kTickBox);
        const double height = std::max(least, heightOf(cells));
        if (flow_.y() + std::min(height, kKeepTogether) > flow_.bottom()) {
            flow_.newPage();
            head();
        }
        const double top = flow_.y();
        const int page = flow_.pdf().pageCount();
        if (ticked) drawCheck(flow_.pdf(), {kMargin, top}, table_.ticks[at]);
        flow_.row(cells);
        if (flow_.pdf().pageCount() == page) flow_.downTo(top + least);
        below();
    }

    /// Where a hand is to write, each column has a line of its own.
    void below() {
        flow_.down(kStep / 4);
        if (!table_.writable) {
            flow_.hairline(0, flow_.width(), kFaintHair);
        } else {
            double left = indent_;
            for (std::size_t column = 0; column < table_.columns.size(); ++column) {
                flow_.hairline(left, left + roomOf(column) - kStep, kHair);
                left += roomOf(column);
            }
        }
        flow_.down(kStep / 2);
    }

    PageFlow& flow_;
    const Table& table_;
    double indent_;
};

}  // namespace

void drawTable(PageFlow& flow, const Table& table) { TableLayout{flow, table}.draw(); }

}  // namespace reports
