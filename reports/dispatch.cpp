#include "reports/dispatch.h"

namespace reports {

Block parcelBlock(const std::vector<std::string>& things) {
    if (things.empty()) return Paragraph{.text = "Nothing else is in the parcel.", .quiet = false};
    Checklist list;
    for (const std::string& thing : things)
        list.checks.push_back({.state = CheckState::Open, .flag = {}, .text = thing, .detail = {}});
    return list;
}

Block disinfectionBlock(const std::optional<domain::Disinfection>& done) {
    if (!done) return WriteIn{{"Disinfected with", "for (minutes)", "by, on"}};
    return Paragraph{.text = "Disinfected with " + done->agent + " for " +
                             std::to_string(done->contact.count()) +
                             (done->contact.count() == 1 ? " minute." : " minutes."),
                     .quiet = false};
}

}  // namespace reports
