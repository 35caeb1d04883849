/// What the laws of several places ask a prescription to say: without it nothing is sent out and
/// nothing is delivered. The union and the source of each row: domain/production/legal_fields.cpp.
#include <gmock/gmock.h>

#include "apps/actions/workshop.h"
#include "domain/production/evolve.h"
#include "storage/files/prescription_file.h"
#include "storage/projections.h"
#include "storage/sealed_texts.h"
#include "tests/apps/actions/floor_bench.h"

namespace {

using actions_tests::saidBy;
using domain::OrderNumber;
using domain::OrderStatus;
using domain::Prescription;
using domain::Stage;
using support::kInspector;
using support::kManager;
using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;

struct Removal {
    const char* name;
    const char* says;  ///< what the refusal names
    void (*remove)(Prescription&);
};

const Removal kRemovals[] = {
    {"PrescriberName", "no name of the prescriber",
     [](Prescription& made) { made.identity.prescriberName.reset(); }},
    {"PrescriberAddress", "no address of the prescriber",
     [](Prescription& made) { made.identity.prescriberAddress.reset(); }},
    {"PrescriberRegistration", "no licence or registration of the prescriber",
     [](Prescription& made) { made.identity.prescriberRegistration.reset(); }},
    {"PrescriberContact", "no contact of the prescriber",
     [](Prescription& made) { made.identity.prescriberContact.reset(); }},
    {"Patient", "no name or number of the patient",
     [](Prescription& made) {
         made.identity.patientReference.reset();
         made.identity.patientName.reset();
     }},
    {"DateOfIssue", "no date of issue", [](Prescription& made) { made.issued.reset(); }},
    {"Pieces", "no piece is described", [](Prescription& made) { made.appliance.reset(); }},
    {"FrameworkMaterial", "no type of material: framework",
     [](Prescription& made) { made.framework.material.reset(); }},
    {"FrameworkMaking", "no quality of material: framework",
     [](Prescription& made) { made.framework.making.reset(); }},
    {"BaseResin", "no quality of material: denture base",
     [](Prescription& made) { made.base.resin.reset(); }},
    {"ToothMaterial", "no type of material: teeth",
     [](Prescription& made) { made.teeth.material.reset(); }},
    {"ToothMould", "no quality of material: teeth",
     [](Prescription& made) { made.teeth.mould.reset(); }},
    {"Clasps", "neither clasps nor", [](Prescription& made) { made.clasps.clear(); }},
    {"Contacts", "neither contacts nor", [](Prescription& made) { made.occlusion.scheme.reset(); }},
    {"Signature", "no signature", [](Prescription& made) { made.signature.reset(); }},
    {"WhoSawTheSignature", "nobody here is named who saw it",
     [](Prescription& made) { made.signature->seenBy.reset(); }},
};

class ALegalField : public actions_tests::FloorBench, public testing::WithParamInterface<Removal> {
protected:
    /// Puts a prescription under an order as an earlier program, content with less, might have.
    void putUnder(const OrderNumber& number, const Prescription& prescription) {
        auto begun = storage::Transaction::begin(lab().records());
        ASSERT_TRUE(begun);
        storage::Transaction work = *std::move(begun);
        const auto sealed = storage::SealedTexts{lab().records()}.seal(
            work, storage::writePrescription(prescription));
        ASSERT_TRUE(sealed);
        const domain::Order before = order(number);
        domain::Revision revision = before.revision;
        revision.prescription = withoutIdentity(prescription);
        revision.parties.identity = *sealed;
        revision.findings.clear();
        const std::vector<domain::Event> events{
            {.order = number,
             .version = before.version + 1,
             .at = clock_.now(),
             .person = support::codeOfPerson(kManager),
             .key = "earlier-program",
             .what = domain::Answered{.words = {}, .revision = revision}}};
        ASSERT_EQ(saidBy(storage::Ledger{lab().records()}.append(work, events)), "");
        ASSERT_EQ(saidBy(storage::putProjections(work, evolve(before, events.front()), events)),
                  "");
        ASSERT_EQ(saidBy(work.commit()), "");
    }
};

TEST_P(ALegalField, ThatLacksKeepsTheOrderFromBeingSentOutAndDelivered) {
    Prescription lacking = support::upperClassIIIMod1();
    GetParam().remove(lacking);
    const OrderNumber number = castFramework();
    putUnder(number, lacking);
    ASSERT_EQ(saidBy(actions::enterSite(lab(), support::thing("north-foundry"),
                                        {"North Foundry", "2 Kiln Road", ""}, floor_.as(kManager))),
              "");
    floor_.bringTo(number, Stage::WaxUp);
    const auto before = version(number);
    EXPECT_THAT(saidBy(actions::sendWork(lab(), number, support::thing("north-foundry"),
                                         floor_.as(kManager))),
                AllOf(HasSubstr("legal contents"), HasSubstr(GetParam().says)));
    EXPECT_EQ(version(number), before);

    floor_.bringTo(number, Stage::Delivery);
    floor_.begin(number);
    const auto who = floor_.as(kInspector);
    ASSERT_EQ(saidBy(actions::record(lab(), number, {}, floor_.records(number), who)), "");
    // The statement may be refused for the same reason, or be issued: the gate stays shut.
    saidBy(actions::issueStatement(lab(), number, support::everythingDeclared(), who));
    EXPECT_THAT(saidBy(actions::finish(lab(), {number}, {}, who)), HasSubstr(GetParam().says));
    EXPECT_EQ(order(number).status, OrderStatus::InWork);
    EXPECT_THAT(problems(), IsEmpty());
}

INSTANTIATE_TEST_SUITE_P(Removed, ALegalField, testing::ValuesIn(kRemovals),
                         [](const auto& each) { return std::string{each.param.name}; });

class LegalFields : public actions_tests::FloorBench {};

TEST_F(LegalFields, OfTheLaboratoryAreAskedForToo) {
    const OrderNumber number = castFramework();
    floor_.readyAt(number, Stage::Delivery);
    for (const auto& [head, says] :
         {std::pair{actions::Letterhead{"", support::kLaboratoryAddress, ""},
                    "no name of the laboratory"},
          std::pair{actions::Letterhead{support::kLaboratoryName, "", ""},
                    "no address of the laboratory"}}) {
        ASSERT_EQ(saidBy(actions::writeLetterhead(lab(), head, floor_.as(kManager))), "");
        EXPECT_THAT(saidBy(actions::finish(lab(), {number}, {}, floor_.as(kInspector))),
                    HasSubstr(says));
    }
}

}  // namespace
