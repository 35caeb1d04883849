// Desktop and command line at work on the same records.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QCoreApplication>
#include <QProcess>
#include <set>

#include "storage/ledger.h"
#include "storage/order_register.h"
#include "tests/storage/records.h"

namespace {

using support::Folder;
using support::opened;

TEST(TwoPrograms, WritingAtTheSameTimeLoseNothing) {
    constexpr int kOrdersEach = 200;
    constexpr int kPatienceMs = 240'000;
    const Folder folder;
    QProcess programs[2];
    const char* const people[] = {"first", "second"};
    for (int i = 0; i < 2; ++i)
        programs[i].start(QCoreApplication::applicationFilePath(),
                          {"--write-orders", QString::fromStdString(folder.path().string()),
                           QString::number(kOrdersEach), people[i]});
    for (QProcess& program : programs) {
        ASSERT_TRUE(program.waitForFinished(kPatienceMs));
        EXPECT_EQ(program.exitCode(), 0) << program.readAllStandardError().toStdString();
    }
    const auto records = opened(folder.path());
    EXPECT_EQ(storage::Ledger{*records}.verify()->entries, 2 * kOrdersEach);
    EXPECT_THAT(support::problemsOf(*records), testing::IsEmpty());
    const auto rows = *storage::OrderRegister{*records}.all();
    ASSERT_EQ(rows.size(), 2U * kOrdersEach);
    EXPECT_EQ(rows.back().number, support::orderNumber(2 * kOrdersEach));
    for (const char* person : people)
        for (int i = 0; i < kOrdersEach; ++i)
            EXPECT_EQ(storage::Ledger{*records}.withKey(person + ("-" + std::to_string(i)))->size(),
                      1U);
}

}  // namespace
