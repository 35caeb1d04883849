#include "storage/event_codec.h"

#include "storage/positional_reader.h"
#include "storage/tagged_record.h"

namespace storage {
namespace {

using domain::Error;
using domain::ErrorCode;
using domain::Event;
using domain::Happening;
using domain::Instant;
using domain::OrderNumber;
using domain::PersonCode;
using domain::Result;
using domain::SealedText;
using domain::Subject;
using domain::WorkshopEvent;
using domain::WorkshopHappening;

/// Formats of an entry: an order's event, the same with its station, an event of the workshop; and
/// either of them with its fields under their words.
constexpr std::int64_t kOrderFormat = 1;
constexpr std::int64_t kStationFormat = 2;
constexpr std::int64_t kWorkshopFormat = 3;
constexpr std::int64_t kTaggedFormat = 4;

/// What every event of format 4 holds beside what happened.
struct Envelope {
    std::string subject{};
    std::int64_t version{};
    std::int64_t at{};
    std::string person{};
    std::string key{};
    std::optional<std::string> station{};  ///< of an order's event only
    std::optional<std::string> command{};  ///< digest of what was asked
};

void fields(auto& coder, domain::Is<Envelope> auto& part) {
    coder.field("subject", part.subject);
    coder.field("version", part.version);
    coder.field("at", part.at);
    coder.field("person", part.person);
    coder.field("key", part.key);
    coder.field("station", part.station);
    coder.field("command", part.command);
}

/// Gathers the sealed texts of an event, wherever in it they stand.
class Gatherer {
public:
    template <typename T>
    void field(std::string_view, const T& value) {
        take(value);
    }
    template <typename T>
    void added(std::string_view, const T& value) {
        take(value);
    }
    void take(const SealedText& sealed) { found_.push_back(sealed); }
    template <typename T>
    void take(const std::optional<T>& open) {
        if (open) take(*open);
    }
    template <typename T>
    void take(const std::vector<T>& list) {
        for (const T& item : list) take(item);
    }
    template <OneOf Variant>
    void take(const Variant& variant) {
        std::visit([&](const auto& each) { take(each); }, variant);
    }
    template <typename Part>
    void take(const Part& part) {
        if constexpr (requires { storage::fields(*this, part); }) storage::fields(*this, part);
    }

