/// A saddle: the teeth it replaces, and how the resin is held on the framework beneath them.
#pragma once

#include <optional>
#include <vector>

#include "domain/base/codes.h"
#include "domain/teeth/tooth.h"

namespace domain {

enum class ResinRetention : std::uint8_t { OpenLattice, Mesh, Bead };
template <>
inline constexpr std::array<EnumCode<ResinRetention>, 3> enumCodes<ResinRetention>{{
    {ResinRetention::OpenLattice, "open-lattice"},
    {ResinRetention::Mesh, "mesh"},
    {ResinRetention::Bead, "bead"},
}};

enum class BaseKind : std::uint8_t { Resin, Metal };
template <>
inline constexpr std::array<EnumCode<BaseKind>, 2> enumCodes<BaseKind>{{
    {BaseKind::Resin, "resin"},
    {BaseKind::Metal, "metal"},
}};

/// Where resin meets metal: the outer line against the tongue or palate, the inner against the
/// tissue; never one on top of the other.
struct FinishLines {
    std::optional<bool> external{};
    std::optional<bool> internal{};
    std::optional<bool> offset{};
    friend bool operator==(const FinishLines&, const FinishLines&) = default;
};

struct Saddle {
    std::vector<Tooth> teeth{};      ///< the teeth it replaces
    std::optional<BaseKind> base{};  ///< resin over a retention framework, or solid metal
    std::optional<ResinRetention> retention{};
    FinishLines finishLines{};
    std::optional<bool> tissueStop{};

    friend bool operator==(const Saddle&, const Saddle&) = default;
};

}  // namespace domain
