/// The one table per stored enum: enumerator <-> the stable word people and files see.
///
/// A word is never reworded and never reused. Every table lists all enumerators in order, and
/// tests/domain/codes_test.cpp proves that each table is complete and reversible.
#pragma once

#include <algorithm>
#include <array>
#include <concepts>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>

namespace domain {

template <typename E>
struct EnumCode {
    E value;
    std::string_view word;
};

/// Specialised beside each enum: `inline constexpr std::array<EnumCode<Arch>, 2> enumCodes<Arch>`.
template <typename E>
inline constexpr std::array<EnumCode<E>, 0> enumCodes{};

template <typename E>
concept CodedEnum = std::is_enum_v<E> && (enumCodes<E>.size() > 0);

template <CodedEnum E>
constexpr std::string_view codeOf(E value) noexcept {
    for (const auto& code : enumCodes<E>)
        if (code.value == value) return code.word;
    return {};
}

template <CodedEnum E>
constexpr std::optional<E> parseCode(std::string_view word) noexcept {
    for (const auto& code : enumCodes<E>)
        if (code.word == word) return code.value;
    return {};
}

/// "upper, lower": every word of an enum, for messages that say what was expected.
template <CodedEnum E>
std::string allWords() {
    std::string words;
    for (const auto& code : enumCodes<E>) {
        if (!words.empty()) words += ", ";
        words += code.word;
    }
    return words;
}

/// "palatal-strap" -> "palatal strap", "tooth-try-in" -> "tooth try-in": a word for reading aloud.
std::string spoken(std::string_view word);

template <CodedEnum E>
std::string wordsOf(E value) {
    return spoken(codeOf(value));
}

/// "1 finding", "2 findings".
std::string counted(std::size_t count, std::string_view thing);

}  // namespace domain
