/// Pages being filled from the top: where the next thing goes, when a new page begins, and what
/// stands on every page.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "reports/paper.h"
#include "reports/pdf_document.h"

namespace reports {

inline constexpr Type kPlain{};
inline constexpr Type kStrong{.face = Face::Bold};
inline constexpr Type kFaint{.colour = domain::Colour::Quiet};
inline constexpr Type kSmall{.size = kSmallType, .colour = domain::Colour::Quiet};
inline constexpr Type kHead{.face = Face::Bold, .size = kHeadType};
inline constexpr Type kName{.face = Face::Bold, .size = kNameType};
inline const LineLook kHair{.colour = domain::Colour::Quiet};
inline const LineLook kFaintHair{.colour = domain::Colour::Line};

inline constexpr double kMeasure = 132;       // mm: about 75 characters of plain type
inline constexpr double kKeepTogether = 120;  // mm: what is no higher moves on as a whole

constexpr double lineHeight(const Type& type) { return type.size * kMmPerPoint * kLeading; }

/// Lines of one type in a column of their own.
struct Cell {
    double left{};  ///< mm from the left margin
    Type type{};
    std::vector<std::string> lines{};
};
double heightOf(const std::vector<Cell>& row);

class PageFlow {
public:
    /// Begins the first page.
    PageFlow(PdfDocument& pdf, const Paper& paper);

    PdfDocument& pdf() noexcept { return pdf_; }
    double width() const noexcept { return width_; }  ///< mm between the margins
    double y() const noexcept { return y_; }          ///< where the next thing begins
    double bottom() const noexcept { return bottom_; }
    double room() const noexcept { return bottom_ - topOfPage_; }  ///< mm of an empty page
    bool atTop() const noexcept { return y_ <= topOfPage_ + 0.01; }

    void down(double mm) noexcept { y_ += mm; }
    /// Not nearer to the top than that.
    void downTo(double y) noexcept;
    void newPage();
    /// A new page if what is that high finds no place below.
    void breakBefore(double height);
    /// Like breakBefore, for what may be followed by more.
    void keep(double height);

    std::vector<std::string> broken(std::string_view text, const Type& type, double room);
    /// Cells side by side, line by line; a row that is short enough stays on one page.
    void row(const std::vector<Cell>& cells);
    /// Between two places, in mm from the left margin.
    void hairline(double from, double to, const LineLook& look);
    void writingLine(double from, double to);

    /// Once everything else is drawn, for it tells how many pages there are.
    void footers();

private:
    void header();
    double column(const std::vector<std::string>& lines, const Type& type, double y, bool right);

    PdfDocument& pdf_;
    const Paper& paper_;
    double width_;
    double bottom_;
    double y_{};
    double topOfPage_{};
};

}  // namespace reports
