#include "storage/laboratory_identity.h"

#include <sodium.h>

#include <array>

#include "storage/kept_digest.h"
#include "storage/party_store.h"
#include "storage/recovery_code.h"
#include "storage/sealed_texts.h"
#include "storage/settings_store.h"
#include "storage/statement.h"

namespace storage {
namespace {

namespace fs = std::filesystem;
using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Result;

constexpr std::string_view kRecovery = "recovery";

std::string newLaboratory() {
    std::array<unsigned char, 16> bytes{};
    randombytes_buf(bytes.data(), bytes.size());
    return QByteArray{reinterpret_cast<const char*>(bytes.data()), bytes.size()}
        .toHex()
        .toStdString();
}

bool hasIdentity(Connection& records) {
    Statement table{records.database(),
                    Sql{"SELECT name FROM sqlite_schema WHERE name = 'laboratory_identity'"}};
    return table.run().next();
}

Error missing(const fs::path& file, bool isLocked) {
    return {ErrorCode::Unavailable,
            "the identity key of these records is not there: " + file.string() +
                " is missing; put the key file back" +
                (isLocked ? ", or bring it back with the recovery code: framewright recover"
                          : "; these records hold no recovery code to bring it back with")};
}

/// The key that a recovery code opens, its file written anew.
Result<Cipher> recovered(const LaboratoryIdentity& identity, const fs::path& records,
                         const KeyAccess& keys) {
    const auto code = keys.recoveryCode();
    if (!code) return code.error();
    auto cipher = openedByRecoveryCode(identity, *code);
    if (!cipher) return cipher;
    if (auto written = writeKeyFile(keys.folder, records, identity.laboratory, **cipher); !written)
        return written.error();
    return cipher;
}

}  // namespace

Result<std::optional<LaboratoryIdentity>> identityOf(Connection& records) try {
    if (!hasIdentity(records)) return std::optional<LaboratoryIdentity>{};
    Statement row{records, "laboratory_identity_all"};
    if (!row.run().next())
        return Error{ErrorCode::Unavailable, "the records in " + records.file().string() +
                                                 " do not say whose they are: the row of their "
                                                 "identity key is missing; restore a backup"};
    return std::optional{LaboratoryIdentity{row.text("laboratory"), row.text("check_value"),
                                            row.textIfAny("locked_key")}};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<Cipher> beginIdentity(Transaction& work, const fs::path& records,
                             const KeyAccess& keys) try {
    const std::string laboratory = newLaboratory();
    Cipher cipher = IdentityCipher::random();
    // Before anything is encrypted: a key that was written in vain harms nobody.
    if (auto written = writeKeyFile(keys.folder, records, laboratory, *cipher); !written)
        return written.error();
    Statement{work.connection(), "laboratory_identity_insert"}
        .bind({{"laboratory", laboratory}, {"check_value", cipher->checkValue(laboratory)}})
        .run();
    for (const auto encrypt : {&encryptTexts, &encryptParties, &encryptSettings})
        if (auto done = encrypt(work, *cipher); !done) return done.error();
    return cipher;
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<Cipher> keyOf(const LaboratoryIdentity& identity, const fs::path& records,
                     const KeyAccess& keys) {
    const auto fits = [&](const Cipher& cipher) {
        return cipher->checkValue(identity.laboratory) == identity.checkValue;
    };
    if (keys.known != nullptr && fits(keys.known)) return keys.known;
    const fs::path file = keyFileOf(keys.folder, identity.laboratory);
    auto cipher = readKeyFile(keys, identity.laboratory);
    if (!cipher) return cipher;
    if (*cipher == nullptr) {
        if (!identity.lockedKey || !keys.recoveryCode)
            return missing(file, identity.lockedKey.has_value());
        return recovered(identity, records, keys);
    }
    if (fits(*cipher)) return cipher;
    return Error{ErrorCode::Unavailable,
                 "the key in " + file.string() +
                     " is not the identity key of these records; put the right key file there, or "
                     "move it away and use the recovery code: framewright recover"};
}

Result<Done> putLockedKey(Transaction& work, const std::string& lockedKey) try {
    Statement{work.connection(), "laboratory_identity_lock"}.bind("locked_key", lockedKey).run();
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::string> lockedByRecoveryCode(const IdentityCipher& cipher, const Secret& code,
                                         const std::string& laboratory, HashCost cost) {
    return cipher.lockedBy(code, kRecovery, laboratory, cost);
}

Result<Cipher> openedByRecoveryCode(const LaboratoryIdentity& identity, const Secret& typed) {
    const auto code = readRecoveryCode(typed);
    if (!code) return code.error();
    if (!identity.lockedKey)
        return Error{ErrorCode::Refused, "these records have no recovery code yet"};
    auto cipher =
        IdentityCipher::unlocked(*identity.lockedKey, *code, kRecovery, identity.laboratory);
    if (!cipher)
        return Error{ErrorCode::Unavailable,
                     "the key that the recovery code opens is damaged; restore a backup"};
    if (*cipher == nullptr || (*cipher)->checkValue(identity.laboratory) != identity.checkValue)
        return Error{ErrorCode::Refused,
                     "this is not the recovery code of these records; a newer code replaces an "
                     "earlier one"};
    return cipher;
}

std::string identityDigest(const LaboratoryIdentity& identity) {
    return keptDigest({kIdentitySetting, identity.laboratory, identity.checkValue,
                       identity.lockedKey.value_or(std::string{})});
}

}  // namespace storage
