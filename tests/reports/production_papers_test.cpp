#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <regex>

#include "tests/reports/printed.h"
#include "tests/reports/sample_papers.h"
#include "tests/support/designs.h"

namespace {

using namespace domain;
using printed::flat;
using printed::Folder;
using printed::head;
using samples::Sample;
using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

class AProductionPaper : public testing::TestWithParam<Sample> {};

TEST_P(AProductionPaper, SaysWhatItsGoldenTextSays) {
    printed::expectGolden(GetParam().name + ".txt", GetParam().paper);
}

TEST_P(AProductionPaper, IsASoundPdfOnEitherPageSizeWithItsMarginsWhite) {
    const Folder folder;
    for (const auto size : {reports::PageSize::A4, reports::PageSize::UsLetter}) {
        reports::Paper paper = GetParam().paper;
        paper.head.size = size;
        const auto file = printed::put(folder, paper);
        EXPECT_TRUE(printed::isSound(file));
        EXPECT_LE(printed::pagesOf(file), 3);
        for (int page = 1; page <= printed::pagesOf(file); ++page) {
            const auto raster = printed::rasterOf(file, page, 50);
            const int margin = 12 * 50 * 10 / 254;  // 12 mm in pixels
            ASSERT_GT(raster.width, 0);
            EXPECT_EQ(raster.ink(0, 0, raster.width, margin), 0) << page;
            EXPECT_EQ(raster.ink(0, raster.height - margin, raster.width, raster.height), 0);
            EXPECT_EQ(raster.ink(0, 0, margin, raster.height), 0) << page;
            EXPECT_EQ(raster.ink(raster.width - margin, 0, raster.width, raster.height), 0);
        }
    }
}

TEST_P(AProductionPaper, CarriesItsCautionsAndDefersToThePrescriber) {
    const std::string text = reports::textOf(GetParam().paper);
    EXPECT_THAT(text, HasSubstr("!! Cautions"));
    EXPECT_TRUE(text.find("defers to the prescriber") != std::string::npos ||
                text.find("is the prescriber's") != std::string::npos);
}

// Regulation (EU) 2017/745, article 20(1), from memory: custom-made devices bear no CE marking.
TEST_P(AProductionPaper, BearsNoConformityMark) {
    const Folder folder;
    const auto file = printed::put(folder, GetParam().paper);
    EXPECT_FALSE(
        std::regex_search(printed::textOf(file), std::regex{"\\bCE\\b|C E|\u03F9|\u20A0"}));
    // Neither is there an image that could be one.
    EXPECT_THAT(printed::run(QPDF " --qdf '" + file.string() + "' -").output,
                Not(HasSubstr("/Subtype /Image")));
}

TEST_P(AProductionPaper, NamesThePatientByNoMoreThanTheReference) {
    const std::string text = reports::textOf(GetParam().paper);
    EXPECT_THAT(text, HasSubstr("P-1044"));
    EXPECT_THAT(text, Not(HasSubstr(*support::upperClassIIIMod1().identity.patientName)));
}

INSTANTIATE_TEST_SUITE_P(OfEachKind, AProductionPaper, testing::ValuesIn(samples::all()),
                         [](const auto& tested) { return tested.param.name; });

TEST(ADeviceStatement, PrintsEachOfTheEightItems) {
    const auto paper = reports::deviceStatement(head(), samples::issuedStatement());
    ASSERT_TRUE(paper);
    const std::string text = reports::textOf(*paper);
    const Statement& statement = samples::issuedStatement().statement;
    for (const std::string& part :
         {statement.manufacturer.name, statement.manufacturer.address,
          statement.sites[1].party.name, statement.sites[1].party.address, statement.sites[1].work,
          std::string{"Not applicable."}, statement.device->text(), statement.description,
          "exclusive use of the patient " + statement.patientReference, statement.prescriber.name,
          statement.prescriber.qualification, std::string{"Practice at the Old Pier"},
          statement.characteristics.lines[2], statement.characteristics.digest,
          statement.conformity->exceptions[0].requirement,
          statement.conformity->exceptions[0].grounds, std::string{"no medicinal substance"}})
        EXPECT_THAT(text, HasSubstr(part));
    EXPECT_THAT(text, HasSubstr("Custom-made device"));
    EXPECT_THAT(text, HasSubstr("Revision: 2"));
}

TEST(ADeviceStatement, IsRefusedNamingAllThatLacks) {
    reports::IssuedStatement issued = samples::issuedStatement();
    issued.statement.patientReference.clear();
    issued.statement.conformity->exceptions[0].grounds.clear();
    const auto refused = reports::deviceStatement(head(), issued);
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, ErrorCode::Refused);
    EXPECT_THAT(refused.error().message,
                AllOf(HasSubstr("statement.patient"), HasSubstr("exception 1 gives no grounds")));
}

