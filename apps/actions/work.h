/// What a person does at the bench: starts, records, finishes, sends away, takes back, does again.
///
/// `together`: the same for every order of the case that stands at the same stage, all or none.
#pragma once

#include "apps/actions/laboratory.h"
#include "apps/actions/outcome.h"
#include "apps/actions/who.h"
#include "domain/production/decide.h"

namespace actions {

/// One order, or with it all that travel in its case.
struct Target {
    domain::OrderNumber number;
    bool together{};
};

/// Starts the stage that is due, or refuses if `stage` is another one. What goes to the practice
/// starts when it leaves, and its gate is looked at then.
domain::Result<Outcome> start(const Laboratory& laboratory, const Target& target,
                              std::optional<domain::Stage> stage, const Who& who);

/// Marks the stage in hand done; refused with the list of what its gate lacks.
domain::Result<Outcome> finish(const Laboratory& laboratory, const Target& target,
                               std::optional<domain::Stage> stage, const Who& who);

/// A scan of the ticket at a station: starts the stage that is due, or marks it done. A second scan
/// by the same person within ten seconds is the same scan and answers with what was recorded.
domain::Result<Outcome> scan(const Laboratory& laboratory, const domain::OrderNumber& number,
                             const Who& who);

/// A record as a person gives it: what responsibility they take is still in plain words.
struct GivenRecord {
    domain::StageRecord record;
    std::optional<std::string> responsibility{};  ///< for equipment that is overdue
    /// Whether the amount of a lot was given in pieces; nullopt: in whatever the lot is counted.
    std::optional<bool> inPieces{};
};

/// Keeps what was done, measured or used at the stage in hand. The kinds of lots and equipment are
/// looked up.
domain::Result<Outcome> record(const Laboratory& laboratory, const domain::OrderNumber& number,
                               std::optional<domain::Stage> stage,
                               const std::vector<GivenRecord>& records, const Who& who);

/// What the dentist decided after a try-in.
struct Return {
    domain::ReturnVerdict verdict{};
    std::optional<domain::Stage> backTo{};
    std::optional<std::string> findings{};
    domain::Disinfection disinfection{};
};
domain::Result<Outcome> takeReturn(const Laboratory& laboratory, const Target& target,
                                   const Return& returned, const Who& who);

/// Begins again at an earlier stage; what was recorded before stays on record.
domain::Result<Outcome> redo(const Laboratory& laboratory, const domain::OrderNumber& number,
                             domain::RedoReason reason, domain::Stage from,
                             std::optional<domain::Stage> fault,
                             const std::optional<std::string>& note, const Who& who);

/// Sends the stage that is due to another site, and takes it back with the result of its
/// inspection.
domain::Result<Outcome> sendWork(const Laboratory& laboratory, const domain::OrderNumber& number,
                                 const domain::ThingCode& site, const Who& who);
domain::Result<Outcome> takeWorkBack(const Laboratory& laboratory,
                                     const domain::OrderNumber& number, bool passed,
                                     const std::optional<std::string>& note, const Who& who);

/// What the gate of the stage due lacks, if this person were to pass it; empty when it is open.
domain::Result<std::vector<domain::Finding>> gate(const Laboratory& laboratory,
                                                  const domain::OrderNumber& number,
                                                  const domain::PersonCode& person);

}  // namespace actions
