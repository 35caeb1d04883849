#include "storage/event_codec.h"

#include <QUtf8StringView>
#include <QtEndian>
#include <algorithm>
#include <stdexcept>

#include "storage/files/field_kinds.h"
#include "storage/files/prescription_file.h"

namespace storage {
namespace {

using namespace domain;

/// Formats of an entry: an order's event, the same with its station, an event of the workshop.
constexpr std::int64_t kOrderFormat = 1;
constexpr std::int64_t kStationFormat = 2;
constexpr std::int64_t kWorkshopFormat = 3;

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

void fields(auto& coder, Is<StagePlan> auto& part) {
    coder.field(part.stage);
    coder.field(part.skill);
    coder.field(part.station);
    coder.field(part.usual);
    coder.field(part.checklist);
    coder.field(part.demands);
    coder.field(part.fallBack);
}
void fields(auto& coder, Is<RoutePlan> auto& part) {
    coder.field(part.route);
    coder.field(part.arch);
    coder.field(part.version);
    coder.field(part.stages);
}
void fields(auto& coder, Is<Disinfection> auto& part) {
    coder.field(part.agent);
    coder.field(part.contact);
}
void fields(auto& coder, Is<Ticked> auto& part) { coder.field(part.item); }
void fields(auto& coder, Is<UndercutMeasured> auto& part) {
    coder.field(part.tooth);
    coder.field(part.depth);
}
void fields(auto&, Is<TripodMarked> auto&) {}
void fields(auto& coder, Is<LotUsed> auto& part) {
    coder.field(part.lot);
    coder.field(part.kind);
    coder.field(part.amount);
}
void fields(auto& coder, Is<NewMetal> auto& part) { coder.field(part.share); }
void fields(auto& coder, Is<CastWeighed> auto& part) { coder.field(part.mass); }
void fields(auto& coder, Is<TeethSet> auto& part) {
    coder.field(part.mould);
    coder.field(part.guide);
    coder.field(part.tab);
}
void fields(auto& coder, Is<CureLogged> auto& part) {
    coder.field(part.cycle);
    coder.field(part.sha256);
    coder.field(part.kept);
}
void fields(auto& coder, Is<Disinfected> auto& part) { coder.field(part.disinfection); }
void fields(auto& coder, Is<EquipmentUsed> auto& part) {
    coder.field(part.equipment);
    coder.field(part.kind);
    coder.field(part.responsibility);
}
void fields(auto& coder, Is<BenchValue> auto& part) {
    coder.field(part.what);
    coder.field(part.value);
}
void fields(auto& coder, Is<StatementIssued> auto& part) { coder.field(part.statement); }

void fields(auto& coder, Is<Routed> auto& part) { coder.field(part.plan); }
void fields(auto& coder, Is<Recorded> auto& part) {
    coder.field(part.stage);
    coder.field(part.records);
}
void fields(auto& coder, Is<Returned> auto& part) {
    coder.field(part.stage);
    coder.field(part.verdict);
    coder.field(part.backTo);
    coder.field(part.findings);
    coder.field(part.disinfection);
}
void fields(auto& coder, Is<Redone> auto& part) {
    coder.field(part.reason);
    coder.field(part.from);
    coder.field(part.fault);
    coder.field(part.note);
}
void fields(auto& coder, Is<RemakeOrdered> auto& part) {
    coder.field(part.replacement);
    coder.field(part.reason);
    coder.field(part.fault);
    coder.field(part.note);
}
void fields(auto& coder, Is<RemakeBegun> auto& part) { coder.field(part.first); }
void fields(auto& coder, Is<CaseJoined> auto& part) {
    coder.field(part.leader);
    coder.field(part.findings);
}
void fields(auto& coder, Is<WorkSent> auto& part) {
    coder.field(part.stage);
    coder.field(part.site);
}
void fields(auto& coder, Is<WorkBack> auto& part) {
    coder.field(part.stage);
    coder.field(part.passed);
    coder.field(part.note);
}
void fields(auto& coder, Is<Withdrawn> auto& part) { coder.field(part.reason); }
void fields(auto&, Is<Purged> auto&) {}

void fields(auto& coder, Is<PersonEntered> auto& part) {
    coder.field(part.role);
    coder.field(part.skills);
}
void fields(auto&, Is<PersonLeft> auto&) {}
void fields(auto& coder, Is<CredentialGiven> auto& part) { coder.field(part.credential); }
void fields(auto& coder, Is<CredentialTaken> auto& part) { coder.field(part.credential); }
void fields(auto& coder, Is<AccessRefused> auto& part) {
    coder.field(part.command);
    coder.field(part.why);
}
void fields(auto& coder, Is<StationEntered> auto& part) { coder.field(part.kind); }
void fields(auto& coder, Is<Equipment> auto& part) {
    coder.field(part.kind);
    coder.field(part.serial);
    coder.field(part.calibrationDue);
}
void fields(auto& coder, Is<EquipmentEntered> auto& part) { coder.field(part.equipment); }
void fields(auto& coder, Is<Calibrated> auto& part) { coder.field(part.due); }
void fields(auto& coder, Is<Site> auto& part) {
    coder.field(part.name);
    coder.field(part.address);
    coder.field(part.registration);
}
void fields(auto& coder, Is<SiteEntered> auto& part) { coder.field(part.site); }
void fields(auto& coder, Is<Certificate> auto& part) {
    coder.field(part.material);
    coder.field(part.type);
    coder.field(part.proofStrength);
    coder.field(part.modulus);
    coder.field(part.elongation);
    coder.field(part.nickel);
    coder.field(part.beryllium);
    coder.field(part.cadmium);
    coder.field(part.resin);
    coder.field(part.methacrylateFree);
}
void fields(auto& coder, Is<Lot> auto& part) {
    coder.field(part.kind);
    coder.field(part.maker);
    coder.field(part.product);
    coder.field(part.makersNumber);
    coder.field(part.udi);
    coder.field(part.expiry);
    coder.field(part.certificate);
    coder.field(part.amount);
}
void fields(auto& coder, Is<LotReceived> auto& part) { coder.field(part.lot); }
void fields(auto& coder, Is<LotHeld> auto& part) { coder.field(part.reason); }
void fields(auto& coder, Is<LotReleased> auto& part) { coder.field(part.reason); }
void fields(auto& coder, Is<RouteSet> auto& part) { coder.field(part.plan); }

/// The alternative of a variant at a place known only when it is read.
template <typename Variant, std::size_t kAt = 0>
Variant alternative(std::size_t at) {
    if constexpr (kAt + 1 < std::variant_size_v<Variant>)
        if (at != kAt) return alternative<Variant, kAt + 1>(at);
    return Variant{std::in_place_index<kAt>};
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
    void field(bool yes) { field(std::int64_t{yes ? 1 : 0}); }
    void field(const Tooth& tooth) { field(tooth.text()); }
    void field(const OrderNumber& number) { field(number.text()); }
    void field(const ThingCode& code) { field(code.text()); }
    void field(const Date& day) { field(day.days()); }
    template <typename Unit>
    void field(const Quantity<Unit>& amount) {
        field(amount.count());
    }
    void field(const StageRecord& record) {
        field(kindOf(record));
        std::visit([this](const auto& each) { field(each); }, record);
    }
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

/// Gathers the sealed texts of an event, wherever in it they stand.
class Gatherer {
public:
    void field(const SealedText& sealed) { found_.push_back(sealed); }
    template <typename T>
    void field(const std::optional<T>& open) {
        if (open) field(*open);
    }
    template <typename T>
    void field(const std::vector<T>& list) {
        for (const T& item : list) field(item);
    }
    void field(const StageRecord& record) {
        std::visit([this](const auto& each) { field(each); }, record);
    }
    template <typename Part>
    void field(const Part& part) {
        if constexpr (requires { fields(*this, part); }) fields(*this, part);
    }

    std::vector<SealedText> found() && { return std::move(found_); }

private:
    std::vector<SealedText> found_;
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
    void field(bool& yes) {
        const std::int64_t value = whole();
        if (value != 0 && value != 1) throw Malformed{"neither yes nor no"};
        yes = value == 1;
    }
    void field(Tooth& tooth) { tooth = always<Tooth>(text(), "a tooth of ISO 3950"); }
    void field(OrderNumber& number) { number = always<OrderNumber>(text(), "an order number"); }
    void field(ThingCode& code) { code = always<ThingCode>(text(), "the code of a thing"); }
    void field(Date& day) { day = Date::ofDays(whole()); }
    template <typename Unit>
    void field(Quantity<Unit>& amount) {
        amount = Quantity<Unit>::of(whole());
    }
    void field(StageRecord& record) {
        RecordKind kind{};
        field(kind);
        record = alternative<StageRecord>(static_cast<std::size_t>(kind));
        std::visit([this](auto& each) { field(each); }, record);
    }
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

void beOneOf(std::int64_t format, std::initializer_list<std::int64_t> known) {
    if (std::ranges::count(known, format) == 0)
        throw Malformed{"format " + std::to_string(format) + " is not known here"};
}

/// A prescription can be written in more than one way; only the canonical one is ours.
void beCanonical(const QByteArray& bytes, const QByteArray& again) {
    if (again != bytes) throw Malformed{"they are not in canonical form"};
}

Event readOrderEvent(const QByteArray& bytes) {
    Reader reader{bytes};
    const std::int64_t format = reader.whole();
    beOneOf(format, {kOrderFormat, kStationFormat});
    EventKind kind{};
    reader.field(kind);
    const auto order = Reader::always<OrderNumber>(reader.text(), "an order number");
    const std::int64_t version = reader.whole();
    const Instant at = Instant::ofMicroseconds(reader.whole());
    const auto person = Reader::always<PersonCode>(reader.text(), "the code of a person");
    std::string station = format == kStationFormat ? reader.text() : std::string{};
    Event event{.order = order,
                .version = version,
                .at = at,
                .person = person,
                .key = reader.text(),
                .what = alternative<Happening>(static_cast<std::size_t>(kind)),
                .station = std::move(station)};
    std::visit([&](auto& what) { reader.field(what); }, event.what);
    reader.end();
    beCanonical(bytes, encodeEvent(event));
    return event;
}

WorkshopEvent readWorkshopEvent(const QByteArray& bytes) {
    Reader reader{bytes};
    beOneOf(reader.whole(), {kWorkshopFormat});
    WorkshopEventKind kind{};
    reader.field(kind);
    const auto subject = Reader::always<Subject>(reader.text(), "the subject of an event");
    const std::int64_t version = reader.whole();
    const Instant at = Instant::ofMicroseconds(reader.whole());
    const auto person = Reader::always<PersonCode>(reader.text(), "the code of a person");
    WorkshopEvent event{.subject = subject,
                        .version = version,
                        .at = at,
                        .person = person,
                        .key = reader.text(),
                        .what = alternative<WorkshopHappening>(static_cast<std::size_t>(kind))};
    std::visit([&](auto& what) { reader.field(what); }, event.what);
    reader.end();
    beCanonical(bytes, encodeEvent(event));
    return event;
}

LedgerEvent readEntry(const QByteArray& bytes) {
    if (Reader{bytes}.whole() == kWorkshopFormat) return readWorkshopEvent(bytes);
    return readOrderEvent(bytes);
}

}  // namespace

QByteArray encodeEvent(const Event& event) {
    Writer writer;
    writer.field(event.station.empty() ? kOrderFormat : kStationFormat);
    writer.field(kindOf(event));
    writer.field(event.order.text());
    writer.field(event.version);
    writer.field(event.at.microseconds());
    writer.field(event.person.text());
    if (!event.station.empty()) writer.field(event.station);
    writer.field(event.key);
    std::visit([&](const auto& what) { writer.field(what); }, event.what);
    return std::move(writer).bytes();
}

QByteArray encodeEvent(const WorkshopEvent& event) {
    Writer writer;
    writer.field(kWorkshopFormat);
    writer.field(kindOf(event));
    writer.field(event.subject.text());
    writer.field(event.version);
    writer.field(event.at.microseconds());
    writer.field(event.person.text());
    writer.field(event.key);
    std::visit([&](const auto& what) { writer.field(what); }, event.what);
    return std::move(writer).bytes();
}

QByteArray encodeEvent(const LedgerEvent& event) {
    return std::visit([](const auto& each) { return encodeEvent(each); }, event);
}

std::vector<SealedText> sealedTextsIn(const LedgerEvent& event) {
    Gatherer gatherer;
    std::visit(
        [&](const auto& each) {
            std::visit([&](const auto& what) { gatherer.field(what); }, each.what);
        },
        event);
    return std::move(gatherer).found();
}

Result<LedgerEvent> decodeEvent(const QByteArray& bytes) try {
    return readEntry(bytes);
} catch (const Malformed& malformed) {
    return Error{ErrorCode::Unusable,
                 std::string{"the bytes of an event cannot be read: "} + malformed.what()};
}

Result<Event> decodeOrderEvent(const QByteArray& bytes) try {
    return readOrderEvent(bytes);
} catch (const Malformed& malformed) {
    return Error{ErrorCode::Unusable,
                 std::string{"the bytes of an event cannot be read: "} + malformed.what()};
}

Result<WorkshopEvent> decodeWorkshopEvent(const QByteArray& bytes) try {
    return readWorkshopEvent(bytes);
} catch (const Malformed& malformed) {
    return Error{ErrorCode::Unusable,
                 std::string{"the bytes of an event cannot be read: "} + malformed.what()};
}

}  // namespace storage
