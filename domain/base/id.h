/// Identities that people read and scan: order numbers and the codes of people.
#pragma once

#include <compare>
#include <optional>
#include <string>
#include <string_view>

namespace domain {

/// Two digits of the year, five counted within it, one check digit by ISO/IEC 7064 MOD 11,10, so
/// that a slip of one digit is always noticed; from the 100,000th order of a year on seven are
/// counted. Digits alone and an even count, because that is what the cheapest scanners read most
/// safely. Ordered by year, then count.
class OrderNumber {
public:
    static std::optional<OrderNumber> parse(std::string_view text) noexcept;
    /// The number of the `count`-th order (1..9999999) of a year (0..99).
    static std::optional<OrderNumber> make(int year, int count);

    const std::string& text() const noexcept { return text_; }
    int year() const noexcept;   ///< the two digits of the year
    int count() const noexcept;  ///< the running count within the year

    friend bool operator==(const OrderNumber&, const OrderNumber&) = default;
    friend std::strong_ordering operator<=>(const OrderNumber& one, const OrderNumber& other) {
        if (const auto byYear = one.year() <=> other.year(); byYear != 0) return byYear;
        return one.count() <=> other.count();
    }

private:
    explicit OrderNumber(std::string text) : text_{std::move(text)} {}
    std::string text_;
};

/// Something to read an order number into: the first number of the year 00.
OrderNumber blankOrderNumber();

/// The ISO/IEC 7064 MOD 11,10 check digit of a string of digits.
char checkDigit(std::string_view digits) noexcept;

/// A short code somebody chose: a letter, then letters, digits, '-', '_' or '.'; at most 24
/// characters. One type for each sort of thing, so that none is taken for another.
template <typename Sort>
class ShortCode {
public:
    static std::optional<ShortCode> parse(std::string_view text);
    const std::string& text() const noexcept { return text_; }
    friend auto operator<=>(const ShortCode&, const ShortCode&) = default;

private:
    explicit ShortCode(std::string text) : text_{std::move(text)} {}
    std::string text_;
};

bool isShortCode(std::string_view text) noexcept;
/// What a short code looks like, for messages.
inline constexpr std::string_view kShortCodeForm =
    "a letter, then letters, digits, '-', '_' or '.', at most 24 in all";

template <typename Sort>
std::optional<ShortCode<Sort>> ShortCode<Sort>::parse(std::string_view text) {
    if (!isShortCode(text)) return {};
    return ShortCode{std::string{text}};
}

/// The code a person signs with ("MK", "tech-2"). The ledger holds codes and never names.
using PersonCode = ShortCode<struct PersonSort>;
/// The laboratory's own code of a thing it keeps: a lot, a piece of equipment, a station, a site.
using ThingCode = ShortCode<struct ThingSort>;

/// Something to read a code into.
inline PersonCode blankPersonCode() { return *PersonCode::parse("blank"); }
inline ThingCode blankThingCode() { return *ThingCode::parse("blank"); }

}  // namespace domain
