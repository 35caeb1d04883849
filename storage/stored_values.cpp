#include "storage/stored_values.h"

#include <QUtf8StringView>
#include <QtEndian>

namespace storage {

QByteArray wholeBytes(std::int64_t whole) {
    QByteArray bytes{sizeof whole, Qt::Uninitialized};
    qToBigEndian(whole, bytes.data());
    return bytes;
}

std::int64_t wholeIn(QByteArrayView bytes) {
    if (bytes.size() != sizeof(std::int64_t))
        throw Malformed{"a whole number has " + std::to_string(bytes.size()) +
                        " bytes instead of 8"};
    return qFromBigEndian<std::int64_t>(bytes.data());
}

std::string textIn(QByteArrayView bytes) {
    if (!QUtf8StringView{bytes.data(), bytes.size()}.isValidUtf8())
        throw Malformed{"a text is not UTF-8"};
    return {bytes.data(), static_cast<std::size_t>(bytes.size())};
}

QByteArray textBytes(std::string_view text) {
    return {text.data(), static_cast<qsizetype>(text.size())};
}

}  // namespace storage
