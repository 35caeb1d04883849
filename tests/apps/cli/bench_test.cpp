/// The verb `bench`, run as a person runs it.
#include <gmock/gmock.h>

#include <QFile>
#include <QTemporaryDir>

#include "tests/apps/cli/program.h"

namespace {

using cli_test::Ran;
using cli_test::run;
using testing::AllOf;
using testing::HasSubstr;

class Bench : public testing::Test {
protected:
    /// An invented log of 45 min of heating, a hold, and so many minutes of cooling.
    QString cureLog(int celsius, int holdMinutes, int coolMinutes) {
        QByteArray text = "minutes,celsius\n0,20\n";
        const int cold = 45 + holdMinutes + coolMinutes;
        for (int minute = 45; minute <= 45 + holdMinutes; minute += 5)
            text += QByteArray::number(minute) + ',' + QByteArray::number(celsius) + '\n';
        for (int minute = 50 + holdMinutes; minute < cold; minute += 5)
            text += QByteArray::number(minute) + ",50\n";
        text += QByteArray::number(cold) + ",35\n";
        text.replace("\n45,", "\n10,40\n20,50\n30,60\n40,65\n45,");
        const QString path = folder_.filePath(QString{"cure-%1.csv"}.arg(++files_));
        QFile file{path};
        EXPECT_TRUE(file.open(QIODevice::WriteOnly) && file.write(text) == text.size());
        return path;
    }

    QTemporaryDir folder_;
    int files_{0};
};

// 5 g of wax in gold of SG 13.5, a tenth for the button: 74.25 g; published wax-to-metal table.
TEST_F(Bench, ComputesThePublishedChargeOfAlloyWithUnits) {
    const QStringList words{"bench",
                            "alloy",
                            "--wax",
                            "5 g",
                            "--material",
                            "gold-type-iv",
                            "--alloy-density",
                            "13.5 g/cm3",
                            "--pattern-density",
                            "1 g/cm3"};
    const Ran ran = run(words);
    EXPECT_EQ(ran.exit, 0) << ran.err;
    EXPECT_THAT(ran.out,
                AllOf(HasSubstr("alloy to melt"), HasSubstr("74.25 g"), HasSubstr("caution: ")));
    const auto json = run(QStringList{words} << "--json").json();
    EXPECT_EQ(json["schema"], "bench-1");
    EXPECT_EQ(json["figures"].back()["most"], "74.25 g");
}

TEST_F(Bench, WritesEveryFigureOfTheBenchWithItsUnitAndSource) {
    for (const QStringList& words :
         {QStringList{"alloy", "--wax", "5 g", "--sprue", "3 g", "--material", "cobalt-chromium",
                      "--button", "8 g"},
          {"investment", "--powder", "300 g", "--mixture", "phosphate-investment"},
          {"investment", "--powder", "100 g", "--mixture", "stone", "--ratio", "0.3 ml/g"},
          {"resin", "--powder", "24 g"}}) {
        const auto json = run(QStringList{"bench"} << words << "--json").json();
        EXPECT_GE(json["figures"].size(), 3U);
        for (const auto& figure : json["figures"]) {
            for (const char* end : {"least", "most"})
                EXPECT_THAT(figure[end], testing::MatchesRegex("[0-9.]+ (g|ml|g/cm3|ml/g)"));
            EXPECT_FALSE(figure["source"].get<std::string>().empty()) << figure;
        }
    }
    const Ran burnOut = run({"bench", "burn-out", "cobalt-chromium"});
    EXPECT_THAT(burnOut.out, AllOf(HasSubstr("in all 261 min"), HasSubstr("from memory")));
    EXPECT_THAT(run({"bench", "resin"}).out,
                AllOf(HasSubstr("short-65-boil"), HasSubstr("highest porosity")));
}

TEST_F(Bench, AcceptsACureThatKeptItsCycleAndRefusesOneThatDidNot) {
    const QStringList asked{"--cycle", "long-74", "--thickness", "4 mm"};
    const Ran good = run(QStringList{"bench", "cure", cureLog(74, 480, 40)} << asked);
    EXPECT_EQ(good.exit, 0) << good.out << good.err;
    EXPECT_THAT(good.out, AllOf(HasSubstr("accepted by the cycle long-74"), HasSubstr("480 min"),
                                HasSubstr("SHA-256")));
    const QStringList bad = QStringList{"bench", "cure", cureLog(74, 470, 20)} << asked;
    const Ran refused = run(bad);
    EXPECT_EQ(refused.exit, 1) << refused.err;
    EXPECT_THAT(refused.out, AllOf(HasSubstr("hold-too-short  74 C was kept for 470 min"),
                                   HasSubstr("cooled-too-fast")));
    const auto json = run(QStringList{bad} << "--json").json();
    EXPECT_EQ(json["accepted"], false);
    EXPECT_EQ(json["complaints"].size(), 2U);
    EXPECT_EQ(json["digest"].get<std::string>().size(), 64U);
    EXPECT_EQ(run({"bench", "cure", cureLog(100, 30, 40), "--cycle", "direct-boil"}).exit, 1);
}

TEST_F(Bench, RefusesABenchCalculationThatCannotBeDone) {
    for (const auto& [words, exit] : std::initializer_list<std::pair<QStringList, int>>{
             {{"dance"}, 2},
             {{"alloy"}, 2},
             {{"alloy", "file"}, 2},
             {{"alloy", "--material", "titanium"}, 2},
             {{"alloy", "--material", "titanium", "--wax", "5"}, 2},
             {{"alloy", "--material", "tin", "--wax", "5 g"}, 2},
             {{"alloy", "--material", "titanium", "--wax", "5 g", "--cycle", "long-74"}, 2},
             {{"alloy", "--material", "titanium", "--wax", "0 g"}, 1},
             {{"alloy", "--material", "acetal", "--wax", "5 g"}, 1},
             {{"investment", "--powder", "1 g"}, 2},
             {{"investment", "--powder", "100 g", "--mixture", "stone", "--ratio", "0.4 ml/g"}, 1},
             {{"burn-out"}, 2},
             {{"burn-out", "titanium"}, 1},
             {{"resin", "--powder", "24 ml"}, 2},
             {{"cure", "/nowhere.csv", "--cycle", "long-74"}, 2},
             {{"cure", "/nowhere.csv"}, 2},
             {{"cure", "--cycle", "long-74"}, 2}}) {
        const Ran ran = run(QStringList{"bench"} << words);
        EXPECT_EQ(ran.exit, exit) << words.join(' ').toStdString() << ran.out << ran.err;
        EXPECT_FALSE(ran.err.empty());
    }
}

}  // namespace
