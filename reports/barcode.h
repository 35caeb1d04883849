/// Order numbers as bars and as modules that scanners read.
///
/// Code 128 in set C, the cheapest scanner's best, and a QR code of correction level M beside it
/// for those that see an area. Either holds the number of the order and nothing else; a QR code of
/// any other text is for what is no paper of an order.
#pragma once

#include <vector>

#include "domain/base/id.h"
#include "domain/base/result.h"
#include "domain/drawing/picture.h"

namespace reports {

/// What is dark, in modules from the upper left corner; quiet zones not counted.
struct Symbol {
    double width{};
    double height{};
    std::vector<domain::Box> dark{};
};

/// ISO/IEC 15417; one module high, to be drawn as high as wanted. ErrorCode::Unavailable if the
/// library refuses.
domain::Result<Symbol> code128Of(const domain::OrderNumber& number);
/// ISO/IEC 18004. ErrorCode::Unavailable if the library refuses.
domain::Result<Symbol> qrOf(const domain::OrderNumber& number);
domain::Result<Symbol> qrOf(const std::string& text);

}  // namespace reports
