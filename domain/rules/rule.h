/// A rule is a row: id, severity, requirement, question to the dentist, source, and its check.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "domain/design/design.h"
#include "domain/materials/shade_guide.h"
#include "domain/prescription/prescription.h"
#include "domain/rules/finding.h"
#include "domain/rules/house_limits.h"

namespace domain {

/// What a check looks at: the prescription and what follows from it, the day it is examined, and
/// what the laboratory itself decides and has.
struct Examination {
    const Prescription& prescription;
    const Design& design;
    Date today;
    const HouseLimits& limits;
    std::span<const ShadeGuide> guides;
};

/// Collects what a check finds; the row it belongs to fills in the rest.
class Findings {
public:
    /// Teeth are written in that notation wherever a finding names one.
    explicit Findings(Notation notation) : notation_{notation} {}

    std::string name(Tooth tooth) const { return nameOf(tooth, notation_); }

    void add(std::string found) { places_.push_back({{}, std::move(found), {}}); }
    void add(Tooth tooth, std::string found) { places_.push_back({tooth, std::move(found), {}}); }
    /// For a row that asks for an answer, or advises: the answer is there, and it cannot be.
    void contradict(std::string found) {
        places_.push_back({{}, std::move(found), Severity::Conflict});
    }
    void contradict(Tooth tooth, std::string found) {
        places_.push_back({tooth, std::move(found), Severity::Conflict});
    }
    /// For a row that refuses: this one of its findings leaves the choice to the prescriber.
    void advise(std::string found) { places_.push_back({{}, std::move(found), Severity::Caution}); }
    void advise(Tooth tooth, std::string found) {
        places_.push_back({tooth, std::move(found), Severity::Caution});
    }

    struct Place {
        std::optional<Tooth> tooth;
        std::string found;
        std::optional<Severity> severity;  ///< nullopt: that of the row
    };
    const std::vector<Place>& places() const noexcept { return places_; }
    void clear() noexcept { places_.clear(); }

private:
    Notation notation_;
    std::vector<Place> places_;
};

/// What a rule rests on, the firmest first.
enum class Ground : std::uint8_t {
    Law,         ///< a statute or a regulation
    Safety,      ///< it keeps harm from the patient
    Definition,  ///< of the words and of the numbering, or arithmetic
    Published,   ///< published work, and no school of the trade against it
    School,      ///< one school against another, a secondary source, or from memory
    Practice,    ///< common practice, no source
};

template <>
inline constexpr std::array<EnumCode<Ground>, 6> enumCodes<Ground>{{
    {Ground::Law, "law"},
    {Ground::Safety, "safety"},
    {Ground::Definition, "definition"},
    {Ground::Published, "published"},
    {Ground::School, "school"},
    {Ground::Practice, "practice"},
}};

/// Whether a rule on that ground may make an order wait for the dentist. The others are cautions:
/// a wrong refusal costs a day.
constexpr bool mayRefuse(Ground ground) noexcept { return ground <= Ground::Published; }

struct Rule {
    std::string_view id;  ///< never reworded, never reused
    Severity severity{};
    Ground ground{};
    std::string_view requirement;  ///< one sentence: what must hold
    std::string_view question;     ///< what to ask the dentist, in plain words
    std::string_view source;       ///< a published work and the place in it, or "common practice"
    void (*check)(const Examination&, Findings&);
};

/// One table per subject, in the order of the prescription.
std::span<const Rule> adminRules();
std::span<const Rule> enclosureRules();
std::span<const Rule> dentitionRules();
std::span<const Rule> restRules();
std::span<const Rule> claspRules();
std::span<const Rule> claspArmRules();
std::span<const Rule> indirectRules();
std::span<const Rule> connectorRules();
std::span<const Rule> surveyRules();
std::span<const Rule> retentionRules();
std::span<const Rule> materialRules();
std::span<const Rule> appearanceRules();

/// Every rule of every table, in that order.
std::vector<const Rule*> allRules();

/// nullptr: there is none of that id.
const Rule* ruleOf(std::string_view id);

/// Whether the prescriber may keep what was found as prescribed: it refuses, and rests on neither
/// law nor safety nor definition.
bool mayBeKept(const Finding& finding);
/// "it rests on law": why a refusal may not be kept; empty where it may.
std::string_view whyNotKept(const Finding& finding);

}  // namespace domain
