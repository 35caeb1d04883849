#include "reports/line_breaking.h"

#include <map>

#include "reports/text.h"

namespace reports {
namespace {

/// Widths of single characters, each asked for once.
class Widths {
public:
    Widths(PdfDocument& pdf, const Type& type) : pdf_{pdf}, type_{type} {}
    double of(char32_t code) {
        const auto [slot, isNew] = known_.try_emplace(code, 0.0);
        if (isNew) slot->second = pdf_.widthOf(encoded(std::u32string(1, code)), type_);
        return slot->second;
    }

private:
    PdfDocument& pdf_;
    Type type_;
    std::map<char32_t, double> known_{};
};

}  // namespace

std::vector<std::string> brokenLines(PdfDocument& pdf, std::string_view text, const Type& type,
                                     double width) {
    const std::u32string codes = decoded(pdf.shown(printable(text), type.face));
    Widths widths{pdf, type};
    std::vector<std::string> lines;
    std::size_t begin = 0;
    while (begin < codes.size()) {
        double used = 0;
        std::size_t end = begin;
        std::size_t space = begin;  // the last one seen; none yet
        while (end < codes.size() && (end == begin || used + widths.of(codes[end]) <= width)) {
            if (codes[end] == U' ') space = end;
            used += widths.of(codes[end++]);
        }
        const bool atEnd = end == codes.size();
        const bool wordEnds = atEnd || codes[end] == U' ';
        if (!wordEnds && space > begin) end = space;
        lines.push_back(encoded(std::u32string_view{codes}.substr(begin, end - begin)));
        begin = end;
        if (begin < codes.size() && codes[begin] == U' ') ++begin;
    }
    return lines;
}

}  // namespace reports
