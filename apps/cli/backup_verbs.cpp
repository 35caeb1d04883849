#include "apps/cli/backup_verbs.h"

#include <cstdio>
#include <nlohmann/json.hpp>
#include <random>

#include "apps/actions/backups.h"
#include "apps/cli/lab_option.h"
#include "apps/cli/output.h"
#include "apps/cli/secret_input.h"
#include "apps/cli/typed_words.h"
#include "apps/cli/who_option.h"

namespace cli {
namespace {

using domain::Result;
using storage::Manifest;
using storage::Progress;

/// A line at every percent on a terminal, at every tenth else.
Progress progressOf(const Call& call) {
    const bool terminal = isTerminal();
    if (!terminal && !call.has("progress")) return {};
    return [terminal, last = std::string{}](std::string_view doing, std::int64_t done,
                                            std::int64_t all) mutable {
        const std::int64_t percent = all > 0 ? done * 100 / all : 0;
        const std::string line = std::string{doing} + ' ' +
                                 std::to_string(terminal ? percent : percent / 10 * 10) + " %";
        if (line != last) tellProgress(line, done >= all);
        last = line;
    };
}

std::string seconds(std::int64_t microseconds) {
    char text[32];
    std::snprintf(text, sizeof text, "%.2f s", static_cast<double>(microseconds) / 1e6);
    return text;
}

Json json(const Manifest& manifest) {
    Json tables = Json::array();
    for (const storage::TableCount& table : manifest.tables)
        tables.push_back(
            {{"table", table.name}, {"rows", table.rows}, {"sum", table.sum.value_or(0)}});
    return {{"made", manifest.made.text()},   {"program", manifest.program},
            {"schema-step", manifest.schema}, {"entries", manifest.entries},
            {"head", manifest.head},          {"database-bytes", manifest.databaseBytes},
            {"tables", std::move(tables)}};
}

std::string told(const Manifest& manifest) {
    return std::to_string(manifest.entries) + " entries, head " + manifest.head + ", schema " +
           std::to_string(manifest.schema) + ", made " + manifest.made.text();
}

Page tablesOf(const Manifest& manifest) {
    std::vector<std::vector<std::string>> rows;
    for (const storage::TableCount& each : manifest.tables)
        rows.push_back(
            {each.name, std::to_string(each.rows), std::to_string(each.sum.value_or(0))});
    return table({"table", "rows", "sum"}, rows);
}

std::vector<std::string> warningsOf(const storage::Backup& backup) {
    std::vector<std::string> warnings;
    if (backup.onTheSameDisk)
        warnings.emplace_back(
            "it lies on the same disk as the records: a disk that fails takes both; keep another "
            "backup elsewhere");
    if (backup.readableByOthers)
        warnings.emplace_back(
            "others may read it: this file system does not keep the rights of a file");
    return warnings;
}

/// The head that was noted down elsewhere, if both halves of it are given.
Result<std::optional<storage::KnownHead>> knownHeadOf(const Call& call) {
    const auto entries = call.option("against-entries");
    const auto head = call.option("against-head");
    if (!entries && !head) return std::optional<storage::KnownHead>{};
    if (!entries || !head)
        return unusable(
            "--against-entries and --against-head go together: the number of entries "
            "and the head that framewright verify printed");
    const auto count = wholeOf(*entries, 1, "a number of entries");
    if (!count) return count.error();
    constexpr std::size_t kDigits = 64;
    if (head->size() != kDigits || head->find_first_not_of("0123456789abcdef") != std::string::npos)
        return unusable("\"" + *head +
                        "\" is no head; the 64 digits 0 to 9 and a to f that framewright verify "
                        "printed were expected");
    return std::optional{storage::KnownHead{*count, *head}};
}

std::string lostAfter(const storage::Restored& restored) {
    if (!restored.last) return "the ledger is empty; whatever was recorded later is lost";
    return "the last thing in it: " + restored.last->subject + ", " +
           domain::spoken(restored.last->kind) + ", by " + restored.last->person + ", " +
           restored.last->at.text() +
           "; whatever was recorded after that, up to the loss, is not in it and must be entered "
           "again";
}

/// What would be lost if the disk failed now.
std::string riskOf(const actions::Drill& drill, domain::Instant now) {
    if (!drill.lastBackup)
        return "everything: there is no backup in the usual folder yet (framewright backup)";
    return std::to_string(drill.entriesSince) + " entries: the last backup was made " +
           drill.lastBackup->text() + ", " +
           spanText(now.microseconds() - drill.lastBackup->microseconds()) + " ago";
}

Json json(const actions::Drill& drill) {
    Json object = {{"backup", json(drill.manifest)},
                   {"backup-seconds", static_cast<double>(drill.backupTook) / 1e6},
                   {"writers-waited-seconds", static_cast<double>(drill.writersWaited) / 1e6},
                   {"return-seconds", static_cast<double>(drill.returnTook) / 1e6},
                   {"statements-issued", drill.statements.issued},
                   {"statements-compared", drill.statements.compared},
                   {"last-backup", drill.lastBackup ? Json(drill.lastBackup->text()) : Json()},
                   {"entries-since", drill.entriesSince},
                   {"problems", drill.problems}};
    return object;
}

Page pageOf(const actions::Drill& drill, domain::Instant now) {
    Page page{told(drill.manifest)};
    page.add(tablesOf(drill.manifest))
        .line("backup: " + seconds(drill.backupTook) + ", of which nobody could write for " +
              seconds(drill.writersWaited))
        .line("return (RTO): " + seconds(drill.returnTook) +
              " from the backup to records that are proved and open")
        .line("statements: " + std::to_string(drill.statements.compared) + " of " +
              std::to_string(drill.statements.issued) + " printed from both and compared")
        .line("at risk (RPO): " + riskOf(drill, now));
    for (const std::string& problem : drill.problems) page.line(problem);
    return page.line(drill.problems.empty() ? "what came back is what was there"
                                            : "WHAT CAME BACK IS NOT WHAT WAS THERE");
}

}  // namespace

Result<Exit> backup(const Call& call) {
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    const auto who = whoOf(call);
    if (!who) return who.error();
    const auto& given = call.arguments();
    const actions::BackupWish wish{.folder = given.empty() ? std::string{} : given[0],
                                   .remember = call.has("remember"),
                                   .removeSuperseded = call.has("thin-out")};
    const auto made = actions::backUp(*laboratory, wish, *who, progressOf(call));
    if (!made) return made.error();
    const storage::Backup& backup = made->backup;
    const auto warnings = warningsOf(backup);
    if (call.has("json")) {
        Json removed = Json::array();
        for (const auto& file : made->removed) removed.push_back(file.string());
        Json object = {{"file", backup.file.string()},
                       {"sha256", backup.digest},
                       {"writers-waited-seconds", static_cast<double>(backup.writersWaited) / 1e6},
                       {"warnings", warnings},
                       {"removed", std::move(removed)}};
        object.update(json(backup.manifest));
        print("backup-1", object);
        return Exit::Done;
    }
    Page page{backup.file.string()};
    page.line(told(backup.manifest))
        .line("SHA-256 " + backup.digest)
        .line("read back and proved; nobody could write for " + seconds(backup.writersWaited));
    for (const auto& file : made->removed) page.line("superseded: " + file.string());
    for (const std::string& warning : warnings) page.line("caution: " + warning);
    print(page);
    return Exit::Done;
}

Result<Exit> restore(const Call& call) {
    const auto to = call.option("to");
    if (!to) return unusable("where to? give a new folder with --to FOLDER");
    const auto known = knownHeadOf(call);
    if (!known) return known.error();
    storage::KeyAccess keys = keyAccess();
    keys.recoveryCode = [] { return readSecret("recovery code"); };
    const auto restored =
        actions::restore(call.arguments()[0], *to, *known, progressOf(call), keys);
    if (!restored) return restored.error();
    if (call.has("json")) {
        Json object = {{"folder", restored->folder.string()},
                       {"schema-now", restored->schema},
                       {"last-entry", restored->last ? Json(restored->last->at.text()) : Json()},
                       {"compared-with-entries", *known ? Json((**known).entries) : Json()}};
        object.update(json(restored->manifest));
        print("restored-1", object);
        return Exit::Done;
    }
    Page page{restored->folder.string()};
    page.line(told(restored->manifest)).add(tablesOf(restored->manifest));
    if (restored->schema != restored->manifest.schema)
        page.line("upgraded to schema " + std::to_string(restored->schema));
    if (*known)
        page.line("entry " + std::to_string((**known).entries) + " is the one that was known");
    print(page.line("digest, counts and chain prove true")
              .line(lostAfter(*restored))
              .line("papers and sessions are not in a backup: print again, sign in again")
              .line("work with it: --lab " + restored->folder.string()));
    return Exit::Done;
}

Result<Exit> drill(const Call& call) {
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    const auto who = whoOf(call);
    if (!who) return who.error();
    const auto& given = call.arguments();
    const auto drill = actions::drill(*laboratory, given.empty() ? std::string{} : given[0],
                                      std::random_device{}(), *who, progressOf(call));
    if (!drill) return drill.error();
    if (call.has("json"))
        print("drill-1", json(*drill));
    else
        print(pageOf(*drill, laboratory->now()));
    return drill->problems.empty() ? Exit::Done : Exit::Storage;
}

}  // namespace cli
