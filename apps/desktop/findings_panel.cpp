#include "apps/desktop/findings_panel.h"

#include <QLabel>
#include <QListView>
#include <QVBoxLayout>

#include "apps/desktop/finding_delegate.h"

namespace desktop {

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

void FindingsPanel::show(const models::Asked& asked) {
    const bool nothing = asked.atBench.empty() && asked.findings.empty();
    model_.show(asked);
    list_->setVisible(!nothing);
    // Without findings the picture above them may have the room.
    constexpr int kMoreThanThePicture = 100;
    QSizePolicy policy{QSizePolicy::Preferred,
                       nothing ? QSizePolicy::Maximum : QSizePolicy::Preferred};
    policy.setVerticalStretch(nothing ? 0 : kMoreThanThePicture);
    setSizePolicy(policy);
    summary_->setText(summaryOf(asked));
}

}  // namespace desktop
