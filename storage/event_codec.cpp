#include "storage/event_codec.h"

#include <QUtf8StringView>
#include <QtEndian>
#include <stdexcept>

#include "storage/files/field_kinds.h"
#include "storage/files/prescription_file.h"

namespace storage {
namespace {

using namespace domain;

constexpr std::int64_t kFormat = 1;

/// The fields of every part an event holds, once for both directions.
void fields(auto& coder, Is<SealedText> auto& part) {
    coder.field(part.code);
    coder.field(part.digest);
}
void fields(auto& coder, Is<Parties> auto& part) {
    coder.field(part.patient);
    coder.field(part.prescriber);
    coder.field(part.identity);
}
void fields(auto& coder, Is<Finding> auto& part) {
    coder.field(part.rule);
    coder.field(part.severity);
    coder.field(part.tooth);
    coder.field(part.found);
    coder.field(part.requirement);
    coder.field(part.question);
    coder.field(part.source);
}
void fields(auto& coder, Is<Revision> auto& part) {
    coder.field(part.parties);
    coder.field(part.findings);
    coder.field(part.prescription);
}
void fields(auto& coder, Is<Received> auto& part) { coder.field(part.revision); }
void fields(auto& coder, Is<Accepted> auto& part) {
    coder.field(part.route);
    coder.field(part.cautions);
    coder.field(part.reason);
}
void fields(auto& coder, Is<StageStarted> auto& part) { coder.field(part.stage); }
void fields(auto& coder, Is<StageDone> auto& part) { coder.field(part.stage); }
void fields(auto& coder, Is<Flagged> auto& part) {
    coder.field(part.reason);
    coder.field(part.note);
}
void fields(auto& coder, Is<Answered> auto& part) {
    coder.field(part.words);
    coder.field(part.revision);
}

class Writer {
public:
    void field(const std::string& text) {
        length(text.size());
        bytes_.append(text.data(), static_cast<qsizetype>(text.size()));
    }
    void field(std::int64_t whole) {
        length(sizeof whole);
        bigEndian(whole);
    }
    void field(const Tooth& tooth) { field(tooth.text()); }
    void field(const Prescription& prescription) { field(writePrescription(prescription)); }
    template <CodedEnum E>
    void field(const E& coded) {
        field(std::string{codeOf(coded)});
    }
    template <typename T>
    void field(const std::optional<T>& open) {
        field(std::int64_t{open ? 1 : 0});
        if (open) field(*open);
    }
    template <typename T>
    void field(const std::vector<T>& list) {
        field(static_cast<std::int64_t>(list.size()));
        for (const T& item : list) field(item);
    }
    template <typename Part>
    void field(const Part& part) {
        fields(*this, part);
    }

    QByteArray bytes() && { return std::move(bytes_); }

private:
    template <typename Whole>
    void bigEndian(Whole whole) {
        const Whole ordered = qToBigEndian(whole);
        bytes_.append(reinterpret_cast<const char*>(&ordered), sizeof ordered);
    }
    void length(std::size_t count) { bigEndian(static_cast<std::uint32_t>(count)); }

    QByteArray bytes_;
};

/// What stopped the reading; thrown and caught within this file.
struct Malformed : std::runtime_error {
    using std::runtime_error::runtime_error;
};

class Reader {
public:
    explicit Reader(QByteArrayView bytes) : rest_{bytes} {}

