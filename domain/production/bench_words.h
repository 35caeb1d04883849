/// The vocabulary of what is typed into the records of a stage: words of the trade, numbers, units
/// and codes. Nobody can be named with it, so these records may lie in the ledger in clear and
/// outlive a purge; whatever needs other words is a note, which is sealed.
#pragma once

#include <string>
#include <string_view>

namespace domain {

/// The first word of a text that is none of the vocabulary, without regard to capitals; empty when
/// there is none. Numbers, one or two letters, and short codes with a digit in them are fit.
std::string strangeWordIn(std::string_view text);
/// What was expected instead, for a person: "\"Smith\" is no word of the bench; ...".
std::string strangeWordSentence(std::string_view word);

}  // namespace domain
