#include "storage/digest.h"

#include <QCryptographicHash>

namespace storage {

std::string sha256(std::initializer_list<QByteArrayView> parts) {
    QCryptographicHash hash{QCryptographicHash::Sha256};
    for (const QByteArrayView part : parts) hash.addData(part);
    return hash.result().toHex().toStdString();
}

}  // namespace storage
