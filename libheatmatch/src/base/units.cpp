#include "heatmatch/base/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>

#include "heatmatch/base/awg.hpp"

namespace heatmatch {

namespace {

struct Spelling {
    std::string_view text;
    Unit unit;
};

constexpr double foot_m = 0.3048;
constexpr double inch_m = 0.0254;
constexpr double pound_kg = 0.45359237;
constexpr double btu_j = 1055.05585262;  // International Table Btu
constexpr double rankine_k = 5.0 / 9.0;  // one degree Fahrenheit of difference

constexpr Unit fahrenheit{"°F", Dimension::temperature, rankine_k, 459.67 * rankine_k};
constexpr Unit foot{"ft", Dimension::length, foot_m};
constexpr Unit inch{"in", Dimension::length, inch_m};
constexpr Unit square_foot{"ft2", Dimension::area, foot_m* foot_m};
constexpr Unit cubic_foot{"ft3", Dimension::volume, foot_m* foot_m* foot_m};
constexpr Unit pound_per_ft3{"lb/ft3", Dimension::density, pound_kg / (foot_m * foot_m * foot_m)};
constexpr Unit btu_per_h_ft_f{"Btu/h·ft·°F", Dimension::conductivity,
                              btu_j / 3600.0 / foot_m / rankine_k};
constexpr Unit btu_per_h_ft2_f{"Btu/h·ft2·°F", Dimension::heat_transfer,
                               btu_j / 3600.0 / (foot_m * foot_m) / rankine_k};
constexpr Unit btu_per_lb_f{"Btu/lb·°F", Dimension::heat_capacity, btu_j / pound_kg / rankine_k};
constexpr Unit fahrenheit_difference{"°F", Dimension::temperature_difference, rankine_k};
constexpr Unit watt_per_in{"W/in", Dimension::power_per_length, 1.0 / inch_m};
constexpr Unit watt_per_ft{"W/ft", Dimension::power_per_length, 1.0 / foot_m};
constexpr Unit mile_per_hour{"mph", Dimension::speed, 5280.0 * foot_m / 3600.0};
constexpr Unit ohm_per_1000_ft{"ohm/kft", Dimension::resistance_per_length, 1e-3 / foot_m};

// Spellings on labels and datasheets and by users. The first of equal units is the printed one.
constexpr auto spellings = std::to_array<Spelling>({
    {"V", unit::volt},
    {"v", unit::volt},
    {"volt", unit::volt},
    {"volts", unit::volt},
    {"VDC", unit::volt},

    {"mV", {"mV", Dimension::voltage, 1e-3}},
    {"kV", {"kV", Dimension::voltage, 1e3}},
    {"A", unit::ampere},
    {"amp", unit::ampere},
    {"amps", unit::ampere},
    {"ampere", unit::ampere},
    {"amperes", unit::ampere},

    {"mA", {"mA", Dimension::current, 1e-3}},
    {"ohm", unit::ohm},
    {"ohms", unit::ohm},
    {"Ohm", unit::ohm},
    {"\u03a9", unit::ohm},  // Greek capital omega
    {"\u2126", unit::ohm},  // ohm sign
    {"mohm", {"mohm", Dimension::resistance, 1e-3}},
    {"mΩ", {"mohm", Dimension::resistance, 1e-3}},
    {"kohm", {"kohm", Dimension::resistance, 1e3}},
    {"kΩ", {"kohm", Dimension::resistance, 1e3}},
    {"Mohm", unit::megohm},
    {"MΩ", unit::megohm},
    {"W", unit::watt},
    {"w", unit::watt},
    {"watt", unit::watt},
    {"watts", unit::watt},
    {"mW", {"mW", Dimension::power, 1e-3}},
    {"kW", {"kW", Dimension::power, 1e3}},
    {"Btu/h", {"Btu/h", Dimension::power, btu_j / 3600.0}},
    {"BTU/h", {"Btu/h", Dimension::power, btu_j / 3600.0}},
    {"kWh", unit::kilowatt_hour},
    {"kWh/K", unit::kilowatt_hour_per_kelvin},
    {"Wh/K", {"Wh/K", Dimension::thermal_mass, 3600.0}},
    {"Wh", {"Wh", Dimension::energy, 3600.0}},
    {"°C", unit::celsius},
    {"C", unit::celsius},
    {"degC", unit::celsius},
    {"°F", fahrenheit},
    {"F", fahrenheit},
    {"degF", fahrenheit},
    {"K", unit::kelvin},
    {"mm", unit::millimetre},
    {"cm", unit::centimetre},
    {"m", unit::metre},
    {"km", {"km", Dimension::length, 1e3}},
    {"in", inch},
    {"inch", inch},
    {"inches", inch},
    {"\"", inch},
    {"ft", foot},
    {"feet", foot},
    {"mm2", unit::square_millimetre},
    {"mm^2", unit::square_millimetre},

    {"mm²", unit::square_millimetre},
    {"cm2", {"cm2", Dimension::area, 1e-4}},
    {"cm²", {"cm2", Dimension::area, 1e-4}},
    {"m2", unit::square_metre},
    {"m^2", unit::square_metre},

    {"m²", unit::square_metre},
    {"in2", {"in2", Dimension::area, inch_m* inch_m}},
    {"ft2", square_foot},
    {"ft²", square_foot},
    {"m3", unit::cubic_metre},
    {"m^3", unit::cubic_metre},

    {"m³", unit::cubic_metre},
    {"L", {"L", Dimension::volume, 1e-3}},
    {"l", {"L", Dimension::volume, 1e-3}},
    {"ft3", cubic_foot},
    {"ft³", cubic_foot},
    {"gal", {"gal", Dimension::volume, 3.785411784e-3}},
    {"kg/m3", unit::kilogram_per_m3},
    {"kg/m³", unit::kilogram_per_m3},
    {"lb/ft3", pound_per_ft3},
    {"W/mK", unit::watt_per_m_k},
    {"W/(m K)", unit::watt_per_m_k},
    {"Btu/h·ft·°F", btu_per_h_ft_f},
    {"Btu/(h ft F)", btu_per_h_ft_f},
    {"W/m2K", unit::watt_per_m2_k},
    {"W/(m2 K)", unit::watt_per_m2_k},
    {"W/m²K", unit::watt_per_m2_k},
    {"Btu/h·ft2·°F", btu_per_h_ft2_f},
    {"Btu/(h ft2 F)", btu_per_h_ft2_f},
    {"J/kgK", unit::joule_per_kg_k},
    {"J/(kg K)", unit::joule_per_kg_k},
    {"Btu/lb·°F", btu_per_lb_f},
    {"W/m2", unit::watt_per_m2},
    {"W/m²", unit::watt_per_m2},
    {"kWh/m2", unit::kilowatt_hour_per_m2},
    {"kWh/m²", unit::kilowatt_hour_per_m2},
    {"kW/m2", {"kW/m2", Dimension::irradiance, 1e3}},
    {"h", unit::hour},
    {"min", {"min", Dimension::time, 60.0}},
    {"years", unit::year},
    {"year", unit::year},
    {"deg", unit::degree},
    {"°", unit::degree},
    {"%", unit::percent},
    {"%/K", unit::percent_per_kelvin},
    {"%/°C", unit::percent_per_kelvin},
    {"%/C", unit::percent_per_kelvin},
    {"1/K", {"1/K", Dimension::relative_per_kelvin}},
    {"V/K", unit::volt_per_kelvin},
    {"V/°C", unit::volt_per_kelvin},
    {"mV/K", {"mV/K", Dimension::voltage_per_kelvin, 1e-3}},
    {"mV/°C", {"mV/K", Dimension::voltage_per_kelvin, 1e-3}},
    {"A/K", unit::ampere_per_kelvin},
    {"A/°C", unit::ampere_per_kelvin},
    {"mA/K", {"mA/K", Dimension::current_per_kelvin, 1e-3}},
    {"mA/°C", {"mA/K", Dimension::current_per_kelvin, 1e-3}},
    {"W/K", unit::watt_per_kelvin},
    {"W/°C", unit::watt_per_kelvin},
    {"W/cm", unit::watt_per_cm},
    {"W/m", unit::watt_per_m},
    {"W/in", watt_per_in},
    {"W/ft", watt_per_ft},
    {"ohm/km", unit::ohm_per_km},
    {"Ω/km", unit::ohm_per_km},
    {"ohm/m", {"ohm/m", Dimension::resistance_per_length}},
    {"ohm/kft", ohm_per_1000_ft},
    {"m/s", unit::metre_per_second},
    {"km/h", {"km/h", Dimension::speed, 1.0 / 3.6}},
    {"mph", mile_per_hour},
    {"1/h", unit::air_changes_per_hour},
});

/// Whether two words of three letters or more differ in case only, such as OHM and Volts. In a
/// symbol the case distinguishes milli from mega.
bool same_word(std::string_view known, std::string_view written) {
    const auto lower = [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    };
    const auto alike = [lower](char a, char b) {
        return lower(a) == lower(b) && lower(a) >= 'a' && lower(a) <= 'z';
    };
    return known.size() >= 3 &&
           std::equal(known.begin(), known.end(), written.begin(), written.end(), alike);
}

}  // namespace

double round_significant(double value, int digits) {
    if (!std::isfinite(value) || value == 0.0) return value;
    std::array<char, 64> text{};
    std::snprintf(text.data(), text.size(), "%.*e", digits - 1, value);
    return std::strtod(text.data(), nullptr);
}

double convert(double value, const Unit& from, const Unit& to) {
    if (from == to) return value;
    const double si = value * from.factor + from.offset;
    const double above = si - to.offset;
    // Result at 32 °F: exactly 0 °C, without the rounding of a difference of large numbers.
    const bool cancelled = std::fabs(above) < 1e-12 * std::fabs(to.offset);
    return cancelled ? 0.0 : round_significant(above / to.factor, 12);
}

const Unit* find_unit(std::string_view spelling) {
    const Unit* word = nullptr;
    for (const Spelling& known : spellings) {
        if (known.text == spelling) return &known.unit;
        if (!same_word(known.text, spelling)) continue;
        // MOHM is ambiguous: a million ohms or a thousandth of one.
        if (word != nullptr && !(*word == known.unit)) return nullptr;
        word = &known.unit;
    }
    return word;
}

Unit display_unit(const Unit& kept, UnitSystem system) {
    if (system == UnitSystem::si) return kept;
    switch (kept.dimension) {
        case Dimension::temperature:
            return fahrenheit;
        case Dimension::temperature_difference:
            return fahrenheit_difference;
        case Dimension::length:
            return kept.factor < 1.0 ? inch : foot;
        case Dimension::area:
            return kept == unit::square_metre ? square_foot : kept;
        case Dimension::volume:
            return cubic_foot;
        case Dimension::density:
            return pound_per_ft3;
        case Dimension::conductivity:
            return btu_per_h_ft_f;
        case Dimension::heat_transfer:
            return btu_per_h_ft2_f;
        case Dimension::heat_capacity:
            return btu_per_lb_f;
        case Dimension::power_per_length:
            return kept == unit::watt_per_cm ? watt_per_in : watt_per_ft;
        case Dimension::resistance_per_length:
            return ohm_per_1000_ft;
        case Dimension::speed:
            return mile_per_hour;
        default:
            return kept;
    }
}

std::string format_number(double value, int digits) {
    if (std::isnan(value)) return "nan";
    if (std::isinf(value)) return value > 0 ? "infinite" : "-infinite";
    std::array<char, 64> text{};
    std::snprintf(text.data(), text.size(), "%.*g", digits, value);
    std::string result = text.data();
    const double magnitude = std::fabs(value);
    if (result.find('e') != std::string::npos && magnitude < 1e7 && magnitude >= 1e-4) {
        std::snprintf(text.data(), text.size(), "%.0f", value);
        result = text.data();
    }
    return result == "-0" ? "0" : result;
}

std::string format_fixed(double value, int decimals) {
    if (!std::isfinite(value)) return format_number(value);
    std::array<char, 400> text{};
    std::snprintf(text.data(), text.size(), "%.*f", decimals, value);
    const std::string result = text.data();
    const bool nothing = result.find_first_not_of("-0.") == std::string::npos;
    return nothing && result.front() == '-' ? result.substr(1) : result;
}

std::string format_quantity(double value, const Unit& kept, UnitSystem system, int digits) {
    if (system == UnitSystem::us && kept == unit::square_millimetre) return awg_label(value);
    const Unit shown = display_unit(kept, system);
    std::string text = format_number(convert(value, kept, shown), digits);
    if (shown.symbol.empty()) return text;
    if (shown.symbol != "%") text += ' ';
    return text + std::string(shown.symbol);
}

std::string exact_text(double value, const Unit& kept) {
    return format_quantity(value, kept, UnitSystem::si, 12);
}

}  // namespace heatmatch
