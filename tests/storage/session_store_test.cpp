#include "storage/session_store.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/storage/records.h"

namespace {

using domain::Instant;
using storage::KeptSession;
using storage::SessionStore;
using storage::Transaction;
using support::minute;
using support::person;
using testing::ElementsAre;
using testing::Pair;

class Sessions : public testing::Test {
protected:
    /// Runs a step in a transaction of its own.
    template <typename Step>
    auto in(Step step) {
        Transaction work = *Transaction::begin(*records_);
        auto done = step(work);
        EXPECT_TRUE(done) << (done ? "" : done.error().message);
        EXPECT_TRUE(work.commit());
        return *std::move(done);
    }
    void open(const std::string& digest, const KeptSession& session) {
        in([&](Transaction& work) { return store_.open(work, digest, session); });
    }
    std::optional<Instant> ended(const std::string& digest) {
        return (**store_.find(digest)).ended;
    }

    support::Folder folder_;
    std::unique_ptr<storage::Connection> records_{support::opened(folder_.path())};
    SessionStore store_{*records_};
};

KeptSession session(const char* code, const char* station, int at) {
    return {
        .person = person(code), .station = station, .opened = minute(at), .lastUsed = minute(at)};
}

TEST_F(Sessions, AreFoundByTheDigestOfTheirToken) {
    open("d1", session("JT", "wax-1", 1));
    EXPECT_EQ(*store_.find("d1"), session("JT", "wax-1", 1));
    EXPECT_EQ(*store_.find("d2"), std::nullopt);
}

TEST_F(Sessions, AreNeverUsedBackInTime) {
    open("d1", session("JT", "", 5));
    for (const int at : {9, 3}) {
        in([&](Transaction& work) { return store_.touch(work, "d1", minute(at)); });
        EXPECT_EQ((**store_.find("d1")).lastUsed, minute(9));
    }
}

TEST_F(Sessions, EndOnceAndStayInTheRecords) {
    open("d1", session("JT", "", 1));
    for (const int at : {2, 3})
        in([&](Transaction& work) { return store_.end(work, "d1", minute(at)); });
    EXPECT_EQ(ended("d1"), minute(2));
}

TEST_F(Sessions, EndByPersonAndByStation) {
    open("d1", session("JT", "wax-1", 1));
    open("d2", session("JT", "", 1));
    open("d3", session("MK", "wax-1", 1));
    open("d4", session("MK", "wax-2", 1));
    in([&](Transaction& work) { return store_.endAllOf(work, person("JT"), minute(4)); });
    EXPECT_EQ(ended("d1"), minute(4));
    EXPECT_EQ(ended("d2"), minute(4));
    EXPECT_EQ(ended("d3"), std::nullopt);
    in([&](Transaction& work) { return store_.endAllAt(work, "wax-1", minute(5)); });
    EXPECT_EQ(ended("d1"), minute(4));
    EXPECT_EQ(ended("d3"), minute(5));
    EXPECT_EQ(ended("d4"), std::nullopt);
}

TEST_F(Sessions, EndWhenTheyWereIdle) {
    open("d1", session("JT", "", 1));
    open("d2", session("MK", "", 6));
    const auto idle =
        in([&](Transaction& work) { return store_.endIdle(work, minute(6), minute(20)); });
    EXPECT_EQ(idle, 1);
    EXPECT_EQ(ended("d1"), minute(20));
    EXPECT_EQ(ended("d2"), std::nullopt);
}

TEST_F(Sessions, SayWhenEachPersonWasHereLast) {
    open("d1", session("JT", "", 1));
    open("d2", session("JT", "", 4));
    open("d3", session("MK", "", 2));
    EXPECT_THAT(*store_.lastUsed(),
                ElementsAre(Pair(person("JT"), minute(4)), Pair(person("MK"), minute(2))));
}

}  // namespace
