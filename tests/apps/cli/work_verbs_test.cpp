/// Orders from receipt to delivery through the program itself, and what every verb owes its users.
#include <gmock/gmock.h>

#include <algorithm>
#include <iterator>

#include "tests/apps/cli/laboratory_program.h"

namespace {

using cli_test::Ran;
using cli_test::run;
using cli_test::verbsInHelp;
using domain::Stage;
using support::kInspector;
using support::kMaker;
using support::kManager;
using support::kOther;
using testing::AllOf;
using testing::HasSubstr;

/// What is typed at each stage of a cast framework of the upper arch of the demo.
struct TypedStage {
    const char* stage;
    QStringList records;
    bool atPractice{};
};

class WorkVerbs : public cli_test::LaboratoryProgram {
protected:
    /// A log of 9 h at 74 C with slow heating and cooling.
    QString cureLog() {
        QByteArray text = "minutes,celsius\n0,20\n10,40\n20,50\n30,60\n40,65\n";
        for (int minute = 45; minute <= 45 + 9 * 60; minute += 5)
            text += QByteArray::number(minute) + ",74\n";
        for (int minute = 590; minute < 645; minute += 5)
            text += QByteArray::number(minute) + ",50\n";
        text += "645,35\n";
        QFile file{folder_.filePath("cure.csv")};
        EXPECT_TRUE(file.open(QIODevice::WriteOnly) && file.write(text) == text.size());
        return file.fileName();
    }
    std::vector<TypedStage> typed() {
        const QStringList disinfected{"--disinfected", "sodium hypochlorite 0.5 %; 10 min"};
        return {
            {"receipt", QStringList{"--all-ticked"} + disinfected},
            {"survey",
             {"--all-ticked", "--undercut", "16=0.25 mm", "--undercut", "13=0.25 mm", "--undercut",
              "23=0.25 mm", "--undercut", "27=0.25 mm", "--tripod", "--equipment", "the-surveyor"}},
            {"block-out", {"--all-ticked"}},
            {"duplication", {"--all-ticked"}},
            {"wax-up", {"--all-ticked", "--value", "wax=5 g"}},
            {"investing",
             {"--all-ticked", "--lot", "lot-investment=300 g", "--equipment", "the-furnace"}},
            {"casting",
             {"--all-ticked", "--lot", "lot-alloy=23.4 g", "--new-metal", "60 %", "--mass",
              "18.2 g", "--equipment", "the-caster"}},
            {"finishing", {"--all-ticked"}},
            {"framework-try-in", disinfected, true},
            {"tooth-set-up",
             {"--all-ticked", "--lot", "lot-teeth=5 pcs", "--teeth",
              "match neighbours; A-D scale; A3"}},
            {"tooth-try-in", disinfected, true},
            {"processing",
             {"--all-ticked", "--lot", "lot-resin-powder=24 g", "--cure", cureLog(), "--cycle",
              "long-74", "--thickness", "4 mm", "--equipment", "the-curing-bath"}},
            {"polishing", {"--all-ticked"}},
            {"inspection", {"--all-ticked"}},
            {"delivery", QStringList{"--all-ticked"} + disinfected}};
    }
    void pass(const std::string& order, const TypedStage& typed) {
        const auto who = support::Floor::workerOf(*domain::parseCode<Stage>(typed.stage));
        if (!typed.atPractice) {
            ASSERT_EQ(as(who, on("start", order, {typed.stage})).exit, 0) << typed.stage;
        }
        const Ran recorded = as(who, on("record", order) + typed.records);
        ASSERT_EQ(recorded.exit, 0) << typed.stage << recorded.err;
        if (QString{typed.stage} == "delivery") {
            const Ran issued = as(who, on("statement", order,
                                          {"--conforms", "--representative", "none",
                                           "--institution", "none", "--substances", "none"}));
            ASSERT_EQ(issued.exit, 0) << issued.err;
        }
        const Ran gate = as(who, on("gate", order));
        ASSERT_EQ(gate.exit, 0) << gate.out;
        if (!typed.atPractice) {
            const Ran done = as(who, on("done", order));
            ASSERT_EQ(done.exit, 0) << typed.stage << done.err;
            return;
        }
        ASSERT_EQ(as(who, on("start", order)).exit, 0) << typed.stage;
        const Ran back = as(who, on("return", order, {"go-on", "--disinfected", "alcohol; 5 min"}));
        ASSERT_EQ(back.exit, 0) << back.err;
    }
};

TEST_F(WorkVerbs, BringAGoodPrescriptionToDelivery) {
    const std::string order = accepted(today("upper-iii-mod-1"));
    EXPECT_EQ(as(kMaker, on("start", order, {"casting"})).exit, 1);
    for (const TypedStage& stage : typed()) {
        const Ran shut = as(kMaker, on("done", order));
        EXPECT_EQ(shut.exit, 1) << stage.stage;
        pass(order, stage);
        if (HasFailure()) return;
    }
    const auto shown = lab(on("order", order, {"--json"})).json();
    EXPECT_EQ(shown["status"], "delivered");
    EXPECT_EQ(shown["steps"].size(), 15U);
    const Ran refused = as(kMaker, on("start", order));
    EXPECT_EQ(refused.exit, 1);
    EXPECT_THAT(refused.err, HasSubstr("delivered already"));
    const auto traced = as(kManager, {"trace", "lot", "lot-alloy"}).json();
    EXPECT_EQ(traced["lots"][0]["devices"][0]["order"], order);
    EXPECT_EQ(lab({"verify"}).exit, 0);
}

TEST_F(WorkVerbs, ListWhatAGateLacks) {
    const std::string order = accepted(today("upper-iii-mod-1"));
    floor_.bringTo(number(order), Stage::Casting);
    floor_.begin(number(order));
    const Ran gate = as(kMaker, on("gate", order));
    EXPECT_EQ(gate.exit, 1);
    const auto told = gate.json();
    EXPECT_EQ(told["schema"], "gate-1");
    std::vector<std::string> rules;
    for (const auto& lack : told["lacking"]) rules.push_back(lack["rule"]);
    EXPECT_THAT(rules, testing::ElementsAre("gate.checklist", "gate.alloy-lot", "gate.new-metal",
                                            "gate.cast-mass", "gate.caster"));
    EXPECT_THAT(as(kMaker, on("done", order)).err, HasSubstr("no lot of alloy recorded"));
}

TEST_F(WorkVerbs, RefuseADecisionOnAnOrderThatChangedMeanwhile) {
    const std::string order = accepted(today("upper-iii-mod-1"));
    const int seen = lab(on("order", order, {"--json"})).json()["version"];
    EXPECT_EQ(as(kMaker, on("scan", order)).exit, 0);
    const Ran late = as(kOther, on("start", order, {"--seen", QString::number(seen)}));
    EXPECT_EQ(late.exit, 1);
    EXPECT_THAT(late.err, AllOf(HasSubstr("was changed meanwhile"), HasSubstr("by JT")));
    EXPECT_EQ(as(kOther, on("start", order, {"--seen", "none"})).exit, 2);
}

TEST_F(WorkVerbs, TakeADoubleScanForOne) {
    const std::string order = accepted(today("upper-iii-mod-1"));
    EXPECT_EQ(as(kMaker, on("scan", order)).json()["repeated"], false);
    const Ran again = as(kMaker, on("scan", order));
    EXPECT_EQ(again.exit, 0) << again.err;
    EXPECT_EQ(again.json()["repeated"], true);
}

TEST_F(WorkVerbs, RefuseRecordsTheyCannotRead) {
    const std::string order = accepted(today("upper-iii-mod-1"));
    floor_.begin(number(order));
    for (const QStringList& wrong : {QStringList{},
                                     {"--undercut", "14"},
                                     {"--undercut", "99=0.25 mm"},
                                     {"--undercut", "14=0.25"},
                                     {"--lot", "lot-alloy=many"},
                                     {"--lot", "lot-teeth=0 pcs"},
                                     {"--teeth", "mould; guide"},
                                     {"--disinfected", "alcohol"},
                                     {"--new-metal", "60"},
                                     {"--mass", "-3 g"},
                                     {"--cure", "/nowhere.csv", "--cycle", "long-74"},
                                     {"--cure", "/nowhere.csv"},
                                     {"--value", "nothing"}})
        EXPECT_EQ(as(kMaker, on("record", order) + wrong).exit, 2) << wrong.join(' ').toStdString();
    EXPECT_THAT(as(kMaker, on("record", order, {"--tick", "the moon is full"})).err,
                HasSubstr("is not on the checklist of receipt"));
    EXPECT_EQ(as(kMaker, on("take-back", order, {"perhaps"})).exit, 2);
}

TEST_F(WorkVerbs, RefuseWhoMayNotAndSayWhoMay) {
    const std::string order = logged(today("upper-iii-mod-1"));
    const Ran refused = as(kMaker, on("accept", order));
    EXPECT_EQ(refused.exit, 1);
    EXPECT_THAT(refused.err, AllOf(HasSubstr("JT is technician"), HasSubstr("manager")));
    EXPECT_EQ(run(on("accept", order, {"--as", "MK", "--lab", labFolder()})).exit, 1)
        << "nobody was signed in";
}

TEST(EveryVerb, IsInTheHelpWithAnExampleOfItself) {
    const auto verbs = verbsInHelp();
    EXPECT_GE(verbs.size(), 45U);
    for (const std::string& verb : verbs) {
        const Ran one = run({QString::fromStdString(verb), "--help"});
        EXPECT_EQ(one.exit, 0) << verb;
        EXPECT_THAT(one.out, HasSubstr("example: framewright " + verb));
    }
}

/// The words of an example, quotes read as a shell reads them.
QStringList wordsOf(const std::string& example) {
    return QProcess::splitCommand(QString::fromStdString(example));
}

// An example that names an option the verb does not take would be refused as unknown.
TEST(EveryVerb, TakesTheOptionsOfItsOwnExample) {
    for (const std::string& verb : verbsInHelp()) {
        const std::string help = run({QString::fromStdString(verb), "--help"}).out;
        const std::string example = help.substr(help.find("example: ") + 9);
        for (const QString& word : wordsOf(example)) {
            if (!word.startsWith("--")) continue;
            EXPECT_THAT(help, HasSubstr("\n  " + word.toStdString() + ' ')) << verb;
        }
    }
}

class EveryVerbThatPrints : public WorkVerbs {
protected:
    /// Runs a verb with --json and looks at what it prints.
    void expectSchema(const Ran& ran, const std::string& verb) {
        spoken_.push_back(verb);
        EXPECT_EQ(ran.exit, 0) << verb << ": " << ran.err;
        const auto json = nlohmann::json::parse(ran.out, nullptr, false);
        ASSERT_FALSE(json.is_discarded()) << verb << ": " << ran.out;
        ASSERT_TRUE(json.is_object() && json.contains("schema")) << verb << ": " << ran.out;
        const std::string schema = json["schema"];
        const auto dash = schema.rfind('-');
        ASSERT_NE(dash, std::string::npos) << schema;
        EXPECT_FALSE(schema.substr(dash + 1).empty()) << schema;
        EXPECT_TRUE(std::ranges::all_of(schema.substr(dash + 1),
                                        [](char c) { return c >= '0' && c <= '9'; }))
            << verb << ": " << schema;
    }
    void say(std::string_view person, const QStringList& words) {
        expectSchema(as(person, words), words.front().toStdString());
    }
    /// For a verb that asks for no person.
    void ask(const QStringList& words) {
        expectSchema(run(words + QStringList{"--json"}), words.front().toStdString());
    }
    void askLab(const QStringList& words) {
        expectSchema(lab(words + QStringList{"--json"}), words.front().toStdString());
    }
    void typeTo(const QStringList& words, const QByteArray& typed) {
        expectSchema(run(words + QStringList{"--json", "--lab", folder_.filePath("other")}, typed),
                     words.front().toStdString());
    }
    void sayOnOrders();
    void sayOnTheWorkshop();
    void sayOnPeople();

