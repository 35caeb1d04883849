/// What must hold for any bytes whatever that are given as a prescription.
#pragma once

#include <string>
#include <string_view>

namespace fuzz {

/// Reads the text; if it is a prescription, examines and describes it, writes it and reads it
/// again. Empty if all is well, else what is not. That it returns at all, and the sanitizers are
/// quiet, is the larger part of the test.
std::string faultOf(std::string_view text);

}  // namespace fuzz
