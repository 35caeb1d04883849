#include "apps/cli/clock_verb.h"

#include <nlohmann/json.hpp>

#include "apps/actions/clock.h"
#include "apps/cli/lab_option.h"
#include "apps/cli/output.h"
#include "apps/cli/typed_words.h"
#include "apps/cli/who_option.h"

namespace cli {
namespace {

using domain::Result;

Result<Exit> show(const Call& call, const actions::Laboratory& laboratory) {
    const auto doubt = actions::clockDoubt(laboratory);
    if (!doubt) return doubt.error();
    const auto pause = actions::longestPause(laboratory);
    if (!pause) return pause.error();
    const std::string now = laboratory.now().text();
    if (call.has("json")) {
        Json marked;
        if (*doubt)
            marked = {{"fault", std::string{codeOf((**doubt).fault)}},
                      {"before", (**doubt).before.text()},
                      {"at", (**doubt).at.text()}};
        print("clock-1",
              {{"now", now}, {"longest-pause-days", *pause}, {"marked", std::move(marked)}});
        return Exit::Done;
    }
    Page page{"the machine says " + now};
    page.line(*doubt ? spoken(**doubt) + "; nothing is purged before a manager confirms the date"
                     : "nothing speaks against it");
    print(page.line("taken for wrong when more than " + std::to_string(*pause) +
                    " days ahead of the newest entry"));
    return Exit::Done;
}

}  // namespace

Result<Exit> clock(const Call& call) {
    const auto laboratory = laboratoryOf(call);
    if (!laboratory) return laboratory.error();
    if (const auto text = call.option("longest-pause-days")) {
        const auto days = wholeOf(*text, 1, "number of days");
        if (!days) return days.error();
        const auto who = whoOf(call);
        if (!who) return who.error();
        if (const auto done = actions::writeLongestPause(*laboratory, *days, *who); !done)
            return done.error();
    }
    if (!call.arguments().empty()) {
        const auto day = dayOf(call.arguments().front(), "day of today");
        if (!day) return day.error();
        const auto who = whoOf(call);
        if (!who) return who.error();
        if (const auto done = actions::confirmDate(*laboratory, *day, *who); !done)
            return done.error();
    }
    return show(call, *laboratory);
}

}  // namespace cli
