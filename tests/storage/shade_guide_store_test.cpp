#include "storage/shade_guide_store.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QVariant>

#include "tests/storage/records.h"

namespace {

using domain::LabColour;
using domain::ShadeGuide;
using storage::ShadeGuideStore;
using storage::Transaction;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

void put(storage::Connection& records, const ShadeGuide& guide) {
    Transaction work = *Transaction::begin(records);
    ASSERT_TRUE(ShadeGuideStore{records}.put(work, guide));
    ASSERT_TRUE(work.commit());
}

const ShadeGuide kBench{.name = "Bench",
                        .source = "entered",
                        .tabs = {{"M2", LabColour::parse("76.04 -0.08 16.73")}, {"M1", {}}}};

TEST(ShadeGuides, ComeBackAsTheyWereEnteredTabsInOrder) {
    const support::Folder folder;
    const auto records = support::opened(folder.path());
    EXPECT_THAT(*ShadeGuideStore{*records}.all(), IsEmpty());
    put(*records, kBench);
    ShadeGuide other = kBench;
    other.name = "Another";
    put(*records, other);
    EXPECT_THAT(*ShadeGuideStore{*records}.all(), ElementsAre(other, kBench));
}

TEST(ShadeGuides, TakeThePlaceOfTheOneOfTheirName) {
    const support::Folder folder;
    const auto records = support::opened(folder.path());
    put(*records, kBench);
    ShadeGuide anew = kBench;
    anew.source = "entered again";
    anew.tabs.erase(anew.tabs.begin());
    put(*records, anew);
    EXPECT_THAT(*ShadeGuideStore{*records}.all(), ElementsAre(anew));
}

TEST(ShadeGuides, WithAColourThatIsNoneAreDamage) {
    const support::Folder folder;
    const auto records = support::opened(folder.path());
    put(*records, kBench);
    const support::Shell shell{folder.file()};
    ASSERT_TRUE(shell.run("UPDATE shade_tab SET colour = 'grey' WHERE name = 'M2'"));
    const auto guides = ShadeGuideStore{*records}.all();
    ASSERT_FALSE(guides);
    EXPECT_EQ(guides.error().code, domain::ErrorCode::Unavailable);
    EXPECT_THAT(guides.error().message, HasSubstr("shade_tab"));
}

}  // namespace
