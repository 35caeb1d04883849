#include "storage/files/prescription_file.h"

#include <algorithm>

#include "storage/files/field_kinds.h"
#include "storage/files/json_tree.h"
#include "storage/files/plain_file.h"

namespace storage {
namespace {

using namespace domain;

constexpr std::size_t kLongestText = 4000;  ///< of one field, in bytes

/// What stopped the reading; thrown and caught within this file.
struct Trouble {
    int line{};
    std::string path;
    std::string expected;
    std::string given;
};

/// Reads one value of a known type from one node.
class Reader {
public:
    explicit Reader(Notation notation) : notation_{notation} {}

    template <typename T>
    void read(const JsonNode& node, const std::string& path, T& target) const;

private:
    [[noreturn]] static void refuse(const JsonNode& node, const std::string& path,
                                    std::string expected) {
        throw Trouble{node.line, path, std::move(expected), shown(node)};
    }
    static const std::string& words(const JsonNode& node, const std::string& path,
                                    const std::string& expected) {
        if (node.kind != JsonNode::Kind::Text) refuse(node, path, expected);
        return node.text;
    }

    void value(const JsonNode& node, const std::string& path, std::string& text) const {
        const auto isControl = [](char c) {
            return static_cast<unsigned char>(c) < 0x20 && c != '\n' && c != '\t';
        };
        text = words(node, path, "a text");
        if (text.empty()) refuse(node, path, "a text that is not empty (or no such field)");
        if (text.size() > kLongestText)
            refuse(node, path, "a text of at most " + std::to_string(kLongestText) + " bytes");
        if (std::ranges::any_of(text, isControl))
            refuse(node, path, "a text without control characters");
    }
    void value(const JsonNode& node, const std::string& path, bool& truth) const {
        if (node.kind != JsonNode::Kind::Boolean) refuse(node, path, "true or false");
        truth = node.truth;
    }
    void value(const JsonNode& node, const std::string& path, Tooth& tooth) const {
        const std::string expected = "a tooth in the notation " + std::string{codeOf(notation_)} +
                                     ", as \"" + nameOf(36_fdi, notation_) + "\"";
        const auto read = parseTooth(words(node, path, expected), notation_);
        if (!read) refuse(node, path, expected);
        tooth = *read;
    }
    void value(const JsonNode& node, const std::string& path, Date& date) const {
        constexpr const char* kExpected = "a day that exists, as \"2026-11-25\"";
        const auto read = Date::parse(words(node, path, kExpected));
        if (!read) refuse(node, path, kExpected);
        date = *read;
    }
    void value(const JsonNode& node, const std::string& path, LabColour& colour) const {
        static const std::string kExpected =
            "L*, a* and b* with one space between, as \"" + std::string{kLabExample} + '"';
        const auto read = LabColour::parse(words(node, path, kExpected));
        if (!read) refuse(node, path, kExpected);
        colour = *read;
    }
    template <CodedEnum E>
    void value(const JsonNode& node, const std::string& path, E& coded) const {
        const std::string expected = "one of: " + allWords<E>();
        const auto read = parseCode<E>(words(node, path, expected));
        if (!read) refuse(node, path, expected);
        coded = *read;
    }
    template <typename Unit>
    void value(const JsonNode& node, const std::string& path, Quantity<Unit>& quantity) const {
        const std::string expected = "an amount from 0 to " +
                                     decimalText(Unit::kMost, Unit::kPerWritten) +
                                     " with its unit, as \"" + std::string{Unit::kExample} + '"';
        const auto read = parseQuantity<Unit>(words(node, path, expected));
        if (!read) refuse(node, path, expected);
        quantity = *read;
    }

    Notation notation_;
};

/// Visits the fields of one part and takes each from the members of one JSON object.
class FieldReader {
public:
    FieldReader(const Reader& reader, const JsonNode& node, std::string path)
        : reader_{reader}, node_{node}, path_{std::move(path)} {}

    template <typename T>
    void field(std::string_view name, T& value) {
        known_.push_back(name);
        if (const JsonNode* member = node_.member(name))
            reader_.read(*member, pathOf(name), value);
        else if constexpr (!kMayBeLeftOut<T>)
            throw Trouble{node_.line, place(), "the field \"" + std::string{name} + '"', "none"};
    }

