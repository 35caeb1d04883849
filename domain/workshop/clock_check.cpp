#include "domain/workshop/clock_check.h"

namespace domain {
namespace {

constexpr std::int64_t kMicrosecondsPerDay = 86'400'000'000;

}  // namespace

std::optional<ClockFault> clockFault(Instant newest, Instant now, std::int64_t longestPause) {
    const std::int64_t since = now.microseconds() - newest.microseconds();
    if (since < -kToleratedStepBack) return ClockFault::Behind;
    if (since > longestPause * kMicrosecondsPerDay) return ClockFault::Ahead;
    return {};
}

std::string spoken(const ClockDoubt& doubt) {
    return "the clock of the machine said " + doubt.at.text() + " when the newest entry was of " +
           doubt.before.text() + ": " +
           (doubt.fault == ClockFault::Behind ? "it is, or was, wrong"
                                              : "it was put ahead, or nobody worked here for long");
}

}  // namespace domain
