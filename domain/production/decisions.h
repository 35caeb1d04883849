/// The answer to each command, for decide() alone: intake_decisions.cpp about the order,
/// work_decisions.cpp about the work on it.
#pragma once

#include "domain/production/decide.h"

namespace domain {

struct Deciding {
    const Order& order;
    const Occasion& occasion;
};

using Decision = Result<std::vector<Happening>>;

Error refused(const Order& order, std::string why);
/// Why no work may go on, or nothing.
std::optional<Error> standstill(const Order& order);
/// "survey.present, clasp.undercut-given (44)": what blocks the order.
std::string blockers(const Revision& revision);

Decision decideOn(const Deciding& deciding, const Receive& command);
Decision decideOn(const Deciding& deciding, const Accept& command);
Decision decideOn(const Deciding& deciding, const Flag& command);
Decision decideOn(const Deciding& deciding, const Answer& command);
Decision decideOn(const Deciding& deciding, const JoinCase& command);
Decision decideOn(const Deciding& deciding, const Withdraw& command);
Decision decideOn(const Deciding& deciding, const OrderRemake& command);
Decision decideOn(const Deciding& deciding, const Purge& command);

Decision decideOn(const Deciding& deciding, const Start& command);
Decision decideOn(const Deciding& deciding, const Finish& command);
Decision decideOn(const Deciding& deciding, const Record& command);
Decision decideOn(const Deciding& deciding, const TakeReturn& command);
Decision decideOn(const Deciding& deciding, const Redo& command);
Decision decideOn(const Deciding& deciding, const SendWork& command);
Decision decideOn(const Deciding& deciding, const TakeWorkBack& command);

}  // namespace domain
