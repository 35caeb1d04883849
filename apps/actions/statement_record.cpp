#include "apps/actions/statement_record.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

namespace actions {
namespace {

using domain::NotApplicable;
using domain::Party;
using domain::Statement;
using domain::WhereApplicable;

QString qt(const std::string& text) { return QString::fromStdString(text); }

/// Writes named texts into an object; one walk serves both directions.
class Writer {
public:
    explicit Writer(QJsonObject& object) : object_{object} {}
    void text(const char* name, const std::string& value) const {
        object_.insert(QLatin1String{name}, qt(value));
    }
    template <typename List, typename Walk>
    void list(const char* name, const List& items, Walk walk) const {
        QJsonArray array;
        for (auto item : items) {
            QJsonObject object;
            walk(Writer{object}, item);
            array.append(object);
        }
        object_.insert(QLatin1String{name}, array);
    }

private:
    QJsonObject& object_;
};

class Reader {
public:
    explicit Reader(QJsonObject object) : object_{std::move(object)} {}
    void text(const char* name, std::string& value) const {
        value = object_.value(QLatin1String{name}).toString().toStdString();
    }
    template <typename List, typename Walk>
    void list(const char* name, List& items, Walk walk) const {
        items.clear();
        for (const auto& value : object_.value(QLatin1String{name}).toArray()) {
            typename List::value_type item{};
            walk(Reader{value.toObject()}, item);
            items.push_back(std::move(item));
        }
    }

private:
    QJsonObject object_;
};

/// What applies or not, as a text: "-" does not apply.
constexpr const char* kNotApplicable = "-";

std::string told(const WhereApplicable<std::string>& answer) {
    const auto* given = domain::givenIn(answer);
    return given != nullptr ? *given : kNotApplicable;
}
WhereApplicable<std::string> answered(const std::string& text) {
    if (text == kNotApplicable) return NotApplicable{};
    return text;
}

/// The parts of a statement that are plain texts and lists, field by field.
template <typename Coder, typename Record>
void walk(const Coder& coder, Record& record) {
    coder.text("laboratory", record.head.name);
    coder.text("laboratory-address", record.head.address);
    coder.text("laboratory-contact", record.head.contact);
    auto& issued = record.issued;
    auto& statement = issued.statement;
    coder.text("number", issued.number);
    coder.text("manufacturer", statement.manufacturer.name);
    coder.text("manufacturer-address", statement.manufacturer.address);
    coder.list("sites", statement.sites, [](const auto& each, auto& site) {
        each.text("name", site.party.name);
        each.text("address", site.party.address);
        each.text("work", site.work);
    });
    coder.text("description", statement.description);
    coder.text("patient", statement.patientReference);
    coder.text("prescriber", statement.prescriber.name);
    coder.text("qualification", statement.prescriber.qualification);
    coder.list("lines", statement.characteristics.lines,
               [](const auto& each, auto& line) { each.text("line", line); });
    coder.text("digest", statement.characteristics.digest);
    coder.list("lots", issued.lots, [](const auto& each, auto& lot) {
        each.text("part", lot.part);
        each.text("material", lot.material);
        each.text("maker", lot.maker);
        each.text("lot", lot.lot);
    });
}

}  // namespace

std::string writeStatement(const StatementRecord& record) {
    QJsonObject object;
    const Writer writer{object};
    StatementRecord copy = record;
    walk(writer, copy);
    const Statement& statement = record.issued.statement;
    const Party* representative = domain::givenIn(statement.representative);
    writer.text("representative", representative ? representative->name : kNotApplicable);
    writer.text("representative-address", representative ? representative->address : "");
    writer.text("institution", told(statement.prescriber.institution));
    writer.text("substances", told(statement.substances));
    writer.text("device", statement.device ? statement.device->text() : "");
    object.insert(QLatin1String{"revision"}, statement.characteristics.revision);
    writer.list("exceptions", statement.conformity->exceptions, [](const auto& each, auto& item) {
        each.text("requirement", item.requirement);
        each.text("grounds", item.grounds);
    });
    QJsonArray compositions;
    for (const reports::LotLine& lot : record.issued.lots)
        compositions.append(lot.composition ? QJsonValue{qt(*lot.composition)} : QJsonValue{});
    object.insert(QLatin1String{"compositions"}, compositions);
    QJsonArray terms;
    for (const domain::RetentionTerm& term : record.issued.retention)
        terms.append(qt(std::string{term.id}));
    object.insert(QLatin1String{"retention"}, terms);
    return QJsonDocument{object}.toJson(QJsonDocument::Compact).toStdString();
}

domain::Result<StatementRecord> readStatement(const std::string& text) {
    const auto document = QJsonDocument::fromJson(QByteArray::fromStdString(text));
    if (!document.isObject())
        return domain::Error{domain::ErrorCode::Unavailable,
                             "an issued statement cannot be read back"};
    const QJsonObject object = document.object();
    const Reader reader{object};
    StatementRecord record;
    walk(reader, record);
    Statement& statement = record.issued.statement;
    std::string word;
    reader.text("representative", word);
    statement.representative = NotApplicable{};
    if (word != kNotApplicable) {
        Party party{.name = word, .address = {}};
        reader.text("representative-address", party.address);
        statement.representative = party;
    }
    reader.text("institution", word);
    statement.prescriber.institution = answered(word);
    reader.text("substances", word);
    statement.substances = answered(word);
    reader.text("device", word);
    statement.device = domain::OrderNumber::parse(word);
    statement.exclusiveUse = true;
    statement.characteristics.revision = object.value(QLatin1String{"revision"}).toInt();
    statement.conformity.emplace();
    reader.list("exceptions", statement.conformity->exceptions, [](const auto& each, auto& item) {
        each.text("requirement", item.requirement);
        each.text("grounds", item.grounds);
    });
    const QJsonArray compositions = object.value(QLatin1String{"compositions"}).toArray();
    for (std::size_t at = 0; at < record.issued.lots.size(); ++at)
        if (const auto value = compositions.at(static_cast<qsizetype>(at)); value.isString())
            record.issued.lots[at].composition = value.toString().toStdString();
    for (const auto& value : object.value(QLatin1String{"retention"}).toArray())
        if (const auto* term = domain::retentionTermOf(value.toString().toStdString()))
            record.issued.retention.push_back(*term);
    return record;
}

}  // namespace actions
