/// Reads the parts of formats 1 to 3, which nothing writes any more: the fields without their
/// words, in the order of event_fields.h; lists and what may be absent begin with a count; one of
/// several kinds begins with the word of its kind; a prescription is the text of its file.
#pragma once

#include "storage/byte_source.h"
#include "storage/event_fields.h"
#include "storage/files/field_kinds.h"
#include "storage/files/prescription_file.h"
#include "storage/one_of.h"
#include "storage/stored_values.h"

namespace storage {

class PositionalReader {
public:
    explicit PositionalReader(QByteArrayView bytes) : source_{bytes} {}

    template <typename T>
    void field(std::string_view, T& value) {
        read(value);
    }
    /// Added after these formats.
    template <typename T>
    void added(std::string_view, T& value) {
        value = T{};
    }

    template <StoredValue T>
    void read(T& value) {
        readStored(source_.piece(), value);
    }
    void read(domain::Prescription& prescription) {
        auto read = readPrescription(textIn(source_.piece()), "the prescription of an event");
        if (!read) throw Malformed{read.error().message};
        prescription = *std::move(read);
    }
    template <OneOf Variant>
    void read(Variant& variant) {
        typename KindsOf<Variant>::Kind kind{};
        read(kind);
        variant = alternative<Variant>(static_cast<std::size_t>(kind));
        std::visit([&](auto& each) { read(each); }, variant);
    }
    template <typename T>
    void read(std::optional<T>& open) {
        const std::int64_t count = whole();
        if (count != 0 && count != 1)
            throw Malformed{"what may be absent is there " + std::to_string(count) + " times"};
        open.reset();
        if (count == 0) return;
        open.emplace(blank<T>());
        read(*open);
    }
    template <typename T>
    void read(std::vector<T>& list) {
        const std::int64_t count = whole();
        // Every item takes at least one piece, so no count can exhaust memory.
        if (count < 0 || count > source_.mostPieces())
            throw Malformed{"a list of " + std::to_string(count) + " items does not fit"};
        list.clear();
        for (std::int64_t i = 0; i < count; ++i) {
            list.push_back(blank<T>());
            read(list.back());
        }
    }
    template <typename Part>
        requires(std::is_class_v<Part> && !StoredValue<Part> && !OneOf<Part>)
    void read(Part& part) {
        fields(*this, part);
    }

    std::int64_t whole() {
        std::int64_t value{};
        read(value);
        return value;
    }
    std::string text() { return textIn(source_.piece()); }
    template <typename T>
    T always() {
        return parsedIn<T>(source_.piece());
    }
    void end() const { source_.end(); }

private:
    ByteSource source_;
};

}  // namespace storage
