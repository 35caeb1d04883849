#include "apps/actions/backups.h"

#include <QTemporaryDir>
#include <algorithm>
#include <chrono>
#include <random>

#include "apps/actions/access.h"
#include "apps/actions/sessions.h"
#include "apps/actions/settings.h"
#include "apps/actions/statements.h"
#include "domain/workshop/person.h"
#include "reports/paper_file.h"
#include "storage/ledger_pass.h"

namespace actions {
namespace {

namespace fs = std::filesystem;
using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::OrderNumber;
using domain::Result;
using Timer = std::chrono::steady_clock;

/// The time does not pass where a copy is looked at.
class StoppedClock : public domain::Clock {
public:
    explicit StoppedClock(domain::Instant now) : now_{now} {}
    domain::Instant now() const override { return now_; }

private:
    domain::Instant now_;
};

std::int64_t microsecondsSince(Timer::time_point start) {
    return std::chrono::duration_cast<std::chrono::microseconds>(Timer::now() - start).count();
}

/// The orders with an issued statement whose words are still there, at most so many of them.
struct Issued {
    std::size_t all{};
    std::vector<OrderNumber> some{};
};

/// Hears which orders have an issued statement.
class IssuedOrders : public storage::LedgerListener {
public:
    void order(const domain::Order& order) override {
        if (domain::newest<domain::StatementIssued>(order, domain::Stage::Delivery))
            numbers_.push_back(order.number);
    }
    std::vector<OrderNumber> takeNumbers() { return std::move(numbers_); }

private:
    std::vector<OrderNumber> numbers_;
};

Result<Issued> issuedIn(const Laboratory& laboratory, std::uint32_t seed) {
    IssuedOrders listener;
    storage::LedgerListener* const listeners[] = {&listener};
    const auto read = storage::readLedger(laboratory.records(), listeners, storage::Chain::Trusted);
    if (!read) return read.error();
    if (read->problem) return Error{ErrorCode::Unavailable, *read->problem};
    Issued issued{.some = listener.takeNumbers()};
    std::ranges::sort(issued.some);
    issued.all = issued.some.size();
    std::mt19937 random{seed};
    std::ranges::shuffle(issued.some, random);
    issued.some.resize(std::min(issued.all, kStatementsCompared), *OrderNumber::make(0, 1));
    return issued;
}

/// A statement as it is printed, and the version of the order it belongs to.
struct Printed {
    std::int64_t version{};
    std::string bytes{};  ///< what says that there is none, where it cannot be printed
};

Result<Printed> printed(const Laboratory& laboratory, const OrderNumber& number) {
    const auto view = order(laboratory, number);
    if (!view) return view.error();
    const auto paper = issuedStatement(laboratory, *view);
    if (!paper) return Printed{view->order.version, paper.error().message};
    const auto bytes = reports::pdfOf(*paper);
    if (!bytes) return bytes.error();
    return Printed{view->order.version, *bytes};
}

Result<Done> findLastBackup(Drill& drill, const Laboratory& laboratory) {
    const auto folder = backupFolder(laboratory);
    if (!folder) return folder.error();
    const auto backups = storage::backupsIn(*folder, drill.manifest.first);
    drill.entriesSince = drill.manifest.entries;
    if (backups.empty()) return Done{};
    drill.lastBackup = backups.back().manifest.made;
    drill.entriesSince -= backups.back().manifest.entries;
    return Done{};
}

/// What was copied from the laboratory has its key, which is at hand.
storage::KeyAccess keyOf(const Laboratory& laboratory) {
    return {.known = laboratory.records().cipher()};
}

/// Opens what was restored and compares it with what was backed up and with what is at work.
Result<Done> compare(Drill& drill, const Laboratory& laboratory, const fs::path& restored,
                     std::uint32_t seed) {
    const StoppedClock clock{laboratory.now()};
    const auto copy = Laboratory::openExisting(restored, clock, keyOf(laboratory));
    if (!copy) return copy.error();
    const auto census = storage::censusIn(copy->records());
    if (!census) return census.error();
    drill.problems = storage::censusDifferences(storage::censusOf(drill.manifest), *census);
    auto statements = compareStatements(laboratory, *copy, seed);
    if (!statements) return statements.error();
    drill.statements = *std::move(statements);
    drill.problems.insert(drill.problems.end(), drill.statements.problems.begin(),
                          drill.statements.problems.end());
    return Done{};
}

}  // namespace

Result<fs::path> backupFolder(const Laboratory& laboratory) {
    const auto set = setting(laboratory, kBackupFolder);
    if (!set) return set.error();
    return set->empty() ? storage::usualBackupFolder(laboratory.folder()) : fs::path{*set};
}

Result<BackupMade> backUp(const Laboratory& laboratory, const BackupWish& wish, const Who& who,
                          const storage::Progress& progress) {
    if (const auto allowed = authorise(laboratory, who, domain::Permission::KeepWorkshop); !allowed)
        return allowed.error();
    fs::path folder = wish.folder;
    if (folder.empty()) {
        const auto usual = backupFolder(laboratory);
        if (!usual) return usual.error();
        folder = *usual;
    }
    if (wish.remember) {
        folder = fs::absolute(folder).lexically_normal();
        if (auto done = writeSettings(laboratory, who, {{kBackupFolder, folder.string()}}); !done)
            return done.error();
    }
    auto backup = storage::makeBackup(laboratory.records(), folder, laboratory.now(), progress);
    if (!backup) return backup.error();
    if (auto noted = noteExported(laboratory, who, "backup", backup->digest); !noted)
        return noted.error();
    BackupMade made{.backup = *std::move(backup)};
    if (wish.removeSuperseded) {
        auto removed = storage::removeSuperseded(made.backup);
        if (!removed) return removed.error();
        made.removed = *std::move(removed);
    }
    return made;
}

Result<storage::Restored> restore(const fs::path& file, const fs::path& folder,
                                  const std::optional<storage::KnownHead>& against,
                                  const storage::Progress& progress,
                                  const storage::KeyAccess& keys) {
    return storage::restoreBackup(file, folder, against, progress, keys);
}

Result<StatementsCompared> compareStatements(const Laboratory& original, const Laboratory& restored,
                                             std::uint32_t seed) {
    const auto issued = issuedIn(restored, seed);
    if (!issued) return issued.error();
    StatementsCompared result{.issued = issued->all};
    for (const OrderNumber& number : issued->some) {
        const auto copy = printed(restored, number);
        if (!copy) return copy.error();
        const auto own = printed(original, number);
        if (!own) return own.error();
        if (own->version != copy->version) continue;
        ++result.compared;
        if (own->bytes != copy->bytes)
            result.problems.push_back("the statement of order " + number.text() +
                                      " is printed otherwise from the restored records");
    }
    return result;
}

Result<Drill> drill(const Laboratory& laboratory, const fs::path& folder, std::uint32_t seed,
                    const Who& who, const storage::Progress& progress) {
    if (const auto allowed = authorise(laboratory, who, domain::Permission::KeepWorkshop); !allowed)
        return allowed.error();
    const fs::path place = folder.empty() ? laboratory.folder() : folder;
    const QTemporaryDir own{QString::fromStdString((place / ".framewright-drill-XXXXXX").string())};
    if (!own.isValid())
        return Error{ErrorCode::Unavailable, "cannot make a folder in " + place.string() + ": " +
                                                 own.errorString().toStdString()};
    const fs::path inside = own.path().toStdString();
    auto started = Timer::now();
    const auto backup = storage::makeBackup(laboratory.records(), inside, laboratory.now(),
                                            progress, storage::CensusDepth::RowsAndSums);
    if (!backup) return backup.error();
    Drill drill{.manifest = backup->manifest,
                .backupTook = microsecondsSince(started),
                .writersWaited = backup->writersWaited};
    started = Timer::now();
    const storage::KnownHead head{drill.manifest.entries, drill.manifest.head};
    const auto restored = storage::restoreBackup(backup->file, inside / "restored", head, progress,
                                                 keyOf(laboratory));
    if (!restored) return restored.error();
    drill.returnTook = microsecondsSince(started);
    if (auto done = compare(drill, laboratory, restored->folder, seed); !done) return done.error();
    if (auto done = findLastBackup(drill, laboratory); !done) return done.error();
    return drill;
}

}  // namespace actions
