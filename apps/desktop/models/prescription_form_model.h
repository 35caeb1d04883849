/// The intake form: a prescription as a tree of fields that can be filled in, cleared and grown.
#pragma once

#include <QAbstractItemModel>

#include "apps/desktop/models/form_field.h"

namespace models {

class PrescriptionFormModel : public QAbstractItemModel {
    Q_OBJECT

public:
    enum Column { Label, Content, ColumnCount };
    enum Role {
        KindRole = Qt::UserRole,  ///< int of a FieldKind
        AllowedRole,              ///< the words a Word or Words may have
        ExpectedRole,             ///< what may be typed
        GivenRole,
        MayClearRole,
        MayAddRole,
        MayRemoveRole,
        NeededRole,   ///< it must be given and is not
        TroubleRole,  ///< why the last text typed here was refused; empty if it was not
    };

    explicit PrescriptionFormModel(QObject* parent = nullptr);

    const domain::Prescription& prescription() const noexcept { return prescription_; }

    /// Shows another state of the prescription; rows that stay keep their place.
    void show(domain::Prescription prescription);

    /// How many fields hold a text that was refused and not corrected yet.
    int troubles() const;
    /// The first field that must be given and is not: a part was added and left unfinished. An
    /// invalid index if there is none.
    QModelIndex firstNeeded() const;

    /// Adds an item to a list, or opens a group; the new item or the group, or an invalid index if
    /// nothing can be added here.
    QModelIndex add(const QModelIndex& index);
    /// Leaves the field open again.
    bool clear(const QModelIndex& index);
    /// Takes an item out of its list.
    bool remove(const QModelIndex& index);

    QModelIndex index(int row, int column, const QModelIndex& parent = {}) const override;
    QModelIndex parent(const QModelIndex& child) const override;
    using QObject::parent;
    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;

signals:
    /// After every change of the prescription, from here or by show().
    void changed();
    /// After a text was refused; the field itself tells why.
    void refused(const QModelIndex& index);

private:
    FormField& fieldAt(const QModelIndex& index) const;
    QModelIndex indexOf(const FormField& field, int column) const;
    bool edit(const QModelIndex& index, const FormEdit& change);
    void become(FormField& shown, FormField& next);

    domain::Prescription prescription_;
    std::unique_ptr<FormField> root_;
};

}  // namespace models
