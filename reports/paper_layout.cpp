#include "reports/paper_layout.h"

#include <algorithm>

#include "reports/line_breaking.h"
#include "reports/marks.h"
#include "reports/pdf_picture.h"

namespace reports {
namespace {

using domain::Colour;
using domain::Point;

constexpr Type kPlain{};
constexpr Type kStrong{.face = Face::Bold};
constexpr Type kFaint{.colour = Colour::Quiet};
constexpr Type kSmall{.size = kSmallType, .colour = Colour::Quiet};
constexpr Type kHead{.face = Face::Bold, .size = kHeadType};
constexpr Type kName{.face = Face::Bold, .size = kNameType};
constexpr LineLook kHair{.colour = Colour::Quiet};
constexpr LineLook kFaintHair{.colour = Colour::Line};

constexpr double kFooter = 8;
constexpr double kMeasure = 132;       // mm: about 75 characters of plain type
constexpr double kKeepTogether = 120;  // mm: what is no higher moves to the next page as a whole
constexpr double kFlagColumn = 9;

double lineHeight(const Type& type) { return type.size * kMmPerPoint * kLeading; }

/// Lines of one type in a column of their own.
struct Cell {
    double left{};  ///< mm from the left margin
    Type type{};
    std::vector<std::string> lines{};
};

double heightOf(const std::vector<Cell>& row) {
    double height = 0;
    for (const Cell& cell : row)
        height = std::max(height, static_cast<double>(cell.lines.size()) * lineHeight(cell.type));
    return height;
}

class Layout {
public:
    Layout(PdfDocument& pdf, const Paper& paper)
        : pdf_{pdf},
          paper_{paper},
          width_{pdf.sheet().width - 2 * kMargin},
          bottom_{pdf.sheet().height - kMargin - kFooter} {
        newPage();
    }

    void operator()(const Heading& heading) {
        const auto lines = broken(heading.text, kHead, width_);
        const double height = static_cast<double>(lines.size()) * lineHeight(kHead) + 2 * kStep;
        if (y_ > topOfPage_) y_ += 3 * kStep;
        keep(height + wantedBelow_);
        row({{0, kHead, lines}});
        y_ += kStep / 2;
        pdf_.line({{kMargin, y_}, {kMargin + width_, y_}}, false, kFaintHair);
        y_ += kStep;
    }

    /// Draws a block; a heading stays on the page of what follows it.
    void place(const Block& block, const Block* next) {
        constexpr double kSomeLines = 16;
        wantedBelow_ = kSomeLines;
        if (next != nullptr)
            if (const auto* question = std::get_if<Question>(next))
                wantedBelow_ = askedText(*question).height +
                               (question->places.empty() ? 0 : placeHeight(*question, 0));
        std::visit(*this, block);
    }

    void operator()(const Paragraph& paragraph) {
        const Type type = paragraph.quiet ? kSmall : kPlain;
        row({{0, type, broken(paragraph.text, type, kMeasure)}});
        y_ += kStep;
    }

    void operator()(const Facts& facts) {
        constexpr double kLabel = 38;
        const double half = (width_ - 4) / 2;
        const auto cells = [&](const Fact& fact, double left, double room) {
            const Type type = fact.ask ? kFaint : kPlain;
            return std::vector<Cell>{
                {left, kFaint, broken(fact.label, kFaint, kLabel - 2)},
                {left + kLabel, type, broken(fact.value, type, room - kLabel)}};
        };
        const auto isShort = [&](const Fact& fact) {
            return broken(fact.value, kPlain, half - kLabel).size() <= 2;
        };
        for (std::size_t at = 0; at < facts.facts.size();) {
            const Fact& fact = facts.facts[at];
            const bool pair =
                isShort(fact) && at + 1 < facts.facts.size() && isShort(facts.facts[at + 1]);
            auto line = cells(fact, 0, pair ? half : std::min(width_, kLabel + kMeasure));
            if (pair)
                for (Cell& cell : cells(facts.facts[at + 1], half + 4, half))
                    line.push_back(std::move(cell));
            row(line);
            y_ += kStep / 2;
            at += pair ? 2 : 1;
        }
    }

