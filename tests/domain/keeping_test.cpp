/// What may be kept as prescribed against a finding, what may not, and what becomes of it.
#include "domain/production/keeping.h"

#include <gmock/gmock.h>

#include "domain/rules/rule.h"

namespace {

using namespace domain;
using testing::HasSubstr;
using testing::IsEmpty;

const PersonCode kRecorder = *PersonCode::parse("MK");
const Date kDay = Date::ofDays(20'000);

Finding refusal(std::string rule, std::optional<Tooth> tooth = {}) {
    return {.rule = std::move(rule),
            .severity = Severity::Conflict,
            .tooth = tooth,
            .found = "as it was found"};
}

Result<std::vector<Finding>> kept(std::vector<Finding> findings, std::vector<Keep> keeps) {
    return keptAsPrescribed(std::move(findings), keeps, kRecorder, kDay, Notation::Iso3950);
}

std::string refused(std::vector<Finding> findings, Keep keep) {
    const auto result = kept(std::move(findings), {std::move(keep)});
    return result ? "" : result.error().message;
}

TEST(Keeping, OpensARefusalAndSaysWhoRecordedIt) {
    const SealedText words{"T000001", "d"};
    const auto findings = kept({refusal("clasp.rest", 16_fdi), refusal("clasp.rest", 26_fdi)},
                               {{"clasp.rest", 16_fdi, words}});
    ASSERT_TRUE(findings);
    EXPECT_EQ(findings->front().kept, (KeptAsPrescribed{words, kRecorder, kDay}));
    EXPECT_EQ(findings->back().kept, std::nullopt);
    EXPECT_TRUE(blocks(*findings)) << "the other tooth still waits";
    const auto all = kept(*findings, {{"clasp.rest", {}, words}});
    ASSERT_TRUE(all);
    EXPECT_FALSE(blocks(*all));
}

TEST(Keeping, IsRefusedWhatTheLawSafetyOrTheWordsForbid) {
    const struct {
        const char* rule;
        const char* why;
    } kNever[] = {{"admin.signature", "the law asks it"},
                  {"alloy.nickel", "it is for the patient's safety"},
                  {"connector.torus", "it is for the patient's safety"},
                  {"dentition.part-on-absent", "it contradicts itself"},
                  {"design.kennedy-stated", "it contradicts itself"}};
    for (const auto& [rule, why] : kNever) {
        EXPECT_FALSE(mayBeKept(refusal(rule)));
        EXPECT_THAT(refused({refusal(rule)}, {.rule = rule}),
                    HasSubstr(std::string{rule} + " cannot be kept as prescribed: " + why));
    }
}

TEST(Keeping, IsRefusedWhatWasNotFoundAndWhatTheLaboratoryTakes) {
    EXPECT_EQ(refused({}, {.rule = "clasp.rest"}), "nothing was found by clasp.rest");
    EXPECT_EQ(refused({refusal("clasp.rest", 16_fdi)}, {.rule = "clasp.rest", .tooth = 17_fdi}),
              "nothing was found by clasp.rest on 17");
    Finding caution = refusal("clasp.count");
    caution.severity = Severity::Caution;
    EXPECT_FALSE(mayBeKept(caution));
    EXPECT_THAT(refused({caution}, {.rule = "clasp.count"}), HasSubstr("is a caution"));
}

// Old orders hold refusals of rules that were too hard and are gone.
TEST(Keeping, OpensTheRefusalOfARuleThatIsGone) {
    ASSERT_EQ(ruleOf("rest.none-in-resin"), nullptr);
    EXPECT_EQ(refused({refusal("rest.none-in-resin")}, {.rule = "rest.none-in-resin"}), "");
}

TEST(Keeping, HoldsInTheNextRevisionWhileExactlyTheSameIsFound) {
    const auto before = kept({refusal("clasp.rest", 16_fdi)}, {{"clasp.rest", 16_fdi, {}}});
    ASSERT_TRUE(before);
    EXPECT_FALSE(blocks(stillKept({refusal("clasp.rest", 16_fdi)}, *before)));
    Finding other = refusal("clasp.rest", 16_fdi);
    other.found = "something else";
    EXPECT_TRUE(blocks(stillKept({other}, *before)));
    EXPECT_TRUE(blocks(stillKept({refusal("clasp.rest", 17_fdi)}, *before)));
    EXPECT_TRUE(blocks(stillKept({refusal("clasp.count", 16_fdi)}, *before)));
}

TEST(Keeping, IsSaidOfEveryRuleByItsGround) {
    for (const Rule* rule : allRules()) {
        const bool never = rule->ground == Ground::Law || rule->ground == Ground::Safety ||
                           rule->ground == Ground::Definition;
        EXPECT_EQ(mayBeKept(refusal(std::string{rule->id})), !never) << rule->id;
        EXPECT_EQ(whyNotKept(refusal(std::string{rule->id})).empty(), !never) << rule->id;
    }
}

}  // namespace
