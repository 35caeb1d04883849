#include "reports/paper_layout.h"

#include <algorithm>

#include "reports/barcode_layout.h"
#include "reports/marks.h"
#include "reports/page_flow.h"
#include "reports/pdf_picture.h"
#include "reports/question_layout.h"
#include "reports/table_layout.h"

namespace reports {
namespace {

using domain::Colour;
using domain::Point;

constexpr double kFlagColumn = 9;

class Layout {
public:
    explicit Layout(PageFlow& flow) : flow_{flow}, width_{flow.width()} {}

    void operator()(const Heading& heading) {
        const auto lines = flow_.broken(heading.text, kHead, width_);
        const double height = static_cast<double>(lines.size()) * lineHeight(kHead) + 2 * kStep;
        if (!flow_.atTop()) flow_.down(3 * kStep);
        flow_.keep(height + wantedBelow_);
        flow_.row({{0, kHead, lines}});
        flow_.down(kStep / 2);
        flow_.pdf().line({{kMargin, flow_.y()}, {kMargin + width_, flow_.y()}}, false, kFaintHair);
        flow_.down(kStep);
    }

    /// Draws a block; a heading stays on the page of what follows it.
    void place(const Block& block, const Block* next) {
        constexpr double kSomeLines = 16;
        wantedBelow_ = kSomeLines;
        if (next != nullptr)
            if (const auto* question = std::get_if<Question>(next))
                wantedBelow_ = leastHeightOf(flow_, *question);
        std::visit(*this, block);
    }

    void operator()(const Paragraph& paragraph) {
        const Type type = paragraph.quiet ? kSmall : kPlain;
        flow_.row({{0, type, flow_.broken(paragraph.text, type, kMeasure)}});
        flow_.down(kStep);
    }

    void operator()(const Facts& facts) {
        constexpr double kLabel = 38;
        const double half = (width_ - 4) / 2;
        const auto cells = [&](const Fact& fact, double left, double room) {
            const Type type = fact.ask ? kFaint : kPlain;
            return std::vector<Cell>{
                {left, kFaint, flow_.broken(fact.label, kFaint, kLabel - 2)},
                {left + kLabel, type, flow_.broken(fact.value, type, room - kLabel)}};
        };
        const auto isShort = [&](const Fact& fact) {
            return flow_.broken(fact.value, kPlain, half - kLabel).size() <= 2;
        };
        for (std::size_t at = 0; at < facts.facts.size();) {
            const Fact& fact = facts.facts[at];
            const bool pair =
                isShort(fact) && at + 1 < facts.facts.size() && isShort(facts.facts[at + 1]);
            auto line = cells(fact, 0, pair ? half : std::min(width_, kLabel + kMeasure));
            if (pair)
                for (Cell& cell : cells(facts.facts[at + 1], half + 4, half))
                    line.push_back(std::move(cell));
            flow_.row(line);
            flow_.down(kStep / 2);
            at += pair ? 2 : 1;
        }
    }

    void operator()(const Table& table) { drawTable(flow_, table); }

    void operator()(const Checklist& list) {
        std::vector<const Check*> given;
        for (const Check& check : list.checks)
            if (check.state == CheckState::Given && !check.flag && check.detail.empty())
                given.push_back(&check);
            else
                checkLine(check);
        constexpr std::size_t kColumns = 3;
        for (std::size_t at = 0; at < given.size(); at += kColumns)
            givenRow({given.begin() + static_cast<std::ptrdiff_t>(at),
                      given.begin() +
                          static_cast<std::ptrdiff_t>(std::min(at + kColumns, given.size()))});
        flow_.down(kStep / 2);
    }

    void operator()(const PictureBlock& block) {
        const domain::Picture& picture = block.picture;
        const double room = flow_.room();
        const double scale = std::min(width_ / picture.width, room / picture.height);
        flow_.down(kStep);
        flow_.breakBefore(picture.height * scale);
        reports::draw(flow_.pdf(), picture, {kMargin, flow_.y()}, scale);
        flow_.down(picture.height * scale + kStep);
    }

    void operator()(const CautionFrame& frame) {
        constexpr double kPad = 4;
        constexpr double kMarkColumn = 11;
        const double room = width_ - kMarkColumn - 2 * kPad;
        std::vector<std::pair<Type, std::string>> lines;
        for (auto& line : flow_.broken(frame.title, kHead, room)) lines.emplace_back(kHead, line);
        for (const std::string& paragraph : frame.paragraphs) {
            lines.emplace_back(kSmall, "");  // a gap
            for (auto& line : flow_.broken(paragraph, kPlain, room))
                lines.emplace_back(kPlain, line);
        }
        double height = 2 * kPad;
        for (const auto& [type, text] : lines) height += gapped(type, text);
        flow_.down(2 * kStep);
        if (height <= kKeepTogether) flow_.breakBefore(height);
        for (std::size_t at = 0; at < lines.size();) at = framePart(lines, at, kPad, kMarkColumn);
        flow_.down(kStep);
    }

