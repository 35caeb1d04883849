#include "reports/question_layout.h"

#include "reports/marks.h"

namespace reports {
namespace {

constexpr double kFlagColumn = 9;

struct AskedText {
    std::vector<Cell> text{};
    std::vector<Cell> why{};
    std::vector<Cell> source{};
    double height{};
};

AskedText askedText(PageFlow& flow, const Question& question) {
    const auto cells = [&](const std::string& text, const Type& type) {
        return std::vector<Cell>{{0, type, flow.broken(text, type, kMeasure + 20)}};
    };
    AskedText asked{cells(question.text, kStrong), cells(question.why, kPlain),
                    cells(question.source, kSmall), 3 * kStep};
    asked.height += heightOf(asked.text) + heightOf(asked.why) + heightOf(asked.source);
    return asked;
}

std::vector<Cell> placeCells(PageFlow& flow, const AskedPlace& place) {
    return {{kFlagColumn, kPlain, flow.broken(place.text, kPlain, kMeasure)}};
}

double offersHeight(const AskedPlace& place) {
    return static_cast<double>(place.offers.size()) * (kTickBox + kStep / 2);
}

double placeHeight(PageFlow& flow, const Question& question, std::size_t at) {
    const AskedPlace& place = question.places[at];
    const double choices = question.choices.empty() ? 0 : kTickBox + kStep / 2;
    return heightOf(placeCells(flow, place)) + choices + offersHeight(place) +
           kWritingLine * place.lines + kStep * 2;
}

void drawChoices(PageFlow& flow, const Question& question) {
    if (question.choices.empty()) return;
    flow.breakBefore(kTickBox);
    const double share =
        (flow.width() - kFlagColumn) / static_cast<double>(question.choices.size());
    double left = kMargin + kFlagColumn;
    for (const std::string& choice : question.choices) {
        drawCheck(flow.pdf(), {left, flow.y()}, CheckState::Open);
        flow.pdf().text({left + kTickBox + 2, flow.y() + kTickBox * 0.78}, choice, kPlain);
        left += share;
    }
    flow.down(kTickBox);
}

void drawOffers(PageFlow& flow, const AskedPlace& place) {
    int number = 0;
    for (const std::string& offer : place.offers) {
        flow.breakBefore(kTickBox);
        const double left = kMargin + kFlagColumn;
        drawCheck(flow.pdf(), {left, flow.y()}, CheckState::Open);
        flow.pdf().text({left + kTickBox + 2, flow.y() + kTickBox * 0.78},
                        std::to_string(++number) + "  " + offer, kPlain);
        flow.down(kTickBox + kStep / 2);
    }
}

void drawPlace(PageFlow& flow, const Question& question, std::size_t at) {
    const AskedPlace& place = question.places[at];
    flow.keep(placeHeight(flow, question, at));
    drawFlag(flow.pdf(), {kMargin, flow.y() + 0.2}, place.flag);
    flow.row(placeCells(flow, place));
    flow.down(kStep / 2);
    drawOffers(flow, place);
    drawChoices(flow, question);
    for (int line = 0; line < place.lines; ++line) flow.writingLine(kFlagColumn, flow.width());
    flow.down(kStep * 1.5);
}

}  // namespace

double leastHeightOf(PageFlow& flow, const Question& question) {
    return askedText(flow, question).height +
           (question.places.empty() ? 0 : placeHeight(flow, question, 0));
}

void drawQuestion(PageFlow& flow, const Question& question) {
    const AskedText asked = askedText(flow, question);
    flow.down(kStep);
    flow.keep(leastHeightOf(flow, question));
    flow.row(asked.text);
    flow.down(kStep / 2);
    flow.row(asked.why);
    flow.row(asked.source);
    flow.down(kStep);
    for (std::size_t at = 0; at < question.places.size(); ++at) drawPlace(flow, question, at);
}

}  // namespace reports
