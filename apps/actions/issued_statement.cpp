#include "apps/actions/issued_statement.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

namespace actions {
namespace {

using domain::ConformityException;
using domain::ManufacturingSite;
using domain::NotApplicable;
using domain::Party;
using domain::WhereApplicable;

QJsonValue json(const std::string& text) { return QString::fromStdString(text); }
QJsonValue json(const Party& party) {
    return QJsonObject{{"name", json(party.name)}, {"address", json(party.address)}};
}
QJsonValue json(const ManufacturingSite& site) {
    return QJsonObject{{"party", json(site.party)}, {"work", json(site.work)}};
}
QJsonValue json(const ConformityException& exception) {
    return QJsonObject{{"requirement", json(exception.requirement)},
                       {"grounds", json(exception.grounds)}};
}
template <typename T>
QJsonValue json(const std::vector<T>& values) {
    QJsonArray list;
    for (const T& value : values) list.append(json(value));
    return list;
}
/// Not applicable is false; not answered is null.
template <typename T>
QJsonValue json(const WhereApplicable<T>& answer) {
    if (!answer) return QJsonValue::Null;
    const T* given = domain::givenIn(answer);
    return given == nullptr ? QJsonValue{false} : json(*given);
}

void read(const QJsonValue& value, std::string& text) { text = value.toString().toStdString(); }
void read(const QJsonValue& value, Party& party) {
    read(value["name"], party.name);
    read(value["address"], party.address);
}
void read(const QJsonValue& value, ManufacturingSite& site) {
    read(value["party"], site.party);
    read(value["work"], site.work);
}
void read(const QJsonValue& value, ConformityException& exception) {
    read(value["requirement"], exception.requirement);
    read(value["grounds"], exception.grounds);
}
template <typename T>
void read(const QJsonValue& value, std::vector<T>& values) {
    for (const QJsonValue& each : value.toArray()) read(each, values.emplace_back());
}
template <typename T>
void read(const QJsonValue& value, WhereApplicable<T>& answer) {
    if (value.isNull() || value.isUndefined()) return;
    if (value.isBool()) {
        answer = NotApplicable{};
        return;
    }
    T given{};
    read(value, given);
    answer = std::move(given);
}

std::vector<std::string> idsOf(const std::vector<domain::RetentionTerm>& terms) {
    std::vector<std::string> ids;
    for (const domain::RetentionTerm& term : terms) ids.emplace_back(term.id);
    return ids;
}

QJsonObject headJson(const Letterhead& head) {
    return {{"name", json(head.name)},
            {"address", json(head.address)},
            {"contact", json(head.contact)}};
}

}  // namespace

std::string writeStatement(const KeptStatement& kept) {
    const domain::Statement& statement = kept.statement;
    const auto& made = statement.characteristics;
    QJsonObject object{
        {"manufacturer", json(statement.manufacturer)},
        {"sites", json(statement.sites)},
        {"representative", json(statement.representative)},
        {"device", statement.device ? json(statement.device->text()) : QJsonValue::Null},
        {"description", json(statement.description)},
        {"patient", json(statement.patientReference)},
        {"exclusive-use", statement.exclusiveUse},
        {"prescriber", json(statement.prescriber.name)},
        {"qualification", json(statement.prescriber.qualification)},
        {"institution", json(statement.prescriber.institution)},
        {"characteristics", json(made.lines)},
        {"revision", made.revision},
        {"digest", json(made.digest)},
        {"exceptions",
         statement.conformity ? json(statement.conformity->exceptions) : QJsonValue::Null},
        {"substances", json(statement.substances)},
        {"letterhead", headJson(kept.head)},
        {"retention", json(idsOf(kept.retention))}};
    return QJsonDocument{object}.toJson(QJsonDocument::Compact).toStdString();
}

domain::Result<KeptStatement> readStatement(const std::string& text) {
    const QJsonDocument object = QJsonDocument::fromJson(QByteArray::fromStdString(text));
    if (!object.isObject())
        return domain::Error{domain::ErrorCode::Unavailable,
                             "an issued statement cannot be read back"};
    KeptStatement kept;
    domain::Statement& statement = kept.statement;
    read(object["manufacturer"], statement.manufacturer);
    read(object["sites"], statement.sites);
    read(object["representative"], statement.representative);
    statement.device = domain::OrderNumber::parse(object["device"].toString().toStdString());
    read(object["description"], statement.description);
    read(object["patient"], statement.patientReference);
    statement.exclusiveUse = object["exclusive-use"].toBool();
    read(object["prescriber"], statement.prescriber.name);
    read(object["qualification"], statement.prescriber.qualification);
    read(object["institution"], statement.prescriber.institution);
    read(object["characteristics"], statement.characteristics.lines);
    statement.characteristics.revision = object["revision"].toInt();
    read(object["digest"], statement.characteristics.digest);
    if (object["exceptions"].isArray())
        read(object["exceptions"], statement.conformity.emplace().exceptions);
    read(object["substances"], statement.substances);
    read(object["letterhead"]["name"], kept.head.name);
    read(object["letterhead"]["address"], kept.head.address);
    read(object["letterhead"]["contact"], kept.head.contact);
    std::vector<std::string> ids;
    read(object["retention"], ids);
    for (const std::string& id : ids)
        if (const auto* term = domain::retentionTermOf(id)) kept.retention.push_back(*term);
    return kept;
}

}  // namespace actions
