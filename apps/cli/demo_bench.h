/// The invented laboratory of the demo at work: its calendar, its people, what it keeps, and how a
/// stage is worked with all its gate asks for.
#pragma once

#include <filesystem>

#include "apps/actions/orders.h"
#include "apps/actions/work.h"

namespace cli {

/// The demo has a calendar of its own and so prints the same papers every time.
class DemoClock : public domain::Clock {
public:
    domain::Instant now() const override { return now_; }
    void passMinutes(std::int64_t count);
    void passDays(std::int64_t count) { passMinutes(count * kMinutesPerDay); }

private:
    static constexpr std::int64_t kMinutesPerDay = 1440;
    static constexpr std::int64_t kMicrosecondsPerMinute = 60'000'000;
    static constexpr std::int64_t kFirstMinute = 485;  // 08:05 UTC

    domain::Instant now_ = domain::Instant::ofMicroseconds(
        (domain::Date::parse("2026-11-25")->days() * kMinutesPerDay + kFirstMinute) *
        kMicrosecondsPerMinute);
};

inline constexpr std::string_view kManager = "manager-1";
inline constexpr std::string_view kTechnician = "technician-1";
inline constexpr std::string_view kInspector = "inspector-1";
/// Everybody of the demo works with this password, which is printed at its end.
inline constexpr const char* kDemoPassword = "westhaven by the sea";

class DemoBench {
public:
    DemoBench(const actions::Laboratory& laboratory, DemoClock& clock)
        : laboratory_{laboratory}, clock_{clock} {}

    /// Letterhead, people, stations, equipment, sites and lots; two lots are not fit for use.
    domain::Result<domain::Done> open();
    /// Signed in anew, a few minutes later, the password at hand where it is asked once more; who
    /// cannot is refused by the action, which says so.
    actions::Who who(std::string_view code);

    /// Starts what is due, records all its gate asks for, and marks it done; a try-in is sent.
    domain::Result<domain::Order> workStage(const domain::OrderNumber& number);
    /// Likewise up to the end of a stage; try-ins on the way come back with "go on".
    domain::Result<domain::Order> workUpTo(const domain::OrderNumber& number, domain::Stage last);
    /// What opens the gate of the stage that is due.
    domain::Result<domain::Done> recordAll(const domain::OrderNumber& number);
    domain::Result<domain::Order> comeBack(const domain::OrderNumber& number,
                                           const actions::Return& returned);

    const actions::Laboratory& laboratory() const noexcept { return laboratory_; }

private:
    domain::Result<domain::Done> enterPeople();
    domain::Result<domain::Done> enterThings();
    domain::Result<domain::Done> receiveLots();
    domain::Result<std::vector<actions::GivenRecord>> recordsFor(const domain::Order& order,
                                                                 domain::Stage stage) const;

    const actions::Laboratory& laboratory_;
    DemoClock& clock_;
};

}  // namespace cli
