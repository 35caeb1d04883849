/// Names at rest through the program itself: the identity key, the recovery code, and what a search
/// through every file finds.
#include <gmock/gmock.h>

#include <QDirIterator>

#include "tests/apps/cli/laboratory_program.h"

namespace {

using cli_test::Ran;
using cli_test::run;
using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

constexpr const char* kPassword = "a lamp over every bench";
constexpr const char* kFresh = "a kiln behind every door";

/// The bytes of every file below a folder, and their names.
std::string bytesBelow(const QString& folder) {
    std::string all;
    for (QDirIterator each{folder, QDir::Files | QDir::Hidden, QDirIterator::Subdirectories};
         each.hasNext();) {
        QFile file{each.next()};
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        all += file.fileName().toStdString() + file.readAll().toStdString();
    }
    return all;
}

class IdentityVerbs : public testing::Test {
protected:
    QString at(const char* name) const { return folder_.filePath(name); }
    QStringList keys(const char* name) const { return {"FRAMEWRIGHT_KEYS=" + at(name)}; }
    /// In the laboratory, with the keys of this machine; `lines` are typed.
    Ran lab(const QStringList& words, const QByteArray& lines = {}) const {
        return run(words + QStringList{"--lab", at("lab")}, lines, keys("keys"));
    }
    /// Gives the recovery code.
    QByteArray setUp() const {
        const Ran ran = lab({"set-up", "MK", "--json"}, QByteArray{kPassword} + '\n');
        EXPECT_EQ(ran.exit, 0) << ran.err;
        EXPECT_EQ(lab({"sign-in", "MK"}, QByteArray{kPassword} + '\n').exit, 0);
        return QByteArray::fromStdString(ran.json()["recovery-code"].get<std::string>());
    }
    std::string keyFile() const { return lab({"key", "--json"}).json()["key-file"]; }

