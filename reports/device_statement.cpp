#include "reports/device_statement.h"

#include "reports/phrases.h"
#include "reports/words.h"

namespace reports {
namespace {

using namespace domain;

Error refusalOf(const std::vector<Finding>& lacking) {
    std::vector<std::string> parts;
    parts.reserve(lacking.size());
    for (const Finding& finding : lacking)
        parts.push_back(finding.found + " (" + finding.rule + ")");
    return {ErrorCode::Refused, "the statement cannot be issued; it lacks: " + joined(parts, "; ")};
}

std::string textOf(const WhereApplicable<std::string>& answer, std::string_view none) {
    const std::string* given = givenIn(answer);
    return given != nullptr ? *given : std::string{none};
}

Table siteTable(const std::vector<ManufacturingSite>& sites) {
    Table table{.columns = {"Manufacturing site", "Address", "What was done there"},
                .shares = {0.32, 0.34, 0.34}};
    for (const ManufacturingSite& site : sites)
        table.rows.push_back({site.party.name, site.party.address, site.work});
    return table;
}

void addMaker(std::vector<Block>& blocks, const Statement& statement) {
    blocks.emplace_back(Heading{"1 Manufacturer and manufacturing sites"});
    blocks.emplace_back(Facts{{fact("Manufacturer", statement.manufacturer.name),
                               fact("Address", statement.manufacturer.address)}});
    blocks.emplace_back(siteTable(statement.sites));
    blocks.emplace_back(Heading{"2 Authorised representative"});
    if (const Party* party = givenIn(statement.representative))
        blocks.emplace_back(Facts{{fact("Name", party->name), fact("Address", party->address)}});
    else
        blocks.emplace_back(Paragraph{.text = "Not applicable.", .quiet = false});
}

void addDevice(std::vector<Block>& blocks, const Statement& statement) {
    blocks.emplace_back(Heading{"3 Device"});
    blocks.emplace_back(Facts{
        {fact("Order", statement.device->text()), fact("Description", statement.description)}});
    blocks.emplace_back(Heading{"4 Patient"});
    blocks.emplace_back(Paragraph{.text = "This device is for the exclusive use of the patient " +
                                          statement.patientReference + ".",
                                  .quiet = false});
    blocks.emplace_back(Heading{"5 Prescriber"});
    blocks.emplace_back(
        Facts{{fact("Name", statement.prescriber.name),
               fact("Qualification", statement.prescriber.qualification),
               fact("Institution", textOf(statement.prescriber.institution, "not applicable"))}});
}

void addCharacteristics(std::vector<Block>& blocks, const StatedCharacteristics& given) {
    blocks.emplace_back(Heading{"6 Characteristics, as the prescription asks for them"});
    for (const std::string& line : given.lines)
        blocks.emplace_back(Paragraph{.text = line, .quiet = false});
    blocks.emplace_back(
        Facts{{fact("Revision", std::to_string(given.revision)), fact("SHA-256", given.digest)}});
}

void addConformity(std::vector<Block>& blocks, const Statement& statement) {
    blocks.emplace_back(Heading{"7 Conformity"});
    const auto& exceptions = statement.conformity->exceptions;
    blocks.emplace_back(
        Paragraph{.text = "The manufacturer declares that this device conforms to the general "
                          "safety and performance requirements of Annex I to Regulation (EU) "
                          "2017/745" +
                          std::string{exceptions.empty() ? "." : ", except:"},
                  .quiet = false});
    if (!exceptions.empty()) {
        Table table{.columns = {"Not fully met", "Grounds"}, .shares = {0.40, 0.60}};
        for (const ConformityException& one : exceptions)
            table.rows.push_back({one.requirement, one.grounds});
        blocks.emplace_back(std::move(table));
    }
    blocks.emplace_back(Heading{"8 Medicinal substances, tissues and cells"});
    blocks.emplace_back(
        Paragraph{.text = textOf(statement.substances,
                                 "The device contains no medicinal substance, no derivative of "
                                 "human blood or plasma, and no tissue or cells of human or animal "
                                 "origin."),
                  .quiet = false});
}

Block keptBlock(const IssuedStatement& issued) {
    const RetentionTerm* longest = longestOf(issued.retention);
    if (longest == nullptr)
        return Paragraph{.text = "How long this statement is kept is not set.", .quiet = false};
    std::string text = "The laboratory keeps this statement for at least " +
                       std::to_string(longest->years) + (longest->years == 1 ? " year" : " years") +
                       " from delivery";
    if (issued.delivered)
        text += ", through " + retentionEnds(*issued.delivered, issued.retention)->text();
    return Paragraph{.text = text + ". " + std::string{longest->source} + ".", .quiet = false};
}

CautionFrame cautionsOf(const Hazards& hazards) {
    CautionFrame frame{.title = "Cautions", .paragraphs = wearerCautions(hazards)};
    frame.paragraphs.emplace_back(
        "This statement is for the patient it names: hand it on, or keep it where the patient can "
        "see it.");
    frame.paragraphs.push_back(deferenceCaution());
    return frame;
}

/// The facts and rows of a block, a line each.
void addLines(const Block& block, std::vector<std::string>& lines) {
    if (const auto* facts = std::get_if<Facts>(&block))
        for (const Fact& each : facts->facts) lines.push_back(each.label + ": " + each.value);
    const auto* table = std::get_if<Table>(&block);
    if (table == nullptr) return;
    for (const auto& row : table->rows) {
        std::vector<std::string> cells;
        for (std::size_t at = 0; at < row.size(); ++at)
            cells.push_back(table->columns[at] + ' ' + row[at]);
        lines.push_back(joined(cells, "; "));
    }
}

}  // namespace

std::vector<std::string> characteristicLines(const domain::Prescription& prescription) {
    std::vector<std::string> lines{caseText(prescription)};
    for (const auto& blocks : {designBlocks(prescription), materialBlocks(prescription)})
        for (const Block& block : blocks) addLines(block, lines);
    return lines;
}

Result<Paper> deviceStatement(const PaperHead& head, const IssuedStatement& issued) {
    const Statement& statement = issued.statement;
    if (const auto lacking = lackingIn(statement); !lacking.empty()) return refusalOf(lacking);
    Paper paper{.head = head,
                .name = "Statement",
                .patientReference = statement.patientReference,
                .blocks = {}};
    paper.head.order = statement.device->text();
    paper.head.revision = statement.characteristics.revision;
    auto& blocks = paper.blocks;
    blocks.emplace_back(Heading{"Statement for a custom-made device"});
    const std::string numbered = issued.number.empty() ? "" : "Statement " + issued.number + ". ";
    blocks.emplace_back(Paragraph{.text = numbered +
                                          "Custom-made device. By Regulation (EU) 2017/745, Annex "
                                          "XIII, section 1.",
                                  .quiet = false});
    blocks.emplace_back(BarcodeBlock{*statement.device});
    addMaker(blocks, statement);
    addDevice(blocks, statement);
    addCharacteristics(blocks, statement.characteristics);
    addConformity(blocks, statement);
    blocks.emplace_back(Heading{"Materials and lots"});
    blocks.emplace_back(lotBlock(issued.lots));
    blocks.emplace_back(Heading{"Keeping"});
    blocks.emplace_back(keptBlock(issued));
    blocks.emplace_back(WriteIn{{"Place", "Date", "Name and function", "Signature"}});
    blocks.emplace_back(cautionsOf(issued.hazards));
    return paper;
}

}  // namespace reports
