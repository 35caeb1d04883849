/// What the laboratory itself decides where the sources disagree: limits with a documented default.
#pragma once

#include <string>
#include <string_view>

#include "domain/base/quantity.h"
#include "domain/prescription/fields.h"

namespace domain {

struct HouseLimits {
    Microns lingualBarSpace{7000_um};
    Microns upperClearance{6000_um};
    Microns lowerClearance{3000_um};
    Microns barClaspSulcus{5000_um};
    Microns restThickness{1000_um};
    Microns goldUndercut{508_um};
    Microns wroughtUndercut{762_um};
    Microns castArmLength{14'000_um};
    Microns wroughtArmLength{7000_um};
    Newtons leastClaspForce{1200_mN};
    Newtons mostClaspForce{16'300_mN};
    Days frameworkTime{10_d};
    Days interimTime{5_d};
    Days changeTime{1_d};

    friend bool operator==(const HouseLimits&, const HouseLimits&) = default;
};

/// The limits one by one: the word it is set by, what it is, and what the schools say. The words
/// never change.
void describe(auto& visitor, Is<HouseLimits> auto& part) {
    constexpr std::string_view kLabSchedules =
        "published schedules of laboratories: 10 to 25 working days for a cast denture in all its "
        "stages; the others common practice, no source";
    visitor.field("lingual-bar-space", part.lingualBarSpace, "functional depth a lingual bar needs",
                  "7 mm (Stratton and Wiebelt 1988) or 8 mm (after McCracken)");
    visitor.field("upper-clearance", part.upperClearance,
                  "connector border to gingival margin, upper arch",
                  "6 mm (University of Oklahoma, review question 21)");
    visitor.field("lower-clearance", part.lowerClearance,
                  "connector border to gingival margin, lower arch",
                  "3 mm or 4 mm (both after McCracken, secondary sources)");
    visitor.field("bar-clasp-sulcus", part.barClaspSulcus,
                  "depth of the sulcus an arm from the gingiva needs",
                  "4 to 5 mm (after McCracken) or 7 mm (after Davenport et al.)");
    visitor.field("rest-thickness", part.restThickness, "least thickness of a rest",
                  "1.0 mm (after Davenport et al.) or 1.5 mm (after McCracken)");
    visitor.field("gold-undercut", part.goldUndercut, "deepest undercut of a cast gold arm",
                  "0.38 mm or 0.50 mm (0.015 or 0.020 inch, by school)");
    visitor.field("wrought-undercut", part.wroughtUndercut, "deepest undercut of a wrought arm",
                  "0.50 mm or 0.75 mm (0.020 or 0.030 inch, by school)");
    visitor.field("cast-arm-length", part.castArmLength,
                  "least length of a cast circumferential arm of cobalt-chromium",
                  "14 mm (from memory) or 15 mm (after Davenport et al.)");
    visitor.field("wrought-arm-length", part.wroughtArmLength, "least length of a wrought arm",
                  "7 mm or 8 mm (from memory)");
    visitor.field(
        "least-clasp-force", part.leastClaspForce, "least pull a clasp should resist",
        "1.2 N measured per arm (half of 2.34 N of a twin clasp: International Journal of "
        "Prosthodontics 2006;19:371-2); 3 N recommended (from memory)");
    visitor.field("most-clasp-force", part.mostClaspForce, "most pull a clasp should resist",
                  "16.3 N measured (Tannous et al., Dental Materials 2012;28:273-8); 7.5 N "
                  "recommended (from memory)");
    visitor.field("framework-time", part.frameworkTime,
                  "working days from receipt to delivery of a framework denture", kLabSchedules);
    visitor.field("interim-time", part.interimTime, "the same of an interim resin denture",
                  kLabSchedules);
    visitor.field("change-time", part.changeTime, "the same of a repair, an addition or a reline",
                  kLabSchedules);
}

}  // namespace domain
