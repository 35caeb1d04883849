#include "apps/desktop/models/prescription_form_model.h"

#include <gmock/gmock.h>

#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include "apps/desktop/models/words.h"
#include "tests/support/designs.h"

namespace {

using namespace domain;
using models::FieldKind;
using Form = models::PrescriptionFormModel;

/// The content cell of the field that these labels lead to.
QModelIndex field(const Form& form, std::initializer_list<const char*> labels) {
    QModelIndex place;
    for (const char* label : labels) {
        QModelIndex next;
        for (int row = 0; row < form.rowCount(place); ++row)
            if (form.index(row, Form::Label, place).data().toString() == QLatin1String{label})
                next = form.index(row, Form::Label, place);
        if (!next.isValid()) ADD_FAILURE() << "no field " << label;
        place = next;
    }
    return place.siblingAtColumn(Form::Content);
}

std::string value(const Form& form, std::initializer_list<const char*> labels) {
    return field(form, labels).data().toString().toStdString();
}

class PrescriptionForm : public testing::Test {
protected:
    bool write(std::initializer_list<const char*> labels, const char* text) {
        return form_.setData(field(form_, labels), QString::fromUtf8(text));
    }
    QModelIndex label(std::initializer_list<const char*> labels) {
        return field(form_, labels).siblingAtColumn(Form::Label);
    }

