/// The questions to a person as windows over the room they stand in.
#pragma once

#include "apps/desktop/dialogs.h"
#include "apps/desktop/look.h"

class QWidget;

namespace desktop {

class WindowDialogs : public Dialogs {
public:
    explicit WindowDialogs(const Look& look) : look_{look} {}

    std::optional<std::filesystem::path> prescriptionFile() override;
    std::optional<FlagGiven> flag() override;
    std::optional<AnswerGiven> answer(const std::vector<domain::Finding>& refusals,
                                      domain::Notation notation) override;
    std::optional<actions::Return> takeBack(const std::vector<domain::Stage>& backTo) override;
    std::optional<AgainGiven> again(const std::vector<domain::Stage>& from) override;
    std::optional<RemakeGiven> makeAgain() override;
    std::optional<actions::Declared> statement() override;
    std::optional<actions::Secret> password(const std::string& what) override;
    std::optional<std::filesystem::path> cureLogFile() override;
    std::optional<LotGiven> lot() override;
    std::optional<std::string> why(const std::string& what) override;
    std::optional<std::string> reasonFor(const std::vector<domain::Finding>& cautions) override;
    std::optional<std::size_t> choose(const std::vector<models::ToothChoice>& choices,
                                      QPoint where) override;
    bool throwAway() override;
    void tellRecoveryCode(const std::string& code, const std::filesystem::path& keyFile) override;
    void show(const std::filesystem::path& paper) override;

    /// Whether to begin a new laboratory in a folder without records, asked before there is a room.
    bool beginLaboratory(const std::filesystem::path& folder) const;
    /// The passphrase of a locked identity key, asked before there is a room. `before`: what was
    /// wrong with the one given last, or empty.
    std::optional<actions::Secret> passphrase(const std::filesystem::path& keyFile,
                                              const std::string& before) const;

private:
    const Look& look_;
};

}  // namespace desktop
