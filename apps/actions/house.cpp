#include "apps/actions/house.h"

#include <sstream>

#include "apps/actions/access.h"
#include "storage/files/shade_guide_file.h"
#include "storage/settings_store.h"
#include "storage/shade_guide_store.h"
#include "storage/transaction.h"

namespace actions {
namespace {

using domain::Done;
using domain::Error;
using domain::ErrorCode;
using domain::HouseLimits;
using domain::Quantity;
using domain::Result;

/// What is typed to have the documented default again.
constexpr std::string_view kDefault = "default";

/// What a limit is called among the settings.
std::string settingOf(std::string_view word) { return "limit." + std::string{word}; }

/// Fills each limit with what was set, and remembers what could not be read.
class LimitReader {
public:
    explicit LimitReader(const storage::SettingsStore& settings) : settings_{settings} {}

    template <typename Unit>
    void field(std::string_view word, Quantity<Unit>& limit, std::string_view, std::string_view) {
        if (trouble_) return;
        const auto written = settings_.find(settingOf(word));
        if (!written)
            trouble_ = written.error();
        else if (*written && !(*written)->empty())
            set(word, limit, **written);
    }
    const std::optional<Error>& trouble() const { return trouble_; }

private:
    template <typename Unit>
    void set(std::string_view word, Quantity<Unit>& limit, const std::string& written) {
        if (const auto read = domain::parseQuantity<Unit>(written))
            limit = *read;
        else
            trouble_ = Error{ErrorCode::Unavailable, "the limit " + std::string{word} +
                                                         " in the records is no amount as \"" +
                                                         std::string{Unit::kExample} + '"'};
    }

    const storage::SettingsStore& settings_;
    std::optional<Error> trouble_;
};

class LineMaker {
public:
    template <typename Unit>
    void field(std::string_view word, const Quantity<Unit>& limit, std::string_view says,
               std::string_view schools) {
        lines_.push_back(
            {std::string{word}, text(limit), {}, std::string{says}, std::string{schools}});
    }
    std::vector<LimitLine> take() { return std::move(lines_); }

private:
    std::vector<LimitLine> lines_;
};

/// Finds one limit by its word and says whether a text is an amount for it.
class AmountCheck {
public:
    AmountCheck(std::string_view word, const std::string& amount) : word_{word}, amount_{amount} {}

