#include "apps/cli/demo.h"

#include <QFile>
#include <fstream>
#include <iostream>

#include "apps/actions/papers.h"
#include "apps/actions/people.h"
#include "apps/actions/verification.h"
#include "apps/actions/work.h"
#include "apps/cli/output.h"

namespace cli {
namespace {

using actions::Laboratory;
using actions::Outcome;
using actions::Who;
using domain::Error;
using domain::ErrorCode;
using domain::Result;
using domain::Stage;

/// Marks a folder as a demo's own, so that the next demo may clear it and nothing else.
constexpr std::string_view kMark = "this folder belongs to the demo";

/// The demo has a calendar of its own and so prints the same papers every time.
class DemoClock : public domain::Clock {
public:
    domain::Instant now() const override { return now_; }
    void passMinutes(std::int64_t count) {
        now_ =
            domain::Instant::ofMicroseconds(now_.microseconds() + count * kMicrosecondsPerMinute);
    }

private:
    static constexpr std::int64_t kMicrosecondsPerMinute = 60'000'000;
    static constexpr std::int64_t kFirstMinute = 8 * 60 + 5;  // 08:05 UTC

    domain::Instant now_ = domain::Instant::ofMicroseconds(
        (domain::Date::parse("2026-11-25")->days() * 24 * 60 + kFirstMinute) *
        kMicrosecondsPerMinute);
};

struct DemoCase {
    std::string_view file;              ///< demo/<file>.json; its answer: <file>-answered.json
    std::string_view reason{};          ///< why its cautions are taken
    std::string_view flagged{};         ///< what is flagged at the bench, as a damaged cast
    std::string_view words{};           ///< what the dentist says to it
    std::optional<Stage> workedUpTo{};  ///< the last stage done that day
    bool refused{};  ///< must be refused, asked about and answered before it is accepted
};

constexpr DemoCase kCases[] = {
    {.file = "upper-iii-mod-1", .workedUpTo = Stage::Delivery},
    {.file = "lower-i",
     .reason = "the opposing impression was disinfected on receipt",
     .workedUpTo = Stage::BlockOut},
    {.file = "upper-ii-mod-1",
     .flagged = "the cast arrived with a chip at 17",
     .words = "the chip is outside the design; go on",
     .workedUpTo = Stage::Receipt},
    {.file = "upper-iv", .workedUpTo = Stage::Survey},
    {.file = "interim-upper", .workedUpTo = Stage::ToothSetUp},
    {.file = "survey-missing", .workedUpTo = Stage::Receipt, .refused = true},
    {.file = "nickel-conflict", .refused = true},
    {.file = "notation-undeclared", .refused = true},
};

/// Everybody of the demo works with this password, which is printed at its end.
constexpr const char* kPassword = "westhaven by the sea";
constexpr std::string_view kManager = "manager-1";

struct DemoPerson {
    std::string_view code;
    domain::Role role;
};
/// They have learnt everything, so that the demo is about orders.
constexpr DemoPerson kPeople[] = {{"technician-1", domain::Role::Technician},
                                  {"inspector-1", domain::Role::Inspector}};

std::vector<domain::Skill> everySkill() {
    std::vector<domain::Skill> skills;
    for (const auto& [skill, word] : domain::enumCodes<domain::Skill>) skills.push_back(skill);
    return skills;
}

class Demo {
public:
    Demo(const Laboratory& laboratory, DemoClock& clock) : laboratory_{laboratory}, clock_{clock} {}

    Result<Exit> run();

private:
    std::optional<Error> enterPeople();
    std::optional<Error> play(const DemoCase& played);
    std::optional<Error> ask(const DemoCase& played, const domain::OrderNumber& number);
    std::optional<Error> work(const DemoCase& played, domain::Order order);
    std::optional<Error> raiseAndAnswer(const DemoCase& played, const domain::OrderNumber& number);
    std::optional<Error> paper(const domain::OrderNumber& number, actions::Paper which);
    /// Signed in anew for each deed; who cannot is refused by the action, which says so.
    Who who(std::string_view code) {
        clock_.passMinutes(4);
        const auto person = *domain::PersonCode::parse(code);
        const auto session = actions::signIn(laboratory_, person, actions::Secret{kPassword}, {});
        return {.person = person, .token = session ? session->token : std::string{}};
    }
    std::filesystem::path fileOf(std::string_view name) const {
        return laboratory_.folder() / "prescriptions" / (std::string{name} + ".json");
    }

