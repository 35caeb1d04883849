#include "tests/faults/scoreboard.h"

#include <cstdlib>
#include <fstream>
#include <iostream>

namespace faults {

void scored(const Score& score) {
    std::cout << score.what << ": " << score.count << " tried, seed " << score.seed << ", "
              << score.failures << " failed; " << score.remark << std::endl;
    const char* board = std::getenv("FRAMEWRIGHT_FAULTS_BOARD");
    if (board == nullptr) return;
    std::ofstream{board, std::ios::app} << score.what << '\t' << score.count << '\t' << score.seed
                                        << '\t' << score.failures << '\t' << score.remark << '\n';
}

std::int64_t wanted(const char* name, std::int64_t usual) {
    const char* given = std::getenv(name);
    return given == nullptr ? usual : std::atoll(given);
}

}  // namespace faults
