#include "reports/page_flow.h"

#include <algorithm>

#include "reports/line_breaking.h"

namespace reports {
namespace {

constexpr double kFooter = 8;

/// At most `most` lines, the last one marked if more were cut off: for headers only, whose texts
/// stand in full elsewhere.
std::vector<std::string> first(std::vector<std::string> lines, std::size_t most) {
    if (lines.size() > most) {
        lines.resize(most);
        lines.back() += " \u2026";
    }
    return lines;
}

}  // namespace

double heightOf(const std::vector<Cell>& row) {
    double height = 0;
    for (const Cell& cell : row)
        height = std::max(height, static_cast<double>(cell.lines.size()) * lineHeight(cell.type));
    return height;
}

PageFlow::PageFlow(PdfDocument& pdf, const Paper& paper)
    : pdf_{pdf},
      paper_{paper},
      width_{pdf.sheet().width - 2 * kMargin},
      bottom_{pdf.sheet().height - kMargin - kFooter} {
    newPage();
}

void PageFlow::downTo(double y) noexcept { y_ = std::max(y_, y); }

void PageFlow::newPage() {
    pdf_.addPage();
    y_ = kMargin;
    header();
    topOfPage_ = y_;
}

void PageFlow::breakBefore(double height) {
    if (y_ + height > bottom_ && !atTop()) newPage();
}

void PageFlow::keep(double height) { breakBefore(std::min(height, kKeepTogether)); }

std::vector<std::string> PageFlow::broken(std::string_view text, const Type& type, double room) {
    return brokenLines(pdf_, text, type, room);
}

double PageFlow::column(const std::vector<std::string>& lines, const Type& type, double y,
                        bool right) {
    for (const std::string& line : lines) {
        const double base = y + type.size * kMmPerPoint * 0.95;
        if (right)
            pdf_.textRight({kMargin + width_, base}, line, type);
        else
            pdf_.text({kMargin, base}, line, type);
        y += lineHeight(type);
    }
    return y;
}

void PageFlow::header() {
    const PaperHead& head = paper_.head;
    const double half = width_ / 2 - 4;
    double left = column(first(broken(head.laboratory, kHead, half), 2), kHead, y_, false);
    left = column(first(broken(head.address, kSmall, half), 2), kSmall, left, false);
    left = column(first(broken(head.contact, kSmall, half), 2), kSmall, left, false);
    double right = column(first(broken(paper_.name, kName, half), 2), kName, y_, true);
    if (!head.order.empty())
        right = column(first(broken("order " + head.order, kHead, half), 1), kHead, right, true);
    y_ = std::max(left, right) + kStep;
    pdf_.line({{kMargin, y_}, {kMargin + width_, y_}}, false, kHair);
    y_ += kStep / 2;
    if (head.order.empty()) {
        y_ += kStep;
        return;
    }
    const std::string patient = paper_.patientReference.empty()
                                    ? "patient: no reference given"
                                    : "patient " + paper_.patientReference;
    const double below = column(first(broken(patient, kPlain, half), 1), kPlain, y_, false);
    column({"revision " + std::to_string(head.revision)}, kPlain, y_, true);
    y_ = below + 2 * kStep;
}

void PageFlow::row(const std::vector<Cell>& cells) {
    const double height = heightOf(cells);
    if (height <= kKeepTogether) breakBefore(height);
    std::size_t most = 0;
    double step = 0;
    for (const Cell& cell : cells) {
        most = std::max(most, cell.lines.size());
        step = std::max(step, lineHeight(cell.type));
    }
    for (std::size_t line = 0; line < most; ++line) {
        breakBefore(step);
        for (const Cell& cell : cells)
            if (line < cell.lines.size())
                pdf_.text({kMargin + cell.left, y_ + step * 0.74}, cell.lines[line], cell.type);
        y_ += step;
    }
}

void PageFlow::hairline(double from, double to, const LineLook& look) {
    pdf_.line({{kMargin + from, y_}, {kMargin + to, y_}}, false, look);
}

void PageFlow::writingLine(double from, double to) {
    breakBefore(kWritingLine);
    y_ += kWritingLine;
    hairline(from, to, kHair);
}

void PageFlow::footers() {
    const int pages = pdf_.pageCount();
    const PaperHead& head = paper_.head;
    const double y = pdf_.sheet().height - kMargin;
    for (int page = 0; page < pages; ++page) {
        pdf_.turnTo(page);
        pdf_.line({{kMargin, y - 4}, {kMargin + width_, y - 4}}, false, kHair);
        pdf_.text({kMargin, y}, "page " + std::to_string(page + 1) + " of " + std::to_string(pages),
                  kSmall);
        const std::string printed = "printed " + head.printedAt.text() + " by " + head.printedBy;
        const auto shown = broken(printed, kSmall, 100);
        pdf_.text({kMargin + (width_ - pdf_.widthOf(shown.front(), kSmall)) / 2, y}, shown.front(),
                  kSmall);
        if (!head.digest.empty())
            pdf_.textRight({kMargin + width_, y}, broken("digest " + head.digest, kSmall, 44)[0],
                           kSmall);
    }
}

}  // namespace reports
