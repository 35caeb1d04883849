/// Many programs that write to one store at the same time.
#pragma once

#include <filesystem>

#include "tests/bench/figures.h"

namespace bench {

/// One of them: works on its orders until so many seconds after `start` (microseconds of the
/// monotonic clock). Prints "COUNT FAILED WORST" (milliseconds); an exit code.
int runWriter(const std::filesystem::path& folder, std::int64_t start, double seconds,
              const std::vector<std::string>& orders);

/// Eight at the same time against one alone, in a copy of the records in `source`.
std::vector<Figure> measureWriters(const std::string& program, const std::filesystem::path& source,
                                   const std::filesystem::path& scratch, const std::string& name);

}  // namespace bench
