/// Between the texts of the domain and those of Qt, and how times are said on screen.
#pragma once

#include <QString>
#include <string>
#include <string_view>

#include "domain/base/codes.h"
#include "domain/base/date.h"

namespace models {

inline QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

template <domain::CodedEnum E>
QString spoken(E value) {
    return text(domain::wordsOf(value));
}

/// Without case and without accents, for searching: "Žofie" and "zofie" become the same.
QString folded(const QString& words);

/// How long ago, in the largest unit that fits: "5 min", "3 h", "2 d"; less than a minute is "now".
QString ago(domain::Instant then, domain::Instant now);

/// A length of time in its two largest units: "40 min", "5 h", "2 d 4 h".
QString lengthWords(std::int64_t microseconds);

/// How a due day lies to today: "late 2 d", "today", "in 5 d".
QString dueWords(domain::Date due, domain::Date today);

}  // namespace models
