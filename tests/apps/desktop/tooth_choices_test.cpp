#include "apps/desktop/models/tooth_choices.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/support/designs.h"

namespace {

using namespace domain;
using models::ToothChoice;
using models::toothChoices;

const ToothChoice* choice(const std::vector<ToothChoice>& choices, std::string_view group,
                          std::string_view word) {
    const auto found = std::ranges::find_if(
        choices, [&](const ToothChoice& each) { return each.group == group && each.word == word; });
    return found == choices.end() ? nullptr : &*found;
}

TEST(ToothChoices, OfferPartsOnAToothThatStandsAndASaddleOnOneThatDoesNot) {
    const Prescription design = support::upperClassIIIMod1();
    const auto standing = toothChoices(design, 16_fdi);
    EXPECT_NE(choice(standing, "clasp", "I-bar"), nullptr);
    EXPECT_EQ(choice(standing, "saddle", "new saddle"), nullptr);
    const auto missing = toothChoices(design, 14_fdi);
    EXPECT_EQ(choice(missing, "clasp", "I-bar"), nullptr);
    EXPECT_NE(choice(missing, "saddle", "new saddle"), nullptr);
}

TEST(ToothChoices, SayWhichStateHolds) {
    const auto choices = toothChoices(support::upperClassIIIMod1(), 14_fdi);
    EXPECT_TRUE(choice(choices, "is", "missing")->holds);
    EXPECT_FALSE(choice(choices, "is", "present")->holds);
}

TEST(ToothChoices, AToothThatIsPresentAgainLeavesItsSaddle) {
    const Prescription design = support::upperClassIIIMod1();
    const auto choices = toothChoices(design, 14_fdi);
    const Prescription& after = choice(choices, "is", "present")->after;
    EXPECT_EQ(after.dentition.of(14_fdi), ToothState::Present);
    EXPECT_FALSE(replacedTeeth(after).has(14_fdi));
    EXPECT_TRUE(replacedTeeth(after).has(15_fdi));
}

TEST(ToothChoices, ANewRestStandsOnTheToothPointedAt) {
    Prescription empty;
    empty.arch = Arch::Lower;
    const auto choices = toothChoices(empty, 36_fdi);
    const Prescription& after = choice(choices, "rest", "occlusal, mesial")->after;
    ASSERT_EQ(after.rests.size(), 1U);
    EXPECT_EQ(after.rests.front().tooth, 36_fdi);
    EXPECT_EQ(after.rests.front().side, Surface::Mesial);
    EXPECT_NE(choice(toothChoices(empty, 33_fdi), "rest", "cingulum"), nullptr);
}

TEST(ToothChoices, AToothJoinsASaddleInTheOrderOfTheArch) {
    Prescription design;
    design.dentition.set(15_fdi, ToothState::Missing);
    design.dentition.set(14_fdi, ToothState::Missing);
    design.saddles = {{.teeth = {14_fdi}}};
    const auto choices = toothChoices(design, 15_fdi);
    const Prescription& after = choice(choices, "saddle", "saddle 1: 14")->after;
    EXPECT_EQ(after.saddles.front().teeth, (std::vector<Tooth>{15_fdi, 14_fdi}));
}

TEST(ToothChoices, TakeAwayOnlyWhatIsThere) {
    const Prescription design = support::upperClassIIIMod1();
    const auto choices = toothChoices(design, 16_fdi);
    const auto* rests = choice(choices, "take away", "rests here");
    ASSERT_NE(rests, nullptr);
    EXPECT_TRUE(std::ranges::none_of(rests->after.rests,
                                     [](const Rest& rest) { return rest.tooth == 16_fdi; }));
    EXPECT_EQ(choice(toothChoices({}, 16_fdi), "take away", "rests here"), nullptr);
}

}  // namespace