    const Laboratory& laboratory_;
    DemoClock& clock_;
    std::vector<std::vector<std::string>> rows_;
    std::vector<std::string> papers_;
};

Result<Exit> Demo::run() {
    const auto head = actions::writeLetterhead(
        laboratory_,
        {"Westhaven Prosthetic Workshop", "1 Tide Street, Westhaven", "bench@westhaven.example"});
    if (!head) return head.error();
    if (auto error = enterPeople()) return *std::move(error);
    for (const DemoCase& played : kCases)
        if (auto error = play(played)) return *std::move(error);
    const auto floor = actions::floor(laboratory_);
    if (!floor) return floor.error();
    const auto verification = actions::verify(laboratory_);
    if (!verification) return verification.error();
    if (!verification->problems.empty())
        return Error{ErrorCode::Unavailable, verification->problems.front()};

    std::cout << table({"order", "prescription", "what", "happened", "stands at"}, rows_)
              << "\npapers\n";
    for (const std::string& file : papers_) std::cout << "  " << file << '\n';
    std::cout << "\nrecords  " << laboratory_.folder().string() << "  (" << verification->entries
              << " ledger entries, verified; look around with: framewright floor --lab "
              << laboratory_.folder().string() << ")\n"
              << "people   " << kManager << ", technician-1, inspector-1; password: " << kPassword
              << '\n';
    return Exit::Done;
}

std::optional<Error> Demo::enterPeople() {
    const auto manager = *domain::PersonCode::parse(kManager);
    const auto made =
        actions::setUp(laboratory_, manager, everySkill(), actions::Secret{kPassword});
    if (!made) return made.error();
    for (const DemoPerson& each : kPeople) {
        const auto person = *domain::PersonCode::parse(each.code);
        const auto entered =
            actions::enterPerson(laboratory_, person, each.role, everySkill(), who(kManager));
        if (!entered) return entered.error();
        const auto once = actions::resetPassword(laboratory_, person, who(kManager));
        if (!once) return once.error();
        const auto own =
            actions::givePassword(laboratory_, person, *once, actions::Secret{kPassword});
        if (!own) return own.error();
    }
    return {};
}

std::optional<Error> Demo::play(const DemoCase& played) {
    const auto logged = actions::log(laboratory_, fileOf(played.file), who("manager-1"));
    if (!logged) return logged.error();
    const domain::OrderNumber number = logged->order.number;
    std::string happened = "logged";
    if (auto error = paper(number, actions::Paper::PrescriptionSheet)) return error;
    if (played.refused) {
        if (auto error = ask(played, number)) return error;
        happened += ", refused, asked, answered";
    }
    const auto reason =
        played.reason.empty() ? std::nullopt : std::optional{std::string{played.reason}};
    const auto accepted = actions::accept(laboratory_, number, reason, who("manager-1"));
    if (!accepted) return accepted.error();
    happened += reason ? ", accepted with a caution" : ", accepted";
    if (auto error = work(played, accepted->order)) return error;
    if (!played.flagged.empty()) {
        if (auto error = raiseAndAnswer(played, number)) return error;
        happened += ", flagged, answered";
    }
    const auto view = actions::order(laboratory_, number);
    if (!view) return view.error();
    const auto kennedy = domain::classify(view->prescription);
    if (view->order.status == domain::OrderStatus::Delivered) {
        happened += ", delivered";
        if (auto error = paper(number, actions::Paper::PrescriptionSheet)) return error;
    }
    rows_.push_back(
        {number.text(), std::string{played.file},
         wordsOf(view->prescription.arch) + ' ' + (kennedy ? kennedy->text() : "no class"),
         happened, holdUp(view->order)});
    return {};
}

std::optional<Error> Demo::ask(const DemoCase& played, const domain::OrderNumber& number) {
    const auto tried =
        actions::accept(laboratory_, number, std::string{"it will do"}, who("manager-1"));
    if (tried || tried.error().code != ErrorCode::Refused)
        return Error{ErrorCode::Unavailable,
                     std::string{played.file} + " had to be refused and was not"};
    if (auto error = paper(number, actions::Paper::QuestionSheet)) return error;
    const auto completed =
        actions::readPrescription(fileOf(std::string{played.file} + "-answered"));
    if (!completed) return completed.error();
    const auto answered = actions::answer(laboratory_, number, std::string{"by return of post"},
                                          *completed, who("manager-1"));
    if (!answered) return answered.error();
    return paper(number, actions::Paper::PrescriptionSheet);
}

std::optional<Error> Demo::work(const DemoCase& played, domain::Order order) {
    bool reached = !played.workedUpTo;
    while (const domain::StageStep* step = currentStep(order)) {
        if (reached) break;
        const Stage stage = step->stage;
        const auto person = stage == Stage::Inspection ? "inspector-1" : "technician-1";
        const auto started = actions::start(laboratory_, {order.number}, stage, who(person));
        if (!started) return started.error();
        const auto finished = actions::finish(laboratory_, {order.number}, stage, who(person));
        if (!finished) return finished.error();
        order = finished->order;
        reached = stage == *played.workedUpTo;
    }
    return {};
}

std::optional<Error> Demo::raiseAndAnswer(const DemoCase& played,
                                          const domain::OrderNumber& number) {
    const auto flagged = actions::flag(laboratory_, number, domain::FlagReason::CastDamaged,
                                       std::string{played.flagged}, who("technician-1"));
    if (!flagged) return flagged.error();
    if (auto error = paper(number, actions::Paper::QuestionSheet)) return error;
    const auto answered =
        actions::answer(laboratory_, number, std::string{played.words}, {}, who("manager-1"));
    if (!answered) return answered.error();
    return {};
}

std::optional<Error> Demo::paper(const domain::OrderNumber& number, actions::Paper which) {
    const auto file = actions::print(laboratory_, number, which, {}, who("manager-1"));
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
