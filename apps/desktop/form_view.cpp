#include "apps/desktop/form_view.h"

#include <QComboBox>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>
#include <QTimer>

#include "apps/desktop/marks.h"
#include "apps/desktop/row_delegate.h"

namespace desktop {
namespace {

using domain::Colour;
using models::FieldKind;
using Form = models::PrescriptionFormModel;

constexpr int kRowHeight = 30;
constexpr int kPadding = 2 * kStep;
constexpr int kMarkSize = 16;
constexpr int kLabelWidth = 250;

FieldKind kindOf(const QModelIndex& index) {
    return static_cast<FieldKind>(index.data(Form::KindRole).toInt());
}

/// What a field without a value says in quiet ink.
QString invitation(const QModelIndex& index) {
    if (index.data(Form::MayAddRole).toBool()) return QObject::tr("none; Ins adds one");
    if (index.data(Form::NeededRole).toBool()) return QObject::tr("to be given");
    return {};
}

}  // namespace

void FormDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
    const bool chosen = option.state.testFlag(QStyle::State_Selected);
    const QString trouble = index.data(Form::TroubleRole).toString();
    const bool content = index.column() == Form::Content;
    const QString value = index.data().toString();
    painter->save();
    painter->fillRect(option.rect, look_.of(chosen ? Colour::Ground : Colour::Sheet));
    paintRowEdge(*painter, option, look_);
    QRect inner = option.rect.adjusted(content ? kPadding : kStep, 0, -kPadding, 0);
    QString words = content && value.isEmpty() ? invitation(index) : value;
    const bool given = index.data(Form::GivenRole).toBool();
    QColor ink = look_.of(!content || !value.isEmpty()            ? Colour::Ink
                          : index.data(Form::NeededRole).toBool() ? Colour::Ask
                                                                  : Colour::Quiet);
    if (content && !trouble.isEmpty()) {
        const QRectF box(inner.left(), inner.center().y() - kMarkSize / 2.0, kMarkSize, kMarkSize);
        paintMark(*painter, box, models::Mark::Refused, look_);
        inner.setLeft(inner.left() + kMarkSize + kPadding);
        words = trouble;
        ink = look_.of(Colour::Stop);
    } else if (content && kindOf(index) <= FieldKind::List) {
        ink = look_.of(Colour::Quiet);  // a summary of what is inside
    }
    painter->setFont(face(kPlainText, !content && given));
    painter->setPen(ink);
    painter->drawText(inner, Qt::AlignVCenter | Qt::AlignLeft,
                      painter->fontMetrics().elidedText(words, Qt::ElideRight, inner.width()));
    painter->restore();
}

QSize FormDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    return {QStyledItemDelegate::sizeHint(option, index).width(), kRowHeight};
}

QWidget* FormDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                    const QModelIndex& index) const {
    const QString label = index.siblingAtColumn(Form::Label).data().toString();
    const QString expected = index.data(Form::ExpectedRole).toString();
    QWidget* editor{};
    if (kindOf(index) == FieldKind::Word) {
        auto* words = new QComboBox{parent};
        if (index.data(Form::MayClearRole).toBool() || !index.data(Form::GivenRole).toBool())
            words->addItem({});
        words->addItems(index.data(Form::AllowedRole).toStringList());
        editor = words;
    } else {
        auto* line = new QLineEdit{parent};
        line->setPlaceholderText(expected);
        editor = line;
    }
    editor->setAccessibleName(label);
    editor->setAccessibleDescription(expected);
    return editor;
}

void FormDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
    const QString value = index.data(Qt::EditRole).toString();
    if (auto* words = qobject_cast<QComboBox*>(editor))
        words->setCurrentText(value);
    else if (auto* line = qobject_cast<QLineEdit*>(editor))
        line->setText(value);
}

void FormDelegate::setModelData(QWidget* editor, QAbstractItemModel* model,
                                const QModelIndex& index) const {
    QString typed;
    if (auto* words = qobject_cast<QComboBox*>(editor))
        typed = words->currentText();
    else if (auto* line = qobject_cast<QLineEdit*>(editor))
        typed = line->text();
    // Looking into a field that is open and leaving it so is no edit.
    if (typed.isEmpty() && !index.data(Form::GivenRole).toBool()) return;
    model->setData(index, typed);
}

FormView::FormView(models::PrescriptionFormModel& form, const Look& look) : form_{form} {
    setModel(&form_);
    setItemDelegate(new FormDelegate{look, this});
    setAccessibleName(tr("Prescription form"));
    setEditTriggers(DoubleClicked | SelectedClicked | AnyKeyPressed);
    setSelectionBehavior(SelectRows);
    setUniformRowHeights(true);
    setExpandsOnDoubleClick(true);
    setIndentation(5 * kStep);
    header()->setStretchLastSection(true);
    setColumnWidth(Form::Label, kLabelWidth);
    setCurrentIndex(form_.index(0, Form::Content));
}

bool FormView::mayTypeHere() const {
    return form_.flags(currentIndex().siblingAtColumn(Form::Content)) & Qt::ItemIsEditable;
}

bool FormView::mayAddHere() const { return currentIndex().data(Form::MayAddRole).toBool(); }

bool FormView::mayTakeOutHere() const {
    return currentIndex().data(Form::MayClearRole).toBool() ||
           currentIndex().data(Form::MayRemoveRole).toBool();
}

void FormView::addHere() {
    const QModelIndex added = form_.add(currentIndex());
    if (!added.isValid()) return;
    expand(added.parent());
    expand(added);
    const QModelIndex first = form_.index(0, Form::Content, added);
    setCurrentIndex(first);
    scrollTo(first);
    enterField(first);
}

void FormView::takeOutHere() {
    const QModelIndex here = currentIndex();
    if (here.data(Form::MayRemoveRole).toBool())
        form_.remove(here);
    else
        form_.clear(here);
}

void FormView::enterField(const QModelIndex& index) {
    const QModelIndex content = index.siblingAtColumn(Form::Content);
    if (form_.flags(content) & Qt::ItemIsEditable) {
        setCurrentIndex(content);
        edit(content);
        return;
    }
    const QModelIndex label = index.siblingAtColumn(Form::Label);
    if (form_.rowCount(label) == 0)
        addHere();
    else
        setExpanded(label, !isExpanded(label));
}

void FormView::keyPressEvent(QKeyEvent* event) {
    if (state() != EditingState &&
        (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter))
        return enterField(currentIndex());
    QTreeView::keyPressEvent(event);
}

}  // namespace desktop
