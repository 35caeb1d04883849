#include <gtest/gtest.h>

#include <set>

#include "domain/teeth/crown_size.h"
#include "domain/teeth/numbering.h"
#include "domain/teeth/tooth_set.h"
#include "tests/oracles/notation_crosswalk.h"

namespace {

using namespace domain;

TEST(Numbering, AgreesWithThePublishedCrosswalkBothWays) {
    for (const auto& row : oracles::kNotationCrosswalk) {
        const auto tooth = Tooth::parse(row.iso3950);
        ASSERT_TRUE(tooth);
        EXPECT_EQ(nameOf(*tooth, Notation::Universal), row.universal);
        EXPECT_EQ(parseTooth(row.universal, Notation::Universal), tooth);
    }
}

TEST(Numbering, ReadsBackWhatItWritesInEveryNotation) {
    for (const auto& row : oracles::kNotationCrosswalk)
        for (const auto& code : enumCodes<Notation>) {
            const auto tooth = Tooth::parse(row.iso3950);
            EXPECT_EQ(parseTooth(nameOf(*tooth, code.value), code.value), tooth);
        }
    EXPECT_EQ(nameOf(16_fdi, Notation::Palmer), "UR6");
    EXPECT_EQ(nameOf(36_fdi, Notation::Palmer), "LL6");
}

TEST(Numbering, RefusesWhatIsNoTooth) {
    for (const char* text : {"19", "10", "50", "51", "1", "", "366", "3 ", "a6"})
        EXPECT_FALSE(parseTooth(text, Notation::Iso3950)) << text;
    for (const char* text : {"0", "00", "01", "33", "99", "", "1a", "-1"})
        EXPECT_FALSE(parseTooth(text, Notation::Universal)) << text;
    for (const char* text : {"UR9", "UR0", "XX1", "UR", "ur6", "UR66"})
        EXPECT_FALSE(parseTooth(text, Notation::Palmer)) << text;
}

// Derived from the two numberings: 11-18, 21-28, 31 and 32 are teeth in both, eighteen in all.
TEST(Numbering, KnowsTheEighteenAmbiguousNumbers) {
    int ambiguous = 0;
    for (const auto& row : oracles::kNotationCrosswalk) {
        const bool both = parseTooth(row.iso3950, Notation::Universal).has_value();
        EXPECT_EQ(isAmbiguous(*Tooth::parse(row.iso3950)), both) << row.iso3950;
        ambiguous += both ? 1 : 0;
    }
    EXPECT_EQ(ambiguous, 18);
}

TEST(Tooth, HasOnePlaceInItsArch) {
    std::set<int> indices;
    for (const Arch arch : {Arch::Upper, Arch::Lower})
        for (int position = 0; position < kTeethInArch; ++position) {
            const Tooth tooth = Tooth::at(arch, position);
            EXPECT_EQ(tooth.arch(), arch);
            EXPECT_EQ(tooth.position(), position);
            EXPECT_EQ(Tooth::parse(tooth.text()), tooth);
            indices.insert(tooth.index());
        }
    EXPECT_EQ(indices.size(), 32U);
    EXPECT_EQ(Tooth::at(Arch::Upper, 0), 18_fdi);
    EXPECT_EQ(Tooth::at(Arch::Lower, 15), 38_fdi);
    EXPECT_EQ((13_fdi).kind(), ToothKind::Canine);
    EXPECT_EQ((44_fdi).kind(), ToothKind::Premolar);
    EXPECT_EQ((41_fdi).kind(), ToothKind::Incisor);
}

TEST(ToothSet, HoldsEachToothOnceInOrder) {
    ToothSet set{26_fdi, 14_fdi, 14_fdi, 36_fdi};
    EXPECT_EQ(set.size(), 3);
    EXPECT_EQ(set.teeth(), (std::vector<Tooth>{14_fdi, 26_fdi, 36_fdi}));
    set.remove(14_fdi);
    EXPECT_FALSE(set.has(14_fdi));
}

// Sums of mesio-distal diameters to the second molars: 111 mm upper, 106 mm lower, from the table
// of a dental anatomy textbook (Wheeler), from memory.
TEST(CrownSize, AddsUpToThePublishedArchLengths) {
    for (const auto& [arch, sum] :
         {std::pair{Arch::Upper, 111'000_um}, {Arch::Lower, 106'000_um}}) {
        Microns total;
        for (int position = 1; position < kTeethInArch - 1; ++position)
            total = total + crownSize(Tooth::at(arch, position)).mesiodistal;
        EXPECT_EQ(total, sum);
    }
}

}  // namespace
