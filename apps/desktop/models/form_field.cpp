#include "apps/desktop/models/form_field.h"

#include "apps/desktop/models/field_values.h"
#include "domain/prescription/fields.h"

namespace models {
namespace {

using domain::Dentition;
using domain::ToothState;

template <typename T>
concept SingleValue = requires { Value<T>::kKind; };

/// "guide plates" -> "guide plate": what one item of a list is called.
std::string itemOf(std::string list) {
    if (list.ends_with('s')) list.pop_back();
    return list;
}

std::string joined(const std::vector<std::string>& words) {
    std::string list;
    for (const std::string& word : words) list += (list.empty() ? "" : ", ") + word;
    return list;
}

template <typename T>
FieldKind kindOfSeveral() {
    return Value<T>::kKind == FieldKind::Tooth ? FieldKind::Teeth : FieldKind::Words;
}

template <typename T>
std::string expectedOfSeveral(Writing writing) {
    if (Value<T>::kKind != FieldKind::Tooth)
        return "with commas, each once, " + Value<T>::expected(writing);
    constexpr int kSecondPremolar = 3;
    const auto name = [&](int position) {
        return nameOf(domain::Tooth::at(writing.arch, position), writing.notation);
    };
    return "teeth of the " + domain::wordsOf(writing.arch) + " arch, each once, with commas, as " +
           name(kSecondPremolar) + ", " + name(kSecondPremolar + 1);
}

template <typename T>
std::string shownSeveral(const std::vector<T>& values, Writing writing) {
    std::vector<std::string> words;
    words.reserve(values.size());
    for (const T& value : values) words.push_back(Value<T>::shown(value, writing));
    return joined(words);
}

/// nullopt if one of them cannot be read or stands there twice.
template <typename T>
std::optional<std::vector<T>> readSeveral(const std::string& text, Writing writing) {
    std::vector<T> values;
    for (std::size_t begin = 0; begin <= text.size();) {
        const std::size_t end = std::min(text.find(',', begin), text.size());
        const auto value = Value<T>::read(trimmed(text.substr(begin, end - begin)), writing);
        if (!value || std::ranges::count(values, *value) != 0) return {};
        values.push_back(*value);
        begin = end + 1;
    }
    return values;
}

/// The teeth charted in a state other than the one a tooth nobody names has.
std::vector<domain::Tooth> charted(const Dentition& dentition, ToothState state,
                                   domain::Arch arch) {
    std::vector<domain::Tooth> teeth;
    for (const domain::Tooth tooth : dentition.all(state).teeth())
        if (tooth.arch() == arch && Dentition::unnamed(tooth) != state) teeth.push_back(tooth);
    return teeth;
}

/// Visits the fields of one part and puts a form field for each into a group.
class FormBuilder {
public:
    FormBuilder(FormField& group, Writing writing) : group_{group}, writing_{writing} {}

    template <typename T>
    void field(std::string_view word, const T& value) {
        fill(add(domain::spoken(word)), value);
    }

    void chart(const Dentition& dentition) {
        for (const auto& code : domain::enumCodes<ToothState>) {
            FormField& field = add(domain::spoken(code.word));
            fill(field, charted(dentition, code.value, writing_.arch));
        }
    }

    /// Says of the group what is given in it.
    void summarise() {
        std::vector<std::string> words;
        for (const auto& field : group_.fields) {
            if (!field->given) continue;
            group_.given = true;
            if (field->mayWrite())
                words.push_back(field->allowed.size() == 2 ? field->label + ": " + field->value
                                                           : field->value);
        }
        group_.value = joined(words);
    }

private:
    FormField& add(std::string label) {
        auto field = std::make_unique<FormField>();
        field->label = std::move(label);
        field->within = &group_;
        field->row = static_cast<int>(group_.fields.size());
        group_.fields.push_back(std::move(field));
        return *group_.fields.back();
    }

    template <SingleValue T>
    void describeValue(FormField& field) {
        field.kind = Value<T>::kKind;
        field.allowed = Value<T>::allowed();
        field.expected = Value<T>::expected(writing_);
    }

    template <SingleValue T>
    void fill(FormField& field, const T& value) {
        describeValue<T>(field);
        field.value = Value<T>::shown(value, writing_);
        field.given = !field.value.empty();
    }

    template <typename T>
    void fill(FormField& field, const std::optional<T>& value) {
        if constexpr (SingleValue<T>) {
            describeValue<T>(field);
            if (value) fill(field, *value);
        } else {
            field.kind = FieldKind::OpenGroup;
            if (value) fillPart(field, *value);
            field.given = value.has_value();
        }
        field.mayClear = true;
    }

    template <typename T>
    void fill(FormField& field, const std::vector<T>& values) {
        field.mayClear = true;
        field.given = !values.empty();
        if constexpr (SingleValue<T>) {
            field.kind = kindOfSeveral<T>();
            field.allowed = Value<T>::allowed();
            field.expected = expectedOfSeveral<T>(writing_);
            field.value = shownSeveral(values, writing_);
        } else {
            field.kind = FieldKind::List;
            field.value = values.empty() ? "" : std::to_string(values.size());
            FormBuilder items{field, writing_};
            for (std::size_t i = 0; i < values.size(); ++i) {
                FormField& item = items.add(itemOf(field.label) + ' ' + std::to_string(i + 1));
                items.fill(item, values[i]);
                item.mayRemove = true;
            }
        }
    }