    Form form_;
    QAbstractItemModelTester tester_{&form_, QAbstractItemModelTester::FailureReportingMode::Fatal};
};

TEST_F(PrescriptionForm, ShowsEveryTextbookDesignInFull) {
    for (const Prescription& design :
         {support::upperClassIIIMod1(), support::lowerClassI(), support::upperClassIIMod1(),
          support::lowerClassIIMod1(), support::upperClassIV(), support::lowerClassIIIMod1(),
          support::interimUpper()}) {
        form_.show(design);
        EXPECT_EQ(form_.prescription(), design);
        EXPECT_EQ(form_.troubles(), 0);
        EXPECT_FALSE(form_.firstNeeded().isValid());
    }
}

TEST_F(PrescriptionForm, SpeaksTheWordsOfTheFile) {
    form_.show(support::upperClassIIIMod1());
    EXPECT_EQ(value(form_, {"arch"}), "upper");
    EXPECT_EQ(value(form_, {"appliance"}), "metal framework");
    EXPECT_EQ(value(form_, {"dentition", "missing"}), "15, 14, 24, 25, 26");
    EXPECT_EQ(value(form_, {"framework", "material"}), "cobalt-chromium");
    EXPECT_EQ(value(form_, {"clasps", "clasp 1", "undercut", "depth"}), "0.25 mm");
}

TEST_F(PrescriptionForm, FillsAPrescriptionFromNothing) {
    EXPECT_TRUE(write({"arch"}, "lower"));
    EXPECT_TRUE(write({"identity", "patient reference"}, "P-7"));
    EXPECT_TRUE(write({"needed"}, "2026-12-18"));
    EXPECT_TRUE(write({"dentition", "missing"}, "46, 45"));
    EXPECT_TRUE(form_.add(label({"saddles"})).isValid());
    EXPECT_TRUE(write({"saddles", "saddle 1", "teeth"}, "46,45"));
    EXPECT_TRUE(write({"saddles", "saddle 1", "retention"}, "open lattice"));
    EXPECT_TRUE(write({"saddles", "saddle 1", "finish lines", "external"}, "yes"));
    EXPECT_TRUE(form_.add(label({"clasps"})).isValid());
    EXPECT_TRUE(write({"clasps", "clasp 1", "tooth"}, "47"));
    EXPECT_TRUE(form_.add(label({"clasps", "clasp 1", "undercut"})).isValid());
    EXPECT_TRUE(write({"clasps", "clasp 1", "undercut", "depth"}, "0,25"));
    EXPECT_TRUE(form_.add(label({"major connector"})).isValid());
    EXPECT_TRUE(write({"major connector", "kind"}, "lingual-bar"));
    EXPECT_TRUE(write({"sensitivities", "known"}, "nickel, latex"));
    EXPECT_TRUE(write({"framework", "nickel"}, "0.1 %"));

    Prescription expected;
    expected.arch = Arch::Lower;
    expected.identity.patientReference = "P-7";
    expected.needed = Date::parse("2026-12-18");
    expected.dentition.set(46_fdi, ToothState::Missing);
    expected.dentition.set(45_fdi, ToothState::Missing);
    expected.saddles = {{.teeth = {46_fdi, 45_fdi},
                         .retention = ResinRetention::OpenLattice,
                         .finishLines = {.external = true}}};
    expected.clasps = {{.tooth = 47_fdi, .undercut = Undercut{.depth = 250_um}}};
    expected.majorConnector = MajorConnector{.kind = ConnectorKind::LingualBar};
    expected.sensitivities.known = {Sensitivity::Nickel, Sensitivity::Latex};
    expected.framework.nickel = 1000_ppm;
    EXPECT_EQ(form_.prescription(), expected);
}

TEST_F(PrescriptionForm, RefusesATextItCannotReadAndSaysWhatWasExpected) {
    QSignalSpy refused{&form_, &Form::refused};
    ASSERT_TRUE(form_.add(label({"rests"})).isValid());
    const Prescription before = form_.prescription();
    EXPECT_FALSE(write({"rests", "rest 1", "tooth"}, "19"));
    EXPECT_FALSE(write({"needed"}, "2026-02-30"));
    EXPECT_EQ(form_.prescription(), before);
    EXPECT_EQ(form_.troubles(), 2);
    EXPECT_EQ(refused.count(), 2);
    EXPECT_EQ(field(form_, {"rests", "rest 1", "tooth"}).data(Form::TroubleRole).toString(),
              "expected a tooth of the upper arch, as 16; given: 19");
    EXPECT_TRUE(write({"needed"}, "2026-02-28"));
    EXPECT_EQ(form_.troubles(), 1);
}

TEST_F(PrescriptionForm, RefusesWhatTheFileWouldRefuse) {
    ASSERT_TRUE(form_.add(label({"rests"})).isValid());
    EXPECT_FALSE(write({"rests", "rest 1", "tooth"}, "36")) << "the other arch";
    EXPECT_FALSE(write({"rests", "rest 1", "clearance"}, "-1 mm"));
    EXPECT_FALSE(write({"rests", "rest 1", "clearance"}, "nan"));
    EXPECT_FALSE(write({"rests", "rest 1", "clearance"}, "5 deg"));
    EXPECT_FALSE(write({"rests", "rest 1", "kind"}, "golden"));
    EXPECT_FALSE(write({"rests", "rest 1", "kind"}, "")) << "a rest is always of some kind";
    EXPECT_FALSE(write({"dentition", "missing"}, "14, 14"));
    EXPECT_FALSE(write({"dentition", "missing"}, "14,"));
    EXPECT_FALSE(write({"identity", "remarks"}, "two\nlines"));
}

TEST_F(PrescriptionForm, LeavesAnOpenFieldOpenAgain) {
    form_.show(support::upperClassIIIMod1());
    EXPECT_TRUE(write({"needed"}, "  "));
    EXPECT_EQ(form_.prescription().needed, std::nullopt);
    EXPECT_TRUE(form_.clear(label({"major connector"})));
    EXPECT_EQ(form_.prescription().majorConnector, std::nullopt);
    EXPECT_TRUE(form_.clear(label({"clasps"})));
    EXPECT_TRUE(form_.prescription().clasps.empty());
    EXPECT_TRUE(form_.clear(label({"framework"})));
    EXPECT_EQ(form_.prescription().framework, Framework{});
    EXPECT_FALSE(form_.clear(label({"arch"}))) << "an arch is always one of the two";
}

TEST_F(PrescriptionForm, TakesOneItemOutOfAListAndKeepsTheOthers) {
    form_.show(support::upperClassIIIMod1());
    const auto before = form_.prescription().clasps;
    ASSERT_GT(before.size(), 2U);
    EXPECT_TRUE(form_.remove(label({"clasps", "clasp 1"})));
    EXPECT_EQ(form_.prescription().clasps, std::vector<Clasp>(before.begin() + 1, before.end()));
    EXPECT_FALSE(form_.remove(label({"clasps"})));
}

TEST_F(PrescriptionForm, AToothTakenOffTheChartIsAgainAsIfNobodyNamedIt) {
    EXPECT_TRUE(write({"dentition", "missing"}, "14, 15"));
    EXPECT_TRUE(write({"dentition", "present"}, "18"));
    EXPECT_EQ(form_.prescription().dentition.of(18_fdi), ToothState::Present);
    EXPECT_TRUE(write({"dentition", "missing"}, "15"));
    EXPECT_EQ(form_.prescription().dentition.of(14_fdi), ToothState::Present);
    EXPECT_TRUE(write({"dentition", "present"}, ""));
    EXPECT_EQ(form_.prescription().dentition.of(18_fdi), ToothState::NotReplaced);
}

TEST_F(PrescriptionForm, ANewPartStandsInTheArchOfTheAppliance) {
    ASSERT_TRUE(write({"arch"}, "lower"));
    ASSERT_TRUE(form_.add(label({"guide plates"})).isValid());
    EXPECT_EQ(form_.prescription().guidePlates.front().tooth.arch(), Arch::Lower);
}

TEST_F(PrescriptionForm, PointsAtAFieldThatMustBeGiven) {
    ASSERT_TRUE(form_.add(label({"shades"})).isValid());
    EXPECT_EQ(form_.firstNeeded(), field(form_, {"shades", "shade 1", "guide"}));
    EXPECT_TRUE(write({"shades", "shade 1", "guide"}, "a guide"));
    EXPECT_TRUE(write({"shades", "shade 1", "tab"}, "A2"));
    EXPECT_FALSE(form_.firstNeeded().isValid());
}

TEST_F(PrescriptionForm, ReadsTeethInTheNotationThatIsDeclared) {
    ASSERT_TRUE(write({"notation"}, "universal"));
    // ISO 3950 14 is 5 in the Universal notation: HL7 dental-data-exchange crosswalk D1.
    ASSERT_TRUE(write({"dentition", "missing"}, "5"));
    EXPECT_EQ(form_.prescription().dentition.of(14_fdi), ToothState::Missing);
    ASSERT_TRUE(write({"notation"}, "iso3950"));
    EXPECT_EQ(value(form_, {"dentition", "missing"}), "14");
}

TEST_F(PrescriptionForm, TellsTheEditorWhatItMayTake) {
    EXPECT_THAT(field(form_, {"arch"}).data(Form::AllowedRole).toStringList(),
                testing::ElementsAre("upper", "lower"));
    EXPECT_EQ(static_cast<FieldKind>(field(form_, {"rests"}).data(Form::KindRole).toInt()),
              FieldKind::List);
    EXPECT_TRUE(field(form_, {"rests"}).data(Form::MayAddRole).toBool());
    EXPECT_TRUE(
        field(form_, {"needed"}).data(Form::ExpectedRole).toString().contains("2026-11-25"));
    EXPECT_FALSE(form_.flags(field(form_, {"rests"})) & Qt::ItemIsEditable);
}

}  // namespace
