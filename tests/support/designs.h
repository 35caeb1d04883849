/// Clean textbook designs, complete from identity to enclosures: an examination finds nothing.
///
/// Every name in them is invented. All are issued on 2026-11-20 and needed on 2026-12-18.
#pragma once

#include "domain/prescription/prescription.h"

namespace support {

/// The day the designs are examined on in the tests: 2026-11-25.
domain::Date examinationDay();

/// Missing 14, 15, 24, 25, 26; abutments 16, 13, 23, 27. The pattern is published: University of
/// Western Australia, course notes DENT1158, project 4 (Class III mod 1).
domain::Prescription upperClassIIIMod1();

/// Missing 35-37 and 45-47: RPI clasps on 34 and 44, lingual bar, indirect retainers on 33 and 43.
domain::Prescription lowerClassI();

/// Missing 15-17 and 25, 26: RPI clasp on 14, double palatal strap, indirect retainer on 23.
domain::Prescription upperClassIIMod1();

/// Missing 35-37 and 46: combination clasp on 34, lingual plate, indirect retainer on 44, where the
/// published worked example puts it. Written in Universal notation.
domain::Prescription lowerClassIIMod1();

/// Missing 12, 11, 21, 22: embrasure clasps between 16 and 17 and between 26 and 27.
domain::Prescription upperClassIV();

/// Missing 36 and 46: a ring clasp on the tipped 37, circumferential clasps on the others.
domain::Prescription lowerClassIIIMod1();

/// Missing 12, 15, 16, 26: all resin, wrought clasps on 14, 17 and 27, no rests.
domain::Prescription interimUpper();

}  // namespace support
