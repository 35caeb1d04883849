/// A laboratory in which an order can be made: people, equipment, lots, a letterhead; and a way to
/// bring an order to any stage with everything its gates ask for. Every name in it is invented.
#pragma once

#include <map>
#include <string>
#include <string_view>

#include "apps/actions/statements.h"
#include "apps/actions/work.h"
#include "tests/support/floor.h"

namespace support {

/// The people: MK manages; JT and AB are technicians, IN inspects. All have learnt everything.
inline constexpr std::string_view kManager = "MK";
inline constexpr std::string_view kMaker = "JT";
inline constexpr std::string_view kOther = "AB";
inline constexpr std::string_view kInspector = "IN";

inline constexpr const char* kLaboratoryName = "Westhaven Prosthetic Workshop";
inline constexpr const char* kLaboratoryAddress = "1 Tide Street, Westhaven";

/// Whoever calls must open the laboratory with storage::HashCost::Light.
class Floor {
public:
    /// Enters what is not there yet. A failure fails the test.
    explicit Floor(const actions::Laboratory& laboratory);

    /// A person signed in; where the clock was moved by minutes since, signed in anew.
    actions::Who as(std::string_view code);
    /// The same with a key, or with the version of an order they saw.
    actions::Who keyed(std::string_view code, std::string key);
    actions::Who seeing(std::string_view code, std::int64_t version);

    domain::OrderNumber logged(const domain::Prescription& prescription);
    /// Logged and accepted, cautions taken.
    domain::OrderNumber accepted(const domain::Prescription& prescription);

    domain::Order order(const domain::OrderNumber& number) const;
    /// The stage due or in hand.
    domain::Stage due(const domain::OrderNumber& number) const;

    /// Everything the gate of the stage due asks for, the statement apart.
    std::vector<actions::GivenRecord> records(const domain::OrderNumber& number) const;
    /// Starts the stage due, where it is not in hand.
    void begin(const domain::OrderNumber& number);
    /// The stage due from where it is to done, with everything; what goes to the practice comes
    /// back to go on.
    void pass(const domain::OrderNumber& number);
    /// Until a stage is due, not started.
    void bringTo(const domain::OrderNumber& number, domain::Stage stage);
    /// Until it is in hand, with everything recorded.
    void readyAt(const domain::OrderNumber& number, domain::Stage stage);
    void deliver(const domain::OrderNumber& number);

    /// Who works a stage here: the inspector inspects and delivers, the maker does the rest.
    static std::string_view workerOf(domain::Stage stage);

private:
    const actions::Laboratory& laboratory_;
    std::map<std::string, std::pair<actions::Who, domain::Instant>, std::less<>> people_{};
    std::int64_t logged_{0};
};

/// What a statement needs to be issued.
actions::Declared everythingDeclared();

/// A lot of the kind with all its maker certifies, enough for hundreds of orders.
domain::Lot lotOf(domain::LotKind kind, std::string makersNumber);
/// The code of the lot of each kind a floor has: "lot-alloy".
domain::ThingCode lotCode(domain::LotKind kind);
/// Likewise "the-caster".
domain::ThingCode equipmentCode(domain::EquipmentKind kind);

}  // namespace support
