#include "apps/actions/checkpoints.h"

#include "apps/actions/access.h"
#include "apps/actions/paper_places.h"
#include "apps/actions/sessions.h"
#include "apps/actions/settings.h"
#include "reports/day_sheet.h"
#include "reports/placed_file.h"
#include "storage/digest.h"
#include "storage/files/plain_file.h"
#include "storage/signature.h"

namespace actions {
namespace {

using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Result;

constexpr std::size_t kMostBytes = 4096;

std::string nameOf(const storage::Checkpoint& checkpoint) {
    return "checkpoint-" + checkpoint.at.day().text() + '-' +
           std::to_string(checkpoint.ledger.entries);
}

/// A new file, as papers are: nothing gives way to it.
Result<Done> writeText(const Laboratory& laboratory, const std::filesystem::path& file,
                       const std::string& text, const Who& who) {
    const reports::PaperPlace place = paperPlace(laboratory, true);
    std::error_code trouble;
    std::filesystem::create_directories(place.papers, trouble);
    const std::string digest =
        storage::sha256({QByteArrayView{text.data(), static_cast<qsizetype>(text.size())}});
    return reports::placeFile(
        file, text, {.keepOut = place.records, .butFor = place.papers, .beforeItAppears = [&] {
                         return noteExported(laboratory, who, "checkpoint", digest);
                     }});
}

/// The seed that signs; made now for records from before there were checkpoints.
Result<std::string> seedOf(const Laboratory& laboratory, const Who& who) {
    auto seed = setting(laboratory, kSigningSeed);
    if (!seed || !seed->empty()) return seed;
    const auto made = perform(laboratory, {who.person, {}, who.token, who.station},
                              {domain::Permission::PrintPapers, commandOf({"signing-key"}), {}},
                              [&](UnitOfWork& unit) { return makeSigningKey(laboratory, unit); });
    if (!made) return made.error();
    return setting(laboratory, kSigningSeed);
}

}  // namespace

Result<Done> makeSigningKey(const Laboratory& laboratory, UnitOfWork& unit) {
    const std::string seed = storage::newSigningSeed();
    if (auto put = putSetting(laboratory, unit, kSigningSeed, seed); !put) return put;
    return putSetting(laboratory, unit, kSigningKey, storage::publicKeyOf(seed));
}

Result<std::optional<std::string>> signingKeyOf(const Laboratory& laboratory) {
    auto key = setting(laboratory, kSigningKey);
    if (!key) return key.error();
    return key->empty() ? std::optional<std::string>{} : std::optional{*std::move(key)};
}

Result<MadeCheckpoint> makeCheckpoint(const Laboratory& laboratory,
                                      const std::filesystem::path& file, const Who& who) {
    if (const auto allowed = authorise(laboratory, who, domain::Permission::PrintPapers); !allowed)
        return allowed.error();
    const auto seed = seedOf(laboratory, who);
    if (!seed) return seed.error();
    auto now = storage::checkpointNow(laboratory.records(), laboratory.now());
    if (!now) return now.error();
    MadeCheckpoint made{.checkpoint = *std::move(now), .file = file};
    made.checkpoint.publicKey = storage::publicKeyOf(*seed);
    const std::string text = storage::writeCheckpoint(made.checkpoint, *seed);
    if (file.empty())
        made.file = paperPlace(laboratory, true).papers / (nameOf(made.checkpoint) + ".txt");
    if (auto written = writeText(laboratory, made.file, text, who); !written)
        return written.error();
    auto head = paperHead(laboratory, who);
    if (!head) return head.error();
    const reports::Paper sheet =
        reports::daySheet(*head, {.at = made.checkpoint.at,
                                  .entries = made.checkpoint.ledger.entries,
                                  .head = made.checkpoint.ledger.hash,
                                  .accessEntries = made.checkpoint.access.entries,
                                  .accessHead = made.checkpoint.access.hash,
                                  .publicKey = made.checkpoint.publicKey,
                                  .checkpoint = text});
    auto paper = writePaper(laboratory, sheet, nameOf(made.checkpoint), true,
                            {"records", 1, "day-sheet"}, who);
    if (!paper) return paper.error();
    made.paper = *std::move(paper);
    return made;
}

Result<Verification> verifyAgainst(const Laboratory& laboratory, const std::filesystem::path& file,
                                   const std::optional<std::string>& publicKey) {
    const auto text = storage::readPlainFile(file, {"a checkpoint", kMostBytes});
    if (!text) return text.error();
    const auto checkpoint = storage::readCheckpoint(*text);
    if (!checkpoint)
        return Error{checkpoint.error().code, file.string() + ": " + checkpoint.error().message};
    if (publicKey && *publicKey != checkpoint->publicKey)
        return Error{ErrorCode::Unusable, file.string() +
                                              " was signed by another key than the one given; "
                                              "compare it with that on an earlier day sheet"};
    auto verified = verify(laboratory);
    if (!verified || !verified->problems.empty()) return verified;
    Verification verification = *std::move(verified);
    const auto ownKey = signingKeyOf(laboratory);
    if (!ownKey) return ownKey.error();
    auto differences = storage::checkpointDifferences(laboratory.records(), *checkpoint, *ownKey);
    if (!differences) return differences.error();
    verification.problems = *std::move(differences);
    return verification;
}

}  // namespace actions
