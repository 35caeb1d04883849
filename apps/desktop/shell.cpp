#include "apps/desktop/shell.h"

#include <QLabel>
#include <QPainter>
#include <QPlainTextEdit>
#include <QShortcut>
#include <QStackedWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "apps/desktop/models/words.h"
#include "apps/desktop/rail_button.h"

namespace desktop {
namespace {

constexpr int kMargin = 4 * kStep;
constexpr int kTopHeight = 14 * kStep;
constexpr int kOrderDigits = 8;

/// The words of the rooms in the rail, each with its key.
struct RoomRow {
    RoomName name;
    const char* word;
    Qt::Key key;
};
constexpr RoomRow kRooms[] = {{RoomName::Floor, "Floor", Qt::Key_F1},
                              {RoomName::Intake, "Intake", Qt::Key_F2},
                              {RoomName::Order, "Order", Qt::Key_F3}};

bool isAllDigits(const QString& words) {
    return !words.isEmpty() && std::ranges::all_of(words, [](QChar each) {
        return each >= QLatin1Char{'0'} && each <= QLatin1Char{'9'};
    });
}

bool takesText(const QWidget* widget) {
    const auto* form = qobject_cast<const FormView*>(widget);
    return qobject_cast<const QLineEdit*>(widget) != nullptr ||
           qobject_cast<const QPlainTextEdit*>(widget) != nullptr ||
           (form != nullptr && form->mayTypeHere());
}

}  // namespace

Shell::Shell(Desk& desk)
    : desk_{desk},
      floor_{new FloorRoom{desk}},
      intake_{new IntakeRoom{desk}},
      order_{new OrderRoom{desk}},
      sheet_{new QStackedWidget},
      where_{new QLabel},
      search_{new LineField},
      who_{new LineField},
      notice_{new Notice{desk.look}} {
    setWindowTitle(tr("Framewright"));
    auto* column = new QVBoxLayout;
    column->setSpacing(0);
    column->addWidget(makeTopLine());
    column->addWidget(notice_);
    column->addWidget(sheet_, 1);
    auto* row = new QHBoxLayout{this};
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    row->addWidget(makeRail());
    row->addLayout(column, 1);
    for (Room* each :
         {static_cast<Room*>(floor_), static_cast<Room*>(intake_), static_cast<Room*>(order_)}) {
        sheet_->addWidget(each);
        connect(each, &Room::orderWanted, this, &Shell::openOrder);
        connect(each, &Room::intakeWanted, this, [this] { enter(RoomName::Intake); });
        connect(each, &Room::floorWanted, this, [this] { enter(RoomName::Floor); });
        connect(each, &Room::whereChanged, this, &Shell::showWhere);
    }
    connect(new QShortcut{Qt::Key_Escape, this}, &QShortcut::activated, this, &Shell::goBack);
    for (const auto& [key, field] : {std::pair{Qt::Key_F, search_}, std::pair{Qt::Key_U, who_}})
        connect(new QShortcut{Qt::CTRL | key, this}, &QShortcut::activated, field, [field = field] {
            field->setFocus();
            field->selectAll();
        });
    qApp->installEventFilter(this);
}

QWidget* Shell::makeRail() {
    auto* rail = new QWidget;
    auto* column = new QVBoxLayout{rail};
    column->setContentsMargins(0, kTopHeight, 0, 0);
    column->setSpacing(0);
    for (const RoomRow& row : kRooms) {
        auto* button = new RailButton{tr(row.word), row.key, desk_.look};
        connect(button, &RailButton::clicked, this, [this, name = row.name] { enter(name); });
        rail_[static_cast<std::size_t>(row.name)] = button;
        column->addWidget(button);
    }
    column->addStretch(1);
    rail->setFixedWidth(rail_.front()->sizeHint().width());
    return rail;
}

QWidget* Shell::makeTopLine() {
    where_->setObjectName(QStringLiteral("where"));
    where_->setFont(face(kHeadText, true));
    search_->setPlaceholderText(tr("Search, or scan a ticket   Ctrl+F"));
    search_->setAccessibleName(tr("Search"));
    search_->setAccessibleDescription(tr("key Ctrl+F"));
    search_->setClearButtonEnabled(false);
    search_->setFixedSize(360, kTouch);
    who_->setPlaceholderText(tr("Your code   Ctrl+U"));
    who_->setAccessibleName(tr("Who you are"));
    who_->setAccessibleDescription(tr("key Ctrl+U"));
    who_->setFixedSize(180, kTouch);
    if (desk_.who) who_->setText(models::text(desk_.who->text()));
    connect(search_, &QLineEdit::textChanged, this, &Shell::searchTyped);
    connect(search_, &QLineEdit::returnPressed, this, &Shell::searchEntered);
    connect(who_, &QLineEdit::textChanged, this, &Shell::whoTyped);
    connect(who_, &QLineEdit::returnPressed, this, [this] { room().enter(); });
    auto* top = new QWidget;
    top->setObjectName(QStringLiteral("sheet"));
    top->setAttribute(Qt::WA_StyledBackground);
    auto* row = new QHBoxLayout{top};
    row->setContentsMargins(kMargin, 0, kMargin, 0);
    row->setSpacing(kMargin);
    row->addWidget(where_, 1);
    row->addWidget(search_);
    auto* asked = new QLabel{tr("at work:")};
    asked->setBuddy(who_);
    row->addWidget(asked);
    row->addWidget(who_);
    top->setFixedHeight(kTopHeight);
    return top;
}

Room& Shell::room() const {
    switch (name_) {
        case RoomName::Floor:
            return *floor_;
        case RoomName::Intake:
            return *intake_;
        case RoomName::Order:
            return *order_;
    }
    return *floor_;
}

void Shell::enter(RoomName name) {
    name_ = name;
    rail_[static_cast<std::size_t>(name)]->setChecked(true);
    sheet_->setCurrentWidget(&room());
    notice_->beQuiet();
    room().enter();
    if (!desk_.who) who_->setFocus();
    showWhere();
}

void Shell::showWhere() { where_->setText(room().where()); }

void Shell::openOrder(const domain::OrderNumber& number) {
    const auto shown = order_->show(number);
    if (!shown) return notice_->refuse(shown.error());
    {
        const QSignalBlocker quiet{search_};
        search_->clear();
        floor_->search({});
    }
    enter(RoomName::Order);
}

void Shell::goBack() {
    if (!search_->text().isEmpty()) {
        search_->clear();
        return room().enter();
    }
    enter(RoomName::Floor);
}

void Shell::searchTyped(const QString& words) {
    notice_->beQuiet();
    if (words.size() == kOrderDigits && isAllDigits(words)) {
        const auto number = domain::OrderNumber::parse(words.toStdString());
        if (number) return openOrder(*number);
        notice_->say(models::Mark::Refused,
                     tr("%1 is no order number: its check digit does not fit. Scan it again, or "
                        "look at the last digits.")
                         .arg(words));
    }
    if (name_ != RoomName::Floor && !isAllDigits(words) && !words.isEmpty()) {
        enter(RoomName::Floor);
        search_->setFocus();
    }
    floor_->search(words);
}

void Shell::searchEntered() { room().searchEntered(); }

void Shell::whoTyped(const QString& code) {
    desk_.who = domain::PersonCode::parse(code.toStdString());
    if (!desk_.who && !code.isEmpty())
        notice_->say(
            models::Mark::Refused,
            tr("\"%1\" is no code: a letter first, then letters, digits, - _ or .; at most "
               "24 of them.")
                .arg(code));
    else
        notice_->beQuiet();
    room().whoChanged();
}

bool Shell::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress || !isActiveWindow()) return false;
    const auto* widget = qobject_cast<QWidget*>(watched);
    if (widget == nullptr || widget->window() != this || takesText(widget)) return false;
    const auto* key = static_cast<QKeyEvent*>(event);
    if (key->modifiers() != Qt::NoModifier || !isAllDigits(key->text())) return false;
    search_->setFocus();
    search_->insert(key->text());
    return true;
}

void Shell::paintEvent(QPaintEvent*) {
    QPainter painter{this};
    painter.fillRect(rect(), desk_.look.of(domain::Colour::Ground));
    painter.fillRect(QRect{rail_.front()->width() - 1, 0, 1, height()},
                     desk_.look.of(domain::Colour::Line));
}

}  // namespace desktop
