#include "storage/kept_check.h"

#include <map>

#include "storage/laboratory_identity.h"
#include "storage/settings_store.h"
#include "storage/statement.h"

namespace storage {
namespace {

using domain::WorkshopEvent;

class SettingsCheck : public KeptCheck {
public:
    explicit SettingsCheck(Connection& connection) : connection_{connection} {}

    void entry(const LedgerEvent& event) override {
        const auto* workshop = std::get_if<WorkshopEvent>(&event);
        if (workshop == nullptr) return;
        if (const auto* set = std::get_if<domain::SettingSet>(&workshop->what))
            settings_[set->name] = *set;
        if (const auto* taken = std::get_if<domain::TakenOver>(&workshop->what))
            for (const domain::SettingSet& set : taken->settings) settings_[set.name] = set;
    }
    void compare() override {
        Statement rows{connection_, "setting_all"};
        rows.run();
        while (rows.next()) {
            const std::string name = rows.text("name");
            const auto set = settings_.extract(name);
            if (!set)
                found("the setting \"" + name + "\" was never set");
            else if (!fits(rows.value("content"), set.mapped()))
                found("the setting \"" + name + "\" is not as it was set last");
        }
        compareIdentity();
        for (const auto& [name, set] : settings_) found("the setting \"" + name + "\" is missing");
    }

private:
    /// Whose records these are is committed to as a secret setting, and lies in a table of its own.
    void compareIdentity() {
        const auto set = settings_.extract(std::string{kIdentitySetting});
        if (!set) return;
        const auto identity = identityOf(connection_);
        if (!identity || !*identity || identityDigest(**identity) != set.mapped().now)
            found("whose records these are is not as it was set up");
    }
    static bool fits(const Value& content, const domain::SettingSet& set) {
        const auto* text = std::get_if<std::string>(&content);
        return text != nullptr &&
               (set.isSecret ? settingDigest(set.name, *text) : *text) == set.now;
    }

    Connection& connection_;
    std::map<std::string, domain::SettingSet> settings_;
};

class GuidesCheck : public KeptCheck {
public:
    explicit GuidesCheck(Connection& connection) : connection_{connection} {}

    void entry(const LedgerEvent& event) override {
        const auto* workshop = std::get_if<WorkshopEvent>(&event);
        if (workshop == nullptr) return;
        if (const auto* entered = std::get_if<domain::GuideEntered>(&workshop->what))
            guides_[entered->guide.name] = entered->guide;
        if (const auto* taken = std::get_if<domain::TakenOver>(&workshop->what))
            for (const domain::ShadeGuide& guide : taken->guides) guides_[guide.name] = guide;
    }
    void compare() override {
        Statement rows{connection_, "shade_guide_all"};
        rows.run();
        std::map<std::string, domain::ShadeGuide> left = guides_;
        while (rows.next()) {
            const std::string name = rows.text("name");
            const auto known = left.extract(name);
            if (!known)
                found("the shade guide \"" + name + "\" was never entered");
            else if (rows.value("source") != Value{known.mapped().source})
                found("the shade guide \"" + name + "\" is not as it was entered");
        }
        for (const auto& [name, guide] : left) found("the shade guide \"" + name + "\" is missing");
        compareTabs();
    }

private:
    using Tab = std::pair<std::string, std::int64_t>;  ///< guide and place

    void compareTabs() {
        std::map<Tab, const domain::ShadeTab*> tabs;
        for (const auto& [name, guide] : guides_) {
            std::int64_t place = 0;
            for (const domain::ShadeTab& tab : guide.tabs) tabs[{name, ++place}] = &tab;
        }
        Statement rows{connection_, "shade_tab_rows"};
        rows.run();
        while (rows.next()) {
            const auto known = tabs.extract({rows.text("guide"), rows.whole("place")});
            const domain::ShadeTab* tab = known ? known.mapped() : nullptr;
            const bool fits =
                tab != nullptr && rows.value("name") == Value{tab->name} &&
                rows.value("colour") == (tab->colour ? Value{tab->colour->text()} : Value{});
            if (!fits)
                found("tab " + shown(rows.value("name")) + " of the shade guide \"" +
                      rows.text("guide") + "\" is not as it was entered");
        }
        for (const auto& [place, tab] : tabs)
            found("tab \"" + tab->name + "\" of the shade guide \"" + place.first +
                  "\" is missing");
    }

    Connection& connection_;
    std::map<std::string, domain::ShadeGuide> guides_;
};

}  // namespace

std::unique_ptr<KeptCheck> settingsCheck(Connection& connection) {
    return std::make_unique<SettingsCheck>(connection);
}
std::unique_ptr<KeptCheck> guidesCheck(Connection& connection) {
    return std::make_unique<GuidesCheck>(connection);
}

std::vector<std::unique_ptr<KeptCheck>> keptChecks(Connection& connection) {
    std::vector<std::unique_ptr<KeptCheck>> checks;
    for (const auto make : {&settingsCheck, &guidesCheck, &credentialsCheck, &sessionsCheck,
                            &partiesCheck, &papersCheck})
        checks.push_back(make(connection));
    return checks;
}

}  // namespace storage
