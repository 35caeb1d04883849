#include "storage/sealed_texts.h"

#include <QRandomGenerator>
#include <array>
#include <map>

#include "storage/counted_code.h"
#include "storage/digest.h"
#include "storage/ledger.h"
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

Result<std::vector<std::string>> SealedTexts::verify() const try {
    const Snapshot snapshot{connection_};
    std::map<std::string, std::string> digests;
    const auto visited = Ledger{connection_}.visitAll([&](const LedgerEvent& event) {
        for (const SealedText& sealed : sealedTextsIn(event)) digests[sealed.code] = sealed.digest;
    });
    if (!visited) return visited.error();
    std::vector<std::string> problems;
    Statement rows{connection_, "sealed_text_all"};
    rows.run();
    while (rows.next()) {
        const Row row{rows};
        const std::string code = countedCode(kSealedTextCode, rows.whole("sealed_text_id"));
        // A text no event took up, as a reason that was not needed, has only its own digest.
        const auto committed = digests.extract(code);
        const auto* own = std::get_if<std::string>(&row.digest);
        if (own == nullptr || !row.fits(committed ? committed.mapped() : *own))
            problems.push_back("sealed text " + code + " was altered: its digest does not fit");
    }
    for (const auto& [code, digest] : digests)
        problems.push_back("sealed text " + code + " is missing");
    return problems;
} catch (const SqlFailure& failure) {
    return failure.error();
}

}  // namespace storage
