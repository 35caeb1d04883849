/// The stock: lots and whose device they are in, equipment and whether its calibration holds.
#pragma once

#include "apps/desktop/action_button.h"
#include "apps/desktop/models/equipment_model.h"
#include "apps/desktop/models/lots_model.h"
#include "apps/desktop/models/trace_model.h"
#include "apps/desktop/notice.h"
#include "apps/desktop/room.h"

class QLabel;
class QTableView;

namespace desktop {

class StockRoom : public Room {
    Q_OBJECT

public:
    explicit StockRoom(Desk& desk);

    QString where() const override;
    void enter() override;
    void whoChanged() override;

private:
    QWidget* makeLots();
    QWidget* makeRight();
    void lookUp();
    void offerWhatMayBeDone();
    const actions::LotLine* chosen() const;
    void choose(const domain::ThingCode& code);
    bool may(domain::Permission permission) const;
    void receive();
    void hold();
    void release();
    void trace();
    void openTraced();
    /// Shows the stock anew and what came of it.
    void took(const domain::Result<actions::Kept>& kept, const QString& done);

    domain::Workshop workshop_;
    models::LotsModel lots_;
    models::TraceModel traced_;
    models::EquipmentModel equipment_;
    QTableView* lotsTable_;
    QTableView* traceTable_;
    QTableView* equipmentTable_;
    QLabel* lotsHead_;
    QLabel* traceHead_;
    QLabel* equipmentHead_;
    Notice* notice_;
    ActionButton* receive_;
    ActionButton* hold_;
    ActionButton* release_;
    ActionButton* trace_;
    ActionButton* open_;
};

}  // namespace desktop
