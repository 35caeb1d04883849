#include "storage/checkpoint.h"

#include <charconv>
#include <sstream>

#include "storage/signature.h"
#include "storage/statement.h"

namespace storage {
namespace {

using domain::Error;
using domain::ErrorCode;
using domain::Instant;
using domain::Result;

constexpr std::string_view kFirstLine = "framewright checkpoint 1";
constexpr std::string_view kSignature = "signature ";
constexpr std::size_t kHashDigits = 64;

/// Everything that is signed.
std::string bodyOf(const Checkpoint& checkpoint) {
    const auto chain = [](const ChainHead& head) {
        return std::to_string(head.entries) + ' ' + head.hash;
    };
    std::string body{kFirstLine};
    body.append("\nat ")
        .append(std::to_string(checkpoint.at.microseconds()))
        .append("\nledger ")
        .append(chain(checkpoint.ledger))
        .append("\naccess ")
        .append(chain(checkpoint.access))
        .append("\nkey ")
        .append(checkpoint.publicKey)
        .append("\n");
    return body;
}

std::optional<std::int64_t> wholeOf(std::string_view text) {
    const std::string digits{text};
    std::int64_t value{};
    const char* end = digits.data() + digits.size();
    const auto read = std::from_chars(digits.data(), end, value);
    if (read.ec != std::errc{} || read.ptr != end) return {};
    return value;
}

/// The line after a word; nullopt: another line stands there.
std::optional<std::string> lineOf(std::istream& lines, std::string_view word) {
    std::string line;
    if (!std::getline(lines, line) || !line.starts_with(word)) return {};
    return line.substr(word.size());
}

std::optional<ChainHead> chainIn(const std::optional<std::string>& line) {
    if (!line) return {};
    const auto space = line->find(' ');
    if (space == std::string::npos) return {};
    const auto entries = wholeOf(std::string_view{*line}.substr(0, space));
    if (!entries || *entries < 0 || line->size() - space - 1 != kHashDigits) return {};
    return ChainHead{*entries, line->substr(space + 1)};
}

Error noCheckpoint(const std::string& why) {
    return {ErrorCode::Unusable, "this is no checkpoint: " + why};
}

/// A chain of the records, as a checkpoint speaks about it.
struct Chained {
    std::string_view name;
    std::string_view head;
    std::string_view hashAt;
    ChainHead Checkpoint::* place;
};
constexpr Chained kChains[] = {
    {"ledger", "ledger_head_all", "ledger_hash_at", &Checkpoint::ledger},
    {"access log", "access_head_all", "access_log_hash_at", &Checkpoint::access}};

ChainHead headNow(Connection& connection, const Chained& chain) {
    Statement row{connection, chain.head};
    if (!row.run().next()) return {};
    return {row.whole("entries"), row.text("hash")};
}

enum class Standing : std::uint8_t { GoesOn, Shorter, Another };

/// How a chain stands to what a checkpoint says of it.
Standing standingOf(Connection& connection, const Chained& chain, const ChainHead& then) {
    if (then.entries == 0) return Standing::GoesOn;
    const ChainHead now = headNow(connection, chain);
    if (now.entries < then.entries) return Standing::Shorter;
    Statement row{connection, chain.hashAt};
    const bool isThere = row.bind("position", then.entries).run().next();
    return isThere && row.value("hash") == Value{then.hash} ? Standing::GoesOn : Standing::Another;
}

std::string counted(std::int64_t entries, std::string_view chain) {
    return std::to_string(entries) + (entries == 1 ? " entry of the " : " entries of the ") +
           std::string{chain};
}

}  // namespace

Result<Checkpoint> checkpointNow(Connection& connection, Instant at) try {
    const Snapshot snapshot{connection};
    Checkpoint now{.at = at};
    for (const Chained& chain : kChains) now.*(chain.place) = headNow(connection, chain);
    return now;
} catch (const SqlFailure& failure) {
    return failure.error();
}

std::string writeCheckpoint(const Checkpoint& checkpoint, const std::string& seed) {
    const std::string body = bodyOf(checkpoint);
    return body + std::string{kSignature} + signatureOf(seed, body) + '\n';
}

Result<Checkpoint> readCheckpoint(const std::string& text) {
    std::istringstream lines{text};
    if (lineOf(lines, kFirstLine) != std::string{})
        return noCheckpoint('"' + std::string{kFirstLine} + "\" was expected as its first line");
    const auto at = lineOf(lines, "at ");
    const auto instant = at ? wholeOf(*at) : std::nullopt;
    const auto ledger = chainIn(lineOf(lines, "ledger "));
    const auto access = chainIn(lineOf(lines, "access "));
    const auto key = lineOf(lines, "key ");
    const auto signature = lineOf(lines, kSignature);
    if (!instant || !ledger || !access || !key || !signature)
        return noCheckpoint("the lines at, ledger, access, key and signature were expected");
    Checkpoint checkpoint{.at = Instant::ofMicroseconds(*instant),
                          .ledger = *ledger,
                          .access = *access,
                          .publicKey = *key};
    const std::string body = bodyOf(checkpoint);
    if (!isSignatureOf(*key, body, *signature) ||
        text != body + std::string{kSignature} + *signature + '\n')
        return noCheckpoint("it was altered since it was signed");
    return checkpoint;
}

Result<std::vector<std::string>> checkpointDifferences(
    Connection& connection, const Checkpoint& checkpoint,
    const std::optional<std::string>& ownKey) try {
    const Snapshot snapshot{connection};
    std::vector<std::string> problems;
    const std::string then = "the checkpoint of " + checkpoint.at.text();
    if (ownKey != checkpoint.publicKey)
        problems.push_back(then +
                           " was signed by another key than that of these records: they "
                           "are not the same, or somebody else signed");
    std::vector<const Chained*> shorter;
    for (const Chained& chain : kChains) {
        const ChainHead& said = checkpoint.*(chain.place);
        switch (standingOf(connection, chain, said)) {
            case Standing::GoesOn:
                break;
            case Standing::Shorter:
                shorter.push_back(&chain);
                break;
            case Standing::Another:
                problems.push_back("the history was rewritten: entry " +
                                   std::to_string(said.entries) + " of the " +
                                   std::string{chain.name} + " is not the one that " + then +
                                   " names");
        }
    }
    if (shorter.size() == std::size(kChains)) {
        problems.push_back("an older state of the records was put back: they end with " +
                           counted(headNow(connection, kChains[0]).entries, kChains[0].name) +
                           ", and " + then + " knew " + std::to_string(checkpoint.ledger.entries));
        return problems;
    }
    for (const Chained* chain : shorter) {
        const std::int64_t known = (checkpoint.*(chain->place)).entries;
        const std::int64_t there = headNow(connection, *chain).entries;
        problems.push_back("the tail of the " + std::string{chain->name} +
                           " was cut: " + counted(known - there, chain->name) + " that " + then +
                           " knew are missing");
    }
    return problems;
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace storage
