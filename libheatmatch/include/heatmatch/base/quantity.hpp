#pragma once

#include <string_view>

#include "heatmatch/base/units.hpp"

namespace heatmatch {

/// A number with the unit it was written in; the unit is `unit::none` where none was written.
struct Quantity {
    double value = 0.0;
    Unit unit{};
    bool has_unit = false;
};

/// Reads a number with an optional unit: `15`, `11 in`, `5/16 in`, `14 AWG`, `392 °F`, `1.5 kW`.
/// Throws InvalidInput for an empty text, an unknown unit, a number that is not finite, or one that
/// is ambiguous (`5,5`, `1,000`). Part and field of the error are set by the caller.
[[nodiscard]] Quantity parse_quantity(std::string_view text);

/// Reads a text into the unit of a field; a bare number is in that unit. Throws InvalidInput where
/// the dimension differs (`15 V` for a resistance), with `example` as the example of valid input;
/// the default example is 15 of that unit.
[[nodiscard]] double parse_quantity(std::string_view text, const Unit& kept,
                                    std::string_view example = {});

}  // namespace heatmatch
