// What a checkpoint finds that the records themselves cannot show.
#include <gmock/gmock.h>

#include <filesystem>

#include "apps/actions/access.h"
#include "apps/actions/checkpoints.h"
#include "storage/access_log.h"
#include "storage/signature.h"
#include "tests/apps/actions/floor_bench.h"

namespace {

namespace fs = std::filesystem;
using domain::AccessKind;
using support::kManager;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

class Checkpoints : public actions_tests::FloorBench {
protected:
    actions::MadeCheckpoint made() {
        auto made = actions::makeCheckpoint(lab(), {}, floor_.as(kManager));
        EXPECT_TRUE(made) << (made ? "" : made.error().message);
        return made ? *std::move(made) : actions::MadeCheckpoint{};
    }
    std::vector<std::string> against(const fs::path& file) const {
        const auto verified = actions::verifyAgainst(lab(), file, {});
        return verified ? verified->problems : std::vector{verified.error().message};
    }
    static std::string textOf(const fs::path& file) {
        std::ifstream stream{file, std::ios::binary};
        return {std::istreambuf_iterator<char>{stream}, {}};
    }
    /// What the records say otherwise than a checkpoint that names other heads.
    std::vector<std::string> differing(const storage::Checkpoint& checkpoint) const {
        const auto key = actions::signingKeyOf(lab());
        const auto found = storage::checkpointDifferences(lab().records(), checkpoint, *key);
        return found ? *found : std::vector{found.error().message};
    }
};

TEST_F(Checkpoints, HoldWhileTheRecordsGoOn) {
    const auto checkpoint = made();
    EXPECT_THAT(against(checkpoint.file), IsEmpty());
    castFramework();
    EXPECT_THAT(against(checkpoint.file), IsEmpty());
    EXPECT_TRUE(fs::exists(checkpoint.paper));
    const auto& key = checkpoint.checkpoint.publicKey;
    EXPECT_TRUE(actions::verifyAgainst(lab(), checkpoint.file, key));
    EXPECT_THAT(
        actions_tests::saidBy(actions::verifyAgainst(lab(), checkpoint.file, std::string(64, 'a'))),
        HasSubstr("signed by another key than the one given"));
}

TEST_F(Checkpoints, FindYesterdaysFileThatWasPutBack) {
    castFramework();
    const fs::path file = lab().records().file();
    const fs::path kept = folder() / "yesterday.db";
    fs::copy_file(file, kept);
    clock_.letPass(60);  // who signs in again is in the access log
    floor_.logged(support::lowerClassI());
    const auto checkpoint = made();
    fs::copy_file(kept, file, fs::copy_options::overwrite_existing);
    auto again = actions::Laboratory::openExisting(folder(), clock_);
    ASSERT_TRUE(again) << again.error().message;
    ASSERT_THAT(actions::verify(*again)->problems, IsEmpty()) << "true by itself";
    const auto verified = actions::verifyAgainst(*again, checkpoint.file, {});
    ASSERT_TRUE(verified);
    EXPECT_THAT(verified->problems,
                ElementsAre(HasSubstr("an older state of the records was put back")));
}

TEST_F(Checkpoints, TellACutTailFromARewrittenHistory) {
    const storage::Checkpoint now = made().checkpoint;
    EXPECT_THAT(differing(now), IsEmpty());
    storage::Checkpoint longer = now;
    longer.ledger.entries += 3;
    EXPECT_THAT(differing(longer),
                ElementsAre(HasSubstr("the tail of the ledger was cut: 3 entries")));
    storage::Checkpoint other = now;
    other.ledger.hash = std::string(64, 'e');
    EXPECT_THAT(differing(other), ElementsAre(HasSubstr("the history was rewritten: entry")));
    storage::Checkpoint log = now;
    log.access.hash = std::string(64, 'e');
    EXPECT_THAT(differing(log), ElementsAre(HasSubstr("of the access log is not the one")));
    storage::Checkpoint stranger = now;
    stranger.publicKey = storage::publicKeyOf(storage::newSigningSeed());
    EXPECT_THAT(differing(stranger), ElementsAre(HasSubstr("signed by another key")));
}

TEST_F(Checkpoints, AreRefusedWithAnyByteAltered) {
    const auto checkpoint = made();
    const std::string sound = textOf(checkpoint.file);
    EXPECT_EQ(*storage::readCheckpoint(sound), checkpoint.checkpoint);
    for (std::size_t at = 0; at < sound.size(); ++at) {
        std::string altered = sound;
        altered[at] = altered[at] == '0' ? '1' : '0';
        EXPECT_FALSE(storage::readCheckpoint(altered)) << at;
        EXPECT_FALSE(storage::readCheckpoint(sound.substr(0, at))) << at;
    }
    EXPECT_FALSE(storage::readCheckpoint(sound + "\n"));
}

TEST_F(Checkpoints, WriteOverNothing) {
    const auto checkpoint = made();
    const auto again = actions::makeCheckpoint(lab(), lab().records().file(), floor_.as(kManager));
    EXPECT_FALSE(again);
    EXPECT_FALSE(actions::makeCheckpoint(lab(), checkpoint.file, floor_.as(kManager)))
        << "it says something else by now";
}

TEST_F(Checkpoints, ArePrintedAsTheyStandInTheirFile) {
    const auto checkpoint = made();
    std::vector<domain::PaperPrinted> printed;
    ASSERT_TRUE(storage::AccessLog{lab().records()}.visit([&](const auto& entry) {
        if (const auto* paper = std::get_if<domain::PaperPrinted>(&entry.what))
            printed.push_back(*paper);
    }));
    ASSERT_EQ(printed.size(), 1U);
    EXPECT_EQ(printed.front().paper, "day-sheet");
    EXPECT_EQ(printed.front().digest.size(), 64U);
}

TEST_F(Checkpoints, ViewingTheNamesOfAnOrderIsNotedOnceADay) {
    const auto number = castFramework();
    const auto views = [&] {
        int count = 0;
        EXPECT_TRUE(storage::AccessLog{lab().records()}.visit([&](const auto& entry) {
            count += kindOf(entry) == AccessKind::IdentityViewed ? 1 : 0;
        }));
        return count;
    };
    const auto who = floor_.as(kManager);
    const auto entries = *storage::Ledger{lab().records()}.entries();
    for (int i = 0; i < 3; ++i) EXPECT_TRUE(actions::noteViewed(lab(), who, {number}));
    EXPECT_EQ(views(), 1);
    EXPECT_TRUE(actions::noteViewed(lab(), floor_.as(support::kMaker), {number}));
    EXPECT_EQ(views(), 2);
    clock_.letPass(support::HandClock::kDay);
    EXPECT_TRUE(actions::noteViewed(lab(), floor_.as(kManager), {number}));
    EXPECT_EQ(views(), 3);
    EXPECT_EQ(*storage::Ledger{lab().records()}.entries(), entries)
        << "the ledger does not grow by reading";
    EXPECT_THAT(problems(), IsEmpty());
}

}  // namespace
