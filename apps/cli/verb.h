/// A verb of the command line is a row: its name, what it takes, what it does, and an example.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "apps/cli/exit_code.h"
#include "domain/base/result.h"

namespace cli {

struct Option {
    std::string_view name;   ///< without the dashes
    std::string_view value;  ///< what follows it, in capitals; empty for a switch
    std::string_view says;
};

/// What a verb needs before the records are opened for it. Session: whoever calls is signed in, so
/// that nothing of the records is shown to anybody else; what more a change needs its action asks.
/// Nothing: it shows nothing of them, or is how one comes in.
enum class Needs : std::uint8_t { Session, Nothing };

/// One call of a verb, its words sorted into arguments and options.
class Call {
public:
    Call(std::vector<std::string> arguments, std::multimap<std::string, std::string> options,
         Needs needs)
        : arguments_{std::move(arguments)}, options_{std::move(options)}, needs_{needs} {}

    Needs needs() const noexcept { return needs_; }
    const std::vector<std::string>& arguments() const noexcept { return arguments_; }
    bool has(std::string_view option) const {
        return options_.find(std::string{option}) != options_.end();
    }
    /// Every time an option is given, in order.
    std::vector<std::string> options(std::string_view name) const {
        std::vector<std::string> values;
        const auto [from, to] = options_.equal_range(std::string{name});
        for (auto each = from; each != to; ++each) values.push_back(each->second);
        return values;
    }
    std::optional<std::string> option(std::string_view name) const {
        const auto found = options_.find(std::string{name});
        return found == options_.end() ? std::nullopt : std::optional{found->second};
    }

private:
    std::vector<std::string> arguments_;
    std::multimap<std::string, std::string> options_;
    Needs needs_;
};

struct Verb {
    std::string_view name;
    std::string_view arguments;  ///< "ORDER [STAGE]"
    std::size_t fewest{};        ///< how many arguments it needs
    std::size_t most{};
    std::string_view says;
    std::span<const Option> options;
    std::string_view example;
    domain::Result<Exit> (*run)(const Call&);
    Needs needs{Needs::Session};
};

/// Every verb, in the order a prescription meets them.
std::span<const Verb> verbs();

}  // namespace cli
