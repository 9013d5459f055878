#pragma once

#include <string_view>

namespace heatmatch {

/// Kind of quantity of a number. Two units convert into each other only within one dimension.
enum class Dimension {
    ratio,
    count,
    voltage,
    current,
    resistance,
    power,
    energy,
    temperature,
    temperature_difference,
    length,
    area,
    volume,
    density,
    conductivity,
    heat_transfer,
    heat_capacity,
    thermal_mass,
    irradiance,
    irradiation,
    time,
    angle,
    money,
    relative_per_kelvin,
    voltage_per_kelvin,
    current_per_kelvin,
    power_per_kelvin,
    power_per_length,
    resistance_per_length,
    speed,
    air_changes
};

/// Name of a dimension for error texts, for example `a resistance`.
[[nodiscard]] std::string_view describe(Dimension dimension);

}  // namespace heatmatch
