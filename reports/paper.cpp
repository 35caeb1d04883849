#include "reports/paper.h"

namespace reports {
namespace {

std::string_view boxOf(CheckState state) {
    switch (state) {
        case CheckState::Given:
            return "[x] ";
        case CheckState::Open:
            return "[ ] ";
        case CheckState::Look:
            return "/!\\ ";
    }
    return {};
}

std::string flagText(const FlagNumber& flag) {
    return '(' + std::to_string(flag.number) + ' ' + std::string{codeOf(flag.severity)} + ") ";
}

class Writer {
public:
    void operator()(const Heading& heading) { text_ += "\n== " + heading.text + " ==\n"; }
    void operator()(const Paragraph& paragraph) { text_ += paragraph.text + '\n'; }
    void operator()(const Facts& facts) {
        for (const Fact& fact : facts.facts)
            text_ += fact.label + ": " + fact.value + (fact.ask ? " <-\n" : "\n");
    }
    void operator()(const Table& table) {
        cells(table.columns);
        for (std::size_t at = 0; at < table.rows.size(); ++at) {
            if (at < table.ticks.size()) text_ += boxOf(table.ticks[at]);
            cells(table.rows[at]);
        }
    }
    void operator()(const Checklist& list) {
        for (const Check& check : list.checks) {
            text_ += boxOf(check.state);
            if (check.flag) text_ += flagText(*check.flag);
            text_ += check.text + '\n';
            if (!check.detail.empty()) text_ += "    " + check.detail + '\n';
        }
    }
    void operator()(const PictureBlock& block) {
        text_ += "[picture:";
        for (const domain::Mark& mark : block.picture.marks)
            if (const auto* words = std::get_if<domain::Words>(&mark)) text_ += ' ' + words->text;
        text_ += "]\n";
    }
    void operator()(const CautionFrame& frame) {
        text_ += "\n!! " + frame.title + " !!\n";
        for (const std::string& paragraph : frame.paragraphs) text_ += paragraph + '\n';
    }
    void operator()(const Question& question) {
        text_ += "? " + question.text + "\n  " + question.why + "\n  " + question.source + '\n';
        for (const AskedPlace& place : question.places) {
            text_ += "  " + flagText(place.flag) + place.text + "\n   ";
            for (const std::string& choice : question.choices) text_ += " [ ] " + choice;
            text_ += '\n';
            int number = 0;
            for (const std::string& offer : place.offers)
                text_ += "    [ ] " + std::to_string(++number) + " " + offer + '\n';
            for (int line = 0; line < place.lines; ++line) text_ += "    ________\n";
        }
    }
    void operator()(const WriteIn& fields) {
        for (const std::string& label : fields.labels) text_ += label + ": ________  ";
        text_ += '\n';
    }

    void operator()(const WritingLines& lines) {
        for (int line = 0; line < lines.count; ++line) text_ += "________\n";
    }
    void operator()(const BarcodeBlock& block) {
        text_ += "[barcode: " + block.number.text() + "]\n";
    }

    void operator()(const CodeBlock& block) { text_ += "[code]\n" + block.text; }

    std::string take() { return std::move(text_); }
    void line(const std::string& text) { text_ += text + '\n'; }

private:
    void cells(const std::vector<std::string>& row) {
        for (std::size_t at = 0; at < row.size(); ++at) text_ += (at > 0 ? " | " : "") + row[at];
        text_ += '\n';
    }

    std::string text_{};
};

}  // namespace

std::string textOf(const Paper& paper) {
    Writer writer;
    const PaperHead& head = paper.head;
    const bool ofAnOrder = !head.order.empty();
    writer.line(ofAnOrder ? paper.name + ", order " + head.order : paper.name);
    writer.line(head.laboratory + ", " + head.address + ", " + head.contact);
    if (ofAnOrder)
        writer.line("patient " + paper.patientReference + ", revision " +
                    std::to_string(head.revision));
    for (const Block& block : paper.blocks) std::visit(writer, block);
    writer.line("\nprinted " + head.printedAt.text() + " by " + head.printedBy + ", digest " +
                head.digest);
    return writer.take();
}

}  // namespace reports