    void field(std::string& text) {
        const QByteArrayView taken = counted();
        if (!QUtf8StringView{taken.data(), taken.size()}.isValidUtf8())
            throw Malformed{"a text is not UTF-8"};
        text.assign(taken.data(), static_cast<std::size_t>(taken.size()));
    }
    void field(std::int64_t& whole) {
        const QByteArrayView taken = counted();
        if (taken.size() != sizeof whole)
            throw Malformed{"a whole number has " + std::to_string(taken.size()) +
                            " bytes instead of 8"};
        whole = qFromBigEndian<std::int64_t>(taken.data());
    }
    void field(Tooth& tooth) { tooth = always<Tooth>(text(), "a tooth of ISO 3950"); }
    void field(Prescription& prescription) {
        auto read = readPrescription(text(), "the prescription of an event");
        if (!read) throw Malformed{read.error().message};
        prescription = *std::move(read);
    }
    template <CodedEnum E>
    void field(E& coded) {
        const std::string word = text();
        const auto read = parseCode<E>(word);
        if (!read) throw Malformed{'"' + word + "\" is none of " + allWords<E>()};
        coded = *read;
    }
    template <typename T>
    void field(std::optional<T>& open) {
        const std::int64_t count = whole();
        if (count != 0 && count != 1)
            throw Malformed{"what may be absent is there " + std::to_string(count) + " times"};
        open.reset();
        if (count == 0) return;
        open.emplace(blank<T>());
        field(*open);
    }
    template <typename T>
    void field(std::vector<T>& list) {
        const std::int64_t count = whole();
        // Every item takes at least the four bytes of a length, so no count can exhaust memory.
        if (count < 0 || count > rest_.size() / kLength)
            throw Malformed{"a list of " + std::to_string(count) + " items does not fit"};
        list.clear();
        for (std::int64_t i = 0; i < count; ++i) field(list.emplace_back());
    }
    template <typename Part>
    void field(Part& part) {
        fields(*this, part);
    }

    std::int64_t whole() {
        std::int64_t value{};
        field(value);
        return value;
    }
    std::string text() {
        std::string value;
        field(value);
        return value;
    }
    /// A value of a type that is always valid.
    template <typename T>
    static T always(const std::string& written, std::string_view expected) {
        const auto read = T::parse(written);
        if (!read) throw Malformed{'"' + written + "\" is not " + std::string{expected}};
        return *read;
    }

    void end() const {
        if (!rest_.isEmpty())
            throw Malformed{std::to_string(rest_.size()) + " bytes are left over"};
    }

private:
    static constexpr qsizetype kLength = sizeof(std::uint32_t);

    QByteArrayView take(qsizetype count) {
        if (count > rest_.size())
            throw Malformed{"the bytes end early: " + std::to_string(count) + " expected, " +
                            std::to_string(rest_.size()) + " left"};
        const QByteArrayView taken = rest_.first(count);
        rest_ = rest_.sliced(count);
        return taken;
    }
    QByteArrayView counted() { return take(qFromBigEndian<std::uint32_t>(take(kLength).data())); }

    QByteArrayView rest_;
};

Happening blankOf(EventKind kind) {
    switch (kind) {
        case EventKind::Received:
            return Received{};
        case EventKind::Accepted:
            return Accepted{};
        case EventKind::StageStarted:
            return StageStarted{};
        case EventKind::StageDone:
            return StageDone{};
        case EventKind::Flagged:
            return Flagged{};
        case EventKind::Answered:
            return Answered{};
    }
    return {};
}

Event read(const QByteArray& bytes) {
    Reader reader{bytes};
    if (const std::int64_t format = reader.whole(); format != kFormat)
        throw Malformed{"format " + std::to_string(format) + ", and only " +
                        std::to_string(kFormat) + " is known"};
    EventKind kind{};
    reader.field(kind);
    const auto order = Reader::always<OrderNumber>(reader.text(), "an order number");
    const std::int64_t version = reader.whole();
    const Instant at = Instant::ofMicroseconds(reader.whole());
    const auto person = Reader::always<PersonCode>(reader.text(), "the code of a person");
    Event event{.order = order,
                .version = version,
                .at = at,
                .person = person,
                .key = reader.text(),
                .what = blankOf(kind)};
    std::visit([&](auto& what) { reader.field(what); }, event.what);
    reader.end();
    // A prescription can be written in more than one way; only the canonical one is ours.
    if (encodeEvent(event) != bytes) throw Malformed{"they are not in canonical form"};
    return event;
}

}  // namespace

QByteArray encodeEvent(const Event& event) {
    Writer writer;
    writer.field(kFormat);
    writer.field(kindOf(event));
    writer.field(event.order.text());
    writer.field(event.version);
    writer.field(event.at.microseconds());
    writer.field(event.person.text());
    writer.field(event.key);
    std::visit([&](const auto& what) { writer.field(what); }, event.what);
    return std::move(writer).bytes();
}

Result<Event> decodeEvent(const QByteArray& bytes) try {
    return read(bytes);
} catch (const Malformed& malformed) {
    return Error{ErrorCode::Unusable,
                 std::string{"the bytes of an event cannot be read: "} + malformed.what()};
}

}  // namespace storage
