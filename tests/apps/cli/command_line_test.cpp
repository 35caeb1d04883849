/// The program itself, run as a person runs it: what it prints and how it exits.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QCoreApplication>
#include <nlohmann/json.hpp>

#include "tests/apps/cli/laboratory_program.h"

namespace {

using cli_test::prescription;
using cli_test::Ran;
using cli_test::run;
using testing::AllOf;
using testing::HasSubstr;

using CommandLine = cli_test::LaboratoryProgram;

TEST_F(CommandLine, ClassifiesThePublishedPattern) {
    const Ran ran = run({"classify", "--arch", "upper", "--missing", "14,15,24,25,26"});
    EXPECT_EQ(ran.exit, 0);
    EXPECT_EQ(ran.out, "III mod 1\n");
    EXPECT_EQ(run({"classify", "--batch"}, "lower missing=46\nupper missing=11,21\n").out,
              "III\nIV\n");
    EXPECT_EQ(run({"classify", "--arch", "upper", "--missing", "36"}).exit, 2);
    EXPECT_EQ(run({"classify"}).exit, 2);
}

TEST_F(CommandLine, ChecksACleanFile) {
    const Ran ran = run({"check", today("upper-iii-mod-1")});
    EXPECT_EQ(ran.exit, 0) << ran.out << ran.err;
    EXPECT_THAT(ran.out, AllOf(HasSubstr("Kennedy III mod 1"), HasSubstr("no findings")));
}

TEST_F(CommandLine, NamesRuleToothAndSourceOfAContradiction) {
    const Ran ran = run(
        {"check", today("upper-iii-mod-1", "\"depth\": \"0.25 mm\"", "\"depth\": \"0.75 mm\"")});
    EXPECT_EQ(ran.exit, 1);
    EXPECT_THAT(ran.out, AllOf(HasSubstr("conflict  clasp.undercut-measured"),
                               HasSubstr("tooth 16"), HasSubstr("source:")));
}

TEST_F(CommandLine, RefusesUnusableInputWithTheExitCodeTwo) {
    for (const QStringList& words : {QStringList{"check", "/nowhere.json"},
                                     {"check", "/"},
                                     {"check"},
                                     {"dance"},
                                     {},
                                     {"check", "a", "b"},
                                     {"check", "--colour"},
                                     {"order", "12345678"},
                                     {"order", "26000"},
                                     {"start", "26000017", "dancing"}}) {
        const Ran ran = lab(words);
        EXPECT_EQ(ran.exit, 2) << words.join(' ').toStdString() << ran.out << ran.err;
        EXPECT_TRUE(!ran.err.empty() || words.isEmpty());
    }
    EXPECT_EQ(run({"log", prescription("lower-i"), "--lab", labFolder()}).exit, 2)
        << "nobody is named who does it";
    EXPECT_THAT(lab({"order", "26000017"}).err, HasSubstr("no such order"));
}

TEST_F(CommandLine, SaysSoWhenTheRecordsCannotBeKept) {
    const QString file = today("upper-iii-mod-1");
    // Where not even root can make a folder: inside a file, and behind a link that leads to itself.
    const QString circle = folder_.filePath("circle");
    ASSERT_TRUE(QFile::link(circle, circle));
    for (const QString& place : {file + "/lab", circle + "/lab"}) {
        const Ran ran = run({"log", file, "--as", "MK", "--lab", place});
        EXPECT_EQ(ran.exit, 3) << ran.err;
        EXPECT_THAT(ran.err, HasSubstr(place.toStdString()));
    }
}

TEST_F(CommandLine, RefusesAnIncompleteOneAsksAndTakesTheAnswer) {
    const std::string order = logged(today("survey-missing"));
    const Ran refused = change(on("accept", order));
    EXPECT_EQ(refused.exit, 1);
    EXPECT_THAT(refused.err, HasSubstr("sensitivity.stated"));
    EXPECT_THAT(refused.err, HasSubstr("may keep as prescribed: clasp.reciprocation"));
    const Ran sheet = change(on("print", order, {"questions"}));
    ASSERT_EQ(sheet.exit, 0) << sheet.err;
    EXPECT_TRUE(QFile::exists(QString::fromStdString(sheet.json()["file"])));
    EXPECT_EQ(change(on("answer", order, {"--file", today("survey-missing-answered")})).exit, 0);
    EXPECT_EQ(change(on("accept", order)).exit, 1);
    EXPECT_EQ(change(on("answer", order, {"--keep", "clasp.reciprocation"})).exit, 2);
    EXPECT_EQ(change(on("answer", order, {"--keep", "clasp.reciprocation@90=so"})).exit, 2);
    const Ran kept = change(
        on("answer", order, {"--keep", "clasp.reciprocation@45=the plate opposes this arm"}));
    EXPECT_EQ(kept.exit, 0) << kept.err;
    EXPECT_EQ(change(on("accept", order)).exit, 0);
    EXPECT_THAT(
        lab(on("order", order)).out,
        HasSubstr("kept as prescribed: clasp.reciprocation@45: the plate opposes this arm"));
}

TEST_F(CommandLine, DoesNothingTwiceUnderOneKey) {
    const std::string order = logged(today("upper-iii-mod-1"));
    EXPECT_EQ(change(on("accept", order, {"--key", "k1"})).json()["repeated"], false);
    const Ran again = change(on("accept", order, {"--key", "k1"}));
    EXPECT_EQ(again.exit, 0);
    EXPECT_EQ(again.json()["repeated"], true);
    EXPECT_EQ(again.json()["version"], 3) << "received, accepted, put on its route";
    EXPECT_EQ(change(on("start", order, {"--key", "k1"})).exit, 1);
}

// A station and a key stand in the ledger for good, and in clear: a name typed there would too.
TEST_F(CommandLine, TakesNoTextWhereTheLedgerKeepsACode) {
    const std::string order = logged(today("upper-iii-mod-1"));
    const auto entries = lab({"verify", "--json"}).json()["entries"];
    for (const char* text :
         {"wax bench", "Zoë", "wax-1\n", "1-wax", "a-code-of-more-than-24-signs"}) {
        const Ran ran = change(on("scan", order, {"--station", text}));
        EXPECT_EQ(ran.exit, 2) << text;
        EXPECT_THAT(ran.err, AllOf(HasSubstr("--station"), HasSubstr("a letter, then letters")));
    }
    for (const QString& text :
         {QString{}, QString{"for Zoe"}, QString{"Zoë"}, QString{"k\t1"}, QString(65, 'k')}) {
        const Ran ran = change(on("scan", order, {"--key", text}));
        EXPECT_EQ(ran.exit, 2) << text.toStdString();
        EXPECT_THAT(ran.err, AllOf(HasSubstr("--key"), HasSubstr("1 to 64 letters")));
    }
    const Ran around = run(on("scan", order, {"--as", "MK", "--lab", labFolder()}), {},
                           {"FRAMEWRIGHT_STATION=wax bench"});
    EXPECT_EQ(around.exit, 2);
    EXPECT_THAT(around.err, HasSubstr("$FRAMEWRIGHT_STATION \"wax bench\" is no station's code"));
    EXPECT_EQ(lab({"verify", "--json"}).json()["entries"], entries);
    EXPECT_THAT(change(on("accept", order, {"--station", "desk-1"})).err,
                HasSubstr("\"desk-1\" is no station here"));
    ASSERT_EQ(change({"stations", "desk-1", "wax-bench"}).exit, 0);
    EXPECT_EQ(
        change(on("accept", order,
                  {"--key", "2f1c6a3e-9d5b-4f0e-8a57-6b1d0c9e7f42:accept", "--station", "desk-1"}))
            .exit,
        0);
}

// Whose names somebody looked at stands in the access log once a day, and the ledger grows by none.
TEST_F(CommandLine, NotesWhoseNamesWereShown) {
    const std::string order = logged(today("upper-iii-mod-1"));
    const auto before = lab({"verify", "--json"}).json();
    for (const QStringList& words : {on("order", order), on("order", order), QStringList{"floor"}})
        EXPECT_EQ(change(words).exit, 0);
    const auto after = lab({"verify", "--json"}).json();
    EXPECT_EQ(after["access-entries"], before["access-entries"].get<int>() + 1);
    EXPECT_EQ(after["entries"], before["entries"]);
}

TEST_F(CommandLine, LogsTheSameFileOnceOnly) {
    const QString file = today("upper-iii-mod-1");
    const std::string first = logged(file);
    const Ran again = change({"log", file});
    EXPECT_EQ(again.json()["order"], first);
    EXPECT_EQ(again.json()["repeated"], true);
}

TEST_F(CommandLine, KeepsNothingOfAFileItCannotRead) {
    const auto entries = lab({"verify", "--json"}).json()["entries"];
    const Ran refused = change({"log", today("upper-iii-mod-1", "\"upper\"", "\"uper\"")});
    EXPECT_EQ(refused.exit, 2);
    EXPECT_EQ(lab({"floor", "--json"}).json()["orders"].size(), 0U);
    EXPECT_EQ(lab({"verify", "--json"}).json()["entries"], entries);
}

TEST_F(CommandLine, NoticesAnEditedRecord) {
    logged(today("upper-iii-mod-1"));
    QProcess shell;
    shell.start("sqlite3", {folder_.filePath("lab/records.db"), ".dbconfig enable_trigger off",
                            "UPDATE ledger SET person = 'XX' WHERE subject_version = 1;"});
    ASSERT_TRUE(shell.waitForFinished());
    ASSERT_EQ(shell.exitCode(), 0) << shell.readAllStandardError().toStdString();
    const Ran ran = lab({"verify"});
    EXPECT_EQ(ran.exit, 3);
    EXPECT_THAT(ran.out, HasSubstr("THE RECORDS WERE CHANGED"));
}

TEST_F(CommandLine, ListsEveryRuleWithItsSourceAndExplainsOne) {
    const auto rules = run({"rules", "--json"}).json()["rules"];
    EXPECT_GE(rules.size(), 85U);
    for (const auto& rule : rules) {
        EXPECT_FALSE(rule["source"].get<std::string>().empty()) << rule["rule"];
        EXPECT_FALSE(rule["severity"].get<std::string>().empty()) << rule["rule"];
    }
    EXPECT_THAT(run({"rules", "clasp.reciprocation"}).out,
                AllOf(HasSubstr("conflict  clasp.reciprocation"), HasSubstr("source:")));
    EXPECT_EQ(run({"rules", "clasp.reciprocation", "--json"}).json()["severity"], "conflict");
    EXPECT_THAT(run({"rules", "--markdown"}).out,
                AllOf(HasSubstr("|---|---|---|---|"), HasSubstr("| clasp.force | caution |")));
    EXPECT_THAT(run({"rules"}).out, HasSubstr(std::to_string(rules.size()) + " rules"));
    const Ran unknown = run({"rules", "clasp.colour"});
    EXPECT_EQ(unknown.exit, 2);
    EXPECT_THAT(unknown.err, HasSubstr("clasp.colour"));
}

TEST_F(CommandLine, DescribesADesignInAPage) {
    const Ran page = run({"describe", today("upper-ii-mod-1")});
    EXPECT_EQ(page.exit, 0) << page.err;
    EXPECT_THAT(page.out, AllOf(HasSubstr("Kennedy II mod 1"),
                                HasSubstr("fulcrum line: through the rests on"),
                                HasSubstr("indirect retainer"), HasSubstr("score: 4 of 4"),
                                HasSubstr("The prescriber decides.")));
    const auto described = run({"describe", today("upper-ii-mod-1"), "--json"}).json();
    EXPECT_EQ(described["schema"], "description-1");
    EXPECT_EQ(described["saddles"].size(), 2U);
    EXPECT_EQ(described["clasps"].size(), 3U);
    EXPECT_GT(described["fulcrum"]["load-arm-mm"], 10);
    EXPECT_LT(described["clasps"][0]["tip-force-N"]["least"],
              described["clasps"][0]["tip-force-N"]["most"]);
    EXPECT_EQ(described["complete-percent"], 100);
    for (const char* name : {"lower-i", "upper-iii-mod-1", "upper-iv", "interim-upper",
                             "nickel-conflict", "survey-missing", "notation-undeclared"})
        EXPECT_EQ(run({"describe", today(name)}).exit, 0) << name;
    EXPECT_EQ(run({"describe", "/nowhere.json"}).exit, 2);
}

// 7 mm in one school, 8 mm in another; the mean mouth has 7.44 mm (Cameron et al. 2002).
TEST_F(CommandLine, ExaminesByTheLimitsOfTheLaboratory) {
    const QString file =
        today("lower-i", "\"lingual-depth\": \"9 mm\"", "\"lingual-depth\": \"7.44 mm\"");
    EXPECT_EQ(change({"limits", "lingual-bar-space", "8 mm"}).exit, 0);
    EXPECT_THAT(lab({"check", file}).out, HasSubstr("7.44 mm given; this laboratory asks 8 mm"));
    EXPECT_EQ(change({"limits", "lingual-bar-space", "7.2 mm"}).exit, 0);
    EXPECT_THAT(lab({"check", file}).out, testing::Not(HasSubstr("connector.lingual-space")));
    const auto findings = lab({"order", QString::fromStdString(logged(file)), "--json"}).json();
    for (const auto& finding : findings["findings"])
        EXPECT_NE(finding["rule"], "connector.lingual-space");
    const auto limits = lab({"limits", "lingual-bar-space", "--json"}).json()["limits"];
    ASSERT_EQ(limits.size(), 1U);
    EXPECT_EQ(limits[0]["value"], "7.2 mm");
    EXPECT_EQ(limits[0]["default"], "7 mm");
    EXPECT_EQ(change({"limits", "lingual-bar-space", "default"}).exit, 0);
    EXPECT_THAT(lab({"limits", "lingual-bar-space"}).out, HasSubstr("7 mm"));
    EXPECT_EQ(lab({"limits", "--json"}).json()["limits"].size(), 14U);
    for (const QStringList& words : {QStringList{"limits", "lingual-bar-space", "7 cm"},
                                     {"limits", "lingual-bar-space", "0 mm"},
                                     {"limits", "lingual-bar-space", "7"},
                                     {"limits", "moon"},
                                     {"limits", "moon", "default"}})
        EXPECT_EQ(change(words).exit, 2) << words.join(' ').toStdString();
}

// A finding keeps its words as they were: the paper of yesterday stays true.
TEST_F(CommandLine, KeepsTheFindingsOfAnOrderWhenALimitChanges) {
    EXPECT_EQ(change({"limits", "lingual-bar-space", "8 mm"}).exit, 0);
    const std::string order =
        logged(today("lower-i", "\"lingual-depth\": \"9 mm\"", "\"lingual-depth\": \"7.44 mm\""));
    EXPECT_EQ(change({"limits", "lingual-bar-space", "7 mm"}).exit, 0);
    EXPECT_THAT(lab(on("order", order)).out, HasSubstr("7.44 mm given; this laboratory asks 8 mm"));
}

TEST_F(CommandLine, MatchesAColourWithTheTabsOfAGuide) {
    const auto tabs =
        lab({"shades", "A-D scale", "--measured", "76.04 -0.08 16.73", "--json"}).json()["tabs"];
    ASSERT_EQ(tabs.size(), 16U);
    EXPECT_EQ(tabs[0]["tab"], "A2");
    EXPECT_EQ(tabs[0]["difference"], "0.00");
    EXPECT_THAT(lab({"shades"}).out, AllOf(HasSubstr("A-D scale"), HasSubstr("from memory")));
    EXPECT_EQ(lab({"shades", "A-D scale", "--measured", "grey"}).exit, 2);
    EXPECT_EQ(lab({"shades", "the old one"}).exit, 2);
}

TEST_F(CommandLine, TakesAGuideTheLaboratoryMeasured) {
    QFile file{folder_.filePath("guide.csv")};
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("tab,L*,a*,b*\r\nM1,78.1,-1.2,12\nM2,,,\n");
    file.close();
    EXPECT_EQ(change({"shades", "Bench guide", "--file", file.fileName()}).exit, 0);
    const auto guides = lab({"shades", "--json"}).json()["guides"];
    ASSERT_EQ(guides.size(), 2U);
    EXPECT_EQ(guides[1]["guide"], "Bench guide");
    EXPECT_EQ(guides[1]["tabs"][0]["colour"], "78.1 -1.2 12");
    EXPECT_TRUE(guides[1]["tabs"][1]["colour"].is_null());
    const QString prescription = today("upper-iii-mod-1", "\"A-D scale\"", "\"bench guide\"");
    EXPECT_THAT(lab({"check", prescription}).out, HasSubstr("shade.tab-known"));
    EXPECT_EQ(change({"shades", "Bench guide", "--file", "/nowhere.csv"}).exit, 2);
    EXPECT_EQ(change({"shades", "--file", file.fileName()}).exit, 2);
}

TEST_F(CommandLine, HelpsWithAnExampleForEveryVerb) {
    const Ran all = run({"--help"});
    EXPECT_EQ(all.exit, 0);
    for (const char* verb : {"classify", "check", "log", "accept", "start", "done", "flag",
                             "answer", "order", "floor", "print", "verify", "demo", "describe",
                             "rules", "limits", "shades", "letterhead", "bench"}) {
        EXPECT_THAT(all.out, HasSubstr(verb));
        const Ran one = run({verb, "--help"});
        EXPECT_EQ(one.exit, 0);
        EXPECT_THAT(one.out, HasSubstr(std::string{"example: framewright "} + verb));
    }
    EXPECT_THAT(run({"--version"}).out, HasSubstr("framewright "));
}

TEST_F(CommandLine, DemoBringsOneCaseToDeliveryAndRefusesThree) {
    const QString folder = folder_.filePath("demo");
    const Ran ran = run({"demo", "--folder", folder});
    ASSERT_EQ(ran.exit, 0) << ran.err;
    EXPECT_THAT(ran.out, AllOf(HasSubstr("delivered"), HasSubstr("refused, asked, answered"),
                               HasSubstr(".pdf"), HasSubstr("verified")));
    EXPECT_EQ(run({"demo", "--folder", folder}).exit, 0);          // its own folder again
    EXPECT_EQ(run({"demo", "--folder", folder_.path()}).exit, 2);  // somebody else's
    EXPECT_EQ(run({"verify", "--lab", folder}).exit, 0);
}

}  // namespace

int main(int count, char** words) {
    QCoreApplication application{count, words};
    testing::InitGoogleTest(&count, words);
    return RUN_ALL_TESTS();
}
