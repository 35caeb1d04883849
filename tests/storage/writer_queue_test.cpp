/// Writers of the same records wait in turn.
#include "storage/writer_queue.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <atomic>
#include <fstream>
#include <thread>
#include <vector>

#include "tests/storage/records.h"

namespace {

using namespace std::chrono_literals;
using storage::WriterQueue;
using support::Folder;
using testing::Each;
using testing::Ge;

TEST(WriterQueue, LetsOneInAtATime) {
    const Folder folder;
    WriterQueue first{folder.file()};
    WriterQueue second{folder.file()};
    ASSERT_TRUE(first.enter(0ms));
    EXPECT_FALSE(second.enter(20ms));
    first.leave();
    EXPECT_TRUE(second.enter(2s));
    EXPECT_FALSE(first.enter(20ms));
    second.leave();
    EXPECT_TRUE(first.enter(2s));
}

TEST(WriterQueue, FreesTheTurnOfOneThatEnded) {
    const Folder folder;
    {
        WriterQueue gone{folder.file()};
        ASSERT_TRUE(gone.enter(0ms));
    }
    WriterQueue next{folder.file()};
    EXPECT_TRUE(next.enter(2s));
}

TEST(WriterQueue, HoldsNobodyUpWhereItsFileCannotBeMade) {
    const Folder folder;
    std::filesystem::create_directory(folder.path() / storage::kTurnFile);
    WriterQueue first{folder.file()};
    WriterQueue second{folder.file()};
    EXPECT_TRUE(first.enter(0ms));
    EXPECT_TRUE(second.enter(0ms));
}

/// Each of several writers asks again as soon as it is done, which is when one that sleeps between
/// its questions is overtaken by all others.
TEST(WriterQueue, ServesThoseWhoAskOftenAlike) {
    constexpr int kWriters = 8;
    constexpr int kTurns = 400;
    const Folder folder;
    std::atomic<int> turns{0};
    std::atomic<int> inside{0};
    std::atomic<bool> together{false};
    std::vector<int> served(kWriters);
    std::vector<std::thread> writers;
    for (int& own : served)
        writers.emplace_back([&] {
            WriterQueue queue{folder.file()};
            while (turns < kTurns) {
                if (!queue.enter(20s)) return;
                if (++inside != 1) together = true;
                ++own;
                ++turns;
                std::this_thread::sleep_for(1ms);
                --inside;
                queue.leave();
            }
        });
    for (std::thread& writer : writers) writer.join();
    EXPECT_FALSE(together);
    EXPECT_THAT(served, Each(Ge(kTurns / kWriters / 4)));
}

}  // namespace
