#include "apps/actions/house.h"

#include "apps/actions/settings.h"
#include "storage/files/shade_guide_file.h"
#include "storage/settings_store.h"
#include "storage/shade_guide_store.h"

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
    const auto laboratory = Laboratory::openExisting(folder, clock, {.mayLack = true});
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
    HouseLimits limits;
    AmountCheck check{word, text};
    describe(check, limits);
    if (const auto refusal = check.refusal())
        return Error{ErrorCode::Unusable, word + ": " + *refusal + "; given: \"" + text + '"'};
    const std::string name = settingOf(word);
    return writeSettings(laboratory, who,
                         {{SettingRow{.name = name}, text == kDefault ? std::string{} : text}});
}

Result<domain::ShadeGuide> enterGuide(const Laboratory& laboratory, const std::string& name,
                                      const std::filesystem::path& file, const Who& who) {
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
    std::string command = commandOf({"guide", name});
    for (const domain::ShadeTab& tab : guide.tabs)
        command += commandOf({tab.name, tab.colour ? tab.colour->text() : std::string{}});
    const auto put = perform(laboratory, who, {domain::Permission::KeepWorkshop, command, {}},
                             [&](UnitOfWork& unit) -> Result<Done> {
                                 const storage::ShadeGuideStore store{laboratory.records()};
                                 if (auto entered = store.put(unit.transaction(), guide); !entered)
                                     return entered;
                                 return unit.record({domain::SubjectKind::Guide, "shades"},
                                                    domain::GuideEntered{guide});
                             });
    if (!put) return put.error();
    return guide;
}

Result<std::vector<domain::RetentionTerm>> retentionOf(const Laboratory& laboratory) {
    const auto ids = setting(laboratory, kRetentionTerms);
    if (!ids) return ids.error();
    return termsIn(*ids);
}

Result<Done> writeRetention(const Laboratory& laboratory, const std::string& ids, const Who& who) {
    return writeSettings(laboratory, who, {{kRetentionTerms, ids}});
}

}  // namespace actions
