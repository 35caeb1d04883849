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

}  // namespace cli
