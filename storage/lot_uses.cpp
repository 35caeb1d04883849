#include "storage/lot_uses.h"

#include <algorithm>

#include "storage/ledger.h"
#include "storage/statement.h"

namespace storage {
namespace {

using domain::Done;
using domain::Event;
using domain::Result;

constexpr const char* kNotInLedger = ": the ledger does not have it";

std::vector<Cell> cellsOf(const LotUse& use) {
    return {{"order_number", use.order.text()},
            {"order_version", use.version},
            {"part", use.part},
            {"lot", use.lot.text()},
            {"kind", std::string{codeOf(use.kind)}},
            {"amount", use.amount},
            {"stage", std::string{codeOf(use.stage)}}};
}

[[noreturn]] void damaged(std::string_view column, const std::string& text) {
    throw SqlFailure{"the table lot_use is damaged: " + std::string{column} + " holds \"" + text +
                     "\"; verify the records"};
}

template <typename T, typename Parse>
T read(const Statement& row, std::string_view column, Parse parse) {
    const std::string text = row.text(column);
    const std::optional<T> value = parse(text);
    if (!value) damaged(column, text);
    return *value;
}

LotUse readRow(const Statement& row) {
    return {.order = read<domain::OrderNumber>(row, "order_number", domain::OrderNumber::parse),
            .version = row.whole("order_version"),
            .part = row.whole("part"),
            .lot = read<domain::ThingCode>(row, "lot", domain::ThingCode::parse),
            .kind = read<domain::LotKind>(row, "kind", domain::parseCode<domain::LotKind>),
            .amount = row.whole("amount"),
            .stage = read<domain::Stage>(row, "stage", domain::parseCode<domain::Stage>)};
}

std::vector<LotUse> readRows(Statement& rows) {
    std::vector<LotUse> uses;
    rows.run();
    while (rows.next()) uses.push_back(readRow(rows));
    return uses;
}

void insert(Connection& connection, const LotUse& use) {
    Statement{connection, "lot_use_insert"}.bind(cellsOf(use)).run();
    Statement{connection, "lot_total_add"}
        .bind({{"lot", use.lot.text()}, {"amount", use.amount}})
        .run();
}

std::string told(const LotUse& use) {
    return "order " + use.order.text() + ", lot " + use.lot.text() + ", " +
           domain::amountText(use.kind, use.amount);
}

/// Whether each use of an order went into its device, as it lies there.
struct KeptUse {
    std::int64_t version{};
    std::int64_t part{};
    std::int64_t inDevice{};  ///< 1: it did
};
std::vector<KeptUse> usesOf(Connection& connection, const domain::OrderNumber& number) {
    Statement rows{connection, "lot_use_of_order"};
    rows.bind("order_number", number.text()).run();
    std::vector<KeptUse> uses;
    while (rows.next())
        uses.push_back({rows.whole("order_version"), rows.whole("part"), rows.whole("in_device")});
    return uses;
}

bool hasUses(const domain::Order& order) {
    return std::ranges::any_of(order.records, [](const domain::KeptRecord& kept) {
        return std::holds_alternative<domain::LotUsed>(kept.record);
    });
}

/// Brings the uses of an order up to what its attempts are now.
void putInDevice(Connection& connection, const domain::Order& order) {
    if (!hasUses(order)) return;
    const std::vector<bool> now = inDevice(order);
    const std::vector<KeptUse> uses = usesOf(connection, order.number);
    for (std::size_t i = 0; i < std::min(now.size(), uses.size()); ++i)
        if (uses[i].inDevice != (now[i] ? 1 : 0))
            Statement{connection, "lot_use_in_device"}
                .bind({{"order_number", order.number.text()},
                       {"order_version", uses[i].version},
                       {"part", uses[i].part},
                       {"in_device", std::int64_t{now[i] ? 1 : 0}}})
                .run();
}

/// Writes the uses of each event that is told.
class UseWriter : public LedgerListener {
public:
    explicit UseWriter(Connection& connection) : connection_{connection} {}

    void entry(const LedgerEvent& event) override {
        const auto* order = std::get_if<Event>(&event);
        if (order == nullptr) return;
        for (const LotUse& use : usesIn(*order)) insert(connection_, use);
    }
    void order(const domain::Order& order) override { putInDevice(connection_, order); }

private:
    Connection& connection_;
};

/// Compares the uses of each event that is told with their rows, and the totals with their sums.
class UseCheck : public TableCheck {
public:
    explicit UseCheck(Connection& connection) : connection_{connection} {}