    template <typename Part>
        requires(!SingleValue<Part>)
    void fill(FormField& field, const Part& part) {
        field.kind = FieldKind::Group;
        field.mayClear = domain::FieldGroup<Part> || domain::Is<Part, Dentition>;
        fillPart(field, part);
    }

    template <typename Part>
    void fillPart(FormField& field, const Part& part) {
        FormBuilder inner{field, writing_};
        describe(inner, part);
        inner.summarise();
    }

    FormField& group_;
    Writing writing_;
};

/// Gives every tooth of a new part a place in the right arch: there is no tooth without one.
class TeethInArch {
public:
    explicit TeethInArch(domain::Arch arch) : arch_{arch} {}
    template <typename T>
    void field(std::string_view, T& value) {
        constexpr int kCentralIncisor = 7;
        if constexpr (std::same_as<T, domain::Tooth>)
            value = domain::Tooth::at(arch_, kCentralIncisor);
    }

private:
    domain::Arch arch_;
};

/// Visits the fields of one part, finds the one at a path, and changes it.
class FormEditor {
public:
    FormEditor(std::span<const int> path, const FormEdit& edit, Writing writing)
        : path_{path}, edit_{edit}, writing_{writing} {}

    /// What was expected, if the edit could not be made.
    const std::optional<std::string>& refusal() const { return refusal_; }

    template <typename T>
    void field(std::string_view, T& value) {
        if (next_++ == path_.front()) change(value, path_.subspan(1));
    }

    void chart(Dentition& dentition) {
        for (const auto& code : domain::enumCodes<ToothState>) {
            if (next_++ != path_.front()) continue;
            auto teeth = charted(dentition, code.value, writing_.arch);
            const auto before = teeth;
            change(teeth, {});
            if (refusal_) return;
            for (const domain::Tooth tooth : before)
                dentition.set(tooth, Dentition::unnamed(tooth));
            for (const domain::Tooth tooth : teeth) dentition.set(tooth, code.value);
        }
    }

private:
    using Act = FormEdit::Act;

    void refuse(std::string expected) { refusal_ = std::move(expected); }
    bool clears() const {
        return edit_.act == Act::Clear || (edit_.act == Act::Write && trimmed(edit_.text).empty());
    }

    template <SingleValue T>
    void change(T& value, std::span<const int>) {
        const auto read =
            edit_.act == Act::Write ? Value<T>::read(trimmed(edit_.text), writing_) : std::nullopt;
        if (!read) return refuse(Value<T>::expected(writing_));
        value = *read;
    }

    template <typename T>
    void change(std::optional<T>& value, std::span<const int> rest) {
        if (rest.empty() && clears()) {
            value.reset();
        } else if constexpr (SingleValue<T>) {
            T read = value ? *value : blank<T>();
            change(read, rest);
            if (!refusal_) value = std::move(read);
        } else if (rest.empty()) {
            if (edit_.act != Act::Add || value) return refuse("fields inside it");
            value = newPart<T>();
        } else if (value) {
            changeInside(*value, rest);
        }
    }

    template <typename T>
    void change(std::vector<T>& values, std::span<const int> rest) {
        if (rest.empty() && clears()) {
            values.clear();
        } else if constexpr (SingleValue<T>) {
            auto read =
                edit_.act == Act::Write ? readSeveral<T>(edit_.text, writing_) : std::nullopt;
            if (!read) return refuse(expectedOfSeveral<T>(writing_));
            values = *std::move(read);
        } else if (rest.empty()) {
            if (edit_.act != Act::Add) return refuse("items inside it");
            values.push_back(newPart<T>());
        } else if (rest.size() == 1 && edit_.act == Act::Remove) {
            values.erase(values.begin() + rest.front());
        } else {
            change(values[static_cast<std::size_t>(rest.front())], rest.subspan(1));
        }
    }

    template <typename Part>
        requires(!SingleValue<Part>)
    void change(Part& part, std::span<const int> rest) {
        if (!rest.empty()) return changeInside(part, rest);
        if (edit_.act != Act::Clear) return refuse("fields inside it");
        part = Part{};
    }

    template <typename Part>
    void changeInside(Part& part, std::span<const int> rest) {
        FormEditor inner{rest, edit_, writing_};
        describe(inner, part);
        refusal_ = inner.refusal_;
    }

    /// Any value of the type: it is overwritten before anyone sees it.
    template <typename T>
    T blank() const {
        if constexpr (std::same_as<T, domain::Date>)
            return domain::Date::ofDays(0);
        else
            return T{};
    }

    template <typename Part>
    Part newPart() const {
        Part part{};
        TeethInArch teeth{writing_.arch};
        describe(teeth, part);
        return part;
    }

    std::span<const int> path_;
    const FormEdit& edit_;
    Writing writing_;
    int next_{0};
    std::optional<std::string> refusal_;
};

}  // namespace

std::unique_ptr<FormField> formOf(const domain::Prescription& prescription) {
    auto root = std::make_unique<FormField>();
    root->kind = FieldKind::Group;
    FormBuilder builder{*root, writingOf(prescription)};
    describe(builder, prescription);
    return root;
}

domain::Result<domain::Prescription> edited(domain::Prescription prescription,
                                            std::span<const int> path, const FormEdit& edit) {
    FormEditor editor{path, edit, writingOf(prescription)};
    describe(editor, prescription);
    if (editor.refusal())
        return domain::Error{domain::ErrorCode::Unusable,
                             "expected " + *editor.refusal() + "; given: " +
                                 (trimmed(edit.text).empty() ? "nothing" : edit.text)};
    return prescription;
}

}  // namespace models
