#include "tests/bench/many_orders.h"

#include <algorithm>
#include <fstream>
#include <random>

#include "apps/actions/workshop.h"
#include "domain/production/evolve.h"
#include "domain/production/legal_fields.h"
#include "domain/rules/examine.h"
#include "tests/bench/bench_laboratory.h"
#include "tests/bench/bulk_records.h"
#include "tests/support/designs.h"
#include "tests/support/floor.h"

namespace bench {
namespace {

using domain::Done;
using domain::Event;
using domain::Instant;
using domain::Order;
using domain::OrderNumber;
using domain::Prescription;
using domain::Result;
using domain::Stage;
using domain::StageKind;
using domain::StageStatus;

constexpr const char* kMadeFile = "made.txt";
constexpr std::int64_t kMinute = 60'000'000;  // microseconds
constexpr int kYears = 5;
constexpr int kFirstYear = 22;
constexpr int kOnTheBenches = 120;
constexpr int kFewestInWork = 60;
constexpr int kMostInWork = 1200;
constexpr int kOrdersPerRefusal = 100;
constexpr int kSamples = 200;

domain::Date firstDay() { return *domain::Date::parse("2022-01-03"); }

/// std::mt19937_64 is the same everywhere; the distributions of the library are not.
class Dice {
public:
    explicit Dice(std::uint64_t seed) : engine_{seed} {}
    int below(int count) { return static_cast<int>(engine_() % static_cast<unsigned>(count)); }
    bool percent(int chance) { return below(100) < chance; }
    template <std::size_t Size>
    std::string_view of(const std::string_view (&words)[Size]) {
        return words[static_cast<std::size_t>(below(static_cast<int>(Size)))];
    }

private:
    std::mt19937_64 engine_;
};

/// Names are put together from syllables that mean nothing.
std::string inventedName(Dice& dice) {
    static constexpr std::string_view kFirst[] = {"Ba",  "Cor",  "Del", "Eri", "Fa",  "Gul", "Hes",
                                                  "Ila", "Jor",  "Kem", "Lu",  "Mir", "Nes", "Ori",
                                                  "Pel", "Quin", "Ro",  "Sel", "Tam", "Ul"};
    static constexpr std::string_view kMiddle[] = {"ba", "den", "fi", "go", "lan", "ma",
                                                   "ne", "pi",  "ra", "so", "ti",  "ven"};
    static constexpr std::string_view kLast[] = {"ck", "dra", "l", "mund", "n",
                                                 "ph", "r",   "s", "th",   "x"};
    const auto word = [&] {
        std::string text{dice.of(kFirst)};
        text += dice.of(kMiddle);
        return text += dice.of(kLast);
    };
    const std::string given = word();
    return given + ' ' + word();
}

enum class Course : std::uint8_t { Interim, Framework, Unaccepted, InWork };

/// An order on its way.
struct Life {
    int index{};
    Course course{};
    Prescription prescription{};
    OrderNumber number;
    std::optional<Order> order{};
    std::vector<Event> events{};
    Instant at{};  ///< of its next command
    int commands{};
    Stage until{Stage::Delivery};  ///< of an order in work: where it stands in the end
    bool asks{};                   ///< a question of the bench will be put and answered
    bool incomplete{};             ///< what the prescription lacks will be asked and answered
};

class Years {
public:
    Years(const actions::Laboratory& laboratory, domain::Workshop workshop, int count,
          std::uint64_t seed)
        : records_{laboratory},
          workshop_{std::move(workshop)},
          count_{count},
          inWork_{std::clamp(count / 20, std::min(count, kFewestInWork), kMostInWork)},
          dice_{seed} {
        for (int i = 0; i < kPrescribers; ++i) prescribers_.push_back("Dr " + inventedName(dice_));
    }

    Result<Made> make() {
        std::vector<Life> benches;
        int next = 0;
        while (next < count_ || !benches.empty()) {
            while (next < count_ && std::ssize(benches) < kOnTheBenches)
                benches.push_back(born(next++));
            // Times in the ledger do not decrease.
            const auto place = std::ranges::min_element(benches, {}, &Life::at);
            now_ = place->at;
            const auto over = advance(*place);
            if (!over) return over.error();
            if (!*over) continue;
            if (auto closed = close(*place); !closed) return closed.error();
            std::iter_swap(place, benches.end() - 1);
            benches.pop_back();
        }
        if (auto committed = records_.commit(); !committed) return committed.error();
        return made_;
    }

private:
    static constexpr int kPrescribers = 200;

