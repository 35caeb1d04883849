#include "storage/sealed_texts.h"

#include <QRandomGenerator>
#include <array>
#include <vector>

#include "storage/counted_code.h"
#include "storage/digest.h"
#include "storage/event_codec.h"
#include "storage/ids.h"
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
constexpr std::size_t kSaltBytes = 16;

std::string newSalt() {
    std::array<quint32, 4> words{};
    static_assert(sizeof words == kSaltBytes);
    QRandomGenerator::system()->fillRange(words.data(), words.size());
    return {reinterpret_cast<const char*>(words.data()), sizeof words};
}

/// Of a salt with the text behind it.
std::string digestOf(const std::string& saltAndText) {
    return sha256({QByteArrayView{kSealedDomain, sizeof kSealedDomain},
                   QByteArrayView{saltAndText.data(), static_cast<qsizetype>(saltAndText.size())}});
}

/// A text lies under its digest, which the ledger holds too.
SealedPlace placeOf(const std::string& digest) { return {"sealed_text", digest, "ciphertext"}; }

/// A row as it lies there.
struct Row {
    Value ciphertext;
    Value digest;

    explicit Row(const Statement& row)
        : ciphertext{row.value("ciphertext")}, digest{row.value("digest")} {}

    bool isErased() const { return ciphertext == Value{}; }
    /// The words, if they are those that were sealed under `expected`.
    std::optional<std::string> words(const IdentityCipher& cipher,
                                     const std::string& expected) const {
        const auto* bytes = std::get_if<QByteArray>(&ciphertext);
        if (digest != Value{expected} || bytes == nullptr) return {};
        const auto text = cipher.open(placeOf(expected), *bytes);
        if (!text || text->size() < kSaltBytes || digestOf(*text) != expected) return {};
        return text->substr(kSaltBytes);
    }
    /// Whether it is what was sealed under `expected`, as far as it can be told: erased words
    /// cannot, and without the key the others cannot either.
    bool fits(const IdentityCipher* cipher, const std::string& expected) const {
        if (digest != Value{expected}) return false;
        if (isErased()) return true;
        if (cipher == nullptr) return std::holds_alternative<QByteArray>(ciphertext);
        return words(*cipher, expected).has_value();
    }
};

/// What a cell of records without a key held, whatever it was.
std::string bytesIn(const Value& value) {
    if (const auto* text = std::get_if<std::string>(&value)) return *text;
    if (const auto* bytes = std::get_if<QByteArray>(&value)) return bytes->toStdString();
    return {};
}

Error lost(const SealedText& sealed, const std::string& what) {
    return {ErrorCode::Unavailable, "sealed text " + sealed.code + ' ' + what};
}

/// Runs a statement about one text that answers with its id.
Result<Done> change(Transaction& transaction, const SealedText& sealed,
                    std::string_view statement) try {
    const auto id = countOf(kSealedTextCode, sealed.code);
    if (!id) return lost(sealed, "has no such code");
    Statement change{transaction.connection(), statement};
    if (!change.bind("sealed_text_id", *id).run().next()) return lost(sealed, "is missing");
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

/// Each text is the one an event has the digest of, and erased if its order was purged, only then.
class TextCheck : public TableCheck {
public:
    explicit TextCheck(Connection& connection) : connection_{connection} {
        if (const auto cipher = connection.identity()) cipher_ = *cipher;
    }

    void entry(const LedgerEvent& event) override {
        for (const SealedText& sealed : sealedTextsIn(event)) {
            const auto id = countOf(kSealedTextCode, sealed.code);
            Statement query{connection_, "sealed_text_of_id"};
            if (!id || !query.bind("sealed_text_id", *id).run().next()) {
                found("sealed text " + sealed.code + " is missing");
                continue;
            }
            takenUp_.add(*id);
            const Row row{query};
            const bool purged = isPurged(event);
            if (!row.fits(cipher_, sealed.digest))
                found("sealed text " + sealed.code + " was altered: its digest does not fit");
            else if (row.isErased() && !purged)
                found("sealed text " + sealed.code + " was erased, and its order was not purged");
            else if (!row.isErased() && purged)
                found("sealed text " + sealed.code + " is there, and its order was purged");
        }
    }
    void end() override {
        Statement rows{connection_, "sealed_text_digests"};
        rows.run();
        while (rows.next()) {
            const std::int64_t id = rows.whole("sealed_text_id");
            if (!takenUp_.contains(id))
                found("sealed text " + countedCode(kSealedTextCode, id) + " belongs to no event");
        }
    }

private:
    /// Whether the order an event is about ended in its purge, which erases its texts.
    bool isPurged(const LedgerEvent& event) {
        const auto* order = std::get_if<domain::Event>(&event);
        if (order == nullptr) return false;
        Statement newest{connection_, "ledger_newest_of_subject"};
        return newest.bind("subject", order->order.text()).run().next() &&
               newest.text("kind") == codeOf(domain::EventKind::Purged);
    }

    Connection& connection_;
    const IdentityCipher* cipher_{nullptr};
    Ids takenUp_;
};

}  // namespace

Result<SealedText> SealedTexts::seal(Transaction& transaction, const std::string& text) const try {
    const auto cipher = connection_.identity();
    if (!cipher) return cipher.error();
    const std::string saltAndText = newSalt() + text;
    const std::string digest = digestOf(saltAndText);
    Statement insert{transaction.connection(), "sealed_text_insert"};
    insert.bind({{"ciphertext", (**cipher).seal(placeOf(digest), saltAndText)}, {"digest", digest}})
        .run()
        .next();
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
    if (!row.fits(nullptr, sealed.digest))
        return lost(sealed, "was altered: its digest does not fit");
    if (row.isErased()) return std::optional<std::string>{};
    const auto cipher = connection_.identity();
    if (!cipher) return cipher.error();
    auto words = row.words(**cipher, sealed.digest);
    if (!words) return lost(sealed, "was altered: its digest does not fit");
    return words;
} catch (const SqlFailure& failure) {
    return failure.error();
}

Result<Done> SealedTexts::erase(Transaction& transaction, const SealedText& sealed) const {
    return change(transaction, sealed, "sealed_text_erase");
}

Result<Done> SealedTexts::remove(Transaction& transaction, const SealedText& sealed) const {
    return change(transaction, sealed, "sealed_text_remove");
}

std::unique_ptr<TableCheck> SealedTexts::check() const {
    return std::make_unique<TextCheck>(connection_);
}

Result<Done> encryptTexts(Transaction& work, const IdentityCipher& cipher) try {
    Connection& records = work.connection();
    std::int64_t last = 0;
    for (bool more = true; more;) {
        std::vector<std::vector<Cell>> cells;
        Statement rows{records, "sealed_text_clear"};
        rows.bind("sealed_text_id", last).run();
        for (more = false; rows.next(); more = true) {
            last = rows.whole("sealed_text_id");
            if (rows.value("salt") == Value{} && rows.value("content") == Value{}) continue;
            // What was altered stays so: it will not fit its digest.
            cells.push_back({{"sealed_text_id", last},
                             {"ciphertext", cipher.seal(placeOf(bytesIn(rows.value("digest"))),
                                                        bytesIn(rows.value("salt")) +
                                                            bytesIn(rows.value("content")))}});
        }
        for (const auto& row : cells) Statement{records, "sealed_text_encrypt"}.bind(row).run();
    }
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace storage
