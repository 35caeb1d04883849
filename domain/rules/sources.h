/// Where the rules come from, as far as several rows share a source; private to this folder.
#pragma once

#include <string_view>

namespace domain::source {

inline constexpr std::string_view kCommonPractice = "common practice, no source";
inline constexpr std::string_view kApplegate =
    "Applegate's rules for the Kennedy classification, rule 1, as restated in teaching notes";
inline constexpr std::string_view kSurveyedHere =
    "Daya and Owen, South African Dental Journal 2022;77(8): 1 of 114 casts was surveyed by the "
    "dentist, so what is left open the laboratory surveys";
inline constexpr std::string_view kMcCracken =
    "teaching notes after McCracken's Removable Partial Prosthodontics; secondary source";
inline constexpr std::string_view kMdr =
    "Regulation (EU) 2017/745, Annex XIII section 1; Montana Code 37-4-501; Maine Title 32 "
    "section 1090; South Carolina R.39-8(A)";

}  // namespace domain::source
