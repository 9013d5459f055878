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
/// Throws InvalidInput for an empty text, an unknown unit, a number that is not finite or that can
/// be read in two ways (`5,5`, `1,000`). Error texts leave the part and the field to the caller.
[[nodiscard]] Quantity parse_quantity(std::string_view text);

/// Reads a text into the unit a field keeps; a bare number is taken to be in that unit already.
/// Throws InvalidInput where the dimension differs (`15 V` for ohms), with `example` as an example
/// of what to write; without one 15 of that unit.
[[nodiscard]] double parse_quantity(std::string_view text, const Unit& kept,
                                    std::string_view example = {});

}  // namespace heatmatch
