#include "storage/order_labels.h"

#include <QString>
#include <algorithm>
#include <limits>
#include <set>

#include "storage/files/prescription_file.h"
#include "storage/identity_cipher.h"
#include "storage/sealed_texts.h"

namespace storage {
namespace {

using domain::Done;
using domain::Event;
using domain::Order;
using domain::OrderNumber;
using domain::Result;

constexpr std::string_view kTable = "order_label";
constexpr std::string_view kWordPurpose = "a word of an order's label";
/// Enough to tell the words of a laboratory apart, hexadecimal digits.
constexpr std::size_t kWordDigits = 24;
/// A word that more orders have than this is no good to begin a search with.
constexpr std::int64_t kManyOrders = 1000;

template <typename T>
T must(Result<T> result) {
    if (!result) throw SqlFailure{result.error().message};
    return *std::move(result);
}

/// What an order is known by: its label, and all words that name somebody in it.
struct Names {
    OrderLabel label;
    std::set<std::string> words;  ///< digests
};

std::string digestOf(const IdentityCipher& cipher, const std::string& word) {
    return cipher.digest(kWordPurpose, word).substr(0, kWordDigits);
}

/// nullopt: they were erased.
std::optional<Names> namesOf(Connection& connection, const IdentityCipher& cipher,
                             const Order& order) {
    if (order.purged) return {};
    const domain::Parties& parties = order.revision.parties;
    const auto text = must(SealedTexts{connection}.open(parties.identity));
    if (!text) return {};
    const auto full = must(readPrescription(*text, "sealed text " + parties.identity.code));
    const domain::Identity& identity = full.identity;
    Names names{.label = {.patient = identity.patientReference.value_or(
                              identity.patientName.value_or(parties.patient)),
                          .prescriber = identity.prescriberName.value_or(parties.prescriber)},
                .words = {}};
    for (const auto& named : {identity.patientReference, identity.patientName,
                              identity.prescriberName, std::optional{parties.patient}})
        if (named)
            for (const std::string& word : searchWords(*named))
                names.words.insert(digestOf(cipher, word));
    return names;
}

/// Of a text that is missing or was altered, which the check of the texts tells, there are none.
std::optional<Names> namesIfWhole(Connection& connection, const IdentityCipher& cipher,
                                  const Order& order) {
    try {
        return namesOf(connection, cipher, order);
    } catch (const SqlFailure&) {
        return {};
    }
}

Value sealed(const IdentityCipher& cipher, const std::string& number, std::string_view column,
             const std::string& text) {
    return cipher.seal({kTable, number, column}, text);
}

std::string opened(const IdentityCipher& cipher, const Statement& row, std::string_view column) {
    const std::string number = row.text("order_number");
    return must(cipher.open({kTable, number, column}, row.bytes(column)));
}

OrderLabel labelIn(const IdentityCipher& cipher, const Statement& row) {
    return {.patient = opened(cipher, row, "patient"),
            .prescriber = opened(cipher, row, "prescriber")};
}

std::vector<Cell> placeOf(const OrderNumber& number) {
    return {{"year", std::int64_t{number.year()}}, {"count", std::int64_t{number.count()}}};
}

void remove(Connection& connection, const OrderNumber& number) {
    Statement{connection, "order_label_remove"}.bind("order_number", number.text()).run();
    Statement{connection, "label_word_remove"}.bind(placeOf(number)).run();
}

void insert(Connection& connection, const IdentityCipher& cipher, const OrderNumber& number,
            const Names& names) {
    const std::string& text = number.text();
    Statement{connection, "order_label_insert"}
        .bind({{"order_number", text},
               {"patient", sealed(cipher, text, "patient", names.label.patient)},
               {"prescriber", sealed(cipher, text, "prescriber", names.label.prescriber)}})
        .run();
    for (const std::string& word : names.words)
        Statement{connection, "label_word_insert"}.bind(placeOf(number)).bind("word", word).run();
}

/// Whether the names of an order may be others after an event.
bool changesNames(const Event& event) {
    const auto* answered = std::get_if<domain::Answered>(&event.what);
    return std::holds_alternative<domain::Received>(event.what) ||
           std::holds_alternative<domain::Purged>(event.what) ||
           (answered != nullptr && answered->revision);
}

class LabelWriter : public LedgerListener {
public:
    explicit LabelWriter(Connection& connection) : connection_{connection} {}

    void order(const Order& order) override {
        const auto* cipher = must(connection_.identity());
        if (const auto names = namesIfWhole(connection_, *cipher, order))
            insert(connection_, *cipher, order.number, *names);
    }

private:
    Connection& connection_;
};

/// Compares label and words of each order that is told with its sealed text. Without the key of the
/// records only what is there too much shows.
class LabelCheck : public TableCheck {
public:
    explicit LabelCheck(Connection& connection) : connection_{connection} {
        if (const auto cipher = connection.identity()) cipher_ = *cipher;
    }

