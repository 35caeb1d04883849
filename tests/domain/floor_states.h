/// Orders in every state they can stand in, each with the plain facts that say which state it is.
///
/// The facts are noted while a state is brought about; they are not read off the order.
#pragma once

#include <string>
#include <vector>

#include "tests/support/floor.h"
#include "tests/support/floor_facts.h"

namespace support {

struct State {
    std::string name;
    Bench bench;
    Facts facts;
};

std::vector<State> everyState();

}  // namespace support
