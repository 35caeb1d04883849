/// Records that are not there, and papers on paths where something else lies.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include <QDir>
#include <QFileInfo>

#include "apps/cli/verb.h"
#include "tests/apps/cli/laboratory_program.h"

namespace {

using cli_test::prescription;
using cli_test::Ran;
using cli_test::run;
using testing::AllOf;
using testing::HasSubstr;

using Loss = cli_test::LaboratoryProgram;

/// Verbs that look at no records, and those that make them.
constexpr const char* kOthers[] = {"classify", "describe", "rules",  "bench",
                                   "demo",     "set-up",   "restore"};

/// Words that a verb can use, so that it comes to the records: those of its example.
QStringList wordsOf(const cli::Verb& verb) {
    QStringList words;
    QString word;
    bool quoted = false;
    for (const QChar letter : QString::fromUtf8(verb.example.data()) + ' ') {
        if (letter == '"') quoted = !quoted;
        if (letter == '"' || (letter == ' ' && quoted)) {
            if (letter == ' ') word += letter;
        } else if (letter != ' ') {
            word += letter;
        } else if (!word.isEmpty()) {
            words << word;
            word.clear();
        }
    }
    words.removeFirst();  // the program
    for (QString& each : words)
        if (each.endsWith(".json")) each = prescription("upper-iii-mod-1");
    return words;
}

TEST_F(Loss, EveryVerbSaysThatThereAreNoRecordsAndMakesNone) {
    const QDir folder{folder_.path()};
    ASSERT_TRUE(folder.mkpath("empty") && folder.mkpath("cut"));
    QFile cut{folder.filePath("cut/records.db")};
    ASSERT_TRUE(cut.open(QIODevice::WriteOnly));
    cut.close();
    int verbs = 0;
    for (const cli::Verb& verb : cli::verbs()) {
        if (std::ranges::count(kOthers, verb.name) > 0) continue;
        ++verbs;
        for (const char* place : {"missing", "empty", "cut"}) {
            const QString lab = folder.filePath(place);
            const Ran ran = run(wordsOf(verb) << "--lab" << lab, "a lamp over every bench\n",
                                {"FRAMEWRIGHT_AS=MK", "FRAMEWRIGHT_SESSION=none"});
            EXPECT_EQ(ran.exit, 3) << verb.name << ' ' << place << ran.out << ran.err;
            EXPECT_THAT(ran.err, AllOf(HasSubstr(lab.toStdString()), HasSubstr("restore a backup")))
                << verb.name;
        }
    }
    EXPECT_GE(verbs, 35);
    EXPECT_FALSE(QFileInfo::exists(folder.filePath("missing")));
    EXPECT_TRUE(QDir{folder.filePath("empty")}.isEmpty(QDir::AllEntries | QDir::Hidden |
                                                       QDir::NoDotAndDotDot));
    EXPECT_EQ(QFileInfo{folder.filePath("cut/records.db")}.size(), 0);
    EXPECT_EQ(QDir{folder.filePath("cut")}.entryList(QDir::Files | QDir::Hidden).size(), 1);
}

TEST_F(Loss, SetUpMakesRecordsOnlyWhereThereWereNone) {
    const QString lab = folder_.filePath("new");
    EXPECT_THAT(run({"floor", "--lab", lab}).err, HasSubstr("framewright set-up"));
    EXPECT_EQ(run({"set-up", "MK", "--lab", lab}, "a lamp over every bench\n").exit, 0);
    EXPECT_EQ(run({"verify", "--lab", lab}).exit, 0);
    ASSERT_TRUE(QFile::resize(lab + "/records.db", 0));
    const Ran cut = run({"set-up", "MK", "--lab", lab}, "a lamp over every bench\n");
    EXPECT_EQ(cut.exit, 3);
    EXPECT_THAT(cut.err, AllOf(HasSubstr("records.db"), HasSubstr("0 bytes")));
    EXPECT_EQ(QFileInfo{lab + "/records.db"}.size(), 0);
}

TEST_F(Loss, RecordsOfNobodyAreNotCalledWhole) {
    const QString lab = folder_.filePath("new");
    EXPECT_EQ(run({"set-up", "MK", "--lab", lab}, "short\n").exit, 2);
    const Ran verified = run({"verify", "--lab", lab});
    EXPECT_EQ(verified.exit, 3) << verified.out;
    EXPECT_THAT(verified.err, HasSubstr("hold nothing"));
    EXPECT_EQ(run({"set-up", "MK", "--lab", lab}, "a lamp over every bench\n").exit, 0)
        << "it goes on";
}

TEST_F(Loss, LimitsAreTheUsualOnesOnlyWhereNoLaboratoryIsNamed) {
    const QStringList nowhere{"XDG_DATA_HOME=" + folder_.filePath("nowhere")};
    EXPECT_EQ(run({"limits"}, {}, nowhere).exit, 0);
    EXPECT_EQ(run({"limits", "--lab", folder_.filePath("nowhere/framewright")}).exit, 3);
    EXPECT_FALSE(QFileInfo::exists(folder_.filePath("nowhere")));
}

TEST_F(Loss, PrintingReplacesNothingButAnEarlierPrint) {
    const std::string order = logged(today("upper-iii-mod-1"));
    const std::string other = logged(today("lower-i"));
    const auto print = [&](const std::string& number, const QString& file) {
        return change(on("print", number, {"prescription", "--to", file}));
    };
    const QString paper = folder_.filePath("paper.pdf");
    EXPECT_EQ(print(order, paper).exit, 0);
    EXPECT_EQ(print(order, paper).exit, 0);
    const Ran taken = print(other, paper);
    EXPECT_EQ(taken.exit, 1);
    EXPECT_THAT(taken.err, AllOf(HasSubstr("paper.pdf"), HasSubstr("earlier print")));
    QFile::link(labFolder() + "/records.db", folder_.filePath("link.pdf"));
    const QString records = labFolder() + "/records.db";
    const auto size = QFileInfo{records}.size();
    for (const QString& file : {records, labFolder() + "/new.pdf", folder_.filePath("link.pdf"),
                                QString{"/dev/null"}, folder_.path()}) {
        const Ran ran = print(order, file);
        EXPECT_EQ(ran.exit, 1) << file.toStdString() << ran.err;
        EXPECT_THAT(ran.err, HasSubstr(file == records || file.endsWith("/new.pdf")
                                           ? labFolder().toStdString()
                                           : file.toStdString()));
    }
    EXPECT_EQ(QFileInfo{records}.size(), size);
    EXPECT_EQ(lab({"verify"}).exit, 0);
    EXPECT_EQ(print(order, labFolder() + "/papers/mine.pdf").exit, 3) << "no such folder yet";
    EXPECT_EQ(change(on("print", order, {"prescription"})).exit, 0);
    EXPECT_EQ(print(order, labFolder() + "/papers/mine.pdf").exit, 0);
}

}  // namespace
