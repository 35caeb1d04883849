#include "domain/production/question.h"

namespace domain {

std::string_view questionOf(FlagReason reason) {
    switch (reason) {
        case FlagReason::SurveyDataMissing:
            return "Which undercut, where and how deep, is each clasp to engage, and along which "
                   "path is the denture to be inserted?";
        case FlagReason::UndercutNotFound:
            return "The prescribed undercut is not there on the cast. May we engage another place, "
                   "or will you recontour the tooth?";
        case FlagReason::CastDamaged:
            return "The cast or impression is damaged. Can you send a new one?";
        case FlagReason::EnclosureMissing:
            return "Something named on the prescription did not arrive. Can you send it?";
        case FlagReason::ShadeUnclear:
            return "Which guide and which tab are the artificial teeth to match?";
        case FlagReason::DesignUnclear:
            return "The design can be read in more than one way. Which one is meant?";
        case FlagReason::Other:
            return "We cannot go on without your word on the point below.";
    }
    return {};
}

}  // namespace domain
