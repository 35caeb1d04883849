#include <nlohmann/json.hpp>

#include "storage/files/field_kinds.h"
#include "storage/files/prescription_file.h"

namespace storage {
namespace {

using namespace domain;
using Json = nlohmann::ordered_json;

template <typename T>
Json schemaOf();

/// Visits the fields of one part and notes for each what a file may hold there.
class FieldSchema {
public:
    template <typename T>
    void field(std::string_view name, const T&) {
        properties_[std::string{name}] = schemaOf<T>();
        if constexpr (!kMayBeLeftOut<T>) required_.push_back(std::string{name});
    }
    void constant(std::string_view name, std::string_view value) {
        properties_[std::string{name}] = {{"const", std::string{value}}};
        required_.push_back(std::string{name});
    }
    void chart(const Dentition&) {
        for (const auto& code : enumCodes<ToothState>) field(code.word, std::vector<Tooth>{});
    }

    Json take() {
        Json schema = {{"type", "object"}, {"additionalProperties", false}};
        schema["properties"] = std::move(properties_);
        if (!required_.empty()) schema["required"] = std::move(required_);
        return schema;
    }

private:
    Json properties_ = Json::object();
    Json required_ = Json::array();
};

template <typename T>
struct Schema {
    static Json make() {
        FieldSchema fields;
        const T part{};
        describe(fields, part);
        return fields.take();
    }
};
template <>
struct Schema<std::string> {
    static Json make() { return {{"type", "string"}, {"minLength", 1}}; }
};
template <>
struct Schema<bool> {
    static Json make() { return {{"type", "boolean"}}; }
};
template <>
struct Schema<Tooth> {
    static Json make() {
        return {{"type", "string"},
                {"pattern", "^([1-4][1-8]|[1-9]|[12][0-9]|3[0-2]|U[RL][1-8]|L[RL][1-8])$"},
                {"description", "a tooth in the notation the file declares"}};
    }
};
template <>
struct Schema<Date> {
    static Json make() { return {{"type", "string"}, {"format", "date"}}; }
};
template <>
struct Schema<LabColour> {
    static Json make() {
        constexpr const char* kDecimal = "-?[0-9]+(\\.[0-9]{1,2})?";
        return {
            {"type", "string"},
            {"pattern", std::string{"^[0-9]+(\\.[0-9]{1,2})? "} + kDecimal + ' ' + kDecimal + '$'},
            {"description", "L*, a* and b*"},
            {"examples", {std::string{kLabExample}}}};
    }
};
template <CodedEnum E>
struct Schema<E> {
    static Json make() {
        Json words = Json::array();
        for (const auto& code : enumCodes<E>) words.push_back(std::string{code.word});
        return {{"enum", std::move(words)}};
    }
};
template <typename Unit>
struct Schema<Quantity<Unit>> {
    static Json make() {
        return {{"type", "string"},
                {"pattern", "^[0-9]+(\\.[0-9]+)? " + std::string{Unit::kSign} + "$"},
                {"examples", {std::string{Unit::kExample}}}};
    }
};
template <typename T>
struct Schema<std::optional<T>> {
    static Json make() { return schemaOf<T>(); }
};
template <typename T>
struct Schema<std::vector<T>> {
    static Json make() { return {{"type", "array"}, {"items", schemaOf<T>()}}; }
};

template <typename T>
Json schemaOf() {
    return Schema<T>::make();
}

}  // namespace

std::string prescriptionSchema() {
    FieldSchema fields;
    fields.constant(kFormatField, kPrescriptionFormat);
    const Prescription prescription;
    describe(fields, prescription);
    Json schema = {{"$schema", "https://json-schema.org/draft/2020-12/schema"},
                   {"title", "Prescription of a removable partial denture"}};
    schema.update(fields.take());
    return schema.dump(2) + '\n';
}

}  // namespace storage
