/// A day's work at one set of records, the same every time: orders are logged, accepted, made and
/// asked about, each step through the action a person would call, under a key of its own. And what
/// must hold of the records afterwards, whatever happened meanwhile.
#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "apps/actions/laboratory.h"
#include "apps/actions/outcome.h"
#include "tests/faults/power_cut.h"
#include "tests/support/hand_clock.h"
#include "tests/support/working_laboratory.h"

namespace faults {

struct Step {
    std::string key{};
    std::function<domain::Result<actions::Outcome>(const actions::Laboratory&)> run{};
};

/// What was found in records that were opened again.
struct Verdict {
    enum class State { Whole, NotOpened, Corrupt, Torn };
    State state{};
    std::string flaw{};        ///< in a sentence; empty when whole
    std::vector<bool> kept{};  ///< of each step, whether it took effect
    std::int64_t entries{};    ///< of the ledger
};

class Day {
public:
    /// Furnishes a laboratory and rehearses the day, by which every step is known to the word
    /// before anything fails.
    Day();
    ~Day();
    Day(const Day&) = delete;
    Day& operator=(const Day&) = delete;

    const std::vector<Step>& steps() const noexcept { return steps_; }
    /// The records before the first step, without a journal.
    const Stored& morning() const noexcept { return morning_; }
    /// A folder as it lies on a disk, which is a test's own.
    std::filesystem::path folder() const { return place_ / "day"; }
    void layOut(const Stored& stored) const;
    Stored found() const;

    domain::Result<actions::Laboratory> open() const {
        return actions::Laboratory::openExisting(folder(), clock_);
    }
    /// Opens the records with the program's own code and looks at all of them.
    Verdict judge() const;
    /// How many steps took effect; nullopt when one did without the one before it.
    static std::optional<std::size_t> firstOf(const Verdict& verdict);

private:
    void rehearse(const actions::Laboratory& laboratory, support::Floor& floor);

    support::HandClock clock_{};
    std::filesystem::path place_;
    Stored morning_{};
    std::vector<Step> steps_{};
};

}  // namespace faults
