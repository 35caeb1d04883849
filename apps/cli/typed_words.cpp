#include "apps/cli/typed_words.h"

#include <charconv>

namespace cli {

using domain::Result;

domain::Error unusable(std::string why) { return {domain::ErrorCode::Unusable, std::move(why)}; }

Result<domain::PersonCode> personOf(const std::string& text) {
    const auto person = domain::PersonCode::parse(text);
    if (!person)
        return unusable("\"" + text + "\" is no person's code; expected " +
                        std::string{domain::kShortCodeForm});
    return *person;
}

Result<std::int64_t> wholeOf(const std::string& text, std::int64_t fewest, std::string_view what) {
    std::int64_t value{};
    const char* end = text.data() + text.size();
    const auto read = std::from_chars(text.data(), end, value);
    if (read.ec != std::errc{} || read.ptr != end || value < fewest)
        return unusable("\"" + text + "\" is no " + std::string{what} +
                        "; expected a whole number from " + std::to_string(fewest));
    return value;
}

Result<std::pair<std::string, std::string>> pairIn(const std::string& text,
                                                   std::string_view example) {
    const auto parted = text.find('=');
    if (parted == std::string::npos || parted == 0 || parted + 1 == text.size())
        return unusable("\"" + text + "\": expected as \"" + std::string{example} + '"');
    return std::pair{text.substr(0, parted), text.substr(parted + 1)};
}

Result<domain::ThingCode> thingOf(const std::string& text, std::string_view what) {
    const auto code = domain::ThingCode::parse(text);
    if (!code)
        return unusable("\"" + text + "\" is no code of a " + std::string{what} + "; expected " +
                        std::string{domain::kShortCodeForm});
    return *code;
}

Result<domain::OrderNumber> numberOf(const std::string& text) {
    const auto number = domain::OrderNumber::parse(text);
    if (!number)
        return unusable("\"" + text +
                        "\" is no order number; expected eight digits, the last one "
                        "a check digit");
    return *number;
}

Result<domain::Date> dayOf(const std::string& text, std::string_view what) {
    const auto day = domain::Date::parse(text);
    if (!day)
        return unusable("\"" + text + "\" is no " + std::string{what} +
                        "; expected a day as 2026-11-25");
    return *day;
}

}  // namespace cli
