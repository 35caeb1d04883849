/// The records of one laboratory, open for work: where they lie, and what time it is there.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <string>

#include "apps/actions/who.h"
#include "domain/base/clock.h"
#include "domain/base/result.h"
#include "storage/connection.h"
#include "storage/secrets.h"
#include "storage/workshop_store.h"

namespace actions {

/// How the laboratory calls itself on its papers.
struct Letterhead {
    std::string name{};
    std::string address;
    std::string contact;
};

class Laboratory {
public:
    /// Opens the records in `folder`. The clock outlives it.
    /// ErrorCode::Unavailable when there are none, they are damaged, or their identity key is not
    /// to be had: nothing is made.
    static domain::Result<Laboratory> openExisting(const std::filesystem::path& folder,
                                                   const domain::Clock& clock,
                                                   const storage::KeyAccess& keys = {});
    /// Opens them, and makes them if there are none: for what sets a laboratory up and nothing
    /// else. `cost`: of the hashes of secrets; light ones are for tests and the demo.
    static domain::Result<Laboratory> open(const std::filesystem::path& folder,
                                           const domain::Clock& clock,
                                           storage::HashCost cost = storage::HashCost::Usual,
                                           const storage::KeyAccess& keys = {});

    /// Whether there are records in the folder, in whatever state.
    static bool isIn(const std::filesystem::path& folder);

    const std::filesystem::path& folder() const noexcept { return folder_; }
    domain::Instant now() const { return clock_->now(); }
    domain::Date today() const { return now().day(); }
    storage::Connection& records() const noexcept { return *records_; }
    /// Where the files of identity keys lie on this machine.
    const std::filesystem::path& keyFolder() const noexcept { return keyFolder_; }
    storage::HashCost hashCost() const noexcept { return cost_; }
    /// The laboratory as it stands now, folded no further than is new; valid until the next call.
    domain::Result<const domain::Workshop*> workshop() const { return workshop_->current(); }
    storage::WorkshopStore& workshopStore() const noexcept { return *workshop_; }

    /// Takes what a person should hear besides the answer of their action, as that it was recorded
    /// before. Nobody hears it until this is set.
    using Teller = std::function<void(const std::string& sentence)>;
    void tellBy(Teller teller) const { *teller_ = std::move(teller); }
    void tell(const std::string& sentence) const {
        if (*teller_) (*teller_)(sentence);
    }

private:
    Laboratory(std::filesystem::path folder, const domain::Clock& clock,
               std::unique_ptr<storage::Connection> records, storage::HashCost cost,
               std::filesystem::path keyFolder)
        : folder_{std::move(folder)},
          keyFolder_{std::move(keyFolder)},
          clock_{&clock},
          records_{std::move(records)},
          workshop_{std::make_unique<storage::WorkshopStore>(*records_)},
          teller_{std::make_unique<Teller>()},
          cost_{cost} {}

    std::filesystem::path folder_;
    std::filesystem::path keyFolder_;
    const domain::Clock* clock_;
    std::unique_ptr<storage::Connection> records_;
    std::unique_ptr<storage::WorkshopStore> workshop_;
    std::unique_ptr<Teller> teller_;
    storage::HashCost cost_;
};

/// The letterhead as last written; empty texts before the first time.
domain::Result<Letterhead> letterhead(const Laboratory& laboratory);
/// For who may keep the workshop.
domain::Result<domain::Done> writeLetterhead(const Laboratory& laboratory,
                                             const Letterhead& letterhead, const Who& who);

}  // namespace actions
