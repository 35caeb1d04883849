/// What a person does with an order: one function each. Read, decide, append, commit.
///
/// Every function takes who does it and an idempotency key: the same key never takes effect twice,
/// and the second call answers with what the first one recorded.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "apps/actions/examination.h"
#include "apps/actions/laboratory.h"
#include "apps/actions/outcome.h"
#include "apps/actions/who.h"
#include "domain/production/order.h"

namespace actions {

/// Logs a prescription file as a new order, with its findings, whatever they are. Without a key of
/// its own the same file is logged once only.
domain::Result<Outcome> log(const Laboratory& laboratory, const std::filesystem::path& file,
                            const Who& who);
/// Logs a prescription filled in by hand.
domain::Result<Outcome> log(const Laboratory& laboratory, const domain::Prescription& prescription,
                            const Who& who);

/// Accepts an order for production; cautions need a reason, which is kept and printed.
domain::Result<Outcome> accept(const Laboratory& laboratory, const domain::OrderNumber& number,
                               const std::optional<std::string>& reason, const Who& who);

/// Stops the order with a question to the dentist.
domain::Result<Outcome> flag(const Laboratory& laboratory, const domain::OrderNumber& number,
                             domain::FlagReason reason, const std::optional<std::string>& note,
                             const Who& who);

/// A finding the prescriber keeps as prescribed, with the signed words that say why.
struct KeepGiven {
    std::string rule{};
    std::optional<domain::Tooth> tooth{};  ///< nullopt: wherever the rule found something
    std::string words{};
};

/// A change that was offered for a finding and ticked by the prescriber.
struct TakeGiven {
    std::string rule{};
    std::optional<domain::Tooth> tooth{};  ///< nullopt: where the finding is about none
    std::int64_t offer{1};                 ///< counted from 1, as on the question sheet
};

/// The dentist's answer: words, a completed prescription, which of the changes offered were taken,
/// what is kept as prescribed. Without a prescription the latter are about the one there is.
struct AnswerGiven {
    std::optional<std::string> words{};
    std::optional<domain::Prescription> prescription{};
    std::vector<TakeGiven> takes{};
    std::vector<KeepGiven> keeps{};
};

/// Records the dentist's answer. A prescription, and whatever is kept, makes the next revision.
domain::Result<Outcome> answer(const Laboratory& laboratory, const domain::OrderNumber& number,
                               const AnswerGiven& given, const Who& who);

/// The dentist wants it no more.
domain::Result<Outcome> withdraw(const Laboratory& laboratory, const domain::OrderNumber& number,
                                 const std::string& reason, const Who& who);

/// Makes an order travel with another one of the same patient, which leads their case.
domain::Result<Outcome> joinCase(const Laboratory& laboratory, const domain::OrderNumber& number,
                                 const domain::OrderNumber& leader, const Who& who);

/// Makes an order again: the answer is the new one, logged with the same prescription and the
/// reason; the first one stays as it was and names it.
domain::Result<Outcome> remake(const Laboratory& laboratory, const domain::OrderNumber& number,
                               domain::RemakeReason reason,
                               const std::optional<domain::Stage>& fault,
                               const std::optional<std::string>& note, const Who& who);

/// Erases the names and words of an order that is over, once the longest term of retention that
/// applies has run out; the ledger still verifies.
domain::Result<Outcome> purge(const Laboratory& laboratory, const domain::OrderNumber& number,
                              const Who& who);

}  // namespace actions