    std::vector<SealedText> found() && { return std::move(found_); }

private:
    std::vector<SealedText> found_;
};

std::optional<std::string> givenIn(const std::string& text) {
    return text.empty() ? std::nullopt : std::optional{text};
}

template <typename What>
QByteArray entryOf(const Envelope& envelope, const What& what) {
    TaggedWriter writer;
    fields(writer, envelope);
    writer.field("what", what);
    QByteArray bytes;
    appendPiece(bytes, wholeBytes(kTaggedFormat));
    return bytes + writer.take();
}

template <typename T>
T parsed(const std::string& text, std::string_view expected) {
    const auto read = T::parse(text);
    if (!read || read->text() != text)
        throw Malformed{'"' + text + "\" is not " + std::string{expected}};
    return *read;
}

LedgerEvent readTagged(QByteArrayView bytes) {
    TaggedReader reader{bytes};
    Envelope envelope;
    fields(reader, envelope);
    const auto at = Instant::ofMicroseconds(envelope.at);
    const auto person = parsed<PersonCode>(envelope.person, "the code of a person");
    if (envelope.station && envelope.station->empty()) throw Malformed{"an empty station"};
    if (envelope.command && envelope.command->empty()) throw Malformed{"an empty command"};
    if (envelope.subject.find('/') != std::string::npos) {
        if (envelope.station) throw Malformed{"an event of the workshop has no station"};
        WorkshopEvent event{.subject = parsed<Subject>(envelope.subject, "the subject of an event"),
                            .version = envelope.version,
                            .at = at,
                            .person = person,
                            .key = std::move(envelope.key),
                            .command = envelope.command.value_or(std::string{})};
        reader.field("what", event.what);
        reader.end();
        return event;
    }
    Event event{.order = parsed<OrderNumber>(envelope.subject, "an order number"),
                .version = envelope.version,
                .at = at,
                .person = person,
                .key = std::move(envelope.key),
                .station = envelope.station.value_or(std::string{}),
                .command = envelope.command.value_or(std::string{})};
    reader.field("what", event.what);
    reader.end();
    return event;
}

Event readOrderEvent(QByteArrayView bytes, std::int64_t format) {
    PositionalReader reader{bytes};
    domain::EventKind kind{};
    reader.read(kind);
    const auto order = reader.always<OrderNumber>();
    const std::int64_t version = reader.whole();
    const Instant at = Instant::ofMicroseconds(reader.whole());
    const auto person = reader.always<PersonCode>();
    std::string station = format == kStationFormat ? reader.text() : std::string{};
    if (format == kStationFormat && station.empty()) throw Malformed{"an empty station"};
    Event event{.order = order,
                .version = version,
                .at = at,
                .person = person,
                .key = reader.text(),
                .what = alternative<Happening>(static_cast<std::size_t>(kind)),
                .station = std::move(station)};
    std::visit([&](auto& what) { reader.read(what); }, event.what);
    reader.end();
    return event;
}

WorkshopEvent readWorkshopEvent(QByteArrayView bytes) {
    PositionalReader reader{bytes};
    domain::WorkshopEventKind kind{};
    reader.read(kind);
    const auto subject = parsed<Subject>(reader.text(), "the subject of an event");
    const std::int64_t version = reader.whole();
    const Instant at = Instant::ofMicroseconds(reader.whole());
    const auto person = reader.always<PersonCode>();
    WorkshopEvent event{.subject = subject,
                        .version = version,
                        .at = at,
                        .person = person,
                        .key = reader.text(),
                        .what = alternative<WorkshopHappening>(static_cast<std::size_t>(kind))};
    std::visit([&](auto& what) { reader.read(what); }, event.what);
    reader.end();
    return event;
}

LedgerEvent readEntry(const QByteArray& bytes) {
    ByteSource source{bytes};
    const std::int64_t format = wholeIn(source.piece());
    if (format == kOrderFormat || format == kStationFormat)
        return readOrderEvent(source.rest(), format);
    if (format == kWorkshopFormat) return readWorkshopEvent(source.rest());
    if (format == kTaggedFormat) return readTagged(source.rest());
    throw Malformed{"format " + std::to_string(format) + " is not known here"};
}

/// One sort of event; the other sort is refused.
template <typename E>
Result<E> decodeOnly(const QByteArray& bytes, std::string_view expected) {
    auto read = decodeEvent(bytes);
    if (!read) return read.error();
    LedgerEvent any = *std::move(read);
    if (E* event = std::get_if<E>(&any)) return std::move(*event);
    return Error{ErrorCode::Unusable, "the bytes of an event cannot be read: " +
                                          std::string{expected} + " was expected"};
}

}  // namespace

QByteArray encodeEvent(const Event& event) {
    return entryOf(Envelope{.subject = event.order.text(),
                            .version = event.version,
                            .at = event.at.microseconds(),
                            .person = event.person.text(),
                            .key = event.key,
                            .station = givenIn(event.station),
                            .command = givenIn(event.command)},
                   event.what);
}

QByteArray encodeEvent(const WorkshopEvent& event) {
    return entryOf(Envelope{.subject = event.subject.text(),
                            .version = event.version,
                            .at = event.at.microseconds(),
                            .person = event.person.text(),
                            .key = event.key,
                            .command = givenIn(event.command)},
                   event.what);
}

QByteArray encodeEvent(const LedgerEvent& event) {
    return std::visit([](const auto& each) { return encodeEvent(each); }, event);
}

std::string encodeRecord(const domain::StageRecord& record) {
    TaggedWriter writer;
    writer.field("record", record);
    return writer.take().toStdString();
}

std::string encodeHappening(const domain::WorkshopHappening& what) {
    TaggedWriter writer;
    writer.field("what", what);
    return writer.take().toStdString();
}

std::vector<SealedText> sealedTextsIn(const LedgerEvent& event) {
    Gatherer gatherer;
    std::visit([&](const auto& each) { gatherer.take(each.what); }, event);
    return std::move(gatherer).found();
}

std::int64_t formatOf(const QByteArray& bytes) try {
    ByteSource source{bytes};
    return wholeIn(source.piece());
} catch (const Malformed&) {
    return 0;
}

Result<LedgerEvent> decodeEvent(const QByteArray& bytes) try {
    return readEntry(bytes);
} catch (const Malformed& malformed) {
    return Error{ErrorCode::Unusable,
                 std::string{"the bytes of an event cannot be read: "} + malformed.what()};
}

Result<Event> decodeOrderEvent(const QByteArray& bytes) {
    return decodeOnly<Event>(bytes, "an event of an order");
}

Result<WorkshopEvent> decodeWorkshopEvent(const QByteArray& bytes) {
    return decodeOnly<WorkshopEvent>(bytes, "an event of the workshop");
}

}  // namespace storage
