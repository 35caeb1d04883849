#include "storage/signature.h"

#include <gtest/gtest.h>

#include <string>

namespace {

using storage::isSignatureOf;
using storage::publicKeyOf;
using storage::signatureOf;

struct Vector {
    const char* seed;
    const char* key;
    std::string message;
    const char* signature;
};

// RFC 8032, section 7.1, TEST 1, TEST 2 and TEST 3.
const Vector kVectors[] = {
    {"9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
     "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a", "",
     "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9"
     "b46bd25bf5f0595bbe24655141438e7a100b"},
    {"4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
     "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c", "\x72",
     "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f1"
     "1d8c387b2eaeb4302aeeb00d291612bb0c00"},
    {"c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
     "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025", "\xaf\x82",
     "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67f760984d"
     "c6594a7c15e9716ed28dc027beceea1ec40a"},
};

TEST(Signatures, AreThoseOfRfc8032) {
    for (const Vector& vector : kVectors) {
        EXPECT_EQ(publicKeyOf(vector.seed), vector.key);
        EXPECT_EQ(signatureOf(vector.seed, vector.message), vector.signature);
        EXPECT_TRUE(isSignatureOf(vector.key, vector.message, vector.signature));
        EXPECT_FALSE(isSignatureOf(vector.key, vector.message + "x", vector.signature));
    }
    EXPECT_FALSE(isSignatureOf(kVectors[0].key, kVectors[1].message, kVectors[1].signature));
}

TEST(Signatures, AreRefusedWithAnyDigitAltered) {
    const Vector& vector = kVectors[2];
    const std::string sound = vector.signature;
    for (std::size_t at = 0; at < sound.size(); ++at) {
        std::string altered = sound;
        altered[at] = altered[at] == '0' ? '1' : '0';
        EXPECT_FALSE(isSignatureOf(vector.key, vector.message, altered)) << at;
    }
    EXPECT_FALSE(isSignatureOf("", vector.message, sound));
    EXPECT_FALSE(isSignatureOf(vector.key, vector.message, sound + "00"));
    EXPECT_EQ(signatureOf("no seed", vector.message), "");
}

TEST(Signatures, OfANewSeedHold) {
    const std::string seed = storage::newSigningSeed();
    EXPECT_NE(seed, storage::newSigningSeed());
    EXPECT_TRUE(isSignatureOf(publicKeyOf(seed), "words", signatureOf(seed, "words")));
}

}  // namespace
