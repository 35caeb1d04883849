/// Variants of events and records: the enum whose words name their alternatives, in their order.
#pragma once

#include <variant>

#include "domain/production/event.h"
#include "domain/workshop/access_entry.h"
#include "domain/workshop/workshop_event.h"

namespace storage {

template <typename Variant>
struct KindsOf {};
template <>
struct KindsOf<domain::Happening> {
    using Kind = domain::EventKind;
};
template <>
struct KindsOf<domain::WorkshopHappening> {
    using Kind = domain::WorkshopEventKind;
};
template <>
struct KindsOf<domain::AccessHappening> {
    using Kind = domain::AccessKind;
};
template <>
struct KindsOf<domain::StageRecord> {
    using Kind = domain::RecordKind;
};
template <typename T>
concept OneOf = requires { typename KindsOf<T>::Kind; };

/// The alternative of a variant at a place known only when it is read.
template <typename Variant, std::size_t kAt = 0>
Variant alternative(std::size_t at) {
    if constexpr (kAt + 1 < std::variant_size_v<Variant>)
        if (at != kAt) return alternative<Variant, kAt + 1>(at);
    return Variant{std::in_place_index<kAt>};
}

template <OneOf Variant>
typename KindsOf<Variant>::Kind kindIn(const Variant& variant) {
    return static_cast<typename KindsOf<Variant>::Kind>(variant.index());
}

}  // namespace storage
