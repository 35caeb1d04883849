#include "apps/cli/demo.h"

#include <QFile>
#include <fstream>
#include <map>

#include "apps/actions/lots.h"
#include "apps/actions/papers.h"
#include "apps/actions/verification.h"
#include "apps/cli/demo_bench.h"
#include "apps/cli/output.h"

namespace cli {
namespace {

using actions::Laboratory;
using actions::Paper;
using domain::Error;
using domain::ErrorCode;
using domain::OrderNumber;
using domain::Result;
using domain::Stage;

/// Marks a folder as a demo's own, so that the next demo may clear it and nothing else.
constexpr std::string_view kMark = "this folder belongs to the demo";

struct DemoCase {
    std::string_view file;              ///< demo/<file>.json; its answer: <file>-answered.json
    std::string_view reason{};          ///< why its cautions are taken
    std::string_view flagged{};         ///< what is flagged at the bench, as a damaged cast
    std::string_view words{};           ///< what the dentist says to it
    std::optional<Stage> workedUpTo{};  ///< the last stage done that day
    bool refused{};            ///< must be refused, asked about and answered before it is accepted
    std::string_view keeps{};  ///< the rule against which it is kept as prescribed
    std::string_view because{};
};

constexpr DemoCase kCases[] = {
    {.file = "upper-iii-mod-1", .workedUpTo = Stage::ToothTryIn},
    {.file = "lower-i",
     .reason = "the opposing impression was disinfected on receipt",
     .workedUpTo = Stage::Investing},
    {.file = "upper-ii-mod-1",
     .flagged = "the cast arrived with a chip at 17",
     .words = "the chip is outside the design; go on",
     .workedUpTo = Stage::Finishing},
    {.file = "upper-iv", .workedUpTo = Stage::BlockOut},
    {.file = "interim-upper", .workedUpTo = Stage::ToothSetUp},
    {.file = "survey-missing",
     .workedUpTo = Stage::Receipt,
     .refused = true,
     .keeps = "clasp.reciprocation",
     .because = "the lingual plate opposes this arm"},
    {.file = "nickel-conflict", .refused = true},
    {.file = "notation-undeclared", .refused = true},
};

class Demo {
public:
    Demo(const Laboratory& laboratory, DemoClock& clock)
        : laboratory_{laboratory}, clock_{clock}, bench_{laboratory, clock} {}

    Result<Exit> run();

private:
    std::optional<Error> play(const DemoCase& played);
    std::optional<Error> ask(const DemoCase& played, const OrderNumber& number);
    std::optional<Error> raiseAndAnswer(const DemoCase& played, const OrderNumber& number);
    std::optional<Error> redoFailedCasting();
    std::optional<Error> returnTryIn();
    std::optional<Error> refuseExpiredLot();
    std::optional<Error> deliver();
    std::optional<Error> remake();
    std::optional<Error> sendOut();
    std::optional<Error> travelTogether();
    std::optional<Error> drillRecall();
    std::optional<Error> overdueFurnace(const OrderNumber& number);
    Result<Exit> close();

    std::optional<Error> paper(const OrderNumber& number, Paper which);
    /// The demo fails where something was not refused, or not for this reason.
    static std::optional<Error> expectRefused(const std::optional<Error>& error,
                                              std::string_view word);
    void tell(const OrderNumber& number, std::string what) {
        scenes_.push_back({number.text(), std::move(what)});
    }
    std::filesystem::path fileOf(std::string_view name) const {
        return laboratory_.folder() / "prescriptions" / (std::string{name} + ".json");
    }
    const OrderNumber& of(std::string_view file) const { return numbers_.at(std::string{file}); }

