#include <array>

#include "apps/cli/backup_verbs.h"
#include "apps/cli/bench_verbs.h"
#include "apps/cli/classify.h"
#include "apps/cli/clock_verb.h"
#include "apps/cli/demo.h"
#include "apps/cli/key_verbs.h"
#include "apps/cli/order_verbs.h"
#include "apps/cli/people_verbs.h"
#include "apps/cli/stock_verbs.h"
#include "apps/cli/trade_verbs.h"
#include "apps/cli/verb.h"
#include "apps/cli/work_verbs.h"

namespace cli {
namespace {

constexpr Option kJson{"json", "", "print JSON for programs"};
constexpr Option kLab{"lab", "DIR", "where the records live (default: the XDG data folder)"};
constexpr Option kAs{"as", "CODE",
                     "who does it (default: $FRAMEWRIGHT_AS, or who is signed in here)"};
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
    {"batch", "", "read one arch a line from standard input"},
    kJson};
constexpr Option kCheckOptions[] = {
    {"answers", "", "changes that would clear a finding; the prescriber decides"}, kLab, kJson};
constexpr Option kDescribeOptions[] = {kJson};
constexpr Option kRulesOptions[] = {{"markdown", "", "print a table for a document"}, kJson};
constexpr Option kShadesOptions[] = {
    {"measured", "LAB", "L*, a* and b* of a tooth: rank the tabs by CIEDE2000"},
    {"file", "FILE", "enter the guide from a table \"tab,L*,a*,b*\""},
    kLab,
    kAs,
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
constexpr Option kCase{"case", "", "the same for all orders of its case at this stage"};
constexpr Option kStageOptions[] = {kCase, kLab, kAs, kStation, kKey, kSeen, kJson};
constexpr Option kRecordOptions[] = {
    {"tick", "LINE", "a line of the checklist; may be repeated"},
    {"all-ticked", "", "every line of the checklist was looked at and holds"},
    {"undercut", "TOOTH=DEPTH", "as \"14=0.25 mm\"; may be repeated"},
    {"tripod", "", "the cast carries its tripod marks"},
    {"lot", "LOT=AMOUNT", "as \"AL-204=23.4 g\" or \"TE-7=6 pcs\"; may be repeated"},
    {"new-metal", "SHARE", "new metal in the melt, as \"60 %\""},
    {"mass", "MASS", "of the casting, as \"18.2 g\""},
    {"teeth", "TEXT", "\"mould; guide; tab\"; may be repeated"},
    {"cure", "FILE", "log of the cure, a table \"minutes,celsius\""},
    {"cycle", "CYCLE", "the prescribed cycle; framewright bench resin lists them"},
    {"thickness", "LENGTH", "the thickest section of the base, as \"4 mm\""},
    {"disinfected", "TEXT", "\"agent; 10 min\""},
    {"equipment", "CODE", "that was used; may be repeated"},
    {"responsibility", "TEXT", "why overdue equipment is used all the same; for managers"},
    {"value", "WHAT=VALUE", "a value with its unit; may be repeated"},
    kLab,
    kAs,
    kStation,
    kKey,
    kSeen,
    kJson};
constexpr Option kReturnOptions[] = {{"disinfected", "TEXT", "what came back: \"agent; 10 min\""},
                                     {"back-to", "STAGE", "with go-back: where work begins again"},
                                     {"findings", "TEXT", "what the dentist found"},
                                     kCase,
                                     kLab,
                                     kAs,
                                     kKey,
                                     kSeen,
                                     kJson};
constexpr Option kFault{"fault", "STAGE", "where the fault lay"};
constexpr Option kNote{"note", "TEXT", "more about it; kept outside the ledger"};
constexpr Option kAgainOptions[] = {kFault, kNote, kLab, kAs, kKey, kSeen, kJson};
constexpr Option kTakeBackOptions[] = {kNote, kLab, kAs, kKey, kSeen, kJson};
constexpr Option kWithdrawOptions[] = {
    {"reason", "TEXT", "why; kept outside the ledger"}, kLab, kAs, kKey, kSeen, kJson};
constexpr Option kStatementOptions[] = {
    {"representative", "TEXT", "authorised representative, \"name; address\", or none"},
    {"institution", "TEXT", "health institution of the prescriber, or none"},
    {"substances", "TEXT", "medicinal substances or tissues it contains, or none"},
    {"conforms", "", "it conforms to Annex I, but for the exception"},
    {"exception", "TEXT", "the requirement that is not fully met"},
    {"grounds", "TEXT", "why not"},
    kLab,
    kAs,
    kKey,
    kJson};
constexpr Option kLotOptions[] = {
    {"receive", "KIND",
     "alloy, milling-blank, metal-powder, investment, teeth, resin-powder, "
     "resin-liquid or wire"},
    {"amount", "AMOUNT", "received, as \"1000 g\" or \"28 pcs\""},
    {"maker", "TEXT", "who made it"},
    {"product", "TEXT", "its trade description"},
    {"number", "TEXT", "the maker's number of the lot"},
    {"udi", "TEXT", "the supplier's device identifier, as scanned"},
    {"expiry", "DAY", "the last day it may be used"},
    {"material", "MATERIAL", "certificate: as cobalt-chromium"},
    {"type", "TYPE", "certificate: type of ISO 22674, as type-5"},
    {"nickel", "SHARE", "certificate: as \"0.05 %\""},
    {"beryllium", "SHARE", "certificate"},
    {"cadmium", "SHARE", "certificate"},
    {"resin", "KIND", "certificate: type of ISO 20795-1, as heat-cured"},
    {"methacrylate-free", "", "certificate"},
    {"hold", "REASON", "into quarantine"},
    {"release", "REASON", "out of quarantine; for managers"},
    kLab,
    kAs,
    kKey,
    kJson};
constexpr Option kTraceOptions[] = {kLab, kAs, kJson};
constexpr Option kRecallOptions[] = {
    {"reason", "TEXT", "why the lot is called back, as it stands in the letters"},
    {"drill", "", "everything but holding the lot"},
    kLab,
    kAs,
    kJson};
constexpr Option kEquipmentOptions[] = {{"serial", "TEXT", "as its maker marks it"},
                                        {"due", "DAY", "the last day its calibration holds"},
                                        kLab,
                                        kAs,
                                        kKey,
                                        kJson};
constexpr Option kSitesOptions[] = {{"name", "TEXT", "of the laboratory that takes work"},
                                    {"address", "TEXT", "its address"},
                                    {"registration", "TEXT", "its registration, if it has one"},
                                    kLab,
                                    kAs,
                                    kKey,
                                    kJson};
constexpr Option kRoutesOptions[] = {
    {"stage", "STAGE", "the stage to change, in a new version of the route"},
    {"usual", "TIME", "its usual minutes, as \"45 min\""},
    {"place", "KIND", "where it is worked, as wax-bench"},
    {"add", "LINE", "a line for its checklist; may be repeated"},
    {"remove", "LINE", "a line to take out; may be repeated"},
    {"after", "STAGE", "moves it there, or puts it in"},
    {"leave-out", "", "takes it out of the route"},
    kLab,
    kAs,
    kKey,
    kJson};
constexpr Option kFlagOptions[] = {
    {"note", "TEXT", "what the dentist needs to know"}, kLab, kAs, kKey, kStation, kSeen, kJson};
constexpr Option kAnswerOptions[] = {
    {"file", "FILE", "the completed prescription"},
    {"words", "TEXT", "what the dentist said"},
    {"take", "RULE[@TOOTH]=N", "the change offered that was ticked; may be repeated"},
    {"keep", "RULE[@TOOTH]=WORDS", "kept as prescribed, signed, and why; may be repeated"},
    kLab,
    kAs,
    kKey,
    kStation,
    kSeen,
    kJson};
constexpr Option kFloorOptions[] = {
    {"find", "WORDS", "open and closed orders that have these words in their names, or a number"},
    {"closed", "", "the closed orders instead, the newest first"},
    {"after", "ORDER", "go on after this order of the list"},
    kLab,
    kAs,
    kJson};
constexpr Option kPrintOptions[] = {
    {"to", "FILE",
     "a new name, or an earlier print (default: in papers/ of the laboratory's folder)"},
    kLab,
    kAs,
    kJson};
constexpr Option kLetterheadOptions[] = {{"name", "TEXT", "the laboratory's name"},
                                         {"address", "TEXT", "its address"},
                                         {"contact", "TEXT", "telephone or mail"},
                                         kLab,
                                         kAs,
                                         kJson};
constexpr Option kSetUpOptions[] = {
    {"skills", "WORDS", "what they have learnt, as waxing,casting"}, kLab, kJson};
constexpr Option kKeyOptions[] = {
    {"passphrase", "", "lock it with a passphrase, asked for now and at each start"},
    {"no-passphrase", "", "open it for good"},
    {"new-recovery-code", "", "replace the recovery code; asks for your password"},
    kLab,
    kAs,
    kJson};
constexpr Option kRecoverOptions[] = {kLab, kJson};
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
constexpr Option kClockOptions[] = {
    {"longest-pause-days", "N", "how far ahead of the newest entry a clock is taken for wrong"},
    kLab,
    kAs,
    kKey,
    kJson};
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
constexpr Option kProgress{"progress", "",
                           "say on standard error how far it is (usual on a terminal)"};
constexpr Option kBackupOptions[] = {
    {"remember", "", "back up into this folder from now on when none is named"},
    {"thin-out", "",
     "remove superseded backups from the folder: the newest of the last 10 states and of the last "
     "12 months stay"},
    kProgress,
    kLab,
    kAs,
    kJson};
constexpr Option kRestoreOptions[] = {
    {"to", "FOLDER", "a new folder; nothing is ever overwritten"},
    {"against-entries", "N", "entries that are known to have been there, as verify printed them"},
    {"against-head", "HASH", "the head that verify printed with them"},
    kProgress,
    kJson};
constexpr Option kVerifyOptions[] = {
    {"against", "FILE", "a checkpoint that must still hold"},
    {"key", "KEY", "the key it must be signed by, as an earlier day sheet shows it"},
    kLab,
    kJson};
constexpr Option kCheckpointOptions[] = {
    {"to", "FILE", "a new file for it (default: checkpoint-DAY-ENTRIES.txt among the papers)"},
    kLab,
    kAs,
    kJson};
constexpr Option kDrillOptions[] = {kProgress, kLab, kAs, kJson};
constexpr Option kDemoOptions[] = {
    {"folder", "DIR", "where to put the invented laboratory (default: ./demo)"}};

constexpr std::array<Verb, 52> kVerbs{{
    {"classify", "", 0, 0, "name the Kennedy class of an arch", kClassifyOptions,
     "framewright classify --arch upper --missing 14,15,24,25,26", &classify, Needs::Nothing},
    {"check", "FILE", 1, 1, "examine a prescription file and print every finding", kCheckOptions,
     "framewright check case.json", &check, Needs::Nothing},
    {"describe", "FILE", 1, 1, "print what follows from a design, in a page", kDescribeOptions,
     "framewright describe case.json", &describeDesign, Needs::Nothing},
    {"log", "FILE", 1, 1, "log a prescription as a new order, with its findings", kChangeOptions,
     "framewright log case.json --as MK", &log},
    {"accept", "ORDER", 1, 1, "accept an order for production", kAcceptOptions,
     "framewright accept 26000017 --as MK --reason \"agreed by telephone\"", &accept},
    {"case", "ORDER LEADER", 2, 2, "let an order travel with another of the same patient",
     kChangeOptions, "framewright case 26000025 26000017 --as MK", &joinCase},
    {"scan", "ORDER", 1, 1, "start the stage that is due, or mark it done; a double scan is one",
     kChangeOptions, "framewright scan 26000017 --as JT --station wax-1", &scan},
    {"start", "ORDER [STAGE]", 1, 2, "start the stage that is due", kStageOptions,
     "framewright start 26000017 survey --as JT", &start},
    {"record", "ORDER [STAGE]", 1, 2, "record what was done, measured or used at the stage",
     kRecordOptions, "framewright record 26000017 --all-ticked --lot \"AL-204=23.4 g\" --as JT",
     &record},
    {"gate", "ORDER", 1, 1, "list what the gate of the stage due lacks", kTraceOptions,
     "framewright gate 26000017 --as JT", &gate},
    {"done", "ORDER [STAGE]", 1, 2, "mark the stage in hand done", kStageOptions,
     "framewright done 26000017 --as JT", &done},
    {"return", "ORDER VERDICT", 2, 2, "record what the dentist decided at a try-in", kReturnOptions,
     "framewright return 26000017 go-on --disinfected \"alcohol 70 %; 5 min\" --as MK",
     &takeReturn},
    {"redo", "ORDER STAGE REASON", 3, 3, "begin again at an earlier stage", kAgainOptions,
     "framewright redo 26000017 wax-up porosity --fault investing --as JT", &redo},
    {"remake", "ORDER REASON", 2, 2, "make an order again, as a new one", kAgainOptions,
     "framewright remake 26000017 does-not-fit --fault survey --as MK", &remake},
    {"send-out", "ORDER SITE", 2, 2, "let the stage that is due be worked at another site",
     kChangeOptions, "framewright send-out 26000017 north-foundry --as MK", &sendOut},
    {"take-back", "ORDER RESULT", 2, 2, "take it back: passed or failed its inspection",
     kTakeBackOptions, "framewright take-back 26000017 passed --as JT", &takeBack},
    {"statement", "ORDER", 1, 1,
     "issue the statement for a custom-made device; asks for the password", kStatementOptions,
     "framewright statement 26000017 --conforms --representative none --institution none "
     "--substances none --as IN",
     &statement},
    {"withdraw", "ORDER", 1, 1, "the dentist wants it no more", kWithdrawOptions,
     "framewright withdraw 26000017 --reason \"patient moved away\" --as MK", &withdraw},
    {"flag", "ORDER REASON", 2, 2, "stop the order with a question to the dentist", kFlagOptions,
     "framewright flag 26000017 survey-data-missing --as JT --note \"44 has no undercut\"", &flag},
    {"answer", "ORDER", 1, 1, "record the dentist's answer", kAnswerOptions,
     "framewright answer 26000017 --file case-2.json --as MK", &answer},
    {"order", "ORDER", 1, 1, "show one order: findings, stages, history", kTraceOptions,
     "framewright order 26000017 --as JT", &order},
    {"floor", "", 0, 0, "list the open orders, their stages and what holds them up; find any",
     kFloorOptions, "framewright floor --find \"P-1042\"", &floor},
    {"print", "ORDER PAPER", 2, 2, "write a paper as PDF; an unknown word lists them",
     kPrintOptions, "framewright print 26000017 questions --as MK", &print},
    {"lots", "[LOT]", 0, 1, "list the lots; receive, hold or release one", kLotOptions,
     "framewright lots AL-204 --receive alloy --amount \"1000 g\" --maker \"Example Alloys\" "
     "--product \"Co-Cr, castable\" --number 77-A --material cobalt-chromium --as JT",
     &lots},
    {"trace", "WHAT CODE", 2, 2, "where a lot went, or what an order holds and who made it",
     kTraceOptions, "framewright trace lot AL-204 --as MK", &trace},
    {"recall", "LOT", 1, 1, "call a lot back: every device, and a letter to each prescriber",
     kRecallOptions, "framewright recall AL-204 --drill --reason \"drill\" --as MK", &recall},
    {"equipment", "[CODE [KIND]]", 0, 2, "list equipment, enter one, or record its calibration",
     kEquipmentOptions,
     "framewright equipment furnace-1 furnace --serial F-88 --due 2027-05-01 --as MK", &equipment},
    {"sites", "[CODE]", 0, 1, "list the sites work is sent to, or enter one", kSitesOptions,
     "framewright sites north-foundry --name \"North Foundry\" --address \"2 Kiln Road\" --as MK",
     &sites},
    {"routes", "[ROUTE ARCH]", 0, 2, "list the routes, show one, or change a stage of it",
     kRoutesOptions,
     "framewright routes cast-framework upper --stage wax-up --usual \"90 min\" --as MK", &routes},
    {"retention", "[TERMS]", 0, 1, "show or choose how long papers are kept", kTraceOptions,
     "framewright retention eu,us-fl --as MK", &retention},
    {"purge", "ORDER", 1, 1,
     "erase the names of an order when its term has run out; asks for the password", kChangeOptions,
     "framewright purge 26000017 --as MK", &purge},
    {"clock", "[DATE]", 0, 1, "whether the clock can be believed; confirm the date of today",
     kClockOptions, "framewright clock 2026-11-25 --as MK", &clock},
    {"verify", "", 0, 0, "prove that the records are whole", kVerifyOptions,
     "framewright verify --against checkpoint-2026-11-25-412.txt", &verify, Needs::Nothing},
    {"checkpoint", "", 0, 0, "sign where the records stand, for a file and the day sheet",
     kCheckpointOptions, "framewright checkpoint --to /media/safe/today.txt --as MK", &checkpoint,
     Needs::Nothing},
    {"backup", "[FOLDER]", 0, 1, "write a proved backup of the records while they are in use",
     kBackupOptions, "framewright backup /media/safe --as MK", &backup, Needs::Nothing},
    {"restore", "FILE", 1, 1, "come back from a backup, into a new folder", kRestoreOptions,
     "framewright restore framewright-20261125T081400Z-000123.backup --to lab-again", &restore,
     Needs::Nothing},
    {"drill", "[FOLDER]", 0, 1, "back up, restore elsewhere and compare, then remove both",
     kDrillOptions, "framewright drill --as MK", &drill, Needs::Nothing},
    {"letterhead", "", 0, 0, "show or set the laboratory's name and address on papers",
     kLetterheadOptions, "framewright letterhead --name \"Example Laboratory\" --as MK",
     &letterhead},
    {"set-up", "CODE", 1, 1, "enter the first manager; asks for a password", kSetUpOptions,
     "framewright set-up MK --skills surveying,inspection", &setUp, Needs::Nothing},
    {"key", "", 0, 0, "show where the identity key lies, lock it, or replace the recovery code",
     kKeyOptions, "framewright key --new-recovery-code --as MK", &key, Needs::Nothing},
    {"recover", "CODE", 1, 1,
     "bring a lost identity key or a manager's password back; asks for the recovery code",
     kRecoverOptions, "framewright recover MK", &recover, Needs::Nothing},
    {"sign-in", "[CODE]", 0, 1, "sign in; asks for the password, or the badge and its PIN",
     kSignInOptions, "framewright sign-in JT --station wax-1", &signIn, Needs::Nothing},
    {"sign-out", "", 0, 0, "sign out", kSignOutOptions, "framewright sign-out --as JT", &signOut,
     Needs::Nothing},
    {"people", "[CODE]", 0, 1,
     "list who works here; enter a person or let one go (asks for your password)", kPeopleOptions,
     "framewright people JT --role technician --skills waxing,casting --as MK", &people},
    {"password", "CODE", 1, 1, "change your password; asks for the present and the new one",
     kPasswordOptions, "framewright password JT --reset --as MK", &password, Needs::Nothing},
    {"badge", "CODE", 1, 1, "give or revoke a badge; asks for its code and a PIN", kBadgeOptions,
     "framewright badge JT --as MK", &badge},
    {"stations", "[CODE KIND]", 0, 2, "list the stations, or enter one", kStationsOptions,
     "framewright stations wax-1 wax-bench --as MK", &stations},
    {"rules", "[ID]", 0, 1, "list the rules a prescription must pass, or explain one",
     kRulesOptions, "framewright rules clasp.reciprocation", &rules, Needs::Nothing},
    {"limits", "[NAME [VALUE]]", 0, 2, "show or set what the laboratory decides for itself",
     kTraceOptions, "framewright limits lingual-bar-space \"7 mm\" --as MK", &limits,
     Needs::Nothing},
    {"shades", "[GUIDE]", 0, 1, "show the shade guides, match a colour, or enter a guide",
     kShadesOptions, "framewright shades \"A-D scale\" --measured \"76.04 -0.08 16.73\"", &shades,
     Needs::Nothing},
    {"bench", "CALCULATION [ARGUMENT]", 1, 2,
     "compute alloy, investment, burn-out or resin, or judge a cure", kBenchOptions,
     "framewright bench cure cure.csv --cycle long-74 --thickness \"4 mm\"", &bench,
     Needs::Nothing},
    {"demo", "", 0, 0, "run an invented laboratory from prescriptions to a delivery", kDemoOptions,
     "framewright demo --folder demo", &demo, Needs::Nothing},
}};

}  // namespace

std::span<const Verb> verbs() { return kVerbs; }

}  // namespace cli
