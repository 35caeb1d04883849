#include "tests/concurrency/history.h"

#include <fstream>
#include <sstream>

#include "apps/actions/verification.h"
#include "storage/ledger.h"

namespace concurrency {
namespace {

using domain::Event;

/// An order as its events tell it, knowing nothing of how they were decided.
struct Told {
    std::int64_t version{};
    std::int64_t count{};
    bool inHand{};
};

class Judge {
public:
    explicit Judge(const History& history) : history_{history} {}

    void hear(const Event& event) {
        const std::string order = event.order.text();
        Told& told = told_[order];
        if (event.version != told.version + 1)
            fault(event, "version " + std::to_string(told.version + 1) + " is left out");
        told.version = event.version;
        ++keys_[event.key];
        if (const auto* recorded = std::get_if<domain::Recorded>(&event.what))
            for (const domain::StageRecord& record : recorded->records)
                if (const auto* value = std::get_if<domain::BenchValue>(&record))
                    hear(event, *value);
        if (std::holds_alternative<domain::StageStarted>(event.what)) turn(event, told, true);
        if (std::holds_alternative<domain::StageDone>(event.what)) turn(event, told, false);
        if (std::holds_alternative<domain::Redone>(event.what)) told.inHand = false;
        attempted(event);
    }
    Judgement judged() {
        for (const auto& [key, attempt] : history_) {
            const auto kept = keys_.find(key);
            const int times = kept == keys_.end() ? 0 : kept->second;
            if (attempt.result == "ok") {
                ++judgement_.acknowledged;
                if (times != 1) fault(key + ": acknowledged, and in the ledger", times);
            } else if (attempt.result == "fail") {
                ++judgement_.refused;
                if (times != 0) fault(key + ": refused, and in the ledger", times);
            } else {
                ++judgement_.unknown;
                if (times > 1) fault(key + ": in the ledger", times);
            }
        }
        return std::move(judgement_);
    }

private:
    void fault(const Event& event, const std::string& says) {
        judgement_.otherFaults.push_back("order " + event.order.text() + ", version " +
                                         std::to_string(event.version) + ": " + says);
    }
    void fault(const std::string& says, int times) {
        judgement_.otherFaults.push_back(says + ' ' + std::to_string(times) + " times");
    }
    void hear(const Event& event, const domain::BenchValue& value) {
        if (value.what != kCount) return;
        Told& told = told_[event.order.text()];
        ++judgement_.counted;
        if (value.value != std::to_string(++told.count))
            judgement_.lostUpdates.push_back(
                "order " + event.order.text() + ", version " + std::to_string(event.version) +
                ": number " + value.value + " at place " + std::to_string(told.count));
    }
    void turn(const Event& event, Told& told, bool begins) {
        ++judgement_.stages;
        if (told.inHand == begins) fault(event, begins ? "started twice" : "done twice");
        told.inHand = begins;
    }
    /// The history must know it, and whoever was told a version was told this one.
    void attempted(const Event& event) {
        const auto attempt = history_.find(event.key);
        if (attempt == history_.end()) return;
        if (attempt->second.order != event.order.text()) fault(event, "another order was meant");
        if (attempt->second.result == "ok" && attempt->second.version != event.version)
            fault(event, "version " + std::to_string(attempt->second.version) + " was told");
    }

    const History& history_;
    std::map<std::string, Told> told_{};
    std::map<std::string, int> keys_{};
    Judgement judgement_{};
};

}  // namespace

bool read(const std::filesystem::path& file, History& history) {
    std::ifstream lines{file};
    if (!lines) return false;
    for (std::string line; std::getline(lines, line);) {
        std::istringstream words{line};
        std::string what;
        std::string key;
        words >> what >> key;
        Attempt& attempt = history[key];
        if (what == "invoke")
            words >> attempt.order >> attempt.deed >> attempt.seen;
        else
            words >> attempt.result >> attempt.version;
    }
    return true;
}

Judgement judge(const actions::Laboratory& laboratory, const History& history) {
    Judge judge{history};
    const auto visited =
        storage::Ledger{laboratory.records()}.visit([&](const Event& event) { judge.hear(event); });
    Judgement judgement = judge.judged();
    if (!visited) judgement.otherFaults.push_back(visited.error().message);
    const auto verified = actions::verify(laboratory);
    if (!verified) {
        judgement.otherFaults.push_back(verified.error().message);
        return judgement;
    }
    for (const std::string& problem : verified->problems) judgement.otherFaults.push_back(problem);
    return judgement;
}

}  // namespace concurrency