    const Laboratory& laboratory_;
    DemoClock& clock_;
    DemoBench bench_;
    std::map<std::string, OrderNumber> numbers_;
    std::vector<std::vector<std::string>> rows_;
    std::vector<std::vector<std::string>> scenes_;
    std::vector<std::string> papers_;
};

/// Why a result is none; nullopt where it is one.
template <typename T>
std::optional<Error> errorOf(const Result<T>& result) {
    return result ? std::nullopt : std::optional{result.error()};
}

Result<Exit> Demo::run() {
    if (auto opened = bench_.open(); !opened) return opened.error();
    for (const DemoCase& played : kCases)
        if (auto error = play(played)) return *std::move(error);
    constexpr std::optional<Error> (Demo::* kScenes[])() = {
        &Demo::redoFailedCasting, &Demo::returnTryIn, &Demo::refuseExpiredLot,
        &Demo::deliver,           &Demo::remake,      &Demo::sendOut,
        &Demo::travelTogether,    &Demo::drillRecall};
    for (const auto scene : kScenes)
        if (auto error = (this->*scene)()) return *std::move(error);
    return close();
}

Result<Exit> Demo::close() {
    const auto verification = actions::verify(laboratory_);
    if (!verification) return verification.error();
    if (!verification->problems.empty())
        return Error{ErrorCode::Unavailable, verification->problems.front()};
    const std::string folder = laboratory_.folder().string();
    Page page = table({"order", "prescription", "what", "happened", "stood then at"}, rows_);
    page.blank().add(table({"order", "on the floor"}, scenes_)).blank().line("papers");
    for (const std::string& file : papers_) page.line("  " + file);
    page.blank()
        .line("records  " + folder + "  (" + std::to_string(verification->entries) +
              " ledger entries verified; what is derived from them equals a rebuild;")
        .line("         look around with: framewright sign-in " + std::string{kManager} +
              " --lab " + folder + ", then framewright floor --lab " + folder + ')')
        .line("people   " + std::string{kManager} + ", " + std::string{kTechnician} + ", " +
              std::string{kInspector} + "; password: " + kDemoPassword);
    print(page);
    return Exit::Done;
}

std::optional<Error> Demo::play(const DemoCase& played) {
    const auto logged = actions::log(laboratory_, fileOf(played.file), bench_.who(kManager));
    if (!logged) return logged.error();
    const OrderNumber number = logged->order.number;
    numbers_.emplace(played.file, number);
    std::string happened = "logged";
    if (auto error = paper(number, Paper::PrescriptionSheet)) return error;
    if (played.refused) {
        if (auto error = ask(played, number)) return error;
        happened += ", refused, asked, answered";
    }
    const auto reason =
        played.reason.empty() ? std::nullopt : std::optional{std::string{played.reason}};
    const auto accepted = actions::accept(laboratory_, number, reason, bench_.who(kManager));
    if (!accepted) return accepted.error();
    happened += reason ? ", accepted with a caution" : ", accepted";
    if (!played.flagged.empty()) {
        if (auto error = raiseAndAnswer(played, number)) return error;
        happened += ", flagged, answered";
    }
    if (played.workedUpTo)
        if (auto worked = bench_.workUpTo(number, *played.workedUpTo); !worked)
            return worked.error();
    const auto view = actions::order(laboratory_, number);
    if (!view) return view.error();
    const auto kennedy = domain::classify(view->prescription);
    rows_.push_back(
        {number.text(), std::string{played.file},
         wordsOf(view->prescription.arch) + ' ' + (kennedy ? kennedy->text() : "no class"),
         happened, holdUp(view->order)});
    return {};
}

std::optional<Error> Demo::ask(const DemoCase& played, const OrderNumber& number) {
    const auto tried =
        actions::accept(laboratory_, number, std::string{"it will do"}, bench_.who(kManager));
    if (auto error = expectRefused(errorOf(tried), "cannot be accepted")) return error;
    if (auto error = paper(number, Paper::QuestionSheet)) return error;
    const auto completed =
        actions::readPrescription(fileOf(std::string{played.file} + "-answered"));
    if (!completed) return completed.error();
    actions::AnswerGiven given{.words = "by return of post", .prescription = *completed};
    if (!played.keeps.empty())
        given.keeps.push_back(
            {.rule = std::string{played.keeps}, .words = std::string{played.because}});
    const auto answered = actions::answer(laboratory_, number, given, bench_.who(kManager));
    if (!answered) return answered.error();
    return paper(number, Paper::PrescriptionSheet);
}

std::optional<Error> Demo::raiseAndAnswer(const DemoCase& played, const OrderNumber& number) {
    const auto flagged = actions::flag(laboratory_, number, domain::FlagReason::CastDamaged,
                                       std::string{played.flagged}, bench_.who(kTechnician));
    if (!flagged) return flagged.error();
    if (auto error = paper(number, Paper::QuestionSheet)) return error;
    clock_.passMinutes(300);
    const auto answered = actions::answer(laboratory_, number, {.words = std::string{played.words}},
                                          bench_.who(kManager));
    return errorOf(answered);
}

std::optional<Error> Demo::redoFailedCasting() {
    const OrderNumber& number = of("lower-i");
    if (const auto started =
            actions::start(laboratory_, {number}, Stage::Casting, bench_.who(kTechnician));
        !started)
        return started.error();
    if (auto recorded = bench_.recordAll(number); !recorded) return recorded.error();
    const auto redone = actions::redo(
        laboratory_, number, domain::RedoReason::Porosity, Stage::Duplication, Stage::Investing,
        std::string{"pores at the lingual bar, seen after blasting"}, bench_.who(kTechnician));
    if (!redone) return redone.error();
    if (auto error = overdueFurnace(number)) return error;
    if (auto worked = bench_.workUpTo(number, Stage::Finishing); !worked) return worked.error();
    tell(number,
         "the casting was porous: done again from the duplication, the first one stays on record");
    return paper(number, Paper::BenchSheet);
}

std::optional<Error> Demo::overdueFurnace(const OrderNumber& number) {
    if (auto worked = bench_.workUpTo(number, Stage::WaxUp); !worked) return worked.error();
    if (const auto started =
            actions::start(laboratory_, {number}, Stage::Investing, bench_.who(kTechnician));
        !started)
        return started.error();
    const domain::EquipmentUsed furnace{*domain::ThingCode::parse("furnace-1"), {}, {}};
    const auto refused = actions::record(laboratory_, number, Stage::Investing, {{furnace, {}}},
                                         bench_.who(kTechnician));
    if (auto error = expectRefused(errorOf(refused), "calibration was due")) return error;
    tell(number, "a furnace whose calibration is overdue was refused; another was taken");
    return {};
}

std::optional<Error> Demo::returnTryIn() {
    const OrderNumber& number = of("upper-ii-mod-1");
    if (auto sent = bench_.workStage(number); !sent) return sent.error();
    if (auto error = paper(number, Paper::TryInSheet)) return error;
    clock_.passDays(2);
    const auto back =
        bench_.comeBack(number, {.verdict = domain::ReturnVerdict::GoBack,
                                 .backTo = Stage::Finishing,
                                 .findings = "rocks over the rest on the left side",
                                 .disinfection = {"alcohol 70 %", domain::Minutes::of(5)}});
    if (!back) return back.error();
    if (auto worked = bench_.workUpTo(number, Stage::ToothSetUp); !worked) return worked.error();
    tell(number, "the try-in came back rocking: finished again, tried in again, then set up");
    return {};
}

std::optional<Error> Demo::refuseExpiredLot() {
    const OrderNumber& number = of("upper-iii-mod-1");
    if (const auto started =
            actions::start(laboratory_, {number}, Stage::Processing, bench_.who(kTechnician));
        !started)
        return started.error();
    const domain::LotUsed use{*domain::ThingCode::parse("RP-0"), {}, 12'000};
    const auto refused = actions::record(laboratory_, number, Stage::Processing, {{use, {}}},
                                         bench_.who(kTechnician));
    if (auto error = expectRefused(errorOf(refused), "expired")) return error;
    const auto early =
        actions::finish(laboratory_, {number}, Stage::Processing, bench_.who(kTechnician));
    if (auto error = expectRefused(errorOf(early), "lacks")) return error;
    tell(number, "a resin that expired on 2026-10-31 was refused, and so was passing the gate");
    return {};
}

std::optional<Error> Demo::deliver() {
    const OrderNumber& number = of("upper-iii-mod-1");
    if (auto worked = bench_.workUpTo(number, Stage::Delivery); !worked) return worked.error();
    tell(number, "inspected by another person, disinfected, statement issued, delivered");
    for (const Paper which :
         {Paper::Ticket, Paper::BenchSheet, Paper::Statement, Paper::DeliveryNote})
        if (auto error = paper(number, which)) return error;
    return {};
}

std::optional<Error> Demo::remake() {
    const OrderNumber& number = of("upper-iii-mod-1");
    clock_.passDays(3);
    const auto made =
        actions::remake(laboratory_, number, domain::RemakeReason::DoesNotFit, Stage::Survey,
                        std::string{"binds on the left guide plane"}, bench_.who(kManager));
    if (!made) return made.error();
    tell(number, "came back as it does not fit: made again as " + made->order.number.text() +
                     ", fault at the survey");
    tell(made->order.number, "remake of " + number.text() + ": " + holdUp(made->order));
    return paper(made->order.number, Paper::PrescriptionSheet);
}

std::optional<Error> Demo::sendOut() {
    const OrderNumber& number = of("upper-iv");
    const auto sent = actions::sendWork(
        laboratory_, number, *domain::ThingCode::parse("north-foundry"), bench_.who(kManager));
    if (!sent) return sent.error();
    if (auto error = paper(number, Paper::SubOrder)) return error;
    clock_.passDays(1);
    const auto back = actions::takeWorkBack(laboratory_, number, true, {}, bench_.who(kTechnician));
    if (!back) return back.error();
    if (auto worked = bench_.workUpTo(number, Stage::Duplication); !worked) return worked.error();
    tell(number, "duplicated at another site, which its statement will name");
    return {};
}

std::optional<Error> Demo::travelTogether() {
    auto upper = actions::readPrescription(fileOf("upper-iv"));
    if (!upper) return upper.error();
    auto lower = actions::readPrescription(fileOf("lower-i"));
    if (!lower) return lower.error();
    domain::Prescription companion = *std::move(lower);
    companion.identity = upper->identity;
    const auto logged = actions::log(laboratory_, companion, bench_.who(kManager));
    if (!logged) return logged.error();
    const auto joined =
        actions::joinCase(laboratory_, logged->order.number, of("upper-iv"), bench_.who(kManager));
    if (!joined) return joined.error();
    tell(logged->order.number,
         "the lower of the same patient travels with " + of("upper-iv").text() + " as one case");
    return {};
}

std::optional<Error> Demo::drillRecall() {
    const auto recalled =
        actions::recall(laboratory_, "AL-1", "Recall drill: nothing is wrong with the lot.", true,
                        bench_.who(kManager));
    if (!recalled) return recalled.error();
    for (const auto& letter : recalled->letters) papers_.push_back(letter.string());
    scenes_.push_back(
        {"lot AL-1", "recall drill: " + std::to_string(recalled->delivered) +
                         " delivered device of " + std::to_string(recalled->patients) +
                         " patient, " + std::to_string(recalled->undelivered) +
                         " not delivered yet, " + std::to_string(recalled->letters.size()) +
                         " letter to a prescriber"});
    return {};
}

std::optional<Error> Demo::expectRefused(const std::optional<Error>& error, std::string_view word) {
    if (error && error->code == ErrorCode::Refused &&
        error->message.find(word) != std::string::npos)
        return {};
    return Error{ErrorCode::Unavailable, "a refusal with \"" + std::string{word} +
                                             "\" was expected, and there was " +
                                             (error ? error->message : std::string{"none"})};
}

std::optional<Error> Demo::paper(const OrderNumber& number, Paper which) {
    const auto file = actions::print(laboratory_, number, which, {}, bench_.who(kManager));
    if (!file) return file.error();
    if (papers_.empty() || papers_.back() != file->string()) papers_.push_back(file->string());
    return {};
}

/// Makes the folder, or clears it if it is an earlier demo's.
std::optional<Error> prepare(const std::filesystem::path& folder) {
    std::error_code trouble;
    const auto mark = folder / kMark;
    if (std::filesystem::exists(folder, trouble) && !std::filesystem::exists(mark, trouble))
        return Error{ErrorCode::Unusable, folder.string() +
                                              ": exists and is no demo's folder; name another with "
                                              "--folder"};
    std::filesystem::remove_all(folder, trouble);
    std::filesystem::create_directories(folder / "prescriptions", trouble);
    if (trouble || !std::ofstream{mark}.put('\n'))
        return Error{ErrorCode::Unavailable,
                     folder.string() + ": cannot be written: " + trouble.message()};
    return {};
}

/// Lays the prescriptions out as files, so that a person can look at them and try `check`.
std::optional<Error> layOut(const std::filesystem::path& folder) {
    for (const DemoCase& played : kCases)
        for (const char* suffix : {"", "-answered"}) {
            if (!played.refused && *suffix != '\0') continue;
            const std::string name = std::string{played.file} + suffix + ".json";
            QFile source{QString::fromStdString(":/demo/" + name)};
            const auto target = folder / "prescriptions" / name;
            if (!source.copy(QString::fromStdString(target.string())))
                return Error{ErrorCode::Unavailable,
                             target.string() + ": " + source.errorString().toStdString()};
        }
    return {};
}

}  // namespace

Result<Exit> demo(const Call& call) {
    std::error_code trouble;
    const auto folder = std::filesystem::absolute(call.option("folder").value_or("demo"), trouble);
    if (auto error = prepare(folder)) return *std::move(error);
    if (auto error = layOut(folder)) return *std::move(error);
    DemoClock clock;
    const auto laboratory = Laboratory::open(folder, clock, storage::HashCost::Light);
    if (!laboratory) return laboratory.error();
    return Demo{*laboratory, clock}.run();
}

}  // namespace cli
