/// A set of ids that a table counts up: a bit for each.
#pragma once

#include <cstdint>
#include <vector>

namespace storage {

class Ids {
public:
    void add(std::int64_t id) {
        const auto place = static_cast<std::size_t>(id);
        if (place >= bits_.size()) bits_.resize(place + 1);
        bits_[place] = true;
    }
    bool contains(std::int64_t id) const {
        return id >= 0 && static_cast<std::size_t>(id) < bits_.size() &&
               bits_[static_cast<std::size_t>(id)];
    }

private:
    std::vector<bool> bits_;
};

}  // namespace storage
