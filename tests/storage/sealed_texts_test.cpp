#include "storage/sealed_texts.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QVariant>
#include <fstream>

#include "storage/digest.h"
#include "storage/order_register.h"
#include "tests/storage/records.h"

namespace {

using domain::ErrorCode;
using domain::SealedText;
using storage::SealedTexts;
using storage::Transaction;
using support::Folder;
using support::opened;
using support::Shell;
using testing::HasSubstr;
using testing::IsEmpty;

SealedText seal(storage::Connection& records, const std::string& text) {
    Transaction work = *Transaction::begin(records);
    const auto sealed = SealedTexts{records}.seal(work, text);
    EXPECT_TRUE(work.commit());
    return *sealed;
}

TEST(SealedTexts, OpensWhatWasSealed) {
    const Folder folder;
    const auto records = opened(folder.path());
    const SealedText first = seal(*records, "the shade tab was missing, says Ånna");
    const SealedText second = seal(*records, "the shade tab was missing, says Ånna");
    EXPECT_EQ(first.code, "T000001");
    EXPECT_EQ(second.code, "T000002");
    EXPECT_NE(first.digest, second.digest);  // so that equal words cannot be recognised
    EXPECT_EQ(**SealedTexts{*records}.open(first), "the shade tab was missing, says Ånna");
}

TEST(SealedTexts, CommitsToSaltAndWords) {
    const Folder folder;
    const auto records = opened(folder.path());
    const SealedText sealed = seal(*records, "words");
    const Shell shell{folder.file()};
    const QByteArray salt = shell.value("SELECT salt FROM sealed_text").toByteArray();
    EXPECT_EQ(salt.size(), 16);
    EXPECT_EQ(sealed.digest, storage::sha256({QByteArray(1, '\x01') + salt + "words"}));
}

TEST(SealedTexts, RefusesWordsThatWereAltered) {
    const Folder folder;
    const auto records = opened(folder.path());
    const SealedText sealed = seal(*records, "words");
    const Shell shell{folder.file()};
    ASSERT_TRUE(shell.run("UPDATE sealed_text SET content = 'other words'"));
    const auto altered = SealedTexts{*records}.open(sealed);
    ASSERT_FALSE(altered);
    EXPECT_EQ(altered.error().code, ErrorCode::Unavailable);
    EXPECT_THAT(altered.error().message, HasSubstr("T000001 was altered"));
    ASSERT_TRUE(shell.run("DELETE FROM sealed_text"));
    EXPECT_THAT(SealedTexts{*records}.open(sealed).error().message, HasSubstr("is missing"));
    EXPECT_FALSE(SealedTexts{*records}.open({"T1", sealed.digest}));
}

TEST(SealedTexts, ErasedAreGoneFromTheFileAndTheRecordsStayWhole) {
    const Folder folder;
    const std::string canary = "Nomina Canaria knows: 13 is chipped";
    const auto inFile = [&] {
        std::ifstream file{folder.file(), std::ios::binary};
        const std::string bytes{std::istreambuf_iterator<char>{file}, {}};
        return bytes.find(canary) != std::string::npos;
    };
    const auto records = opened(folder.path());
    support::writeTwoOrders(*records);
    ASSERT_TRUE(inFile());
    const Shell shell{folder.file()};
    const SealedText sealed{
        "T00000" +
            shell.value("SELECT sealed_text_id FROM sealed_text WHERE content = '" + canary + "'")
                .toString()
                .toStdString(),
        shell.value("SELECT digest FROM sealed_text WHERE content = '" + canary + "'")
            .toString()
            .toStdString()};
    Transaction work = *Transaction::begin(*records);
    ASSERT_TRUE(SealedTexts{*records}.erase(work, sealed));
    ASSERT_TRUE(work.commit());
    EXPECT_EQ(*SealedTexts{*records}.open(sealed), std::nullopt);
    EXPECT_FALSE(inFile());
    EXPECT_THAT(support::problemsOf(*records), IsEmpty());
}

TEST(SealedTexts, TakeWordsNoEventTookUpForWhole) {
    const Folder folder;
    const auto records = opened(folder.path());
    support::writeTwoOrders(*records);
    seal(*records, "a reason that was not needed");
    EXPECT_THAT(support::problemsOf(*records, SealedTexts{*records}.check()), IsEmpty());
}

}  // namespace
