/// Words and codes a person typed, read; the refusals say what was expected.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "apps/cli/verb.h"
#include "domain/base/codes.h"
#include "domain/base/date.h"
#include "domain/base/id.h"
#include "domain/base/quantity.h"
#include "domain/base/result.h"

namespace cli {

/// ErrorCode::Unusable.
domain::Error unusable(std::string why);

template <domain::CodedEnum E>
domain::Result<E> wordOf(const std::string& text, std::string_view what) {
    const auto value = domain::parseCode<E>(text);
    if (!value)
        return unusable("\"" + text + "\" is no " + std::string{what} +
                        "; expected one of: " + domain::allWords<E>());
    return *value;
}

/// An amount with its unit; `what` names it.
template <typename Unit>
domain::Result<domain::Quantity<Unit>> amountIn(const std::string& text, std::string_view what) {
    const auto amount = domain::parseQuantity<Unit>(text);
    if (!amount)
        return unusable("\"" + text + "\" is no " + std::string{what} +
                        "; expected a number and its unit, as \"" + std::string{Unit::kExample} +
                        "\"");
    return *amount;
}

/// An option with a word of an enum, or nothing where it is not given.
template <domain::CodedEnum E>
domain::Result<std::optional<E>> wordIn(const Call& call, std::string_view option) {
    const auto text = call.option(option);
    if (!text) return std::optional<E>{};
    const auto word = wordOf<E>(*text, option);
    if (!word) return word.error();
    return std::optional{*word};
}
/// Likewise with an amount.
template <typename Unit>
domain::Result<std::optional<domain::Quantity<Unit>>> amountOption(const Call& call,
                                                                   std::string_view option) {
    const auto text = call.option(option);
    if (!text) return std::optional<domain::Quantity<Unit>>{};
    const auto amount = amountIn<Unit>(*text, option);
    if (!amount) return amount.error();
    return std::optional{*amount};
}

/// "left=right": both parts, or what was expected.
domain::Result<std::pair<std::string, std::string>> pairIn(const std::string& text,
                                                           std::string_view example);

domain::Result<domain::ThingCode> thingOf(const std::string& text, std::string_view what);
domain::Result<domain::OrderNumber> numberOf(const std::string& text);
domain::Result<domain::Date> dayOf(const std::string& text, std::string_view what);
domain::Result<domain::PersonCode> personOf(const std::string& text);
/// A whole number of at least `fewest`; `what` names it with its article.
domain::Result<std::int64_t> wholeOf(const std::string& text, std::int64_t fewest,
                                     std::string_view what);

}  // namespace cli
