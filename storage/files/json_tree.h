/// JSON that people write, as a tree that knows the line of every value.
///
/// Strict: limited depth, no field twice, valid UTF-8, no numbers that are not finite.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "domain/base/result.h"

namespace storage {

struct JsonNode {
    enum class Kind : std::uint8_t { Null, Boolean, Number, Text, List, Object };

    Kind kind{};
    int line{1};
    bool truth{};
    std::string text{};  ///< of a Text; of a Number as it was written
    std::vector<JsonNode> items{};
    std::vector<std::pair<std::string, JsonNode>> members{};  ///< in the order of the file

    const JsonNode* member(std::string_view name) const;
};

/// "a list", "the text \"36\"": what a value is, for messages.
std::string shown(const JsonNode& node);

inline constexpr std::size_t kDeepestJson = 16;

/// Errors name `fileName`, the line, and what is wrong.
domain::Result<JsonNode> parseJson(std::string_view text, std::string_view fileName);

}  // namespace storage