    /// The chart of teeth: one list of teeth per state, each tooth once.
    void chart(Dentition& dentition) {
        ToothSet charted;
        for (const auto& code : enumCodes<ToothState>) {
            std::vector<Tooth> teeth;
            field(code.word, teeth);
            for (std::size_t i = 0; i < teeth.size(); ++i) {
                if (charted.has(teeth[i]))
                    throw Trouble{node_.member(code.word)->items[i].line, pathOf(code.word),
                                  "each tooth charted once",
                                  "tooth " + teeth[i].text() + " (ISO 3950) again"};
                charted.add(teeth[i]);
                dentition.set(teeth[i], code.value);
            }
        }
    }

    void refuseUnknown() const {
        for (const auto& [name, member] : node_.members)
            if (std::ranges::find(known_, name) == known_.end())
                throw Trouble{member.line, place(), "only the fields " + knownFields(),
                              '"' + name + '"'};
    }

private:
    std::string place() const { return path_.empty() ? "the prescription" : path_; }
    std::string pathOf(std::string_view name) const {
        return path_.empty() ? std::string{name} : path_ + '.' + std::string{name};
    }
    std::string knownFields() const {
        std::string list;
        for (const std::string_view name : known_)
            list += (list.empty() ? "" : ", ") + std::string{name};
        return list;
    }

    const Reader& reader_;
    const JsonNode& node_;
    std::string path_;
    std::vector<std::string_view> known_;
};

template <typename T>
void Reader::read(const JsonNode& node, const std::string& path, T& target) const {
    if constexpr (OpenField<T>) {
        auto inner = blank<typename ElementOf<T>::Open>();
        read(node, path, inner);
        target = std::move(inner);
    } else if constexpr (ListedField<T>) {
        if (node.kind != JsonNode::Kind::List) refuse(node, path, "a list [ ... ]");
        for (std::size_t i = 0; i < node.items.size(); ++i) {
            auto item = blank<typename ElementOf<T>::Listed>();
            read(node.items[i], path + '[' + std::to_string(i) + ']', item);
            target.push_back(std::move(item));
        }
    } else if constexpr (requires { value(node, path, target); }) {
        value(node, path, target);
    } else {
        if (node.kind != JsonNode::Kind::Object) refuse(node, path, "a group of fields { ... }");
        FieldReader fields{*this, node, path};
        describe(fields, target);
        fields.refuseUnknown();
    }
}

/// Teeth cannot be read before it is known how they are written.
Notation declaredNotation(const JsonNode& root) {
    const JsonNode* node = root.member("notation");
    const auto declared = node == nullptr ? std::nullopt : parseCode<Notation>(node->text);
    return declared.value_or(Notation::Iso3950);
}

Prescription prescriptionOf(const JsonNode& root) {
    if (root.kind != JsonNode::Kind::Object)
        throw Trouble{root.line, "the prescription", "a group of fields { ... }", shown(root)};
    const Reader reader{declaredNotation(root)};
    FieldReader fields{reader, root, ""};
    std::string format;
    fields.field(kFormatField, format);
    if (format != kPrescriptionFormat)
        throw Trouble{root.member(kFormatField)->line, std::string{kFormatField},
                      '"' + std::string{kPrescriptionFormat} + '"', '"' + format + '"'};
    Prescription prescription;
    describe(fields, prescription);
    fields.refuseUnknown();
    return prescription;
}

}  // namespace

Result<Prescription> readPrescription(std::string_view text, std::string_view fileName) {
    constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
    if (text.starts_with(kByteOrderMark)) text.remove_prefix(kByteOrderMark.size());
    auto root = parseJson(text, fileName);
    if (!root) return root.error();
    try {
        return prescriptionOf(*root);
    } catch (const Trouble& trouble) {
        return Error{ErrorCode::Unusable, std::string{fileName} + ':' +
                                              std::to_string(trouble.line) + ": " + trouble.path +
                                              ": expected " + trouble.expected +
                                              "; given: " + trouble.given};
    }
}

Result<Prescription> loadPrescription(const std::filesystem::path& file) {
    const auto text = readPlainFile(file, {"a prescription", kLargestPrescription});
    if (!text) return text.error();
    return readPrescription(*text, file.string());
}

}  // namespace storage