    Life born(int index) {
        const int perYear = (count_ + kYears - 1) / kYears;
        Life life{.index = index,
                  .number = *OrderNumber::make(kFirstYear + index / perYear, index % perYear + 1)};
        const int chance = dice_.below(100);
        life.course = index >= count_ - inWork_ ? Course::InWork
                      : chance < 75             ? Course::Interim
                      : chance < 81             ? Course::Framework
                                                : Course::Unaccepted;
        const std::int64_t days = lastDay().days() - firstDay().days() - 60;
        const auto day = firstDay().plusDays(days * index / count_);
        life.at = std::max(
            now_, Instant::ofMicroseconds(
                      (day.days() * 24 * 60 + std::int64_t{8} * 60 + dice_.below(540)) * kMinute));
        life.prescription = prescriptionFor(life.course, day);
        life.incomplete = life.course == Course::Framework && dice_.percent(20);
        life.asks = life.course != Course::Unaccepted && dice_.percent(8);
        if (life.course == Course::InWork) life.until = kStandsAt[index % std::ssize(kStandsAt)];
        return life;
    }

    Prescription prescriptionFor(Course course, domain::Date day) {
        using Make = Prescription (*)();
        static constexpr Make kFrameworks[] = {
            support::upperClassIIIMod1, support::lowerClassI,  support::upperClassIIMod1,
            support::lowerClassIIMod1,  support::upperClassIV, support::lowerClassIIIMod1};
        Prescription made = course == Course::Interim || course == Course::Unaccepted
                                ? support::interimUpper()
                                : kFrameworks[dice_.below(std::ssize(kFrameworks))]();
        const int prescriber = dice_.below(kPrescribers);
        made.identity.patientName = inventedName(dice_);
        made.identity.patientReference.reset();
        if (dice_.percent(30))
            made.identity.patientReference = "P-" + std::to_string(dice_.below(1'000'000));
        made.identity.prescriberName = prescribers_[static_cast<std::size_t>(prescriber)];
        made.identity.prescriberRegistration = "D-" + std::to_string(10'000 + prescriber);
        made.issued = day;
        made.needed = day.plusDays(28);
        return made;
    }

    /// One command further; whether that was its last.
    Result<bool> advance(Life& life) {
        const auto command = nextOf(life);
        if (!command) return command.error();
        if (!*command) return true;
        const auto given = give(life, **command);
        if (!given) return given.error();
        return false;
    }

    /// What is done next; nullopt: nothing.
    Result<std::optional<domain::Command>> nextOf(Life& life) {
        using Next = std::optional<domain::Command>;
        if (!life.order) return received(life);
        const Order& order = *life.order;
        if (isClosed(order)) return Next{};
        if (order.status == domain::OrderStatus::Received) return beforeAcceptance(life);
        if (!order.flags.empty()) return answered(life, {});
        const domain::StageStep& step = *currentStep(order);
        if (life.course == Course::InWork && step.stage == life.until) return Next{};
        if (life.asks && step.stage == Stage::Processing) return flagged(life);
        const bool away = rowOf(step.stage).kind == StageKind::AtPractice;
        if (step.status == StageStatus::InHand && away)
            return Next{domain::TakeReturn{
                domain::ReturnVerdict::GoOn, {}, {}, support::properDisinfection()}};
        if (step.status == (away ? StageStatus::ToDo : StageStatus::InHand) &&
            recordsOf(order, step.stage).empty())
            return recorded(order, step.stage);
        if (step.status == StageStatus::ToDo) return Next{domain::Start{}};
        return Next{domain::Finish{}};
    }

    Result<domain::Revision> revised(const Prescription& prescription, const Instant& at) {
        auto parties = records_.partiesOf(prescription);
        if (!parties) return parties.error();
        return domain::Revision{withoutIdentity(prescription), *std::move(parties),
                                domain::examine(prescription, at.day())};
    }

    Result<std::optional<domain::Command>> received(Life& life) {
        Prescription given = life.prescription;
        if (life.incomplete || life.course == Course::Unaccepted) given.shades.clear();
        if (life.incomplete) given.majorConnector.reset();
        auto revision = revised(given, life.at);
        if (!revision) return revision.error();
        return std::optional<domain::Command>{
            domain::Receive{life.number, *std::move(revision), {}}};
    }

    Result<std::optional<domain::Command>> beforeAcceptance(Life& life) {
        if (life.course == Course::Unaccepted) {
            auto sealed = records_.seal("the patient decided otherwise");
            if (!sealed) return sealed.error();
            return std::optional<domain::Command>{domain::Withdraw{*std::move(sealed)}};
        }
        if (life.incomplete) {
            life.incomplete = false;
            auto revision = revised(life.prescription, life.at);
            if (!revision) return revision.error();
            return answered(life, *std::move(revision));
        }
        std::optional<domain::SealedText> reason;
        if (!untakenCautions(*life.order).empty()) {
            auto sealed = records_.seal("agreed with the prescriber by telephone");
            if (!sealed) return sealed.error();
            reason = *std::move(sealed);
        }
        return std::optional<domain::Command>{domain::Accept{std::move(reason)}};
    }

    Result<std::optional<domain::Command>> flagged(Life& life) {
        life.asks = false;
        auto sealed = records_.seal("the shade on the slip cannot be read");
        if (!sealed) return sealed.error();
        return std::optional<domain::Command>{
            domain::Flag{domain::FlagReason::ShadeUnclear, *std::move(sealed)}};
    }

    Result<std::optional<domain::Command>> answered(const Life& life,
                                                    std::optional<domain::Revision> revision) {
        auto sealed = records_.seal("answered by the practice for order " + life.number.text());
        if (!sealed) return sealed.error();
        return std::optional<domain::Command>{
            domain::Answer{*std::move(sealed), std::move(revision)}};
    }

    /// Everything the gate asks for, of the lots that were open in those months.
    Result<std::optional<domain::Command>> recorded(const Order& order, Stage stage) {
        auto records = support::everythingFor(order, stage);
        for (domain::StageRecord& record : records) {
            if (auto* use = std::get_if<domain::LotUsed>(&record))
                use->lot = lotCode(use->kind, openLot(order));
            if (auto* issued = std::get_if<domain::StatementIssued>(&record)) {
                auto sealed = records_.seal(kStatement + order.number.text());
                if (!sealed) return sealed.error();
                issued->statement = *std::move(sealed);
            }
        }
        if (stage == Stage::Processing)
            records.emplace_back(
                domain::LotUsed{support::thing(kPooledLot), domain::LotKind::ResinLiquid, 9'000});
        return std::optional<domain::Command>{domain::Record{{}, std::move(records)}};
    }

    int openLot(const Order& order) const {
        const auto first = firstDay().days();
        const auto days = lastDay().days() - first + 1;
        return static_cast<int>((order.receivedAt.day().days() - first) * kLotsOfAKind / days);
    }

    domain::PersonCode personFor(const Life& life) const {
        std::string_view code = kManager;
        if (life.order && life.order->status == domain::OrderStatus::InWork) {
            const Stage stage = currentStep(*life.order)->stage;
            code =
                stage == Stage::Inspection || stage == Stage::Delivery
                    ? kInspector
                    : kTechnicians[static_cast<std::size_t>(life.index) % std::size(kTechnicians)];
        }
        return *domain::PersonCode::parse(code);
    }

    Result<Done> give(Life& life, const domain::Command& command) {
        domain::Occasion occasion{
            .at = life.at,
            .person = personFor(life),
            .key = "made-" + std::to_string(life.index) + '-' + std::to_string(life.commands++),
            .workshop = workshop_};
        if (life.order && life.order->status == domain::OrderStatus::InWork) {
            const domain::StagePlan plan = planOf(*life.order, currentStep(*life.order)->stage);
            if (plan.station != domain::StationKind::AtPractice)
                occasion.station = stationCode(plan.station).text();
        }
        if (std::holds_alternative<domain::Finish>(command))
            occasion.legal =
                lackingIn(legalFactsOf(life.prescription, kLaboratoryName, kLaboratoryAddress));
        const auto events = decide(life.order, command, occasion);
        if (!events) return events.error();
        for (const Event& event : *events) {
            life.order = evolve(std::move(life.order), event);
            use(event);
            life.events.push_back(event);
        }
        made_.entries += std::ssize(*events);
        life.at =
            Instant::ofMicroseconds(life.at.microseconds() + (10 + dice_.below(240)) * kMinute);
        return records_.append(*events);
    }

    void use(const Event& event) {
        const auto* recorded = std::get_if<domain::Recorded>(&event.what);
        if (recorded == nullptr) return;
        for (const domain::StageRecord& record : recorded->records)
            if (const auto* used = std::get_if<domain::LotUsed>(&record))
                workshop_.lots.at(used->lot).used += used->amount;
    }

    Result<Done> close(const Life& life) {
        if (auto closed = records_.close(*life.order, life.events); !closed) return closed;
        ++made_.orders;
        if (life.course == Course::InWork)
            made_.inWork.push_back(life.number);
        else if (life.order->status == domain::OrderStatus::Delivered &&
                 std::ssize(made_.delivered) < kSamples &&
                 life.index % std::max(count_ / kSamples / 2, 1) == 0)
            made_.delivered.push_back(life.number);
        if (made_.patient.empty() && life.index >= count_ / 2 &&
            !life.prescription.identity.patientReference)
            made_.patient = *life.prescription.identity.patientName;
        if (made_.orders % kOrdersPerRefusal == 0) return refusal(life);
        return Done{};
    }

    /// Now and then somebody tries what they may not.
    Result<Done> refusal(const Life& life) {
        const auto event =
            decide(workshop_, {domain::SubjectKind::Access, std::string{kTechnicians[0]}},
                   domain::AccessRefused{"keep-workshop", "a technician may not keep the workshop"},
                   {life.at, *domain::PersonCode::parse(kTechnicians[0]),
                    "refused-" + std::to_string(life.index)});
        if (!event) return event.error();
        workshop_ = evolve(std::move(workshop_), *event);
        return records_.append(std::vector{*event});
    }

    /// Where the orders in work stand, by turns: stages of the bench.
    static constexpr Stage kStandsAt[] = {Stage::BlockOut,  Stage::WaxUp,      Stage::Casting,
                                          Stage::Finishing, Stage::ToothSetUp, Stage::Polishing};
    /// As long as one is: what it says is composed from the records, and nobody reads it here.
    inline static const std::string kStatement = std::string(1500, '.') + " statement for order ";

    BulkRecords records_;
    domain::Workshop workshop_;
    int count_;
    int inWork_;
    Dice dice_;
    std::vector<std::string> prescribers_{};
    Instant now_{};  ///< of the newest entry
    Made made_{};
};

}  // namespace

domain::Date lastDay() { return *domain::Date::parse("2026-11-25"); }

Result<Made> makeOrders(const actions::Laboratory& laboratory, support::HandClock& clock, int count,
                        std::uint64_t seed) {
    clock.goTo(firstDay());
    if (auto furnished = furnish(laboratory); !furnished) return furnished.error();
    auto workshop = actions::workshop(laboratory);
    if (!workshop) return workshop.error();
    auto made = Years{laboratory, *std::move(workshop), count, seed}.make();
    clock.goTo(lastDay());
    clock.letPass(std::int64_t{8} * 60);
    return made;
}

void write(const Made& made, const std::filesystem::path& folder) {
    std::ofstream file{folder / kMadeFile};
    file << "orders " << made.orders << "\nentries " << made.entries << '\n';
    for (const auto& number : made.inWork) file << "in-work " << number.text() << '\n';
    for (const auto& number : made.delivered) file << "delivered " << number.text() << '\n';
    file << "patient " << made.patient << '\n';
}

Made readMade(const std::filesystem::path& folder) {
    Made made;
    std::ifstream file{folder / kMadeFile};
    std::string what;
    std::string text;
    while (file >> what && std::getline(file >> std::ws, text)) {
        if (what == "orders") made.orders = std::stoll(text);
        if (what == "entries") made.entries = std::stoll(text);
        if (what == "in-work") made.inWork.push_back(*OrderNumber::parse(text));
        if (what == "delivered") made.delivered.push_back(*OrderNumber::parse(text));
        if (what == "patient") made.patient = text;
    }
    return made;
}

}  // namespace bench
