/// SHA-256 (FIPS 180-4) over parts laid end to end.
#pragma once

#include <QByteArrayView>
#include <initializer_list>
#include <string>

namespace storage {

/// 64 hexadecimal digits, lower case.
std::string sha256(std::initializer_list<QByteArrayView> parts);

}  // namespace storage
