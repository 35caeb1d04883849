/// Words and codes a person typed, read; the refusals say what was expected.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "domain/base/codes.h"
#include "domain/base/id.h"
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

domain::Result<domain::PersonCode> personOf(const std::string& text);
/// A whole number of at least `fewest`; `what` names it with its article.
domain::Result<std::int64_t> wholeOf(const std::string& text, std::int64_t fewest,
                                     std::string_view what);

}  // namespace cli
