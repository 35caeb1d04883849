/// Draws the number of an order for scanners and for people.
#pragma once

#include "domain/base/id.h"
#include "reports/page_flow.h"

namespace reports {

inline constexpr double kBarModule = 0.25;  ///< mm of Code 128: two dots at 203 dots an inch
inline constexpr double kBarHeight = 12;    ///< mm
inline constexpr double kBarQuiet = 10;     ///< modules left white at either side
inline constexpr double kQrModule = 0.5;    ///< mm: four dots
inline constexpr double kQrQuiet = 4;       ///< modules left white all around

/// Bars with the digits below, the QR code at their right.
void drawBarcode(PageFlow& flow, const domain::OrderNumber& number);
/// A text as a QR code alone.
void drawCode(PageFlow& flow, const std::string& text);

}  // namespace reports
