#include "apps/actions/who.h"

#include <QUuid>

namespace actions {

Who proving(Who who, const storage::Secret& password) {
    who.password = std::make_shared<const storage::Secret>(password);
    return who;
}

std::string keyOf(const Who& who) {
    return who.key.empty() ? QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString()
                           : who.key;
}

}  // namespace actions
