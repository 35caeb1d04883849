/// A statement for a custom-made device that lacks nothing; every name in it is invented.
#pragma once

#include "domain/production/statement.h"

namespace support {

domain::Statement completeStatement();

}  // namespace support
