#pragma once

#include <array>
#include <span>
#include <string>
#include <string_view>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/dimension.hpp"

namespace heatmatch {

/// The two unit sets of every printed result. Records and JSON use the unit that the field name
/// states.
enum class UnitSystem { si, us };
inline constexpr auto unit_system_words = std::to_array<std::string_view>({"si", "us"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(UnitSystem) {
    return unit_system_words;
}

/// A unit of measure: `si = value * factor + offset`.
struct Unit {
    std::string_view symbol{};  //!< as printed after a number
    Dimension dimension = Dimension::ratio;
    double factor = 1.0;
    double offset = 0.0;

    friend constexpr bool operator==(const Unit&, const Unit&) = default;
};

/// Units of the numbers in records.
namespace unit {
inline constexpr Unit none{"", Dimension::ratio};
inline constexpr Unit percent{"%", Dimension::ratio, 0.01};
inline constexpr Unit count{"", Dimension::count};
inline constexpr Unit volt{"V", Dimension::voltage};
inline constexpr Unit ampere{"A", Dimension::current};
inline constexpr Unit ohm{"ohm", Dimension::resistance};
inline constexpr Unit megohm{"Mohm", Dimension::resistance, 1e6};
inline constexpr Unit watt{"W", Dimension::power};
inline constexpr Unit kilowatt_hour{"kWh", Dimension::energy, 3.6e6};
inline constexpr Unit kilowatt_hour_per_kelvin{"kWh/K", Dimension::thermal_mass, 3.6e6};
inline constexpr Unit celsius{"°C", Dimension::temperature, 1.0, 273.15};
inline constexpr Unit kelvin{"K", Dimension::temperature_difference};
inline constexpr Unit millimetre{"mm", Dimension::length, 1e-3};
inline constexpr Unit centimetre{"cm", Dimension::length, 1e-2};
inline constexpr Unit metre{"m", Dimension::length};
inline constexpr Unit square_millimetre{"mm2", Dimension::area, 1e-6};
inline constexpr Unit square_metre{"m2", Dimension::area};
inline constexpr Unit cubic_metre{"m3", Dimension::volume};
inline constexpr Unit kilogram_per_m3{"kg/m3", Dimension::density};
inline constexpr Unit watt_per_m_k{"W/mK", Dimension::conductivity};
inline constexpr Unit watt_per_m2_k{"W/m2K", Dimension::heat_transfer};
inline constexpr Unit joule_per_kg_k{"J/kgK", Dimension::heat_capacity};
inline constexpr Unit watt_per_m2{"W/m2", Dimension::irradiance};
inline constexpr Unit kilowatt_hour_per_m2{"kWh/m2", Dimension::irradiation, 3.6e6};
inline constexpr Unit hour{"h", Dimension::time, 3600.0};
inline constexpr Unit year{"years", Dimension::time, 31557600.0};
inline constexpr Unit degree{"deg", Dimension::angle};
inline constexpr Unit money{"", Dimension::money};
inline constexpr Unit percent_per_kelvin{"%/K", Dimension::relative_per_kelvin, 0.01};
inline constexpr Unit volt_per_kelvin{"V/K", Dimension::voltage_per_kelvin};
inline constexpr Unit ampere_per_kelvin{"A/K", Dimension::current_per_kelvin};
inline constexpr Unit watt_per_kelvin{"W/K", Dimension::power_per_kelvin};
inline constexpr Unit watt_per_cm{"W/cm", Dimension::power_per_length, 1e2};
inline constexpr Unit watt_per_m{"W/m", Dimension::power_per_length};
inline constexpr Unit ohm_per_km{"ohm/km", Dimension::resistance_per_length, 1e-3};
inline constexpr Unit metre_per_second{"m/s", Dimension::speed};
inline constexpr Unit air_changes_per_hour{"1/h", Dimension::air_changes};
}  // namespace unit

inline constexpr double zero_celsius_k = 273.15;  //!< 0 °C [K]

/// Same quantity in another unit of the same dimension; rounded to 12 significant digits, so that
/// a value typed in inches is a short decimal in millimetres.
[[nodiscard]] double convert(double value, const Unit& from, const Unit& to);

/// Rounds to the given number of significant decimal digits.
[[nodiscard]] double round_significant(double value, int digits);

/// The unit of a text such as `°F`, `ohms`, `in` or `mV/K`; null if there is none.
[[nodiscard]] const Unit* find_unit(std::string_view spelling);

/// The display unit of a quantity kept in `kept`, in that unit set.
[[nodiscard]] Unit display_unit(const Unit& kept, UnitSystem system);

/// Shortest decimal text with at most the given significant digits, without trailing zeros.
[[nodiscard]] std::string format_number(double value, int digits = 6);

/// The same with a fixed number of decimals; a value that rounds to zero has no sign.
[[nodiscard]] std::string format_fixed(double value, int decimals);

/// Number and unit in the chosen unit system, for example `392 °F`.
[[nodiscard]] std::string format_quantity(double value, const Unit& kept, UnitSystem system,
                                          int digits = 4);

/// The same with twelve digits, in SI units: a value as it was given.
[[nodiscard]] std::string exact_text(double value, const Unit& kept);

}  // namespace heatmatch
