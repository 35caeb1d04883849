#include "apps/desktop/shell.h"

#include <QLabel>
#include <QPainter>
#include <QPlainTextEdit>
#include <QShortcut>
#include <QStackedWidget>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "apps/actions/workshop.h"
#include "apps/desktop/models/words.h"
#include "apps/desktop/rail_button.h"

namespace desktop {
namespace {

constexpr int kMargin = 4 * kStep;
constexpr int kTopHeight = 14 * kStep;
constexpr int kOrderDigits = 8;
constexpr int kLookAtTheClockEvery = 5'000;   ///< ms
constexpr std::int64_t kMinute = 60'000'000;  ///< microseconds

/// The words of the rooms in the rail, each with its key.
struct RoomRow {
    const char* word;
    Qt::Key key;
    RoomName name;
};
constexpr RoomRow kRooms[] = {{"Floor", Qt::Key_F1, RoomName::Floor},
                              {"Intake", Qt::Key_F2, RoomName::Intake},
                              {"Order", Qt::Key_F3, RoomName::Order},
                              {"Stock", Qt::Key_F4, RoomName::Stock}};

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
      stock_{new StockRoom{desk}},
      pages_{new QStackedWidget},
      signIn_{new SignInPage{desk}},
      sheet_{new QStackedWidget},
      where_{new QLabel},
      search_{new LineField},
      who_{new QLabel},
      lock_{new ActionButton{tr("Lock"), Qt::CTRL | Qt::Key_L, desk.look}},
      notice_{new Notice{desk.look}} {
    setWindowTitle(tr("Framewright"));
    pages_->addWidget(makeWork());
    pages_->addWidget(signIn_);
    auto* whole = new QVBoxLayout{this};
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(pages_);
    connect(signIn_, &SignInPage::signedIn, this, &Shell::signedIn);
    connect(lock_, &ActionButton::clicked, this, [this] { lock(); });
    auto* clock = new QTimer{this};
    connect(clock, &QTimer::timeout, this, &Shell::lookAtTheClock);
    clock->start(kLookAtTheClockEvery);
    lastInput_ = desk_.laboratory.now();
    lastUse_ = lastInput_;
    qApp->installEventFilter(this);
    desk_.laboratory.tellBy([this](const std::string& sentence) {
        notice_->say(models::Mark::Caution, models::text(sentence));
    });
    desk_.who ? showWho() : lock();
}

Shell::~Shell() { desk_.laboratory.tellBy({}); }

QWidget* Shell::makeWork() {
    auto* work = new QWidget;
    auto* column = new QVBoxLayout;
    column->setSpacing(0);
    column->addWidget(makeTopLine());
    column->addWidget(notice_);
    column->addWidget(sheet_, 1);
    auto* row = new QHBoxLayout{work};
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    row->addWidget(makeRail());
    row->addLayout(column, 1);
    for (const RoomRow& named : kRooms) {
        Room* each = &room(named.name);
        sheet_->addWidget(each);
        connect(each, &Room::orderWanted, this, &Shell::openOrder);
        connect(each, &Room::intakeWanted, this, [this] { enter(RoomName::Intake); });
        connect(each, &Room::floorWanted, this, [this] { enter(RoomName::Floor); });
        connect(each, &Room::whereChanged, this, &Shell::showWhere);
    }
    // Children of the work, so that no key of it does anything under the page to sign in.
    connect(new QShortcut{Qt::Key_Escape, work}, &QShortcut::activated, this, &Shell::goBack);
    connect(new QShortcut{Qt::CTRL | Qt::Key_F, work}, &QShortcut::activated, search_, [this] {
        search_->setFocus();
        search_->selectAll();
    });
    return work;
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
    who_->setObjectName(QStringLiteral("who"));
    connect(search_, &QLineEdit::textChanged, this, &Shell::searchTyped);
    connect(search_, &QLineEdit::returnPressed, this, &Shell::searchEntered);
    auto* top = new QWidget;
    top->setObjectName(QStringLiteral("sheet"));
    top->setAttribute(Qt::WA_StyledBackground);
    auto* row = new QHBoxLayout{top};
    row->setContentsMargins(kMargin, 0, kMargin, 0);
    row->setSpacing(kMargin);
    row->addWidget(where_, 1);
    row->addWidget(search_);
    row->addWidget(who_);
    row->addWidget(lock_);
    top->setFixedHeight(kTopHeight);
    return top;
}

Room& Shell::room(RoomName name) const {
    switch (name) {
        case RoomName::Floor:
            return *floor_;
        case RoomName::Intake:
            return *intake_;
        case RoomName::Order:
            return *order_;
        case RoomName::Stock:
            return *stock_;
    }
    return *floor_;
}

void Shell::enter(RoomName name) {
    name_ = name;
    rail_[static_cast<std::size_t>(name)]->setChecked(true);
    sheet_->setCurrentWidget(&room());
    notice_->beQuiet();
    if (!isLocked()) room().enter();
    showWhere();
}

void Shell::lock(const QString& why) {
    if (desk_.who) {
        const auto ended = actions::signOut(desk_.laboratory, asWho(*desk_.who));
        if (!ended) notice_->refuse(ended.error());
    }
    desk_.who.reset();
    // What is open over a room is of whoever is no longer signed in.
    if (auto* popup = QApplication::activePopupWidget()) popup->close();
    if (auto* dialog = QApplication::activeModalWidget()) dialog->close();
    pages_->setCurrentWidget(signIn_);
    signIn_->enter(why);
}

void Shell::signedIn() {
    lastInput_ = desk_.laboratory.now();
    lastUse_ = lastInput_;
    showWho();
    pages_->setCurrentIndex(0);
    for (const RoomRow& named : kRooms) room(named.name).whoChanged();
    if (const auto wanted = std::exchange(wanted_, {})) return openOrder(*wanted);
    room().enter();
}

void Shell::showWho() {
    QString words = models::text(desk_.who->person.text());
    const auto workshop = actions::workshop(desk_.laboratory);
    const auto* person = workshop ? workshop->worker(desk_.who->person) : nullptr;
    if (person != nullptr) words += QStringLiteral(", %1").arg(models::spoken(person->role));
    if (!desk_.who->station.empty()) words += tr(", at %1").arg(models::text(desk_.who->station));
    who_->setText(words);
}

void Shell::lookAtTheClock() {
    if (isLocked()) return;
    const auto idle = actions::idleMinutes(desk_.laboratory);
    if (!idle) return notice_->refuse(idle.error());
    const auto rested = desk_.laboratory.now().microseconds() - lastInput_.microseconds();
    if (rested < *idle * kMinute) return;
    lock(tr("%1 was signed out: nothing was pressed for %2 minutes. Everything in the rooms is as "
            "it was left.")
             .arg(models::text(desk_.who->person.text()))
             .arg(*idle));
}

void Shell::noteInput() {
    lookAtTheClock();
    if (isLocked()) return;
    lastInput_ = desk_.laboratory.now();
    if (lastInput_.microseconds() - lastUse_.microseconds() < kMinute) return;
    lastUse_ = lastInput_;
    const auto used = actions::use(desk_.laboratory, asWho(*desk_.who));
    if (!used) lock(models::text(used.error().message));
}

void Shell::showWhere() { where_->setText(room().where()); }

void Shell::openOrder(const domain::OrderNumber& number) {
    if (isLocked()) {
        wanted_ = number;
        return;
    }
    const bool isOpen = name_ == RoomName::Order && order_->shows(number);
    const auto shown = order_->show(number);
    if (!shown) return notice_->refuse(shown.error());
    {
        const QSignalBlocker quiet{search_};
        search_->clear();
        floor_->search({});
    }
    enter(RoomName::Order);
    if (isOpen) order_->scan();
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

/// Counts what is pressed as use. What is pressed after the time is up only locks: it belongs to
/// whoever is no longer signed in. A key asks for its shortcut first and comes as a key after that.
bool Shell::cameTooLate(QEvent* event) {
    const bool isKey = event->type() == QEvent::KeyPress;
    const bool isAsking = event->type() == QEvent::ShortcutOverride;
    if (isKey && eatsNextKey_) {
        eatsNextKey_ = false;
        return true;
    }
    if (isLocked() || (!isKey && !isAsking && event->type() != QEvent::MouseButtonPress))
        return false;
    noteInput();
    if (!isLocked()) return false;
    eatsNextKey_ = isAsking;
    event->accept();
    return true;
}

bool Shell::eventFilter(QObject* watched, QEvent* event) {
    if (cameTooLate(event)) return true;
    if (event->type() != QEvent::KeyPress || isLocked() || !isActiveWindow()) return false;
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
