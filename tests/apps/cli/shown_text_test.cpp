/// A text from outside neither steers the terminal nor forges a line, whichever verb shows it.
#include <gmock/gmock.h>

#include <sstream>

#include "domain/base/plain_text.h"
#include "tests/apps/cli/laboratory_program.h"

namespace {

using cli_test::Ran;
using cli_test::run;
using domain::Stage;
using support::kInspector;
using support::kMaker;
using support::kManager;
using testing::HasSubstr;

/// Clears the screen, ends its line in every way there is and begins one of its own, and turns
/// what follows: ESC, LF, CR, NEL, U+2028, U+2029, U+202E, U+200B, U+200D, CSI as C1, DEL.
const QString kHostile = QString::fromUtf8(
    "Zoe\x1B[2J\nFORGED\r\nFORGED\u0085FORGED\u2028FORGED\u2029FORGED\u202E71\u200B\u200D\u009B31m"
    "\x7F");
/// The same as far as a prescription may hold it: its reader refuses ESC and CR.
constexpr const char* kHostileJson =
    "Zoe\\nFORGED\\u0085FORGED\\u2028FORGED\\u2029FORGED\\u202e71\\u200b\\u200d\\u009b31m\\u007f";

std::vector<std::string> linesOf(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream stream{text};
    for (std::string line; std::getline(stream, line);) lines.push_back(line);
    return lines;
}

/// Every character but the line ends is seen, and no line is one the data brought.
void expectPlain(const std::string& text, const std::string& where) {
    for (const std::string& line : linesOf(text)) {
        EXPECT_EQ(domain::plainText(line), line) << where;
        EXPECT_FALSE(line.starts_with("FORGED")) << where << ": " << line;
    }
}

class ShownText : public cli_test::LaboratoryProgram {
protected:
    /// What people are shown of it: plain, and the hostile text in it spelt out.
    std::string shown(const Ran& ran, const std::string& where) {
        EXPECT_EQ(ran.exit, 0) << where << ran.err;
        expectPlain(ran.out, where);
        expectPlain(ran.err, where);
        EXPECT_THAT(ran.out, HasSubstr("[U+202E]")) << where;
        return ran.out;
    }
    std::string shownTo(std::string_view person, const QStringList& words) {
        return shown(told(person, words), words.join(' ').toStdString());
    }
    /// Refused, and plain although the sentence quotes what was given.
    void expectQuoted(const Ran& ran, const std::string& where) {
        EXPECT_NE(ran.exit, 0) << where;
        expectPlain(ran.out, where);
        expectPlain(ran.err, where);
        EXPECT_THAT(ran.err, HasSubstr("[U+202E]")) << where;
        EXPECT_EQ(linesOf(ran.err).size(), 1U) << where;
    }
    std::string hostileOrder() {
        return accepted(today("upper-iii-mod-1", "P-1041", kHostileJson));
    }
    void did(std::string_view person, const QStringList& words) {
        const Ran ran = told(person, words);
        EXPECT_EQ(ran.exit, 0) << words.join(' ').toStdString() << ran.err;
        expectPlain(ran.out + ran.err, words.join(' ').toStdString());
    }
};

TEST_F(ShownText, OfAPatientStaysInItsRowOfTheFloor) {
    hostileOrder();
    EXPECT_EQ(linesOf(shown(lab({"floor"}), "floor")).size(), 2U) << "the heading and one order";
}

TEST_F(ShownText, OfAnOrderAndItsHistoryStaysInItsRow) {
    const std::string order = hostileOrder();
    const auto before = linesOf(shown(lab(on("order", order)), "order")).size();
    did(kMaker, on("start", order));
    for (const QStringList& words : {QStringList{"--value", kHostile + '=' + kHostile},
                                     QStringList{"--disinfected", kHostile + "; 5 min"}}) {
        const Ran ran = told(kMaker, on("record", order, words));
        EXPECT_EQ(ran.exit, 1) << words.join(' ').toStdString();
        expectPlain(ran.out + ran.err, words.join(' ').toStdString());
    }
    did(kMaker, on("flag", order, {"shade-unclear", "--note", kHostile}));
    did(kManager, on("answer", order, {"--words", kHostile}));
    EXPECT_EQ(linesOf(shown(lab(on("order", order)), "order")).size(), before + 3)
        << "one row for each thing that was done";
    did(kManager, {"trace", "order", QString::fromStdString(order)});
    did(kManager, on("withdraw", order, {"--reason", kHostile}));
    shown(lab(on("order", order)), "order");
}

TEST_F(ShownText, OfATryInAndWhatIsDoneAgainStaysInItsRow) {
    const std::string order = hostileOrder();
    floor_.bringTo(number(order), Stage::Casting);
    floor_.begin(number(order));
    did(kMaker,
        on("redo", order, {"duplication", "porosity", "--fault", "investing", "--note", kHostile}));
    floor_.bringTo(number(order), Stage::FrameworkTryIn);
    floor_.readyAt(number(order), Stage::FrameworkTryIn);
    floor_.begin(number(order));
    did(kMaker,
        on("return", order, {"go-on", "--disinfected", "alcohol; 5 min", "--findings", kHostile}));
    floor_.bringTo(number(order), Stage::Delivery);
    floor_.begin(number(order));
    did(kInspector,
        on("statement", order,
           {"--conforms", "--representative", kHostile + "; " + kHostile, "--institution", kHostile,
            "--substances", kHostile, "--exception", kHostile, "--grounds", kHostile}));
    floor_.deliver(number(order));
    did(kManager, on("remake", order, {"does-not-fit", "--note", kHostile}));
    shown(lab(on("order", order)), "order");
}

TEST_F(ShownText, OfALotStaysInItsRow) {
    const auto before = linesOf(told(kManager, {"lots"}).out).size();
    did(kManager, {"lots", "AL-9", "--receive", "alloy", "--amount", "1000 g", "--material",
                   "cobalt-chromium", "--maker", kHostile, "--product", kHostile, "--number",
                   kHostile, "--udi", kHostile});
    EXPECT_EQ(linesOf(shown(lab({"lots"}), "lots")).size(), before + 1);
    EXPECT_EQ(linesOf(shownTo(kManager, {"trace", "lot", "AL-9"})).size(), 2U);
    did(kManager, {"lots", "AL-9", "--hold", kHostile});
    did(kManager, {"lots", "AL-9", "--release", kHostile});
    shownTo(kManager, {"recall", "AL-9", "--drill", "--reason", kHostile});
}

TEST_F(ShownText, OfTheHouseStaysInItsRow) {
    did(kManager, {"sites", "south", "--name", "South Foundry", "--address", "3 Kiln Road"});
    const auto sites = linesOf(lab({"sites"}).out).size();
    EXPECT_EQ(linesOf(shownTo(kManager, {"sites", "north", "--name", kHostile, "--address",
                                         kHostile, "--registration", kHostile}))
                  .size(),
              sites + 1);
    const auto equipment = linesOf(lab({"equipment"}).out).size();
    EXPECT_EQ(
        linesOf(shownTo(kManager, {"equipment", "kiln", "furnace", "--serial", kHostile})).size(),
        equipment + 1);
    EXPECT_EQ(linesOf(shownTo(kManager, {"letterhead", "--name", kHostile, "--address", kHostile,
                                         "--contact", kHostile}))
                  .size(),
              3U);
    const QStringList route{"routes", "cast-framework", "upper"};
    const auto before = linesOf(lab(route).out).size();
    const QStringList added{"--stage", "wax-up", "--add", kHostile};
    EXPECT_EQ(linesOf(shownTo(kManager, route + added)).size(), before);
    QFile tabs{folder_.filePath("tabs.csv")};
    ASSERT_TRUE(tabs.open(QIODevice::WriteOnly) &&
                tabs.write("tab,L*,a*,b*\nA2,76.04,-0.08,16.73"));
    tabs.close();
    shownTo(kManager,
            {"shades", QString::fromUtf8("Zoe\x1B[2J\nFORGED\u202E"), "--file", tabs.fileName()});
}

TEST_F(ShownText, OfAFileIsQuotedInOneLine) {
    for (const char* verb : {"check", "describe"}) {
        const QString file = today("upper-iii-mod-1", "\"upper\"",
                                   QByteArray{"\""} + kHostileJson + QByteArray{"\""});
        expectQuoted(run({verb, file}), verb);
        expectQuoted(run({verb, "/nowhere/" + kHostile}), verb);
    }
    expectQuoted(run({"classify", "--batch"}, "upper missing=\u202E\x1B\n"), "classify");
    EXPECT_THAT(run({"classify", "--batch"},
                    "upper missing=\x9B"
                    "31m\n")
                    .err,
                HasSubstr("\"[0x9B]31m\""));
}

// `rules` and the like take no free text; whatever they are given they quote.
TEST_F(ShownText, OfAnyArgumentIsQuotedInOneLineByEveryVerb) {
    expectQuoted(run({kHostile}), "no verb");
    for (const std::string& verb : cli_test::verbsInHelp()) {
        const QString name = QString::fromStdString(verb);
        for (int arguments = 0; arguments <= 3; ++arguments) {
            const Ran ran = told(kManager, QStringList{name} + QStringList(arguments, kHostile));
            expectPlain(ran.out, verb);
            expectPlain(ran.err, verb);
        }
        expectQuoted(told(kManager, {name, "--" + kHostile}), verb);
    }
}

TEST_F(ShownText, OfAnyOptionIsQuotedInOneLineByEveryVerb) {
    const std::string order = hostileOrder();
    for (const std::string& verb : cli_test::verbsInHelp())
        for (const std::string& line : linesOf(run({QString::fromStdString(verb), "--help"}).out)) {
            if (!line.starts_with("  --")) continue;
            const QString option = QString::fromStdString(line.substr(2, line.find(' ', 2) - 2));
            const bool isShared = QStringList{"--key", "--station", "--seen"}.contains(option);
            if (isShared && verb != "accept") continue;  // one reader reads them for all
            if (option == "--lab" || option == "--as" || option == "--json") continue;
            const Ran ran = told(kManager, {QString::fromStdString(verb),
                                            QString::fromStdString(order), option, kHostile});
            expectPlain(ran.out, verb);
            expectPlain(ran.err, verb);
        }
}

TEST_F(ShownText, OfAFolderOrAFileToWriteIsShownInOneLine) {
    expectQuoted(run({"floor", "--lab", "/sys/" + kHostile}), "floor --lab");
    expectQuoted(run({"accept", "26000017", "--as", kHostile, "--lab", labFolder()}), "--as");
    const std::string order = hostileOrder();
    const QString paper = folder_.filePath(kHostile + ".pdf");
    const std::string printed = shownTo(kManager, on("print", order, {"ticket", "--to", paper}));
    EXPECT_EQ(linesOf(printed).size(), 1U);
    EXPECT_TRUE(QFile::exists(paper));
    const Ran demo = run({"demo", "--folder", folder_.filePath("demo " + kHostile)});
    shown(demo, "demo");
}

TEST_F(ShownText, IsExactForProgramsAndSteersNoTerminalEither) {
    const Ran ran = as(kManager, {"sites", "north", "--name", kHostile, "--address",
                                  "Žižkov \U0001F600 \U000E0041"});
    ASSERT_EQ(ran.exit, 0) << ran.err;
    expectPlain(ran.out, "sites --json");
    const auto told = ran.json();
    ASSERT_EQ(told["sites"].size(), 1U);
    EXPECT_EQ(told["sites"][0]["name"], kHostile.toStdString());
    EXPECT_EQ(told["sites"][0]["address"], "Žižkov \U0001F600 \U000E0041");
    EXPECT_THAT(ran.out, HasSubstr("Žižkov \U0001F600 \\udb40\\udc41"));
    const std::string order = hostileOrder();
    expectPlain(lab({"floor", "--json"}).out, "floor --json");
    expectPlain(lab(on("order", order, {"--json"})).out, "order --json");
}

}  // namespace
