#include "reports/barcode.h"

#include <zint.h>

#include <memory>

namespace reports {
namespace {

using domain::Error;
using domain::ErrorCode;
using domain::Result;

constexpr double kUnitsPerModule = 2;  // of libzint's vectors at scale 1
constexpr int kCorrectionLevelM = 2;

struct Deleter {
    void operator()(zint_symbol* symbol) const noexcept { ZBarcode_Delete(symbol); }
};

Result<Symbol> encoded(int symbology, const std::string& digits) {
    const std::unique_ptr<zint_symbol, Deleter> symbol{ZBarcode_Create()};
    if (!symbol) return Error{ErrorCode::Unavailable, "no memory for a barcode"};
    symbol->symbology = symbology;
    symbol->show_hrt = 0;
    if (symbology == BARCODE_QRCODE) symbol->option_1 = kCorrectionLevelM;
    const int status = ZBarcode_Encode_and_Buffer_Vector(
        symbol.get(), reinterpret_cast<const unsigned char*>(digits.data()),
        static_cast<int>(digits.size()), 0);
    if (status != 0 || symbol->vector == nullptr)
        return Error{ErrorCode::Unavailable,
                     "the barcode library refuses: " + std::string{symbol->errtxt}};
    Symbol made{.width = symbol->vector->width / kUnitsPerModule,
                .height = symbol->vector->height / kUnitsPerModule,
                .dark = {}};
    for (const auto* bar = symbol->vector->rectangles; bar != nullptr; bar = bar->next)
        made.dark.push_back({.left = bar->x / kUnitsPerModule,
                             .top = bar->y / kUnitsPerModule,
                             .right = (bar->x + bar->width) / kUnitsPerModule,
                             .bottom = (bar->y + bar->height) / kUnitsPerModule});
    return made;
}

}  // namespace

Result<Symbol> code128Of(const domain::OrderNumber& number) {
    auto encodedBars = encoded(BARCODE_CODE128, number.text());
    if (!encodedBars) return encodedBars;
    Symbol bars = std::move(encodedBars).value();
    bars.height = 1;
    for (domain::Box& bar : bars.dark) {
        bar.top = 0;
        bar.bottom = 1;
    }
    return bars;
}

Result<Symbol> qrOf(const domain::OrderNumber& number) { return qrOf(number.text()); }

Result<Symbol> qrOf(const std::string& text) { return encoded(BARCODE_QRCODE, text); }

}  // namespace reports
