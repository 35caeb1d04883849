#include "storage/identity_cipher.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "storage/recovery_code.h"

namespace {

using storage::HashCost;
using storage::IdentityCipher;
using storage::KeyBytes;
using storage::Nonce;
using storage::Secret;
using testing::HasSubstr;

QByteArray hex(const char* digits) { return QByteArray::fromHex(digits); }

// draft-irtf-cfrg-xchacha-03, appendix A.3.1, "Example and Test Vectors for
// AEAD_XCHACHA20_POLY1305".
constexpr const char* kPlaintext =
    "Ladies and Gentlemen of the class of '99: If I could offer you only one tip for the future, "
    "sunscreen would be it.";
constexpr const char* kAssociated = "50515253c0c1c2c3c4c5c6c7";
constexpr const char* kKey = "808182838485868788898a8b8c8d8e8f909192939495969798999a9b9c9d9e9f";
constexpr const char* kNonce = "404142434445464748494a4b4c4d4e4f5051525354555657";
constexpr const char* kCiphertext =
    "bd6d179d3e83d43b9576579493c0e939572a1700252bfaccbed2902c21396cbb"
    "731c7f1b0b4aa6440bf3a82f4eda7e39ae64c6708c54c216cb96b72e1213b452"
    "2f8c9ba40db5d945b11b69b982c1bb9e3f3fac2bc369488f76b2383565d3fff9"
    "21f9664c97637da9768812f615c68b13b52e";
constexpr const char* kTag = "c0875924c1c7987947deafd8780acf49";

template <typename Bytes>
void fill(Bytes&& bytes, const char* digits) {
    std::ranges::copy(hex(digits), bytes.begin());
}

TEST(IdentityCipher, IsTheAeadOfTheDraft) {
    KeyBytes key;
    fill(key.bytes(), kKey);
    Nonce nonce{};
    fill(nonce, kNonce);
    const QByteArray sealed = sealBytes(key, nonce, hex(kAssociated), kPlaintext);
    EXPECT_EQ(sealed.toHex().toStdString(), std::string{kCiphertext} + kTag);
    EXPECT_EQ(openBytes(key, nonce, hex(kAssociated), sealed), kPlaintext);
    for (qsizetype at = 0; at < sealed.size(); ++at) {
        QByteArray altered = sealed;
        altered[at] = static_cast<char>(altered[at] ^ 1);
        EXPECT_EQ(openBytes(key, nonce, hex(kAssociated), altered), std::nullopt) << at;
    }
    EXPECT_EQ(openBytes(key, nonce, hex("50"), sealed), std::nullopt);
    EXPECT_EQ(openBytes(key, nonce, hex(kAssociated), sealed.first(15)), std::nullopt);
}

TEST(IdentityCipher, OpensInItsOwnPlaceUnderItsOwnKeyAlone) {
    const auto cipher = IdentityCipher::random();
    const QByteArray sealed = cipher->seal({"table", "7", "column"}, "Nomina Canaria");
    EXPECT_EQ(sealed.size(), 24 + 14 + 16);
    EXPECT_EQ(*cipher->open({"table", "7", "column"}, sealed), "Nomina Canaria");
    for (const storage::SealedPlace& elsewhere :
         {storage::SealedPlace{"other", "7", "column"},
          storage::SealedPlace{"table", "8", "column"}, storage::SealedPlace{"table", "7", "other"},
          storage::SealedPlace{"table7", "", "column"},
          storage::SealedPlace{"tabl", "e7", "column"}})
        EXPECT_FALSE(cipher->open(elsewhere, sealed)) << elsewhere.table << elsewhere.row;
    const auto other = IdentityCipher::random()->open({"table", "7", "column"}, sealed);
    ASSERT_FALSE(other);
    EXPECT_THAT(other.error().message, HasSubstr("does not open with the identity key"));
    EXPECT_NE(cipher->seal({"table", "7", "column"}, "Nomina Canaria"), sealed);
}

TEST(IdentityCipher, GivesDigestsThatTellPurposesAndKeysApart) {
    const auto cipher = IdentityCipher::random();
    EXPECT_EQ(cipher->digest("patient", "N. N."), cipher->digest("patient", "N. N."));
    EXPECT_NE(cipher->digest("patient", "N. N."), cipher->digest("prescriber", "N. N."));
    EXPECT_NE(cipher->digest("patient", "N. N."), cipher->digest("patientN", ". N."));
    EXPECT_NE(cipher->digest("patient", "N. N."),
              IdentityCipher::random()->digest("patient", "N. N."));
    EXPECT_EQ(cipher->digest("patient", "N. N.").size(), 64U);
}

TEST(IdentityCipher, ComesBackFromItsDigits) {
    const auto cipher = IdentityCipher::random();
    const auto again = IdentityCipher::ofDigits(cipher->digits().text());
    ASSERT_NE(again, nullptr);
    EXPECT_EQ(again->checkValue("lab"), cipher->checkValue("lab"));
    const std::string digits = cipher->digits().text();
    for (const std::string& wrong : {std::string{}, digits.substr(2), digits + "00",
                                     "x" + digits.substr(1), std::string(64, ' ')})
        EXPECT_EQ(IdentityCipher::ofDigits(wrong), nullptr) << wrong;
}

TEST(IdentityCipher, IsUnlockedByItsSecretForItsPurposeAlone) {
    const auto cipher = IdentityCipher::random();
    const auto locked = cipher->lockedBy(Secret{"a lamp"}, "recovery", "lab", HashCost::Light);
    ASSERT_TRUE(locked) << locked.error().message;
    const auto unlocked = [&](const std::string& text, const char* secret, const char* purpose,
                              const char* laboratory) {
        return IdentityCipher::unlocked(text, Secret{secret}, purpose, laboratory);
    };
    const auto own = unlocked(*locked, "a lamp", "recovery", "lab");
    ASSERT_TRUE(own && *own != nullptr);
    EXPECT_EQ((*own)->checkValue("lab"), cipher->checkValue("lab"));
    EXPECT_EQ(*unlocked(*locked, "a lamb", "recovery", "lab"), nullptr);
    EXPECT_EQ(*unlocked(*locked, "a lamp", "passphrase", "lab"), nullptr);
    EXPECT_EQ(*unlocked(*locked, "a lamp", "recovery", "other"), nullptr);
    // A hostile file asks for no end of memory.
    for (const std::string& wrong :
         {std::string{}, *locked + " more", "scrypt" + locked->substr(8),
          "argon2id 1 99999999999999 " + locked->substr(locked->find(' ', 11) + 1),
          "argon2id 999 8192 " + locked->substr(locked->find(' ', 11) + 1)})
        EXPECT_FALSE(unlocked(wrong, "a lamp", "recovery", "lab")) << wrong;
}

TEST(RecoveryCode, IsReadHoweverItIsTyped) {
    for (int i = 0; i < 100; ++i) {
        const Secret code = storage::newRecoveryCode();
        EXPECT_EQ(code.text().size(), 34U);
        std::string typed;
        for (const char each : code.text()) {
            if (each == '-') typed += ' ';
            if (each == '1') typed += "lIi"[i % 3];
            if (each == '0') typed += "oO"[i % 2];
            if (each != '-' && each != '0' && each != '1')
                typed += static_cast<char>(each >= 'a' ? each - 'a' + 'A' : each);
        }
        const auto read = storage::readRecoveryCode(Secret{typed});
        ASSERT_TRUE(read) << read.error().message << ' ' << typed;
        EXPECT_EQ(read->text(), code.text());
    }
}

TEST(RecoveryCode, ShowsEveryWrongSignAndEveryTwoThatChangedPlaces) {
    const std::string signs = "0123456789abcdefghjkmnpqrstvwxyz";
    const std::string code = storage::newRecoveryCode().text();
    for (std::size_t at = 0; at < code.size(); ++at) {
        if (code[at] == '-') continue;
        for (const char sign : signs) {
            std::string wrong = code;
            wrong[at] = sign;
            EXPECT_EQ(bool{storage::readRecoveryCode(Secret{wrong})}, wrong == code) << wrong;
        }
        for (std::size_t other = at + 1; other < code.size(); ++other) {
            std::string wrong = code;
            if (wrong[other] != '-') std::swap(wrong[at], wrong[other]);
            EXPECT_EQ(bool{storage::readRecoveryCode(Secret{wrong})}, wrong == code) << wrong;
        }
    }
    for (const std::string& wrong : {std::string{}, code.substr(1), code + "0", "u" + code})
        EXPECT_FALSE(storage::readRecoveryCode(Secret{wrong})) << wrong;
}

}  // namespace
