#include "domain/drawing/tooth_outlines.h"

#include <array>

namespace domain {
namespace {

constexpr std::array<Point, 10> kUpperIncisor{{{1.00, 0.30},
                                               {0.78, 0.76},
                                               {0.30, 0.98},
                                               {-0.30, 0.98},
                                               {-0.78, 0.74},
                                               {-1.00, 0.26},
                                               {-0.72, -0.40},
                                               {-0.26, -0.96},
                                               {0.26, -0.96},
                                               {0.74, -0.40}}};
constexpr std::array<Point, 8> kLowerIncisor{{{1.00, 0.20},
                                              {0.66, 0.82},
                                              {0.00, 1.00},
                                              {-0.66, 0.82},
                                              {-1.00, 0.18},
                                              {-0.62, -0.66},
                                              {0.00, -1.00},
                                              {0.62, -0.66}}};
constexpr std::array<Point, 8> kCanine{{{0.98, 0.10},
                                        {0.62, 0.70},
                                        {0.04, 1.00},
                                        {-0.60, 0.70},
                                        {-1.00, 0.02},
                                        {-0.62, -0.66},
                                        {-0.02, -1.00},
                                        {0.62, -0.64}}};
constexpr std::array<Point, 10> kUpperPremolar{{{0.97, 0.12},
                                                {0.90, 0.56},
                                                {0.42, 0.96},
                                                {-0.42, 0.96},
                                                {-0.92, 0.54},
                                                {-0.97, 0.08},
                                                {-0.82, -0.58},
                                                {-0.34, -0.97},
                                                {0.36, -0.97},
                                                {0.82, -0.58}}};
constexpr std::array<Point, 10> kLowerPremolar{{{0.98, 0.06},
                                                {0.88, 0.60},
                                                {0.38, 0.97},
                                                {-0.38, 0.97},
                                                {-0.90, 0.58},
                                                {-0.98, 0.02},
                                                {-0.80, -0.62},
                                                {-0.30, -0.96},
                                                {0.30, -0.96},
                                                {0.80, -0.62}}};
// A rhomboid: the cheek side stands further forward than the palatal side.
constexpr std::array<Point, 14> kUpperMolar{{{1.00, 0.10},
                                             {0.96, 0.66},
                                             {0.62, 0.98},
                                             {0.06, 0.92},
                                             {-0.44, 0.97},
                                             {-0.86, 0.68},
                                             {-0.98, 0.08},
                                             {-0.98, -0.48},
                                             {-0.70, -0.93},
                                             {-0.20, -0.92},
                                             {0.26, -0.98},
                                             {0.70, -0.84},
                                             {0.94, -0.40},
                                             {1.00, -0.10}}};
constexpr std::array<Point, 14> kLowerMolar{{{0.99, 0.00},
                                             {0.94, 0.60},
                                             {0.62, 0.95},
                                             {0.16, 0.93},
                                             {-0.34, 0.98},
                                             {-0.78, 0.80},
                                             {-0.99, 0.30},
                                             {-0.98, -0.28},
                                             {-0.84, -0.76},
                                             {-0.46, -0.97},
                                             {0.02, -0.90},
                                             {0.50, -0.97},
                                             {0.86, -0.74},
                                             {0.97, -0.30}}};

using Hints = std::vector<std::vector<Point>>;

Hints upperHints(ToothKind kind) {
    switch (kind) {
        case ToothKind::Incisor:
            return {{{0.66, 0.34}, {0.0, 0.48}, {-0.66, 0.32}},
                    {{0.34, -0.30}, {0.0, -0.52}, {-0.34, -0.30}}};
        case ToothKind::Canine:
            return {{{0.62, 0.12}, {0.02, 0.36}, {-0.64, 0.06}}, {{0.02, 0.36}, {0.0, -0.42}}};
        case ToothKind::Premolar:
            return {{{0.56, 0.02}, {0.0, -0.04}, {-0.56, 0.02}},
                    {{0.70, 0.24}, {0.56, 0.02}, {0.66, -0.24}},
                    {{-0.70, 0.24}, {-0.56, 0.02}, {-0.66, -0.24}}};
        case ToothKind::Molar:
            return {{{0.66, 0.14}, {0.30, 0.08}, {0.02, 0.16}, {0.04, 0.70}},
                    {{-0.66, 0.10}, {-0.42, 0.02}, {-0.36, -0.30}, {-0.22, -0.74}},
                    {{0.02, 0.16}, {-0.20, 0.12}, {-0.42, 0.02}}};
    }
    return {};
}

Hints lowerHints(ToothKind kind) {
    switch (kind) {
        case ToothKind::Incisor:
            return {{{0.60, 0.28}, {0.0, 0.36}, {-0.60, 0.26}}};
        case ToothKind::Canine:
            return {{{0.60, 0.16}, {0.02, 0.36}, {-0.62, 0.10}}, {{0.02, 0.36}, {0.0, -0.36}}};
        case ToothKind::Premolar:
            return {{{0.58, -0.08}, {0.0, -0.20}, {-0.58, -0.08}}, {{0.0, -0.20}, {0.02, -0.60}}};
        case ToothKind::Molar:
            return {{{0.66, 0.02}, {0.24, 0.08}, {-0.14, -0.02}, {-0.64, 0.06}},
                    {{0.18, 0.70}, {0.24, 0.08}},
                    {{0.04, -0.66}, {0.04, 0.02}},
                    {{-0.40, 0.68}, {-0.32, 0.0}}};
    }
    return {};
}

}  // namespace

std::span<const Point> crownCorners(Tooth tooth) {
    const bool upper = tooth.arch() == Arch::Upper;
    switch (tooth.kind()) {
        case ToothKind::Incisor:
            if (upper) return kUpperIncisor;
            return kLowerIncisor;
        case ToothKind::Canine:
            return kCanine;
        case ToothKind::Premolar:
            if (upper) return kUpperPremolar;
            return kLowerPremolar;
        case ToothKind::Molar:
            if (upper) return kUpperMolar;
            return kLowerMolar;
    }
    return {};
}

std::vector<std::vector<Point>> crownHints(Tooth tooth) {
    return tooth.arch() == Arch::Upper ? upperHints(tooth.kind()) : lowerHints(tooth.kind());
}

}  // namespace domain
