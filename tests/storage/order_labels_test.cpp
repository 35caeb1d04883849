/// What an order is found by, and what is found when somebody changed it.
#include "storage/order_labels.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QVariant>

#include "storage/projections.h"
#include "tests/storage/records.h"

namespace {

using storage::OrderLabels;
using storage::searchWords;
using storage::Transaction;
using support::Folder;
using support::opened;
using support::Shell;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

TEST(SearchWords, AreWholeAndWithoutCaseAccentsAndSigns) {
    EXPECT_THAT(searchWords("Dr. Žofie O'Šťastná"), ElementsAre("dr", "o", "stastna", "zofie"));
    EXPECT_THAT(searchWords("P-1042 p"), ElementsAre("1042", "p"));
    EXPECT_THAT(searchWords("STRASSE Strasse"), ElementsAre("strasse"));
    EXPECT_THAT(searchWords("Κλεάνθης"), ElementsAre("κλεανθησ"));
    EXPECT_THAT(searchWords(" .-\t"), IsEmpty());
}

class Labels : public testing::Test {
protected:
    void SetUp() override { support::writeTwoOrders(*records); }
    std::vector<std::string> problems() const {
        return support::problemsOf(*records, OrderLabels{*records}.check());
    }

    Folder folder;
    std::unique_ptr<storage::Connection> records = opened(folder.path());
    Shell shell{folder.file()};
};

TEST_F(Labels, RebuiltAreFoundTheSame) {
    EXPECT_THAT(problems(), IsEmpty());
    const auto words = [&] {
        return shell
            .value(
                "SELECT group_concat(word) FROM (SELECT word FROM label_word "
                "ORDER BY word)")
            .toString()
            .toStdString();
    };
    const std::string live = words();
    ASSERT_FALSE(live.empty());
    Transaction work = *Transaction::begin(*records);
    ASSERT_TRUE(storage::rebuildProjections(work));
    ASSERT_TRUE(work.commit());
    EXPECT_THAT(problems(), IsEmpty());
    EXPECT_EQ(words(), live);
}

TEST_F(Labels, ThatWereTamperedWithAreFound) {
    struct Row {
        const char* change;
        const char* finding;
    };
    constexpr const char* kLabel = "the label of order";
    constexpr const char* kWords = "the words order";
    constexpr Row kRows[] = {
        {"UPDATE order_label SET patient = prescriber", kLabel},
        {"UPDATE order_label SET prescriber = x'00'", kLabel},
        {"DELETE FROM order_label", kLabel},
        {"INSERT INTO order_label SELECT '26000999', patient, prescriber FROM order_label LIMIT 1",
         "there is a label of order \"26000999\""},
        {"DELETE FROM label_word WHERE word = (SELECT min(word) FROM label_word)", kWords},
        {"INSERT INTO label_word SELECT 'word', year, count FROM order_register LIMIT 1", kWords},
        {"INSERT INTO label_word VALUES ('word', 26, 77)", "there is a word of order 77"}};
    for (const Row& row : kRows) {
        ASSERT_TRUE(shell.run(row.change)) << row.change;
        EXPECT_THAT(problems(), Contains(HasSubstr(row.finding))) << row.change;
        Transaction work = *Transaction::begin(*records);
        ASSERT_TRUE(storage::rebuildProjections(work));
        ASSERT_TRUE(work.commit());
        ASSERT_THAT(problems(), IsEmpty());
    }
}

}  // namespace
