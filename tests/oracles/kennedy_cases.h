/// Arches with known Kennedy class. Unless named, third molars are missing and not replaced.
#pragma once

#include <string_view>

namespace oracles {

struct KennedyCase {
    std::string_view name;
    std::string_view told;  ///< as one line of `classify --batch`
    std::string_view answer;
    std::string_view source;
};

inline constexpr KennedyCase kPublishedKennedy[] = {
    {"PUB-2", "upper missing=14,15,24,25,26", "III mod 1",
     "University of Western Australia, DENT1158 course notes, project 4"},
    {"PUB-3", "lower notation=universal missing=17,18,19,30,31,32", "I",
     "Oklahoma University Health Sciences Center, RPD review questions Q3 and Q93"},
    {"PUB-4a", "upper missing=15,16,17,25,26,27", "I",
     "Chen 2019, J Prosthet Dent, doi 10.1016/j.prosdent.2018.11.010, model (a)"},
    {"PUB-4b", "upper missing=14,15,16,24,25,26", "III mod 1",
     "the same, model (b); class derived from its description"},
    {"PUB-4d", "upper missing=11,21", "IV", "the same, model (d)"},
    {"PUB-5", "lower missing=36,37,46,47", "I",
     "El-Khalik 2016, J Indian Prosthodont Soc, abstract"},
};

// Worked by hand from Applegate's rules, not published answers. Those marked (reading) rest on how
// the rules on third and second molars are read.
inline constexpr KennedyCase kWorkedKennedy[] = {
    {"U01", "upper missing=14,15,16,17,18,24,25,26,27,28", "I", "derived"},
    {"U02", "upper missing=16,17,18,26,27,28", "I", "derived"},
    {"U03", "upper missing=12,15,16,17,18,25,26,27,28", "I mod 1", "derived"},
    {"U04", "upper missing=11,15,16,17,18,21,25,26,27,28", "I mod 1", "derived"},
    {"U05", "upper missing=12,15,16,17,18,22,25,26,27,28", "I mod 2", "derived"},
    {"U07", "upper missing=15,16,17,18,28", "II", "derived"},
    {"U08", "upper missing=18,24,25,26,27,28", "II", "derived"},
    {"U09", "upper missing=15,16,17,18,25,26,28", "II mod 1", "derived"},
    {"U12", "upper missing=15,16,18,28", "III", "derived"},
    {"U13", "upper missing=14,15,18,24,25,26,28", "III mod 1", "derived"},
    {"U14", "upper missing=12,15,16,18,25,26,28", "III mod 2", "derived"},
    {"U16", "upper missing=11,18,21,28", "IV", "derived"},
    {"U17", "upper missing=11,12,18,21,22,28", "IV", "derived"},
    {"U18", "upper missing=11,12,13,18,21,22,23,28", "IV", "derived"},
    {"U19", "upper missing=11,12,13,14,18,21,22,23,24,28", "IV", "derived"},
    {"U21", "upper missing=11,12,16,17,18,21,22,28", "II mod 1", "derived"},
    {"U23", "upper missing=11,18,28", "III", "derived"},
    {"U24", "upper missing=11,12,18,28", "III", "derived"},
    {"U25", "upper missing=18,22,23,24,25,26,27,28", "II", "derived"},
    {"U27", "upper missing=13,15,16,17,18,23,25,26,27,28", "I mod 2", "derived"},
    {"U29", "upper missing=17,18,28", "II", "derived (reading)"},
    {"U31", "upper missing=16,17,28 abutment=18", "III", "derived (reading)"},
    {"U32", "upper missing=16,17,28", "II", "derived (reading)"},
    {"U33", "upper missing=16,17,26,27 abutment=18,28", "III mod 1", "derived (reading)"},
    {"U35", "upper missing=15,16,18,25,26,28", "III mod 1", "derived"},
    {"U36", "upper missing=18,28", "none", "derived"},
    {"U37", "upper missing=18,28 replaced=18", "II", "derived (reading)"},
    {"L01", "lower missing=34,35,36,37,38,44,45,46,47,48", "I", "derived"},
    {"L02", "lower missing=36,37,38,46,47,48", "I", "derived"},
    {"L03", "lower missing=31,35,36,37,38,41,45,46,47,48", "I mod 1", "derived"},
    {"L04", "lower missing=32,34,35,36,37,38,42,45,46,47,48", "I mod 2", "derived"},
    {"L05", "lower missing=38,46,47,48", "II", "derived"},
    {"L06", "lower missing=35,36,37,38,46,48", "II mod 1", "derived"},
    {"L09", "lower missing=38,46,48", "III", "derived"},
    {"L10", "lower missing=36,38,46,48", "III mod 1", "derived"},
    {"L12", "lower missing=31,32,38,41,42,48", "IV", "derived"},
    {"L13", "lower missing=31,38,41,48", "IV", "derived"},
    {"L14", "lower missing=31,32,36,38,41,42,48", "III mod 1", "derived"},
    {"L16", "lower missing=38,46,47 abutment=48", "III", "derived (reading)"},
    {"L19", "lower missing=37,38,46,47,48 not-replaced=37,47", "II", "derived (reading)"},
    {"L22", "lower missing=37,38,45,46,47,48", "I", "derived (reading)"},
    {"L24", "lower missing=31,32,34,35,36,37,38,41,42,44,45,46,47,48", "I mod 1", "derived"},
};

}  // namespace oracles
