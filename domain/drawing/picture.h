/// A picture as a plain list of fills, strokes and words in millimetres, for any painter.
///
/// It knows roles and no colours, and each mark says what it depicts. Painters take the marks in
/// their order, later ones on top.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "domain/drawing/palette.h"
#include "domain/teeth/arch_form.h"

namespace domain {

/// What a mark of the arch picture stands for; the legend has one line for each that occurs.
enum class Depicted : std::uint8_t {
    Frame,  ///< labels, sides, the legend itself: what needs no explanation
    PresentTooth,
    ReplacedTooth,
    NotReplaced,
    ClosedSpace,
    ExtractedTooth,
    BridgedTooth,
    Saddle,
    MetalBase,
    OpenLattice,
    Mesh,
    Bead,
    TissueStop,
    ExternalFinishLine,
    InternalFinishLine,
    MajorConnector,
    ResinPlate,
    MinorConnector,
    PreparedRest,
    UnpreparedRest,
    IndirectRetainer,
    RetentiveArm,
    WroughtWire,
    UndercutDepth,
    Reciprocation,
    GuidePlate,
    PreparedGuidePlane,
    Fulcrum,
    Lever,
    InsertionPath,
    MissingFlag,
    ConflictFlag,
    CautionFlag,
};
inline constexpr int kDepicted = 33;

enum class LineStyle : std::uint8_t { Solid, Dashed, Dotted, DashDot };

/// The strokes of a dash pattern and their gaps in mm; empty for a solid line.
std::vector<double> dashesOf(LineStyle style);

/// A closed area, its corners in order; curves come as close corners.
struct Fill {
    std::vector<Point> outline{};
    Colour colour{};
    Depicted depicts{};
};

struct Stroke {
    std::vector<Point> line{};
    bool closed{};
    Colour colour{};
    LineStyle style{};
    double width{};  ///< mm
    Depicted depicts{};
};

enum class Anchor : std::uint8_t { Left, Middle, Right };

/// One line of text. `at` is where its base line begins, has its middle or ends.
struct Words {
    std::string text{};  ///< UTF-8
    Point at{};
    Anchor anchor{};
    double size{};  ///< mm from line to line, the em of the face
    bool bold{};
    Colour colour{};
    Depicted depicts{};
};

using Mark = std::variant<Fill, Stroke, Words>;

struct Picture {
    double width{};  ///< mm; x grows to the right from 0, y downwards from 0
    double height{};
    std::vector<Mark> marks{};
};

/// A rectangle with its sides along x and y.
struct Box {
    double left{};
    double top{};
    double right{};
    double bottom{};

    bool touches(const Box& other) const noexcept {
        return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
    }
    Point centre() const noexcept { return {(left + right) / 2, (top + bottom) / 2}; }
};

/// Room the words take in a sans face of usual width; the painter's own face may be narrower.
Box boxOf(const Words& words);
Box boxOf(const std::vector<Point>& outline);

/// Whether the point lies within the closed outline.
bool contains(const std::vector<Point>& outline, Point point) noexcept;

}  // namespace domain
