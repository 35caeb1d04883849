/// The findings of a prescription as a list of cards, with what they come to in one line.
#pragma once

#include <QWidget>

#include "apps/desktop/look.h"
#include "apps/desktop/models/findings_model.h"

class QLabel;
class QListView;

namespace desktop {

class FindingsPanel : public QWidget {
    Q_OBJECT

public:
    explicit FindingsPanel(const Look& look);

    void show(const std::vector<domain::Finding>& findings, domain::Notation notation,
              const models::Taken& taken = {});

    /// "2 questions, 1 caution", or that there is nothing to ask.
    QString summary() const;

private:
    models::FindingsModel model_;
    QLabel* summary_;
    QListView* list_;
};

}  // namespace desktop
