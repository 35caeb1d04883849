/// Short codes made of a letter and a count: "P00007", "D00003", "T000042".
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace storage {

struct CodeShape {
    char letter{};
    std::size_t digits{};  ///< at least; a larger count is simply longer
};
inline constexpr CodeShape kPatientCode{'P', 5};
inline constexpr CodeShape kPrescriberCode{'D', 5};
inline constexpr CodeShape kSealedTextCode{'T', 6};

std::string countedCode(CodeShape shape, std::int64_t count);
/// Reads what countedCode() writes, and nothing else.
std::optional<std::int64_t> countOf(CodeShape shape, std::string_view code);

}  // namespace storage
