/// A laboratory that lives as long as a test, a clock set by hand, and a person who answers what
/// the test says.
#pragma once

#include <QTemporaryDir>
#include <algorithm>
#include <fstream>

#include "apps/actions/orders.h"
#include "apps/desktop/shell.h"
#include "storage/files/prescription_file.h"
#include "tests/support/designs.h"
#include "tests/support/people.h"

namespace desktop_tests {

class HandClock : public domain::Clock {
public:
    domain::Instant now() const override { return now_; }
    void letPass(std::int64_t minutes) {
        now_ = domain::Instant::ofMicroseconds(now_.microseconds() + minutes * 60'000'000);
    }

private:
    domain::Instant now_{
        domain::Instant::ofMicroseconds(support::examinationDay().days() * 86'400'000'000)};
};

/// Answers every question with what the test put there; an empty answer is Esc.
class AnsweredDialogs : public desktop::Dialogs {
public:
    std::optional<std::filesystem::path> prescriptionFile() override { return file; }
    std::optional<desktop::FlagGiven> flag() override { return flagGiven; }
    std::optional<desktop::AnswerGiven> answer(const std::vector<domain::Finding>& refusals,
                                               domain::Notation /*notation*/) override {
        keepable = refusals;
        return answerGiven;
    }
    std::optional<std::string> reasonFor(const std::vector<domain::Finding>& cautions) override {
        cautionsAsked = cautions;
        return reason;
    }
    std::optional<std::size_t> choose(const std::vector<models::ToothChoice>& choices,
                                      QPoint) override {
        for (std::size_t i = 0; i < choices.size(); ++i)
            if (choices[i].group == toothGroup && choices[i].word == toothWord) return i;
        return {};
    }
    std::optional<actions::Return> takeBack(const std::vector<domain::Stage>&) override {
        return returned;
    }
    std::optional<desktop::AgainGiven> again(const std::vector<domain::Stage>& from) override {
        stagesAsked = from;
        return againGiven;
    }
    std::optional<desktop::RemakeGiven> makeAgain() override { return remakeGiven; }
    std::optional<actions::Declared> statement() override { return declared; }
    std::optional<actions::Secret> password(const std::string&) override {
        return passwordGiven.empty() ? std::nullopt : std::optional{actions::Secret{passwordGiven}};
    }
    std::optional<std::filesystem::path> cureLogFile() override { return file; }
    std::optional<desktop::LotGiven> lot() override { return lotGiven; }
    std::optional<std::string> why(const std::string&) override { return reason; }
    bool throwAway() override { return throwsAway; }
    void tellRecoveryCode(const std::string& code, const std::filesystem::path&) override {
        recoveryCode = code;
    }
    void show(const std::filesystem::path& paper) override { papers.push_back(paper); }

    std::optional<std::filesystem::path> file;
    std::optional<desktop::FlagGiven> flagGiven;
    std::optional<desktop::AnswerGiven> answerGiven;
    std::vector<domain::Finding> keepable{};  ///< offered when the answer was asked last
    std::optional<std::string> reason;
    std::vector<domain::Finding> cautionsAsked;
    std::optional<actions::Return> returned;
    std::optional<desktop::AgainGiven> againGiven;
    std::vector<domain::Stage> stagesAsked;
    std::optional<desktop::RemakeGiven> remakeGiven;
    std::optional<actions::Declared> declared;
    std::string passwordGiven{support::kPassword};
    std::optional<desktop::LotGiven> lotGiven;
    std::string toothGroup;
    std::string toothWord;
    bool throwsAway{false};
    std::vector<std::filesystem::path> papers;
    std::string recoveryCode;
};

inline std::vector<domain::Skill> everySkill() {
    std::vector<domain::Skill> skills;
    for (const auto& code : domain::enumCodes<domain::Skill>) skills.push_back(code.value);
    return skills;
}

/// The records of a laboratory in a folder of their own. MK manages it and has learnt everything.
class TemporaryLaboratory {
public:
    const actions::Laboratory& operator*() const { return *laboratory_; }

    std::filesystem::path write(const domain::Prescription& prescription,
                                const std::string& name) const {
        auto file = folder() / name;
        std::ofstream{file} << storage::writePrescription(prescription);
        return file;
    }
    std::filesystem::path folder() const { return folder_.path().toStdString(); }

    actions::Who signIn(std::string_view code = "MK", domain::Role role = domain::Role::Manager,
                        const std::vector<domain::Skill>& skills = everySkill()) const {
        return support::signedIn(*laboratory_, code, role, skills);
    }
    actions::Session session() const {
        const actions::Who who = signIn();
        return {who.person, who.token, who.station};
    }
    domain::OrderNumber logged(const domain::Prescription& prescription) const {
        const auto outcome = actions::log(*laboratory_, prescription, signIn());
        EXPECT_TRUE(outcome) << (outcome ? "" : outcome.error().message);
        return outcome->order.number;
    }

    HandClock clock;

private:
    QTemporaryDir folder_;
    domain::Result<actions::Laboratory> laboratory_{
        actions::Laboratory::open(folder_.path().toStdString(), clock, storage::HashCost::Light)};
};

/// A prescription that cannot be accepted: sensitivities are not said. Nobody surveyed the cast.
inline domain::Prescription unsurveyed() {
    domain::Prescription prescription = support::lowerClassI();
    prescription.survey = {};
    prescription.sensitivities = {};
    return prescription;
}

}  // namespace desktop_tests
