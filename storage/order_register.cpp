#include "storage/order_register.h"

#include <algorithm>
#include <charconv>

#include "domain/design/kennedy.h"
#include "storage/ledger.h"
#include "storage/statement.h"

namespace storage {
namespace {

using domain::Date;
using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Instant;
using domain::Order;
using domain::OrderNumber;
using domain::Prescription;
using domain::Result;

/// Where orders that nobody set a day for stand on the floor: after all others.
constexpr std::int64_t kNoDay = 1'000'000;

template <domain::CodedEnum E>
Value coded(E value) {
    return std::string{codeOf(value)};
}
template <domain::CodedEnum E>
Value coded(const std::optional<E>& value) {
    return value ? coded(*value) : Value{};
}

/// What each column of a row holds; the first is the key.
std::vector<Cell> cellsOf(const RegisterRow& row) {
    return {{"order_number", row.number.text()},
            {"order_version", row.version},
            {"status", coded(row.status)},
            {"stage", coded(row.stage)},
            {"stage_status", coded(row.stageStatus)},
            {"waits_for", coded(row.waitsFor)},
            {"hold_up", row.holdUp},
            {"arch", coded(row.arch)},
            {"description", row.description},
            {"due_day", row.due ? Value{row.due->days()} : Value{}},
            {"received_us", row.receivedAt.microseconds()},
            {"changed_us", row.changedAt.microseconds()},
            {"patient_code", row.patientCode},
            {"prescriber_code", row.prescriberCode},
            {"identity_code", row.identity.code},
            {"identity_digest", row.identity.digest},
            {"questions", row.questions},
            {"cautions", row.cautions},
            {"case_leader", row.caseLeader ? Value{row.caseLeader->text()} : Value{}},
            {"waiting_since_us", row.waitingSince.microseconds()},
            {"laboratory_us", row.laboratoryTime},
            {"year", std::int64_t{row.number.year()}},
            {"count", std::int64_t{row.number.count()}},
            {"closed", std::int64_t{row.waitsFor == domain::WaitsFor::Nobody ? 1 : 0}},
            {"floor_day", floorDayOf(row)},
            {"purged", std::int64_t{row.purged ? 1 : 0}},
            {"delivered_day", row.delivered ? Value{row.delivered->days()} : Value{}}};
}

[[noreturn]] void damaged(std::string_view column, const std::string& text) {
    throw SqlFailure{"the order register is damaged: " + std::string{column} + " holds \"" + text +
                     "\"; verify the records"};
}

template <domain::CodedEnum E>
E word(const Statement& row, std::string_view column) {
    const std::string text = row.text(column);
    const auto value = domain::parseCode<E>(text);
    if (!value) damaged(column, text);
    return *value;
}
template <domain::CodedEnum E>
std::optional<E> wordIfAny(const Statement& row, std::string_view column) {
    if (!row.textIfAny(column)) return {};
    return word<E>(row, column);
}

OrderNumber numberIn(const Statement& row, std::string_view column) {
    const std::string text = row.text(column);
    const auto number = OrderNumber::parse(text);
    if (!number) damaged(column, text);
    return *number;
}

/// "upper, III mod 1, Co-Cr": what it is, in the words of the bench.
std::string describe(const Prescription& prescription) {
    std::string words = wordsOf(prescription.arch);
    if (const auto kennedy = classify(prescription)) words += ", " + kennedy->text();
    if (const auto material = prescription.framework.material)
        words += ", " + std::string{shortName(*material)};
    if (prescription.appliance && *prescription.appliance != domain::Appliance::MetalFramework)
        words += ", " + wordsOf(*prescription.appliance);
    return words;
}

std::int64_t questionsOf(const Order& order) {
    const auto asked = std::ranges::count_if(order.revision.findings, domain::refuses);
    return asked + static_cast<std::int64_t>(order.flags.size());
}

/// Where a row as it lies there differs from what it should hold.
std::string differing(const Statement& row, const std::vector<Cell>& expected) {
    std::string list;
    for (const Cell& cell : expected)
        if (const Value found = row.value(cell.column); found != cell.value)
            list += (list.empty() ? "" : "; ") + std::string{cell.column} + " is " + shown(found) +
                    ", the ledger says " + shown(cell.value);
    return list;
}

void putRow(Connection& connection, const Order& order) {
    Statement{connection, "order_register_put"}.bind(cellsOf(rowOf(order))).run();
}

/// Writes the row of each order that is told.
class RegisterWriter : public LedgerListener {
public:
    explicit RegisterWriter(Connection& connection) : connection_{connection} {}

    void order(const Order& order) override { putRow(connection_, order); }

private:
    Connection& connection_;
};

/// Compares the row of each order that is told.
class RegisterCheck : public TableCheck {
public:
    explicit RegisterCheck(Connection& connection) : connection_{connection} {}

