/// What several processes tried on the same orders and what they were told, and the proof that the
/// ledger agrees with all of them.
#pragma once

#include <algorithm>
#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "apps/actions/laboratory.h"
#include "domain/production/order.h"

namespace concurrency {

/// The name of the values that count how often an order was written: 1, 2, 3 ...
inline constexpr const char* kCount = "count";

enum class Deed : std::uint8_t { Count, Tick, Start, Finish, Redo };

}  // namespace concurrency

template <>
inline constexpr std::array<domain::EnumCode<concurrency::Deed>, 5>
    domain::enumCodes<concurrency::Deed>{{{concurrency::Deed::Count, "count"},
                                          {concurrency::Deed::Tick, "tick"},
                                          {concurrency::Deed::Start, "start"},
                                          {concurrency::Deed::Finish, "finish"},
                                          {concurrency::Deed::Redo, "redo"}}};

namespace concurrency {

/// How often an order was counted, as somebody who looks at it sees it.
inline std::int64_t countIn(const domain::Order& order) {
    return std::ranges::count_if(order.records, [](const domain::KeptRecord& kept) {
        const auto* value = std::get_if<domain::BenchValue>(&kept.record);
        return value != nullptr && value->what == kCount;
    });
}

/// One attempt to write. A line "invoke KEY ORDER DEED SEEN" before it and a line
/// "return KEY ok|fail|unknown VERSION" after it.
struct Attempt {
    std::string order{};
    std::string deed{};
    std::int64_t seen{};
    std::string result{};  ///< empty: it never returned
    std::int64_t version{};
};
/// By key.
using History = std::map<std::string, Attempt>;

/// Adds what a file says; false when it cannot be read.
bool read(const std::filesystem::path& file, History& history);

struct Judgement {
    std::vector<std::string> lostUpdates{};  ///< a number twice, or one left out
    std::vector<std::string>
        otherFaults{};  ///< anything else the ledger and the history disagree on
    std::int64_t acknowledged{};
    std::int64_t refused{};
    std::int64_t unknown{};
    std::int64_t counted{};  ///< numbers in the ledger
    std::int64_t stages{};   ///< starts and ends of stages in the ledger
};

/// Holds every attempt against the ledger.
Judgement judge(const actions::Laboratory& laboratory, const History& history);

}  // namespace concurrency
