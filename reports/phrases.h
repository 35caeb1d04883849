/// Small pieces of text that all papers are put together from; private to this folder.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "domain/base/quantity.h"
#include "reports/paper.h"

namespace reports {

/// What a paper says where nothing is said.
inline constexpr std::string_view kNotGiven = "not given";

std::string given(const std::optional<std::string>& text);
std::string given(const std::optional<domain::Date>& date);
std::string given(const std::optional<bool>& answer, std::string_view yes = "yes",
                  std::string_view no = "no");

template <domain::CodedEnum E>
std::string given(const std::optional<E>& value) {
    return value ? domain::wordsOf(*value) : std::string{kNotGiven};
}

template <typename Unit>
std::string given(const std::optional<domain::Quantity<Unit>>& value) {
    return value ? domain::text(*value) : std::string{kNotGiven};
}

/// A fact that is shown as open where its value is not given.
Fact fact(std::string label, std::string value);

/// With a capital letter in front.
std::string capital(std::string text);

std::string joined(const std::vector<std::string>& parts, std::string_view between = ", ");

}  // namespace reports
