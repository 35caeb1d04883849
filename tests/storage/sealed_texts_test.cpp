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
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

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

TEST(SealedTexts, CommitToSaltAndWordsUnderTheKey) {
    const Folder folder;
    const auto records = opened(folder.path());
    const SealedText sealed = seal(*records, "words");
    const QByteArray kept =
        Shell{folder.file()}.value("SELECT ciphertext FROM sealed_text").toByteArray();
    const auto text =
        (**records->identity()).open({"sealed_text", sealed.digest, "ciphertext"}, kept);
    ASSERT_TRUE(text) << text.error().message;
    EXPECT_EQ(text->size(), 16 + 5U);
    EXPECT_EQ(text->substr(16), "words");
    EXPECT_EQ(sealed.digest,
              storage::sha256({QByteArray(1, '\x01') + QByteArray::fromStdString(*text)}));
}

TEST(SealedTexts, RefuseWordsThatWereAltered) {
    const Folder folder;
    const auto records = opened(folder.path());
    const SealedText sealed = seal(*records, "words");
    const Shell shell{folder.file()};
    ASSERT_TRUE(shell.run("UPDATE sealed_text SET ciphertext = x'00' || substr(ciphertext, 2)"));
    const auto altered = SealedTexts{*records}.open(sealed);
    ASSERT_FALSE(altered);
    EXPECT_EQ(altered.error().code, ErrorCode::Unavailable);
    EXPECT_THAT(altered.error().message, HasSubstr("T000001 was altered"));
    ASSERT_TRUE(shell.run("DELETE FROM sealed_text"));
    EXPECT_THAT(SealedTexts{*records}.open(sealed).error().message, HasSubstr("is missing"));
    EXPECT_FALSE(SealedTexts{*records}.open({"T1", sealed.digest}));
}

TEST(SealedTexts, OpenInTheirOwnRowAlone) {
    const Folder folder;
    const auto records = opened(folder.path());
    const SealedText first = seal(*records, "words");
    seal(*records, "other");
    const Shell shell{folder.file()};
    ASSERT_TRUE(
        shell.run("UPDATE sealed_text SET ciphertext = (SELECT ciphertext FROM sealed_text "
                  "WHERE sealed_text_id = 2) WHERE sealed_text_id = 1"));
    EXPECT_THAT(SealedTexts{*records}.open(first).error().message, HasSubstr("was altered"));
}

TEST(SealedTexts, ErasedAreGoneFromTheFileAndTheRecordsStayWhole) {
    const Folder folder;
    const auto records = opened(folder.path());
    support::writeTwoOrders(*records);
    const SealedText sealed = seal(*records, "Nomina Canaria knows: 13 is chipped");
    const std::string kept =
        Shell{folder.file()}
            .value("SELECT ciphertext FROM sealed_text WHERE digest = '" + sealed.digest + "'")
            .toByteArray()
            .toStdString();
    const auto inFile = [&] {
        std::ifstream file{folder.file(), std::ios::binary};
        const std::string bytes{std::istreambuf_iterator<char>{file}, {}};
        return bytes.find(kept) != std::string::npos;
    };
    ASSERT_TRUE(inFile());
    Transaction work = *Transaction::begin(*records);
    ASSERT_TRUE(SealedTexts{*records}.erase(work, sealed));
    ASSERT_TRUE(work.commit());
    EXPECT_EQ(*SealedTexts{*records}.open(sealed), std::nullopt);
    EXPECT_FALSE(inFile());
    // Erased, and no order was purged that had it.
    EXPECT_THAT(support::problemsOf(*records), Not(IsEmpty()));
}

TEST(SealedTexts, AreFoundWhenNoEventTookThemUp) {
    const Folder folder;
    const auto records = opened(folder.path());
    support::writeTwoOrders(*records);
    const SealedText stray = seal(*records, "a reason that was not needed");
    EXPECT_THAT(support::problemsOf(*records, SealedTexts{*records}.check()),
                ElementsAre("sealed text " + stray.code + " belongs to no event"));
}

}  // namespace
