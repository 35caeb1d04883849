/// Events as bytes: what the ledger keeps and its chain of hashes covers.
///
/// An entry is a piece with the number of its format, then what the format says. Format 4 is what
/// is written now: a part as in tagged_record.h with subject, version, at (microseconds), person,
/// key, station if any, and what happened. Formats 1 (of an order), 2 (the same with a station) and
/// 3 (of the workshop) are read as in positional_reader.h. What is stored of each part is described
/// in event_fields.h and frozen: golden bytes of every format and kind are in the tests.
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

/// One record as it would be stored: equal records have equal bytes.
std::string encodeRecord(const domain::StageRecord& record);
/// Likewise of what happens to the workshop.
std::string encodeHappening(const domain::WorkshopHappening& what);

/// The sealed texts an event points to.
std::vector<domain::SealedText> sealedTextsIn(const LedgerEvent& event);

/// The format an entry is written in; 0 where it cannot be read.
std::int64_t formatOf(const QByteArray& bytes);
/// Strict: in format 4 the same event has one encoding only, everything else is refused with what
/// was wrong. ErrorCode::Unusable.
domain::Result<LedgerEvent> decodeEvent(const QByteArray& bytes);
/// Likewise; an event of the other sort is refused.
domain::Result<domain::Event> decodeOrderEvent(const QByteArray& bytes);
domain::Result<domain::WorkshopEvent> decodeWorkshopEvent(const QByteArray& bytes);

}  // namespace storage
