/// The fuzzer: Clang's libFuzzer gives bytes, a fault ends the program, and the bytes are kept.

#include <cstdio>
#include <cstdlib>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "storage/files/prescription_file.h"
#include "tests/fuzz/faults.h"

namespace {

using Span = std::pair<std::size_t, std::size_t>;  ///< where a quoted word begins, and its length

std::vector<Span> quotedWords(std::string_view text) {
    std::vector<Span> words;
    for (auto open = text.find('"'); open != std::string_view::npos;) {
        const auto close = text.find('"', open + 1);
        if (close == std::string_view::npos) break;
        words.emplace_back(open, close - open + 1);
        open = text.find('"', close + 1);
    }
    return words;
}

/// Every word the file format knows, quotes included: fields, codes, units.
const std::vector<std::string>& knownWords() {
    static const std::vector<std::string> kWords = [] {
        const std::string schema = storage::prescriptionSchema();
        std::vector<std::string> words;
        for (const auto& [at, length] : quotedWords(schema))
            words.push_back(schema.substr(at, length));
        for (const char* amount :
             {"\"0 mm\"", "\"0.001 mm\"", "\"8 mm\"", "\"200 mm\"", "\"10 deg\"", "\"180 deg\"",
              "\"0 %\"", "\"0.1 %\"", "\"100 %\"", "\"0 min\"", "\"2026-11-25\"", "\"2026-11-26\""})
            words.emplace_back(amount);
        for (int tooth = 1; tooth <= 48; ++tooth)
            words.push_back('"' + std::to_string(tooth) + '"');
        return words;
    }();
    return kWords;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size);
extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* bytes, std::size_t size, std::size_t most);
extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* bytes, std::size_t size,
                                               std::size_t most, unsigned int seed);

int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    const std::string text{bytes, bytes + size};
    const std::string fault = fuzz::faultOf(text);
    if (fault.empty()) return 0;
    std::fprintf(stderr, "fault: %s\n", fault.c_str());
    std::abort();
}

/// Changed bytes hardly ever make another prescription. Three times in four, therefore, one word of
/// the file is replaced: by one the format knows, or by another of the same file.
std::size_t LLVMFuzzerCustomMutator(std::uint8_t* bytes, std::size_t size, std::size_t most,
                                    unsigned int seed) {
    std::minstd_rand random{seed};
    std::string text{bytes, bytes + size};
    const auto words = quotedWords(text);
    if (words.empty() || random() % 4 == 0) return LLVMFuzzerMutate(bytes, size, most);
    const auto& [at, length] = words[random() % words.size()];
    const auto& [otherAt, otherLength] = words[random() % words.size()];
    const std::string other = random() % 2 == 0 ? knownWords()[random() % knownWords().size()]
                                                : text.substr(otherAt, otherLength);
    text.replace(at, length, other);
    if (text.size() > most) return LLVMFuzzerMutate(bytes, size, most);
    std::copy(text.begin(), text.end(), bytes);
    return text.size();
}