    void operator()(const Table& table) {
        const auto cellsOf = [&](const std::vector<std::string>& texts, const Type& type) {
            std::vector<Cell> cells;
            double left = 0;
            for (std::size_t column = 0; column < texts.size(); ++column) {
                const double room = width_ * table.shares[column];
                cells.push_back({left, type, broken(texts[column], type, room - kStep)});
                left += room;
            }
            return cells;
        };
        y_ += kStep / 2;
        keep(20);
        const auto head = cellsOf(table.columns, kSmall);
        const auto drawHead = [&] {
            row(head);
            hairline(kHair);
        };
        drawHead();
        for (const auto& texts : table.rows) {
            const auto cells = cellsOf(texts, kPlain);
            if (y_ + std::min(heightOf(cells), kKeepTogether) > bottom_) {
                newPage();
                drawHead();
            }
            row(cells);
            hairline(kFaintHair);
        }
        y_ += kStep;
    }

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
        y_ += kStep / 2;
    }

    void operator()(const PictureBlock& block) {
        const domain::Picture& picture = block.picture;
        const double room = bottom_ - topOfPage_;
        const double scale = std::min(width_ / picture.width, room / picture.height);
        y_ += kStep;
        breakBefore(picture.height * scale);
        reports::draw(pdf_, picture, {kMargin, y_}, scale);
        y_ += picture.height * scale + kStep;
    }

    void operator()(const CautionFrame& frame) {
        constexpr double kPad = 4;
        constexpr double kMarkColumn = 11;
        const double room = width_ - kMarkColumn - 2 * kPad;
        std::vector<std::pair<Type, std::string>> lines;
        for (auto& line : broken(frame.title, kHead, room)) lines.emplace_back(kHead, line);
        for (const std::string& paragraph : frame.paragraphs) {
            lines.emplace_back(kSmall, "");  // a gap
            for (auto& line : broken(paragraph, kPlain, room)) lines.emplace_back(kPlain, line);
        }
        double height = 2 * kPad;
        for (const auto& [type, text] : lines) height += gapped(type, text);
        y_ += 2 * kStep;
        if (height <= kKeepTogether) breakBefore(height);
        for (std::size_t at = 0; at < lines.size();) at = framePart(lines, at, kPad, kMarkColumn);
        y_ += kStep;
    }

    void operator()(const Question& question) {
        const AskedText asked = askedText(question);
        y_ += kStep;
        keep(asked.height + (question.places.empty() ? 0 : placeHeight(question, 0)));
        row(asked.text);
        y_ += kStep / 2;
        row(asked.why);
        row(asked.source);
        y_ += kStep;
        for (std::size_t at = 0; at < question.places.size(); ++at) askedPlace(question, at);
    }

    void operator()(const WriteIn& fields) {
        constexpr double kHeight = 2 * kWritingLine + 2;
        y_ += kStep;
        breakBefore(kHeight);
        y_ += kWritingLine + 4;
        const double share = width_ / static_cast<double>(fields.labels.size());
        double left = kMargin;
        for (const std::string& label : fields.labels) {
            pdf_.line({{left, y_}, {left + share - 6, y_}}, false, kHair);
            pdf_.text({left, y_ + lineHeight(kSmall)}, label, kSmall);
            left += share;
        }
        y_ += 2 * lineHeight(kSmall);
    }

    void footers() {
        const int pages = pdf_.pageCount();
        const PaperHead& head = paper_.head;
        const double y = pdf_.sheet().height - kMargin;
        for (int page = 0; page < pages; ++page) {
            pdf_.turnTo(page);
            pdf_.line({{kMargin, y - 4}, {kMargin + width_, y - 4}}, false, kHair);
            pdf_.text({kMargin, y},
                      "page " + std::to_string(page + 1) + " of " + std::to_string(pages), kSmall);
            const std::string printed =
                "printed " + head.printedAt.text() + " by " + head.printedBy;
            const auto shown = broken(printed, kSmall, 100);
            pdf_.text({kMargin + (width_ - pdf_.widthOf(shown.front(), kSmall)) / 2, y},
                      shown.front(), kSmall);
            if (!head.digest.empty())
                pdf_.textRight({kMargin + width_, y},
                               broken("digest " + head.digest, kSmall, 44)[0], kSmall);
        }
    }

private:
    std::vector<std::string> broken(std::string_view text, const Type& type, double room) {
        return brokenLines(pdf_, text, type, room);
    }

    void newPage() {
        pdf_.addPage();
        y_ = kMargin;
        header();
        topOfPage_ = y_;
    }

