/// Walks stored bytes piece by piece: each piece is its length (4 bytes, most significant first)
/// and that many bytes. Throws Malformed.
#pragma once

#include <QByteArray>
#include <QByteArrayView>

namespace storage {

class ByteSource {
public:
    explicit ByteSource(QByteArrayView bytes) : rest_{bytes} {}

    QByteArrayView piece();
    bool isAtEnd() const noexcept { return rest_.isEmpty(); }
    /// How many pieces there can be at most.
    qsizetype mostPieces() const noexcept;
    /// Throws where bytes are left over.
    void end() const;
    QByteArrayView rest() const noexcept { return rest_; }

private:
    QByteArrayView take(qsizetype count);
    QByteArrayView rest_;
};

/// Appends a piece.
void appendPiece(QByteArray& bytes, QByteArrayView piece);

}  // namespace storage