    std::vector<std::string> spoken_;
};

void EveryVerbThatPrints::sayOnOrders() {
    const QString file = today("upper-iii-mod-1");
    say(kManager, {"log", file});
    const std::string order = logged(file);
    say(kManager, on("accept", order));
    say(kMaker, on("scan", order));
    say(kMaker, on("record", order, {"--all-ticked", "--disinfected", "alcohol; 5 min"}));
    say(kMaker, on("gate", order));
    say(kMaker, on("done", order));
    say(kMaker, on("start", order));
    say(kMaker, on("redo", order, {"survey", "poor-fit"}));
    say(kMaker, on("flag", order, {"shade-unclear"}));
    say(kManager, on("print", order, {"questions"}));
    say(kManager, on("answer", order, {"--words", "as drawn"}));
    floor_.bringTo(number(order), Stage::WaxUp);
    say(kManager,
        {"sites", "north-foundry", "--name", "North Foundry", "--address", "2 Kiln Road"});
    say(kManager, on("send-out", order, {"north-foundry"}));
    say(kManager, on("take-back", order, {"passed"}));
    if (HasFailure()) return;
    floor_.bringTo(number(order), Stage::FrameworkTryIn);
    floor_.readyAt(number(order), Stage::FrameworkTryIn);
    floor_.begin(number(order));
    say(kMaker, on("return", order, {"go-on", "--disinfected", "alcohol; 5 min"}));
    floor_.bringTo(number(order), Stage::Delivery);
    floor_.begin(number(order));
    say(kInspector, on("statement", order,
                       {"--conforms", "--representative", "none", "--institution", "none",
                        "--substances", "none"}));
    floor_.deliver(number(order));
    say(kManager, on("remake", order, {"does-not-fit"}));
    const std::string second = logged(today("lower-i"));
    const std::string third = logged(today("lower-i", "\"medium pink\"", "\"light pink\""));
    say(kManager, on("case", third, {QString::fromStdString(second)}));
    say(kManager, on("withdraw", third, {"--reason", "moved away"}));
    askLab(on("order", order));
    askLab({"floor"});
    say(kManager, {"trace", "order", QString::fromStdString(order)});
}

void EveryVerbThatPrints::sayOnTheWorkshop() {
    say(kManager, {"lots"});
    say(kManager, {"recall", "lot-alloy", "--drill", "--reason", "drill"});
    say(kManager, {"equipment", "the-furnace", "--due", "2199-01-01"});
    say(kManager, {"routes", "cast-framework", "upper"});
    say(kManager, {"retention", "eu"});
    say(kManager, {"clock"});
    askLab({"verify"});
    say(kManager, {"letterhead", "--name", "Westhaven Prosthetic Workshop"});
    askLab({"limits"});
    askLab({"shades"});
    const QString file = today("upper-iii-mod-1");
    askLab({"check", file});
    ask({"describe", file});
    ask({"rules"});
    ask({"classify", "--arch", "upper", "--missing", "14,15"});
    ask({"bench", "resin"});
}

void EveryVerbThatPrints::sayOnPeople() {
    typeTo({"set-up", "XY"}, "a lamp over every bench\n");
    typeTo({"sign-in", "XY"}, "a lamp over every bench\n");
    typeTo({"people"}, "");
    typeTo({"key"}, "");
    typeTo({"stations", "wax-1", "wax-bench", "--as", "XY"}, "");
    typeTo({"badge", "XY", "--as", "XY"}, "BADGE-5521907\n918273\n");
    typeTo({"sign-in", "--badge", "--station", "wax-1"}, "BADGE-5521907\n918273\n");
    typeTo({"sign-out", "--as", "XY"}, "");
    typeTo({"password", "XY"}, "a lamp over every bench\nanother lamp over every bench\n");
}

TEST_F(EveryVerbThatPrints, PrintsJsonWithItsSchemaForPrograms) {
    sayOnOrders();
    sayOnTheWorkshop();
    sayOnPeople();
    // The demo tells a story, and no order of today is old enough to be purged.
    for (const std::string& verb : verbsInHelp()) {
        // Backups, checkpoints and the recovery code have tests of their own.
        if (verb == "demo" || verb == "purge" || verb == "backup" || verb == "restore" ||
            verb == "drill" || verb == "checkpoint" || verb == "recover")
            continue;
        EXPECT_GT(std::ranges::count(spoken_, verb), 0) << verb;
    }
}

TEST_F(WorkVerbs, KeepAnOrderOfTodayFromBeingPurged) {
    const std::string order = accepted(today("upper-iii-mod-1"));
    EXPECT_EQ(as(kManager, on("purge", order)).exit, 1);
    EXPECT_EQ(as(kManager, on("withdraw", order, {"--reason", "moved away"})).exit, 0);
    const Ran refused = as(kManager, on("purge", order));
    EXPECT_EQ(refused.exit, 1);
    EXPECT_THAT(refused.err, HasSubstr("must be kept"));
}

}  // namespace