    void order(const Order& order) override {
        if (cipher_ == nullptr) return;
        const auto names = namesIfWhole(connection_, *cipher_, order);
        const std::string number = order.number.text();
        if (labelOf(number) != (names ? std::optional{names->label} : std::nullopt))
            found("the label of order " + number + " is not what its sealed text says");
        if (wordsOf(order.number) != (names ? names->words : std::set<std::string>{}))
            found("the words order " + number + " is found by are not those of its sealed text");
    }
    void end() override {
        Statement labels{connection_, "order_label_strange"};
        labels.run();
        while (labels.next())
            found("there is a label of order " + shown(labels.value("order_number")) +
                  ", which the ledger has not");
        Statement words{connection_, "label_word_strange"};
        words.run();
        while (words.next())
            found("there is a word of order " + shown(words.value("count")) + " of the year " +
                  shown(words.value("year")) + ", which the register has not");
    }

private:
    std::optional<OrderLabel> labelOf(const std::string& number) {
        Statement row{connection_, "order_label_of_number"};
        if (!row.bind("order_number", number).run().next()) return {};
        try {
            return labelIn(*cipher_, row);
        } catch (const SqlFailure&) {
            return OrderLabel{};  // was altered: nobody's label
        }
    }
    std::set<std::string> wordsOf(const OrderNumber& number) {
        Statement rows{connection_, "label_word_of_order"};
        rows.bind(placeOf(number)).run();
        std::set<std::string> words;
        while (rows.next()) words.insert(rows.text("word"));
        return words;
    }

    Connection& connection_;
    const IdentityCipher* cipher_{nullptr};
};

}  // namespace

std::vector<std::string> searchWords(const std::string& text) {
    std::set<std::string> words;
    QString word;
    const auto end = [&] {
        if (!word.isEmpty()) words.insert(word.toCaseFolded().toStdString());
        word.clear();
    };
    const QString plain =
        QString::fromStdString(text).normalized(QString::NormalizationForm_KD).toCaseFolded();
    for (const char32_t sign : plain.toUcs4()) {
        if (QChar::category(sign) == QChar::Mark_NonSpacing) continue;
        if (QChar::isLetterOrNumber(sign))
            word += QString::fromUcs4(&sign, 1);
        else
            end();
    }
    end();
    return {words.begin(), words.end()};
}

Result<Done> OrderLabels::put(Transaction& transaction, const Order& order,
                              const std::vector<Event>& events) const try {
    if (std::ranges::none_of(events, changesNames)) return Done{};
    Connection& connection = transaction.connection();
    const auto* cipher = must(connection.identity());
    remove(connection, order.number);
    if (const auto names = namesOf(connection, *cipher, order))
        insert(connection, *cipher, order.number, *names);
    return Done{};
} catch (const SqlFailure& failure) {
    return failure.error();
}

std::optional<OrderLabel> OrderLabels::read(const Statement& row) const {
    if (row.value("patient") == Value{}) return {};
    return labelIn(*must(connection_.identity()), row);
}

Result<std::vector<OrderNumber>> OrderLabels::find(const std::vector<std::string>& words,
                                                   const std::optional<OrderNumber>& before,
                                                   std::size_t most) const try {
    std::vector<OrderNumber> numbers;
    if (words.empty()) return numbers;
    const auto* cipher = must(connection_.identity());
    // The word that the fewest orders have comes first; the others are looked up.
    std::vector<std::pair<std::int64_t, std::string>> digests;
    for (const std::string& word : words) {
        const std::string digest = digestOf(*cipher, word);
        Statement count{connection_, "label_word_count"};
        count.bind({{"word", digest}, {"most", kManyOrders}}).run().next();
        digests.emplace_back(count.whole("orders"), digest);
    }
    std::ranges::sort(digests);
    const auto hasAll = [&](std::int64_t year, std::int64_t count) {
        return std::all_of(digests.begin() + 1, digests.end(), [&](const auto& other) {
            Statement has{connection_, "label_word_has"};
            return has.bind({{"word", other.second}, {"year", year}, {"count", count}})
                .run()
                .next();
        });
    };
    constexpr std::int64_t kEnd = std::numeric_limits<std::int64_t>::max();
    Statement rows{connection_, "label_word_orders"};
    rows.bind({{"word", digests.front().second},
               {"year", before ? std::int64_t{before->year()} : kEnd},
               {"count", before ? std::int64_t{before->count()} : kEnd}})
        .run();
    while (numbers.size() < most && rows.next()) {
        const std::int64_t year = rows.whole("year");
        const std::int64_t count = rows.whole("count");
        if (!hasAll(year, count)) continue;
        if (const auto number = OrderNumber::make(static_cast<int>(year), static_cast<int>(count)))
            numbers.push_back(*number);
    }
    return numbers;
} catch (const SqlFailure& failure) {
    return failure.error();
}

std::unique_ptr<LedgerListener> OrderLabels::rebuild(Transaction& transaction) const {
    Connection& connection = transaction.connection();
    Statement{connection, "order_label_clear"}.run();
    Statement{connection, "label_word_clear"}.run();
    return std::make_unique<LabelWriter>(connection);
}

std::unique_ptr<TableCheck> OrderLabels::check() const {
    return std::make_unique<LabelCheck>(connection_);
}

}  // namespace storage
