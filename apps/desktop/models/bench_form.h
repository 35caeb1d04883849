/// What the bench fills in at a stage, line by line, as the order's own route demands it; and what
/// was typed turned into records.
#pragma once

#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "apps/actions/work.h"
#include "domain/workshop/workshop.h"

namespace models {

enum class CellKind : std::uint8_t { Words, Choice, File, Tick };

/// One thing to fill in.
struct BenchCell {
    QString word;     ///< "amount"
    QString example;  ///< "23.4 g"
    CellKind kind{};
    QStringList choices{};
    QString initial{};  ///< stands there before anybody typed, and says nothing by itself
};

/// What belongs together and is recorded together.
struct BenchLine {
    domain::Demand demand{};
    std::optional<domain::Tooth> tooth{};
    QString title;     ///< "undercut of 14: 0.25 mm prescribed"
    QString recorded;  ///< what is on record in this attempt; empty when nothing is
    std::vector<BenchCell> cells{};
};

/// One line for each demand that something can be recorded for; one for each clasped tooth.
std::vector<BenchLine> benchLines(const domain::Order& order, domain::Stage stage,
                                  const domain::Workshop& workshop, domain::Date today);

/// What was typed: for each line the texts of its cells; a tick is any text.
using Typed = std::vector<QStringList>;

/// Whether nothing was typed into a line.
bool isUntouched(const BenchLine& line, const QStringList& typed);

/// The records, or the line and the sentence of what could not be read. A number may stand without
/// its unit and with a comma.
struct BenchAnswer {
    std::vector<actions::GivenRecord> records{};
    std::optional<std::size_t> line{};
    QString trouble{};  ///< empty: everything could be read
};
BenchAnswer benchRecords(const std::vector<BenchLine>& lines, const Typed& typed,
                         const QStringList& ticks);

}  // namespace models
