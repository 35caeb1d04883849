#include "storage/sealed_texts.h"

#include <QRandomGenerator>
#include <array>
#include <vector>

#include "storage/counted_code.h"
#include "storage/digest.h"
#include "storage/event_codec.h"
#include "storage/statement.h"

namespace storage {
namespace {

using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::Result;
using domain::SealedText;

/// Keeps the digests of texts apart from the hashes of the ledger.
constexpr char kSealedDomain[] = {1};

QByteArray newSalt() {
    std::array<quint32, 4> words{};
    QRandomGenerator::system()->fillRange(words.data(), words.size());
    return {reinterpret_cast<const char*>(words.data()), sizeof words};
}

std::string digestOf(const QByteArray& salt, const std::string& text) {
    return sha256({QByteArrayView{kSealedDomain, sizeof kSealedDomain}, salt,
                   QByteArrayView{text.data(), static_cast<qsizetype>(text.size())}});
}

/// A row as it lies there.
struct Row {
    Value salt;
    Value content;
    Value digest;

    explicit Row(const Statement& row)
        : salt{row.value("salt")}, content{row.value("content")}, digest{row.value("digest")} {}

    bool isErased() const { return salt == Value{} && content == Value{}; }
    /// Whether the words are those that were sealed under `expected`; erased ones cannot be told.
    bool fits(const std::string& expected) const {
        if (digest != Value{expected}) return false;
        if (isErased()) return true;
        const auto* bytes = std::get_if<QByteArray>(&salt);
        const auto* text = std::get_if<std::string>(&content);
        return bytes != nullptr && text != nullptr && digestOf(*bytes, *text) == expected;
    }
};

Error lost(const SealedText& sealed, const std::string& what) {
    return {ErrorCode::Unavailable, "sealed text " + sealed.code + ' ' + what};
}

/// Compares each text with its digest as the ledger has it; what no event took up, as a reason that
/// was not needed, with its own.
class TextCheck : public TableCheck {
public:
    explicit TextCheck(Connection& connection) : connection_{connection} {}

    void entry(const LedgerEvent& event) override {
        for (const SealedText& sealed : sealedTextsIn(event)) {
            const auto id = countOf(kSealedTextCode, sealed.code);
            Statement query{connection_, "sealed_text_of_id"};
            if (!id || !query.bind("sealed_text_id", *id).run().next()) {
                found("sealed text " + sealed.code + " is missing");
                continue;
            }
            takenUp(*id);
            if (!Row{query}.fits(sealed.digest)) altered(sealed.code);
        }
    }
    void end() override {
        Statement rows{connection_, "sealed_text_all"};
        rows.run();
        while (rows.next()) {
            const std::int64_t id = rows.whole("sealed_text_id");
            if (isTakenUp(id)) continue;
            const Row row{rows};
            const auto* own = std::get_if<std::string>(&row.digest);
            if (own == nullptr || !row.fits(*own)) altered(countedCode(kSealedTextCode, id));
        }
    }

private:
    void altered(const std::string& code) {
        found("sealed text " + code + " was altered: its digest does not fit");
    }
    /// The ids are dense: a bit for each.
    void takenUp(std::int64_t id) {
        const auto place = static_cast<std::size_t>(id);
        if (place >= takenUp_.size()) takenUp_.resize(place + 1);
        takenUp_[place] = true;
    }
    bool isTakenUp(std::int64_t id) const {
        return id >= 0 && static_cast<std::size_t>(id) < takenUp_.size() &&
               takenUp_[static_cast<std::size_t>(id)];
    }

    Connection& connection_;
    std::vector<bool> takenUp_;
};

}  // namespace

Result<SealedText> SealedTexts::seal(Transaction& transaction, const std::string& text) const try {
    const QByteArray salt = newSalt();
    const std::string digest = digestOf(salt, text);
    Statement insert{transaction.connection(), "sealed_text_insert"};
    insert.bind({{"salt", salt}, {"content", text}, {"digest", digest}}).run().next();
    return SealedText{countedCode(kSealedTextCode, insert.whole("sealed_text_id")), digest};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<std::optional<std::string>> SealedTexts::open(const SealedText& sealed) const try {
    const auto id = countOf(kSealedTextCode, sealed.code);
    if (!id) return lost(sealed, "has no such code");
    Statement query{connection_, "sealed_text_of_id"};
    query.bind("sealed_text_id", *id).run();
    if (!query.next()) return lost(sealed, "is missing");
    const Row row{query};
    if (!row.fits(sealed.digest)) return lost(sealed, "was altered: its digest does not fit");
    if (row.isErased()) return std::optional<std::string>{};
    return std::optional{query.text("content")};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<Done> SealedTexts::erase(Transaction& transaction, const SealedText& sealed) const try {
    const auto id = countOf(kSealedTextCode, sealed.code);
    if (!id) return lost(sealed, "has no such code");
    Statement erase{transaction.connection(), "sealed_text_erase"};
    if (!erase.bind("sealed_text_id", *id).run().next()) return lost(sealed, "is missing");
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

std::unique_ptr<TableCheck> SealedTexts::check() const {
    return std::make_unique<TextCheck>(connection_);
}

}  // namespace storage
