#include "apps/desktop/models/tooth_choices.h"

#include <algorithm>

namespace models {
namespace {

using namespace domain;

/// Collects the choices for one tooth; each begins as the prescription is.
class Menu {
public:
    Menu(const Prescription& prescription, Tooth tooth) : before_{prescription}, tooth_{tooth} {}

    std::vector<ToothChoice> take() && {
        states();
        if (before_.dentition.stands(tooth_)) {
            rests();
            clasps();
            guidePlates();
        } else {
            saddles();
        }
        takeAway();
        return std::move(choices_);
    }

private:
    Prescription& offer(std::string group, std::string word, bool holds = false) {
        choices_.push_back({std::move(group), std::move(word), holds, before_});
        return choices_.back().after;
    }

    void states() {
        for (const auto& code : enumCodes<ToothState>) {
            Prescription& after =
                offer("is", spoken(code.word), before_.dentition.of(tooth_) == code.value);
            after.dentition.set(tooth_, code.value);
            const bool replaced =
                code.value == ToothState::Missing || code.value == ToothState::ToBeExtracted;
            if (!replaced) leaveSaddles(after);
        }
    }

    void rests() {
        if (tooth_.kind() == ToothKind::Molar || tooth_.kind() == ToothKind::Premolar) {
            for (const Surface side : {Surface::Mesial, Surface::Distal})
                offer("rest", "occlusal, " + wordsOf(side))
                    .rests.push_back({.tooth = tooth_, .kind = RestKind::Occlusal, .side = side});
            return;
        }
        for (const RestKind kind : {RestKind::Cingulum, RestKind::Incisal})
            offer("rest", wordsOf(kind)).rests.push_back({.tooth = tooth_, .kind = kind});
    }

    void clasps() {
        for (const auto& code : enumCodes<ClaspKind>)
            offer("clasp", spoken(code.word))
                .clasps.push_back({.tooth = tooth_, .kind = code.value});
    }

    void guidePlates() {
        for (const Surface face : {Surface::Mesial, Surface::Distal})
            offer("guide plate", wordsOf(face))
                .guidePlates.push_back({.tooth = tooth_, .face = face});
    }

    void saddles() {
        for (std::size_t i = 0; i < before_.saddles.size(); ++i) {
            const auto& teeth = before_.saddles[i].teeth;
            std::string word = "saddle " + std::to_string(i + 1) + ':';
            for (const Tooth each : teeth) word += ' ' + nameOf(each, notationOf(before_));
            Prescription& after = offer("saddle", word, std::ranges::count(teeth, tooth_) != 0);
            if (std::ranges::count(teeth, tooth_) == 0) join(after, after.saddles[i]);
        }
        Prescription& after = offer("saddle", "new saddle");
        leaveSaddles(after);
        after.saddles.push_back({.teeth = {tooth_}});
        replaceIfPresentNoMore(after);
    }

    /// Teeth of a saddle stand in the order of the arch.
    void join(Prescription& after, Saddle& saddle) const {
        saddle.teeth.push_back(tooth_);
        std::ranges::sort(saddle.teeth, {}, [](Tooth tooth) { return tooth.position(); });
        for (Saddle& other : after.saddles)
            if (&other != &saddle) std::erase(other.teeth, tooth_);
        std::erase_if(after.saddles, [](const Saddle& each) { return each.teeth.empty(); });
        replaceIfPresentNoMore(after);
    }

    /// A tooth in a saddle is one to be replaced, whatever was said of its gap before.
    void replaceIfPresentNoMore(Prescription& after) const {
        if (after.dentition.of(tooth_) != ToothState::ToBeExtracted)
            after.dentition.set(tooth_, ToothState::Missing);
    }

    void leaveSaddles(Prescription& after) const {
        for (Saddle& saddle : after.saddles) std::erase(saddle.teeth, tooth_);
        std::erase_if(after.saddles, [](const Saddle& saddle) { return saddle.teeth.empty(); });
    }

    template <typename Part>
    void takeAwayFrom(std::vector<Part> Prescription::* parts, const std::string& name) {
        const auto here = [this](const Part& part) { return part.tooth == tooth_; };
        if (std::ranges::any_of(before_.*parts, here))
            std::erase_if(offer("take away", name).*parts, here);
    }

    void takeAway() {
        takeAwayFrom(&Prescription::rests, "rests here");
        takeAwayFrom(&Prescription::clasps, "clasps here");
        takeAwayFrom(&Prescription::guidePlates, "guide plates here");
        takeAwayFrom(&Prescription::minorConnectors, "minor connectors here");
        takeAwayFrom(&Prescription::indirectRetainers, "indirect retainer here");
        if (replacedTeeth(before_).has(tooth_)) leaveSaddles(offer("take away", "from its saddle"));
    }

    const Prescription& before_;
    Tooth tooth_;
    std::vector<ToothChoice> choices_;
};

}  // namespace

std::vector<ToothChoice> toothChoices(const Prescription& prescription, Tooth tooth) {
    return Menu{prescription, tooth}.take();
}

}  // namespace models
