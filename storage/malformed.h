/// What stopped the reading of stored bytes; thrown and caught within the coders of storage.
#pragma once

#include <stdexcept>

namespace storage {

struct Malformed : std::runtime_error {
    using std::runtime_error::runtime_error;
};

}  // namespace storage
