/// What each thing a person asks of the records costs: time, memory, statements, commits, syncs.
#pragma once

#include <filesystem>

#include "tests/bench/figures.h"

namespace bench {

/// Everything but what is measured in a process of its own. Changes the records: orders are worked
/// on and logged.
std::vector<Figure> measureActions(const std::filesystem::path& folder);

/// Does one thing many times, for a profiler: "start" (each order in work can be started once),
/// "log", "view", "floor". An exit code.
int repeat(const std::string& what, const std::filesystem::path& folder, int times);

/// What is measured in a process of its own, for the memory it takes: "open", "verify", "rebuild".
/// Prints the line readAlone() reads; an exit code.
int measureAlone(const std::string& what, const std::filesystem::path& folder);
/// Starts `program alone WHAT FOLDER` and reads what it measured.
std::vector<Figure> readAlone(const std::string& program, const std::string& what,
                              const std::filesystem::path& folder);

/// Whether the time of what should grow by the logarithm of the number of orders did so, between
/// the fewest and the most orders measured.
std::vector<Figure> growth(const std::vector<Figure>& figures);

}  // namespace bench
