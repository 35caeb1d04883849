#include "storage/secrets.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

namespace {

using storage::badgeDigest;
using storage::HashCost;
using storage::hashOf;
using storage::isHashOf;
using storage::needsRehash;
using storage::newOneTimeSecret;
using storage::newToken;
using storage::Secret;
using storage::tokenDigest;
using testing::MatchesRegex;
using testing::Not;
using testing::StartsWith;

// Test vectors of the Argon2 reference implementation (P-H-C/phc-winner-argon2, test of Argon2id,
// version 19, one lane, salt "somesalt"). The vector of RFC 9106 section 5.3 has a key and four
// lanes, which these functions do not take.
constexpr const char* kReference =
    "$argon2id$v=19$m=65536,t=2,p=1$c29tZXNhbHQ$CTFhFdXPJO1aFaMaO6Mm5c8y7cJHAph8ArZWb2GRPPc";
constexpr const char* kSmallReference =
    "$argon2id$v=19$m=256,t=2,p=1$c29tZXNhbHQ$nf65EOgLrQMR/uIPnA4rEsF5h7TKyQwu9U1bMCHGi/4";

TEST(Secrets, VerifyTheReferenceImplementationsArgon2id) {
    for (const char* reference : {kReference, kSmallReference}) {
        EXPECT_TRUE(isHashOf(reference, Secret{"password"}));
        EXPECT_FALSE(isHashOf(reference, Secret{"Password"}));
    }
}

TEST(Secrets, HashAtTheCostThatTheStringNames) {
    const auto usual = hashOf(Secret{"correct bench lamp"}, HashCost::Usual);
    ASSERT_TRUE(usual);
    EXPECT_THAT(*usual, StartsWith("$argon2id$v=19$m=65536,t=2,p=1$"));
    EXPECT_FALSE(needsRehash(*usual, HashCost::Usual));
    const auto light = hashOf(Secret{"correct bench lamp"}, HashCost::Light);
    ASSERT_TRUE(light);
    EXPECT_THAT(*light, StartsWith("$argon2id$v=19$m=8,t=1,p=1$"));
    EXPECT_TRUE(needsRehash(*light, HashCost::Usual));
    EXPECT_TRUE(needsRehash(kSmallReference, HashCost::Usual));
}

TEST(Secrets, FitTheirOwnHashAndNoOther) {
    const auto hash = hashOf(Secret{"correct bench lamp"}, HashCost::Light);
    ASSERT_TRUE(hash);
    EXPECT_TRUE(isHashOf(*hash, Secret{"correct bench lamp"}));
    for (const char* other : {"", "correct bench lam", "correct bench lamp ", "CORRECT BENCH LAMP"})
        EXPECT_FALSE(isHashOf(*hash, Secret{other})) << other;
    EXPECT_NE(*hash, *hashOf(Secret{"correct bench lamp"}, HashCost::Light)) << "no salt";
}

TEST(Secrets, FitNothingThatIsNoHash) {
    for (const std::string& hash :
         {std::string{}, std::string{"password"}, std::string{"$argon2id$v=19$"},
          std::string(5000, '$'), std::string{"$argon2i$v=19$m=8,t=3,p=1$c29tZXNhbHQ$AAAA"}})
        EXPECT_FALSE(isHashOf(hash, Secret{"password"})) << hash;
}

// UAX #15 (Unicode Normalization Forms), figures 3 to 6.
TEST(Secrets, AreTheSameHoweverAKeyboardWritesThem) {
    EXPECT_EQ(Secret{"\u212B"}.text(), "\u00C5");        // Angstrom sign
    EXPECT_EQ(Secret{"A\u030A"}.text(), "\u00C5");       // A and a ring
    EXPECT_EQ(Secret{"\uFB01"}.text(), "fi");            // ligature
    EXPECT_EQ(Secret{"2\u2075"}.text(), "25");           // superscript
    EXPECT_EQ(Secret{"\u1E9B\u0323"}.text(), "\u1E69");  // long s with two dots
    EXPECT_EQ(Secret{"d\u0307\u0323"}.text(), "\u1E0D\u0307");
    const auto hash = hashOf(Secret{"caf\u00E9 at seven"}, HashCost::Light);
    EXPECT_TRUE(isHashOf(*hash, Secret{"cafe\u0301 at seven"}));
}

TEST(Secrets, AreCountedInCharacters) {
    EXPECT_EQ(Secret{}.characters(), 0U);
    EXPECT_EQ(Secret{"1234"}.characters(), 4U);
    EXPECT_EQ(Secret{"\u00E9\u4E2D\U0001F9B7"}.characters(), 3U);
    EXPECT_EQ(Secret{"e\u0301"}.characters(), 1U);
}

// RFC 4231 sections 4.2 and 4.3.
TEST(Secrets, DigestBadgesByHmac) {
    EXPECT_EQ(badgeDigest(std::string(20, '\x0b'), Secret{"Hi There"}),
              "b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7");
    EXPECT_EQ(badgeDigest("Jefe", Secret{"what do ya want for nothing?"}),
              "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843");
}

TEST(Secrets, DigestTheSameBadgeDifferentlyInEachLaboratory) {
    EXPECT_NE(badgeDigest(newToken(), Secret{"B-100200"}),
              badgeDigest(newToken(), Secret{"B-100200"}));
}

TEST(Secrets, MakeTokensThatDoNotRepeat) {
    std::set<std::string> tokens;
    for (int i = 0; i < 1000; ++i) tokens.insert(newToken());
    EXPECT_EQ(tokens.size(), 1000U);
    EXPECT_THAT(*tokens.begin(), MatchesRegex("[0-9a-f]{64}"));
    EXPECT_THAT(tokenDigest(*tokens.begin()), MatchesRegex("[0-9a-f]{64}"));
    EXPECT_NE(tokenDigest(*tokens.begin()), *tokens.begin());
}

TEST(Secrets, MakeOneTimeSecretsLongEnoughToBePasswords) {
    std::set<std::string> secrets;
    for (int i = 0; i < 1000; ++i) {
        const Secret secret = newOneTimeSecret();
        EXPECT_THAT(secret.text(), MatchesRegex("[0-9a-z-]{23}"));
        EXPECT_THAT(secret.text(), Not(MatchesRegex(".*[ilou].*")));
        secrets.insert(secret.text());
    }
    EXPECT_EQ(secrets.size(), 1000U);
}

}  // namespace
