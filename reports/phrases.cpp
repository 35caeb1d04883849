#include "reports/phrases.h"

namespace reports {

std::string given(const std::optional<std::string>& text) {
    return text && !text->empty() ? *text : std::string{kNotGiven};
}

std::string given(const std::optional<domain::Date>& date) {
    return date ? date->text() : std::string{kNotGiven};
}

std::string given(const std::optional<bool>& answer, std::string_view yes, std::string_view no) {
    return std::string{answer ? (*answer ? yes : no) : kNotGiven};
}

Fact fact(std::string label, std::string value) {
    const bool ask = value == kNotGiven;
    return {.label = std::move(label), .value = std::move(value), .ask = ask};
}

std::string capital(std::string text) {
    if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
        text.front() = static_cast<char>(text.front() - 'a' + 'A');
    return text;
}

std::string joined(const std::vector<std::string>& parts, std::string_view between) {
    std::string text;
    for (const std::string& part : parts) {
        if (!text.empty()) text += between;
        text += part;
    }
    return text;
}

}  // namespace reports
