#include "apps/cli/page.h"

#include <algorithm>

#include "domain/base/plain_text.h"

namespace cli {
namespace {

using Row = std::vector<std::string>;

/// Characters, not bytes: continuation bytes of UTF-8 are not counted.
std::size_t width(const std::string& text) {
    return static_cast<std::size_t>(
        std::ranges::count_if(text, [](char c) { return (c & 0xC0) != 0x80; }));
}

Row plainRow(const Row& row) {
    Row cells(row.size());
    std::ranges::transform(row, cells.begin(), domain::plainText);
    return cells;
}

}  // namespace

Page& Page::line(std::string_view text) {
    text_ += domain::plainText(text) + '\n';
    return *this;
}

Page& Page::add(const Page& below) {
    text_ += below.text_;
    return *this;
}

Page table(const Row& heading, const std::vector<Row>& rows) {
    std::vector<Row> shown{plainRow(heading)};
    for (const Row& row : rows) shown.push_back(plainRow(row));
    std::vector<std::size_t> widths(heading.size());
    for (const Row& row : shown)
        for (std::size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], width(row[i]));
    Page page;
    for (const Row& row : shown) {
        std::string line;
        for (std::size_t i = 0; i < row.size(); ++i) {
            line += row[i];
            if (i + 1 < row.size()) line += std::string(widths[i] - width(row[i]) + 2, ' ');
        }
        page.line(line);
    }
    return page;
}

}  // namespace cli
