/// The recovery code: what opens the identity key where its file is lost, and lets a manager back
/// in who cannot sign in. It is printed once and kept on paper.
///
/// Seven groups of four signs, as "7kq2-m0xd-...": 27 random ones of 5 bits each (135 bits) and a
/// check sign. Letters that are taken for digits are not among them (i, l, o, u). The check sign
/// makes the signs, as powers of a generator of GF(32) weigh them, add up to nothing: any one wrong
/// sign and any two that changed places are noticed (a Reed-Solomon code of distance 2).
#pragma once

#include "domain/base/result.h"
#include "storage/secrets.h"

namespace storage {

/// A new code, in groups.
Secret newRecoveryCode();

/// A code as it was typed, in capitals or not, with whatever spaces and hyphens; I and L are read
/// as 1, and O as 0. Gives it as newRecoveryCode() writes it. ErrorCode::Unusable says what is
/// wrong.
domain::Result<Secret> readRecoveryCode(const Secret& typed);

}  // namespace storage
