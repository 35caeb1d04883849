#include <nlohmann/json.hpp>

#include "storage/files/field_kinds.h"
#include "storage/files/prescription_file.h"

namespace storage {
namespace {

using namespace domain;
using Json = nlohmann::ordered_json;

/// Visits the fields of one part and puts each that is given into a JSON object.
class FieldWriter {
public:
    explicit FieldWriter(Notation notation) : notation_{notation} {}

    template <typename T>
    void field(std::string_view name, const T& value) {
        Json written = json(value);
        if constexpr (kMayBeLeftOut<T>)
            if (written.is_null() || written.empty()) return;
        object_[std::string{name}] = std::move(written);
    }

    /// Lists a tooth only where its state is not what an unnamed tooth has.
    void chart(const Dentition& dentition) {
        for (const auto& code : enumCodes<ToothState>) {
            std::vector<Tooth> named;
            for (const Tooth tooth : dentition.all(code.value).teeth())
                if (Dentition::unnamed(tooth) != code.value) named.push_back(tooth);
            field(code.word, named);
        }
    }

    Json take() { return std::move(object_); }

private:
    Json json(const std::string& text) const { return text; }
    Json json(bool truth) const { return truth; }
    Json json(Tooth tooth) const { return nameOf(tooth, notation_); }
    Json json(Date date) const { return date.text(); }
    Json json(LabColour colour) const { return colour.text(); }
    template <CodedEnum E>
    Json json(E value) const {
        return std::string{codeOf(value)};
    }
    template <typename Unit>
    Json json(Quantity<Unit> quantity) const {
        return text(quantity);
    }
    template <typename T>
    Json json(const std::optional<T>& value) const {
        return value ? json(*value) : Json{};
    }
    template <typename T>
    Json json(const std::vector<T>& values) const {
        Json list = Json::array();
        for (const T& value : values) list.push_back(json(value));
        return list;
    }
    template <typename Part>
        requires std::is_class_v<Part>
    Json json(const Part& part) const {
        FieldWriter fields{notation_};
        describe(fields, part);
        return fields.take();
    }

    Notation notation_;
    Json object_ = Json::object();
};

}  // namespace

std::string writePrescription(const Prescription& prescription) {
    FieldWriter fields{notationOf(prescription)};
    fields.field(kFormatField, std::string{kPrescriptionFormat});
    describe(fields, prescription);
    return fields.take().dump(2) + '\n';
}

}  // namespace storage
