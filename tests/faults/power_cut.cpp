#include "tests/faults/power_cut.h"

#include <algorithm>

namespace faults {
namespace {

using Kind = Operation::Kind;

constexpr std::size_t kSector = 512;

void write(std::string& bytes, std::size_t offset, std::string_view what) {
    if (bytes.size() < offset + what.size()) bytes.resize(offset + what.size(), '\0');
    std::ranges::copy(what, bytes.begin() + static_cast<std::ptrdiff_t>(offset));
}

void apply(const Operation& operation, Stored& stored) {
    StoredFile& file = stored.of(operation.part);
    switch (operation.kind) {
        case Kind::Create:
            file.isThere = true;
            return;
        case Kind::Write:
            write(file.bytes, operation.offset, operation.bytes);
            return;
        case Kind::Truncate:
            file.bytes.resize(std::min(operation.offset, file.bytes.size()));
            return;
        case Kind::Delete:
            file = {};
            return;
        case Kind::Sync:
            return;
    }
}

std::size_t below(std::size_t bound, Random& random) {
    return std::uniform_int_distribution<std::size_t>{0, bound - 1}(random);
}

/// A write in pieces that no sector's edge goes through; everything else as it is.
void appendPieces(const Operation& operation, std::vector<Operation>& pieces) {
    if (operation.kind != Kind::Write) {
        pieces.push_back(operation);
        return;
    }
    for (std::size_t done = 0; done < operation.bytes.size();) {
        const std::size_t at = operation.offset + done;
        const std::size_t size = std::min(kSector - at % kSector, operation.bytes.size() - done);
        pieces.push_back({Kind::Write, operation.part, at, operation.bytes.substr(done, size)});
        done += size;
    }
}

/// Garbage over the whole sector a piece lies in, as far as the file goes.
void spoil(const Operation& piece, Stored& stored, Random& random) {
    std::string& bytes = stored.of(piece.part).bytes;
    write(bytes, piece.offset, piece.bytes);
    const std::size_t begin = piece.offset - piece.offset % kSector;
    const std::size_t end = std::min(begin + kSector, bytes.size());
    for (std::size_t at = begin; at < end; ++at) bytes[at] = static_cast<char>(random());
}

}  // namespace

void PowerCuts::take(const Operation& operation) {
    const bool forces = operation.kind == Kind::Sync;
    const bool isForced = operation.kind == Kind::Delete && operation.offset != 0;
    if (!forces) pending_.push_back(operation);
    if (honesty_ == Honesty::Lies || (!forces && !isForced)) return;
    // A journal that is forced the first time has its name forced with it, by SQLite itself.
    std::erase_if(pending_, [&](const Operation& each) {
        if (each.part != operation.part) return false;
        apply(each, durable_);
        return true;
    });
}

Stored PowerCuts::withAll() const {
    Stored stored = durable_;
    for (const Operation& operation : pending_) apply(operation, stored);
    return stored;
}

Stored PowerCuts::withFirst(Random& random) const {
    Stored stored = durable_;
    const std::size_t whole = below(pending_.size(), random);
    for (std::size_t i = 0; i < whole; ++i) apply(pending_[i], stored);
    std::vector<Operation> torn;
    appendPieces(pending_[whole], torn);
    const std::size_t kept = below(torn.size() + 1, random);
    for (std::size_t i = 0; i < kept; ++i) apply(torn[i], stored);
    return stored;
}

Stored PowerCuts::withSome(Random& random, bool hasGarbage) const {
    constexpr double kShares[] = {0.05, 0.3, 0.5, 0.7, 0.95};
    std::vector<Operation> pieces;
    for (const Operation& operation : pending_) appendPieces(operation, pieces);
    std::ranges::shuffle(pieces, random);
    std::bernoulli_distribution isKept{kShares[below(std::size(kShares), random)]};
    Stored stored = durable_;
    for (const Operation& piece : pieces)
        if (isKept(random)) apply(piece, stored);
    const Operation& last = pieces[below(pieces.size(), random)];
    if (hasGarbage && last.kind == Kind::Write) spoil(last, stored, random);
    return stored;
}

}  // namespace faults
