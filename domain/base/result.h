/// A value, or the reason why there is none. What a caller must handle comes back as a Result.
#pragma once

#include <cassert>
#include <cstdint>
#include <string>
#include <utility>
#include <variant>

namespace domain {

/// What kind of trouble it is; the command line turns it into an exit code.
enum class ErrorCode : std::uint8_t {
    Refused,      ///< a rule of the trade or of the workflow says no
    Unusable,     ///< what was given cannot be read or does not exist
    Conflict,     ///< somebody else changed it first
    Unavailable,  ///< the records cannot be read or written
};

struct Error {
    ErrorCode code{};
    std::string message;  ///< one sentence for a person: what, where, and what was expected
};

/// Empty success, for functions that have nothing to return.
struct Done {
    friend constexpr bool operator==(Done, Done) = default;
};

template <typename T>
class [[nodiscard]] Result {
public:
    Result(T value) : held_{std::in_place_index<0>, std::move(value)} {}      // NOLINT
    Result(Error error) : held_{std::in_place_index<1>, std::move(error)} {}  // NOLINT

    explicit operator bool() const noexcept { return held_.index() == 0; }

    const T& value() const& {
        assert(held_.index() == 0);
        return *std::get_if<0>(&held_);
    }
    /// By value, so that what a call returned can be walked over without dangling.
    T value() && {
        assert(held_.index() == 0);
        return std::move(*std::get_if<0>(&held_));
    }
    const T& operator*() const& { return value(); }
    T operator*() && { return std::move(*this).value(); }
    const T* operator->() const { return &value(); }

    const Error& error() const {
        assert(held_.index() == 1);
        return *std::get_if<1>(&held_);
    }

private:
    std::variant<T, Error> held_;
};

}  // namespace domain
