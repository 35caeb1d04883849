/// A purge that is killed: before every call that touches a file, and then repeated.
#include <gmock/gmock.h>

#include <QTemporaryDir>
#include <fstream>
#include <iterator>

#include "apps/actions/clock.h"
#include "apps/actions/orders.h"
#include "apps/actions/papers.h"
#include "apps/actions/verification.h"
#include "storage/order_register.h"
#include "storage/statement.h"
#include "storage/wiped_journal.h"
#include "tests/apps/actions/people_bench.h"
#include "tests/support/designs.h"
#include "tests/support/killed_before.h"
#include "tests/support/working_laboratory.h"

namespace {

namespace fs = std::filesystem;
using actions::Laboratory;
using actions_tests::saidBy;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

class PurgeKilled : public testing::Test {
protected:
    fs::path at(const char* name) const { return folder_.path().toStdString() / fs::path{name}; }
    domain::Result<Laboratory> open(const fs::path& lab) const {
        return Laboratory::open(lab, clock_, storage::HashCost::Light);
    }
    static std::string bytesBelow(const fs::path& folder) {
        std::string all;
        for (const auto& entry : fs::recursive_directory_iterator{folder}) {
            if (!entry.is_regular_file()) continue;
            std::ifstream file{entry.path(), std::ios::binary};
            all.append(std::istreambuf_iterator<char>{file}, {});
        }
        return all;
    }

    /// A delivered order whose term has run out, with a paper.
    void SetUp() override {
        const auto lab = open(at("lab"));
        ASSERT_TRUE(lab) << lab.error().message;
        support::Floor floor{*lab};
        number_ = floor.accepted(support::upperClassIIIMod1());
        ASSERT_EQ(saidBy(actions::flag(*lab, *number_, domain::FlagReason::Other, "a note",
                                       floor.as(support::kMaker))),
                  "");
        ASSERT_EQ(saidBy(actions::answer(*lab, *number_, {.words = "an answer"},
                                         floor.as(support::kManager))),
                  "");
        floor.deliver(*number_);
        clock_.goTo(*domain::Date::parse("2036-11-27"));
        manager_ = floor.as(support::kManager);
        ASSERT_EQ(saidBy(actions::confirmDate(*lab, lab->today(), *manager_)), "");
        const auto paper =
            actions::print(*lab, *number_, actions::Paper::PrescriptionSheet, {}, *manager_);
        ASSERT_TRUE(paper) << paper.error().message;
        storage::Statement rows{lab->records().database(),
                                storage::Sql{"SELECT ciphertext FROM sealed_text"}};
        for (rows.run(); rows.next();) sealed_.push_back(rows.bytes("ciphertext").toStdString());
        ASSERT_GE(sealed_.size(), 4U);
    }
    std::string purge(const fs::path& lab) const {
        const auto opened = open(lab);
        return opened ? saidBy(actions::purge(*opened, *number_, *manager_))
                      : opened.error().message;
    }
    bool isPurged(const fs::path& lab) const {
        const auto opened = open(lab);
        EXPECT_TRUE(opened) << saidBy(opened);
        const auto problems = actions::verify(*opened);
        EXPECT_TRUE(problems) << saidBy(problems);
        EXPECT_THAT(problems->problems, IsEmpty());
        return (*storage::loadOrder(opened->records(), *number_))->purged;
    }
    void expectNothingLeft(const fs::path& lab) const {
        const std::string bytes = bytesBelow(lab);
        for (const std::string& text : sealed_) EXPECT_TRUE(bytes.find(text) == std::string::npos);
        EXPECT_THAT(bytes, Not(HasSubstr("%PDF")));
        EXPECT_FALSE(storage::hasUnwipedJournal(lab / "records.db"));
    }

    support::HandClock clock_;
    QTemporaryDir folder_;
    std::optional<domain::OrderNumber> number_;
    std::optional<actions::Who> manager_;
    std::vector<std::string> sealed_;
};

TEST_F(PurgeKilled, LeavesNothingWhenItIsNot) {
    ASSERT_THAT(bytesBelow(at("lab")), HasSubstr("%PDF"));
    EXPECT_EQ(purge(at("lab")), "");
    EXPECT_TRUE(isPurged(at("lab")));
    expectNothingLeft(at("lab"));
    EXPECT_THAT(purge(at("lab")), HasSubstr("purged already"));
}

TEST_F(PurgeKilled, LeavesTheWholeOrAPurgeThatIsCompletedWhenItIsRepeated) {
    int kills = 0;
    int purged = 0;
    int unwiped = 0;
    for (int call = 1; call < 10'000; ++call) {
        const fs::path lab = at("copy");
        fs::remove_all(lab);
        fs::copy(at("lab"), lab, fs::copy_options::recursive);
        const bool killed = support::killedBefore(call, [&] {
            if (!purge(lab).empty()) _exit(1);
        });
        if (!killed) break;
        ++kills;
        // Kept after the commit, to be overwritten: cut off, its bytes would stay on the disk.
        unwiped += storage::hasUnwipedJournal(lab / "records.db") ? 1 : 0;
        const bool done = isPurged(lab);
        purged += done ? 1 : 0;
        const std::string again = purge(lab);
        if (done)
            EXPECT_THAT(again, HasSubstr("purged already")) << call;
        else
            EXPECT_EQ(again, "") << call;
        EXPECT_TRUE(isPurged(lab)) << call;
        expectNothingLeft(lab);
        if (HasFailure()) break;
    }
    std::cout << kills << " kills, " << purged << " after the commit, " << unwiped
              << " with a journal that was not overwritten yet\n";
    EXPECT_GT(kills, 20);
    EXPECT_GT(purged, 3);
    EXPECT_LT(purged, kills);
    EXPECT_GT(unwiped, 1);
}

}  // namespace
