#include "apps/cli/order_verbs.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "apps/actions/access.h"
#include "apps/actions/checkpoints.h"
#include "apps/actions/paper_erasure.h"
#include "apps/actions/papers.h"
#include "apps/actions/verification.h"
#include "apps/cli/lab_option.h"
#include "apps/cli/order_call.h"
#include "apps/cli/output.h"
#include "apps/cli/typed_words.h"
#include "apps/cli/who_option.h"

namespace cli {
namespace {

using actions::Laboratory;
using actions::Who;
using domain::OrderNumber;
using domain::Result;

std::string dayOrDash(const std::optional<domain::Date>& day) { return day ? day->text() : "-"; }

/// "waits for dentist since ...; laboratory 2 d 3 h, dentist 4 h", and what it belongs to.
Page waits(const actions::OrderView& view) {
    const domain::Order& order = view.order;
    const domain::Instant now = machineClock().now();
    Page page{"waits for " + wordsOf(waitsFor(order)) + " since " + order.waiting.since.text() +
              "; laboratory " + spanText(laboratoryTime(order, now)) + ", dentist " +
              spanText(spentFor(order, domain::WaitsFor::Dentist, now))};
    if (order.replaces) page.line("makes " + order.replaces->text() + " again");
    if (order.replacedBy) page.line("is made again as " + order.replacedBy->text());
    for (const OrderNumber& companion : view.companions)
        page.line("travels with " + companion.text());
    return page;
}

Page shown(const actions::OrderView& view) {
    const domain::Order& order = view.order;
    const auto& identity = view.prescription.identity;
    Page page{"order " + order.number.text() + "  revision " +
              std::to_string(order.revisionNumber) + "  " + holdUp(order)};
    page.line("patient " + identity.patientReference.value_or(order.revision.parties.patient) +
              "  prescriber " +
              identity.prescriberName.value_or(order.revision.parties.prescriber) + "  needed " +
              dayOrDash(view.prescription.needed))
        .add(waits(view))
        .blank()
        .add(report(
            {view.prescription, classify(order.prescription()), {}, order.revision.findings}));
    for (const auto& [finding, words] : actions::keptIn(view))
        page.line("kept as prescribed: " + finding->rule +
                  (finding->tooth ? "@" + finding->tooth->text() : "") + ": " + words);
    std::vector<std::vector<std::string>> steps;
    for (const domain::StageStep& step : order.steps)
        steps.push_back({std::string{codeOf(step.stage)}, wordsOf(step.status),
                         step.person ? step.person->text() : "",
                         step.since ? step.since->text() : "",
                         step.attempt > 1 ? std::to_string(step.attempt) : "",
                         step.madeAt ? step.madeAt->text() : ""});
    if (!steps.empty())
        page.blank().add(table({"stage", "is", "by", "since", "attempt", "site"}, steps));
    std::vector<std::vector<std::string>> history;
    for (const actions::HistoryLine& line : view.history)
        history.push_back({line.event.at.text(), line.event.person.text(), line.says, line.words});
    return page.blank().add(table({"when", "who", "what", "words"}, history));
}

/// " 3 h": how long it has waited for whom it waits for; nothing where it waits for nobody.
std::string waited(const actions::FloorLine& line) {
    if (line.waitsFor == domain::WaitsFor::Nobody) return {};
    const std::int64_t span =
        machineClock().now().microseconds() - line.waitingSince.microseconds();
    return ' ' + spanText(std::max<std::int64_t>(span, 0));
}

/// The lines as people see them; `none`: what is said where there are none.
Page floorTable(const std::vector<actions::FloorLine>& lines, std::string_view none) {
    if (lines.empty()) return Page{none};
    std::vector<std::vector<std::string>> rows;
    for (const actions::FloorLine& line : lines)
        rows.push_back({line.number.text(), dayOrDash(line.due), line.description, line.holdUp,
                        wordsOf(line.waitsFor) + waited(line), spanText(line.laboratoryTime),
                        line.patient, line.prescriber});
    return table({"order", "needed", "what", "held by", "waits for", "in our hands", "patient",
                  "prescriber"},
                 rows);
}

/// What no program can erase.
void tellWhatIsLeft(const Laboratory& laboratory, const OrderNumber& number) {
    complain("erase by hand: papers of order " + number.text() +
             " that were printed to other places or on paper, and the backups made before");
    const auto letters = actions::lettersAbout(laboratory, number);
    if (!letters) return;
    for (const auto& letter : *letters)
        complain("erase by hand, if it names the patient: " + letter.string());
}

/// "clasp.rest@16=the rest lies on 15": about which finding, and what. Teeth are named by ISO 3950,
/// as in the other options.
struct AboutFinding {
    std::string rule;
    std::optional<domain::Tooth> tooth;
    std::string what;
};

Result<AboutFinding> aboutFinding(const std::string& text, std::string_view example) {
    const auto parts = pairIn(text, example);
    if (!parts) return parts.error();
    const auto at = parts->first.find('@');
    AboutFinding about{parts->first.substr(0, at), {}, parts->second};
    if (at == std::string::npos) return about;
    const std::string tooth = parts->first.substr(at + 1);
    about.tooth = domain::Tooth::parse(tooth);
    if (!about.tooth)
        return unusable("\"" + tooth + "\" is no tooth of ISO 3950; expected as \"" +
                        std::string{example} + '"');
    return about;
}

Result<actions::AnswerGiven> answerGiven(const Call& call) {
    actions::AnswerGiven given{.words = call.option("words")};
    if (const auto file = call.option("file")) {
        auto read = actions::readPrescription(*file);
        if (!read) return read.error();
        given.prescription = *std::move(read);
    }
    for (const std::string& text : call.options("take")) {
        const auto about = aboutFinding(text, "clasp.rest@16=1");
        if (!about) return about.error();
        const auto offer = wholeOf(about->what, 1, "number of an offer");
        if (!offer) return offer.error();
        given.takes.push_back({about->rule, about->tooth, *offer});
    }
    for (const std::string& text : call.options("keep")) {
        const auto about = aboutFinding(text, "clasp.rest@16=the rest lies on 15");
        if (!about) return about.error();
        given.keeps.push_back({about->rule, about->tooth, about->what});
    }
    return given;
}

/// Their names are about to be shown to whoever makes the call.
Result<domain::Done> noteLook(const Call& call, const actions::Laboratory& laboratory,
                              const std::vector<OrderNumber>& numbers) {
    const auto who = whoOf(call);
    if (!who) return who.error();
    return actions::noteViewed(laboratory, *who, numbers);
}

}  // namespace

Result<Exit> log(const Call& call) {
    const auto who = whoOf(call);
    if (!who) return who.error();
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    const auto outcome = actions::log(*laboratory, call.arguments().front(), *who);
    if (!outcome) return outcome.error();
    return tell(call, *outcome);
}

Result<Exit> accept(const Call& call) {
    return actOnOrder(call,
                      [&](const Laboratory& laboratory, const OrderNumber& number, const Who& who) {
                          return actions::accept(laboratory, number, call.option("reason"), who);
                      });
}

Result<Exit> flag(const Call& call) {
    const auto reason = wordOf<domain::FlagReason>(call.arguments()[1], "reason");
    if (!reason) return reason.error();
    return actOnOrder(
        call, [&](const Laboratory& laboratory, const OrderNumber& number, const Who& who) {
            return actions::flag(laboratory, number, *reason, call.option("note"), who);
        });
}

Result<Exit> answer(const Call& call) {
    const auto given = answerGiven(call);
    if (!given) return given.error();
    return actOnOrder(call,
                      [&](const Laboratory& laboratory, const OrderNumber& number, const Who& who) {
                          return actions::answer(laboratory, number, *given, who);
                      });
}

Result<Exit> order(const Call& call) {
    const auto number = numberOf(call.arguments().front());
    if (!number) return number.error();
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    const auto view = actions::order(*laboratory, *number);
    if (!view) return view.error();
    if (auto noted = noteLook(call, *laboratory, {*number}); !noted) return noted.error();
    if (call.has("json"))
        print("order-1", json(*view));
    else
        print(shown(*view));
    return Exit::Done;
}

Result<Exit> floor(const Call& call) {
    std::optional<OrderNumber> after;
    if (const auto typed = call.option("after")) {
        const auto number = numberOf(*typed);
        if (!number) return number.error();
        after = *number;
    }
    const auto words = call.option("find");
    if (words && call.has("closed"))
        return domain::Error{domain::ErrorCode::Unusable,
                             "--find looks among open and closed orders; leave --closed out"};
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    const auto lines = words                ? actions::findOrders(*laboratory, *words, after)
                       : call.has("closed") ? actions::closedPage(*laboratory, after)
                       : after              ? actions::floorPage(*laboratory, after)
                                            : actions::floor(*laboratory);
    if (!lines) return lines.error();
    std::vector<OrderNumber> seen;
    seen.reserve(lines->size());
    for (const actions::FloorLine& line : *lines) seen.push_back(line.number);
    if (auto noted = noteLook(call, *laboratory, seen); !noted) return noted.error();
    if (call.has("json")) {
        print("floor-1", json(*lines));
        return Exit::Done;
    }
    Page page = floorTable(*lines, words                ? "no order has all of these words"
                                   : call.has("closed") ? "no closed orders"
                                                        : "no open orders; log a prescription");
    const bool isPage = words || call.has("closed") || after;
    if (isPage && lines->size() == actions::kFloorPage)
        page.blank().line("there may be more: add --after " + lines->back().number.text());
    if (!isPage) {
        const auto closed = actions::closedPage(*laboratory, {}, 1);
        if (!closed) return closed.error();
        if (!closed->empty()) page.blank().line("closed orders are left out: floor --closed");
    }
    print(page);
    return Exit::Done;
}

Result<Exit> print(const Call& call) {
    const auto number = numberOf(call.arguments().front());
    if (!number) return number.error();
    const auto paper = wordOf<actions::Paper>(call.arguments()[1], "paper");
    if (!paper) return paper.error();
    const auto who = whoOf(call);
    if (!who) return who.error();
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    const auto file = actions::print(*laboratory, *number, *paper,
                                     call.option("to").value_or(std::string{}), *who);
    if (!file) return file.error();
    if (call.has("json"))
        print("paper-1", Json{{"file", file->string()}});
    else
        print(Page{file->string()});
    return Exit::Done;
}

Result<Exit> verify(const Call& call) {
    const auto laboratory = laboratoryToVerify(call);
    if (!laboratory) return laboratory.error();
    const auto verification =
        call.has("against")
            ? actions::verifyAgainst(*laboratory, *call.option("against"), call.option("key"))
            : actions::verify(*laboratory);
    if (!verification) return verification.error();
    if (call.has("json")) {
        print("verification-1", json(*verification));
    } else {
        Page page;
        if (!verification->head.empty())
            page.line(std::to_string(verification->entries) + " entries, " +
                      std::to_string(verification->orders) + " orders, head " + verification->head)
                .line(std::to_string(verification->accessEntries) +
                      " entries of the access log, head " + verification->accessHead);
        for (const std::string& problem : verification->problems) page.line(problem);
        for (const std::string& part : verification->notLookedAt)
            page.line("NOT LOOKED AT: " + part);
        const bool isAll = verification->notLookedAt.empty();
        print(page.line(!verification->problems.empty() ? "THE RECORDS WERE CHANGED"
                        : isAll                         ? "the records are whole"
                                                        : "what was looked at is whole"));
    }
    return verification->problems.empty() ? Exit::Done : Exit::Storage;
}

Result<Exit> checkpoint(const Call& call) {
    const auto who = whoOf(call);
    if (!who) return who.error();
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    const auto made =
        actions::makeCheckpoint(*laboratory, call.option("to").value_or(std::string{}), *who);
    if (!made) return made.error();
    const storage::Checkpoint& now = made->checkpoint;
    if (call.has("json"))
        print("checkpoint-1", {{"file", made->file.string()},
                               {"paper", made->paper.string()},
                               {"at", now.at.text()},
                               {"entries", now.ledger.entries},
                               {"head", now.ledger.hash},
                               {"access-entries", now.access.entries},
                               {"access-head", now.access.hash},
                               {"key", now.publicKey}});
    else
        print(Page{made->file.string()}
                  .line(made->paper.string())
                  .line("signed by key " + now.publicKey)
                  .line("keep both where nobody who can change the records can change them"));
    return Exit::Done;
}

Result<Exit> letterhead(const Call& call) {
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    auto current = actions::letterhead(*laboratory);
    if (!current) return current.error();
    actions::Letterhead head = *current;
    head.name = call.option("name").value_or(head.name);
    head.address = call.option("address").value_or(head.address);
    head.contact = call.option("contact").value_or(head.contact);
    if (call.has("name") || call.has("address") || call.has("contact")) {
        const auto who = whoOf(call);
        if (!who) return who.error();
        if (const auto written = actions::writeLetterhead(*laboratory, head, *who); !written)
            return written.error();
    }
    if (call.has("json"))
        print("letterhead-1",
              {{"name", head.name}, {"address", head.address}, {"contact", head.contact}});
    else
        print(Page{head.name}.line(head.address).line(head.contact));
    return Exit::Done;
}

Result<Exit> withdraw(const Call& call) {
    return actOnOrder(
        call, [&](const Laboratory& laboratory, const OrderNumber& number, const Who& who) {
            return actions::withdraw(laboratory, number, call.option("reason").value_or(""), who);
        });
}

Result<Exit> joinCase(const Call& call) {
    const auto leader = numberOf(call.arguments()[1]);
    if (!leader) return leader.error();
    return actOnOrder(call,
                      [&](const Laboratory& laboratory, const OrderNumber& number, const Who& who) {
                          return actions::joinCase(laboratory, number, *leader, who);
                      });
}

Result<Exit> remake(const Call& call) {
    const auto reason = wordOf<domain::RemakeReason>(call.arguments()[1], "reason");
    if (!reason) return reason.error();
    const auto fault = wordIn<domain::Stage>(call, "fault");
    if (!fault) return fault.error();
    return actOnOrder(
        call, [&](const Laboratory& laboratory, const OrderNumber& number, const Who& who) {
            return actions::remake(laboratory, number, *reason, *fault, call.option("note"), who);
        });
}

Result<Exit> purge(const Call& call) {
    return actOnOrder(
        call,
        [&](const Laboratory& laboratory, const OrderNumber& number,
            const Who& who) -> Result<actions::Outcome> {
            auto outcome = actions::purge(laboratory, number, who);
            if (outcome) tellWhatIsLeft(laboratory, number);
            return outcome;
        },
        &provenWhoOf);
}

}  // namespace cli
