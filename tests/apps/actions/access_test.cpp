#include "apps/actions/sign_in.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <thread>

#include "apps/actions/workshop.h"
#include "storage/credential_store.h"
#include "tests/apps/actions/people_bench.h"

namespace {

using actions::authorise;
using actions::Secret;
using actions::signIn;
using actions::signInAtBench;
using actions::Who;
using actions_tests::person;
using actions_tests::saidBy;
using domain::Permission;
using domain::Role;
using domain::StationKind;
using domain::ThingCode;
using support::kPassword;
using support::signedIn;
using testing::AllOf;
using testing::Each;
using testing::ElementsAre;
using testing::EndsWith;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::MatchesRegex;
using testing::SizeIs;
using testing::StartsWith;

constexpr const char* kBadge = "BADGE-5521907";
constexpr const char* kPin = "918273";

class Access : public actions_tests::PeopleBench {
protected:
    std::string wrongPassword(const char* code) {
        return saidBy(signIn(lab(), person(code), Secret{"not the right one"}, {}));
    }
    std::string rightPassword(const char* code) {
        return saidBy(signIn(lab(), person(code), Secret{kPassword}, {}));
    }
    void giveBadge(const char* code) {
        EXPECT_EQ(saidBy(actions::giveBadge(lab(), person(code), Secret{kBadge}, Secret{kPin},
                                            support::chief(lab()))),
                  "");
    }
    void enterStation(const char* code) {
        EXPECT_EQ(saidBy(actions::enterStation(lab(), *ThingCode::parse(code),
                                               StationKind::WaxBench, support::chief(lab()))),
                  "");
    }
};

TEST_F(Access, AsksForSettingUpWhereNobodyWasEntered) {
    EXPECT_EQ(saidBy(authorise(lab(), {.person = person("MK")}, Permission::LogOrders)),
              "set the laboratory up first: framewright set-up CODE");
    EXPECT_EQ(rightPassword("MK"), "set the laboratory up first: framewright set-up CODE");
    EXPECT_THAT(events(), IsEmpty());
}

// 21 CFR 11.10(g): the whole matrix of roles and permissions, as domain/workshop/person.h has it.
TEST_F(Access, IsAsTheRoleMayForEveryPermission) {
    int allowed = 0;
    int refused = 0;
    for (const auto& [role, roleWord] : domain::enumCodes<Role>) {
        const Who who = signedIn(lab(), "P-" + std::string{roleWord}, role);
        for (const auto& [permission, word] : domain::enumCodes<Permission>) {
            const auto before = refusals().size();
            const auto answer = authorise(lab(), who, permission);
            EXPECT_EQ(static_cast<bool>(answer), may(role, permission)) << roleWord << ' ' << word;
            if (answer) {
                EXPECT_EQ(answer->role, role);
                EXPECT_EQ(refusals().size(), before);
                ++allowed;
                continue;
            }
            EXPECT_THAT(answer.error().message, EndsWith(": " + rolesThatMay(permission)));
            EXPECT_EQ(refusals().size(), before + 1);
            EXPECT_EQ(refusals().back(), std::string{word} + ": " + answer.error().message);
            ++refused;
        }
    }
    std::cout << "roles x permissions: " << allowed << " allowed, " << refused << " refused, "
              << allowed + refused << " in all\n";
    EXPECT_EQ(allowed + refused, 4 * 17);
    EXPECT_GT(allowed, 16);
    EXPECT_GT(refused, 16);
}

TEST_F(Access, WantsASessionOfThePersonThemselves) {
    const Who jt = signedIn(lab(), "JT", Role::Technician);
    const Who mk = signedIn(lab(), "MK", Role::Manager);
    EXPECT_THAT(saidBy(authorise(lab(), {.person = jt.person}, Permission::WorkStages)),
                StartsWith("JT is not signed in"));
    for (const std::string& token : {mk.token, std::string{"nonsense"}, jt.token + "0"})
        EXPECT_THAT(
            saidBy(authorise(lab(), {.person = jt.person, .token = token}, Permission::WorkStages)),
            StartsWith("this is no session of JT"));
    EXPECT_EQ(saidBy(authorise(lab(), jt, Permission::WorkStages)), "");
    EXPECT_THAT(refusals(), SizeIs(4));
    EXPECT_THAT(refusals(), Each(StartsWith("work-stages: ")));
}

TEST_F(Access, EndsWithSigningOut) {
    const Who jt = signedIn(lab(), "JT", Role::Technician);
    EXPECT_EQ(saidBy(actions::signOut(lab(), {.person = person("CHIEF"), .token = jt.token})), "");
    EXPECT_EQ(saidBy(actions::use(lab(), jt)), "") << "somebody else signed them out";
    EXPECT_EQ(saidBy(actions::signOut(lab(), jt)), "");
    EXPECT_EQ(saidBy(actions::signOut(lab(), jt)), "");
    EXPECT_THAT(saidBy(authorise(lab(), jt, Permission::WorkStages)), HasSubstr("ended"));
    EXPECT_THAT(saidBy(actions::use(lab(), jt)), HasSubstr("sign in again"));
}

// HIPAA 164.312(a)(2)(iii): automatic logoff.
TEST_F(Access, EndsWhenNothingIsDoneForTooLong) {
    const Who jt = signedIn(lab(), "JT", Role::Technician);
    for (int i = 0; i < 3; ++i) {
        clock_.letPass(15);
        EXPECT_EQ(saidBy(authorise(lab(), jt, Permission::WorkStages)), "") << i;
    }
    clock_.letPass(15, 1);
    EXPECT_THAT(saidBy(authorise(lab(), jt, Permission::WorkStages)),
                StartsWith("JT was signed out: nothing was done since 2026-11-25 00:45 UTC"));
    EXPECT_THAT(saidBy(authorise(lab(), jt, Permission::WorkStages)), HasSubstr("ended"));
    EXPECT_THAT(refusals(), SizeIs(2));
}

TEST_F(Access, LocksWhatIsIdleAndNothingElse) {
    const Who jt = signedIn(lab(), "JT", Role::Technician);
    clock_.letPass(10);
    const Who mk = signedIn(lab(), "MK", Role::Manager);
    clock_.letPass(6);
    const auto locked = actions::lockIdle(lab());
    ASSERT_TRUE(locked);
    EXPECT_GE(*locked, 1);
    EXPECT_EQ(saidBy(actions::use(lab(), mk)), "");
    EXPECT_THAT(saidBy(actions::use(lab(), jt)), HasSubstr("ended"));
    EXPECT_EQ(*actions::lockIdle(lab()), 0);
}

TEST_F(Access, RestsAsLongAsTheLaboratorySays) {
    const Who mk = signedIn(lab(), "MK", Role::Manager);
    EXPECT_EQ(*actions::idleMinutes(lab()), 15);
    for (const int wrong : {0, -3, 721})
        EXPECT_THAT(saidBy(actions::writeIdleMinutes(lab(), wrong, mk)), HasSubstr("expected"));
    const Who jt = signedIn(lab(), "JT", Role::Technician);
    EXPECT_THAT(saidBy(actions::writeIdleMinutes(lab(), 5, jt)), HasSubstr("manager"));
    ASSERT_EQ(saidBy(actions::writeIdleMinutes(lab(), 5, mk)), "");
    EXPECT_EQ(*actions::idleMinutes(lab()), 5);
    clock_.letPass(5);
    EXPECT_EQ(saidBy(actions::use(lab(), mk)), "");
    clock_.letPass(6);
    EXPECT_NE(saidBy(actions::use(lab(), mk)), "");
}

TEST_F(Access, TellsAWrongPasswordAndAnUnknownPersonTheSame) {
    signedIn(lab(), "JT", Role::Technician);
    const std::string wrong = wrongPassword("JT");
    EXPECT_EQ(wrong,
              "JT: no such person here, or not the right password; 5 failures in a row lock "
              "it for 15 minutes");
    std::string unknown = wrongPassword("XX");
    unknown.replace(0, 2, "JT");
    EXPECT_EQ(unknown, wrong);
    EXPECT_THAT(refusals(), ElementsAre("sign-in: wrong password, failure 1 of 5",
                                        "sign-in: nobody of this code works here, failure 1 of 5"));
}

// 21 CFR 11.300(d): attempts are noticed and reported at once.
TEST_F(Access, IsLockedForAQuarterOfAnHourAfterFiveFailures) {
    signedIn(lab(), "JT", Role::Technician);
    for (int i = 0; i < 5; ++i)
        EXPECT_THAT(wrongPassword("JT"), HasSubstr("not the right password"));
    EXPECT_THAT(rightPassword("JT"), StartsWith("JT is locked until 2026-11-25 00:15 UTC"));
    const auto lines = actions::people(lab());
    ASSERT_TRUE(lines);
    EXPECT_EQ(lines->back().lockedUntil->text(), "2026-11-25 00:15 UTC");
    clock_.letPass(15, -1);
    EXPECT_NE(rightPassword("JT"), "");
    clock_.letPass(0, 1);
    EXPECT_EQ(rightPassword("JT"), "");
    EXPECT_THAT(refusals(), SizeIs(7));
    EXPECT_EQ(refusals()[4], "sign-in: wrong password, failure 5 of 5: locked");
    EXPECT_EQ(refusals()[5], "sign-in: tried while locked");
    EXPECT_EQ(actions::people(lab())->back().lockedUntil, std::nullopt);
}

TEST_F(Access, GivesFiveGuessesHoweverManyGuessAtOnce) {
    signedIn(lab(), "JT", Role::Technician);
    std::vector<std::thread> guessers;
    for (int guesser = 0; guesser < 4; ++guesser)
        guessers.emplace_back([&] {
            const auto own = actions::Laboratory::open(folder(), clock_, storage::HashCost::Light);
            for (int guess = 0; own && guess < 5; ++guess)
                saidBy(signIn(*own, person("JT"), Secret{"not the right one"}, {}));
        });
    for (std::thread& guesser : guessers) guesser.join();
    const auto all = refusals();
    EXPECT_THAT(all, SizeIs(20));
    EXPECT_EQ(std::ranges::count_if(all,
                                    [](const std::string& each) {
                                        return each.find("wrong password") != std::string::npos;
                                    }),
              5);
}

TEST_F(Access, ForgetsFailuresOnceSomebodySignedIn) {
    signedIn(lab(), "JT", Role::Technician);
    for (int round = 0; round < 3; ++round) {
        for (int i = 0; i < 4; ++i) wrongPassword("JT");
        EXPECT_EQ(rightPassword("JT"), "") << round;
    }
}

TEST_F(Access, LocksACodeNobodyHasLikewise) {
    signedIn(lab(), "JT", Role::Technician);
    for (int i = 0; i < 5; ++i) wrongPassword("XX");
    EXPECT_THAT(wrongPassword("XX"), StartsWith("XX is locked until"));
    EXPECT_EQ(rightPassword("JT"), "");
}

TEST_F(Access, IsGivenByABadgeAndItsPin) {
    signedIn(lab(), "JT", Role::Technician);
    giveBadge("JT");
    const auto session = signInAtBench(lab(), Secret{kBadge}, Secret{kPin}, {});
    ASSERT_TRUE(session) << session.error().message;
    EXPECT_EQ(session->person, person("JT"));
    EXPECT_EQ(saidBy(authorise(lab(), {.person = session->person, .token = session->token},
                               Permission::WorkStages)),
              "");
    const std::string wrongPin = saidBy(signInAtBench(lab(), Secret{kBadge}, Secret{"000000"}, {}));
    EXPECT_EQ(wrongPin,
              "this badge: not the right PIN; 5 failures in a row lock it for 15 minutes");
    EXPECT_THAT(saidBy(signInAtBench(lab(), Secret{"BADGE-5521908"}, Secret{kPin}, {})),
                StartsWith("this badge is nobody's here"));
    EXPECT_THAT(refusals(), ElementsAre("sign-in: wrong PIN, failure 1 of 5",
                                        "sign-in: a badge of nobody here"));
}

TEST_F(Access, CountsFailuresOfPinAndPasswordTogether) {
    signedIn(lab(), "JT", Role::Technician);
    giveBadge("JT");
    for (int i = 0; i < 3; ++i) saidBy(signInAtBench(lab(), Secret{kBadge}, Secret{"0000"}, {}));
    for (int i = 0; i < 2; ++i) wrongPassword("JT");
    EXPECT_THAT(saidBy(signInAtBench(lab(), Secret{kBadge}, Secret{kPin}, {})),
                StartsWith("this badge is locked until"));
}

// 21 CFR 11.300(c): a lost token is deauthorised.
TEST_F(Access, IsOverAtOnceForARevokedBadge) {
    signedIn(lab(), "JT", Role::Technician);
    giveBadge("JT");
    const auto session = signInAtBench(lab(), Secret{kBadge}, Secret{kPin}, {});
    ASSERT_TRUE(session);
    ASSERT_EQ(saidBy(actions::revokeBadge(lab(), person("JT"), support::chief(lab()))), "");
    EXPECT_THAT(saidBy(signInAtBench(lab(), Secret{kBadge}, Secret{kPin}, {})),
                HasSubstr("this badge is nobody's here"));
    EXPECT_THAT(saidBy(actions::use(lab(), {.person = session->person, .token = session->token})),
                HasSubstr("ended"));
    EXPECT_EQ(rightPassword("JT"), "");
}

// 21 CFR 11.10(h): checks of the place.
TEST_F(Access, IsRefusedAtAStationThatWasNotEntered) {
    signedIn(lab(), "JT", Role::Technician);
    giveBadge("JT");
    EXPECT_THAT(saidBy(signIn(lab(), person("JT"), Secret{kPassword}, "anywhere")),
                HasSubstr("is no station here"))
        << "whatever is typed there would stand in the ledger";
    enterStation("wax-1");
    EXPECT_EQ(saidBy(signIn(lab(), person("JT"), Secret{kPassword}, "wax-1")), "");
    EXPECT_EQ(saidBy(signIn(lab(), person("JT"), Secret{kPassword}, {})), "");
    for (const char* station : {"wax-2", "anywhere", "1; DROP TABLE session"})
        EXPECT_THAT(saidBy(signIn(lab(), person("JT"), Secret{kPassword}, station)),
                    HasSubstr("is no station here"));
    EXPECT_THAT(saidBy(signInAtBench(lab(), Secret{kBadge}, Secret{kPin}, {})),
                HasSubstr("say which"));
    EXPECT_EQ(saidBy(signInAtBench(lab(), Secret{kBadge}, Secret{kPin}, "wax-1")), "");
    EXPECT_THAT(refusals(), SizeIs(5));
}

TEST_F(Access, BelongsToTheStationOneSignedInAt) {
    signedIn(lab(), "JT", Role::Technician);
    enterStation("wax-1");
    enterStation("wax-2");
    Who jt = support::signedInAs(lab(), "JT", kPassword, "wax-1");
    EXPECT_EQ(saidBy(authorise(lab(), jt, Permission::WorkStages)), "");
    jt.station = "wax-2";
    EXPECT_EQ(saidBy(authorise(lab(), jt, Permission::WorkStages)),
              "JT is signed in at wax-1, not at wax-2");
    jt.station.clear();
    EXPECT_EQ(saidBy(authorise(lab(), jt, Permission::WorkStages)), "");
}

TEST_F(Access, EndsForWhoeverWasAtTheStationBefore) {
    signedIn(lab(), "JT", Role::Technician);
    signedIn(lab(), "AB", Role::Technician);
    enterStation("wax-1");
    const Who jt = support::signedInAs(lab(), "JT", kPassword, "wax-1");
    const Who ab = support::signedInAs(lab(), "AB", kPassword, "wax-1");
    EXPECT_THAT(saidBy(actions::use(lab(), jt)), HasSubstr("ended"));
    EXPECT_EQ(saidBy(actions::use(lab(), ab)), "");
}

TEST_F(Access, HashesAnewAtTodaysCost) {
    signedIn(lab(), "JT", Role::Technician);
    const auto usual = actions::Laboratory::open(folder(), clock_);
    ASSERT_TRUE(usual);
    const auto hash = [&] {
        return *storage::CredentialStore{lab().records()}.of(person("JT"))->passwordHash;
    };
    EXPECT_THAT(hash(), StartsWith("$argon2id$v=19$m=8,t=1,p=1$"));
    EXPECT_EQ(saidBy(signIn(*usual, person("JT"), Secret{kPassword}, {})), "");
    EXPECT_THAT(hash(), StartsWith("$argon2id$v=19$m=65536,t=2,p=1$"));
}

TEST_F(Access, KeepsATokenOnlyAsItsDigest) {
    const Who jt = signedIn(lab(), "JT", Role::Technician);
    EXPECT_THAT(jt.token, MatchesRegex("[0-9a-f]{64}"));
    EXPECT_THAT(bytes(), AllOf(HasSubstr(storage::tokenDigest(jt.token)),
                               testing::Not(HasSubstr(jt.token))));
}

TEST_F(Access, ToLookIsForEverybodyWhoIsSignedIn) {
    const Who viewer = signedIn(lab(), "VI", Role::Viewer);
    EXPECT_EQ(saidBy(actions::letLook(lab(), viewer)), "");
    EXPECT_THAT(saidBy(actions::letLook(lab(), {.person = viewer.person})),
                HasSubstr("VI is not signed in"));
    clock_.letPass(16);
    EXPECT_THAT(saidBy(actions::letLook(lab(), viewer)), HasSubstr("was signed out"));
    EXPECT_THAT(refusals(),
                ElementsAre(StartsWith("look: VI is not"), StartsWith("look: VI was signed")));
}

TEST_F(Access, ToLookWritesNothingButThatTheSessionIsInUse) {
    const Who viewer = signedIn(lab(), "VI", Role::Viewer);
    const auto commits = lab().records().commits();
    for (int i = 0; i < 5; ++i) ASSERT_TRUE(actions::letLook(lab(), viewer));
    EXPECT_EQ(lab().records().commits(), commits);
    for (int i = 0; i < 20; ++i) {
        clock_.letPass(1);
        ASSERT_TRUE(actions::letLook(lab(), viewer)) << "still in use after minutes: " << i;
    }
    EXPECT_EQ(lab().records().commits(), commits + 20);
}

// Whoever is not signed in can go on for ever; the ledger must not.
TEST_F(Access, RefusedToNobodyIsRecordedSoOftenAnHourAndThenThatThereWereMore) {
    signedIn(lab(), "JT", Role::Technician);
    const auto scan = [&] { saidBy(signInAtBench(lab(), Secret{"BADGE-0"}, Secret{kPin}, {})); };
    for (int i = 0; i < 30; ++i) scan();
    auto told = refusals();
    ASSERT_THAT(told, SizeIs(21));
    EXPECT_EQ(told.back(),
              "sign-in: more at no station, not recorded one by one until 2026-11-25 01:00 UTC");
    told.pop_back();
    EXPECT_THAT(told, Each("sign-in: a badge of nobody here"));
    clock_.letPass(60);
    scan();
    EXPECT_THAT(refusals(), SizeIs(22));
    clock_.letPass(61);
    scan();
    EXPECT_THAT(refusals(), SizeIs(23)) << "an hour with one has no more to tell";
}

TEST_F(Access, RefusedToNobodyIsRecordedAgainAfterASignIn) {
    signedIn(lab(), "JT", Role::Technician);
    for (int i = 0; i < 21; ++i) saidBy(actions::letLook(lab(), {.person = person("JT")}));
    clock_.letPass(60);
    EXPECT_EQ(rightPassword("JT"), "");
    EXPECT_THAT(refusals().back(), HasSubstr("more at no station"));
    saidBy(actions::letLook(lab(), {.person = person("JT")}));
    EXPECT_THAT(refusals(), SizeIs(22));
}

TEST_F(Access, RefusedToNobodyIsCountedForEachStationAndForMadeUpOnesTogether) {
    signedIn(lab(), "JT", Role::Technician);
    enterStation("wax-1");
    const auto ask = [&](const std::string& station) {
        saidBy(actions::letLook(lab(), {.person = person("JT"), .station = station}));
    };
    for (int i = 0; i < 25; ++i) ask("made-up-" + std::to_string(i));
    EXPECT_THAT(refusals(), SizeIs(21));
    for (int i = 0; i < 25; ++i) ask("wax-1");
    EXPECT_THAT(refusals(), SizeIs(42));
}

// Or whoever makes noise first could guess unseen.
TEST_F(Access, ThatGetsLockedIsRecordedWhateverWasRefusedBefore) {
    signedIn(lab(), "JT", Role::Technician);
    for (int i = 0; i < 25; ++i) saidBy(actions::letLook(lab(), {.person = person("JT")}));
    for (int i = 0; i < 5; ++i) wrongPassword("JT");
    EXPECT_THAT(refusals(), SizeIs(22));
    EXPECT_EQ(refusals().back(), "sign-in: wrong password, failure 5 of 5: locked");
}

TEST_F(Access, OfACodeTheRecordsUseThemselvesDoesNotCount) {
    signedIn(lab(), "JT", Role::Technician);
    for (int i = 0; i < 25; ++i) wrongPassword("at.");
    clock_.letPass(60);
    wrongPassword("at.");
    EXPECT_THAT(refusals()[20], HasSubstr("more at no station"));
    for (const char* code : {"at.wax-1", "nobody", "Unknown-Badge"})
        EXPECT_THAT(saidBy(actions::enterPerson(lab(), person(code), Role::Viewer, {},
                                                support::chief(lab()))),
                    HasSubstr("choose another code"));
}

}  // namespace
