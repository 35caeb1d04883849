#include "storage/party_store.h"

#include <QString>

#include "storage/counted_code.h"
#include "storage/statement.h"

namespace storage {
namespace {

/// One spelling for what differs only in spacing or in how accents are composed.
std::string evened(const std::string& text) {
    return QString::fromStdString(text)
        .normalized(QString::NormalizationForm_C)
        .simplified()
        .toStdString();
}

std::optional<std::string> prescriberKey(const domain::Identity& identity) {
    if (identity.prescriberRegistration)
        return "registration " + evened(*identity.prescriberRegistration);
    if (!identity.prescriberName) return {};
    return "name " + evened(*identity.prescriberName) + ", address " +
           evened(identity.prescriberAddress.value_or(std::string{}));
}

std::optional<std::string> patientKey(const domain::Identity& identity) {
    if (identity.patientReference) return "reference " + evened(*identity.patientReference);
    if (identity.patientName) return "name " + evened(*identity.patientName);
    return {};
}

constexpr std::string_view kPrescribers = "prescriber";
/// Digests of patients are kept apart by prescriber: those of two cannot be compared.
std::string patientsOf(std::int64_t prescriber) {
    return "patient of " + std::to_string(prescriber);
}

/// What a party is matched by as it is kept: a keyed digest.
std::optional<std::string> hidden(const IdentityCipher& cipher, std::string_view purpose,
                                  const std::optional<std::string>& key) {
    if (!key) return {};
    return cipher.digest(purpose, *key);
}

/// Runs a statement about the row a code counts.
domain::Result<domain::Done> forget(Transaction& transaction, CodeShape shape,
                                    const std::string& code, std::string_view query,
                                    std::string_view column) try {
    const auto id = countOf(shape, code);
    if (!id)
        return domain::Error{domain::ErrorCode::Unusable,
                             '"' + code + "\" is the code of nobody known here"};
    Statement{transaction.connection(), query}.bind(column, *id).run();
    return domain::Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace

domain::Result<std::string> PartyStore::prescriberCode(Transaction& transaction,
                                                       const domain::Identity& identity) const try {
    const auto cipher = connection_.identity();
    if (!cipher) return cipher.error();
    const Cell key{"matched_by", orNull(hidden(**cipher, kPrescribers, prescriberKey(identity)))};
    Statement insert{transaction.connection(), "prescriber_insert"};
    insert.bind({key}).run();
    if (insert.next()) return countedCode(kPrescriberCode, insert.whole("prescriber_id"));
    Statement found{connection_, "prescriber_find"};
    found.bind({key}).run().next();
    return countedCode(kPrescriberCode, found.whole("prescriber_id"));
} catch (const SqlFailure& failure) {
    return failure.error();
}

domain::Result<std::string> PartyStore::patientCode(Transaction& transaction,
                                                    const std::string& prescriberCode,
                                                    const domain::Identity& identity) const try {
    const auto prescriber = countOf(kPrescriberCode, prescriberCode);
    if (!prescriber)
        return domain::Error{domain::ErrorCode::Unusable,
                             '"' + prescriberCode + "\" is not the code of a prescriber"};
    const auto cipher = connection_.identity();
    if (!cipher) return cipher.error();
    const std::vector<Cell> key{
        {"prescriber_id", *prescriber},
        {"matched_by", orNull(hidden(**cipher, patientsOf(*prescriber), patientKey(identity)))}};
    Statement insert{transaction.connection(), "patient_insert"};
    insert.bind(key).run();
    if (insert.next()) return countedCode(kPatientCode, insert.whole("patient_id"));
    Statement found{connection_, "patient_find"};
    found.bind(key).run().next();
    return countedCode(kPatientCode, found.whole("patient_id"));
} catch (const SqlFailure& failure) {
    return failure.error();
}

domain::Result<std::optional<std::string>> PartyStore::matchOfPrescriber(
    const std::string&, const domain::Identity& identity) const {
    const auto cipher = connection_.identity();
    if (!cipher) return cipher.error();
    return hidden(**cipher, kPrescribers, prescriberKey(identity));
}

domain::Result<std::optional<std::string>> PartyStore::matchOfPatient(
    const std::string& prescriber, const domain::Identity& identity) const {
    const auto cipher = connection_.identity();
    if (!cipher) return cipher.error();
    return hidden(**cipher, patientsOf(countOf(kPrescriberCode, prescriber).value_or(0)),
                  patientKey(identity));
}

domain::Result<domain::Done> PartyStore::forgetPatient(Transaction& transaction,
                                                       const std::string& patientCode) const {
    return forget(transaction, kPatientCode, patientCode, "patient_forget", "patient_id");
}

domain::Result<domain::Done> PartyStore::forgetPrescriber(Transaction& transaction,
                                                          const std::string& prescriberCode) const {
    return forget(transaction, kPrescriberCode, prescriberCode, "prescriber_forget",
                  "prescriber_id");
}

domain::Result<domain::Done> encryptParties(Transaction& work, const IdentityCipher& cipher) try {
    Connection& records = work.connection();
    std::vector<std::vector<Cell>> patients;
    Statement clear{records, "patient_all"};
    for (clear.run(); clear.next();)
        patients.push_back({{"patient_id", clear.whole("patient_id")},
                            {"matched_by", cipher.digest(patientsOf(clear.whole("prescriber_id")),
                                                         clear.text("matched_by"))}});
    std::vector<std::vector<Cell>> prescribers;
    Statement named{records, "prescriber_all"};
    for (named.run(); named.next();)
        prescribers.push_back(
            {{"prescriber_id", named.whole("prescriber_id")},
             {"matched_by", cipher.digest(kPrescribers, named.text("matched_by"))}});
    for (const auto& row : patients) Statement{records, "patient_match"}.bind(row).run();
    for (const auto& row : prescribers) Statement{records, "prescriber_match"}.bind(row).run();
    return domain::Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace storage
