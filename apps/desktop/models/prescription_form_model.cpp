#include "apps/desktop/models/prescription_form_model.h"

#include <algorithm>

#include "apps/desktop/models/words.h"

namespace models {
namespace {

/// The rows that lead from the root to a field.
std::vector<int> pathTo(const FormField& field) {
    std::vector<int> path;
    for (const FormField* each = &field; each->within != nullptr; each = each->within)
        path.push_back(each->row);
    std::ranges::reverse(path);
    return path;
}

int troublesIn(const FormField& field) {
    int count = field.trouble.empty() ? 0 : 1;
    for (const auto& inner : field.fields) count += troublesIn(*inner);
    return count;
}

const FormField* firstNeededIn(const FormField& field) {
    if (field.needed()) return &field;
    for (const auto& inner : field.fields)
        if (const FormField* found = firstNeededIn(*inner)) return found;
    return nullptr;
}

void forgetTroubles(FormField& field) {
    field.trouble.clear();
    for (const auto& inner : field.fields) forgetTroubles(*inner);
}

QStringList texts(const std::vector<std::string>& words) {
    QStringList list;
    for (const std::string& word : words) list += text(word);
    return list;
}

}  // namespace

PrescriptionFormModel::PrescriptionFormModel(QObject* parent)
    : QAbstractItemModel{parent}, root_{formOf(prescription_)} {}

void PrescriptionFormModel::show(domain::Prescription prescription) {
    prescription_ = std::move(prescription);
    become(*root_, *formOf(prescription_));
    emit changed();
}

int PrescriptionFormModel::troubles() const { return troublesIn(*root_); }

QModelIndex PrescriptionFormModel::firstNeeded() const {
    const FormField* field = firstNeededIn(*root_);
    return field == nullptr ? QModelIndex{} : indexOf(*field, Content);
}

FormField& PrescriptionFormModel::fieldAt(const QModelIndex& index) const {
    return index.isValid() ? *static_cast<FormField*>(index.internalPointer()) : *root_;
}

QModelIndex PrescriptionFormModel::indexOf(const FormField& field, int column) const {
    if (field.within == nullptr) return {};
    return createIndex(field.row, column, &field);
}

QModelIndex PrescriptionFormModel::index(int row, int column, const QModelIndex& parent) const {
    if (!hasIndex(row, column, parent)) return {};
    return createIndex(row, column, fieldAt(parent).fields[static_cast<std::size_t>(row)].get());
}

QModelIndex PrescriptionFormModel::parent(const QModelIndex& child) const {
    if (!child.isValid()) return {};
    return indexOf(*fieldAt(child).within, Label);
}

int PrescriptionFormModel::rowCount(const QModelIndex& parent) const {
    return parent.column() > Label ? 0 : static_cast<int>(fieldAt(parent).fields.size());
}

int PrescriptionFormModel::columnCount(const QModelIndex&) const { return ColumnCount; }

QVariant PrescriptionFormModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const FormField& field = fieldAt(index);
    switch (role) {
        case Qt::DisplayRole:
        case Qt::EditRole:
            return text(index.column() == Label ? field.label : field.value);
        case Qt::ToolTipRole:
        case ExpectedRole:
            return text(field.expected);
        case Qt::AccessibleTextRole:
            return text(index.column() == Label ? field.label
                        : field.trouble.empty() ? field.label + ": " + field.value
                                                : field.label + ": " + field.trouble);
        case KindRole:
            return static_cast<int>(field.kind);
        case AllowedRole:
            return texts(field.allowed);
        case GivenRole:
            return field.given;
        case MayClearRole:
            return field.mayClear && field.given;
        case MayAddRole:
            return field.mayAdd();
        case MayRemoveRole:
            return field.mayRemove;
        case NeededRole:
            return field.needed();
        case TroubleRole:
            return text(field.trouble);
        default:
            return {};
    }
}

QVariant PrescriptionFormModel::headerData(int section, Qt::Orientation orientation,
                                           int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    return section == Label ? QStringLiteral("Field") : QStringLiteral("What the dentist said");
}

Qt::ItemFlags PrescriptionFormModel::flags(const QModelIndex& index) const {
    if (!index.isValid()) return Qt::NoItemFlags;
    const Qt::ItemFlags shown = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
    return index.column() == Content && fieldAt(index).mayWrite() ? shown | Qt::ItemIsEditable
                                                                  : shown;
}

bool PrescriptionFormModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (role != Qt::EditRole || !(flags(index) & Qt::ItemIsEditable)) return false;
    return edit(index, {FormEdit::Act::Write, value.toString().toStdString()});
}

QModelIndex PrescriptionFormModel::add(const QModelIndex& index) {
    if (!index.isValid() || !edit(index, {FormEdit::Act::Add})) return {};
    const FormField& field = fieldAt(index);
    return indexOf(field.kind == FieldKind::List ? *field.fields.back() : field, Label);
}

bool PrescriptionFormModel::clear(const QModelIndex& index) {
    return index.isValid() && fieldAt(index).mayClear && edit(index, {FormEdit::Act::Clear});
}

bool PrescriptionFormModel::remove(const QModelIndex& index) {
    if (!index.isValid() || !fieldAt(index).mayRemove) return false;
    // The items after it move up; a refused text must not be blamed on another item.
    forgetTroubles(*fieldAt(index).within);
    return edit(index, {FormEdit::Act::Remove});
}

bool PrescriptionFormModel::edit(const QModelIndex& index, const FormEdit& change) {
    FormField& field = fieldAt(index);
    auto next = edited(prescription_, pathTo(field), change);
    field.trouble = next ? std::string{} : next.error().message;
    emit dataChanged(indexOf(field, Label), indexOf(field, Content));
    if (!next) {
        emit refused(indexOf(field, Content));
        return false;
    }
    show(*std::move(next));
    return true;
}

/// Makes the tree shown equal to the next one: rows are added and taken away at the end of their
/// group, so every row that stays keeps its index and its place in the view.
void PrescriptionFormModel::become(FormField& shown, FormField& next) {
    const bool keptTrouble = shown.value == next.value && shown.label == next.label;
    shown.label = next.label;
    shown.value = next.value;
    shown.expected = next.expected;
    shown.allowed = next.allowed;
    shown.kind = next.kind;
    shown.given = next.given;
    shown.mayClear = next.mayClear;
    shown.mayRemove = next.mayRemove;
    if (!keptTrouble) shown.trouble.clear();
    const QModelIndex place = indexOf(shown, Label);
    const auto had = static_cast<int>(shown.fields.size());
    const auto has = static_cast<int>(next.fields.size());
    for (int row = 0; row < std::min(had, has); ++row)
        become(*shown.fields[static_cast<std::size_t>(row)],
               *next.fields[static_cast<std::size_t>(row)]);
    if (has < had) {
        beginRemoveRows(place, has, had - 1);
        shown.fields.resize(static_cast<std::size_t>(has));
        endRemoveRows();
    }
    if (has > had) {
        beginInsertRows(place, had, has - 1);
        for (int row = had; row < has; ++row) {
            auto& field = next.fields[static_cast<std::size_t>(row)];
            field->within = &shown;
            shown.fields.push_back(std::move(field));
        }
        endInsertRows();
    }
    if (place.isValid()) emit dataChanged(place, indexOf(shown, Content));
}

}  // namespace models
