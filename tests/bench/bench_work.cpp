#include "tests/bench/bench_work.h"

#include "tests/bench/bench_laboratory.h"
#include "tests/support/floor.h"

namespace bench {

domain::Result<actions::Outcome> recordAll(const actions::Laboratory& laboratory,
                                           const domain::Order& order, const actions::Who& who) {
    std::vector<actions::GivenRecord> given;
    for (domain::StageRecord& record : support::everythingFor(order, currentStep(order)->stage)) {
        if (auto* use = std::get_if<domain::LotUsed>(&record))
            use->lot = lotCode(use->kind, kLotsOfAKind - 1);
        given.push_back({std::move(record), {}});
    }
    return actions::record(laboratory, order.number, {}, given, who);
}

domain::Result<domain::Done> Turns::next(const actions::Laboratory& laboratory,
                                         const actions::Who& who) {
    constexpr int kPhases = 3;
    const auto outcome = phase_ == 0 ? actions::start(laboratory, {number_}, {}, who)
                         : phase_ == 1
                             ? recordAll(laboratory, *order_, who)
                             : actions::redo(laboratory, number_, domain::RedoReason::PoorFit,
                                             currentStep(*order_)->stage, {}, {}, who);
    if (!outcome) return outcome.error();
    order_ = outcome->order;
    phase_ = (phase_ + 1) % kPhases;
    return domain::Done{};
}

}  // namespace bench
