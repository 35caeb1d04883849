#include <algorithm>
#include <nlohmann/json.hpp>

#include "apps/actions/lots.h"
#include "apps/cli/lab_option.h"
#include "apps/cli/output.h"
#include "apps/cli/stock_verbs.h"
#include "apps/cli/typed_words.h"
#include "apps/cli/who_option.h"

namespace cli {
namespace {

using actions::LotTrace;
using domain::Result;

/// What the options of the verb say about a lot that came in.
Result<domain::Certificate> certificateOf(const Call& call) {
    domain::Certificate certificate;
    const auto material = wordIn<domain::FrameworkMaterial>(call, "material");
    if (!material) return material.error();
    certificate.material = *material;
    const auto type = wordIn<domain::AlloyType>(call, "type");
    if (!type) return type.error();
    certificate.type = *type;
    const auto resin = wordIn<domain::BaseResin>(call, "resin");
    if (!resin) return resin.error();
    certificate.resin = *resin;
    const std::pair<std::string_view, std::optional<domain::Share>*> shares[] = {
        {"nickel", &certificate.nickel},
        {"beryllium", &certificate.beryllium},
        {"cadmium", &certificate.cadmium}};
    for (const auto& [option, share] : shares) {
        const auto read = amountOption<domain::PpmUnit>(call, option);
        if (!read) return read.error();
        *share = *read;
    }
    if (call.has("methacrylate-free")) certificate.methacrylateFree = true;
    return certificate;
}

Result<std::int64_t> receivedAmount(const Call& call, domain::LotKind kind) {
    const std::string text = call.option("amount").value_or("");
    constexpr std::string_view kPieces = " pcs";
    if (kind == domain::LotKind::Teeth)
        return wholeOf(
            text.ends_with(kPieces) ? text.substr(0, text.size() - kPieces.size()) : text, 1,
            "number of pieces");
    const auto mass = amountIn<domain::MilligramUnit>(text, "amount");
    if (!mass) return mass.error();
    return mass->count();
}

Result<domain::Lot> lotOf(const Call& call) {
    const auto kind = wordOf<domain::LotKind>(call.option("receive").value_or(""), "kind of lot");
    if (!kind) return kind.error();
    const auto amount = receivedAmount(call, *kind);
    if (!amount) return amount.error();
    const auto certificate = certificateOf(call);
    if (!certificate) return certificate.error();
    domain::Lot lot{.kind = *kind,
                    .maker = call.option("maker").value_or(""),
                    .product = call.option("product").value_or(""),
                    .makersNumber = call.option("number").value_or(""),
                    .udi = call.option("udi"),
                    .expiry = {},
                    .certificate = *certificate,
                    .amount = *amount};
    if (const auto text = call.option("expiry")) {
        const auto day = dayOf(*text, "day of expiry");
        if (!day) return day.error();
        lot.expiry = *day;
    }
    return lot;
}

std::string stateOf(const domain::KeptLot& kept, domain::Date today) {
    if (kept.held) return "in quarantine";
    if (kept.lot.expiry && *kept.lot.expiry < today) return "expired";
    return kept.left() <= 0 ? "used up" : "in use";
}

Json json(const domain::ThingCode& code, const domain::KeptLot& kept, domain::Date today) {
    const domain::Lot& lot = kept.lot;
    return {{"lot", code.text()},
            {"kind", std::string{codeOf(lot.kind)}},
            {"maker", lot.maker},
            {"product", lot.product},
            {"makers-number", lot.makersNumber},
            {"udi", lot.udi ? Json(*lot.udi) : Json()},
            {"expiry", lot.expiry ? Json(lot.expiry->text()) : Json()},
            {"received", amountText(lot.kind, lot.amount)},
            {"left", amountText(lot.kind, kept.left())},
            {"state", stateOf(kept, today)}};
}

Result<Exit> listLots(const Call& call, const actions::Laboratory& laboratory) {
    const auto lines = actions::lots(laboratory);
    if (!lines) return lines.error();
    const domain::Date today = laboratory.today();
    Json list = Json::array();
    std::vector<std::vector<std::string>> rows;
    for (const auto& [code, kept] : *lines) {
        list.push_back(json(code, kept, today));
        rows.push_back({code.text(), wordsOf(kept.lot.kind), kept.lot.product,
                        kept.lot.makersNumber, kept.lot.expiry ? kept.lot.expiry->text() : "-",
                        amountText(kept.lot.kind, kept.left()), stateOf(kept, today)});
    }
    if (call.has("json"))
        print("lots-1", {{"lots", std::move(list)}});
    else
        print(rows.empty()
                  ? Page{"no lots yet"}
                  : table({"lot", "kind", "product", "maker's number", "expiry", "left", "is"},
                          rows));
    return Exit::Done;
}

Json json(const LotTrace& trace, domain::Date today) {
    Json devices = Json::array();
    for (const actions::TracedDevice& device : trace.devices)
        devices.push_back(
            {{"order", device.order.text()},
             {"status", std::string{codeOf(device.status)}},
             {"description", device.description},
             {"patient", device.patient},
             {"prescriber", device.prescriber},
             {"amount", amountText(trace.kept.lot.kind, device.amount)},
             {"stage", std::string{codeOf(device.stage)}},
             {"in-device", device.isInDevice},
             {"delivered", device.delivered ? Json(device.delivered->text()) : Json()}});
    Json object = json(trace.code, trace.kept, today);
    object["devices"] = std::move(devices);
    return object;
}

Page shown(const LotTrace& trace) {
    std::vector<std::vector<std::string>> rows;
    for (const actions::TracedDevice& device : trace.devices)
        rows.push_back({device.order.text(), device.description, wordsOf(device.status),
                        device.patient, device.prescriber,
                        amountText(trace.kept.lot.kind, device.amount),
                        device.isInDevice ? "in the device" : "in an attempt done again",
                        device.delivered ? device.delivered->text() : "-"});
    return Page{"lot " + trace.code.text() + "  " + trace.kept.lot.product + ", maker's number " +
                trace.kept.lot.makersNumber}
        .add(rows.empty() ? Page{"no order used it"}
                          : table({"order", "what", "is", "patient", "prescriber", "amount",
                                   "where", "delivered"},
                                  rows));
}

Result<Exit> showLot(const Call& call, const actions::Laboratory& laboratory,
                     const actions::Who& who) {
    const auto traces = actions::traceLot(laboratory, call.arguments()[1], who);
    if (!traces) return traces.error();
    Json list = Json::array();
    Page page;
    for (const LotTrace& trace : *traces) {
        list.push_back(json(trace, laboratory.today()));
        page.add(shown(trace));
    }
    if (call.has("json"))
        print("lot-trace-1", {{"lots", std::move(list)}});
    else
        print(page);
    return Exit::Done;
}

Result<Exit> showOrder(const Call& call, const actions::Laboratory& laboratory,
                       const actions::Who& who) {
    const auto number = numberOf(call.arguments()[1]);
    if (!number) return number.error();
    const auto trace = actions::traceOrder(laboratory, *number, who);
    if (!trace) return trace.error();
    Json lotList = Json::array();
    Json deedList = Json::array();
    std::vector<std::vector<std::string>> lotRows;
    std::vector<std::vector<std::string>> deedRows;
    for (const actions::TracedLot& lot : trace->lots) {
        const std::string amount = amountText(lot.lot.kind, lot.amount);
        lotList.push_back({{"lot", lot.code.text()},
                           {"kind", std::string{codeOf(lot.lot.kind)}},
                           {"maker", lot.lot.maker},
                           {"makers-number", lot.lot.makersNumber},
                           {"udi", lot.lot.udi ? Json(*lot.lot.udi) : Json()},
                           {"amount", amount},
                           {"stage", std::string{codeOf(lot.stage)}},
                           {"in-device", lot.isInDevice}});
        lotRows.push_back({lot.code.text(), wordsOf(lot.lot.kind), lot.lot.maker,
                           lot.lot.makersNumber, amount, std::string{codeOf(lot.stage)},
                           lot.isInDevice ? "in the device" : "in an attempt done again"});
    }
    for (const actions::TracedDeed& deed : trace->deeds) {
        deedList.push_back({{"at", deed.at.text()},
                            {"person", deed.person},
                            {"station", deed.station},
                            {"says", deed.says}});
        deedRows.push_back({deed.at.text(), deed.person, deed.station, deed.says});
    }
    if (call.has("json"))
        print("order-trace-1", {{"order", number->text()},
                                {"lots", std::move(lotList)},
                                {"deeds", std::move(deedList)}});
    else
        print(Page{lotRows.empty() ? Page{"no lots yet"}
                                   : table({"lot", "kind", "maker", "maker's number", "amount",
                                            "stage", "where"},
                                           lotRows)}
                  .blank()
                  .add(table({"when", "who", "station", "what"}, deedRows)));
    return Exit::Done;
}

}  // namespace

Result<Exit> lots(const Call& call) {
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    if (call.arguments().empty()) return listLots(call, *laboratory);
    const auto code = thingOf(call.arguments()[0], "lot");
    if (!code) return code.error();
    const auto who = whoOf(call);
    if (!who) return who.error();
    Result<actions::Kept> kept =
        unusable("what of the lot? expected --receive KIND, --hold REASON or --release REASON");
    if (call.has("receive")) {
        const auto lot = lotOf(call);
        if (!lot) return lot.error();
        kept = actions::receiveLot(*laboratory, *code, *lot, *who);
    } else if (const auto reason = call.option("hold")) {
        kept = actions::holdLot(*laboratory, *code, *reason, *who);
    } else if (const auto why = call.option("release")) {
        kept = actions::releaseLot(*laboratory, *code, *why, *who);
    }
    if (!kept) return kept.error();
    const auto lines = actions::lots(*laboratory);
    if (!lines) return lines.error();
    const auto line = std::ranges::find(*lines, *code, &actions::LotLine::code);
    Json object = json(*code, line->kept, laboratory->today());
    object["repeated"] = kept->repeated;
    if (call.has("json"))
        print("lot-1", object);
    else
        print(Page{code->text() + "  " + stateOf(line->kept, laboratory->today()) + ", " +
                   amountText(line->kept.lot.kind, line->kept.left()) + " left"});
    return Exit::Done;
}

Result<Exit> trace(const Call& call) {
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    const auto who = whoOf(call);
    if (!who) return who.error();
    if (call.arguments()[0] == "lot") return showLot(call, *laboratory, *who);
    if (call.arguments()[0] == "order") return showOrder(call, *laboratory, *who);
    return unusable('"' + call.arguments()[0] + "\" cannot be traced; expected lot or order");
}

Result<Exit> recall(const Call& call) {
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    const auto who = whoOf(call);
    if (!who) return who.error();
    const auto reason = call.option("reason");
    if (!reason) return unusable("expected --reason TEXT: why the lot is called back");
    const auto recalled =
        actions::recall(*laboratory, call.arguments()[0], *reason, call.has("drill"), *who);
    if (!recalled) return recalled.error();
    Json lotList = Json::array();
    Json letters = Json::array();
    for (const LotTrace& each : recalled->traces)
        lotList.push_back(json(each, laboratory->today()));
    for (const auto& letter : recalled->letters) letters.push_back(letter.string());
    if (call.has("json")) {
        print("recall-1", {{"drill", call.has("drill")},
                           {"delivered", recalled->delivered},
                           {"undelivered", recalled->undelivered},
                           {"patients", recalled->patients},
                           {"lots", std::move(lotList)},
                           {"letters", std::move(letters)}});
        return Exit::Done;
    }
    Page page;
    for (const LotTrace& each : recalled->traces) page.add(shown(each));
    page.blank().line(std::to_string(recalled->delivered) + " delivered devices of " +
                      std::to_string(recalled->patients) + " patients, " +
                      std::to_string(recalled->undelivered) + " not delivered yet, " +
                      std::to_string(recalled->letters.size()) + " letters");
    for (const auto& letter : recalled->letters) page.line("  " + letter.string());
    print(page);
    return Exit::Done;
}

}  // namespace cli
