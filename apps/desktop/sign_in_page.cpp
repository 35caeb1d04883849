#include "apps/desktop/sign_in_page.h"

#include <QComboBox>
#include <QLabel>
#include <QPainter>
#include <QShortcut>
#include <QVBoxLayout>
#include <algorithm>
#include <array>

#include "apps/actions/credential_change.h"
#include "apps/actions/people.h"
#include "apps/actions/recovery.h"
#include "apps/actions/workshop.h"
#include "apps/desktop/models/words.h"
#include "apps/desktop/remembered.h"

namespace desktop {
namespace {

using Way = SignInPage::Way;
using models::Mark;

constexpr int kWidth = 640;
constexpr int kLabelWidth = 160;

/// What a way asks for, in words.
struct WayRow {
    Way way;
    const char* head;
    const char* onward;
    const char* other;
};
constexpr std::array<WayRow, 4> kWays{{
    {Way::Badge, "Scan your badge, then type your PIN", "Sign in", "By name and password"},
    {Way::Name, "Sign in by name and password", "Sign in", "By badge"},
    {Way::Replace, "Choose a password of your own", "Replace and sign in", "By badge"},
    {Way::SetUp, "A new laboratory: enter its first manager", "Enter and sign in", "By badge"},
}};

const WayRow& rowOf(Way way) { return kWays[static_cast<std::size_t>(way)]; }

/// Takes the text out of a field, so that it is held in one place only.
actions::Secret taken(QLineEdit& field) {
    actions::Secret secret{field.text().toStdString()};
    field.clear();
    return secret;
}

bool mustChange(const actions::Laboratory& laboratory, const domain::PersonCode& person) {
    const auto people = actions::people(laboratory);
    return people && std::ranges::any_of(*people, [&](const actions::PersonLine& line) {
               return line.code == person && line.mustChange;
           });
}

/// A label of a fixed width, and what it names beside it.
QWidget* makeRow(const QString& label, QWidget* named) {
    auto* word = new QLabel{label};
    word->setBuddy(named);
    word->setFixedWidth(kLabelWidth);
    named->setMinimumHeight(kTouch);
    named->setFont(face(kLargeText));
    named->setAccessibleName(label);
    auto* row = new QWidget;
    row->setMinimumHeight(kTouch);
    auto* both = new QHBoxLayout{row};
    both->setContentsMargins(0, 0, 0, 0);
    both->addWidget(word);
    both->addWidget(named, 1);
    return row;
}

}  // namespace

SignInPage::SignInPage(Desk& desk)
    : desk_{desk},
      form_{new QVBoxLayout},
      head_{new QLabel},
      house_{new QLabel},
      station_{new QComboBox},
      notice_{new Notice{desk.look}},
      onward_{new ActionButton{tr("Sign in"), Qt::CTRL | Qt::Key_Return, desk.look}},
      other_{new ActionButton{tr("By name and password"), Qt::Key_F2, desk.look}},
      replace_{new ActionButton{tr("Replace a password"), Qt::Key_F3, desk.look}} {
    setObjectName(QStringLiteral("signIn"));
    makeForm();
    auto* actions = new QHBoxLayout;
    actions->addWidget(other_);
    actions->addWidget(replace_);
    actions->addStretch(1);
    actions->addWidget(onward_);
    auto* sheet = new QWidget;
    sheet->setObjectName(QStringLiteral("sheet"));
    sheet->setAttribute(Qt::WA_StyledBackground);
    sheet->setFixedWidth(kWidth);
    auto* column = new QVBoxLayout{sheet};
    column->setContentsMargins(8 * kStep, 8 * kStep, 8 * kStep, 8 * kStep);
    column->setSpacing(4 * kStep);
    column->addWidget(house_);
    column->addWidget(head_);
    column->addLayout(form_);
    column->addWidget(notice_);
    column->addLayout(actions);
    auto* middle = new QVBoxLayout{this};
    middle->addStretch(2);
    auto* across = new QHBoxLayout;
    across->addStretch(1);
    across->addWidget(sheet);
    across->addStretch(1);
    middle->addLayout(across);
    middle->addStretch(3);
    onward_->setNext(true);
    connect(onward_, &ActionButton::clicked, this, &SignInPage::onward);
    connect(other_, &ActionButton::clicked, this,
            [this] { show(way_ == Way::Badge ? Way::Name : Way::Badge); });
    connect(replace_, &ActionButton::clicked, this, [this] { show(Way::Replace); });
    connect(new QShortcut{Qt::Key_Escape, this}, &QShortcut::activated, this, &SignInPage::back);
}

LineField* SignInPage::makeField(const QString& label, bool secret) {
    auto* field = new LineField;
    if (secret) field->setEchoMode(QLineEdit::Password);
    field->setAccessibleDescription(tr("key Enter goes on"));
    form_->addWidget(makeRow(label, field));
    fields_.push_back(field);
    connect(field, &QLineEdit::returnPressed, this, [this, field] { goOnFrom(field); });
    return field;
}

void SignInPage::makeForm() {
    head_->setFont(face(kHeadText, true));
    form_->setSpacing(2 * kStep);
    form_->addWidget(makeRow(tr("Station, ↓ changes"), station_));
    scan_ = makeField(tr("Badge, then PIN"), true);
    name_ = makeField(tr("Your code"), false);
    password_ = makeField(tr("Password"), true);
    fresh_ = makeField(tr("New password"), true);
    again_ = makeField(tr("The same again"), true);
}

void SignInPage::enter(const QString& why) {
    offerStations();
    const auto letterhead = actions::letterhead(desk_.laboratory);
    house_->setText(letterhead && !letterhead->name.empty() ? models::text(letterhead->name)
                                                            : tr("Framewright"));
    const auto people = actions::people(desk_.laboratory);
    if (!people) return notice_->refuse(people.error());
    show(people->empty() ? Way::SetUp : way_ == Way::Name ? Way::Name : Way::Badge);
    if (!why.isEmpty()) notice_->say(Mark::Asked, why);
}

void SignInPage::expect(const domain::PersonCode& person) {
    if (way_ == Way::SetUp) return;
    show(Way::Name);
    name_->setText(models::text(person.text()));
    password_->setFocus();
}

void SignInPage::show(Way way) {
    way_ = way;
    forget();
    const WayRow& row = rowOf(way);
    head_->setText(tr(row.head));
    onward_->say(tr(row.onward));
    other_->say(tr(row.other));
    other_->setVisible(way != Way::SetUp);
    replace_->setVisible(way == Way::Name);
    scan_->parentWidget()->setVisible(way == Way::Badge);
    name_->parentWidget()->setVisible(way != Way::Badge);
    password_->parentWidget()->setVisible(way == Way::Name || way == Way::Replace);
    for (LineField* field : {fresh_, again_})
        field->parentWidget()->setVisible(way == Way::Replace || way == Way::SetUp);
    notice_->beQuiet();
    if (way == Way::SetUp)
        notice_->say(Mark::ToDo, tr("A code is %1. A password has at least %2 characters.")
                                     .arg(models::text(domain::kShortCodeForm))
                                     .arg(actions::kFewestPasswordCharacters));
    (way == Way::Badge              ? scan_
     : name_->text().isEmpty()      ? name_
     : password_->isVisibleTo(this) ? password_
                                    : fresh_)
        ->setFocus();
}

void SignInPage::offerStations() {
    station_->clear();
    const auto stations = actions::stations(desk_.laboratory);
    const bool any = stations && !stations->empty();
    station_->parentWidget()->setVisible(any);
    if (!any) return;
    const QString before = rememberedStation(desk_.laboratory);
    for (const auto& [code, kind] : *stations) {
        const QString word = models::text(code.text());
        station_->addItem(QStringLiteral("%1, %2").arg(word, models::spoken(kind)), word);
        if (word == before) station_->setCurrentIndex(station_->count() - 1);
    }
}

std::string SignInPage::station() const { return station_->currentData().toString().toStdString(); }

void SignInPage::goOnFrom(const LineField* field) {
    if (field == scan_ && badge_.empty()) return scanned();
    auto next = std::ranges::find(fields_, field) + 1;
    while (next != fields_.end() && !(*next)->isVisible()) ++next;
    // After the last field Enter means: that is all.
    if (next == fields_.end()) return onward();
    (*next)->setFocus();
}

void SignInPage::scanned() {
    badge_ = scan_->text().trimmed().toStdString();
    scan_->clear();
    if (!badge_.empty()) notice_->say(Mark::InHand, tr("Badge read. Type your PIN, then Enter."));
}

void SignInPage::back() {
    const bool toBadge = way_ == Way::Replace;
    show(toBadge ? Way::Name : way_);
}

void SignInPage::onward() {
    switch (way_) {
        case Way::Badge:
            if (badge_.empty()) return scanned();
            return took(actions::signInAtBench(desk_.laboratory, actions::Secret{std::move(badge_)},
                                               taken(*scan_), station()));
        case Way::Name:
            return byName();
        case Way::Replace:
            return replace();
        case Way::SetUp:
            return setUp();
    }
}

std::optional<domain::PersonCode> SignInPage::person() {
    auto person = domain::PersonCode::parse(name_->text().trimmed().toStdString());
    if (!person) {
        notice_->say(
            Mark::Refused,
            tr("\"%1\" is no code: %2.").arg(name_->text(), models::text(domain::kShortCodeForm)));
        name_->setFocus();
    }
    return person;
}

std::optional<actions::Secret> SignInPage::chosen() {
    if (fresh_->text() == again_->text()) {
        again_->clear();
        return taken(*fresh_);
    }
    again_->clear();
    fresh_->clear();
    fresh_->setFocus();
    notice_->say(Mark::Refused, tr("The two passwords differ. Type the new one twice."));
    return {};
}

void SignInPage::byName() {
    const auto code = person();
    if (!code) return;
    auto session = actions::signIn(desk_.laboratory, *code, taken(*password_), station());
    const bool given = !session && mustChange(desk_.laboratory, *code);
    if (given) {
        show(Way::Replace);
        name_->setText(models::text(code->text()));
    }
    took(session);
}

void SignInPage::replace() {
    const auto code = person();
    const auto fresh = code ? chosen() : std::nullopt;
    if (!fresh) return;
    const auto given = actions::givePassword(desk_.laboratory, *code, taken(*password_), *fresh);
    took(given ? actions::signIn(desk_.laboratory, *code, *fresh, station())
               : domain::Result<actions::Session>{given.error()});
}

void SignInPage::setUp() {
    const auto code = person();
    const auto fresh = code ? chosen() : std::nullopt;
    if (!fresh) return;
    const auto made = actions::setUp(desk_.laboratory, *code, {}, *fresh);
    const auto keyFile = actions::keyFileOf(desk_.laboratory);
    if (made && keyFile) desk_.dialogs.tellRecoveryCode(made->text(), *keyFile);
    took(made ? actions::signIn(desk_.laboratory, *code, *fresh, station())
              : domain::Result<actions::Session>{made.error()});
}

void SignInPage::took(const domain::Result<actions::Session>& session) {
    badge_.clear();
    scan_->clear();
    if (!session) {
        notice_->refuse(session.error());
        (way_ == Way::Badge ? scan_ : way_ == Way::SetUp ? fresh_ : password_)->setFocus();
        return;
    }
    rememberStation(desk_.laboratory, models::text(session->station));
    forget();
    notice_->beQuiet();
    desk_.who = *session;
    emit signedIn();
}

void SignInPage::forget() {
    badge_.clear();
    for (LineField* field : fields_) field->clear();
}

void SignInPage::paintEvent(QPaintEvent*) {
    QPainter painter{this};
    painter.fillRect(rect(), desk_.look.of(domain::Colour::Ground));
}

}  // namespace desktop
