/// Texts as they may be printed: valid, without control characters, with nothing hidden in them.
#pragma once

#include <string>
#include <string_view>

namespace reports {

/// The code points of a UTF-8 text; each byte that belongs to none becomes U+FFFD.
std::u32string decoded(std::string_view utf8);
std::string encoded(std::u32string_view codePoints);

/// domain::spelt() in code points.
std::u32string spelt(char32_t code);

/// What is printed for a text from outside: control characters go (tabs and line ends become
/// spaces), and what would change the order of writing or stay unseen is spelt out, as "[U+202E]".
std::string printable(std::string_view utf8);

}  // namespace reports
