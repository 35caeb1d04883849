/// A set of teeth over both arches: small, cheap to copy, walked from the patient's right to left.
#pragma once

#include <bit>
#include <cstdint>
#include <initializer_list>
#include <vector>

#include "domain/teeth/tooth.h"

namespace domain {

class ToothSet {
public:
    constexpr ToothSet() = default;
    constexpr ToothSet(std::initializer_list<Tooth> teeth) noexcept {
        for (const Tooth tooth : teeth) add(tooth);
    }

    constexpr void add(Tooth tooth) noexcept { bits_ |= bit(tooth); }
    constexpr void remove(Tooth tooth) noexcept { bits_ &= ~bit(tooth); }
    constexpr bool has(Tooth tooth) const noexcept { return (bits_ & bit(tooth)) != 0; }
    constexpr bool empty() const noexcept { return bits_ == 0; }
    constexpr int size() const noexcept { return std::popcount(bits_); }

    /// The teeth in order: upper right to upper left, then lower right to lower left.
    std::vector<Tooth> teeth() const {
        std::vector<Tooth> list;
        for (const Arch arch : {Arch::Upper, Arch::Lower})
            for (int position = 0; position < kTeethInArch; ++position)
                if (const Tooth tooth = Tooth::at(arch, position); has(tooth))
                    list.push_back(tooth);
        return list;
    }

    friend constexpr ToothSet operator|(ToothSet a, ToothSet b) noexcept {
        a.bits_ |= b.bits_;
        return a;
    }
    friend constexpr bool operator==(ToothSet, ToothSet) = default;

private:
    static constexpr std::uint32_t bit(Tooth tooth) noexcept {
        return std::uint32_t{1} << static_cast<unsigned>(tooth.index());
    }
    std::uint32_t bits_{0};
};

}  // namespace domain
