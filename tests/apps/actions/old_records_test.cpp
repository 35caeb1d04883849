/// Records kept by the program of schema 4, which stored its events in formats 1 to 3: they open,
/// are whole, show what that program showed, and work goes on in them.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QTemporaryDir>
#include <fstream>
#include <nlohmann/json.hpp>

#include "apps/actions/floor.h"
#include "apps/actions/sign_in.h"
#include "apps/actions/verification.h"
#include "apps/actions/work.h"
#include "tests/support/hand_clock.h"

namespace {

namespace fs = std::filesystem;
using domain::OrderNumber;
using testing::IsEmpty;

constexpr std::int64_t kEntries = 207;
constexpr const char* kHead = "f9564d99";  // the first digits of what that program's verify printed
constexpr const char* kPassword = "westhaven by the sea";

template <typename E>
std::string codeOrEmpty(const std::optional<E>& value) {
    return value ? std::string{codeOf(*value)} : std::string{};
}

class OldLaboratory : public testing::Test {
protected:
    void SetUp() override {
        fs::copy_file(OLD_RECORDS "/schema_4.db", folder() / "records.db");
        clock_.goTo(*domain::Date::parse("2026-12-20"));
        auto opened = actions::Laboratory::open(folder(), clock_, storage::HashCost::Light);
        ASSERT_TRUE(opened) << opened.error().message;
        laboratory_.emplace(*std::move(opened));
    }
    fs::path folder() const { return folder_.path().toStdString(); }
    const actions::Laboratory& lab() const { return *laboratory_; }
    actions::Who signedIn(std::string_view code) {
        const auto person = *domain::PersonCode::parse(code);
        const auto session = actions::signIn(lab(), person, actions::Secret{kPassword}, {});
        EXPECT_TRUE(session) << (session ? "" : session.error().message);
        return {.person = person, .token = session ? session->token : std::string{}};
    }
    actions::Verification verified() const {
        const auto verification = actions::verify(lab());
        EXPECT_TRUE(verification) << (verification ? "" : verification.error().message);
        return *verification;
    }

    QTemporaryDir folder_;
    support::HandClock clock_;
    std::optional<actions::Laboratory> laboratory_;
};

TEST_F(OldLaboratory, IsWholeAndShowsWhatItShowed) {
    const auto verification = verified();
    EXPECT_THAT(verification.problems, IsEmpty());
    EXPECT_GE(verification.entries, kEntries);
    if (verification.entries == kEntries) {
        EXPECT_TRUE(verification.head.starts_with(kHead));
    }
    std::ifstream file{OLD_RECORDS "/schema_4_floor.json"};
    const auto told = nlohmann::json::parse(file)["orders"];
    EXPECT_EQ(verification.orders, static_cast<std::int64_t>(told.size()));
    for (const auto& line : told) {
        const auto word = [&line](const char* name) {
            return line[name].is_null() ? std::string{} : line[name].get<std::string>();
        };
        const std::string number = word("order");
        const auto found = actions::findOrders(lab(), number);
        ASSERT_TRUE(found) << found.error().message;
        ASSERT_EQ(found->size(), 1U) << number;
        const actions::FloorLine& now = found->front();
        EXPECT_EQ(now.description, word("description")) << number;
        EXPECT_EQ(std::string{codeOf(now.status)}, word("status")) << number;
        EXPECT_EQ(codeOrEmpty(now.stage), word("stage")) << number;
        EXPECT_EQ(std::string{codeOf(now.waitsFor)}, word("waits-for")) << number;
        EXPECT_EQ(now.holdUp, word("hold-up")) << number;
        EXPECT_EQ(now.due ? now.due->text() : "", word("due")) << number;
        EXPECT_EQ(now.receivedAt.text(), word("received")) << number;
        EXPECT_EQ(now.changedAt.text(), word("changed")) << number;
        EXPECT_EQ(now.patient, word("patient")) << number;
        EXPECT_EQ(now.prescriber, word("prescriber")) << number;
        const auto byName = actions::findOrders(lab(), now.patient);
        ASSERT_TRUE(byName);
        EXPECT_EQ(std::ranges::count(*byName, now.number, &actions::FloorLine::number), 1)
            << now.patient;
    }
}

TEST_F(OldLaboratory, GoesOn) {
    const auto technician = signedIn("technician-1");
    const auto lines = actions::floor(lab());
    ASSERT_TRUE(lines);
    int started = 0;
    for (const actions::FloorLine& line : *lines)
        if (line.stageStatus == domain::StageStatus::ToDo &&
            line.waitsFor == domain::WaitsFor::Bench)
            started += actions::start(lab(), {line.number}, {}, technician) ? 1 : 0;
    EXPECT_GT(started, 2);
    EXPECT_THAT(verified().problems, IsEmpty());
    EXPECT_GE(verified().entries, kEntries + started);
}

}  // namespace
