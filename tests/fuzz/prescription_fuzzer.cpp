/// The fuzzer: Clang's libFuzzer gives bytes, a fault ends the program, and the bytes are kept.

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <optional>
#include <string>
#include <vector>

#include "storage/files/prescription_file.h"
#include "tests/fuzz/faults.h"
#include "tests/rules/population.h"

namespace {

using Random = population::Chance;

std::size_t below(std::size_t limit, Random& random) { return random() % limit; }

template <typename List>
const auto& oneOf(const List& list, Random& random) {
    return list[below(list.size(), random)];
}

struct Span {
    std::size_t at{};
    std::size_t length{};
};

/// The words of a JSON text with their quotes.
std::vector<Span> quotedWords(std::string_view text) {
    std::vector<Span> words;
    for (auto open = text.find('"'); open != std::string_view::npos;) {
        const auto close = text.find('"', open + 1);
        if (close == std::string_view::npos) break;
        words.push_back({open, close - open + 1});
        open = text.find('"', close + 1);
    }
    return words;
}

using Words = std::vector<std::string>;

Words wordsIn(std::string_view text) {
    Words words;
    for (const auto& [at, length] : quotedWords(text)) words.emplace_back(text.substr(at, length));
    return words;
}

/// Words that can stand in each other's place: the alternatives of every field, amounts, teeth.
const std::vector<Words>& kinds() {
    static const std::vector<Words> kKinds = [] {
        std::vector<Words> kinds;
        const std::string schema = storage::prescriptionSchema();
        constexpr std::string_view kAlternatives = "\"enum\": [";
        for (auto at = schema.find(kAlternatives); at != std::string::npos;
             at = schema.find(kAlternatives, at + 1)) {
            const auto begin = at + kAlternatives.size();
            kinds.push_back(wordsIn(schema.substr(begin, schema.find(']', begin) - begin)));
        }
        for (const char* unit : {" mm\"", " deg\"", " %\"", " min\""}) {
            Words& amounts = kinds.emplace_back();
            for (const char* amount : {"0", "0.001", "0.1", "0.254", "0.5", "1", "1.5", "2", "4",
                                       "6", "8", "10", "15", "35", "90", "100", "180"})
                amounts.push_back('"' + std::string{amount} + unit);
        }
        Words& teeth = kinds.emplace_back();
        for (int tooth = 1; tooth <= 48; ++tooth)
            teeth.push_back('"' + std::to_string(tooth) + '"');
        kinds.push_back({"\"2026-11-20\"", "\"2026-11-25\"", "\"2026-11-26\"", "\"2026-12-18\""});
        return kinds;
    }();
    return kKinds;
}

/// Another word of its kind; any word the format knows where it has none.
std::string wordFor(const std::string& word, Random& random) {
    std::vector<const Words*> own;
    for (const Words& kind : kinds())
        for (const std::string& each : kind)
            if (each == word) own.push_back(&kind);
    return oneOf(own.empty() ? oneOf(kinds(), random) : *oneOf(own, random), random);
}

void replaceWord(std::string& text, Random& random) {
    const auto words = quotedWords(text);
    if (words.empty()) return;
    const auto& [at, length] = oneOf(words, random);
    text.replace(at, length, wordFor(text.substr(at, length), random));
}

void turnTruth(std::string& text, Random& random) {
    const bool was = below(2, random) == 0;
    const std::string_view word = was ? ": true" : ": false";
    auto at = text.find(word, below(text.size() + 1, random));
    if (at == std::string::npos) at = text.find(word);
    if (at != std::string::npos) text.replace(at, word.size(), was ? ": false" : ": true");
}

/// A field or an element goes; written files have one a line.
void dropLine(std::string& text, Random& random) {
    const auto end = text.find(",\n", below(text.size() + 1, random));
    if (end == std::string::npos) return;
    const auto begin = text.rfind('\n', end);
    if (begin != std::string::npos) text.erase(begin, end + 1 - begin);
}

std::string designByChance(Random& random) {
    std::optional<domain::Prescription> design;
    while (!design) design = population::cleanDesign(random);
    for (auto faults = below(4, random); faults > 0; --faults)
        oneOf(population::faults(), random).plant(*design, random);
    return storage::writePrescription(*design);
}

}  // namespace

// NOLINTBEGIN(readability-identifier-naming): the names are Clang's
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

/// Changed bytes hardly ever make another prescription. Mostly, therefore, a word of the file gives
/// way to another of its kind, a field goes, or all of it gives way to a new design.
std::size_t LLVMFuzzerCustomMutator(std::uint8_t* bytes, std::size_t size, std::size_t most,
                                    unsigned int seed) {
    Random random{seed};
    std::string text{bytes, bytes + size};
    switch (below(16, random)) {
        case 0:
        case 1:
        case 2:
            return LLVMFuzzerMutate(bytes, size, most);
        case 3:
            text = designByChance(random);
            break;
        case 4:
        case 5:
            turnTruth(text, random);
            break;
        case 6:
        case 7:
        case 8:
            dropLine(text, random);
            break;
        default:
            replaceWord(text, random);
    }
    if (text.size() > most) return LLVMFuzzerMutate(bytes, size, most);
    std::ranges::copy(text, bytes);
    return text.size();
}
// NOLINTEND(readability-identifier-naming)
