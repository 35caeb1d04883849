/// The codes that stand for patients and prescribers in the ledger, and what they are matched by: a
/// digest under the identity key, which names nobody.
///
/// Texts match when they are equal but for spacing: two people under one code is worse than one
/// person under two.
#pragma once

#include <optional>
#include <string>

#include "domain/prescription/prescription.h"
#include "storage/identity_cipher.h"
#include "storage/transaction.h"

namespace storage {

class PartyStore {
public:
    explicit PartyStore(Connection& connection) : connection_{connection} {}

    /// "D00001": the same for the same registration or, without one, for the same name and
    /// address; a new one where neither is given.
    domain::Result<std::string> prescriberCode(Transaction& transaction,
                                               const domain::Identity& identity) const;
    /// "P00001": the same for the same reference or, without one, the same name, under the same
    /// prescriber; a new one where neither is given.
    domain::Result<std::string> patientCode(Transaction& transaction,
                                            const std::string& prescriberCode,
                                            const domain::Identity& identity) const;

    /// Erases what a patient is matched by: nobody is recognised as them any more.
    domain::Result<domain::Done> forgetPatient(Transaction& transaction,
                                               const std::string& patientCode) const;
    /// Likewise of a prescriber.
    domain::Result<domain::Done> forgetPrescriber(Transaction& transaction,
                                                  const std::string& prescriberCode) const;

    /// What a prescriber of this identity is matched by; nullopt: by nothing. `prescriber`: the
    /// code, which only matters for patients. ErrorCode::Unavailable without the identity key.
    domain::Result<std::optional<std::string>> matchOfPrescriber(
        const std::string& prescriber, const domain::Identity& identity) const;
    /// Likewise a patient of a prescriber.
    domain::Result<std::optional<std::string>> matchOfPatient(
        const std::string& prescriber, const domain::Identity& identity) const;

private:
    Connection& connection_;
};

/// Replaces the names in records that had no key before by digests.
domain::Result<domain::Done> encryptParties(Transaction& work, const IdentityCipher& cipher);

}  // namespace storage
