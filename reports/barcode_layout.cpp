#include "reports/barcode_layout.h"

#include "reports/barcode.h"

namespace reports {
namespace {

/// Its upper left corner at a place; a module is that wide and high, in mm.
void drawSymbol(PdfDocument& pdf, const Symbol& symbol, domain::Point corner, double width,
                double height) {
    std::vector<domain::Box> boxes;
    boxes.reserve(symbol.dark.size());
    for (const domain::Box& dark : symbol.dark)
        boxes.push_back({.left = corner.x + dark.left * width,
                         .top = corner.y + dark.top * height,
                         .right = corner.x + dark.right * width,
                         .bottom = corner.y + dark.bottom * height});
    pdf.areas(boxes, domain::Colour::Ink);
}

}  // namespace

void drawBarcode(PageFlow& flow, const domain::OrderNumber& number) {
    const auto bars = code128Of(number);
    const auto square = qrOf(number);
    if (!bars || !square) return flow.pdf().refuse((!bars ? bars : square).error().message);
    constexpr double kQrMargin = kQrQuiet * kQrModule;
    const double height = 2 * kQrMargin + kBarHeight + lineHeight(kHead);
    flow.breakBefore(height);
    const double top = flow.y() + kQrMargin;
    const double left = kMargin + kBarQuiet * kBarModule;
    drawSymbol(flow.pdf(), *bars, {left, top}, kBarModule, kBarHeight);
    const double right = left + bars->width * kBarModule;
    const double digits = flow.pdf().widthOf(number.text(), kHead);
    flow.pdf().text({(left + right - digits) / 2, top + kBarHeight + lineHeight(kHead) * 0.9},
                    number.text(), kHead);
    drawSymbol(flow.pdf(), *square, {right + kBarQuiet * kBarModule + kQrMargin, top}, kQrModule,
               kQrModule);
    flow.down(height + kStep);
}

void drawCode(PageFlow& flow, const std::string& text) {
    const auto square = qrOf(text);
    if (!square) return flow.pdf().refuse(square.error().message);
    constexpr double kQrMargin = kQrQuiet * kQrModule;
    const double height = 2 * kQrMargin + square->height * kQrModule;
    flow.breakBefore(height);
    drawSymbol(flow.pdf(), *square, {kMargin + kQrMargin, flow.y() + kQrMargin}, kQrModule,
               kQrModule);
    flow.down(height + kStep);
}

}  // namespace reports
