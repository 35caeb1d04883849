/// Text from outside as it may be shown: one line of valid UTF-8 in which every character is seen.
///
/// What steers a terminal, breaks a line, turns the order of writing or takes no room is spelt out
/// by its number: a name must not move the cursor, begin a row of its own or look like another.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace domain {

/// What a text begins with: a code point, or one byte that belongs to none (RFC 3629, section 3).
struct FirstCharacter {
    std::optional<char32_t> code;
    std::size_t bytes{};  ///< 0 only where the text is empty
};
FirstCharacter firstCharacter(std::string_view utf8) noexcept;

/// C0, DEL and C1.
bool isControl(char32_t code) noexcept;

/// Takes no room, turns the order of writing or breaks the line without being a control: what
/// Unicode's DerivedCoreProperties.txt lists as Default_Ignorable_Code_Point, U+2028 and U+2029,
/// and the marks of interlinear annotation. Among them are the joiners of Persian and Indic
/// writing, which are spelt out as well: two names must not look the same and differ.
bool isHidden(char32_t code) noexcept;

/// "[U+202E]": a character by its number, where it cannot be shown itself.
std::string spelt(char32_t code);

/// The text with controls and hidden characters as "[U+001B]", and bytes that belong to no
/// character as "[0x9B]". What it returns it leaves as it is.
std::string plainText(std::string_view utf8);

}  // namespace domain
