#include "storage/order_register.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QVariant>

#include "domain/production/evolve.h"
#include "storage/ledger.h"
#include "storage/projections.h"
#include "tests/storage/records.h"
#include "tests/support/designs.h"

namespace {

using namespace domain;
using storage::OrderRegister;
using storage::RegisterRow;
using storage::Transaction;
using support::Folder;
using support::minute;
using support::opened;
using support::orderNumber;
using support::person;
using support::Shell;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

TEST(OrderRegister, SaysHowAnOrderStands) {
    const Folder folder;
    const auto records = opened(folder.path());
    support::writeTwoOrders(*records);
    const auto rows = *OrderRegister{*records}.all();
    ASSERT_EQ(rows.size(), 2U);
    const RegisterRow& worked = rows[0];
    EXPECT_EQ(worked.number, orderNumber(1));
    EXPECT_EQ(worked.version, 9);
    EXPECT_EQ(worked.status, OrderStatus::InWork);
    EXPECT_EQ(worked.stage, Stage::Survey);
    EXPECT_EQ(worked.stageStatus, StageStatus::InHand);
    EXPECT_EQ(worked.waitsFor, WaitsFor::Bench);
    EXPECT_EQ(worked.holdUp, "survey: in hand");
    EXPECT_EQ(worked.arch, Arch::Upper);
    EXPECT_EQ(worked.description, "upper, III mod 1, Co-Cr");
    EXPECT_EQ(worked.due, Date::parse("2026-12-21"));
    EXPECT_EQ(worked.receivedAt, minute(1));
    EXPECT_EQ(worked.changedAt, minute(8));
    EXPECT_EQ(worked.patientCode, "P00001");
    EXPECT_EQ(worked.prescriberCode, "D00001");
    EXPECT_EQ(worked.questions, 0);
    const RegisterRow& incomplete = rows[1];
    EXPECT_EQ(incomplete.status, OrderStatus::Received);
    EXPECT_EQ(incomplete.stage, std::nullopt);
    EXPECT_EQ(incomplete.waitsFor, WaitsFor::Dentist);
    EXPECT_GT(incomplete.questions, 0);
}

TEST(OrderRegister, ReadsBackWhatItSays) {
    const Folder folder;
    const auto records = opened(folder.path());
    support::writeTwoOrders(*records);
    const auto orders = support::ordersIn(*records);
    ASSERT_EQ(orders.size(), 2U);
    for (const Order& order : orders)
        EXPECT_EQ(*OrderRegister{*records}.find(order.number), storage::rowOf(order));
    EXPECT_EQ(*OrderRegister{*records}.find(orderNumber(77)), std::nullopt);
}

TEST(OrderRegister, DescribesWhatIsAskedFor) {
    const auto described = [](const Prescription& prescription) {
        Order order{.number = orderNumber(1)};
        order.revision.prescription = prescription;
        return storage::rowOf(order).description;
    };
    EXPECT_EQ(described(support::lowerClassI()), "lower, I, Co-Cr");
    EXPECT_THAT(described(support::interimUpper()), HasSubstr(", interim resin"));
    EXPECT_EQ(described({}), "upper");
}

TEST(OrderRegister, RebuiltFromTheLedgerIsTheSame) {
    const Folder folder;
    const auto records = opened(folder.path());
    support::writeTwoOrders(*records);
    const OrderRegister orders{*records};
    const auto live = *orders.all();
    const Shell shell{folder.file()};
    ASSERT_TRUE(shell.run("UPDATE order_register SET hold_up = 'spoilt', due_day = NULL"));
    ASSERT_TRUE(shell.run("DELETE FROM order_register WHERE stage IS NULL"));
    ASSERT_NE(*orders.all(), live);
    Transaction work = *Transaction::begin(*records);
    ASSERT_TRUE(storage::rebuildProjections(work));
    EXPECT_THAT(support::problemsOf(*records, orders.check()), IsEmpty());
    ASSERT_TRUE(work.commit());
    EXPECT_EQ(*orders.all(), live);
}

TEST(OrderRegister, HoldsTheOrdersOfACase) {
    const Folder folder;
    const auto records = opened(folder.path());
    support::writeTwoOrders(*records);
    const OrderRegister orders{*records};
    const Shell shell{folder.file()};
    const std::string leader = orderNumber(1).text();
    EXPECT_EQ(orders.ofCase(orderNumber(1))->size(), 1U);
    ASSERT_TRUE(shell.run("UPDATE order_register SET case_leader = '" + leader +
                          "' WHERE order_number <> '" + leader + "'"));
    const auto rows = *orders.ofCase(orderNumber(1));
    ASSERT_EQ(rows.size(), 2U);
    EXPECT_EQ(rows.front().number, orderNumber(1));
    EXPECT_THAT(*orders.ofCase(orderNumber(77)), IsEmpty());
}

TEST(OrderRegister, SaysSoOfAnOrderTheLedgerHasNot) {
    const Folder folder;
    const auto records = opened(folder.path());
    support::writeTwoOrders(*records);
    const Shell shell{folder.file()};
    ASSERT_TRUE(shell.run("UPDATE order_register SET order_version = 99 WHERE stage IS NULL"));
    EXPECT_THAT(support::problemsOf(*records, OrderRegister{*records}.check()),
                Contains(HasSubstr("in version 99 the ledger has not")));
    ASSERT_TRUE(shell.run("DELETE FROM order_register WHERE stage IS NULL"));
    EXPECT_THAT(support::problemsOf(*records, OrderRegister{*records}.check()),
                ElementsAre(HasSubstr("is missing in the register")));
}

TEST(OrderRegister, NamesTheColumnThatDiffersFromTheLedger) {
    const Folder folder;
    const auto records = opened(folder.path());
    support::writeTwoOrders(*records);
    const OrderRegister orders{*records};
    EXPECT_THAT(support::problemsOf(*records, orders.check()), IsEmpty());
    const Shell shell{folder.file()};
    ASSERT_TRUE(shell.run("UPDATE order_register SET stage = 'casting' WHERE stage = 'survey'"));
    EXPECT_THAT(support::problemsOf(*records, orders.check()),
                ElementsAre("order " + orderNumber(1).text() +
                            " in the register: stage is \"casting\", the ledger says \"survey\""));
    ASSERT_TRUE(shell.run("UPDATE order_register SET stage = 'juggling'"));
    EXPECT_THAT(orders.all().error().message, HasSubstr("stage holds \"juggling\""));
}

TEST(OrderRegister, CountsOrdersWithinTheYear) {
    const Folder folder;
    const auto records = opened(folder.path());
    const OrderRegister orders{*records};
    Transaction work = *Transaction::begin(*records);
    const auto next = [&](std::string_view day) {
        return orders.nextNumber(work, *Date::parse(day));
    };
    EXPECT_EQ(*next("2026-11-25"), *OrderNumber::make(26, 1));
    const auto append = [&](const OrderNumber& number) {
        const Event event{.order = number,
                          .version = 1,
                          .at = minute(0),
                          .person = person("MK"),
                          .key = number.text(),
                          .what = Received{}};
        return storage::Ledger{*records}.append(work, std::vector{event}) &&
               orders.put(work, evolve({}, event));
    };
    ASSERT_TRUE(append(*OrderNumber::make(26, 41)));
    EXPECT_EQ(*next("2026-12-31"), *OrderNumber::make(26, 42));
    EXPECT_EQ(*next("2027-01-01"), *OrderNumber::make(27, 1));
    ASSERT_TRUE(append(*OrderNumber::make(26, 99'999)));
    EXPECT_EQ(next("2026-12-31")->text(), "2601000005");
    ASSERT_TRUE(append(*OrderNumber::make(26, 9'999'999)));
    EXPECT_EQ(next("2026-12-31").error().code, ErrorCode::Refused);
    EXPECT_EQ(*next("2025-12-31"), *OrderNumber::make(25, 1));
}

}  // namespace