TEST(ADeviceStatement, SaysHowLongItIsKeptAsFarAsItIsKnown) {
    reports::IssuedStatement issued = samples::issuedStatement();
    const auto text = [&] { return reports::textOf(*reports::deviceStatement(head(), issued)); };
    EXPECT_THAT(text(), HasSubstr("at least 10 years from delivery, through 2036-12-17."));
    issued.delivered.reset();
    EXPECT_THAT(text(), HasSubstr("at least 10 years from delivery. "));
    issued.retention = {*retentionTermOf("us-ny")};
    EXPECT_THAT(text(), HasSubstr("at least 1 year from delivery"));
    issued.retention.clear();
    EXPECT_THAT(text(), HasSubstr("How long this statement is kept is not set."));
}

TEST(ADeviceStatement, PrintsARepresentativeAndASubstanceWhereThereIsOne) {
    reports::IssuedStatement issued = samples::issuedStatement();
    issued.statement.representative = Party{"Exchange Agents", "1 Exchange Place, Midport"};
    issued.statement.substances = std::string{"chlorhexidine in the lining"};
    issued.statement.conformity->exceptions.clear();
    issued.lots.clear();
    const std::string text = reports::textOf(*reports::deviceStatement(head(), issued));
    EXPECT_THAT(text, AllOf(HasSubstr("1 Exchange Place, Midport"), HasSubstr("chlorhexidine"),
                            HasSubstr("Regulation (EU) 2017/745."),
                            HasSubstr("No lot is recorded for this device.")));
    EXPECT_THAT(text, Not(HasSubstr("Not fully met")));
}

TEST(ADeliveryNote, SaysWithWhatAndForHowLongItWasDisinfectedOrLeavesRoomForIt) {
    EXPECT_THAT(reports::textOf(reports::deliveryNote(head(), samples::delivery())),
                HasSubstr("Disinfected with isopropyl alcohol 70 % for 10 minutes"));
    EXPECT_THAT(reports::textOf(reports::deliveryNote(head(), samples::delivery(true))),
                HasSubstr("Disinfected with: ________  for (minutes): ________"));
}

TEST(ADeliveryNote, OfSeveralOrdersNamesNoneInItsHead) {
    const auto paper = reports::deliveryNote(head(), samples::delivery(true));
    EXPECT_EQ(paper.head.order, "");
    EXPECT_THAT(reports::textOf(paper), AllOf(HasSubstr(samples::number(12).text()),
                                              HasSubstr(samples::number(13).text())));
    const Folder folder;
    EXPECT_THAT(flat(printed::textOf(printed::put(folder, paper))), Not(HasSubstr("revision 2")));
}

TEST(TheHazards, FollowFromTheMaterials) {
    Prescription design = support::upperClassIIIMod1();
    design.framework.material = FrameworkMaterial::CobaltChromium;
    design.framework.nickel = 900_ppm;
    EXPECT_TRUE(reports::hazardsOf(design).cobalt);
    EXPECT_FALSE(reports::hazardsOf(design).nickel);
    design.framework.nickel = 1000_ppm;
    EXPECT_TRUE(reports::hazardsOf(design).nickel);
    design.framework.material = FrameworkMaterial::Acetal;
    EXPECT_FALSE(reports::hazardsOf(design).metal);
    EXPECT_FALSE(reports::hazardsOf(design).nickel);
    EXPECT_TRUE(reports::hazardsOf(design).monomer);
    design.base.methacrylateFree = true;
    EXPECT_FALSE(reports::hazardsOf(design).monomer);
}

TEST(ALongTicket, KeepsEveryStageOverItsPages) {
    reports::Ticket ticket = samples::ticket();
    for (int count = 0; count < 60; ++count) ticket.stages.push_back(ticket.stages[1]);
    for (int count = 0; count < 60; ++count)
        ticket.stages[ticket.stages.size() - 60 + static_cast<std::size_t>(count)].person =
            "t-" + std::to_string(1000 + count);
    const Folder folder;
    const auto file = printed::put(folder, reports::ticketOf(head(), ticket));
    EXPECT_TRUE(printed::isSound(file));
    const std::string text = flat(printed::textOf(file));
    for (int count = 0; count < 60; ++count)
        EXPECT_THAT(text, HasSubstr("t-" + std::to_string(1000 + count)));
}

}  // namespace
