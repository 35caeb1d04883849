#include "domain/production/bench_words.h"

#include <algorithm>
#include <array>

namespace domain {
namespace {

/// Between blanks. What laboratories weigh, measure and disinfect with; the disinfectants are those
/// the CDC's guidelines for infection control in dental health-care settings, 2003, go through; the
/// rest is common practice, no source.
constexpr std::string_view kWords =
    " a above accelerated acid acrylic after alcohol alginate alloy ammonium amount and as asked"
    " at autoclave back bad bar base bath before below bench between bleach block-out boil"
    " boiling boils burn-out button cast casting celsius charge chlorhexidine chloride chlorine"
    " clasp clearance cobalt-chromium cold complete compound compounds concentration connector"
    " cooled cooling count crucible cure current cycle depth detergent dioxide direct drops"
    " duplicating each early electrolyte ends ethanol ethyl every example expansion expected"
    " fast finish first flask follows for formaldehyde frame framework from furnace gap gaps gas"
    " gel gingival glutaraldehyde gold grams gypsum heat height hold holds hour hours house"
    " humidity hydrogen hypochlorite hypochlorous in investment iodine iodophor is isopropanol"
    " isopropyl it kept kg kpa last later least left length light line liquid load log long"
    " longest lower mass match measured metal min minute minutes mixing ml mm monomer more most"
    " mould mpa ncm nearest needed needs neighbours nickel-chromium no none not number of one"
    " only opened or ortho-phthalaldehyde other oven overheated oxygen ozone part parts pattern"
    " pcs peracetic percent peroxide peroxymonosulfate phenol phenolic pieces plaster plate"
    " polish polymer potassium povidone-iodine powder ppm press pressure published quaternary"
    " ratio reached reading readings recorded resin retention right room rpm runs saddle safer"
    " salt scale second seconds section shade short shrinkage soap sodium solder solution speed"
    " spray sprue start steam stone strength surface synthetic tab temperature test than that"
    " the then thick thickest thickness time titanium to too tooth torque tray ultraviolet"
    " undercut upper vacuum value voltage volume was water wax weight where whole width wire"
    " with within without yes ";

/// So much of a code's length is usual; a longer word is no code, digit or not.
constexpr std::size_t kLongestCode = 10;

bool isDigit(char c) { return c >= '0' && c <= '9'; }
bool isAsciiLetter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
/// A byte of a sign beyond ASCII: a letter for all that is known here.
bool isLetter(char c) { return isAsciiLetter(c) || static_cast<unsigned char>(c) >= 0x80; }
/// Signs of units that are beyond ASCII: the degree, the micro sign, the Greek mu, the middle dot.
constexpr std::array kSigns = std::to_array<std::string_view>({"°", "µ", "μ", "·"});

std::string lowered(std::string_view word) {
    std::string text{word};
    std::ranges::transform(text, text.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    return text;
}

std::string withoutSigns(std::string text) {
    for (const std::string_view sign : kSigns)
        for (std::size_t at = text.find(sign); at != std::string::npos; at = text.find(sign))
            text.erase(at, sign.size());
    return text;
}

bool isWord(const std::string& text) {
    return kWords.find(' ' + text + ' ') != std::string_view::npos;
}

bool isFit(std::string_view word) {
    const std::string text = withoutSigns(lowered(word));
    const auto letters = std::ranges::count_if(text, isLetter);
    if (letters == 0 || isWord(text)) return true;
    if (!std::ranges::all_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x80; }))
        return false;
    return letters <= 2 || (text.size() <= kLongestCode && std::ranges::any_of(text, isDigit));
}

}  // namespace

std::string strangeWordIn(std::string_view text) {
    const auto ends = [](char c) { return !isLetter(c) && !isDigit(c) && c != '-'; };
    for (auto at = text.begin(); at != text.end();) {
        const auto begin = std::find_if_not(at, text.end(), ends);
        at = std::find_if(begin, text.end(), ends);
        if (const std::string_view word{begin, at}; !isFit(word)) return std::string{word};
    }
    return {};
}

std::string strangeWordSentence(std::string_view word) {
    return '"' + std::string{word} +
           "\" is no word of the bench; a record holds words of the trade, numbers and codes, so "
           "that nobody is named in it: put other words into a note";
}

}  // namespace domain