    void order(const Order& order) override {
        const std::string number = order.number.text();
        Statement row{connection_, "order_register_of_number"};
        if (!row.bind("order_number", number).run().next())
            return found("order " + number + " is missing in the register");
        if (const auto list = differing(row, cellsOf(rowOf(order))); !list.empty())
            found("order " + number + " in the register: " + list);
    }
    void end() override {
        Statement strange{connection_, "order_register_strange"};
        strange.run();
        while (strange.next())
            found("the register has an order " + shown(strange.value("order_number")) +
                  " in version " + shown(strange.value("order_version")) + " the ledger has not");
    }

private:
    Connection& connection_;
};

int yearOf(Date day) {
    const std::string text = day.text();
    int year{};
    std::from_chars(text.data() + 2, text.data() + 4, year);
    return year;
}

}  // namespace

std::int64_t floorDayOf(const RegisterRow& row) { return row.due ? row.due->days() : kNoDay; }

RegisterRow readRegisterRow(const Statement& row) {
    const auto dayIfAny = [&](std::string_view column) {
        const auto days = row.wholeIfAny(column);
        return days ? std::optional{Date::ofDays(*days)} : std::nullopt;
    };
    return {.number = numberIn(row, "order_number"),
            .version = row.whole("order_version"),
            .status = word<domain::OrderStatus>(row, "status"),
            .stage = wordIfAny<domain::Stage>(row, "stage"),
            .stageStatus = wordIfAny<domain::StageStatus>(row, "stage_status"),
            .waitsFor = word<domain::WaitsFor>(row, "waits_for"),
            .holdUp = row.text("hold_up"),
            .arch = word<domain::Arch>(row, "arch"),
            .description = row.text("description"),
            .due = dayIfAny("due_day"),
            .receivedAt = Instant::ofMicroseconds(row.whole("received_us")),
            .changedAt = Instant::ofMicroseconds(row.whole("changed_us")),
            .patientCode = row.text("patient_code"),
            .prescriberCode = row.text("prescriber_code"),
            .identity = {row.text("identity_code"), row.text("identity_digest")},
            .questions = row.whole("questions"),
            .cautions = row.whole("cautions"),
            .caseLeader = row.textIfAny("case_leader") ? std::optional{numberIn(row, "case_leader")}
                                                       : std::nullopt,
            .waitingSince = Instant::ofMicroseconds(row.whole("waiting_since_us")),
            .laboratoryTime = row.whole("laboratory_us"),
            .purged = row.whole("purged") != 0,
            .delivered = dayIfAny("delivered_day")};
}

RegisterRow rowOf(const Order& order) {
    const domain::StageStep* step = isClosed(order) ? nullptr : currentStep(order);
    const domain::Parties& parties = order.revision.parties;
    return {.number = order.number,
            .version = order.version,
            .status = order.status,
            .stage = step != nullptr ? std::optional{step->stage} : std::nullopt,
            .stageStatus = step != nullptr ? std::optional{step->status} : std::nullopt,
            .waitsFor = domain::waitsFor(order),
            .holdUp = domain::holdUp(order),
            .arch = order.prescription().arch,
            .description = describe(order.prescription()),
            .due = order.prescription().needed,
            .receivedAt = order.receivedAt,
            .changedAt = order.changedAt,
            .patientCode = parties.patient,
            .prescriberCode = parties.prescriber,
            .identity = parties.identity,
            .questions = questionsOf(order),
            .cautions = static_cast<std::int64_t>(untakenCautions(order).size()),
            .caseLeader = order.caseLeader,
            .waitingSince = order.waiting.since,
            .laboratoryTime = laboratoryTime(order, order.changedAt),
            .purged = order.purged,
            .delivered = deliveredOn(order)};
}

Result<Done> OrderRegister::put(Transaction& transaction, const Order& order) const try {
    putRow(transaction.connection(), order);
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::vector<RegisterRow>> OrderRegister::all() const try {
    Statement rows{connection_, "order_register_all"};
    rows.run();
    std::vector<RegisterRow> list;
    while (rows.next()) list.push_back(readRegisterRow(rows));
    return list;
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::optional<RegisterRow>> OrderRegister::find(const OrderNumber& number) const try {
    Statement row{connection_, "order_register_of_number"};
    row.bind("order_number", number.text()).run();
    if (!row.next()) return std::optional<RegisterRow>{};
    return std::optional{readRegisterRow(row)};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::vector<RegisterRow>> OrderRegister::ofCase(const OrderNumber& leader) const try {
    std::vector<RegisterRow> list;
    auto first = find(leader);
    if (!first) return first.error();
    if (*first) list.push_back(**std::move(first));
    Statement rows{connection_, "order_register_of_case"};
    rows.bind("leader", leader.text()).run();
    while (rows.next()) list.push_back(readRegisterRow(rows));
    return list;
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<bool> OrderRegister::isNamedElsewhere(Party party, const std::string& code,
                                             const OrderNumber& than) const try {
    Statement row{connection_, party == Party::Patient ? "order_register_of_patient"
                                                       : "order_register_of_prescriber"};
    return row.bind({{"code", code}, {"order_number", than.text()}}).run().next();
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<OrderNumber> OrderRegister::nextNumber(Transaction& transaction, Date today) const try {
    const int year = yearOf(today);
    Statement last{transaction.connection(), "order_register_last_number"};
    last.bind("year", year).run();
    const std::int64_t count = last.next() ? last.whole("count") : 0;
    const auto number = OrderNumber::make(year, static_cast<int>(count) + 1);
    if (!number)
        return Error{ErrorCode::Refused,
                     "no order numbers are left in the year of " + today.text()};
    return *number;
} catch (const SqlFailure& failure) {
    return failure.error();
}

std::unique_ptr<LedgerListener> OrderRegister::rebuild(Transaction& transaction) const {
    Statement{transaction.connection(), "order_register_clear"}.run();
    return std::make_unique<RegisterWriter>(transaction.connection());
}

std::unique_ptr<TableCheck> OrderRegister::check() const {
    return std::make_unique<RegisterCheck>(connection_);
}

}  // namespace storage
