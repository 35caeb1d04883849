#include "apps/desktop/models/bench_form.h"

#include <algorithm>
#include <array>
#include <functional>

#include "apps/actions/bench.h"
#include "apps/desktop/models/words.h"

namespace models {
namespace {

using actions::GivenRecord;
using domain::Demand;
using domain::Done;
using domain::EquipmentKind;
using domain::Error;
using domain::ErrorCode;
using domain::LotKind;
using domain::Result;

/// A line as it is read: its texts, and where the records go.
struct Reading {
    const BenchLine& line;
    const QStringList& typed;
    std::vector<GivenRecord>& records;

    std::string cell(int number) const { return typed.value(number).trimmed().toStdString(); }
    void add(domain::StageRecord record) const { records.push_back({std::move(record), {}}); }
};
using Reader = Result<Done> (*)(const Reading&);

Error unusable(std::string why) { return {ErrorCode::Unusable, std::move(why)}; }

/// "0,25" reads as "0.25 mm".
template <typename Unit>
Result<domain::Quantity<Unit>> amountIn(const std::string& typed, std::string_view what) {
    std::string text = typed;
    std::ranges::replace(text, ',', '.');
    auto amount = domain::parseQuantity<Unit>(text);
    if (!amount) amount = domain::parseQuantity<Unit>(text + ' ' + std::string{Unit::kSign});
    if (!amount)
        return unusable("\"" + typed + "\" is no " + std::string{what} + "; type it as \"" +
                        std::string{Unit::kExample} + "\"");
    return *amount;
}

Result<domain::ThingCode> codeIn(const std::string& typed, std::string_view what) {
    const auto code = domain::ThingCode::parse(typed);
    if (!code)
        return unusable("\"" + typed + "\" is no code of a " + std::string{what} +
                        "; scan it, or type " + std::string{domain::kShortCodeForm});
    return *code;
}

Result<Done> undercut(const Reading& reading) {
    const auto depth = amountIn<domain::MicronUnit>(reading.cell(0), "undercut");
    if (!depth) return depth.error();
    reading.add(domain::UndercutMeasured{*reading.line.tooth, *depth});
    return Done{};
}

Result<Done> tripod(const Reading& reading) {
    reading.add(domain::TripodMarked{});
    return Done{};
}

Result<std::int64_t> pieces(const std::string& typed) {
    bool isNumber = false;
    const int count =
        QString::fromStdString(typed).remove(QStringLiteral("pcs")).trimmed().toInt(&isNumber);
    if (!isNumber || count <= 0)
        return unusable("\"" + typed + "\" is no number of teeth; type it as \"6\"");
    return std::int64_t{count};
}

Result<Done> lot(const Reading& reading) {
    const auto code = codeIn(reading.cell(0), "lot");
    if (!code) return code.error();
    if (reading.cell(1).empty()) return unusable("how much of lot " + code->text() + " was used?");
    std::int64_t used{};
    if (reading.line.demand == Demand::ToothLots) {
        const auto count = pieces(reading.cell(1));
        if (!count) return count.error();
        used = *count;
    } else {
        const auto mass = amountIn<domain::MilligramUnit>(reading.cell(1), "mass");
        if (!mass) return mass.error();
        used = mass->count();
    }
    reading.add(domain::LotUsed{.lot = *code, .kind = {}, .amount = used});
    return Done{};
}

Result<Done> equipment(const Reading& reading) {
    const auto code = codeIn(reading.cell(0), "piece of equipment");
    if (!code) return code.error();
    const std::string why = reading.cell(1);
    reading.records.push_back({domain::EquipmentUsed{.equipment = *code, .kind = {}},
                               why.empty() ? std::nullopt : std::optional{why}});
    return Done{};
}

Result<Done> newMetal(const Reading& reading) {
    const auto share = amountIn<domain::PpmUnit>(reading.cell(0), "share");
    if (!share) return share.error();
    reading.add(domain::NewMetal{*share});
    return Done{};
}

Result<Done> castMass(const Reading& reading) {
    const auto mass = amountIn<domain::MilligramUnit>(reading.cell(0), "mass");
    if (!mass) return mass.error();
    reading.add(domain::CastWeighed{*mass});
    return Done{};
}

Result<Done> teeth(const Reading& reading) {
    const domain::TeethSet set{reading.cell(0), reading.cell(1), reading.cell(2)};
    if (set.mould.empty() || set.guide.empty() || set.tab.empty())
        return unusable("mould, guide and tab are all needed");
    reading.add(set);
    return Done{};
}

Result<Done> cure(const Reading& reading) {
    if (reading.cell(0).empty()) return unusable("which file is the log?");
    const auto cycle = domain::parseCode<domain::CureCycle>(reading.cell(1));
    if (!cycle) return unusable("which cycle was it? Choose one");
    std::optional<domain::Microns> thickest;
    if (!reading.cell(2).empty()) {
        const auto read = amountIn<domain::MicronUnit>(reading.cell(2), "thickness");
        if (!read) return read.error();
        thickest = *read;
    }
    const auto judged = actions::judgeCureLog(reading.cell(0), *cycle, thickest);
    if (!judged) return judged.error();
    for (const domain::StageRecord& record : actions::recordsOf(*judged)) reading.add(record);
    return Done{};
}

Result<Done> disinfection(const Reading& reading) {
    if (reading.cell(0).empty()) return unusable("disinfected with what?");
    const auto contact = amountIn<domain::MinuteUnit>(reading.cell(1), "time of contact");
    if (!contact) return contact.error();
    reading.add(domain::Disinfected{{reading.cell(0), *contact}});
    return Done{};
}

BenchCell words(const char* word, const char* example) {
    return {.word = QString::fromLatin1(word), .example = QString::fromLatin1(example)};
}

std::vector<BenchCell> lotCells(const char* example) {
    return {words("lot, scanned", "AL-204"), words("amount", example)};
}

BenchCell cycleCell() {
    BenchCell cell{.word = QStringLiteral("cycle"), .example = {}, .kind = CellKind::Choice};
    for (const auto& code : domain::enumCodes<domain::CureCycle>) cell.choices += text(code.word);
    return cell;
}

/// How a demand is filled in. One that nothing can be typed for has no cells.
struct DemandRow {
    Demand demand;
    const char* title;
    std::optional<EquipmentKind> equipment{};
    std::vector<BenchCell> cells{};
    Reader read{};
};

DemandRow equipmentRow(Demand demand, EquipmentKind kind, const char* title) {
    return {demand, title, kind, {words("scanned", "")}, &equipment};
}

const std::vector<DemandRow>& rows() {
    static const std::vector<DemandRow> kRows{
        {Demand::Undercuts, "undercut", {}, {words("depth", "0.25 mm")}, &undercut},
        {Demand::TripodMarks,
         "tripod marks on the cast",
         {},
         {{.word = QStringLiteral("tripod marks on the cast"),
           .example = {},
           .kind = CellKind::Tick}},
         &tripod},
        equipmentRow(Demand::Surveyor, EquipmentKind::Surveyor, "surveyor"),
        {Demand::InvestmentLot, "investment", {}, lotCells("300 g"), &lot},
        equipmentRow(Demand::Furnace, EquipmentKind::Furnace, "furnace"),
        {Demand::AlloyLot, "alloy", {}, lotCells("23.4 g"), &lot},
        {Demand::NewMetal, "new metal in the melt", {}, {words("share", "60 %")}, &newMetal},
        {Demand::CastMass, "mass of the casting", {}, {words("mass", "12.4 g")}, &castMass},
        equipmentRow(Demand::Caster, EquipmentKind::Caster, "caster"),
        {Demand::BlankLot, "milling blank", {}, lotCells("120 g"), &lot},
        equipmentRow(Demand::Mill, EquipmentKind::Mill, "mill"),
        {Demand::PowderLot, "metal powder", {}, lotCells("23.4 g"), &lot},
        equipmentRow(Demand::Printer, EquipmentKind::Printer, "printer"),
        {Demand::ToothLots, "artificial teeth", {}, lotCells("6"), &lot},
        {Demand::MouldAndShade,
         "teeth as set",
         {},
         {words("mould", "M3"), words("guide", ""), words("tab", "")},
         &teeth},
        {Demand::ResinLot, "base resin, powder", {}, lotCells("24 g"), &lot},
        {Demand::CureLog,
         "cure",
         {},
         {{.word = QStringLiteral("log"), .example = {}, .kind = CellKind::File},
          cycleCell(),
          words("thickest section", "3 mm")},
         &cure},
        equipmentRow(Demand::CuringBath, EquipmentKind::CuringBath, "curing bath"),
        {Demand::OtherPerson, "", {}, {}, {}},
        {Demand::Disinfection,
         "disinfected",
         {},
         {words("with", "hypochlorite 0.5 %"), words("contact", "10 min")},
         &disinfection},
        {Demand::LegalFields, "", {}, {}, {}},
        {Demand::Statement, "", {}, {}, {}},
    };
    return kRows;
}

const DemandRow& rowOf(Demand demand) { return rows()[static_cast<std::size_t>(demand)]; }

/// Whether a record answers a demand.
bool answers(const domain::StageRecord& record, const BenchLine& line,
             const domain::Workshop& workshop) {
    static constexpr std::pair<Demand, LotKind> kLots[] = {
        {Demand::InvestmentLot, LotKind::Investment}, {Demand::AlloyLot, LotKind::Alloy},
        {Demand::BlankLot, LotKind::MillingBlank},    {Demand::PowderLot, LotKind::MetalPowder},
        {Demand::ToothLots, LotKind::Teeth},          {Demand::ResinLot, LotKind::ResinPowder}};
    const Demand demand = line.demand;
    if (const auto* use = std::get_if<domain::LotUsed>(&record))
        return std::ranges::count(kLots, std::pair{demand, use->kind}) > 0;
    if (const auto* use = std::get_if<domain::EquipmentUsed>(&record))
        return rowOf(demand).equipment == use->kind && workshop.equipment.contains(use->equipment);
    if (const auto* depth = std::get_if<domain::UndercutMeasured>(&record))
        return demand == Demand::Undercuts && line.tooth == depth->tooth;
    static constexpr std::pair<Demand, domain::RecordKind> kKinds[] = {
        {Demand::TripodMarks, domain::RecordKind::TripodMarked},
        {Demand::NewMetal, domain::RecordKind::NewMetal},
        {Demand::CastMass, domain::RecordKind::CastWeighed},
        {Demand::MouldAndShade, domain::RecordKind::TeethSet},
        {Demand::CureLog, domain::RecordKind::CureLogged},
        {Demand::Disinfection, domain::RecordKind::Disinfected}};
    return std::ranges::count(kKinds, std::pair{demand, kindOf(record)}) > 0;
}

/// The equipment of a kind as an example; a second cell where one of them is overdue.
void fitEquipment(BenchLine& line, EquipmentKind kind, const domain::Workshop& workshop,
                  domain::Date today) {
    bool overdue = false;
    QStringList codes;
    for (const auto& [code, thing] : workshop.equipment) {
        if (thing.kind != kind) continue;
        codes += text(code.text());
        overdue = overdue || (thing.calibrationDue && *thing.calibrationDue < today);
    }
    line.cells.front().example =
        codes.isEmpty() ? QStringLiteral("none entered yet") : codes.join(QStringLiteral(", "));
    if (overdue)
        line.cells.push_back(
            {.word = QStringLiteral("if overdue: why a manager answers for it"), .example = {}});
}

void fit(BenchLine& line, const domain::Order& order, const domain::Workshop& workshop,
         domain::Date today) {
    if (const auto kind = rowOf(line.demand).equipment)
        return fitEquipment(line, *kind, workshop, today);
    const auto& shades = order.prescription().shades;
    if (line.demand == Demand::MouldAndShade && !shades.empty()) {
        line.cells[1].initial = text(shades.front().guide);
        line.cells[2].initial = text(shades.front().tab);
    }
    if (line.demand != Demand::Disinfection) return;
    for (const domain::KeptRecord& kept : order.records)
        if (const auto* done = std::get_if<domain::Disinfected>(&kept.record))
            line.cells[0].initial = text(done->disinfection.agent);
}

std::vector<BenchLine> linesOf(Demand demand, const domain::Order& order) {
    const DemandRow& row = rowOf(demand);
    const BenchLine line{.demand = demand,
                         .title = QString::fromLatin1(row.title),
                         .recorded = {},
                         .cells = row.cells};
    if (demand != Demand::Undercuts) return {line};
    std::vector<BenchLine> lines;
    const auto notation = notationOf(order.prescription());
    for (const domain::Clasp& clasp : order.prescription().clasps) {
        if (!clasp.retentiveArm) continue;
        BenchLine each = line;
        each.tooth = clasp.tooth;
        each.title = QStringLiteral("undercut of %1").arg(text(nameOf(clasp.tooth, notation)));
        if (clasp.undercut && clasp.undercut->depth)
            each.title +=
                QStringLiteral(": %1 prescribed").arg(text(domain::text(*clasp.undercut->depth)));
        lines.push_back(std::move(each));
    }
    return lines;
}

}  // namespace

std::vector<BenchLine> benchLines(const domain::Order& order, domain::Stage stage,
                                  const domain::Workshop& workshop, domain::Date today) {
    std::vector<BenchLine> lines;
    for (const Demand demand : planOf(order, stage).demands) {
        if (rowOf(demand).cells.empty()) continue;
        for (BenchLine& line : linesOf(demand, order)) {
            fit(line, order, workshop, today);
            QStringList recorded;
            for (const domain::StageRecord& record : recordsOf(order, stage))
                if (answers(record, line, workshop))
                    recorded += text(tellRecord(record, notationOf(order.prescription())));
            line.recorded = recorded.join(QStringLiteral("; "));
            lines.push_back(std::move(line));
        }
    }
    return lines;
}

bool isUntouched(const BenchLine& line, const QStringList& typed) {
    for (std::size_t i = 0; i < line.cells.size(); ++i) {
        const QString words = typed.value(static_cast<qsizetype>(i)).trimmed();
        if (!words.isEmpty() && words != line.cells[i].initial) return false;
    }
    return true;
}

BenchAnswer benchRecords(const std::vector<BenchLine>& lines, const Typed& typed,
                         const QStringList& ticks) {
    BenchAnswer answer;
    for (const QString& item : ticks)
        answer.records.push_back({domain::Ticked{item.toStdString()}, {}});
    for (std::size_t i = 0; i < lines.size() && i < typed.size(); ++i) {
        if (isUntouched(lines[i], typed[i])) continue;
        const auto read = rowOf(lines[i].demand).read({lines[i], typed[i], answer.records});
        if (read) continue;
        return {
            .records = {},
            .line = i,
            .trouble = QStringLiteral("%1: %2.").arg(lines[i].title, text(read.error().message))};
    }
    return answer;
}

}  // namespace models
