/// The identity key of records: where its file lies, and what happens without it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include <QSqlQuery>
#include <QVariant>
#include <fstream>
#include <iterator>

#include "storage/backup.h"
#include "storage/files/prescription_file.h"
#include "storage/laboratory_identity.h"
#include "storage/order_register.h"
#include "storage/recovery_code.h"
#include "storage/restore.h"
#include "storage/sealed_texts.h"
#include "storage/settings_store.h"
#include "tests/storage/records.h"

namespace {

namespace fs = std::filesystem;
using domain::ErrorCode;
using storage::Connection;
using storage::HashCost;
using storage::KeyAccess;
using storage::Opening;
using storage::Secret;
using storage::Transaction;
using support::Folder;
using support::minute;
using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

std::string contentOf(const fs::path& path) {
    std::ifstream file{path, std::ios::binary};
    return {std::istreambuf_iterator<char>{file}, {}};
}

/// Every byte of every file below a folder.
std::string bytesBelow(const fs::path& folder) {
    std::string all;
    for (const auto& entry : fs::recursive_directory_iterator{folder})
        if (entry.is_regular_file()) all += contentOf(entry.path());
    return all;
}

class IdentityKey : public testing::Test {
protected:
    fs::path lab() const { return folder_.path() / "lab"; }
    fs::path keys() const { return folder_.path() / "keys"; }
    fs::path elsewhere() const { return folder_.path() / "other machine" / "keys"; }

    domain::Result<std::unique_ptr<Connection>> open(const KeyAccess& access) const {
        return Connection::open(lab(), Opening::MakeIfMissing, {}, access);
    }
    std::unique_ptr<Connection> opened() const {
        auto records = open({.folder = keys()});
        EXPECT_TRUE(records) << (records ? "" : records.error().message);
        return records ? *std::move(records) : nullptr;
    }
    std::string refusal(const KeyAccess& access) const {
        const auto records = open(access);
        return records ? "was opened" : records.error().message;
    }
    static std::string laboratoryOf(Connection& records) {
        return (*storage::identityOf(records))->laboratory;
    }
    fs::path keyFile() const { return storage::keyFileOf(keys(), laboratoryOf(*opened())); }
    /// Gives the records a recovery code.
    static Secret recoveryCode(Connection& records) {
        Secret code = storage::newRecoveryCode();
        const auto locked = storage::lockedByRecoveryCode(**records.identity(), code,
                                                          laboratoryOf(records), HashCost::Light);
        EXPECT_TRUE(locked);
        Transaction work = *Transaction::begin(records);
        EXPECT_TRUE(storage::putLockedKey(work, *locked));
        EXPECT_TRUE(work.commit());
        return code;
    }
    static mode_t modeOf(const fs::path& path) {
        struct stat found{};
        EXPECT_EQ(::stat(path.c_str(), &found), 0) << path;
        return found.st_mode & 07777U;
    }

