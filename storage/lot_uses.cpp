#include "storage/lot_uses.h"

#include <algorithm>

#include "storage/ledger.h"
#include "storage/statement.h"

namespace storage {
namespace {

using domain::Done;
using domain::Event;
using domain::Result;

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

/// By order and version, as the table is read.
Result<std::vector<LotUse>> inLedger(Connection& connection) {
    std::vector<LotUse> uses;
    const auto visited = Ledger{connection}.visit([&](const Event& event) {
        const auto more = usesIn(event);
        uses.insert(uses.end(), more.begin(), more.end());
    });
    if (!visited) return visited.error();
    std::ranges::sort(uses, {}, [](const LotUse& use) {
        return std::tuple{use.order, use.version, use.part};
    });
    return uses;
}

void insert(Connection& connection, const LotUse& use) {
    Statement{connection, "lot_use_insert"}.bind(cellsOf(use)).run();
    Statement{connection, "lot_total_add"}
        .bind({{"lot", use.lot.text()}, {"amount", use.amount}})
        .run();
}

/// Every total against the uses it sums up.
std::vector<std::string> totalProblems(Connection& connection, const std::vector<LotUse>& uses) {
    std::map<std::string, std::int64_t> expected;
    for (const LotUse& use : uses) expected[use.lot.text()] += use.amount;
    std::map<std::string, std::int64_t> found;
    Statement rows{connection, "lot_total_all"};
    rows.run();
    while (rows.next()) found[rows.text("lot")] = rows.whole("amount");
    if (found == expected) return {};
    std::vector<std::string> problems;
    for (const auto& [lot, amount] : expected)
        if (const auto total = found.find(lot); total == found.end() || total->second != amount)
            problems.push_back("the total of lot " + lot + " is not what its uses sum up to");
    for (const auto& [lot, amount] : found)
        if (!expected.contains(lot)) problems.push_back("lot " + lot + " has a total and no use");
    return problems;
}

std::string told(const LotUse& use) {
    return "order " + use.order.text() + ", lot " + use.lot.text() + ", " +
           domain::amountText(use.kind, use.amount);
}

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

Result<Done> LotUses::put(Transaction& transaction, const std::vector<Event>& events) const try {
    for (const Event& event : events)
        for (const LotUse& use : usesIn(event)) insert(transaction.connection(), use);
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

Result<Done> LotUses::rebuild(Transaction& transaction) const try {
    const auto uses = inLedger(transaction.connection());
    if (!uses) return uses.error();
    Statement{transaction.connection(), "lot_use_clear"}.run();
    Statement{transaction.connection(), "lot_total_clear"}.run();
    for (const LotUse& use : *uses) insert(transaction.connection(), use);
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::vector<std::string>> LotUses::differences() const try {
    const Snapshot snapshot{connection_};
    const auto expected = inLedger(connection_);
    if (!expected) return expected.error();
    Statement rows{connection_, "lot_use_all"};
    const auto found = readRows(rows);
    std::vector<std::string> problems = totalProblems(connection_, *expected);
    const auto lack = [&](const std::vector<LotUse>& some, const std::vector<LotUse>& others,
                          std::string_view says) {
        for (const LotUse& use : some)
            if (std::ranges::find(others, use) == others.end())
                problems.push_back(told(use) + std::string{says});
    };
    if (*expected == found) return problems;
    lack(*expected, found, ": the table of uses does not have it");
    lack(found, *expected, ": the ledger does not have it");
    return problems;
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace storage