    void entry(const LedgerEvent& event) override {
        const auto* order = std::get_if<Event>(&event);
        if (order == nullptr || !std::holds_alternative<domain::Recorded>(order->what)) return;
        const auto expected = usesIn(*order);
        for (const LotUse& use : expected) sums_[use.lot.text()] += use.amount;
        Statement rows{connection_, "lot_use_of_event"};
        rows.bind({{"order_number", order->order.text()}, {"order_version", order->version}});
        const auto rowsFound = readRows(rows);
        if (rowsFound == expected) return;
        lack(expected, rowsFound, ": the table of uses does not have it");
        lack(rowsFound, expected, kNotInLedger);
    }
    void order(const domain::Order& order) override {
        if (!hasUses(order)) return;
        std::vector<std::int64_t> kept;
        for (const KeptUse& use : usesOf(connection_, order.number)) kept.push_back(use.inDevice);
        if (!std::ranges::equal(kept, inDevice(order)))
            found("the table of uses does not tell what of order " + order.number.text() +
                  " is in the device");
    }
    void end() override {
        Statement strange{connection_, "lot_use_strange"};
        for (const LotUse& use : readRows(strange)) found(told(use) + kNotInLedger);
        checkTotals();
    }

private:
    void lack(const std::vector<LotUse>& some, const std::vector<LotUse>& others,
              std::string_view says) {
        for (const LotUse& use : some)
            if (std::ranges::find(others, use) == others.end())
                found(told(use) + std::string{says});
    }
    void checkTotals() {
        std::map<std::string, std::int64_t> totals;
        Statement rows{connection_, "lot_total_all"};
        rows.run();
        while (rows.next()) totals[rows.text("lot")] = rows.whole("amount");
        for (const auto& [lot, amount] : sums_)
            if (const auto total = totals.find(lot);
                total == totals.end() || total->second != amount)
                found("the total of lot " + lot + " is not what its uses sum up to");
        for (const auto& [lot, amount] : totals)
            if (!sums_.contains(lot)) found("lot " + lot + " has a total and no use");
    }

    Connection& connection_;
    std::map<std::string, std::int64_t> sums_;
};

}  // namespace

std::vector<LotUse> usesIn(const Event& event) {
    std::vector<LotUse> uses;
    const auto* recorded = std::get_if<domain::Recorded>(&event.what);
    if (recorded == nullptr) return uses;
    for (const domain::StageRecord& record : recorded->records)
        if (const auto* use = std::get_if<domain::LotUsed>(&record))
            uses.push_back({.order = event.order,
                            .version = event.version,
                            .part = static_cast<std::int64_t>(uses.size()) + 1,
                            .lot = use->lot,
                            .kind = use->kind,
                            .amount = use->amount,
                            .stage = recorded->stage});
    return uses;
}

std::vector<bool> inDevice(const domain::Order& order) {
    std::vector<bool> list;
    for (const domain::KeptRecord& kept : order.records) {
        if (!std::holds_alternative<domain::LotUsed>(kept.record)) continue;
        const auto step = std::ranges::find(order.steps, kept.stage, &domain::StageStep::stage);
        list.push_back(step != order.steps.end() && step->attempt == kept.attempt);
    }
    return list;
}

Result<Done> LotUses::put(Transaction& transaction, const domain::Order& order,
                          const std::vector<Event>& events) const try {
    for (const Event& event : events)
        for (const LotUse& use : usesIn(event)) insert(transaction.connection(), use);
    putInDevice(transaction.connection(), order);
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::vector<LotUse>> LotUses::ofLot(const domain::ThingCode& lot) const try {
    Statement rows{connection_, "lot_use_of_lot"};
    rows.bind("lot", lot.text());
    return readRows(rows);
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::vector<TracedUse>> LotUses::trace(const domain::ThingCode& lot) const try {
    const OrderLabels labels{connection_};
    Statement rows{connection_, "lot_use_devices"};
    rows.bind("lot", lot.text()).run();
    std::vector<TracedUse> uses;
    while (rows.next()) {
        const auto delivered = rows.wholeIfAny("delivered_day");
        uses.push_back(
            {.order = read<domain::OrderNumber>(rows, "order_number", domain::OrderNumber::parse),
             .amount = rows.whole("amount"),
             .stage = read<domain::Stage>(rows, "stage", domain::parseCode<domain::Stage>),
             .isInDevice = rows.whole("in_device") != 0,
             .status =
                 read<domain::OrderStatus>(rows, "status", domain::parseCode<domain::OrderStatus>),
             .description = rows.text("description"),
             .patientCode = rows.text("patient_code"),
             .prescriberCode = rows.text("prescriber_code"),
             .delivered =
                 delivered ? std::optional{domain::Date::ofDays(*delivered)} : std::nullopt,
             .label = labels.read(rows)});
    }
    return uses;
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::map<domain::ThingCode, std::int64_t>> LotUses::totals() const try {
    std::map<domain::ThingCode, std::int64_t> totals;
    Statement rows{connection_, "lot_total_all"};
    rows.run();
    while (rows.next())
        totals.emplace(read<domain::ThingCode>(rows, "lot", domain::ThingCode::parse),
                       rows.whole("amount"));
    return totals;
} catch (const SqlFailure& failure) {
    return failure.error();
}

std::unique_ptr<LedgerListener> LotUses::rebuild(Transaction& transaction) const {
    Statement{transaction.connection(), "lot_use_clear"}.run();
    Statement{transaction.connection(), "lot_total_clear"}.run();
    return std::make_unique<UseWriter>(transaction.connection());
}

std::unique_ptr<TableCheck> LotUses::check() const {
    return std::make_unique<UseCheck>(connection_);
}

}  // namespace storage
