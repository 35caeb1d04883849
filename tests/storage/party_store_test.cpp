#include "storage/party_store.h"

#include <gtest/gtest.h>

#include "tests/storage/records.h"

namespace {

using domain::Identity;
using storage::PartyStore;
using storage::Transaction;
using support::Folder;
using support::opened;

struct PartyStoreTest : testing::Test {
    const Folder folder{};
    const std::unique_ptr<storage::Connection> records = opened(folder.path());
    const PartyStore people{*records};
    Transaction work = *Transaction::begin(*records);

    std::string prescriber(const Identity& identity) {
        return *people.prescriberCode(work, identity);
    }
    std::string patient(const std::string& prescriberCode, const Identity& identity) {
        return *people.patientCode(work, prescriberCode, identity);
    }
};

TEST_F(PartyStoreTest, GivesAPrescriberTheSameCodeForTheSameRegistration) {
    EXPECT_EQ(prescriber({.prescriberName = "Dr A", .prescriberRegistration = "Z 4711"}), "D00001");
    EXPECT_EQ(prescriber({.prescriberName = "Dr B", .prescriberRegistration = " Z  4711 "}),
              "D00001");
    EXPECT_EQ(prescriber({.prescriberName = "Dr A", .prescriberRegistration = "Z 4712"}), "D00002");
}

TEST_F(PartyStoreTest, MatchesPrescribersWithoutRegistrationByNameAndAddress) {
    EXPECT_EQ(prescriber({.prescriberName = "Dr A", .prescriberAddress = "1 High Road"}), "D00001");
    EXPECT_EQ(prescriber({.prescriberName = "Dr A", .prescriberAddress = "2 High Road"}), "D00002");
    EXPECT_EQ(prescriber({.prescriberName = "Dr A", .prescriberAddress = "1 High  Road"}),
              "D00001");
    EXPECT_EQ(prescriber({.prescriberName = "Dr A"}), "D00003");
}

TEST_F(PartyStoreTest, TakesComposedAndDecomposedAccentsForTheSame) {
    EXPECT_EQ(prescriber({.prescriberName = "Ren\xc3\xa9"}),
              prescriber({.prescriberName = "Rene\xcc\x81"}));
}

TEST_F(PartyStoreTest, NeverMatchesThoseWhoAreNotNamed) {
    EXPECT_EQ(prescriber({}), "D00001");
    EXPECT_EQ(prescriber({}), "D00002");
    EXPECT_EQ(patient("D00001", {}), "P00001");
    EXPECT_EQ(patient("D00001", {}), "P00002");
}

TEST_F(PartyStoreTest, MatchesPatientsUnderTheirOwnPrescriberOnly) {
    ASSERT_EQ(prescriber({.prescriberName = "Dr A"}), "D00001");
    ASSERT_EQ(prescriber({.prescriberName = "Dr B"}), "D00002");
    EXPECT_EQ(patient("D00001", {.patientReference = "17"}), "P00001");
    EXPECT_EQ(patient("D00002", {.patientReference = "17"}), "P00002");
    EXPECT_EQ(patient("D00001", {.patientReference = "17", .patientName = "N. N."}), "P00001");
    EXPECT_EQ(patient("D00001", {.patientName = "N. N."}), "P00003");
    EXPECT_EQ(patient("D00001", {.patientName = "17"}), "P00004");
}

TEST_F(PartyStoreTest, RefusesACodeThatIsNoPrescribers) {
    for (const auto* code : {"", "D", "D1", "P00001", "D0000x", "D00001 ", "D99999"})
        EXPECT_FALSE(people.patientCode(work, code, {})) << code;
}

}  // namespace
