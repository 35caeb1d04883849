#include "apps/desktop/remembered.h"

#include <QCryptographicHash>
#include <QSettings>

namespace desktop {
namespace {

QSettings settings() {
    return QSettings{QSettings::IniFormat, QSettings::UserScope, QStringLiteral("framewright"),
                     QStringLiteral("desktop")};
}

/// One machine may open the records of several laboratories.
QString keyOf(const actions::Laboratory& laboratory) {
    const auto folder = QByteArray::fromStdString(laboratory.folder().string());
    const auto digest = QCryptographicHash::hash(folder, QCryptographicHash::Sha256).toHex();
    return QStringLiteral("station/%1").arg(QString::fromLatin1(digest.left(16)));
}

}  // namespace

QString rememberedStation(const actions::Laboratory& laboratory) {
    return settings().value(keyOf(laboratory)).toString();
}

void rememberStation(const actions::Laboratory& laboratory, const QString& station) {
    settings().setValue(keyOf(laboratory), station);
}

}  // namespace desktop
