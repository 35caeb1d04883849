/// Comparing tables that stand beside the ledger with what it and the access log say about them.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "storage/access_log.h"
#include "storage/ledger_pass.h"

namespace storage {

/// Is told the entries of the access log as well, before those of the ledger.
class KeptCheck : public TableCheck {
public:
    virtual void access(const domain::AccessEntry& /*entry*/) {}
    /// What cannot be read as what it should be was altered too.
    void end() final {
        try {
            compare();
        } catch (const SqlFailure& failure) {
            found(failure.error().message);
        }
    }

private:
    virtual void compare() = 0;
};

/// Settings and shade guides against the events that set and entered them.
std::unique_ptr<KeptCheck> settingsCheck(Connection& connection);
std::unique_ptr<KeptCheck> guidesCheck(Connection& connection);
/// Passwords, badges and PINs against the events that gave them, failures and locks against the
/// access log.
std::unique_ptr<KeptCheck> credentialsCheck(Connection& connection);
/// Sessions against the access log.
std::unique_ptr<KeptCheck> sessionsCheck(Connection& connection);
/// The codes of patients and prescribers against the orders that name them, and what they are
/// matched by against the names of these orders, as far as they were not erased.
std::unique_ptr<KeptCheck> partiesCheck(Connection& connection);
/// Papers in the folder of the laboratory's papers: those whose printing was noted are one of the
/// prints that were.
std::unique_ptr<KeptCheck> papersCheck(Connection& connection);

/// All of them.
std::vector<std::unique_ptr<KeptCheck>> keptChecks(Connection& connection);

}  // namespace storage