    const Folder folder_;
};

TEST_F(IdentityKey, LiesOutsideTheRecordsForItsOwnerAlone) {
    opened();
    const fs::path file = keyFile();
    EXPECT_EQ(modeOf(keys()), 0700U);
    EXPECT_EQ(modeOf(file), 0600U);
    const std::string text = contentOf(file);
    const std::string digits = text.substr(text.find("\nkey ") + 5, 64);
    EXPECT_THAT(
        bytesBelow(lab()),
        AllOf(
            Not(HasSubstr(digits)),
            Not(HasSubstr(QByteArray::fromHex(QByteArray::fromStdString(digits)).toStdString()))));
}

TEST_F(IdentityKey, IsNeverKeptWithTheRecords) {
    for (const fs::path& within : {lab(), lab() / "keys", lab() / "a" / ".." / "b"}) {
        EXPECT_THAT(refusal({.folder = within}), HasSubstr("must not lie with the records"));
        EXPECT_FALSE(fs::exists(lab() / "records.db"));
    }
    fs::create_directory_symlink(lab(), folder_.path() / "link");
    EXPECT_THAT(refusal({.folder = folder_.path() / "link" / "keys"}),
                HasSubstr("must not lie with the records"));
}

TEST_F(IdentityKey, IsNeverOverwritten) {
    const auto records = opened();
    const std::string before = contentOf(keyFile());
    const auto again = storage::writeKeyFile(keys(), lab(), laboratoryOf(*records),
                                             *storage::IdentityCipher::random());
    ASSERT_FALSE(again);
    EXPECT_THAT(again.error().message, HasSubstr("never overwritten"));
    EXPECT_EQ(contentOf(keyFile()), before);
    EXPECT_EQ(std::distance(fs::directory_iterator{keys()}, {}), 1);
}

TEST_F(IdentityKey, IsRefusedByTheNameOfItsFileWhenItIsMissingOrAnother) {
    opened();
    const fs::path file = keyFile();
    const std::string good = contentOf(file);
    const auto saidOf = [&](const std::string& text) {
        std::ofstream{file, std::ios::binary} << text;
        return refusal({.folder = keys()});
    };
    std::string other = good;
    const auto digit = other.find("\nkey ") + 5;
    other[digit] = other[digit] == '0' ? '1' : '0';
    EXPECT_THAT(saidOf(other), AllOf(HasSubstr(file.string()),
                                     HasSubstr("is not the identity key of these records")));
    const std::string strange[] = {"",
                                   "x",
                                   good + "more\n",
                                   good.substr(0, good.size() - 2),
                                   std::string(5000, 'a'),
                                   "framewright-identity-key 1\nlaboratory 0\nkey 0\n"};
    for (const std::string& text : strange)
        EXPECT_THAT(saidOf(text), AllOf(HasSubstr(file.string()),
                                        HasSubstr("is no identity key of this laboratory")))
            << text;
    EXPECT_EQ(saidOf(good), "was opened");
    fs::remove(file);
    EXPECT_THAT(refusal({.folder = keys()}),
                AllOf(HasSubstr(file.string() + " is missing"), HasSubstr("no recovery code")));
    fs::create_directory(file);
    EXPECT_THAT(refusal({.folder = keys()}), HasSubstr("is no identity key"));
}

TEST_F(IdentityKey, IsNotNeededToVerifyTheLedger) {
    support::writeTwoOrders(*opened());
    fs::remove(keyFile());
    const auto records = open({.folder = keys(), .mayLack = true});
    ASSERT_TRUE(records) << records.error().message;
    EXPECT_THAT(support::problemsOf(**records), IsEmpty());
    EXPECT_THAT((**records).identity().error().message, HasSubstr("is missing"));
    const auto orders = support::ordersIn(**records);
    ASSERT_FALSE(orders.empty());
    const auto text =
        storage::SealedTexts{**records}.open(orders.front().revision.parties.identity);
    ASSERT_FALSE(text);
    EXPECT_THAT(text.error().message, HasSubstr("is missing"));
    // What was altered shows as far as it can without the key.
    ASSERT_TRUE(support::Shell{lab() / "records.db"}.run(
        "UPDATE sealed_text SET digest = 'x' WHERE sealed_text_id = 1"));
    EXPECT_THAT(support::problemsOf(**records), Not(IsEmpty()));
}

TEST_F(IdentityKey, ComesBackByTheRecoveryCodeOnAnotherMachine) {
    const auto records = opened();
    support::writeTwoOrders(*records);
    const Secret code = recoveryCode(*records);
    const auto backup = storage::makeBackup(*records, folder_.path() / "safe", minute(5));
    ASSERT_TRUE(backup) << backup.error().message;
    const fs::path back = folder_.path() / "back";
    const auto restored = [&](const KeyAccess& access) -> std::string {
        const auto done = storage::restoreBackup(backup->file, back, {}, {}, access);
        return done ? "" : done.error().message;
    };
    KeyAccess access{.folder = elsewhere()};
    EXPECT_THAT(restored(access), HasSubstr("is missing"));
    std::string typed = storage::newRecoveryCode().text();
    access.recoveryCode = [&] { return domain::Result<Secret>{Secret{typed}}; };
    EXPECT_THAT(restored(access), HasSubstr("is not the recovery code of these records"));
    typed = code.text().substr(1);
    EXPECT_THAT(restored(access), HasSubstr("27 were typed"));
    EXPECT_FALSE(fs::exists(elsewhere()));
    EXPECT_FALSE(fs::exists(back));
    typed = code.text();
    ASSERT_EQ(restored(access), "");
    const auto there = Connection::open(back, Opening::Existing, {}, {.folder = elsewhere()});
    ASSERT_TRUE(there) << there.error().message;
    EXPECT_THAT(support::problemsOf(**there), IsEmpty());
    EXPECT_EQ(contentOf(storage::keyFileOf(elsewhere(), laboratoryOf(**there))),
              contentOf(keyFile()));
    EXPECT_THAT(bytesBelow(folder_.path() / "safe"), Not(HasSubstr("Canaria")));
}

TEST_F(IdentityKey, MayBeLockedWithAPassphrase) {
    const auto records = opened();
    const fs::path file = keyFile();
    const std::string open = contentOf(file);
    const auto lock = [&](const std::optional<Secret>& passphrase) {
        return storage::lockKeyFile(file, laboratoryOf(*records), **records->identity(), passphrase,
                                    HashCost::Light);
    };
    ASSERT_TRUE(lock(Secret{"a lamp over every bench"}));
    EXPECT_EQ(modeOf(file), 0600U);
    EXPECT_THAT(contentOf(file), Not(HasSubstr(open.substr(open.find("\nkey ") + 5, 64))));
    KeyAccess access{.folder = keys()};
    EXPECT_THAT(refusal(access), HasSubstr("is locked with a passphrase"));
    std::string typed = "a lamp";
    access.passphrase = [&](const fs::path& asked) {
        EXPECT_EQ(asked, file);
        return domain::Result<Secret>{Secret{typed}};
    };
    EXPECT_THAT(refusal(access), AllOf(HasSubstr("not the passphrase"), HasSubstr(file.string())));
    typed = "a lamp over every bench";
    EXPECT_EQ(refusal(access), "was opened");
    ASSERT_TRUE(lock({}));
    EXPECT_EQ(contentOf(file), open);
}

// Kept by the program of schema 4, which knew no key: names lie in it in clear.
class OldRecordsWithoutAKey : public IdentityKey {
protected:
    void SetUp() override {
        fs::create_directory(lab());
        fs::copy_file(OLD_RECORDS "/schema_4.db", lab() / "records.db");
    }
    static constexpr const char* kNames[] = {"Quinta\u00F1ar", "Dr ", "P-1042", "D-20417",
                                             "488af119741fa60bf3ec3c12a0e31d"};
};

TEST_F(OldRecordsWithoutAKey, AreGivenOneAndHoldNoNameAnyMore) {
    for (const char* name : kNames) ASSERT_THAT(bytesBelow(lab()), HasSubstr(name));
    const auto records = opened();
    ASSERT_NE(records, nullptr);
    EXPECT_THAT(support::problemsOf(*records), IsEmpty());
    for (const char* name : kNames) EXPECT_THAT(bytesBelow(lab()), Not(HasSubstr(name))) << name;
    EXPECT_TRUE(fs::exists(keyFile()));
    const auto orders = support::ordersIn(*records);
    ASSERT_FALSE(orders.empty());
    for (const domain::Order& order : orders) {
        const auto text = storage::SealedTexts{*records}.open(order.revision.parties.identity);
        ASSERT_TRUE(text && *text);
        EXPECT_THAT(**text, HasSubstr("prescriber"));
    }
    EXPECT_THAT(**storage::SettingsStore{*records}.findSecret(storage::kHmacKeySetting),
                HasSubstr("488af119741fa60bf3ec3c12a0e31d"));
}

TEST_F(OldRecordsWithoutAKey, KnowTheirPartiesAgain) {
    const auto count = [&](const char* table) {
        return support::Shell{lab() / "records.db"}
            .value(std::string{"SELECT COUNT(*) FROM "} + table)
            .toInt();
    };
    const auto records = opened();
    const int prescribers = count("prescriber");
    const int patients = count("patient");
    const auto order = support::ordersIn(*records);
    const auto text = storage::SealedTexts{*records}.open(order[0].revision.parties.identity);
    ASSERT_TRUE(text && *text);
    const auto full = storage::readPrescription(**text, "sealed text");
    ASSERT_TRUE(full) << full.error().message;
    const auto again =
        support::receive(*records, *full, support::occasion(minute(0), support::person("MK"), "k"));
    ASSERT_TRUE(again) << again.error().message;
    EXPECT_EQ(again->revision.parties.patient, order[0].revision.parties.patient);
    EXPECT_EQ(count("prescriber"), prescribers);
    EXPECT_EQ(count("patient"), patients);
}

}  // namespace
