/// A room of the program: one sheet, what it is called there, and how it is entered and left.
#pragma once

#include <QWidget>

#include "apps/desktop/desk.h"

namespace desktop {

class Room : public QWidget {
    Q_OBJECT

public:
    explicit Room(Desk& desk) : desk_{desk} {
        setObjectName(QStringLiteral("sheet"));
        setAttribute(Qt::WA_StyledBackground);
    }

    /// Where the person is, for the top line: "Floor", "Order 26000017".
    virtual QString where() const = 0;
    /// Shows the newest state of the records and takes the focus.
    virtual void enter() = 0;
    /// The person who works here has changed.
    virtual void whoChanged() {}
    /// As the search field is typed in.
    virtual void search(const QString& words) { Q_UNUSED(words) }
    /// Enter in the search field.
    virtual void searchEntered() {}

signals:
    void orderWanted(const domain::OrderNumber& number);
    void intakeWanted();
    void floorWanted();
    void whereChanged();

protected:
    const Desk& desk() const noexcept { return desk_; }
    const Look& look() const noexcept { return desk_.look; }
    /// Whoever is signed in. Somebody is, while anything in a room can be pressed.
    actions::Who who() const { return asWho(*desk_.who); }

private:
    Desk& desk_;
};

}  // namespace desktop