    QTemporaryDir folder_;
};

TEST_F(IdentityVerbs, TellWhereTheKeyLiesAndTheRecoveryCodeAtSetUp) {
    const Ran ran = lab({"set-up", "MK"}, QByteArray{kPassword} + '\n');
    ASSERT_EQ(ran.exit, 0) << ran.err;
    EXPECT_THAT(ran.out, AllOf(HasSubstr("identity key   " + at("keys").toStdString() + '/'),
                               testing::ContainsRegex("recovery code  [0-9a-z-]{34}\n")));
    EXPECT_EQ(QDir{at("keys")}.entryList(QDir::Files).size(), 1);
}

TEST_F(IdentityVerbs, BringBackALostKeyAndAManagerWhoCannotSignIn) {
    const QByteArray code = setUp();
    const std::string file = keyFile();
    ASSERT_TRUE(QFile::remove(QString::fromStdString(file)));
    const Ran lost = lab({"floor"});
    EXPECT_EQ(lost.exit, 3);
    EXPECT_THAT(lost.err, AllOf(HasSubstr(file + " is missing"), HasSubstr("framewright recover")));
    const Ran verified = lab({"verify"});
    EXPECT_EQ(verified.exit, 0) << verified.err;
    EXPECT_THAT(verified.out, AllOf(HasSubstr("NOT LOOKED AT: "), HasSubstr(file),
                                    HasSubstr("what was looked at is whole")));
    QByteArray wrong = code;
    wrong[0] = wrong[0] == '2' ? '3' : '2';
    EXPECT_EQ(lab({"recover", "MK"}, wrong + '\n' + kFresh + '\n').exit, 2);
    EXPECT_FALSE(QFile::exists(QString::fromStdString(file)));
    const Ran back = lab({"recover", "MK"}, code.toUpper() + '\n' + kFresh + '\n');
    ASSERT_EQ(back.exit, 0) << back.err;
    EXPECT_THAT(back.out, HasSubstr(file));
    EXPECT_NE(lab({"sign-in", "MK"}, QByteArray{kPassword} + '\n').exit, 0);
    EXPECT_EQ(lab({"sign-in", "MK"}, QByteArray{kFresh} + '\n').exit, 0);
    EXPECT_THAT(lab({"verify"}).out, HasSubstr("the records are whole"));
    const Ran nobody = lab({"recover", "JT"}, code + '\n' + kFresh + '\n');
    EXPECT_EQ(nobody.exit, 1);
    EXPECT_THAT(nobody.err, HasSubstr("JT is no manager"));
}

TEST_F(IdentityVerbs, ReplaceTheRecoveryCodeForWhoProvesThemselves) {
    const QByteArray code = setUp();
    const QStringList renew{"key", "--new-recovery-code", "--as", "MK", "--json"};
    EXPECT_EQ(lab(renew, "not the password at all\n").exit, 1);
    const Ran ran = lab(renew, QByteArray{kPassword} + '\n');
    ASSERT_EQ(ran.exit, 0) << ran.err;
    const auto fresh = QByteArray::fromStdString(ran.json()["recovery-code"].get<std::string>());
    const Ran old = lab({"recover", "MK"}, code + '\n' + kFresh + '\n');
    EXPECT_EQ(old.exit, 1);
    EXPECT_THAT(old.err, HasSubstr("is not the recovery code"));
    EXPECT_EQ(lab({"recover", "MK"}, fresh + '\n' + kFresh + '\n').exit, 0);
    EXPECT_EQ(lab({"verify"}).exit, 0);
}

TEST_F(IdentityVerbs, RestoreOnAnotherMachineByTheRecoveryCode) {
    const QByteArray code = setUp();
    const Ran made = lab({"backup", at("safe"), "--as", "MK", "--json"});
    ASSERT_EQ(made.exit, 0) << made.err;
    const QStringList restore{"restore",
                              QString::fromStdString(made.json()["file"].get<std::string>()),
                              "--to", at("again")};
    const Ran none = run(restore, "\n", keys("elsewhere"));
    EXPECT_EQ(none.exit, 2) << none.err;
    EXPECT_FALSE(QFile::exists(at("again")));
    const Ran back = run(restore, code + '\n', keys("elsewhere"));
    ASSERT_EQ(back.exit, 0) << back.err;
    EXPECT_EQ(run({"verify", "--lab", at("again")}, {}, keys("elsewhere")).exit, 0);
    EXPECT_EQ(QDir{at("elsewhere")}.entryList(QDir::Files),
              QDir{at("keys")}.entryList(QDir::Files));
}

TEST_F(IdentityVerbs, AskForThePassphraseOfTheKey) {
    setUp();
    const QByteArray passphrase = "three hammers in a row\n";
    ASSERT_EQ(lab({"key", "--passphrase", "--as", "MK"}, passphrase).exit, 0);
    EXPECT_EQ(lab({"people"}).exit, 2) << "nothing was typed";
    EXPECT_EQ(lab({"people"}, "another\n").exit, 1);
    EXPECT_EQ(lab({"people"}, passphrase).exit, 0);
    EXPECT_EQ(lab({"key", "--no-passphrase", "--as", "MK"}, passphrase).exit, 0);
    EXPECT_EQ(lab({"people"}).exit, 0);
}

class Canaries : public cli_test::LaboratoryProgram {};

// Distinctive names typed wherever a person is named, and words where words are typed.
TEST_F(Canaries, LieInNoFileOfTheRecords) {
    const QString file = today("upper-iii-mod-1", "Dr S\u00F8ren", "Zzcanary");
    const std::string order = accepted(file);
    const auto done = [&](const QStringList& words) {
        const Ran ran = change(words);
        EXPECT_EQ(ran.exit, 0) << ran.err;
        EXPECT_THAT(ran.err, Not(HasSubstr("Zzcanary")));
    };
    done(on("flag", order, {"other", "--note", "Zzcanary Flag"}));
    done(on("answer", order, {"--words", "Zzcanary Answer"}));
    done(on("withdraw", order, {"--reason", "Zzcanary Withdrawal"}));
    done({"backup", folder_.filePath("safe")});
    EXPECT_THAT(bytesBelow(labFolder()), Not(HasSubstr("Zzcanary")));
    EXPECT_THAT(bytesBelow(folder_.filePath("safe")), Not(HasSubstr("Zzcanary")));
    const Ran shown = lab(on("order", order));
    EXPECT_THAT(shown.out, HasSubstr("Zzcanary Flag")) << "it is there to be read";
    EXPECT_EQ(lab({"verify"}).exit, 0);
}

}  // namespace
