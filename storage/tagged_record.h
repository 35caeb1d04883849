/// Format 4 of stored parts: each field under its word, so that neither the order of a struct nor
/// that of a form matters, and a field that is added later changes no bytes written before.
///
/// A part is the pieces word, value, word, value ... in the order of the words' bytes. What is
/// absent or empty is left out. A list is a piece for each item; one of several kinds is a part
/// with one field, under the word of its kind; a chart of teeth has a list for each state.
#pragma once

#include <algorithm>
#include <vector>

#include "storage/byte_source.h"
#include "storage/event_fields.h"
#include "storage/files/field_kinds.h"
#include "storage/one_of.h"
#include "storage/stored_values.h"

namespace storage {

/// Calls the description of a part: the ledger's own, or that of the prescription, whose words are
/// the keys of its file and never change.
template <typename Coder, typename Part>
void walkPart(Coder& coder, Part& part) {
    if constexpr (requires { fields(coder, part); })
        fields(coder, part);
    else
        describe(coder, part);
}

class TaggedWriter {
public:
    template <typename T>
    void field(std::string_view word, const T& value) {
        QByteArray bytes = bytesOf(value);
        if constexpr (kMayBeLeftOut<T>)
            if (bytes.isNull()) return;
        fields_.push_back({word, std::move(bytes)});
    }
    template <typename T>
        requires kMayBeLeftOut<T>
    void added(std::string_view word, const T& value) {
        field(word, value);
    }

    /// A tooth is named only where its state is not what an unnamed tooth has.
    void chart(const domain::Dentition& dentition) {
        for (const auto& code : domain::enumCodes<domain::ToothState>) {
            std::vector<domain::Tooth> named;
            for (const domain::Tooth tooth : dentition.all(code.value).teeth())
                if (domain::Dentition::unnamed(tooth) != code.value) named.push_back(tooth);
            field(code.word, named);
        }
    }

    /// Null when nothing was written.
    QByteArray take() {
        std::ranges::sort(fields_, {}, &Field::word);
        QByteArray bytes;
        for (const Field& field : fields_) {
            appendPiece(bytes, {field.word.data(), static_cast<qsizetype>(field.word.size())});
            appendPiece(bytes, field.value);
        }
        return bytes;
    }

private:
    struct Field {
        std::string_view word;
        QByteArray value;
    };

    template <StoredValue T>
    static QByteArray bytesOf(const T& value) {
        return storedBytes(value);
    }
    template <typename T>
    static QByteArray bytesOf(const std::optional<T>& open) {
        if (!open) return {};
        // A part without any field is there all the same.
        QByteArray bytes = bytesOf(*open);
        return bytes.isNull() ? QByteArray{""} : bytes;
    }
    template <typename T>
    static QByteArray bytesOf(const std::vector<T>& list) {
        QByteArray bytes;
        for (const T& item : list) appendPiece(bytes, bytesOf(item));
        return bytes;
    }
    template <OneOf Variant>
    static QByteArray bytesOf(const Variant& variant) {
        TaggedWriter writer;
        std::visit([&](const auto& each) { writer.field(codeOf(kindIn(variant)), each); }, variant);
        return writer.take();
    }
    template <typename Part>
        requires(std::is_class_v<Part> && !StoredValue<Part> && !OneOf<Part>)
    static QByteArray bytesOf(const Part& part) {
        TaggedWriter writer;
        walkPart(writer, part);
        return writer.take();
    }

    std::vector<Field> fields_;
};

class TaggedReader {
public:
    explicit TaggedReader(QByteArrayView bytes) {
        ByteSource source{bytes};
        while (!source.isAtEnd()) {
            const QByteArrayView word = source.piece();
            const std::string_view text{word.data(), static_cast<std::size_t>(word.size())};
            if (!fields_.empty() && fields_.back().word >= text)
                throw Malformed{"the field \"" + std::string{text} + "\" is out of order"};
            fields_.push_back({text, source.piece(), false});
        }
    }

    template <typename T>
    void field(std::string_view word, T& value) {
        const auto found = std::ranges::lower_bound(fields_, word, {}, &Field::word);
        const bool isThere = found != fields_.end() && found->word == word;
        if (isThere) {
            found->used = true;
            if (kMayBeLeftOut<T> && !OpenField<T> && found->value.isEmpty())
                throw Malformed{"the empty field \"" + std::string{word} + "\" is left out"};
            within(word, [&] { read(found->value, value); });
        } else if constexpr (kMayBeLeftOut<T>) {
            value = T{};
        } else {
            throw Malformed{"the field \"" + std::string{word} + "\" is missing"};
        }
    }
    template <typename T>
        requires kMayBeLeftOut<T>
    void added(std::string_view word, T& value) {
        field(word, value);
    }

    void chart(domain::Dentition& dentition) {
        dentition = {};
        for (const auto& code : domain::enumCodes<domain::ToothState>) {
            std::vector<domain::Tooth> named;
            field(code.word, named);
            for (std::size_t at = 0; at < named.size(); ++at) {
                if (domain::Dentition::unnamed(named[at]) == code.value ||
                    dentition.of(named[at]) != domain::Dentition::unnamed(named[at]) ||
                    (at > 0 && named[at].index() <= named[at - 1].index()))
                    throw Malformed{"tooth " + named[at].text() + " is charted needlessly"};
                dentition.set(named[at], code.value);
            }
        }
    }

    /// Throws where a field was not asked for.
    void end() const {
        for (const Field& field : fields_)
            if (!field.used)
                throw Malformed{"the field \"" + std::string{field.word} + "\" is not known here"};
    }

    /// Reads one of several kinds: a part with one field.
    template <OneOf Variant>
    static void read(QByteArrayView bytes, Variant& variant) {
        using Kind = typename KindsOf<Variant>::Kind;
        TaggedReader reader{bytes};
        if (reader.fields_.size() != 1) throw Malformed{"one kind was expected"};
        Kind kind{};
        readStored(QByteArrayView{reader.fields_.front().word.data(),
                                  static_cast<qsizetype>(reader.fields_.front().word.size())},
                   kind);
        variant = alternative<Variant>(static_cast<std::size_t>(kind));
        std::visit([&](auto& each) { reader.field(codeOf(kind), each); }, variant);
    }

private:
    struct Field {
        std::string_view word;
        QByteArrayView value;
        bool used;
    };

    /// Names the field something was wrong in.
    template <typename Read>
    static void within(std::string_view word, Read reading) {
        try {
            reading();
        } catch (const Malformed& malformed) {
            throw Malformed{std::string{word} + ": " + malformed.what()};
        }
    }

    template <StoredValue T>
    static void read(QByteArrayView bytes, T& value) {
        readStored(bytes, value);
    }
    template <typename T>
    static void read(QByteArrayView bytes, std::optional<T>& open) {
        open.emplace(blank<T>());
        read(bytes, *open);
    }
    template <typename T>
    static void read(QByteArrayView bytes, std::vector<T>& list) {
        list.clear();
        ByteSource source{bytes};
        while (!source.isAtEnd()) {
            list.push_back(blank<T>());
            read(source.piece(), list.back());
        }
    }
    template <typename Part>
        requires(std::is_class_v<Part> && !StoredValue<Part> && !OneOf<Part>)
    static void read(QByteArrayView bytes, Part& part) {
        TaggedReader reader{bytes};
        walkPart(reader, part);
        reader.end();
    }

    std::vector<Field> fields_;
};

}  // namespace storage
