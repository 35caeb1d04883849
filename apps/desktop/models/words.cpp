#include "apps/desktop/models/words.h"

namespace models {

QString folded(const QString& words) {
    QString plain;
    for (const QChar letter : words.normalized(QString::NormalizationForm_KD))
        if (letter.category() != QChar::Mark_NonSpacing) plain += letter;
    return plain.toCaseFolded();
}

QString ago(domain::Instant then, domain::Instant now) {
    constexpr std::int64_t kMinute = 60'000'000;
    constexpr std::int64_t kDay = std::int64_t{24} * 60;  // in minutes
    const std::int64_t minutes = (now.microseconds() - then.microseconds()) / kMinute;
    if (minutes < 1) return QStringLiteral("now");
    if (minutes < 60) return QStringLiteral("%1 min").arg(minutes);
    if (minutes < kDay) return QStringLiteral("%1 h").arg(minutes / 60);
    return QStringLiteral("%1 d").arg(minutes / kDay);
}

QString lengthWords(std::int64_t microseconds) {
    constexpr std::int64_t kMinute = 60'000'000;
    constexpr std::int64_t kHour = 60;  // in minutes
    constexpr std::int64_t kDay = 24 * kHour;
    const std::int64_t minutes = microseconds / kMinute;
    if (minutes < kHour) return QStringLiteral("%1 min").arg(minutes);
    if (minutes < kDay) return QStringLiteral("%1 h").arg(minutes / kHour);
    const std::int64_t hours = minutes % kDay / kHour;
    const QString days = QStringLiteral("%1 d").arg(minutes / kDay);
    return hours == 0 ? days : QStringLiteral("%1 %2 h").arg(days).arg(hours);
}

QString dueWords(domain::Date due, domain::Date today) {
    const std::int64_t days = due.days() - today.days();
    if (days < 0) return QStringLiteral("late %1 d").arg(-days);
    if (days == 0) return QStringLiteral("today");
    return QStringLiteral("in %1 d").arg(days);
}

}  // namespace models
