/// Lots of material: received, held, released, and found again in whose mouth they are.
#pragma once

#include <filesystem>

#include "apps/actions/laboratory.h"
#include "apps/actions/outcome.h"
#include "apps/actions/who.h"
#include "domain/production/order.h"
#include "domain/workshop/workshop.h"

namespace actions {

struct LotLine {
    domain::ThingCode code;
    domain::KeptLot kept{};
};
/// All lots, by code.
domain::Result<std::vector<LotLine>> lots(const Laboratory& laboratory);

domain::Result<Kept> receiveLot(const Laboratory& laboratory, const domain::ThingCode& code,
                                const domain::Lot& lot, const Who& who);
/// Into quarantine, with the reason, which is kept outside the ledger.
domain::Result<Kept> holdLot(const Laboratory& laboratory, const domain::ThingCode& code,
                             const std::string& reason, const Who& who);
domain::Result<Kept> releaseLot(const Laboratory& laboratory, const domain::ThingCode& code,
                                const std::string& reason, const Who& who);

/// A device that took of a lot.
struct TracedDevice {
    domain::OrderNumber order;
    domain::OrderStatus status{};
    std::string description{};  ///< "upper, III mod 1, Co-Cr"
    std::string patient{};      ///< reference or code
    std::string prescriberCode{};
    std::string prescriber{};
    std::int64_t amount{};
    domain::Stage stage{};
    bool isInDevice{};  ///< false: the attempt it went into was done again
    std::optional<domain::Date> delivered{};
};

struct LotTrace {
    domain::ThingCode code;
    domain::KeptLot kept{};
    std::vector<TracedDevice> devices{};
};
/// By the laboratory's code of a lot, or the maker's number, which several lots may share.
/// ErrorCode::Unusable when there is none.
domain::Result<std::vector<LotTrace>> traceLot(const Laboratory& laboratory, const std::string& lot,
                                               const Who& who);

/// A lot as one order used it.
struct TracedLot {
    domain::ThingCode code;
    domain::Lot lot{};
    std::int64_t amount{};
    domain::Stage stage{};
    bool isInDevice{};
};
/// Who did what to an order, where and when.
struct TracedDeed {
    domain::Instant at{};
    std::string person{};
    std::string station{};
    std::string says{};
};
struct OrderTrace {
    domain::OrderNumber order;
    std::vector<TracedLot> lots{};
    std::vector<TracedDeed> deeds{};
};
domain::Result<OrderTrace> traceOrder(const Laboratory& laboratory,
                                      const domain::OrderNumber& number, const Who& who);

struct Recalled {
    std::vector<LotTrace> traces{};
    std::int64_t delivered{};    ///< devices with patients that hold the lot
    std::int64_t undelivered{};  ///< devices that hold it and have not left for good
    std::int64_t patients{};     ///< of the delivered ones
    std::vector<std::filesystem::path> letters{};  ///< one for each prescriber
};
/// Holds the lot unless it is held, finds every device that holds it, and writes a letter to each
/// prescriber who got one. A drill does everything but hold the lot.
domain::Result<Recalled> recall(const Laboratory& laboratory, const std::string& lot,
                                const std::string& reason, bool drill, const Who& who);

}  // namespace actions
