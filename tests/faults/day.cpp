#include "tests/faults/day.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <fstream>
#include <set>

#include "apps/actions/orders.h"
#include "apps/actions/verification.h"
#include "storage/integrity.h"
#include "storage/ledger.h"
#include "tests/support/designs.h"
#include "tests/support/numbered_key.h"

namespace faults {
namespace {

namespace fs = std::filesystem;
using actions::Laboratory;
using actions::Outcome;
using domain::Result;

constexpr const char* kFileNames[] = {storage::kRecordsFile.data(), "records.db-journal"};

/// In memory where there is memory that looks like a disk: a state is written and read at once.
fs::path makePlace() {
    const fs::path memory{"/dev/shm"};
    const bool isFit = ::access(memory.c_str(), W_OK | X_OK) == 0;
    std::string name = ((isFit ? memory : fs::temp_directory_path()) / "faults-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error{"no folder " + name};
    return name;
}

std::string bytesOf(const fs::path& file) {
    std::string bytes(fs::file_size(file), '\0');
    std::ifstream{file, std::ios::binary}.read(bytes.data(),
                                               static_cast<std::streamsize>(bytes.size()));
    return bytes;
}

Verdict judged(Verdict::State state, std::string flaw) {
    return {.state = state, .flaw = std::move(flaw)};
}

}  // namespace

Day::Day() : place_{makePlace()} {
    const auto laboratory = Laboratory::open(folder(), clock_, storage::HashCost::Light);
    EXPECT_TRUE(laboratory) << (laboratory ? "" : laboratory.error().message);
    // The sessions of this morning are those the steps are done in.
    support::Floor floor{*laboratory};
    for (const auto person : {support::kManager, support::kMaker}) floor.as(person);
    morning_ = found();
    morning_.of(Part::Journal) = {};
    rehearse(*laboratory, floor);
}

Day::~Day() {
    std::error_code ignored;
    fs::remove_all(place_, ignored);
}

void Day::rehearse(const Laboratory& laboratory, support::Floor& floor) {
    const auto step = [&](actions::Who who, auto action) {
        who.key = support::numberedKey(static_cast<int>(steps_.size()) + 1);
        steps_.push_back(
            {who.key, [who, action](const Laboratory& at) { return action(at, who); }});
        const auto outcome = steps_.back().run(laboratory);
        EXPECT_TRUE(outcome) << (outcome ? "" : outcome.error().message);
        return outcome->order.number;
    };
    const auto manager = floor.as(support::kManager);
    const auto maker = floor.as(support::kMaker);
    for (const auto& prescription : {support::upperClassIIIMod1(), support::lowerClassI()}) {
        const auto number = step(manager, [=](const Laboratory& at, const actions::Who& who) {
            return actions::log(at, prescription, who);
        });
        step(manager, [=](const Laboratory& at, const actions::Who& who) {
            return actions::accept(at, number, "agreed by telephone", who);
        });
        constexpr int kStages = 3;
        for (int stage = 0; stage < kStages; ++stage) {
            step(maker, [=](const Laboratory& at, const actions::Who& who) {
                return actions::start(at, {number}, {}, who);
            });
            step(maker, [=, records = floor.records(number)](const Laboratory& at,
                                                             const actions::Who& who) {
                return actions::record(at, number, {}, records, who);
            });
            step(maker, [=](const Laboratory& at, const actions::Who& who) {
                return actions::finish(at, {number}, {}, who);
            });
        }
        step(manager, [=](const Laboratory& at, const actions::Who& who) {
            return actions::flag(at, number, domain::FlagReason::CastDamaged, "a cusp is broken",
                                 who);
        });
        step(manager, [=](const Laboratory& at, const actions::Who& who) {
            return actions::answer(at, number, {.words = "a new cast is on its way"}, who);
        });
    }
}

void Day::layOut(const Stored& stored) const {
    for (const Part part : kParts) {
        const fs::path file = folder() / kFileNames[static_cast<std::size_t>(part)];
        const StoredFile& content = stored.of(part);
        if (!content.isThere) {
            fs::remove(file);
            continue;
        }
        std::ofstream{file, std::ios::binary}.write(
            content.bytes.data(), static_cast<std::streamsize>(content.bytes.size()));
    }
}

Stored Day::found() const {
    Stored stored;
    for (const Part part : kParts) {
        const fs::path file = folder() / kFileNames[static_cast<std::size_t>(part)];
        if (fs::exists(file)) stored.of(part) = {true, bytesOf(file)};
    }
    return stored;
}

Verdict Day::judge() const {
    const auto laboratory = open();
    if (!laboratory) return judged(Verdict::State::NotOpened, laboratory.error().message);
    const auto engine = storage::engineProblems(laboratory->records());
    if (!engine) return judged(Verdict::State::Corrupt, engine.error().message);
    if (!engine->empty()) return judged(Verdict::State::Corrupt, engine->front());
    const auto verified = actions::verify(*laboratory);
    if (!verified) return judged(Verdict::State::Torn, verified.error().message);
    if (!verified->problems.empty())
        return judged(Verdict::State::Torn, verified->problems.front());

    std::set<std::string> keys;
    const auto visited =
        storage::Ledger{laboratory->records()}.visitAll([&](const storage::LedgerEvent& event) {
            keys.insert(std::visit([](const auto& each) { return each.key; }, event));
        });
    if (!visited) return judged(Verdict::State::Corrupt, visited.error().message);
    Verdict verdict{.entries = verified->entries};
    for (const Step& step : steps_) verdict.kept.push_back(keys.contains(step.key));
    return verdict;
}

std::optional<std::size_t> Day::firstOf(const Verdict& verdict) {
    const auto end = std::ranges::find(verdict.kept, false);
    if (std::find(end, verdict.kept.end(), true) != verdict.kept.end()) return {};
    return static_cast<std::size_t>(end - verdict.kept.begin());
}

}  // namespace faults
