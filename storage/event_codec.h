/// Events as canonical bytes: what the ledger keeps and its chain of hashes covers.
///
/// Every field is its length (4 bytes, most significant first) and that many bytes. Whole numbers
/// are 8 bytes, most significant first; texts are UTF-8; enums are their stable words; lists and
/// what may be absent begin with a count; one of several kinds begins with the word of its kind.
/// The first field is the format's version (1: of an order, 2: the same with a station, 3: of the
/// workshop), then kind, subject, its version, microseconds, person, station if any, key, and what
/// the kind holds. A prescription is the text of its file, without identity.
#pragma once

#include <QByteArray>

#include "domain/base/result.h"
#include "domain/production/event.h"
#include "domain/workshop/workshop_event.h"

namespace storage {

/// Whatever the ledger can hold.
using LedgerEvent = std::variant<domain::Event, domain::WorkshopEvent>;

QByteArray encodeEvent(const domain::Event& event);
QByteArray encodeEvent(const domain::WorkshopEvent& event);
QByteArray encodeEvent(const LedgerEvent& event);

/// The sealed texts an event points to.
std::vector<domain::SealedText> sealedTextsIn(const LedgerEvent& event);

/// Strict: the same event has one encoding only, everything else is refused with what was wrong.
/// ErrorCode::Unusable.
domain::Result<LedgerEvent> decodeEvent(const QByteArray& bytes);
/// Likewise; an event of the other sort is refused.
domain::Result<domain::Event> decodeOrderEvent(const QByteArray& bytes);
domain::Result<domain::WorkshopEvent> decodeWorkshopEvent(const QByteArray& bytes);

}  // namespace storage
