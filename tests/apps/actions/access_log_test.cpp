/// What the access log holds of looking, printing and carrying away, and what follows from it.
#include <gmock/gmock.h>

#include <QSqlQuery>
#include <filesystem>
#include <fstream>

#include "apps/actions/backups.h"
#include "apps/actions/checkpoints.h"
#include "apps/actions/lots.h"
#include "apps/actions/papers.h"
#include "storage/access_log.h"
#include "tests/apps/actions/floor_bench.h"

namespace {

namespace fs = std::filesystem;
using actions_tests::saidBy;
using domain::AccessKind;
using support::kManager;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

class WhatIsLookedAt : public actions_tests::FloorBench {
protected:
    std::vector<domain::AccessEntry> entries(AccessKind kind) {
        std::vector<domain::AccessEntry> found;
        EXPECT_TRUE(storage::AccessLog{lab().records()}.visit([&](const auto& entry) {
            if (kindOf(entry) == kind) found.push_back(entry);
        }));
        return found;
    }
    std::vector<std::string> viewed() {
        std::vector<std::string> orders;
        for (const auto& entry : entries(AccessKind::IdentityViewed))
            orders.push_back(std::get<domain::IdentityViewed>(entry.what).order);
        return orders;
    }
    fs::path ticketOf(const domain::OrderNumber& number, const fs::path& file = {}) {
        const auto paper =
            actions::print(lab(), number, actions::Paper::Ticket, file, floor_.as(kManager));
        EXPECT_TRUE(paper) << saidBy(paper);
        return paper ? *paper : fs::path{};
    }
    static std::string textOf(const fs::path& file) {
        std::ifstream stream{file, std::ios::binary};
        return {std::istreambuf_iterator<char>{stream}, {}};
    }
    /// Nothing can be noted any more.
    void breakTheLog() {
        QSqlQuery query{lab().records().database()};
        EXPECT_TRUE(query.exec(QStringLiteral("DELETE FROM access_head")));
    }
};

TEST_F(WhatIsLookedAt, IsNotedForEveryDeviceOfALotThatIsTraced) {
    const auto first = castFramework();
    const auto second = castFramework();
    floor_.deliver(first);
    floor_.deliver(second);
    const auto before = viewed().size();
    const auto lot = order(first).records;
    std::string code;
    for (const domain::KeptRecord& kept : lot)
        if (const auto* used = std::get_if<domain::LotUsed>(&kept.record)) code = used->lot.text();
    const auto who = floor_.as(kManager);
    const auto traces = actions::traceLot(lab(), code, who);
    ASSERT_TRUE(traces) << saidBy(traces);
    ASSERT_EQ(traces->front().devices.size(), 2U);
    EXPECT_EQ(viewed().size(), before + 2);
    breakTheLog();
    EXPECT_TRUE(actions::traceLot(lab(), code, who)) << "was noted today";
}

TEST_F(WhatIsLookedAt, IsNotShownWhenItCannotBeNoted) {
    const auto number = castFramework();
    const auto who = floor_.as(kManager);
    breakTheLog();
    EXPECT_THAT(saidBy(actions::traceOrder(lab(), number, who)),
                HasSubstr("the head of the access log is missing"));
    const auto paper = actions::print(lab(), number, actions::Paper::Ticket, {}, who);
    EXPECT_THAT(saidBy(paper), HasSubstr("the head of the access log is missing"));
    EXPECT_FALSE(fs::exists(folder() / "papers" / (number.text() + "-ticket-r1.pdf")));
}

TEST_F(WhatIsLookedAt, LeavesPapersThatAreKnownByEveryByte) {
    const auto number = castFramework();
    const fs::path first = ticketOf(number);
    const std::string bytes = textOf(first);
    clock_.letPass(60);
    EXPECT_EQ(ticketOf(number), first) << "printed again in its place";
    EXPECT_THAT(problems(), IsEmpty());
    std::ofstream{first, std::ios::binary} << bytes;
    EXPECT_THAT(problems(), IsEmpty()) << "an earlier print of it";
    std::string altered = bytes;
    altered[altered.size() / 2] ^= 1;
    std::ofstream{first, std::ios::binary} << altered;
    EXPECT_THAT(problems(), ElementsAre(HasSubstr("-ticket-r1.pdf is not what was printed")));
    fs::remove(first);
    EXPECT_THAT(problems(), IsEmpty()) << "a paper may be thrown away";
    fs::create_symlink("elsewhere.pdf", first);
    EXPECT_THAT(problems(), ElementsAre(HasSubstr("is no longer a plain file")));
}

TEST_F(WhatIsLookedAt, NamesNoPlaceOfAPaperThatAPersonNamed) {
    const auto number = castFramework();
    const fs::path own = ticketOf(number);
    ticketOf(number, own.parent_path() / "for-a-patient.pdf");
    const auto printed = entries(AccessKind::PaperPrinted);
    ASSERT_EQ(printed.size(), 2U);
    EXPECT_EQ(std::get<domain::PaperPrinted>(printed[0].what).name, own.filename().string());
    EXPECT_EQ(std::get<domain::PaperPrinted>(printed[1].what).name, std::nullopt);
}

TEST_F(WhatIsLookedAt, HoldsWhatLeavesTheRecords) {
    castFramework();
    const auto backup = actions::backUp(lab(), {}, floor_.as(kManager));
    ASSERT_TRUE(backup) << saidBy(backup);
    ASSERT_TRUE(actions::makeCheckpoint(lab(), {}, floor_.as(kManager)));
    const auto exported = entries(AccessKind::Exported);
    ASSERT_EQ(exported.size(), 2U);
    EXPECT_EQ(std::get<domain::Exported>(exported[0].what),
              (domain::Exported{"backup", backup->backup.digest}));
    EXPECT_EQ(std::get<domain::Exported>(exported[1].what).what, "checkpoint");
    EXPECT_THAT(problems(), IsEmpty());
}

}  // namespace
