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
        for (const LotUse& use : usesIn(event))
            Statement{transaction.database(), "lot_use_insert"}.bind(cellsOf(use)).run();
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::vector<LotUse>> LotUses::ofLot(const domain::ThingCode& lot) const try {
    Statement rows{connection_.database(), "lot_use_of_lot"};
    rows.bind("lot", lot.text());
    return readRows(rows);
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::map<domain::ThingCode, std::int64_t>> LotUses::sums() const try {
    std::map<domain::ThingCode, std::int64_t> sums;
    Statement rows{connection_.database(), "lot_use_sums"};
    rows.run();
    while (rows.next())
        sums.emplace(read<domain::ThingCode>(rows, "lot", domain::ThingCode::parse),
                     rows.whole("amount"));
    return sums;
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<Done> LotUses::rebuild(Transaction& transaction) const try {
    const auto uses = inLedger(transaction.connection());
    if (!uses) return uses.error();
    Statement{transaction.database(), "lot_use_clear"}.run();
    for (const LotUse& use : *uses)
        Statement{transaction.database(), "lot_use_insert"}.bind(cellsOf(use)).run();
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::vector<std::string>> LotUses::differences() const try {
    const Snapshot snapshot{connection_};
    const auto expected = inLedger(connection_);
    if (!expected) return expected.error();
    Statement rows{connection_.database(), "lot_use_all"};
    const auto found = readRows(rows);
    std::vector<std::string> problems;
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
