#pragma once

#include "own_parts.hpp"

#include <optional>
#include <string>
#include <utility>

/// A part of the starter under another id, as read from its nameplate.
template <class Part>
Part part_of_yard(Part part, std::string id) {
    part.id = std::move(id);
    part.provenance = by_label;
    part.notes.clear();
    return part;
}

/// States a fact that is not stated yet.
template <class T>
void state_fact(std::optional<T>& fact, T value) {
    if (!fact) fact = value;
}
