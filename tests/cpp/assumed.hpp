#pragma once

#include <algorithm>
#include <string_view>

/// Whether a field is among what was assumed in making something.
template <class Made>
bool assumes(const Made& made, std::string_view field) {
    return std::any_of(made.assumed.begin(), made.assumed.end(),
                       [&](const auto& each) { return each.field == field; });
}
