/// The intake form on screen: a tree of fields, typed into in place.
#pragma once

#include <QStyledItemDelegate>
#include <QTreeView>

#include "apps/desktop/look.h"
#include "apps/desktop/models/prescription_form_model.h"

namespace desktop {

/// Gives each field its editor, and says in its place why a text was refused.
class FormDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    FormDelegate(const Look& look, QObject* parent) : QStyledItemDelegate{parent}, look_{look} {}

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const override;
    void setEditorData(QWidget* editor, const QModelIndex& index) const override;
    void setModelData(QWidget* editor, QAbstractItemModel* model,
                      const QModelIndex& index) const override;

private:
    const Look& look_;
};

/// Enter types into a field, opens a group, or adds to a list.
class FormView : public QTreeView {
    Q_OBJECT

public:
    FormView(models::PrescriptionFormModel& form, const Look& look);

    /// Adds where the person stands and begins with the first field of what was added.
    void addHere();
    /// Takes the item away or leaves the field open.
    void takeOutHere();
    bool mayTypeHere() const;
    bool mayAddHere() const;
    bool mayTakeOutHere() const;

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void enterField(const QModelIndex& index);

    models::PrescriptionFormModel& form_;
};

}  // namespace desktop
