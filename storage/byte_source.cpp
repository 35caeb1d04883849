#include "storage/byte_source.h"

#include <QtEndian>
#include <string>

#include "storage/malformed.h"

namespace storage {
namespace {

constexpr qsizetype kLength = sizeof(std::uint32_t);

}  // namespace

QByteArrayView ByteSource::take(qsizetype count) {
    if (count > rest_.size())
        throw Malformed{"the bytes end early: " + std::to_string(count) + " expected, " +
                        std::to_string(rest_.size()) + " left"};
    const QByteArrayView taken = rest_.first(count);
    rest_ = rest_.sliced(count);
    return taken;
}

QByteArrayView ByteSource::piece() {
    return take(qFromBigEndian<std::uint32_t>(take(kLength).data()));
}

qsizetype ByteSource::mostPieces() const noexcept { return rest_.size() / kLength; }

void ByteSource::end() const {
    if (!rest_.isEmpty()) throw Malformed{std::to_string(rest_.size()) + " bytes are left over"};
}

void appendPiece(QByteArray& bytes, QByteArrayView piece) {
    const auto length = qToBigEndian(static_cast<std::uint32_t>(piece.size()));
    bytes.append(reinterpret_cast<const char*>(&length), sizeof length);
    bytes.append(piece.data(), piece.size());
}

}  // namespace storage
