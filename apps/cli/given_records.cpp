#include "apps/cli/given_records.h"

#include "apps/actions/bench.h"
#include "apps/cli/typed_words.h"

namespace cli {
namespace {

using actions::GivenRecord;
using domain::Result;
using Records = std::vector<GivenRecord>;
using domain::Done;

/// What every option reads from and adds to.
struct Reading {
    const Call& call;
    const std::vector<std::string>& checklist;
    domain::Notation notation;
    Records& records;

    void add(domain::StageRecord record) const { records.push_back({std::move(record), {}}); }
};

std::vector<std::string> parts(const std::string& text) {
    std::vector<std::string> list;
    std::size_t from = 0;
    while (from <= text.size()) {
        const std::size_t end = std::min(text.find(';', from), text.size());
        const std::size_t begin = text.find_first_not_of(' ', from);
        list.push_back(begin == std::string::npos || begin >= end
                           ? std::string{}
                           : text.substr(begin, end - begin));
        from = end + 1;
    }
    return list;
}

Result<Done> ticks(const Reading& reading) {
    for (const std::string& item : reading.call.options("tick")) reading.add(domain::Ticked{item});
    if (reading.call.has("all-ticked"))
        for (const std::string& item : reading.checklist) reading.add(domain::Ticked{item});
    return Done{};
}

Result<Done> undercuts(const Reading& reading) {
    for (const std::string& text : reading.call.options("undercut")) {
        const auto pair = pairIn(text, "14=0.25 mm");
        if (!pair) return pair.error();
        const auto tooth = domain::parseTooth(pair->first, reading.notation);
        if (!tooth)
            return unusable("--undercut \"" + text + "\": \"" + pair->first +
                            "\" is no tooth in the order's notation");
        const auto depth = amountIn<domain::MicronUnit>(pair->second, "undercut");
        if (!depth) return depth.error();
        reading.add(domain::UndercutMeasured{*tooth, *depth});
    }
    if (reading.call.has("tripod")) reading.add(domain::TripodMarked{});
    return Done{};
}

constexpr std::string_view kPieces = " pcs";

/// "6 pcs" or "23.4 g".
Result<std::int64_t> lotAmount(const std::string& text) {
    if (text.ends_with(kPieces))
        return wholeOf(text.substr(0, text.size() - kPieces.size()), 1, "number of pieces");
    const auto mass = amountIn<domain::MilligramUnit>(text, "amount of a lot");
    if (!mass) return mass.error();
    return mass->count();
}

Result<Done> lots(const Reading& reading) {
    for (const std::string& text : reading.call.options("lot")) {
        const auto pair = pairIn(text, "AL-204=23.4 g");
        if (!pair) return pair.error();
        const auto code = thingOf(pair->first, "lot");
        if (!code) return code.error();
        const auto amount = lotAmount(pair->second);
        if (!amount) return amount.error();
        reading.records.push_back({.record = domain::LotUsed{*code, {}, *amount},
                                   .inPieces = pair->second.ends_with(kPieces)});
    }
    return Done{};
}

Result<Done> casting(const Reading& reading) {
    const auto share = amountOption<domain::PpmUnit>(reading.call, "new-metal");
    if (!share) return share.error();
    if (*share) reading.add(domain::NewMetal{**share});
    const auto mass = amountOption<domain::MilligramUnit>(reading.call, "mass");
    if (!mass) return mass.error();
    if (*mass) reading.add(domain::CastWeighed{**mass});
    return Done{};
}

Result<Done> teeth(const Reading& reading) {
    for (const std::string& text : reading.call.options("teeth")) {
        const auto words = parts(text);
        if (words.size() != 3)
            return unusable("--teeth \"" + text + "\": expected as \"mould; guide; tab\"");
        reading.add(domain::TeethSet{words[0], words[1], words[2]});
    }
    return Done{};
}

Result<Done> cure(const Reading& reading) {
    const auto file = reading.call.option("cure");
    if (!file) return Done{};
    const auto cycle =
        wordOf<domain::CureCycle>(reading.call.option("cycle").value_or(""), "cycle");
    if (!cycle) return cycle.error();
    const auto thickest = amountOption<domain::MicronUnit>(reading.call, "thickness");
    if (!thickest) return thickest.error();
    const auto judged = actions::judgeCureLog(*file, *cycle, *thickest);
    if (!judged) return judged.error();
    for (const domain::StageRecord& record : actions::recordsOf(*judged)) reading.add(record);
    return Done{};
}

Result<Done> disinfection(const Reading& reading) {
    const auto text = reading.call.option("disinfected");
    if (!text) return Done{};
    const auto read = disinfectionIn(*text);
    if (!read) return read.error();
    reading.add(domain::Disinfected{*read});
    return Done{};
}

Result<Done> equipment(const Reading& reading) {
    for (const std::string& text : reading.call.options("equipment")) {
        const auto code = thingOf(text, "piece of equipment");
        if (!code) return code.error();
        reading.records.push_back({domain::EquipmentUsed{.equipment = *code, .kind = {}},
                                   reading.call.option("responsibility")});
    }
    return Done{};
}

Result<Done> values(const Reading& reading) {
    for (const std::string& text : reading.call.options("value")) {
        const auto pair = pairIn(text, "investment powder=300 g");
        if (!pair) return pair.error();
        reading.add(domain::BenchValue{pair->first, pair->second});
    }
    return Done{};
}

constexpr Result<Done> (*kReadings[])(const Reading&) = {
    &ticks, &undercuts, &lots, &casting, &teeth, &cure, &disinfection, &equipment, &values};

}  // namespace

Result<domain::Disinfection> disinfectionIn(const std::string& text) {
    const auto words = parts(text);
    const auto contact = words.size() == 2 ? domain::parseQuantity<domain::MinuteUnit>(words[1])
                                           : std::optional<domain::Minutes>{};
    if (!contact || words[0].empty())
        return unusable("\"" + text +
                        "\" is no disinfection; expected what with and how long, as "
                        "\"hypochlorite 0.5 %; 10 min\"");
    return domain::Disinfection{words[0], *contact};
}

Result<Records> recordsIn(const Call& call, const std::vector<std::string>& checklist,
                          domain::Notation notation) {
    Records records;
    const Reading reading{call, checklist, notation, records};
    for (const auto read : kReadings)
        if (auto done = read(reading); !done) return done.error();
    if (records.empty())
        return unusable("nothing to record was given; framewright record --help lists what can be");
    return records;
}

}  // namespace cli
