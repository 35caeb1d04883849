#include "apps/actions/who.h"

#include <QUuid>

namespace actions {

std::string keyOf(const Who& who) {
    return who.key.empty() ? QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString()
                           : who.key;
}

}  // namespace actions
