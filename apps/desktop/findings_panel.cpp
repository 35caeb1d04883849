#include "apps/desktop/findings_panel.h"

#include <QLabel>
#include <QListView>
#include <QVBoxLayout>
#include <algorithm>

#include "apps/desktop/finding_delegate.h"

namespace desktop {
namespace {

QString summed(const std::vector<domain::Finding>& findings) {
    const auto cautions =
        std::ranges::count(findings, domain::Severity::Caution, &domain::Finding::severity);
    const auto questions = static_cast<std::ptrdiff_t>(findings.size()) - cautions;
    const auto counted = [](std::ptrdiff_t count, const QString& thing) {
        return QStringLiteral("%1 %2%3").arg(count).arg(thing, count == 1 ? "" : "s");
    };
    QStringList parts;
    if (questions > 0) parts += counted(questions, QStringLiteral("question"));
    if (cautions > 0) parts += counted(cautions, QStringLiteral("caution"));
    return parts.isEmpty() ? QStringLiteral("Nothing to ask") : parts.join(QStringLiteral(", "));
}

}  // namespace

FindingsPanel::FindingsPanel(const Look& look) : summary_{new QLabel}, list_{new QListView} {
    summary_->setFont(face(kPlainText, true));
    list_->setModel(&model_);
    list_->setModelColumn(models::FindingsModel::Found);
    list_->setItemDelegate(new FindingDelegate{look, list_});
    list_->setAccessibleName(tr("Findings"));
    list_->setResizeMode(QListView::Adjust);
    list_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    // The chosen card shows more lines, so the cards below it move.
    connect(list_->selectionModel(), &QItemSelectionModel::currentChanged, list_,
            [this] { list_->doItemsLayout(); });
    auto* column = new QVBoxLayout{this};
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(kStep);
    column->addWidget(summary_);
    column->addWidget(list_, 1);
}

void FindingsPanel::show(const std::vector<domain::Finding>& findings, domain::Notation notation,
                         const models::Taken& taken) {
    model_.show(findings, notation, taken);
    list_->setVisible(!findings.empty());
    // Without findings the picture beside it may have the room.
    setSizePolicy(QSizePolicy::Preferred,
                  findings.empty() ? QSizePolicy::Maximum : QSizePolicy::Preferred);
    summary_->setText(summed(findings));
}

QString FindingsPanel::summary() const { return summary_->text(); }

}  // namespace desktop