    void breakBefore(double height) {
        if (y_ + height > bottom_ && y_ > topOfPage_ + 0.01) newPage();
    }
    /// Like breakBefore, for what may be followed by more.
    void keep(double height) { breakBefore(std::min(height, kKeepTogether)); }

    /// At most `most` lines, the last one marked if more were cut off: for headers only, whose
    /// texts stand in full elsewhere.
    std::vector<std::string> first(std::vector<std::string> lines, std::size_t most) {
        if (lines.size() > most) {
            lines.resize(most);
            lines.back() += " \u2026";
        }
        return lines;
    }

    double column(const std::vector<std::string>& lines, const Type& type, double y, bool right) {
        for (const std::string& line : lines) {
            const double base = y + type.size * kMmPerPoint * 0.95;
            if (right)
                pdf_.textRight({kMargin + width_, base}, line, type);
            else
                pdf_.text({kMargin, base}, line, type);
            y += lineHeight(type);
        }
        return y;
    }

    void header() {
        const PaperHead& head = paper_.head;
        const double half = width_ / 2 - 4;
        double left = column(first(broken(head.laboratory, kHead, half), 2), kHead, y_, false);
        left = column(first(broken(head.address, kSmall, half), 2), kSmall, left, false);
        left = column(first(broken(head.contact, kSmall, half), 2), kSmall, left, false);
        double right = column(first(broken(paper_.name, kName, half), 2), kName, y_, true);
        if (!head.order.empty())
            right =
                column(first(broken("order " + head.order, kHead, half), 1), kHead, right, true);
        y_ = std::max(left, right) + kStep;
        pdf_.line({{kMargin, y_}, {kMargin + width_, y_}}, false, kHair);
        y_ += kStep / 2;
        const std::string patient = paper_.patientReference.empty()
                                        ? "patient: no reference given"
                                        : "patient " + paper_.patientReference;
        const double below = column(first(broken(patient, kPlain, half), 1), kPlain, y_, false);
        column({"revision " + std::to_string(head.revision)}, kPlain, y_, true);
        y_ = below + 2 * kStep;
    }

    /// Cells side by side, line by line; a row that is short enough stays on one page.
    void row(const std::vector<Cell>& cells) {
        const double height = heightOf(cells);
        if (height <= kKeepTogether) breakBefore(height);
        std::size_t most = 0;
        double step = 0;
        for (const Cell& cell : cells) {
            most = std::max(most, cell.lines.size());
            step = std::max(step, lineHeight(cell.type));
        }
        for (std::size_t line = 0; line < most; ++line) {
            breakBefore(step);
            for (const Cell& cell : cells)
                if (line < cell.lines.size())
                    pdf_.text({kMargin + cell.left, y_ + step * 0.74}, cell.lines[line], cell.type);
            y_ += step;
        }
    }

    void hairline(const LineLook& look) {
        y_ += kStep / 4;
        pdf_.line({{kMargin, y_}, {kMargin + width_, y_}}, false, look);
        y_ += kStep / 2;
    }

    void checkLine(const Check& check) {
        constexpr double kBoxColumn = kTickBox + 2.5;
        const double left = kBoxColumn + (check.flag ? kFlagColumn : 0);
        const double room = std::min(width_ - left, kMeasure + 20);
        const std::vector<Cell> text{{left, kPlain, broken(check.text, kPlain, room)}};
        const std::vector<Cell> detail{{left, kSmall, broken(check.detail, kSmall, room)}};
        const double height = std::max(kTickBox + 1, heightOf(text) + heightOf(detail));
        if (height <= kKeepTogether) breakBefore(height);
        const double top = y_;
        drawCheck(pdf_, {kMargin, top}, check.state);
        if (check.flag) drawFlag(pdf_, {kMargin + kBoxColumn, top + 0.2}, *check.flag);
        const int page = pdf_.pageCount();
        row(text);
        row(detail);
        if (pdf_.pageCount() == page) y_ = std::max(y_, top + kTickBox);
        y_ += kStep;
    }

