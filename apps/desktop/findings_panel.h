/// What is asked about a prescription as a list of cards, with what it comes to in one line.
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

    void show(const models::Asked& asked);

private:
    models::FindingsModel model_;
    QLabel* summary_;
    QListView* list_;
};

}  // namespace desktop
