#include "apps/actions/order_view.h"

#include "apps/actions/legal_lack.h"
#include "domain/production/evolve.h"
#include "storage/ledger.h"
#include "storage/order_register.h"
#include "storage/sealed_texts.h"

namespace actions {
namespace {

using domain::Error;
using domain::ErrorCode;
using domain::Event;
using domain::Order;
using domain::Result;
using domain::SealedText;

constexpr std::size_t kShortDigest = 12;

std::string worded(const domain::Revision& revision) {
    const auto count = revision.findings.size();
    const auto kept = std::ranges::count_if(
        revision.findings, [](const domain::Finding& finding) { return finding.kept.has_value(); });
    if (count == 0) return "clean";
    return domain::counted(count, "finding") +
           (kept == 0 ? "" : ", " + std::to_string(kept) + " kept as prescribed");
}

/// What happened, in a few words, and the sealed words that belong to it.
struct Telling {
    std::string says;
    std::optional<SealedText> words;

    explicit Telling(const Event& event) {
        std::visit([this](const auto& happened) { tell(happened); }, event.what);
    }

private:
    void tell(const domain::Received& happened) { says = "received, " + worded(happened.revision); }
    void tell(const domain::Accepted& happened) {
        says = "accepted, " + wordsOf(happened.route);
        for (const std::string& rule : happened.cautions) says += ", caution " + rule;
        words = happened.reason;
    }
    void tell(const domain::Routed& happened) {
        says = "route version " + std::to_string(happened.plan.version) + ", " +
               std::to_string(happened.plan.stages.size()) + " stages";
    }
    void tell(const domain::StageStarted& happened) { says = wordsOf(happened.stage) + " started"; }
    void tell(const domain::StageDone& happened) { says = wordsOf(happened.stage) + " done"; }
    void tell(const domain::Flagged& happened) {
        says = "flagged: " + wordsOf(happened.reason);
        words = happened.note;
    }
    void tell(const domain::Answered& happened) {
        says = happened.revision ? "answered, new revision, " + worded(*happened.revision)
                                 : "answered";
        words = happened.words;
    }
    void tell(const domain::Recorded& happened) {
        says = wordsOf(happened.stage);
        const char* before = ": ";
        for (const domain::StageRecord& record : happened.records) {
            says += before + domain::tellRecord(record, domain::Notation::Iso3950);
            before = "; ";
            if (const auto* used = std::get_if<domain::EquipmentUsed>(&record))
                if (used->responsibility) words = used->responsibility;
        }
    }
    void tell(const domain::Returned& happened) {
        says = wordsOf(happened.stage) + " returned: " + wordsOf(happened.verdict);
        if (happened.backTo) says += " to " + wordsOf(*happened.backTo);
        words = happened.findings;
    }
    void tell(const domain::Redone& happened) {
        says = "again from " + wordsOf(happened.from) + ": " + wordsOf(happened.reason) +
               ", fault at " + wordsOf(happened.fault);
        words = happened.note;
    }
    void tell(const domain::RemakeOrdered& happened) {
        says = "made again as " + happened.replacement.text() + ": " + wordsOf(happened.reason);
        if (happened.fault) says += ", fault at " + wordsOf(*happened.fault);
        words = happened.note;
    }
    void tell(const domain::RemakeBegun& happened) {
        says = "makes " + happened.first.text() + " again";
    }
    void tell(const domain::CaseJoined& happened) {
        says = "travels with the case of " + happened.leader.text();
    }
    void tell(const domain::WorkSent& happened) {
        says = wordsOf(happened.stage) + " sent to site " + happened.site.text();
    }
    void tell(const domain::WorkBack& happened) {
        says = wordsOf(happened.stage) + (happened.passed ? " back, passed" : " back, NOT passed");
        words = happened.note;
    }
    void tell(const domain::Withdrawn& happened) {
        says = "withdrawn";
        words = happened.reason;
    }
    void tell(const domain::Purged&) { says = "names and words erased"; }
};

/// Opens sealed words; an erased text says so instead.
Result<std::string> opened(const storage::SealedTexts& texts,
                           const std::optional<SealedText>& sealed) {
    if (!sealed) return std::string{};
    const auto text = texts.open(*sealed);
    if (!text) return text.error();
    return text->value_or("(erased)");
}

Result<std::vector<domain::OrderNumber>> companionsOf(const Laboratory& laboratory,
                                                      const Order& order) {
    std::vector<domain::OrderNumber> companions;
    const auto rows = storage::OrderRegister{laboratory.records()}.ofCase(
        order.caseLeader.value_or(order.number));
    if (!rows) return rows.error();
    for (const storage::RegisterRow& row : *rows)
        if (row.number != order.number) companions.push_back(row.number);
    return companions;
}

}  // namespace

std::vector<KeptView> keptIn(const OrderView& view) {
    std::vector<KeptView> kept;
    auto words = view.keptWords.begin();
    for (const domain::Finding& finding : view.order.revision.findings)
        if (finding.kept) kept.push_back({&finding, *words++});
    return kept;
}

Result<OrderView> order(const Laboratory& laboratory, const domain::OrderNumber& number) {
    const storage::Ledger ledger{laboratory.records()};
    const storage::SealedTexts texts{laboratory.records()};
    const auto events = ledger.eventsOf(number);
    if (!events) return events.error();
    if (events->empty()) return Error{ErrorCode::Unusable, "no such order: " + number.text()};
    std::optional<Order> state;
    std::vector<HistoryLine> history;
    for (const Event& event : *events) {
        state = evolve(std::move(state), event);
        const Telling telling{event};
        auto words = opened(texts, telling.words);
        if (!words) return words.error();
        history.push_back({event, telling.says, *std::move(words)});
    }
    auto prescription = inFull(laboratory, state->revision);
    if (!prescription) return prescription.error();
    auto hash = ledger.newestHash(number);
    if (!hash) return hash.error();
    OrderView view{.order = *std::move(state),
                   .prescription = *std::move(prescription),
                   .history = std::move(history),
                   .digest = hash->substr(0, kShortDigest)};
    auto companions = companionsOf(laboratory, view.order);
    if (!companions) return companions.error();
    view.companions = *std::move(companions);
    for (const domain::OpenFlag& flag : view.order.flags) {
        auto note = opened(texts, flag.note);
        if (!note) return note.error();
        view.flagNotes.push_back(*std::move(note));
    }
    for (const SealedText& reason : view.order.cautionReasons) {
        auto words = opened(texts, reason);
        if (!words) return words.error();
        view.cautionReasons.push_back(*std::move(words));
    }
    for (const domain::Finding& finding : view.order.revision.findings) {
        if (!finding.kept) continue;
        auto words = opened(texts, finding.kept->words);
        if (!words) return words.error();
        view.keptWords.push_back(*std::move(words));
    }
    return view;
}

}  // namespace actions