    void givenRow(const std::vector<const Check*>& checks) {
        constexpr double kBoxColumn = kTickBox + 2;
        const double share = width_ / 3;
        std::vector<Cell> cells;
        for (std::size_t at = 0; at < checks.size(); ++at) {
            const double left = share * static_cast<double>(at) + kBoxColumn;
            cells.push_back(
                {left, kPlain, broken(checks[at]->text, kPlain, share - kBoxColumn - 2)});
        }
        const double height = std::max(kTickBox, heightOf(cells));
        breakBefore(height);
        const double top = y_;
        for (std::size_t at = 0; at < checks.size(); ++at)
            drawCheck(pdf_, {kMargin + share * static_cast<double>(at), top}, checks[at]->state);
        row(cells);
        y_ = std::max(y_, top + kTickBox) + kStep / 2;
    }

    static double gapped(const Type& type, const std::string& text) {
        return text.empty() ? kStep : lineHeight(type);
    }

    /// As much of a framed text as the page holds; returns the first line that is left.
    std::size_t framePart(const std::vector<std::pair<Type, std::string>>& lines, std::size_t at,
                          double pad, double markColumn) {
        breakBefore(2 * pad + 3 * lineHeight(kPlain));
        const double top = y_;
        y_ += pad;
        for (; at < lines.size(); ++at) {
            const auto& [type, text] = lines[at];
            if (y_ + gapped(type, text) > bottom_ - pad) break;
            y_ += gapped(type, text);
            pdf_.text({kMargin + pad + markColumn, y_ - lineHeight(type) * 0.26}, text, type);
        }
        y_ += pad;
        for (const double inset : {0.0, 1.0})
            pdf_.box({kMargin + inset, top + inset, kMargin + width_ - inset, y_ - inset},
                     {.width = 0.3});
        drawCautionMark(pdf_, {kMargin + pad, top + pad - 0.5}, 8);
        if (at < lines.size()) newPage();
        return at;
    }

    struct AskedText {
        std::vector<Cell> text{};
        std::vector<Cell> why{};
        std::vector<Cell> source{};
        double height{};
    };
    AskedText askedText(const Question& question) {
        const auto cells = [&](const std::string& text, const Type& type) {
            return std::vector<Cell>{{0, type, broken(text, type, kMeasure + 20)}};
        };
        AskedText asked{cells(question.text, kStrong), cells(question.why, kPlain),
                        cells(question.source, kSmall), 3 * kStep};
        asked.height += heightOf(asked.text) + heightOf(asked.why) + heightOf(asked.source);
        return asked;
    }

    std::vector<Cell> placeCells(const AskedPlace& place) {
        return {{kFlagColumn, kPlain, broken(place.text, kPlain, kMeasure)}};
    }
    double placeHeight(const Question& question, std::size_t at) {
        const AskedPlace& place = question.places[at];
        const double choices = question.choices.empty() ? 0 : kTickBox + kStep / 2;
        return heightOf(placeCells(place)) + choices + kWritingLine * place.lines + kStep * 2;
    }
    void askedPlace(const Question& question, std::size_t at) {
        const AskedPlace& place = question.places[at];
        keep(placeHeight(question, at));
        drawFlag(pdf_, {kMargin, y_ + 0.2}, place.flag);
        row(placeCells(place));
        y_ += kStep / 2;
        choices(question);
        for (int line = 0; line < place.lines; ++line) writingLine(kFlagColumn, width_);
        y_ += kStep * 1.5;
    }

    void choices(const Question& question) {
        if (question.choices.empty()) return;
        breakBefore(kTickBox);
        const double share = (width_ - kFlagColumn) / static_cast<double>(question.choices.size());
        double left = kMargin + kFlagColumn;
        for (const std::string& choice : question.choices) {
            drawCheck(pdf_, {left, y_}, CheckState::Open);
            pdf_.text({left + kTickBox + 2, y_ + kTickBox * 0.78}, choice, kPlain);
            left += share;
        }
        y_ += kTickBox;
    }

    void writingLine(double from, double to) {
        breakBefore(kWritingLine);
        y_ += kWritingLine;
        pdf_.line({{kMargin + from, y_}, {kMargin + to, y_}}, false, kHair);
    }

    PdfDocument& pdf_;
    const Paper& paper_;
    double width_;
    double bottom_;
    double y_{};
    double topOfPage_{};
    double wantedBelow_{};
};

}  // namespace

void draw(PdfDocument& pdf, const Paper& paper) {
    Layout layout{pdf, paper};
    for (std::size_t at = 0; at < paper.blocks.size(); ++at)
        layout.place(paper.blocks[at],
                     at + 1 < paper.blocks.size() ? &paper.blocks[at + 1] : nullptr);
    layout.footers();
}

}  // namespace reports
