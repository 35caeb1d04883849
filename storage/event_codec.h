/// Events as canonical bytes: what the ledger keeps and its chain of hashes covers.
///
/// Every field is its length (4 bytes, most significant first) and that many bytes. Whole numbers
/// are 8 bytes, most significant first; texts are UTF-8; enums are their stable words; lists and
/// what may be absent begin with a count. The first field is the format's version, then kind,
/// order, order version, microseconds, person, key, and what the kind holds. A prescription is the
/// text of its file, without identity.
#pragma once

#include <QByteArray>

#include "domain/base/result.h"
#include "domain/production/event.h"

namespace storage {

QByteArray encodeEvent(const domain::Event& event);

/// Strict: the same event has one encoding only, everything else is refused with what was wrong.
/// ErrorCode::Unusable.
domain::Result<domain::Event> decodeEvent(const QByteArray& bytes);

}  // namespace storage
