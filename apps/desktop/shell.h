/// The window: the rail with the rooms, the line with where you are, search and who you are, and
/// the sheet of the room; over all of it the page to sign in, while nobody is.
#pragma once

#include <QWidget>
#include <array>

#include "apps/desktop/floor_room.h"
#include "apps/desktop/intake_room.h"
#include "apps/desktop/line_field.h"
#include "apps/desktop/order_room.h"
#include "apps/desktop/sign_in_page.h"
#include "apps/desktop/stock_room.h"

class QStackedWidget;

namespace desktop {

enum class RoomName : std::uint8_t { Floor, Intake, Order, Stock };

}  // namespace desktop

template <>
inline constexpr std::array<domain::EnumCode<desktop::RoomName>, 4>
    domain::enumCodes<desktop::RoomName>{{
        {desktop::RoomName::Floor, "floor"},
        {desktop::RoomName::Intake, "intake"},
        {desktop::RoomName::Order, "order"},
        {desktop::RoomName::Stock, "stock"},
    }};

namespace desktop {

class RailButton;

class Shell : public QWidget {
    Q_OBJECT

public:
    explicit Shell(Desk& desk);
    Shell(const Shell&) = delete;
    Shell& operator=(const Shell&) = delete;
    ~Shell() override;

    /// Before somebody has signed in nothing of the records is read: the room looks at them then.
    void enter(RoomName name);
    /// Opens an order, once somebody has signed in; where it is open already, that is a scan of its
    /// ticket. What stands in the way is said below the search field.
    void openOrder(const domain::OrderNumber& number);

    /// Signs out whoever is signed in and asks who it is; the rooms keep what was typed in them.
    /// `why` stands on the page, and may be empty.
    void lock(const QString& why = {});
    /// Locks when nothing was pressed for the laboratory's idle minutes.
    void lookAtTheClock();

    RoomName roomName() const noexcept { return name_; }
    IntakeRoom& intake() noexcept { return *intake_; }
    OrderRoom& order() noexcept { return *order_; }
    SignInPage& signIn() noexcept { return *signIn_; }
    bool isLocked() const { return !desk_.who; }

protected:
    /// Digits typed or scanned anywhere but in a text land in the search field.
    bool eventFilter(QObject* watched, QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    QWidget* makeWork();
    QWidget* makeRail();
    QWidget* makeTopLine();
    void signedIn();
    void showWho();
    void noteInput();
    bool cameTooLate(QEvent* event);
    Room& room() const { return room(name_); }
    Room& room(RoomName name) const;
    void goBack();
    void searchTyped(const QString& words);
    void searchEntered();
    void showWhere();

    Desk& desk_;
    RoomName name_{RoomName::Floor};
    FloorRoom* floor_;
    IntakeRoom* intake_;
    OrderRoom* order_;
    StockRoom* stock_;
    QStackedWidget* pages_;  ///< the work, and over it the page to sign in
    SignInPage* signIn_;
    QStackedWidget* sheet_;
    QLabel* where_;
    LineField* search_;
    QLabel* who_;
    ActionButton* lock_;
    Notice* notice_;
    bool eatsNextKey_{false};                      ///< the one whose shortcut came too late
    std::optional<domain::OrderNumber> wanted_{};  ///< to be opened once somebody has signed in
    domain::Instant lastInput_{};
    domain::Instant lastUse_{};  ///< when the session was last told that somebody is there
    std::array<RailButton*, 4> rail_{};
};

}  // namespace desktop
