/// What a transaction overwrites is copied into the rollback journal first, and a journal that is
/// only cut off afterwards leaves those bytes on the disk. While one of these lives, journals are
/// kept after a commit instead, and then overwritten.
#pragma once

#include "storage/connection.h"

namespace storage {

/// Journals of this connection are overwritten at the end, and nobody else reads or writes the
/// records meanwhile: their journal would take the place of the one to be overwritten. Not within a
/// transaction.
class WipedJournal {
public:
    explicit WipedJournal(Connection& records);
    WipedJournal(const WipedJournal&) = delete;
    WipedJournal& operator=(const WipedJournal&) = delete;
    ~WipedJournal();

    /// Overwrites the journal with zeros, forces them to the disk and cuts it off.
    /// ErrorCode::Unavailable: what was overwritten in the records may still lie in the journal.
    domain::Result<domain::Done> wipe();

private:
    Connection& records_;
};

/// Whether a journal with content but without a beginning lies beside the records: a program was
/// killed before it had overwritten it.
bool hasUnwipedJournal(const std::filesystem::path& records);
/// Overwrites it, while nobody else writes. ErrorCode::Unavailable.
domain::Result<domain::Done> wipeJournal(Connection& records);

}  // namespace storage