    template <typename Unit>
    void field(std::string_view word, const Quantity<Unit>&, std::string_view, std::string_view) {
        words_ += (words_.empty() ? "" : ", ") + std::string{word};
        if (word != word_) return;
        known_ = true;
        if (amount_ == kDefault) return;
        const auto read = domain::parseQuantity<Unit>(amount_);
        if (!read || read->count() == 0)
            refusal_ = "expected an amount above 0 and at most " +
                       domain::decimalText(Unit::kMost, Unit::kPerWritten) +
                       " with its unit, as \"" + std::string{Unit::kExample} + "\", or \"default\"";
    }
    std::optional<std::string> refusal() const {
        if (!known_) return "no such limit; expected one of: " + words_;
        return refusal_;
    }

private:
    std::string_view word_;
    const std::string& amount_;
    bool known_{false};
    std::string words_;
    std::optional<std::string> refusal_;
};

constexpr std::string_view kRetentionSetting = "retention.terms";
/// Regulation (EU) 2017/745, Annex XIII, 4: the longest of those that are known.
constexpr std::string_view kUsualRetention = "eu";

Error unknownTerm(const std::string& id, const std::string& known) {
    return {ErrorCode::Unusable,
            '"' + id + "\" is no term of retention; expected some of: " + known};
}

/// "eu, us-fl": each id must be that of a term.
Result<std::vector<domain::RetentionTerm>> termsIn(const std::string& ids) {
    std::vector<domain::RetentionTerm> terms;
    std::string known;
    for (const domain::RetentionTerm& term : domain::retentionTerms())
        known.append(known.empty() ? "" : ", ").append(term.id);
    std::istringstream list{ids};
    for (std::string id; std::getline(list >> std::ws, id, ',');) {
        const domain::RetentionTerm* term = domain::retentionTermOf(id);
        if (term == nullptr) return unknownTerm(id, known);
        terms.push_back(*term);
    }
    if (terms.empty())
        return Error{ErrorCode::Unusable, "a term of retention was expected: " + known};
    return terms;
}

}  // namespace

Result<House> houseOf(const Laboratory& laboratory) {
    House house;
    const storage::SettingsStore settings{laboratory.records()};
    LimitReader limits{settings};
    describe(limits, house.limits);
    if (limits.trouble()) return *limits.trouble();
    auto guides = storage::ShadeGuideStore{laboratory.records()}.all();
    if (!guides) return guides.error();
    for (const domain::ShadeGuide& guide : *guides) {
        std::erase_if(house.guides, [&](const domain::ShadeGuide& known) {
            return domain::guideNamed({&guide, 1}, known.name) != nullptr;
        });
        house.guides.push_back(guide);
    }
    return house;
}

Result<House> houseIn(const std::filesystem::path& folder, const domain::Clock& clock) {
    if (!Laboratory::isIn(folder)) return House{};
    const auto laboratory = Laboratory::openExisting(folder, clock);
    if (!laboratory) return laboratory.error();
    return houseOf(*laboratory);
}

std::vector<LimitLine> limitLines(const HouseLimits& limits) {
    LineMaker maker;
    describe(maker, limits);
    auto lines = maker.take();
    LineMaker usual;
    const HouseLimits defaults;
    describe(usual, defaults);
    const auto defaultLines = usual.take();
    for (std::size_t at = 0; at < lines.size(); ++at) lines[at].usual = defaultLines[at].value;
    return lines;
}

Result<Done> writeLimit(const Laboratory& laboratory, const std::string& word,
                        const std::string& text, const Who& who) {
    if (const auto allowed = authorise(laboratory, who, domain::Permission::KeepWorkshop); !allowed)
        return allowed.error();
    HouseLimits limits;
    AmountCheck check{word, text};
    describe(check, limits);
    if (const auto refusal = check.refusal())
        return Error{ErrorCode::Unusable, word + ": " + *refusal + "; given: \"" + text + '"'};
    auto transaction = storage::Transaction::begin(laboratory.records());
    if (!transaction) return transaction.error();
    storage::Transaction work = *std::move(transaction);
    const storage::SettingsStore settings{laboratory.records()};
    if (auto put = settings.put(work, settingOf(word), text == kDefault ? std::string{} : text);
        !put)
        return put.error();
    return work.commit();
}

Result<domain::ShadeGuide> enterGuide(const Laboratory& laboratory, const std::string& name,
                                      const std::filesystem::path& file, const Who& who) {
    if (const auto allowed = authorise(laboratory, who, domain::Permission::KeepWorkshop); !allowed)
        return allowed.error();
    constexpr std::size_t kLongestName = 60;
    if (name.find_first_not_of(" \t") == std::string::npos || name.size() > kLongestName)
        return Error{ErrorCode::Unusable, "expected the name of a shade guide, of at most " +
                                              std::to_string(kLongestName) + " bytes"};
    auto tabs = storage::loadShadeTabs(file);
    if (!tabs) return tabs.error();
    const domain::ShadeGuide guide{
        .name = name,
        .source = "entered by the laboratory on " + laboratory.today().text(),
        .tabs = *std::move(tabs)};
    auto transaction = storage::Transaction::begin(laboratory.records());
    if (!transaction) return transaction.error();
    storage::Transaction work = *std::move(transaction);
    if (auto put = storage::ShadeGuideStore{laboratory.records()}.put(work, guide); !put)
        return put.error();
    if (auto committed = work.commit(); !committed) return committed.error();
    return guide;
}

Result<std::vector<domain::RetentionTerm>> retentionOf(const Laboratory& laboratory) {
    const storage::SettingsStore settings{laboratory.records()};
    const auto written = settings.find(kRetentionSetting);
    if (!written) return written.error();
    return termsIn(written->value_or(std::string{kUsualRetention}));
}

Result<domain::Done> writeRetention(const Laboratory& laboratory, const std::string& ids,
                                    const Who& who) {
    if (const auto allowed = authorise(laboratory, who, domain::Permission::KeepWorkshop); !allowed)
        return allowed.error();
    if (const auto terms = termsIn(ids); !terms) return terms.error();
    auto transaction = storage::Transaction::begin(laboratory.records());
    if (!transaction) return transaction.error();
    storage::Transaction work = *std::move(transaction);
    const storage::SettingsStore settings{laboratory.records()};
    if (auto put = settings.put(work, kRetentionSetting, ids); !put) return put.error();
    return work.commit();
}

}  // namespace actions
