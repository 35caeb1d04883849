/// Intake: a prescription comes in as a file or is filled in by hand, with its findings beside it.
#pragma once

#include "apps/actions/examination.h"
#include "apps/desktop/action_button.h"
#include "apps/desktop/arch_view.h"
#include "apps/desktop/findings_panel.h"
#include "apps/desktop/form_view.h"
#include "apps/desktop/notice.h"
#include "apps/desktop/room.h"

namespace desktop {

class IntakeRoom : public Room {
    Q_OBJECT

public:
    explicit IntakeRoom(Desk& desk);

    QString where() const override;
    void enter() override;
    void whoChanged() override { offerWhatMayBeDone(); }

    /// Reads a prescription file into the form; a file that cannot be read leaves the form as it
    /// is.
    void open(const std::filesystem::path& file);

    const models::PrescriptionFormModel& form() const noexcept { return form_; }

protected:
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    QWidget* makeLeft();
    QWidget* makeRight();
    void examineAgain();
    void offerWhatMayBeDone();
    void openChosen();
    void log();
    void startAnew();
    void pointAt(domain::Tooth tooth, QPoint where);

    models::PrescriptionFormModel form_;
    actions::House house_;
    actions::Examined examined_;
    domain::Prescription untouched_;  ///< what the form held before the person changed it
    ArchView* picture_;
    FormView* fields_;
    FindingsPanel* findings_;
    QLabel* class_;
    Notice* notice_;
    ActionButton* open_;
    ActionButton* log_;
    ActionButton* anew_;
    ActionButton* add_;
    ActionButton* takeOut_;
};

}  // namespace desktop