    void operator()(const Question& question) { drawQuestion(flow_, question); }

    void operator()(const WriteIn& fields) {
        constexpr double kHeight = 2 * kWritingLine + 2;
        flow_.down(kStep);
        flow_.breakBefore(kHeight);
        flow_.down(kWritingLine + 4);
        const double share = width_ / static_cast<double>(fields.labels.size());
        double left = kMargin;
        for (const std::string& label : fields.labels) {
            flow_.pdf().line({{left, flow_.y()}, {left + share - 6, flow_.y()}}, false, kHair);
            flow_.pdf().text({left, flow_.y() + lineHeight(kSmall)}, label, kSmall);
            left += share;
        }
        flow_.down(2 * lineHeight(kSmall));
    }

    void operator()(const WritingLines& lines) {
        for (int line = 0; line < lines.count; ++line) flow_.writingLine(0, width_);
        flow_.down(kStep);
    }

    void operator()(const BarcodeBlock& block) { drawBarcode(flow_, block.number); }
    void operator()(const CodeBlock& block) { drawCode(flow_, block.text); }

private:
    void checkLine(const Check& check) {
        constexpr double kBoxColumn = kTickBox + 2.5;
        const double left = kBoxColumn + (check.flag ? kFlagColumn : 0);
        const double room = std::min(width_ - left, kMeasure + 20);
        const std::vector<Cell> text{{left, kPlain, flow_.broken(check.text, kPlain, room)}};
        const std::vector<Cell> detail{{left, kSmall, flow_.broken(check.detail, kSmall, room)}};
        const double height = std::max(kTickBox + 1, heightOf(text) + heightOf(detail));
        if (height <= kKeepTogether) flow_.breakBefore(height);
        const double top = flow_.y();
        drawCheck(flow_.pdf(), {kMargin, top}, check.state);
        if (check.flag) drawFlag(flow_.pdf(), {kMargin + kBoxColumn, top + 0.2}, *check.flag);
        const int page = flow_.pdf().pageCount();
        flow_.row(text);
        flow_.row(detail);
        if (flow_.pdf().pageCount() == page) flow_.downTo(top + kTickBox);
        flow_.down(kStep);
    }

    void givenRow(const std::vector<const Check*>& checks) {
        constexpr double kBoxColumn = kTickBox + 2;
        const double share = width_ / 3;
        std::vector<Cell> cells;
        for (std::size_t at = 0; at < checks.size(); ++at) {
            const double left = share * static_cast<double>(at) + kBoxColumn;
            cells.push_back(
                {left, kPlain, flow_.broken(checks[at]->text, kPlain, share - kBoxColumn - 2)});
        }
        const double height = std::max(kTickBox, heightOf(cells));
        flow_.breakBefore(height);
        const double top = flow_.y();
        for (std::size_t at = 0; at < checks.size(); ++at)
            drawCheck(flow_.pdf(), {kMargin + share * static_cast<double>(at), top},
                      checks[at]->state);
        flow_.row(cells);
        flow_.downTo(top + kTickBox);
        flow_.down(kStep / 2);
    }

    static double gapped(const Type& type, const std::string& text) {
        return text.empty() ? kStep : lineHeight(type);
    }

    /// As much of a framed text as the page holds; returns the first line that is left.
    std::size_t framePart(const std::vector<std::pair<Type, std::string>>& lines, std::size_t at,
                          double pad, double markColumn) {
        flow_.breakBefore(2 * pad + 3 * lineHeight(kPlain));
        const double top = flow_.y();
        flow_.down(pad);
        for (; at < lines.size(); ++at) {
            const auto& [type, text] = lines[at];
            if (flow_.y() + gapped(type, text) > flow_.bottom() - pad) break;
            flow_.down(gapped(type, text));
            flow_.pdf().text({kMargin + pad + markColumn, flow_.y() - lineHeight(type) * 0.26},
                             text, type);
        }
        flow_.down(pad);
        for (const double inset : {0.0, 1.0})
            flow_.pdf().box(
                {kMargin + inset, top + inset, kMargin + width_ - inset, flow_.y() - inset},
                {.width = 0.3});
        drawCautionMark(flow_.pdf(), {kMargin + pad, top + pad - 0.5}, 8);
        if (at < lines.size()) flow_.newPage();
        return at;
    }

    PageFlow& flow_;
    double width_;
    double wantedBelow_{};
};

}  // namespace

void draw(PdfDocument& pdf, const Paper& paper) {
    PageFlow flow{pdf, paper};
    Layout layout{flow};
    for (std::size_t at = 0; at < paper.blocks.size(); ++at)
        layout.place(paper.blocks[at],
                     at + 1 < paper.blocks.size() ? &paper.blocks[at + 1] : nullptr);
    flow.footers();
}

}  // namespace reports
