#include <gtest/gtest.h>

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

#include "domain/design/design.h"
#include "tests/support/designs.h"

namespace {

using namespace domain;

std::string contentOf(const std::filesystem::path& file) {
    std::ostringstream content;
    content << std::ifstream{file, std::ios::binary}.rdbuf();
    return content.str();
}

/// Five digits: fewer than any two compilers differ by, more than a figure of the trade has.
std::string figure(double value) {
    char digits[32];
    std::snprintf(digits, sizeof digits, "%.5g", value);
    return digits;
}

std::string range(Range range) { return figure(range.least) + ".." + figure(range.most); }

std::string tooth(std::optional<Tooth> tooth) { return tooth ? tooth->text() : "none"; }

std::string lineOf(const SaddleSpan& saddle) {
    return "  saddle of " + std::to_string(saddle.teeth) + ": along " + figure(saddle.along) +
           ", straight " + figure(saddle.straight) + ", right " + tooth(saddle.right.abutment) +
           " by " + tooth(saddle.right.clasped) + ", left " + tooth(saddle.left.abutment) + " by " +
           tooth(saddle.left.clasped) + '\n';
}

std::string lineOf(const ClaspMechanics& clasp) {
    return "  clasp " + clasp.tooth.text() + " bent " + figure(clasp.deflection) + ": force " +
           range(clasp.force) + ", root " + range(clasp.rootStress) + ", largest " +
           range(clasp.largestStress) + " at " + figure(clasp.largestAt) + ", margin " +
           range(clasp.setMargin) + ", removal " + range(clasp.removal) + '\n';
}

/// The volume with each connector of its arch: of its usual width, and of a measured one.
std::string volumesOf(Prescription prescription) {
    std::string lines;
    if (!prescription.majorConnector) return lines;
    for (const auto& kind : enumCodes<ConnectorKind>) {
        if (archOf(kind.value) != prescription.arch) continue;
        prescription.majorConnector->kind = kind.value;
        lines += "  " + std::string{kind.word} + ':';
        for (const std::optional<Microns> width : {std::optional<Microns>{}, {9000_um}}) {
            prescription.majorConnector->width = width;
            const Description description = descriptionOf(prescription);
            lines += " volume " + (description.volume ? range(*description.volume) : "none");
            lines += " mass " + (description.mass ? range(*description.mass) : "none");
        }
        lines += '\n';
    }
    return lines;
}

std::string textOf(const std::string& name, const Prescription& prescription) {
    const Description description = descriptionOf(prescription);
    std::string text = name + '\n';
    for (const SaddleSpan& saddle : description.saddles) text += lineOf(saddle);
    if (description.connector)
        text += "  connector across " + figure(description.connector->across) + ", along " +
                figure(description.connector->along) + '\n';
    if (const auto& fulcrum = description.design.fulcrum)
        text += "  fulcrum " + fulcrum->right.tooth.text() + " to " + fulcrum->left.tooth.text() +
                ", load arm " + figure(fulcrum->loadArm()) + '\n';
    for (const RetainerArm& retainer : description.retainers)
        text += "  retainer " + retainer.tooth.text() + " across " + figure(retainer.across) +
                ", load ratio " + figure(retainer.loadRatio) + '\n';
    if (description.bestSeat)
        text += "  best seat " + description.bestSeat->tooth.text() + ' ' +
                std::string{codeOf(description.bestSeat->side)} + " at " +
                figure(description.bestSeat->distance) + '\n';
    for (const ClaspMechanics& clasp : description.clasps) text += lineOf(clasp);
    return text + volumesOf(prescription);
}

/// One arm of every kind and material, on a premolar and on a molar.
std::string arms() {
    std::string text = "arms of which nothing but kind and material is given\n";
    Prescription prescription = support::upperClassIIIMod1();
    Clasp clasp = prescription.clasps.front();
    for (const Tooth place : {14_fdi, 16_fdi})
        for (const auto& kind : enumCodes<ClaspKind>)
            for (const auto& material : enumCodes<ArmMaterial>) {
                clasp.tooth = place;
                clasp.kind = kind.value;
                clasp.material = material.value;
                const auto mechanics = mechanicsOf(prescription, clasp);
                text += std::string{kind.word} + ", " + std::string{material.word} + '\n' +
                        (mechanics ? lineOf(*mechanics) : "  none\n");
            }
    return text;
}

// Whatever is computed for people to read, to five digits, so that no constant and no sign changes
// unnoticed. The other tests say which figures are right; this one says which have moved. The new
// text is put beside, to look at and to copy.
TEST(TheDescribedDesigns, HaveTheFiguresOfTheGoldenFile) {
    const std::string text = textOf("upperClassIIIMod1", support::upperClassIIIMod1()) +
                             textOf("lowerClassI", support::lowerClassI()) +
                             textOf("upperClassIIMod1", support::upperClassIIMod1()) +
                             textOf("lowerClassIIMod1", support::lowerClassIIMod1()) +
                             textOf("upperClassIV", support::upperClassIV()) +
                             textOf("lowerClassIIIMod1", support::lowerClassIIIMod1()) +
                             textOf("interimUpper", support::interimUpper()) + arms();
    if (text == contentOf(GOLDEN_DESCRIPTIONS)) return;
    const auto beside = std::filesystem::temp_directory_path() / "described_designs.txt";
    std::ofstream{beside, std::ios::binary} << text;
    ADD_FAILURE() << GOLDEN_DESCRIPTIONS << " says something else; if that is meant, replace it by "
                  << beside;
}

}  // namespace
