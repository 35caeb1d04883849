#include "apps/desktop/intake_room.h"

#include <QDragEnterEvent>
#include <QLabel>
#include <QMimeData>
#include <QSplitter>
#include <QVBoxLayout>

#include "apps/desktop/models/words.h"

namespace desktop {
namespace {

constexpr int kMargin = 4 * kStep;
constexpr int kLeftWidth = 680;

/// "III mod 1, tooth support": what follows from the chart.
QString classOf(const actions::Examined& examined) {
    if (!examined.kennedy) return QObject::tr("no Kennedy class yet");
    QString words = QObject::tr("Kennedy %1").arg(models::text(examined.kennedy->text()));
    if (examined.support)
        words += QObject::tr(", %1 support").arg(models::spoken(*examined.support));
    return words;
}

}  // namespace

IntakeRoom::IntakeRoom(Desk& desk)
    : Room{desk},
      picture_{new ArchView{look()}},
      fields_{new FormView{form_, look()}},
      findings_{new FindingsPanel{look()}},
      class_{new QLabel},
      notice_{new Notice{look()}},
      open_{new ActionButton{tr("Open a file"), Qt::Key_F5, look()}},
      log_{new ActionButton{tr("Log the order"), Qt::Key_F6, look()}},
      anew_{new ActionButton{tr("Empty form"), Qt::Key_F7, look()}},
      add_{new ActionButton{tr("Add"), Qt::Key_Insert, look()}},
      takeOut_{new ActionButton{tr("Take out"), Qt::Key_Delete, look()}} {
    setAcceptDrops(true);
    auto* sheet = new QHBoxLayout{this};
    sheet->setContentsMargins(kMargin, kStep, kMargin, kMargin);
    sheet->setSpacing(kMargin);
    sheet->addWidget(makeLeft(), 1);
    sheet->addWidget(makeRight(), 1);

    connect(open_, &ActionButton::clicked, this, &IntakeRoom::openChosen);
    connect(log_, &ActionButton::clicked, this, &IntakeRoom::log);
    connect(anew_, &ActionButton::clicked, this, &IntakeRoom::startAnew);
    connect(add_, &ActionButton::clicked, fields_, &FormView::addHere);
    connect(takeOut_, &ActionButton::clicked, fields_, &FormView::takeOutHere);
    connect(&form_, &models::PrescriptionFormModel::changed, this, &IntakeRoom::examineAgain);
    connect(&form_, &models::PrescriptionFormModel::refused, this, &IntakeRoom::offerWhatMayBeDone);
    connect(fields_->selectionModel(), &QItemSelectionModel::currentChanged, this,
            &IntakeRoom::offerWhatMayBeDone);
    connect(picture_, &ArchView::toothPressed, this, &IntakeRoom::pointAt);
    examineAgain();
}

QWidget* IntakeRoom::makeLeft() {
    picture_->letPoint();
    auto* left = new QSplitter{Qt::Vertical};
    left->addWidget(picture_);
    left->addWidget(fields_);
    left->setChildrenCollapsible(false);
    left->setSizes({1, 1});  // the picture takes the least it can be read at, the form the rest
    left->setStretchFactor(1, 1);
    left->setMinimumWidth(kLeftWidth);
    return left;
}

QWidget* IntakeRoom::makeRight() {
    auto* right = new QWidget;
    auto* actions = new QGridLayout;
    actions->setSpacing(2 * kStep);
    actions->addWidget(add_, 0, 0);
    actions->addWidget(takeOut_, 0, 1);
    actions->addWidget(anew_, 0, 2);
    actions->addWidget(open_, 1, 0, 1, 2);
    actions->addWidget(log_, 1, 2);
    for (int each = 0; each < 3; ++each) actions->setColumnStretch(each, 1);
    class_->setFont(face(kLargeText, true));
    auto* column = new QVBoxLayout{right};
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2 * kStep);
    column->addWidget(class_);
    column->addWidget(findings_);
    column->addWidget(notice_);
    column->addStretch(1);
    column->addLayout(actions);
    return right;
}

QString IntakeRoom::where() const { return tr("Intake"); }

void IntakeRoom::enter() {
    fields_->setFocus();
    offerWhatMayBeDone();
}

void IntakeRoom::open(const std::filesystem::path& file) {
    const auto read = actions::readPrescription(file);
    if (!read) return notice_->refuse(read.error());
    untouched_ = *read;
    form_.show(*read);
    notice_->say(models::Mark::Done,
                 tr("Read from %1.").arg(models::text(file.filename().string())));
}

void IntakeRoom::openChosen() {
    if (const auto file = desk().dialogs.prescriptionFile()) open(*file);
}

void IntakeRoom::dragEnterEvent(QDragEnterEvent* event) {
    if (event->mimeData()->urls().size() == 1 && event->mimeData()->urls().first().isLocalFile())
        event->acceptProposedAction();
}

void IntakeRoom::dropEvent(QDropEvent* event) {
    open(event->mimeData()->urls().first().toLocalFile().toStdString());
}

void IntakeRoom::examineAgain() {
    if (auto house = actions::houseOf(desk().laboratory)) house_ = *std::move(house);
    examined_ = actions::examined(form_.prescription(), desk().laboratory.today(), house_);
    const models::Asked asked{.findings = models::inOrderOfAsking(examined_.findings),
                              .notation = notationOf(examined_.prescription)};
    picture_->show(examined_.prescription, asked.findings);
    findings_->show(asked);
    class_->setText(classOf(examined_));
    notice_->beQuiet();
    offerWhatMayBeDone();
}

void IntakeRoom::offerWhatMayBeDone() {
    const int troubles = form_.troubles();
    const QModelIndex needed = form_.firstNeeded();
    const bool filledIn = form_.prescription() != domain::Prescription{};
    log_->setEnabled(desk().who && filledIn && troubles == 0 && !needed.isValid());
    log_->setNext(filledIn);
    open_->setNext(!filledIn);
    add_->setEnabled(fields_->mayAddHere());
    takeOut_->setEnabled(fields_->mayTakeOutHere());
    if (troubles > 0)
        notice_->say(
            models::Mark::Refused,
            tr("A field holds a text that cannot be read: correct it, then log the order."));
    else if (needed.isValid())
        notice_->say(
            models::Mark::Asked,
            tr("%1 of the %2 is still to be given, or take the %2 out.")
                .arg(needed.siblingAtColumn(models::PrescriptionFormModel::Label).data().toString(),
                     needed.parent().data().toString()));
    else if (!filledIn)
        notice_->say(models::Mark::ToDo,
                     tr("Open a prescription file, drop one here, or fill in the form."));
    else if (notice_->mark() != models::Mark::Done)
        notice_->beQuiet();
}

void IntakeRoom::startAnew() {
    if (form_.prescription() != untouched_ && !desk().dialogs.throwAway()) return;
    untouched_ = {};
    form_.show({});
}

void IntakeRoom::log() {
    const auto logged = actions::log(desk().laboratory, form_.prescription(), who());
    if (!logged) return notice_->refuse(logged.error());
    untouched_ = {};
    form_.show({});
    emit orderWanted(logged->order.number);
}

void IntakeRoom::pointAt(domain::Tooth tooth, QPoint where) {
    const auto choices = models::toothChoices(form_.prescription(), tooth);
    if (const auto chosen = desk().dialogs.choose(choices, where))
        form_.show(choices[*chosen].after);
}

}  // namespace desktop
