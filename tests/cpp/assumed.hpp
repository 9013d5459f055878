#pragma once

#include <algorithm>
#include <string_view>

/// Whether a field is among the assumptions of a result.
template <class Made>
bool assumes(const Made& made, std::string_view field) {
    return std::any_of(made.assumed.begin(), made.assumed.end(),
                       [&](const auto& each) { return each.field == field; });
}
