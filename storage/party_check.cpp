#include "storage/counted_code.h"
#include "storage/files/prescription_file.h"
#include "storage/ids.h"
#include "storage/kept_check.h"
#include "storage/party_store.h"
#include "storage/sealed_texts.h"
#include "storage/statement.h"

namespace storage {
namespace {

using domain::Event;
using domain::Parties;

/// One sort of party: where it lies, and how its orders name it.
struct Sort {
    std::string_view word;
    CodeShape shape{};
    std::string_view id;
    std::string_view ofId;
    std::string_view all;
    std::string_view ofOrders;  ///< an order that still has their names
    std::string Parties::* code;
    domain::Result<std::optional<std::string>> (PartyStore::*match)(const std::string&,
                                                                    const domain::Identity&) const;
};
const Sort kPatients{.word = "patient",
                     .shape = kPatientCode,
                     .id = "patient_id",
                     .ofId = "patient_of_id",
                     .all = "patient_every",
                     .ofOrders = "order_register_of_patient",
                     .code = &Parties::patient,
                     .match = &PartyStore::matchOfPatient};
const Sort kPrescribers{.word = "prescriber",
                        .shape = kPrescriberCode,
                        .id = "prescriber_id",
                        .ofId = "prescriber_of_id",
                        .all = "prescriber_every",
                        .ofOrders = "order_register_of_prescriber",
                        .code = &Parties::prescriber,
                        .match = &PartyStore::matchOfPrescriber};

/// Follows one sort through the ledger: whom orders name, and whose match the names of an order
/// have proved.
class PartyTable {
public:
    PartyTable(Connection& connection, const Sort& sort) : connection_{connection}, sort_{sort} {}

    /// What is wrong with the row of who is named, if anything.
    std::optional<std::string> named(const Parties& parties) {
        const std::string& code = parties.*(sort_.code);
        const auto id = countOf(sort_.shape, code);
        if (!id) return told(code, "has no such code");
        if (proved_.contains(*id)) return {};
        Statement row{connection_, sort_.ofId};
        if (!row.bind(sort_.id, *id).run().next()) return told(code, "is missing");
        named_.add(*id);
        if (&sort_ == &kPatients &&
            countedCode(kPrescriberCode, row.whole("prescriber_id")) != parties.prescriber) {
            proved_.add(*id);
            return told(code, "is of another prescriber than their orders");
        }
        return matched(*id, code, row.value("matched_by"), parties);
    }

    std::vector<std::string> atEnd() {
        std::vector<std::string> problems;
        const auto canProve = static_cast<bool>(connection_.identity());
        Statement rows{connection_, sort_.all};
        rows.run();
        while (rows.next()) {
            const std::int64_t id = rows.whole(sort_.id);
            const std::string code = countedCode(sort_.shape, id);
            if (!named_.contains(id))
                problems.push_back(told(code, "is in no order"));
            else if (canProve && !proved_.contains(id) && rows.value("matched_by") != Value{})
                problems.push_back(told(code, "is matched by what no order says any more"));
        }
        return problems;
    }

private:
    std::string told(const std::string& code, std::string_view what) const {
        return std::string{sort_.word} + ' ' + code + ' ' + std::string{what};
    }

    std::optional<std::string> matched(std::int64_t id, const std::string& code,
                                       const Value& content, const Parties& parties) {
        const auto text = SealedTexts{connection_}.open(parties.identity);
        // One that was erased proves nothing; one that was altered is found by itself.
        if (!text || !*text) return {};
        const auto full = readPrescription(**text, "sealed text");
        if (!full) return {};
        const auto match =
            (PartyStore{connection_}.*(sort_.match))(parties.prescriber, full->identity);
        if (!match) return {};
        const Value expected = orNull(*match);
        // Forgotten with the last order that named them, as orders stand.
        if (content == Value{} && expected != Value{} && !isNamedNow(code)) return {};
        proved_.add(id);
        if (content == expected) return {};
        return told(code, "is not matched by what their orders say");
    }
    bool isNamedNow(const std::string& code) const {
        Statement row{connection_, sort_.ofOrders};
        return row.bind({{"code", code}, {"order_number", std::string{}}}).run().next();
    }

    Connection& connection_;
    const Sort& sort_;
    Ids named_;
    Ids proved_;
};

class PartiesCheck : public KeptCheck {
public:
    explicit PartiesCheck(Connection& connection)
        : patients_{connection, kPatients}, prescribers_{connection, kPrescribers} {}

    void entry(const LedgerEvent& event) override {
        const auto* own = std::get_if<Event>(&event);
        if (own == nullptr) return;
        if (const auto* received = std::get_if<domain::Received>(&own->what))
            named(received->revision.parties);
        if (const auto* answered = std::get_if<domain::Answered>(&own->what))
            if (answered->revision) named(answered->revision->parties);
    }

private:
    void named(const Parties& parties) {
        for (PartyTable* table : {&patients_, &prescribers_})
            if (auto problem = table->named(parties)) found(*std::move(problem));
    }
    void compare() override {
        for (PartyTable* table : {&patients_, &prescribers_})
            for (std::string& problem : table->atEnd()) found(std::move(problem));
    }

    PartyTable patients_;
    PartyTable prescribers_;
};

}  // namespace

std::unique_ptr<KeptCheck> partiesCheck(Connection& connection) {
    return std::make_unique<PartiesCheck>(connection);
}

}  // namespace storage
