#include "apps/actions/people.h"

#include <gmock/gmock.h>

#include "apps/actions/verification.h"
#include "tests/apps/actions/people_bench.h"

namespace {

using actions::enterPerson;
using actions::giveBadge;
using actions::givePassword;
using actions::personLeaves;
using actions::resetPassword;
using actions::Secret;
using actions::setUp;
using actions::signIn;
using actions::signInAtBench;
using actions::Who;
using actions_tests::person;
using actions_tests::saidBy;
using domain::Role;
using domain::Skill;
using support::chief;
using support::kPassword;
using support::signedIn;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::StartsWith;

constexpr const char* kBadge = "BADGE-5521907";
constexpr const char* kPin = "918273";

class People : public actions_tests::PeopleBench {
protected:
    std::string signingIn(const char* code, const std::string& password) {
        return saidBy(signIn(lab(), person(code), Secret{password}, {}));
    }
    actions::PersonLine line(std::string_view code) {
        for (const auto& each : *actions::people(lab()))
            if (each.code.text() == code) return each;
        ADD_FAILURE() << "nobody of the code " << code;
        return {.code = person("nobody")};
    }
    /// The words of what happened to one person, in order.
    std::vector<std::string> happenedTo(std::string_view code) {
        std::vector<std::string> all;
        for (const auto& event : events())
            if (event.subject.text() == "person/" + std::string{code})
                all.push_back(std::string{codeOf(kindOf(event))} + " by " + event.person.text());
        return all;
    }
};

TEST_F(People, BeginWithAManagerWhoSetsTheLaboratoryUp) {
    ASSERT_EQ(saidBy(setUp(lab(), person("MK"), {Skill::Surveying}, Secret{kPassword})), "");
    EXPECT_EQ(line("MK").person, (domain::Person{Role::Manager, {Skill::Surveying}, false, true}));
    EXPECT_TRUE(line("MK").hasPassword);
    EXPECT_EQ(signingIn("MK", kPassword), "");
    EXPECT_THAT(happenedTo("MK"), ElementsAre("person-entered by MK", "credential-given by MK"));
}

TEST_F(People, AreSetUpOnlyOnce) {
    chief(lab());
    for (const char* code : {"MK", "CHIEF"})
        EXPECT_THAT(saidBy(setUp(lab(), person(code), {}, Secret{kPassword})),
                    StartsWith("this laboratory is set up already"));
    EXPECT_THAT(*actions::people(lab()), testing::SizeIs(1));
}

TEST_F(People, AreEnteredByManagersAlone) {
    const Who mk = signedIn(lab(), "MK", Role::Manager);
    for (const Role role : {Role::Technician, Role::Inspector, Role::Viewer}) {
        const Who who = signedIn(lab(), "P-" + std::string{codeOf(role)}, role);
        EXPECT_THAT(saidBy(enterPerson(lab(), person("NEW"), Role::Viewer, {}, who)),
                    HasSubstr("is for: manager"));
        EXPECT_THAT(saidBy(personLeaves(lab(), person("MK"), who)), HasSubstr("is for: manager"));
        EXPECT_THAT(saidBy(resetPassword(lab(), person("MK"), who)), HasSubstr("is for: manager"));
        EXPECT_THAT(saidBy(giveBadge(lab(), person("MK"), Secret{kBadge}, Secret{kPin}, who)),
                    HasSubstr("is for: manager"));
        EXPECT_THAT(saidBy(actions::revokeBadge(lab(), person("MK"), who)),
                    HasSubstr("is for: manager"));
    }
    EXPECT_EQ(saidBy(enterPerson(lab(), person("NEW"), Role::Viewer, {Skill::Waxing}, mk)), "");
    EXPECT_EQ(line("NEW").person, (domain::Person{Role::Viewer, {Skill::Waxing}, false}));
}

TEST_F(People, KeepTheirNewRoleFromTheNextCommandOn) {
    const Who jt = signedIn(lab(), "JT", Role::Technician);
    EXPECT_TRUE(authorise(lab(), jt, domain::Permission::WorkStages));
    ASSERT_EQ(saidBy(enterPerson(lab(), person("JT"), Role::Viewer, {}, chief(lab()))), "");
    EXPECT_FALSE(authorise(lab(), jt, domain::Permission::WorkStages));
}

TEST_F(People, NeverDifferInCapitalsAlone) {
    signedIn(lab(), "JT", Role::Technician);
    EXPECT_THAT(saidBy(enterPerson(lab(), person("jt"), Role::Viewer, {}, chief(lab()))),
                HasSubstr("would be taken for JT"));
    EXPECT_THAT(saidBy(enterPerson(lab(), person("Unknown-Badge"), Role::Viewer, {}, chief(lab()))),
                HasSubstr("choose another code"));
}

TEST_F(People, WhoManageAloneCannotLeaveOrBeMadeLess) {
    EXPECT_THAT(saidBy(personLeaves(lab(), person("CHIEF"), chief(lab()))),
                HasSubstr("nobody else manages here"));
    EXPECT_THAT(saidBy(enterPerson(lab(), person("CHIEF"), Role::Viewer, {}, chief(lab()))),
                HasSubstr("nobody else manages here"));
    EXPECT_EQ(signingIn("CHIEF", support::kChiefsPassword), "") << "a refusal took something away";
    signedIn(lab(), "MK", Role::Manager);
    EXPECT_EQ(saidBy(personLeaves(lab(), person("CHIEF"), chief(lab()))), "");
}

// A manager who cannot sign in, or only with a password somebody else knows, manages nothing.
TEST_F(People, WhoManageAloneAreThoseWhoCanSignIn) {
    chief(lab());
    ASSERT_EQ(saidBy(enterPerson(lab(), person("MK"), Role::Manager, {}, chief(lab()))), "");
    EXPECT_THAT(saidBy(personLeaves(lab(), person("CHIEF"), chief(lab()))),
                HasSubstr("nobody else manages here with a password of their own"));
    ASSERT_EQ(saidBy(giveBadge(lab(), person("MK"), Secret{kBadge}, Secret{kPin}, chief(lab()))),
              "");
    EXPECT_THAT(saidBy(personLeaves(lab(), person("CHIEF"), chief(lab()))),
                HasSubstr("with a password of their own"))
        << "to give a role takes a password";
    const auto once = resetPassword(lab(), person("MK"), chief(lab()));
    ASSERT_TRUE(once);
    EXPECT_THAT(saidBy(enterPerson(lab(), person("CHIEF"), Role::Viewer, {}, chief(lab()))),
                HasSubstr("with a password of their own"));
    EXPECT_THAT(saidBy(resetPassword(lab(), person("CHIEF"), chief(lab()))),
                HasSubstr("framewright password CHIEF"))
        << "a one-time password in the place of one's own";
    ASSERT_EQ(saidBy(givePassword(lab(), person("MK"), *once, Secret{kPassword})), "");
    EXPECT_EQ(saidBy(personLeaves(lab(), person("CHIEF"), chief(lab()))), "");
    EXPECT_THAT(
        saidBy(personLeaves(lab(), person("MK"), support::signedInAs(lab(), "MK", kPassword))),
        HasSubstr("nobody else manages"));
}

TEST_F(People, WhoDecideWhoMayDoWhatGiveTheirPasswordOnceMore) {
    Who boss = chief(lab());
    const auto enter = [&](const Who& who) {
        return saidBy(enterPerson(lab(), person("NEW"), Role::Viewer, {}, who));
    };
    const Who unproven{.person = boss.person, .token = boss.token};
    EXPECT_THAT(enter(unproven), HasSubstr("gives the password once more"));
    EXPECT_THAT(saidBy(resetPassword(lab(), person("NEW"), unproven)),
                HasSubstr("gives the password once more"));
    EXPECT_THAT(saidBy(personLeaves(lab(), person("CHIEF"), unproven)),
                HasSubstr("gives the password once more"));
    EXPECT_THAT(refusals(), IsEmpty()) << "nothing was tried yet";
    const Who wrong = actions::proving(unproven, Secret{"not the right one"});
    for (int i = 0; i < 5; ++i) EXPECT_THAT(enter(wrong), HasSubstr("not the right password"));
    EXPECT_THAT(enter(boss), HasSubstr("CHIEF is locked until"))
        << "no more guesses than signing in";
    EXPECT_EQ(refusals().front(), "keep-people: wrong password, failure 1 of 5");
    clock_.letPass(14);
    EXPECT_EQ(saidBy(actions::use(lab(), boss)), "");
    clock_.letPass(2);
    EXPECT_EQ(enter(boss), "");
    const Who viewer = signedIn(lab(), "VI", Role::Viewer);
    EXPECT_THAT(enter(actions::proving(viewer, Secret{"not the right one"})),
                HasSubstr("is for: manager"))
        << "whoever may not is not asked";
}

TEST_F(People, WhoRepeatACommandUnderItsKeyAreToldWhenItWasRecorded) {
    Who boss = chief(lab());
    boss.key = "once";
    std::vector<std::string> told;
    lab().tellBy([&](const std::string& sentence) { told.push_back(sentence); });
    for (int i = 0; i < 2; ++i) {
        EXPECT_EQ(saidBy(enterPerson(lab(), person("NEW"), Role::Viewer, {}, boss)), "");
        clock_.letPass(1);
    }
    EXPECT_THAT(told,
                ElementsAre("recorded before, at 2026-11-25 00:00 UTC; nothing was done again"));
    boss.key = "leave";
    for (int i = 0; i < 2; ++i)
        EXPECT_EQ(saidBy(personLeaves(lab(), person("NEW"), boss)), "") << i;
    EXPECT_THAT(told.back(), StartsWith("recorded before, at 2026-11-25 00:02 UTC"));
    lab().tellBy({});
}

TEST_F(People, WhoLeaveOpenNothingFromThatMoment) {
    const Who jt = signedIn(lab(), "JT", Role::Technician);
    ASSERT_EQ(saidBy(giveBadge(lab(), person("JT"), Secret{kBadge}, Secret{kPin}, chief(lab()))),
              "");
    const Who again = support::signedInAs(lab(), "JT", kPassword);
    ASSERT_EQ(saidBy(personLeaves(lab(), person("JT"), chief(lab()))), "");
    for (const Who& who : {jt, again})
        EXPECT_THAT(saidBy(authorise(lab(), who, domain::Permission::WorkStages)),
                    HasSubstr("ended"));
    EXPECT_THAT(signingIn("JT", kPassword), HasSubstr("no such person"));
    EXPECT_THAT(saidBy(signInAtBench(lab(), Secret{kBadge}, Secret{kPin}, {})),
                HasSubstr("nobody's here"));
    EXPECT_TRUE(line("JT").person.left);
    EXPECT_FALSE(line("JT").hasPassword || line("JT").hasBadge);
    EXPECT_THAT(happenedTo("JT"),
                ElementsAre("person-entered by CHIEF", "credential-given by CHIEF",
                            "credential-given by JT", "credential-given by CHIEF",
                            "credential-taken by CHIEF", "credential-taken by CHIEF",
                            "person-left by CHIEF"));
}

// 21 CFR 11.100(a): never reused by, or reassigned to, anybody else.
TEST_F(People, NeverGetTheCodeOfOneWhoLeft) {
    signedIn(lab(), "JT", Role::Technician);
    ASSERT_EQ(saidBy(personLeaves(lab(), person("JT"), chief(lab()))), "");
    EXPECT_THAT(saidBy(enterPerson(lab(), person("JT"), Role::Viewer, {}, chief(lab()))),
                HasSubstr("belonged to somebody who left"));
    EXPECT_THAT(saidBy(enterPerson(lab(), person("Jt"), Role::Viewer, {}, chief(lab()))),
                HasSubstr("choose another code"));
    EXPECT_THAT(saidBy(resetPassword(lab(), person("JT"), chief(lab()))),
                HasSubstr("no such person"));
    EXPECT_THAT(saidBy(giveBadge(lab(), person("JT"), Secret{kBadge}, Secret{kPin}, chief(lab()))),
                HasSubstr("no such person"));
}

TEST_F(People, ChangeTheirOwnPasswordByThePresentOne) {
    const Who jt = signedIn(lab(), "JT", Role::Technician);
    EXPECT_THAT(saidBy(givePassword(lab(), person("JT"), Secret{"not the right one"},
                                    Secret{"another lamp over it"})),
                HasSubstr("not the right password"));
    EXPECT_THAT(saidBy(givePassword(lab(), person("JT"), Secret{kPassword}, Secret{kPassword})),
                HasSubstr("another password"));
    ASSERT_EQ(saidBy(givePassword(lab(), person("JT"), Secret{kPassword},
                                  Secret{"another lamp over it"})),
              "");
    EXPECT_THAT(saidBy(actions::use(lab(), jt)), HasSubstr("ended"));
    EXPECT_THAT(signingIn("JT", kPassword), HasSubstr("not the right password"));
    EXPECT_EQ(signingIn("JT", "another lamp over it"), "");
}

TEST_F(People, AreLockedByGuessingAtTheChangeOfAPasswordToo) {
    signedIn(lab(), "JT", Role::Technician);
    for (int i = 0; i < 5; ++i)
        saidBy(givePassword(lab(), person("JT"), Secret{"a guess " + std::to_string(i)},
                            Secret{"another lamp over it"}));
    EXPECT_THAT(signingIn("JT", kPassword), StartsWith("JT is locked"));
}

// 21 CFR 11.200(a)(2): used only by their genuine owners.
TEST_F(People, MustReplaceAPasswordAManagerGave) {
    const Who jt = signedIn(lab(), "JT", Role::Technician);
    const auto once = resetPassword(lab(), person("JT"), chief(lab()));
    ASSERT_TRUE(once);
    EXPECT_TRUE(line("JT").mustChange);
    EXPECT_THAT(saidBy(actions::use(lab(), jt)), HasSubstr("ended"));
    EXPECT_THAT(signingIn("JT", kPassword), HasSubstr("not the right password"));
    EXPECT_THAT(signingIn("JT", once->text()), HasSubstr("choose your own first"));
    ASSERT_EQ(saidBy(givePassword(lab(), person("JT"), *once, Secret{kPassword})), "");
    EXPECT_FALSE(line("JT").mustChange);
    EXPECT_EQ(signingIn("JT", kPassword), "");
    EXPECT_THAT(saidBy(givePassword(lab(), person("JT"), *once, Secret{"another lamp over it"})),
                HasSubstr("not the right password"));
}

TEST_F(People, AreUnlockedByANewPassword) {
    signedIn(lab(), "JT", Role::Technician);
    for (int i = 0; i < 5; ++i) signingIn("JT", "wrong again");
    const auto once = resetPassword(lab(), person("JT"), chief(lab()));
    ASSERT_TRUE(once);
    EXPECT_EQ(saidBy(givePassword(lab(), person("JT"), *once, Secret{kPassword})), "");
    EXPECT_EQ(signingIn("JT", kPassword), "");
}

TEST_F(People, ChooseSecretsThatAreLongEnough) {
    for (const char* weak : {"", "eleven char", "\u00E9\u00E9\u00E9\u00E9\u00E9\u00E9"})
        EXPECT_THAT(saidBy(setUp(lab(), person("MK"), {}, Secret{weak})),
                    HasSubstr("12 to 256 characters"))
            << weak;
    EXPECT_THAT(saidBy(setUp(lab(), person("MK"), {}, Secret{std::string(257, 'a')})),
                HasSubstr("12 to 256 characters"));
    EXPECT_THAT(events(), IsEmpty());
    EXPECT_EQ(saidBy(setUp(lab(), person("CHIEF"), {}, Secret{support::kChiefsPassword})), "");
    const Who boss = chief(lab());
    for (const char* pin : {"", "123", "12a4", "1234567890123", "\u0661\u0662\u0663\u0664"})
        EXPECT_THAT(saidBy(giveBadge(lab(), person("CHIEF"), Secret{kBadge}, Secret{pin}, boss)),
                    HasSubstr("a PIN of 4 to 12 digits"))
            << pin;
    for (const std::string& badge : {std::string{}, std::string{"12345"}, std::string{"12 4567"},
                                     std::string{"12\t4567"}, std::string(65, '1')})
        EXPECT_THAT(saidBy(giveBadge(lab(), person("CHIEF"), Secret{badge}, Secret{kPin}, boss)),
                    HasSubstr("a badge code of 6 to 64"))
            << badge;
}

TEST_F(People, NeverShareABadge) {
    signedIn(lab(), "JT", Role::Technician);
    signedIn(lab(), "AB", Role::Technician);
    const auto give = [&](const char* code) {
        return saidBy(giveBadge(lab(), person(code), Secret{kBadge}, Secret{kPin}, chief(lab())));
    };
    EXPECT_EQ(give("JT"), "");
    EXPECT_THAT(give("AB"), HasSubstr("is the badge of JT"));
    EXPECT_EQ(give("JT"), "") << "the same badge with a new PIN";
    EXPECT_EQ(saidBy(actions::revokeBadge(lab(), person("JT"), chief(lab()))), "");
    EXPECT_THAT(saidBy(actions::revokeBadge(lab(), person("JT"), chief(lab()))),
                HasSubstr("has no badge"));
    EXPECT_EQ(give("AB"), "");
}

TEST_F(People, AreTheSamePersonWhicheverKeyboardWroteThePassword) {
    ASSERT_EQ(saidBy(setUp(lab(), person("MK"), {}, Secret{"caf\u00E9 at seven"})), "");
    EXPECT_EQ(signingIn("MK", "cafe\u0301 at seven"), "");
    EXPECT_NE(signingIn("MK", "cafe at seven"), "");
}

TEST_F(People, LeaveNoSecretInTheRecords) {
    const char* password = "canary-password-58x";
    const char* wrong = "canary-wrong-guess-9";
    ASSERT_EQ(saidBy(setUp(lab(), person("CHIEF"), {}, Secret{support::kChiefsPassword})), "");
    const Who boss = chief(lab());
    ASSERT_EQ(saidBy(enterPerson(lab(), person("JT"), Role::Technician, {}, boss)), "");
    const auto once = resetPassword(lab(), person("JT"), boss);
    ASSERT_TRUE(once);
    ASSERT_EQ(saidBy(givePassword(lab(), person("JT"), *once, Secret{password})), "");
    ASSERT_EQ(saidBy(giveBadge(lab(), person("JT"), Secret{"CANARY-BADGE-7716"},
                               Secret{"640917738251"}, boss)),
              "");
    EXPECT_NE(signingIn("JT", wrong), "");
    const auto session =
        signInAtBench(lab(), Secret{"CANARY-BADGE-7716"}, Secret{"640917738251"}, {});
    ASSERT_TRUE(session);
    const std::string all = bytes();
    ASSERT_THAT(all, HasSubstr("argon2id")) << "the records were not read";
    for (const std::string& secret :
         {std::string{password}, std::string{wrong}, once->text(),
          std::string{support::kChiefsPassword}, std::string{"CANARY-BADGE-7716"},
          std::string{"640917738251"}, boss.token, session->token})
        EXPECT_EQ(all.find(secret), std::string::npos) << secret;
    const auto verification = actions::verify(lab());
    ASSERT_TRUE(verification);
    EXPECT_THAT(verification->problems, IsEmpty());
}

TEST_F(People, SayWhenEachWasHereLast) {
    signedIn(lab(), "JT", Role::Technician);
    clock_.letPass(7);
    EXPECT_EQ(line("JT").lastHere->text(), "2026-11-25 00:00 UTC");
    signedIn(lab(), "JT", Role::Technician);
    EXPECT_EQ(line("JT").lastHere->text(), "2026-11-25 00:07 UTC");
}

}  // namespace
