/// Code points that take no room in a text, or turn its order.
/// Source: Unicode 14.0 as Perl 5.36 carries it, \p{Default_Ignorable_Code_Point} (that is
/// DerivedCoreProperties.txt) and \p{Bidi_Control} (PropList.txt), printed as ranges.
#pragma once

#include <array>

namespace oracles {

struct CodePointRange {
    char32_t first;
    char32_t last;
};

inline constexpr std::array<CodePointRange, 17> kDefaultIgnorable{{{0xAD, 0xAD},
                                                                   {0x34F, 0x34F},
                                                                   {0x61C, 0x61C},
                                                                   {0x115F, 0x1160},
                                                                   {0x17B4, 0x17B5},
                                                                   {0x180B, 0x180F},
                                                                   {0x200B, 0x200F},
                                                                   {0x202A, 0x202E},
                                                                   {0x2060, 0x206F},
                                                                   {0x3164, 0x3164},
                                                                   {0xFE00, 0xFE0F},
                                                                   {0xFEFF, 0xFEFF},
                                                                   {0xFFA0, 0xFFA0},
                                                                   {0xFFF0, 0xFFF8},
                                                                   {0x1BCA0, 0x1BCA3},
                                                                   {0x1D173, 0x1D17A},
                                                                   {0xE0000, 0xE0FFF}}};

inline constexpr std::array<CodePointRange, 4> kBidiControl{
    {{0x61C, 0x61C}, {0x200E, 0x200F}, {0x202A, 0x202E}, {0x2066, 0x2069}}};

}  // namespace oracles
