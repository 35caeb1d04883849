#include "storage/credential_store.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/storage/records.h"

namespace {

using domain::Done;
using domain::Result;
using storage::CredentialStore;
using storage::KeptBadge;
using storage::KeptCredentials;
using storage::Transaction;
using support::minute;
using support::person;
using testing::ElementsAre;

class Credentials : public testing::Test {
protected:
    Result<Done> put(const KeptCredentials& kept) {
        Transaction work = *Transaction::begin(*records_);
        if (auto done = store_.put(work, kept, minute(1)); !done) return done;
        return work.commit();
    }

    support::Folder folder_;
    std::unique_ptr<storage::Connection> records_{support::opened(folder_.path())};
    CredentialStore store_{*records_};
};

const KeptCredentials& full() {
    static const KeptCredentials kFull{.person = person("JT"),
                                       .passwordHash = "$argon2id$one",
                                       .mustChange = true,
                                       .badge = KeptBadge{"digest", "$argon2id$two"},
                                       .failures = 3,
                                       .lockedUntil = minute(15)};
    return kFull;
}

TEST_F(Credentials, AreEmptyForACodeNeverSeen) {
    EXPECT_EQ(*store_.of(person("JT")), KeptCredentials{.person = person("JT")});
    EXPECT_EQ(*store_.withBadge("digest"), std::nullopt);
}

TEST_F(Credentials, AreGivenBackAsPutLast) {
    ASSERT_TRUE(put(full()));
    EXPECT_EQ(*store_.of(person("JT")), full());
    EXPECT_EQ(*store_.withBadge("digest"), full());
    const KeptCredentials bare{.person = person("JT")};
    ASSERT_TRUE(put(bare));
    EXPECT_EQ(*store_.of(person("JT")), bare);
    EXPECT_EQ(*store_.withBadge("digest"), std::nullopt);
}

TEST_F(Credentials, NeverShareABadge) {
    ASSERT_TRUE(put(full()));
    KeptCredentials other = full();
    other.person = person("MK");
    EXPECT_FALSE(put(other));
    other.badge->digest = "another";
    EXPECT_TRUE(put(other));
    EXPECT_THAT(*store_.all(), ElementsAre(full(), other));
}

TEST_F(Credentials, AreGoneOnceRemoved) {
    ASSERT_TRUE(put(full()));
    Transaction work = *Transaction::begin(*records_);
    ASSERT_TRUE(store_.remove(work, person("JT"), minute(2)));
    ASSERT_TRUE(work.commit());
    EXPECT_EQ(*store_.of(person("JT")), KeptCredentials{.person = person("JT")});
}

TEST_F(Credentials, SayThatTheRecordsAreDamagedWhereNoCodeIsHeld) {
    const support::Shell shell{folder_.file()};
    ASSERT_TRUE(shell.run("INSERT INTO credential VALUES ('9 lives', NULL, 0, 'd', 'p', 0, NULL)"));
    const auto found = store_.withBadge("d");
    ASSERT_FALSE(found);
    EXPECT_THAT(found.error().message, testing::HasSubstr("damaged"));
}

}  // namespace
