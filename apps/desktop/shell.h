/// The window: the rail with the rooms, the line with where you are, search and who you are, and
/// the sheet of the room.
#pragma once

#include <QWidget>
#include <array>

#include "apps/desktop/floor_room.h"
#include "apps/desktop/intake_room.h"
#include "apps/desktop/line_field.h"
#include "apps/desktop/order_room.h"

class QStackedWidget;

namespace desktop {

enum class RoomName : std::uint8_t { Floor, Intake, Order };

}  // namespace desktop

template <>
inline constexpr std::array<domain::EnumCode<desktop::RoomName>, 3>
    domain::enumCodes<desktop::RoomName>{{
        {desktop::RoomName::Floor, "floor"},
        {desktop::RoomName::Intake, "intake"},
        {desktop::RoomName::Order, "order"},
    }};

namespace desktop {

class RailButton;

class Shell : public QWidget {
    Q_OBJECT

public:
    explicit Shell(Desk& desk);

    void enter(RoomName name);
    /// Opens an order; what stands in the way is said below the search field.
    void openOrder(const domain::OrderNumber& number);

    RoomName roomName() const noexcept { return name_; }
    IntakeRoom& intake() noexcept { return *intake_; }

protected:
    /// Digits typed or scanned anywhere but in a text land in the search field.
    bool eventFilter(QObject* watched, QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    QWidget* makeRail();
    QWidget* makeTopLine();
    Room& room() const;
    void goBack();
    void searchTyped(const QString& words);
    void searchEntered();
    void whoTyped(const QString& code);
    void showWhere();

    Desk& desk_;
    RoomName name_{RoomName::Floor};
    FloorRoom* floor_;
    IntakeRoom* intake_;
    OrderRoom* order_;
    QStackedWidget* sheet_;
    QLabel* where_;
    LineField* search_;
    LineField* who_;
    Notice* notice_;
    std::array<RailButton*, 3> rail_{};
};

}  // namespace desktop
