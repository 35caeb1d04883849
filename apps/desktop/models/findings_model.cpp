#include "apps/desktop/models/findings_model.h"

#include <algorithm>

#include "apps/desktop/models/words.h"

namespace models {
namespace {

QString counted(std::ptrdiff_t count, const QString& thing) {
    return QStringLiteral("%1 %2%3").arg(count).arg(thing, count == 1 ? "" : "s");
}

}  // namespace

std::vector<domain::Finding> inOrderOfAsking(std::vector<domain::Finding> findings) {
    std::erase_if(findings,
                  [](const domain::Finding& finding) { return finding.kept.has_value(); });
    std::ranges::stable_sort(findings, {}, &domain::Finding::severity);
    return findings;
}

QString summaryOf(const Asked& asked) {
    const auto cautions =
        std::ranges::count(asked.findings, domain::Severity::Caution, &domain::Finding::severity);
    const auto questions =
        static_cast<std::ptrdiff_t>(asked.atBench.size() + asked.findings.size()) - cautions;
    QStringList parts;
    if (questions > 0) parts += counted(questions, QStringLiteral("question"));
    if (cautions > 0) parts += counted(cautions, QStringLiteral("caution"));
    return parts.isEmpty() ? QStringLiteral("Nothing to ask") : parts.join(QStringLiteral(", "));
}

void FindingsModel::show(const Asked& asked) {
    beginResetModel();
    rows_.clear();
    for (const AskedAtBench& question : asked.atBench) append(rowOf(question));
    for (const domain::Finding& finding : asked.findings) append(rowOf(finding, asked));
    endResetModel();
}

void FindingsModel::append(Row row) {
    row.cells[Number] = QString::number(rows_.size() + 1);
    rows_.push_back(std::move(row));
}

FindingsModel::Row FindingsModel::rowOf(const AskedAtBench& asked) {
    Row row{.mark = Mark::Asked, .cells = {}};
    row.cells[Severity] = QStringLiteral("asked at the bench");
    row.cells[Found] = asked.note.empty() ? spoken(asked.flag.reason) : text(asked.note);
    row.cells[Requirement] = QStringLiteral("The work stands still until this is answered.");
    row.cells[Question] = text(questionOf(asked.flag.reason));
    row.cells[Rule] = spoken(asked.flag.reason);
    row.cells[Source] = QStringLiteral("flagged by %1, %2")
                            .arg(text(asked.flag.person.text()), text(asked.flag.since.text()));
    return row;
}

FindingsModel::Row FindingsModel::rowOf(const domain::Finding& finding, const Asked& asked) {
    const Marked marked = markOf(finding.severity);
    Row row{.mark = marked.mark, .cells = {}};
    row.cells[Severity] = marked.word;
    // Whoever takes a caution is named wherever it is shown.
    if (finding.severity == domain::Severity::Caution && asked.takenBy &&
        std::ranges::count(asked.cautionsTaken, finding.rule) != 0)
        row.cells[Severity] =
            QStringLiteral("%1, taken by %2").arg(marked.word, text(asked.takenBy->text()));
    if (finding.tooth) row.cells[Tooth] = text(nameOf(*finding.tooth, asked.notation));
    row.cells[Found] = text(finding.found);
    row.cells[Requirement] = text(finding.requirement);
    row.cells[Question] = text(finding.question);
    row.cells[Rule] = text(finding.rule);
    row.cells[Source] = text(finding.source);
    return row;
}

int FindingsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int FindingsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : ColumnCount;
}

QVariant FindingsModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const Row& row = rows_[static_cast<std::size_t>(index.row())];
    if (role == Qt::DisplayRole) return row.cells[static_cast<std::size_t>(index.column())];
    if (role == MarkRole) return static_cast<int>(row.mark);
    if (role == Qt::AccessibleTextRole)
        return QStringLiteral("%1, %2, %3, to ask: %4")
            .arg(row.cells[Number], row.cells[Severity], row.cells[Found], row.cells[Question]);
    return {};
}

QVariant FindingsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    switch (static_cast<Column>(section)) {
        case Number:
            return QStringLiteral("Flag");
        case Severity:
            return QStringLiteral("Severity");
        case Tooth:
            return QStringLiteral("Tooth");
        case Found:
            return QStringLiteral("Found");
        case Requirement:
            return QStringLiteral("Must hold");
        case Question:
            return QStringLiteral("To ask");
        case Rule:
            return QStringLiteral("Rule");
        case Source:
            return QStringLiteral("Source");
        case ColumnCount:
            break;
    }
    return {};
}

}  // namespace models
