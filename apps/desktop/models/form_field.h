/// A prescription as a form: every field with its label, its value and what may be done to it,
/// made from the one description of the fields (domain/prescription/fields.h).
#pragma once

#include <memory>
#include <span>
#include <string>
#include <vector>

#include "domain/base/result.h"
#include "domain/prescription/prescription.h"

namespace models {

/// What kind of editor a field wants.
enum class FieldKind : std::uint8_t {
    Group,      ///< holds fields and is always there
    OpenGroup,  ///< holds fields once it is added
    List,       ///< holds items, which are groups; items can be added
    Text,
    Word,      ///< one of the allowed words
    Words,     ///< several of the allowed words, with commas
    Tooth,     ///< in the notation of the prescription
    Teeth,     ///< several, with commas
    Date,      ///< "2026-11-25"
    Quantity,  ///< a decimal number; its unit may be left out
};

/// One field, item or group of the form. `fields` are those inside it, in order.
struct FormField {
    std::string label;                 ///< "guide plates", "guide plate 1", "seat prepared"
    std::string value;                 ///< as it is typed; of a group, what is given in it
    std::string expected;              ///< what may be typed: "a tooth of the upper arch, as 16"
    std::vector<std::string> allowed;  ///< the words of a Word or Words
    FieldKind kind{};
    bool given{};         ///< whether it has a value or anything inside it has
    bool mayClear{};      ///< it may be left open
    bool mayRemove{};     ///< it is an item of a list
    std::string trouble;  ///< why the last text was refused; empty once it is corrected
    std::vector<std::unique_ptr<FormField>> fields;
    FormField* within{nullptr};
    int row{};  ///< among the fields of `within`

    bool mayAdd() const noexcept {
        return kind == FieldKind::List || (kind == FieldKind::OpenGroup && !given);
    }
    /// It must be given and is not.
    bool needed() const noexcept { return mayWrite() && !mayClear && !given; }
    bool mayWrite() const noexcept {
        return kind != FieldKind::Group && kind != FieldKind::OpenGroup && kind != FieldKind::List;
    }
};

/// The whole form; its root is a group without a label.
std::unique_ptr<FormField> formOf(const domain::Prescription& prescription);

/// One change of one field.
struct FormEdit {
    enum class Act : std::uint8_t {
        Write,   ///< the value from a text; a blank text clears
        Clear,   ///< leave it open, or empty a list
        Add,     ///< an item to a list, or what an open group holds
        Remove,  ///< this item from its list
    };
    Act act{};
    std::string text{};
};

/// The prescription after an edit of the field at `path` (the rows from the root down). A refusal
/// is ErrorCode::Unusable and says what was expected and what was given.
domain::Result<domain::Prescription> edited(domain::Prescription prescription,
                                            std::span<const int> path, const FormEdit& edit);

}  // namespace models
