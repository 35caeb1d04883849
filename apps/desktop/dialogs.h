/// What the rooms ask a person: a thin seam, answered by windows in the program and by the tests.
#pragma once

#include <QPoint>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "apps/actions/orders.h"
#include "apps/actions/sign_in.h"
#include "apps/actions/statements.h"
#include "apps/actions/work.h"
#include "apps/desktop/models/tooth_choices.h"
#include "domain/materials/lot.h"
#include "domain/production/question.h"
#include "domain/rules/finding.h"

namespace desktop {

struct FlagGiven {
    domain::FlagReason reason{};
    std::optional<std::string> note;
};

/// The dentist's answer: words, a file with the completed prescription, what is kept as prescribed.
struct AnswerGiven {
    std::optional<std::string> words{};
    std::optional<std::filesystem::path> file{};
    std::vector<actions::KeepGiven> keeps{};
};

struct AgainGiven {
    domain::RedoReason reason{};
    domain::Stage from{};
    std::optional<std::string> note;
};

struct RemakeGiven {
    domain::RemakeReason reason{};
    std::optional<std::string> note;
};

struct LotGiven {
    domain::ThingCode code;
    domain::Lot lot{};
};

/// Every question comes back empty when the person goes back with Esc.
class Dialogs {
public:
    virtual ~Dialogs() = default;

    virtual std::optional<std::filesystem::path> prescriptionFile() = 0;
    virtual std::optional<FlagGiven> flag() = 0;
    /// `refusals`: what the prescriber may keep as prescribed; teeth are named in that notation.
    virtual std::optional<AnswerGiven> answer(const std::vector<domain::Finding>& refusals,
                                              domain::Notation notation) = 0;
    /// What the dentist decided after a try-in; `backTo`: where work may go back to.
    virtual std::optional<actions::Return> takeBack(const std::vector<domain::Stage>& backTo) = 0;
    /// Why work begins again, and at which of these stages.
    virtual std::optional<AgainGiven> again(const std::vector<domain::Stage>& from) = 0;
    virtual std::optional<RemakeGiven> makeAgain() = 0;
    virtual std::optional<actions::Declared> statement() = 0;
    /// The password of who is signed in, once more, for what asks for it.
    virtual std::optional<actions::Secret> password(const std::string& what) = 0;
    virtual std::optional<std::filesystem::path> cureLogFile() = 0;
    /// A lot that has come in.
    virtual std::optional<LotGiven> lot() = 0;
    /// Why something is done, in a person's own words.
    virtual std::optional<std::string> why(const std::string& what) = 0;
    /// Why these cautions are taken.
    virtual std::optional<std::string> reasonFor(const std::vector<domain::Finding>& cautions) = 0;
    /// Which of the choices about a tooth, as its index.
    virtual std::optional<std::size_t> choose(const std::vector<models::ToothChoice>& choices,
                                              QPoint where) = 0;
    /// Whether to throw away a form that was filled in and not logged.
    virtual bool throwAway() = 0;
    /// Tells the recovery code of a new laboratory, this once, and where its identity key lies.
    virtual void tellRecoveryCode(const std::string& code,
                                  const std::filesystem::path& keyFile) = 0;
    /// Shows a printed paper to the person.
    virtual void show(const std::filesystem::path& paper) = 0;

protected:
    Dialogs() = default;
    Dialogs(const Dialogs&) = default;
    Dialogs& operator=(const Dialogs&) = default;
};

}  // namespace desktop
