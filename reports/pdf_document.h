/// A PDF document being drawn: pages, text, lines and areas in mm from the upper left corner.
///
/// The first thing that goes wrong is kept and told by bytes(); after it, drawing does nothing.
/// Nothing of the time or place of drawing gets into the file unless it is handed in.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "domain/base/date.h"
#include "domain/base/result.h"
#include "domain/drawing/picture.h"
#include "reports/page_style.h"

namespace reports {

/// Sans faces, embedded so that Latin, Greek and Cyrillic letters print on any machine.
enum class Face : std::uint8_t { Plain, Bold };
inline constexpr int kFaces = 2;

struct Type {
    Face face{Face::Plain};
    double size{kPlainType};  ///< pt
    domain::Colour colour{domain::Colour::Ink};
};

struct LineLook {
    double width{kHairline};  ///< mm
    domain::Colour colour{domain::Colour::Ink};
    std::vector<double> dashes{};  ///< mm of stroke, gap, stroke ..., empty: solid
};

class PdfDocument {
public:
    PdfDocument(PageSize size, std::string_view title, domain::Instant printedAt);
    ~PdfDocument();
    PdfDocument(const PdfDocument&) = delete;
    PdfDocument& operator=(const PdfDocument&) = delete;

    void addPage();
    int pageCount() const noexcept;
    /// Draw on that page from now on, counted from 0.
    void turnTo(int page);
    Sheet sheet() const noexcept;

    /// mm the text takes in one line.
    double widthOf(std::string_view utf8, const Type& type);
    /// What of the text is printed: characters the face lacks are spelt out.
    std::string shown(std::string_view utf8, Face face);

    /// One line of text, its base line beginning at a place. Text from outside must have gone
    /// through printable().
    void text(domain::Point at, std::string_view utf8, const Type& type);
    void textRight(domain::Point at, std::string_view utf8, const Type& type);
    void line(const std::vector<domain::Point>& points, bool closed, const LineLook& look);
    void area(const std::vector<domain::Point>& outline, domain::Colour colour);
    void box(const domain::Box& box, const LineLook& look);
    /// Many boxes filled at once, so that no seam shows between neighbours.
    void areas(const std::vector<domain::Box>& boxes, domain::Colour colour);
    /// For what cannot be drawn at all: bytes() will refuse with this reason.
    void refuse(std::string why);

    /// The finished file. ErrorCode::Unavailable with what went wrong first, if anything did.
    domain::Result<std::string> bytes();

private:
    struct Hidden;  // keeps libharu's headers out of ours
    std::unique_ptr<Hidden> hidden_;
};

}  // namespace reports
