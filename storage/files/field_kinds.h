/// The kinds of field a prescription part can have, as the visitors of its description tell them
/// apart: open (optional), listed (vector), grouped, or a value that must be given.
#pragma once

#include <optional>
#include <vector>

#include "domain/prescription/fields.h"

namespace storage {

template <typename T>
struct ElementOf {};
template <typename T>
struct ElementOf<std::optional<T>> {
    using Open = T;
};
template <typename T>
struct ElementOf<std::vector<T>> {
    using Listed = T;
};

template <typename T>
concept OpenField = requires { typename ElementOf<T>::Open; };
template <typename T>
concept ListedField = requires { typename ElementOf<T>::Listed; };

/// Whether a file may leave the field out.
template <typename T>
inline constexpr bool kMayBeLeftOut =
    OpenField<T> || ListedField<T> || domain::FieldGroup<T> || domain::Is<T, domain::Dentition>;

/// Something to read into: the types that are always valid have no empty value of their own.
template <typename T>
T blank() {
    return T{};
}
template <>
inline domain::Tooth blank<domain::Tooth>() {
    return domain::Tooth::at(domain::Arch::Upper, 0);
}
template <>
inline domain::Date blank<domain::Date>() {
    return domain::Date::ofDays(0);
}

/// The first field of every file, before those of the prescription.
inline constexpr std::string_view kFormatField = "format";

}  // namespace storage
