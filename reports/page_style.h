/// The measures every paper shares: page sizes, margins, type sizes and steps, in mm and points.
#pragma once

#include <cstdint>

#include "domain/base/codes.h"

namespace reports {

enum class PageSize : std::uint8_t { A4, UsLetter };

}  // namespace reports

template <>
inline constexpr std::array<domain::EnumCode<reports::PageSize>, 2>
    domain::enumCodes<reports::PageSize>{{
        {reports::PageSize::A4, "a4"},
        {reports::PageSize::UsLetter, "us-letter"},
    }};

namespace reports {

struct Sheet {
    double width{};  ///< mm
    double height{};
};

/// ISO 216 A4; ANSI A, 8.5 by 11 inches.
constexpr Sheet sheetOf(PageSize size) noexcept {
    return size == PageSize::A4 ? Sheet{210.0, 297.0} : Sheet{215.9, 279.4};
}

inline constexpr double kMargin = 15;      ///< mm; nothing essential stands nearer to an edge
inline constexpr double kStep = 2;         ///< mm between things; larger gaps are multiples
inline constexpr double kTickBox = 4;      ///< mm, a box to tick
inline constexpr double kWritingLine = 8;  ///< mm, a line to write on
inline constexpr double kHairline = 0.2;   ///< mm
inline constexpr double kSmallType = 7.5;  ///< pt, as all type sizes
inline constexpr double kPlainType = 9;
inline constexpr double kHeadType = 11;
inline constexpr double kNameType = 15;
inline constexpr double kMmPerPoint = 25.4 / 72;
inline constexpr double kLeading = 1.32;  ///< from base line to base line, in type sizes

}  // namespace reports
