/// How the single values of a prescription are typed and shown in the form.
#pragma once

#include <algorithm>
#include <cctype>
#include <string>
#include <vector>

#include "apps/desktop/models/form_field.h"
#include "domain/base/date.h"
#include "domain/base/lab_colour.h"
#include "domain/base/quantity.h"

namespace models {

/// How teeth are written, and which arch the appliance stands in.
struct Writing {
    domain::Notation notation{};
    domain::Arch arch{};
};

inline Writing writingOf(const domain::Prescription& prescription) {
    return {notationOf(prescription), prescription.arch};
}

inline std::string trimmed(std::string_view text) {
    constexpr std::string_view kBlank = " \t\r\n";
    const auto first = text.find_first_not_of(kBlank);
    if (first == std::string_view::npos) return {};
    return std::string{text.substr(first, text.find_last_not_of(kBlank) - first + 1)};
}

/// ASCII capitals made small.
inline std::string lowered(std::string text) {
    std::ranges::transform(text, text.begin(), [](char letter) {
        return static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
    });
    return text;
}

/// One value: what it is, what may be typed for it, how it is shown and read. Specialised for each
/// type a field can have.
template <typename T>
struct Value;

template <>
struct Value<std::string> {
    static constexpr FieldKind kKind = FieldKind::Text;
    static constexpr std::size_t kLongest = 4000;  ///< bytes, as in the prescription file
    static std::vector<std::string> allowed() { return {}; }
    static std::string expected(Writing) { return "a text, not empty, of one line"; }
    static std::string shown(const std::string& text, Writing) { return text; }
    static std::optional<std::string> read(const std::string& text, Writing) {
        const bool control = std::ranges::any_of(
            text, [](char letter) { return static_cast<unsigned char>(letter) < 0x20; });
        if (text.empty() || text.size() > kLongest || control) return {};
        return text;
    }
};

template <>
struct Value<bool> {
    static constexpr FieldKind kKind = FieldKind::Word;
    static std::vector<std::string> allowed() { return {"yes", "no"}; }
    static std::string expected(Writing) { return "yes or no"; }
    static std::string shown(bool truth, Writing) { return truth ? "yes" : "no"; }
    static std::optional<bool> read(const std::string& text, Writing) {
        if (text == "yes") return true;
        if (text == "no") return false;
        return {};
    }
};

template <domain::CodedEnum E>
struct Value<E> {
    static constexpr FieldKind kKind = FieldKind::Word;
    static std::vector<std::string> allowed() {
        std::vector<std::string> words;
        words.reserve(domain::enumCodes<E>.size());
        for (const auto& code : domain::enumCodes<E>) words.push_back(domain::spoken(code.word));
        return words;
    }
    static std::string expected(Writing) {
        std::string words;
        for (const auto& code : domain::enumCodes<E>)
            words += (words.empty() ? "one of: " : ", ") + domain::spoken(code.word);
        return words;
    }
    static std::string shown(E value, Writing) { return domain::wordsOf(value); }
    /// Takes the word as it is stored or as it is spoken, in capitals or not.
    static std::optional<E> read(const std::string& text, Writing) {
        for (const auto& code : domain::enumCodes<E>)
            if (lowered(text) == code.word || lowered(text) == lowered(domain::spoken(code.word)))
                return code.value;
        return {};
    }
};

template <>
struct Value<domain::Tooth> {
    static constexpr FieldKind kKind = FieldKind::Tooth;
    static std::vector<std::string> allowed() { return {}; }
    static std::string expected(Writing writing) {
        constexpr int kFirstMolarPosition = 2;
        return "a tooth of the " + domain::wordsOf(writing.arch) + " arch, as " +
               nameOf(domain::Tooth::at(writing.arch, kFirstMolarPosition), writing.notation);
    }
    static std::string shown(domain::Tooth tooth, Writing writing) {
        return nameOf(tooth, writing.notation);
    }
    static std::optional<domain::Tooth> read(const std::string& text, Writing writing) {
        const auto tooth = domain::parseTooth(text, writing.notation);
        if (!tooth || tooth->arch() != writing.arch) return {};
        return tooth;
    }
};

template <>
struct Value<domain::Date> {
    static constexpr FieldKind kKind = FieldKind::Date;
    static std::vector<std::string> allowed() { return {}; }
    static std::string expected(Writing) { return "a day that exists, as 2026-11-25"; }
    static std::string shown(domain::Date date, Writing) { return date.text(); }
    static std::optional<domain::Date> read(const std::string& text, Writing) {
        return domain::Date::parse(text);
    }
};

template <>
struct Value<domain::LabColour> {
    static constexpr FieldKind kKind = FieldKind::Text;
    static std::vector<std::string> allowed() { return {}; }
    static std::string expected(Writing) {
        return "L*, a* and b* with one space between, as " + std::string{domain::kLabExample};
    }
    static std::string shown(domain::LabColour colour, Writing) { return colour.text(); }
    static std::optional<domain::LabColour> read(const std::string& text, Writing) {
        return domain::LabColour::parse(text);
    }
};

template <typename Unit>
struct Value<domain::Quantity<Unit>> {
    static constexpr FieldKind kKind = FieldKind::Quantity;
    static std::vector<std::string> allowed() { return {}; }
    static std::string expected(Writing) {
        return "an amount from 0 to " + domain::decimalText(Unit::kMost, Unit::kPerWritten) +
               ", as " + std::string{Unit::kExample};
    }
    static std::string shown(domain::Quantity<Unit> quantity, Writing) {
        return domain::text(quantity);
    }
    /// Takes a decimal comma as well, and the field's own unit where none is typed.
    static std::optional<domain::Quantity<Unit>> read(std::string text, Writing) {
        std::ranges::replace(text, ',', '.');
        const auto unit = text.find_first_not_of("0123456789.");
        const std::string number = text.substr(0, unit);
        const std::string sign =
            unit == std::string::npos ? std::string{Unit::kSign} : trimmed(text.substr(unit));
        return domain::parseQuantity<Unit>(number + ' ' + sign);
    }
};

}  // namespace models
