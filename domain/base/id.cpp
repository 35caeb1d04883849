#include "domain/base/id.h"

#include <algorithm>

namespace domain {
namespace {

constexpr std::size_t kShortNumber = 8;
constexpr std::size_t kLongNumber = 10;
constexpr int kMostInShort = 99'999;
constexpr int kMostInLong = 9'999'999;

bool digit(char c) { return c >= '0' && c <= '9'; }
bool letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

std::string padded(int value, std::size_t width) {
    std::string digits = std::to_string(value);
    return std::string(width - std::min(width, digits.size()), '0') + digits;
}

}  // namespace

char checkDigit(std::string_view digits) noexcept {
    int carry = 10;
    for (const char c : digits) {
        carry = (carry + (c - '0')) % 10;
        carry = (carry == 0 ? 10 : carry) * 2 % 11;
    }
    return static_cast<char>('0' + (11 - carry) % 10);
}

std::optional<OrderNumber> OrderNumber::parse(std::string_view text) noexcept {
    const bool isLong = text.size() == kLongNumber;
    if ((text.size() != kShortNumber && !isLong) || !std::ranges::all_of(text, digit)) return {};
    if (checkDigit(text.substr(0, text.size() - 1)) != text.back()) return {};
    OrderNumber number{std::string{text}};
    // Each count has one form only.
    if (isLong && number.count() <= kMostInShort) return {};
    return number;
}

std::optional<OrderNumber> OrderNumber::make(int year, int count) {
    if (year < 0 || year > 99 || count < 1 || count > kMostInLong) return {};
    std::string text = padded(year, 2) + padded(count, count > kMostInShort ? 7 : 5);
    text += checkDigit(text);
    return OrderNumber{std::move(text)};
}

OrderNumber blankOrderNumber() { return *OrderNumber::make(0, 1); }

int OrderNumber::year() const noexcept { return (text_[0] - '0') * 10 + (text_[1] - '0'); }

int OrderNumber::count() const noexcept {
    int value = 0;
    for (const char c : std::string_view{text_}.substr(2, text_.size() - 3))
        value = value * 10 + (c - '0');
    return value;
}

bool isShortCode(std::string_view text) noexcept {
    constexpr std::string_view kMarks = "-_.";
    constexpr std::size_t kLongest = 24;
    if (text.empty() || text.size() > kLongest || !letter(text.front())) return false;
    return std::ranges::all_of(text, [&](char c) {
        return letter(c) || digit(c) || kMarks.find(c) != std::string_view::npos;
    });
}

}  // namespace domain
