#include <array>

#include "apps/cli/bench_verbs.h"
#include "apps/cli/classify.h"
#include "apps/cli/demo.h"
#include "apps/cli/order_verbs.h"
#include "apps/cli/people_verbs.h"
#include "apps/cli/trade_verbs.h"
#include "apps/cli/verb.h"

namespace cli {
namespace {

constexpr Option kJson{"json", "", "print JSON for programs"};
constexpr Option kLab{"lab", "DIR", "where the records live (default: the XDG data folder)"};
constexpr Option kAs{"as", "CODE", "who does it (default: $FRAMEWRIGHT_AS)"};
constexpr Option kKey{"key", "KEY", "idempotency key: the same key never takes effect twice"};
constexpr Option kStation{"station", "CODE",
                          "where they are (default: $FRAMEWRIGHT_STATION, or at no station)"};
constexpr Option kSeen{"seen", "N",
                       "version of the order they looked at: refused if it has changed since"};

constexpr Option kClassifyOptions[] = {
    {"arch", "ARCH", "upper or lower"},
    {"missing", "TEETH", "missing teeth, as 14,15"},
    {"not-replaced", "TEETH", "missing and not to be replaced"},
    {"extract", "TEETH", "planned for extraction"},
    {"abutment", "TEETH", "third molars that stand and carry a part"},
    {"replaced", "TEETH", "third molars that are missing and to be replaced"},
    {"notation", "NOTATION", "iso3950 (default), universal or palmer"},
    {"batch", "", "read one arch a line from standard input"}};
constexpr Option kCheckOptions[] = {kLab, kJson};
constexpr Option kDescribeOptions[] = {kJson};
constexpr Option kRulesOptions[] = {{"markdown", "", "print a table for a document"}, kJson};
constexpr Option kShadesOptions[] = {
    {"measured", "LAB", "L*, a* and b* of a tooth: rank the tabs by CIEDE2000"},
    {"file", "FILE", "enter the guide from a table \"tab,L*,a*,b*\""},
    kLab,
    kJson};
constexpr Option kChangeOptions[] = {kLab, kAs, kKey, kStation, kSeen, kJson};
constexpr Option kAcceptOptions[] = {
    {"reason", "TEXT", "why the cautions are taken; kept and printed"},
    kLab,
    kAs,
    kKey,
    kStation,
    kSeen,
    kJson};
constexpr Option kFlagOptions[] = {
    {"note", "TEXT", "what the dentist needs to know"}, kLab, kAs, kKey, kStation, kSeen, kJson};
constexpr Option kAnswerOptions[] = {{"file", "FILE", "the completed prescription"},
                                     {"words", "TEXT", "what the dentist said"},
                                     kLab,
                                     kAs,
                                     kKey,
                                     kStation,
                                     kSeen,
                                     kJson};
constexpr Option kReadOptions[] = {kLab, kJson};
constexpr Option kPrintOptions[] = {
    {"to", "FILE", "where to write (default: papers/ in the laboratory's folder)"},
    kLab,
    kAs,
    kJson};
constexpr Option kLetterheadOptions[] = {{"name", "TEXT", "the laboratory's name"},
                                         {"address", "TEXT", "its address"},
                                         {"contact", "TEXT", "telephone or mail"},
                                         kLab,
                                         kJson};
constexpr Option kSetUpOptions[] = {
    {"skills", "WORDS", "what they have learnt, as waxing,casting"}, kLab, kJson};
constexpr Option kSignInOptions[] = {
    {"badge", "", "by badge and PIN, two lines of standard input"}, kStation, kLab, kJson};
constexpr Option kSignOutOptions[] = {kLab, kAs, kJson};
constexpr Option kPeopleOptions[] = {
    {"role", "ROLE", "enter a person as manager, technician, inspector or viewer"},
    {"skills", "WORDS", "what they have learnt, as waxing,casting"},
    {"left", "", "they work here no more: nothing they had opens anything"},
    kLab,
    kAs,
    kKey,
    kJson};
constexpr Option kPasswordOptions[] = {
    {"reset", "", "print a password for once, which they must replace; for managers"},
    kLab,
    kAs,
    kKey,
    kJson};
constexpr Option kBadgeOptions[] = {
    {"revoke", "", "it was lost: it opens nothing from now on"}, kLab, kAs, kKey, kJson};
constexpr Option kStationsOptions[] = {
    {"idle-minutes", "N", "how long a session may rest before it ends"}, kLab, kAs, kKey, kJson};
constexpr Option kBenchOptions[] = {
    {"material", "MATERIAL", "alloy: of the framework, as cobalt-chromium"},
    {"wax", "MASS", "alloy: of the framework's pattern, as \"5 g\""},
    {"sprue", "MASS", "alloy: of the sprues"},
    {"button", "MASS", "alloy: of the button (default: a tenth of the metal)"},
    {"alloy-density", "DENSITY", "alloy: as its maker says, as \"8.4 g/cm3\""},
    {"pattern-density", "DENSITY", "alloy: of another pattern than wax, as \"1.09 g/cm3\""},
    {"mixture", "POWDER", "investment: plaster, stone, die-stone or phosphate-investment"},
    {"powder", "MASS", "investment, resin: of the powder, as \"300 g\""},
    {"ratio", "RATIO", "investment: liquid to powder, as \"0.22 ml/g\""},
    {"cycle", "CYCLE", "cure: the prescribed cycle; framewright bench resin lists them"},
    {"thickness", "LENGTH", "cure: the thickest section of the base, as \"4 mm\""},
    kJson};
constexpr Option kDemoOptions[] = {
    {"folder", "DIR", "where to put the invented laboratory (default: ./demo)"}};

constexpr std::array<Verb, 26> kVerbs{{
    {"classify", "", 0, 0, "name the Kennedy class of an arch", kClassifyOptions,
     "framewright classify --arch upper --missing 14,15,24,25,26", &classify},
    {"check", "FILE", 1, 1, "examine a prescription file and print every finding", kCheckOptions,
     "framewright check case.json", &check},
    {"describe", "FILE", 1, 1, "print what follows from a design, in a page", kDescribeOptions,
     "framewright describe case.json", &describeDesign},
    {"log", "FILE", 1, 1, "log a prescription as a new order, with its findings", kChangeOptions,
     "framewright log case.json --as MK", &log},
    {"accept", "ORDER", 1, 1, "accept an order for production", kAcceptOptions,
     "framewright accept 26000017 --as MK --reason \"agreed by telephone\"", &accept},
    {"start", "ORDER [STAGE]", 1, 2, "start the stage that is due", kChangeOptions,
     "framewright start 26000017 survey --as JT", &start},
    {"done", "ORDER [STAGE]", 1, 2, "mark the stage in hand done", kChangeOptions,
     "framewright done 26000017 --as JT", &done},
    {"flag", "ORDER REASON", 2, 2, "stop the order with a question to the dentist", kFlagOptions,
     "framewright flag 26000017 survey-data-missing --as JT --note \"44 has no undercut\"", &flag},
    {"answer", "ORDER", 1, 1, "record the dentist's answer", kAnswerOptions,
     "framewright answer 26000017 --file case-2.json --as MK", &answer},
    {"order", "ORDER", 1, 1, "show one order: findings, stages, history", kReadOptions,
     "framewright order 26000017", &order},
    {"floor", "", 0, 0, "list every order, its stage and what holds it up", kReadOptions,
     "framewright floor --json", &floor},
    {"print", "ORDER PAPER", 2, 2, "write a paper as PDF: prescription or questions", kPrintOptions,
     "framewright print 26000017 questions --as MK", &print},
    {"verify", "", 0, 0, "prove that the records are whole", kReadOptions, "framewright verify",
     &verify},
    {"letterhead", "", 0, 0, "show or set the laboratory's name and address on papers",
     kLetterheadOptions, "framewright letterhead --name \"Example Laboratory\"", &letterhead},
    {"set-up", "CODE", 1, 1, "enter the first manager; asks for a password", kSetUpOptions,
     "framewright set-up MK --skills surveying,inspection", &setUp},
    {"sign-in", "[CODE]", 0, 1, "sign in; asks for the password, or the badge and its PIN",
     kSignInOptions, "framewright sign-in JT --station wax-1", &signIn},
    {"sign-out", "", 0, 0, "sign out", kSignOutOptions, "framewright sign-out --as JT", &signOut},
    {"people", "[CODE]", 0, 1, "list who works here, enter a person, or let one go", kPeopleOptions,
     "framewright people JT --role technician --skills waxing,casting --as MK", &people},
    {"password", "CODE", 1, 1, "change your password; asks for the present and the new one",
     kPasswordOptions, "framewright password JT --reset --as MK", &password},
    {"badge", "CODE", 1, 1, "give or revoke a badge; asks for its code and a PIN", kBadgeOptions,
     "framewright badge JT --as MK", &badge},
    {"stations", "[CODE KIND]", 0, 2, "list the stations, or enter one", kStationsOptions,
     "framewright stations wax-1 wax-bench --as MK", &stations},
    {"rules", "[ID]", 0, 1, "list the rules a prescription must pass, or explain one",
     kRulesOptions, "framewright rules clasp.reciprocation", &rules},
    {"limits", "[NAME [VALUE]]", 0, 2, "show or set what the laboratory decides for itself",
     kReadOptions, "framewright limits lingual-bar-space \"7 mm\"", &limits},
    {"shades", "[GUIDE]", 0, 1, "show the shade guides, match a colour, or enter a guide",
     kShadesOptions, "framewright shades \"A-D scale\" --measured \"76.04 -0.08 16.73\"", &shades},
    {"bench", "CALCULATION [ARGUMENT]", 1, 2,
     "compute alloy, investment, burn-out or resin, or judge a cure", kBenchOptions,
     "framewright bench cure cure.csv --cycle long-74 --thickness \"4 mm\"", &bench},
    {"demo", "", 0, 0, "run an invented laboratory from prescriptions to a delivery", kDemoOptions,
     "framewright demo --folder demo", &demo},
}};

}  // namespace

std::span<const Verb> verbs() { return kVerbs; }

}  // namespace cli
