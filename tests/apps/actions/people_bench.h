/// A laboratory with a clock set by hand, and what its access log says about who was refused.
#pragma once

#include <QTemporaryDir>
#include <fstream>
#include <iterator>

#include "storage/access_log.h"
#include "storage/ledger.h"
#include "tests/support/hand_clock.h"
#include "tests/support/people.h"

namespace actions_tests {

using support::HandClock;

class PeopleBench : public testing::Test {
protected:
    std::filesystem::path folder() const { return folder_.path().toStdString(); }
    const actions::Laboratory& lab() const { return *laboratory_; }

    std::vector<domain::WorkshopEvent> events() const {
        const auto all = storage::Ledger{lab().records()}.workshopEvents();
        EXPECT_TRUE(all);
        return all ? *all : std::vector<domain::WorkshopEvent>{};
    }
    /// "sign-in: wrong password, failure 1 of 5" of each refusal, in order.
    std::vector<std::string> refusals() const {
        std::vector<std::string> all;
        EXPECT_TRUE(storage::AccessLog{lab().records()}.visit([&](const auto& entry) {
            if (const auto* denied = std::get_if<domain::AccessDenied>(&entry.what))
                all.push_back(denied->command + ": " + denied->why);
        }));
        return all;
    }
    /// Every byte of the records.
    std::string bytes() const {
        std::ifstream file{lab().records().file(), std::ios::binary};
        return {std::istreambuf_iterator<char>{file}, {}};
    }

    HandClock clock_;

private:
    QTemporaryDir folder_;
    domain::Result<actions::Laboratory> laboratory_{
        actions::Laboratory::open(folder(), clock_, storage::HashCost::Light)};
};

inline domain::PersonCode person(std::string_view code) { return support::codeOfPerson(code); }

/// "" when it was done, else the refusal.
template <typename T>
std::string saidBy(const domain::Result<T>& result) {
    return result ? std::string{} : result.error().message;
}

}  // namespace actions_tests
