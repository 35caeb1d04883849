/// Times what a person waits for: reading a prescription, examining it, deriving its class.

#include <benchmark/benchmark.h>

#include <fstream>
#include <sstream>
#include <string>

#include "domain/design/design.h"
#include "domain/design/support.h"
#include "domain/rules/examine.h"
#include "storage/files/prescription_file.h"
#include "tests/bench/counted_memory.h"
#include "tests/support/designs.h"

namespace {

using namespace domain;

struct Textbook {
    const char* name;
    Prescription (*make)();
};
constexpr Textbook kDesigns[] = {
    {"upperClassIIIMod1", support::upperClassIIIMod1},
    {"lowerClassI", support::lowerClassI},
    {"upperClassIIMod1", support::upperClassIIMod1},
    {"lowerClassIIMod1", support::lowerClassIIMod1},
    {"upperClassIV", support::upperClassIV},
    {"lowerClassIIIMod1", support::lowerClassIIIMod1},
    {"interimUpper", support::interimUpper},
    {"nothing", [] { return Prescription{}; }},  // nearly every row finds something
};

std::string demo(const std::string& name) {
    std::ostringstream text;
    text << std::ifstream{DEMO_FOLDER "/" + name, std::ios::binary}.rdbuf();
    return text.str();
}

/// Times the call and says how much of the heap one call takes.
template <typename Call>
void timed(benchmark::State& state, const Call& call) {
    const auto before = bench::takenSoFar();
    benchmark::DoNotOptimize(call());
    const auto after = bench::takenSoFar();
    for ([[maybe_unused]] const auto turn : state) benchmark::DoNotOptimize(call());
    state.counters["allocations"] = static_cast<double>(after.blocks - before.blocks);
    state.counters["bytes"] = static_cast<double>(after.bytes - before.bytes);
}

void registerDesign(const Textbook& design) {
    const std::string name = design.name;
    const auto onDesign = [&](const char* what, auto call) {
        benchmark::RegisterBenchmark((what + ('/' + name)).c_str(),
                                     [make = design.make, call](benchmark::State& state) {
                                         const Prescription prescription = make();
                                         timed(state, [&] { return call(prescription); });
                                     });
    };
    onDesign("examine", [](const Prescription& prescription) {
        return examine(prescription, support::examinationDay());
    });
    onDesign("descriptionOf",
             [](const Prescription& prescription) { return descriptionOf(prescription); });
    onDesign("supportOf", [](const Prescription& prescription) { return supportOf(prescription); });
    onDesign("fulcrumOf", [](const Prescription& prescription) { return fulcrumOf(prescription); });
    onDesign("classify", [](const Prescription& prescription) { return classify(prescription); });
}

void classifyPlaces(benchmark::State& state) {
    const ArchPlaces places = placesOf(support::upperClassIIMod1());
    timed(state, [&] { return classify(places); });
}
BENCHMARK(classifyPlaces);

void readDemo(benchmark::State& state) {
    const std::string text = demo("upper-iii-mod-1.json");
    if (!storage::readPrescription(text, "demo.json")) state.SkipWithError("the demo is not read");
    timed(state, [&] { return storage::readPrescription(text, "demo.json"); });
    state.SetBytesProcessed(static_cast<std::int64_t>(state.iterations()) *
                            static_cast<std::int64_t>(text.size()));
}
BENCHMARK(readDemo);

void writeDemo(benchmark::State& state) {
    const Prescription prescription = support::upperClassIIIMod1();
    timed(state, [&] { return storage::writePrescription(prescription); });
}
BENCHMARK(writeDemo);

}  // namespace

int main(int argc, char** argv) {
    for (const Textbook& design : kDesigns) registerDesign(design);
    benchmark::Initialize(&argc, argv);
    if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 2;
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
