#include <algorithm>
#include <array>
#include <map>

#include "domain/drawing/arch_parts.h"

namespace domain {
namespace {

constexpr double kLabelSize = 2.8;  // mm, the em
constexpr double kNoteSize = 2.3;
constexpr double kLabelBeyond = 6.2;  // mm from the tooth to the middle of its number

/// Words whose capitals stand centred on a place.
Words centred(std::string text, Point centre, double size, Colour colour, Depicted depicts) {
    return {.text = std::move(text),
            .at = centre + Point{0, 0.36 * size},
            .anchor = Anchor::Middle,
            .size = size,
            .bold = false,
            .colour = colour,
            .depicts = depicts};
}

Point labelPlace(Tooth tooth) {
    const ToothFrame frame = toothFrame(tooth);
    return frame.at(0, 1, kLabelBeyond);
}

void drawNumbers(ArchCanvas& canvas, const Prescription& prescription, Notation notation) {
    for (int position = 0; position < kTeethInArch; ++position) {
        const Tooth tooth = Tooth::at(prescription.arch, position);
        const ToothState state = prescription.dentition.of(tooth);
        const bool absent = state == ToothState::NotReplaced || state == ToothState::Closed;
        Words words = centred(nameOf(tooth, notation), labelPlace(tooth), kLabelSize,
                              absent ? Colour::Quiet : Colour::Ink, Depicted::Frame);
        words.bold = !absent;
        const Box box = boxOf(words);  // a line that passes there gives way
        canvas.fill({{box.left, box.top},
                     {box.right, box.top},
                     {box.right, box.bottom},
                     {box.left, box.bottom}},
                    Colour::Sheet, Depicted::Frame);
        canvas.write(words);
    }
}

void drawDepth(ArchCanvas& canvas, const Clasp& clasp) {
    const auto tip = armTip(clasp);
    if (!tip) return;
    const auto& depth = clasp.undercut->depth;
    const std::string text =
        depth ? decimalText(depth->count(), MicronUnit::kPerWritten) : std::string{"?"};
    const Point away = unit(*tip - toothFrame(clasp.tooth).centre);
    const Words sized = centred(text, {}, kNoteSize, Colour::Ink, Depicted::UndercutDepth);
    const Box size = boxOf(sized);
    const Box room =
        canvas.roomFor(size.right - size.left, size.bottom - size.top, *tip + away * 2.4, away);
    Words words = sized;
    words.at = room.centre() + Point{0, sized.at.y - size.centre().y};
    canvas.write(std::move(words));
}

void drawSides(ArchCanvas& canvas, Arch arch) {
    const bool upper = arch == Arch::Upper;
    const auto corner = [&](std::string text, double y, bool left, Colour colour, bool bold) {
        canvas.write({.text = std::move(text),
                      .at = {left ? 1.0 : kArchPictureWidth - 1, y},
                      .anchor = left ? Anchor::Left : Anchor::Right,
                      .size = kNoteSize,
                      .bold = bold,
                      .colour = colour,
                      .depicts = Depicted::Frame});
    };
    const double foot = kArchPictureHeight - 1;
    corner("patient's right", foot, true, Colour::Quiet, false);
    corner("patient's left", foot, false, Colour::Quiet, false);
    const double caption = upper ? 3.5 : foot - 8;
    corner(upper ? "Upper arch" : "Lower arch", caption, true, Colour::Ink, true);
    corner(upper ? "seen from below" : "seen from above", caption + 3.2, true, Colour::Quiet,
           false);
}

/// "4–7, 9": the numbers in a row, three or more that follow each other as a range.
std::vector<std::string> ranges(const std::vector<int>& numbers) {
    std::vector<std::string> texts;
    for (std::size_t at = 0; at < numbers.size();) {
        std::size_t last = at;
        while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1) ++last;
        if (last - at < 2) last = at;
        texts.push_back(last == at ? std::to_string(numbers[at])
                                   : std::to_string(numbers[at]) + "\u2013" +
                                         std::to_string(numbers[last]));
        at = last + 1;
    }
    return texts;
}

/// At most a few on one flag, so that it stays as narrow as the room beside a tooth.
std::vector<std::string> flagTexts(const std::vector<int>& numbers) {
    constexpr std::size_t kMostCharacters = 6;
    std::vector<std::string> texts;
    for (const std::string& range : ranges(numbers)) {
        if (texts.empty() || texts.back().size() + 2 + range.size() > kMostCharacters)
            texts.push_back(range);
        else
            texts.back() += ", " + range;
    }
    return texts;
}

struct FlagLook {
    Severity severity{};
    Depicted depicts{};
    Colour line{};
    Colour inside{};
    Colour text{};
    LineStyle style{};
};

/// Told by their form: an open flag asks, a filled one refuses, a dashed one warns.
constexpr std::array<FlagLook, 3> kFlagLooks{{
    {Severity::Missing, Depicted::MissingFlag, Colour::Ask, Colour::Sheet, Colour::Ask,
     LineStyle::Solid},
    {Severity::Conflict, Depicted::ConflictFlag, Colour::Stop, Colour::Stop, Colour::Sheet,
     LineStyle::Solid},
    {Severity::Caution, Depicted::CautionFlag, Colour::Ink, Colour::Sheet, Colour::Ink,
     LineStyle::Dashed},
}};

constexpr double kFlagHeight = 3.5;

double flagWidth(const std::string& text) {
    const Box size = boxOf(centred(text, {}, kNoteSize, Colour::Ink, Depicted::Frame));
    return size.right - size.left + 1.6;
}

void drawFlag(ArchCanvas& canvas, const Box& box, const std::string& text, const FlagLook& look) {
    const Polyline cloth{{box.left, box.top},
                         {box.right, box.top},
                         {box.right, box.bottom - 0.6},
                         {box.left, box.bottom - 0.6}};
    canvas.shape(cloth, look.inside, {look.line, 0.32, look.style}, look.depicts);
    canvas.stroke({{box.left, box.top}, {box.left, box.bottom + 0.5}}, {look.line, 0.5},
                  look.depicts);
    Words words =
        centred(text, {box.centre().x, box.centre().y - 0.3}, kNoteSize, look.text, look.depicts);
    words.bold = true;
    canvas.write(words);
    canvas.keepClear(box);
}

/// Ties a flag that found no room beside its tooth's number to it.
void drawLeader(ArchCanvas& canvas, const Box& flag, Point number, const FlagLook& look) {
    constexpr double kBeside = 6.5;
    if (distance(flag.centre(), number) <= kBeside) return;
    const Point towards = unit(number - flag.centre());
    canvas.stroke({flag.centre(), number - towards * 2}, {look.line, kThin}, look.depicts);
}

/// The numbers of the findings about one place, by how grave they are.
using Numbers = std::array<std::vector<int>, 3>;

void drawToothFlags(ArchCanvas& canvas, Tooth tooth, const Numbers& numbers) {
    const ToothFrame frame = toothFrame(tooth);
    const Point place = labelPlace(tooth);
    for (const FlagLook& look : kFlagLooks)
        for (const std::string& text :
             flagTexts(numbers[static_cast<std::size_t>(look.severity)])) {
            const Box room = canvas.roomFor(flagWidth(text) + 0.5, kFlagHeight + 0.7,
                                            place + frame.outward * 3.2, frame.outward);
            drawLeader(canvas, room, place, look);
            drawFlag(canvas, {room.left + 0.2, room.top + 0.1, room.right - 0.3, room.bottom - 0.6},
                     text, look);
        }
}

/// In the corner that the arch leaves free: above right for an upper arch, below right for a lower.
void drawCornerFlags(ArchCanvas& canvas, Arch arch, const Numbers& numbers) {
    if (std::ranges::all_of(numbers, [](const auto& some) { return some.empty(); })) return;
    constexpr double kRoom = 23;
    const double left = kArchPictureWidth - kRoom;
    double top = arch == Arch::Upper ? 1 : kArchPictureHeight - 19;
    canvas.write({.text = "whole denture",
                  .at = {kArchPictureWidth - 1, top + 2.5},
                  .anchor = Anchor::Right,
                  .size = kNoteSize,
                  .bold = false,
                  .colour = Colour::Quiet,
                  .depicts = Depicted::Frame});
    top += 4;
    double right = kArchPictureWidth - 1;
    for (const FlagLook& look : kFlagLooks)
        for (const std::string& text :
             flagTexts(numbers[static_cast<std::size_t>(look.severity)])) {
            const double width = flagWidth(text);
            if (right - width < left) {
                right = kArchPictureWidth - 1;
                top += kFlagHeight + 1.2;
            }
            drawFlag(canvas, {right - width, top, right, top + kFlagHeight}, text, look);
            right -= width + 1.2;
        }
}

}  // namespace

void drawLabels(ArchCanvas& canvas, const Prescription& prescription,
                const ArchPictureOptions& options) {
    drawSides(canvas, prescription.arch);
    drawNumbers(canvas, prescription, options.notation);
    for (const Clasp& clasp : prescription.clasps)
        if (clasp.tooth.arch() == prescription.arch) drawDepth(canvas, clasp);
}

void drawFlags(ArchCanvas& canvas, const Prescription& prescription,
               const std::vector<Finding>& findings, const ArchPictureOptions& options) {
    std::map<Tooth, Numbers> atTeeth;
    Numbers whole;
    int number = options.firstNumber;
    for (const Finding& finding : findings) {
        const bool here = finding.tooth && finding.tooth->arch() == prescription.arch;
        Numbers& place = here ? atTeeth[*finding.tooth] : whole;
        place[static_cast<std::size_t>(finding.severity)].push_back(number++);
    }
    drawCornerFlags(canvas, prescription.arch, whole);
    for (const auto& [tooth, numbers] : atTeeth) drawToothFlags(canvas, tooth, numbers);
}

}  // namespace domain
