/// Whether the journal beside the records is theirs: SQLite would roll back any that lies there.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

namespace storage {

/// What speaks against rolling back the journal beside a file of records; nullopt when there is
/// none, or nothing speaks against it. To be asked before the file is opened, by a process that has
/// it open nowhere else.
///
/// A journal is strange when it is none, when it was begun at another page size or a greater length
/// than the file has, or when the first page in it carries neither the file's change counter nor
/// the one before: then it is left of other records, or the file was put there without it. One
/// without the first page, which this program never writes, is not judged; nor is one whose head a
/// power cut spoilt before anything of the records was written.
/// The format: SQLite documentation, "Database File Format", parts 1.3 and 3.
std::optional<std::string> strangeJournal(const std::filesystem::path& file);

}  // namespace storage
