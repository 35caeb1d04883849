#include "storage/files/json_tree.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <optional>

namespace storage {
namespace {

using domain::Error;
using domain::ErrorCode;

/// Walks the text and counts how far the parser has read, so that events can be given a line.
class CountingIterator {
public:
    using iterator_category = std::input_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char*;
    using reference = const char&;

    CountingIterator(const char* at, const char** furthest) : at_{at}, furthest_{furthest} {}
    reference operator*() const { return *at_; }
    CountingIterator& operator++() {
        ++at_;
        *furthest_ = std::max(*furthest_, at_);
        return *this;
    }
    friend bool operator==(const CountingIterator& a, const CountingIterator& b) {
        return a.at_ == b.at_;
    }
    friend bool operator!=(const CountingIterator& a, const CountingIterator& b) {
        return !(a == b);
    }

private:
    const char* at_;
    const char** furthest_;
};

/// Builds the tree from the parser's events; the first trouble stops it.
class TreeBuilder {
public:
    using number_integer_t = nlohmann::json::number_integer_t;
    using number_unsigned_t = nlohmann::json::number_unsigned_t;
    using number_float_t = nlohmann::json::number_float_t;
    using string_t = nlohmann::json::string_t;
    using binary_t = nlohmann::json::binary_t;

    explicit TreeBuilder(std::string_view text) : furthest_{text.data()}, counted_{text.data()} {}

    const char** furthest() { return &furthest_; }
    const std::optional<std::string>& trouble() const { return trouble_; }
    int line() { return lineAt(furthest_); }
    JsonNode take() { return std::move(root_); }

    bool null() { return put({.kind = JsonNode::Kind::Null}, true); }
    bool boolean(bool value) {
        return put({.kind = JsonNode::Kind::Boolean, .truth = value}, false);
    }
    bool number_integer(number_integer_t value) {  // NOLINT(readability-identifier-naming)
        return put({.kind = JsonNode::Kind::Number, .text = std::to_string(value)}, true);
    }
    bool number_unsigned(number_unsigned_t value) {  // NOLINT(readability-identifier-naming)
        return put({.kind = JsonNode::Kind::Number, .text = std::to_string(value)}, true);
    }
    bool number_float(number_float_t, const string_t& written) {  // NOLINT
        return put({.kind = JsonNode::Kind::Number, .text = written}, true);
    }
    bool string(string_t& value) {
        return put({.kind = JsonNode::Kind::Text, .text = std::move(value)}, false);
    }
    bool binary(binary_t&) { return fail("binary data"); }
    bool start_object(std::size_t) { return open(JsonNode::Kind::Object); }  // NOLINT
    bool start_array(std::size_t) { return open(JsonNode::Kind::List); }     // NOLINT
    bool end_object() { return close(); }                                    // NOLINT
    bool end_array() { return close(); }                                     // NOLINT
    bool key(string_t& name) {
        if (path_.back()->member(name) != nullptr)
            return fail("the field \"" + name + "\" is given twice");
        keys_.back() = std::move(name);
        return true;
    }
    bool parse_error(std::size_t, const std::string&,  // NOLINT(readability-identifier-naming)
                     const nlohmann::detail::exception& error) {
        // "[json.exception...] parse error at line 7, column 65: what went wrong", and without the
        // place where a number is too large.
        std::string what = error.what();
        for (const std::string_view before : {"] ", ": "})
            if (const auto cause = what.find(before); cause != std::string::npos)
                what.erase(0, cause + before.size());
        fail("not valid JSON: " + plain(what));
        return false;
    }

private:
    int lineAt(const char* place) {
        for (; counted_ < place; ++counted_)
            if (*counted_ == '\n') ++line_;
        return line_;
    }
    /// The parser quotes what it read last, which may be bytes that are no text.
    static std::string plain(std::string text) {
        for (char& c : text)
            if (static_cast<unsigned char>(c) < 0x20 || static_cast<unsigned char>(c) > 0x7E)
                c = '?';
        return text;
    }
    bool fail(std::string what) {
        if (!trouble_) trouble_ = std::move(what);
        return false;
    }
    /// A number is known to have ended only at the character after it, which may be a line break.
    JsonNode* place(JsonNode node, bool readOneMore) {
        node.line = lineAt(readOneMore ? furthest_ - 1 : furthest_);
        if (path_.empty()) {
            root_ = std::move(node);
            return &root_;
        }
        JsonNode& parent = *path_.back();
        if (parent.kind == JsonNode::Kind::List) return &parent.items.emplace_back(std::move(node));
        return &parent.members.emplace_back(keys_.back(), std::move(node)).second;
    }
    bool put(JsonNode node, bool readOneMore) {
        place(std::move(node), readOneMore);
        return true;
    }
    bool open(JsonNode::Kind kind) {
        if (path_.size() >= kDeepestJson)
            return fail("nested deeper than " + std::to_string(kDeepestJson) + " levels");
        path_.push_back(place({.kind = kind}, false));
        keys_.emplace_back();
        return true;
    }
    bool close() {
        path_.pop_back();
        keys_.pop_back();
        return true;
    }

    const char* furthest_;
    const char* counted_;
    int line_{1};
    JsonNode root_;
    std::vector<JsonNode*> path_;  // growing a list moves only finished siblings, never these
    std::vector<std::string> keys_;
    std::optional<std::string> trouble_;
};

}  // namespace

const JsonNode* JsonNode::member(std::string_view name) const {
    const auto found =
        std::ranges::find(members, name, [](const auto& each) { return each.first; });
    return found == members.end() ? nullptr : &found->second;
}

std::string shown(const JsonNode& node) {
    constexpr std::size_t kLongestShown = 60;
    switch (node.kind) {
        case JsonNode::Kind::Null:
            return "null";
        case JsonNode::Kind::Boolean:
            return node.truth ? "true" : "false";
        case JsonNode::Kind::Number:
            return "the bare number " + node.text.substr(0, kLongestShown);
        case JsonNode::Kind::Text:
            return '"' + node.text.substr(0, kLongestShown) + '"';
        case JsonNode::Kind::List:
            return "a list";
        case JsonNode::Kind::Object:
            return "a group of fields";
    }
    return {};
}

domain::Result<JsonNode> parseJson(std::string_view text, std::string_view fileName) {
    TreeBuilder builder{text};
    const char* const first = text.data();
    const CountingIterator begin{first, builder.furthest()};
    const CountingIterator end{first + text.size(), builder.furthest()};
    const bool read = nlohmann::json::sax_parse(begin, end, &builder);
    if (!read || builder.trouble())
        return Error{ErrorCode::Unusable, std::string{fileName} + ":" +
                                              std::to_string(builder.line()) + ": " +
                                              builder.trouble().value_or("not valid JSON")};
    return builder.take();
}

}  // namespace storage
