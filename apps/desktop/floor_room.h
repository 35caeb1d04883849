/// The floor: every open order and what a search finds, its stage, its due day, and what holds it
/// up.
#pragma once

#include "apps/desktop/action_button.h"
#include "apps/desktop/models/floor_model.h"
#include "apps/desktop/notice.h"
#include "apps/desktop/room.h"

class QLabel;
class QStackedWidget;
class QTableView;

namespace desktop {

class FloorRoom : public Room {
    Q_OBJECT

public:
    explicit FloorRoom(Desk& desk);

    QString where() const override;
    void enter() override;
    void search(const QString& words) override;
    void searchEntered() override { openChosen(); }

private:
    void lookUp();
    void findInRecords();
    domain::Result<domain::Done> noteLook(const std::vector<actions::FloorLine>& lines);
    void showNothing(const domain::Error& why);
    void openChosen();
    void showWhatIsThere();
    QWidget* makeEmpty();
    QWidget* makeList();

    models::FloorModel orders_;
    std::int64_t shownEntries_{-1};  ///< how many entries the ledger had
    QString words_;                  ///< of the search
    models::FloorSearch found_;
    QTableView* table_;
    QLabel* count_;
    QLabel* emptyWords_;
    Notice* notice_;
    ActionButton* open_;
    ActionButton* fresh_;
    QStackedWidget* pages_;
};

}  // namespace desktop
