/// Erasing names when the term of retention has run out.
#include <gmock/gmock.h>

#include "apps/actions/clock.h"
#include "apps/actions/floor.h"
#include "apps/actions/house.h"
#include "tests/apps/actions/floor_bench.h"

namespace {

using actions_tests::saidBy;
using domain::OrderNumber;
using support::kMaker;
using support::kManager;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

class Purge : public actions_tests::FloorBench {
protected:
    /// Where the clock is taken for wrong after years, the manager confirms the date.
    void goTo(const char* day) {
        clock_.goTo(*domain::Date::parse(day));
        const auto who = floor_.as(kManager);
        if (*actions::clockDoubt(lab())) {
            EXPECT_EQ(saidBy(actions::confirmDate(lab(), lab().today(), who)), "");
        }
    }
    std::string purge(const OrderNumber& number, std::string_view who = kManager) {
        return saidBy(actions::purge(lab(), number, floor_.as(who)));
    }
    /// What is sealed, as it lies in the file.
    std::vector<std::string> ciphertexts() {
        std::vector<std::string> all;
        storage::Statement rows{lab().records().database(),
                                storage::Sql{"SELECT ciphertext FROM sealed_text WHERE ciphertext "
                                             "IS NOT NULL"}};
        // A long one goes on on another page: its beginning is looked for.
        for (rows.run(); rows.next();)
            all.push_back(rows.bytes("ciphertext").left(64).toStdString());
        return all;
    }
    /// Of a patient and a prescriber who are known by their names alone.
    static domain::Prescription named() {
        auto prescription = support::upperClassIIIMod1();
        prescription.identity = {.patientReference = {},
                                 .patientName = "Ottilie Farrenquay",
                                 .prescriberName = "Dr Lazare Umbelow",
                                 .prescriberAddress = "8 Weir Steps, Eastmere",
                                 .prescriberContact = "umbelow@eastmere.example",
                                 .prescriberRegistration = "D-77031",
                                 .remarks = "Ottilie is left-handed"};
        return prescription;
    }
};

// Regulation (EU) 2017/745, Annex XIII, section 4: ten years after the device was placed on the
// market; how a term of years ends on a leap day: domain/production/retention.h.
TEST_F(Purge, IsRefusedUntilTheDayAfterTheTermOfADeliveryOnALeapDay) {
    goTo("2028-02-20");
    auto prescription = support::upperClassIIIMod1();
    prescription.issued = domain::Date::parse("2028-02-18");
    prescription.signature->date = domain::Date::parse("2028-02-18");
    prescription.needed = domain::Date::parse("2028-03-20");
    const OrderNumber number = floor_.accepted(prescription);
    floor_.bringTo(number, domain::Stage::Delivery);
    goTo("2028-02-29");
    floor_.deliver(number);
    goTo("2038-02-28");
    EXPECT_THAT(purge(number), HasSubstr("must be kept through 2038-03-01"));
    goTo("2038-03-01");
    EXPECT_THAT(purge(number), HasSubstr("purged from 2038-03-02"));
    EXPECT_FALSE(order(number).purged);
    goTo("2038-03-02");
    EXPECT_THAT(purge(number, kMaker), HasSubstr("manager"));
    EXPECT_EQ(purge(number), "");
    EXPECT_THAT(purge(number), HasSubstr("purged already"));
    EXPECT_THAT(problems(), IsEmpty());
}

TEST_F(Purge, ErasesEveryNameAndWordFromTheBytesOfTheRecords) {
    const OrderNumber number = floor_.accepted(named());
    ASSERT_EQ(saidBy(actions::flag(lab(), number, domain::FlagReason::Other,
                                   "Ottilie asked for gold", floor_.as(kMaker))),
              "");
    ASSERT_EQ(saidBy(actions::answer(lab(), number, {.words = "Dr Umbelow says no"},
                                     floor_.as(kManager))),
              "");
    floor_.deliver(number);
    const auto before = ciphertexts();
    ASSERT_GE(before.size(), 3U);
    for (const std::string& text : before) EXPECT_THAT(bytes(), HasSubstr(text));
    goTo("2036-11-27");
    ASSERT_EQ(purge(number), "");
    const std::string after = bytes();
    for (const char* name : {"Ottilie", "Farrenquay", "Umbelow", "Weir Steps"})
        EXPECT_THAT(after, Not(HasSubstr(name)));
    for (const std::string& text : before) EXPECT_THAT(after, Not(HasSubstr(text)));
    EXPECT_THAT(problems(), IsEmpty());
    const auto view = actions::order(lab(), number);
    ASSERT_TRUE(view) << view.error().message;
    EXPECT_EQ(view->prescription.identity, domain::Identity{});
    EXPECT_TRUE(actions::floor(lab()));
}

TEST_F(Purge, LeavesTheNamesOfAnotherOrderOfTheSamePatient) {
    const OrderNumber number = floor_.accepted(named());
    floor_.deliver(number);
    goTo("2036-11-20");
    auto later = named();
    later.issued = domain::Date::parse("2036-11-18");
    later.needed = domain::Date::parse("2036-12-18");
    const OrderNumber second = floor_.logged(later);
    goTo("2036-11-27");
    ASSERT_EQ(purge(number), "");
    EXPECT_EQ(actions::order(lab(), second)->prescription.identity.patientName,
              "Ottilie Farrenquay");
    EXPECT_EQ(order(second).revision.parties.patient, order(number).revision.parties.patient);
    EXPECT_THAT(problems(), IsEmpty());
}

// The next order of a patient whose names were erased is of somebody the laboratory does not know.
TEST_F(Purge, ForgetsThePatientWithTheirLastOrder) {
    const OrderNumber number = floor_.accepted(named());
    floor_.deliver(number);
    goTo("2036-11-27");
    ASSERT_EQ(purge(number), "");
    auto later = named();
    later.issued = domain::Date::parse("2036-11-26");
    later.needed = domain::Date::parse("2036-12-18");
    const OrderNumber second = floor_.logged(later);
    EXPECT_NE(order(second).revision.parties.patient, order(number).revision.parties.patient);
}

TEST_F(Purge, TakesTheLongestOfTheTermsThatApply) {
    const OrderNumber number = castFramework();
    floor_.deliver(number);
    ASSERT_EQ(saidBy(actions::writeRetention(lab(), "us-ny", floor_.as(kManager))), "");
    goTo("2027-11-25");
    EXPECT_THAT(purge(number), HasSubstr("through 2027-11-25"));
    goTo("2027-11-26");
    ASSERT_EQ(saidBy(actions::writeRetention(lab(), "us-ny,eu", floor_.as(kManager))), "");
    EXPECT_THAT(purge(number), HasSubstr("through 2036-11-25"));
}

TEST_F(Purge, IsRefusedWhileWorkGoesOn) {
    const OrderNumber number = castFramework();
    EXPECT_THAT(purge(number), HasSubstr("work on it goes on"));
}

// Whoever puts the clock ahead by the term of retention could have every name erased at once.
TEST_F(Purge, IsRefusedByAClockNobodyConfirmed) {
    const OrderNumber number = castFramework();
    floor_.deliver(number);
    clock_.goTo(*domain::Date::parse("2036-11-27"));
    EXPECT_THAT(purge(number), HasSubstr("nothing is purged before a manager confirms the date"));
    EXPECT_FALSE(order(number).purged);
    ASSERT_EQ(saidBy(actions::confirmDate(lab(), lab().today(), floor_.as(kManager))), "");
    EXPECT_EQ(purge(number), "");
}

TEST_F(Purge, AsksForThePasswordOnceMore) {
    const OrderNumber number = castFramework();
    floor_.deliver(number);
    goTo("2036-11-27");
    actions::Who who = floor_.as(kManager);
    who.password.reset();
    EXPECT_THAT(saidBy(actions::purge(lab(), number, who)),
                HasSubstr("MK gives the password once more"));
    EXPECT_FALSE(order(number).purged);
}

}  // namespace
