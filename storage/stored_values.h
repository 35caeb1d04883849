/// Single values as stored bytes, in every format alike: whole numbers are 8 bytes, most
/// significant first; texts are UTF-8; teeth, codes, numbers and colours are their texts; enums
/// their stable words; days and microseconds count from 1970-01-01, amounts in their small unit.
#pragma once

#include <QByteArray>
#include <QByteArrayView>
#include <string>
#include <type_traits>

#include "domain/base/codes.h"
#include "domain/base/date.h"
#include "domain/base/id.h"
#include "domain/base/lab_colour.h"
#include "domain/base/quantity.h"
#include "domain/teeth/tooth.h"
#include "storage/malformed.h"

namespace storage {

/// Types that are always valid and are stored as the text they are parsed from.
template <typename T>
concept StoredAsText = requires(const T& value) {
    { value.text() } -> std::convertible_to<std::string>;
    T::parse(value.text());
} && !std::same_as<T, domain::Date>;

QByteArray wholeBytes(std::int64_t whole);
/// Throws Malformed unless there are 8 bytes.
std::int64_t wholeIn(QByteArrayView bytes);
/// Throws Malformed where the bytes are not UTF-8.
std::string textIn(QByteArrayView bytes);
QByteArray textBytes(std::string_view text);

inline QByteArray storedBytes(const std::string& text) { return textBytes(text); }
inline QByteArray storedBytes(std::int64_t whole) { return wholeBytes(whole); }
inline QByteArray storedBytes(bool yes) { return wholeBytes(yes ? 1 : 0); }
inline QByteArray storedBytes(domain::Date day) { return wholeBytes(day.days()); }
inline QByteArray storedBytes(domain::Instant at) { return wholeBytes(at.microseconds()); }
template <typename Unit>
QByteArray storedBytes(const domain::Quantity<Unit>& amount) {
    return wholeBytes(amount.count());
}
template <StoredAsText T>
QByteArray storedBytes(const T& value) {
    return textBytes(value.text());
}
template <domain::CodedEnum E>
QByteArray storedBytes(E coded) {
    return textBytes(codeOf(coded));
}

/// What is stored as one value and has no parts.
template <typename T>
concept StoredValue =
    requires(const T& value, QByteArrayView bytes) { storedBytes(value); } && !std::is_pointer_v<T>;

inline void readStored(QByteArrayView bytes, std::string& text) { text = textIn(bytes); }
inline void readStored(QByteArrayView bytes, std::int64_t& whole) { whole = wholeIn(bytes); }
inline void readStored(QByteArrayView bytes, bool& yes) {
    const std::int64_t value = wholeIn(bytes);
    if (value != 0 && value != 1) throw Malformed{"neither yes nor no"};
    yes = value == 1;
}
inline void readStored(QByteArrayView bytes, domain::Instant& at) {
    at = domain::Instant::ofMicroseconds(wholeIn(bytes));
}
inline void readStored(QByteArrayView bytes, domain::Date& day) {
    day = domain::Date::ofDays(wholeIn(bytes));
}
template <typename Unit>
void readStored(QByteArrayView bytes, domain::Quantity<Unit>& amount) {
    amount = domain::Quantity<Unit>::of(wholeIn(bytes));
}

/// What a text that is none of a type should have been, for messages.
template <typename T>
constexpr std::string_view kStoredForm = "a value of its kind";
template <>
inline constexpr std::string_view kStoredForm<domain::Tooth> = "a tooth of ISO 3950";
template <>
inline constexpr std::string_view kStoredForm<domain::OrderNumber> = "an order number";
template <>
inline constexpr std::string_view kStoredForm<domain::ThingCode> = "the code of a thing";
template <>
inline constexpr std::string_view kStoredForm<domain::PersonCode> = "the code of a person";
template <>
inline constexpr std::string_view kStoredForm<domain::LabColour> = "a colour";

/// A value of a type that is always valid; throws Malformed where the text is none, or is another
/// spelling of it.
template <StoredAsText T>
T parsedIn(QByteArrayView bytes) {
    const std::string written = textIn(bytes);
    const auto read = T::parse(written);
    if (!read || read->text() != written)
        throw Malformed{'"' + written + "\" is not " + std::string{kStoredForm<T>}};
    return *read;
}
template <StoredAsText T>
void readStored(QByteArrayView bytes, T& value) {
    value = parsedIn<T>(bytes);
}
template <domain::CodedEnum E>
void readStored(QByteArrayView bytes, E& coded) {
    const std::string word = textIn(bytes);
    const auto read = domain::parseCode<E>(word);
    if (!read) throw Malformed{'"' + word + "\" is none of " + domain::allWords<E>()};
    coded = *read;
}

}  // namespace storage
