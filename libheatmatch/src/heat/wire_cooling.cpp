#include "wire_cooling.hpp"

#include "base/sentences.hpp"
#include "heat_input.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/heat/air.hpp"
#include "heatmatch/parts/ampacity_correction.hpp"

namespace heatmatch {

using base_sentences::from_memory;
using heat_sentences::say;

namespace {

constexpr double grouped_share = 0.7;

std::string title_of(const Wire& wire) {
    return "wire \"" + wire.id + '"';
}

/// Current share of each of so many wires laid together, relative to a single wire in free air.
double left_together(int loaded) {
    return grouped_share * *grouping_factor(WiringCode::nec, loaded);
}

/// A cavity counts as filled with mineral wool of 0.04 W/mK out to 0.1 m, without convection and
/// radiation: about half of the free-air current, as wiring rules give for a cable in thermal
/// insulation. @cite bs-7671-523-9
constexpr double cavity_fill_w_mk = lagging_w_mk;
constexpr double around_m = 0.1;

void check_surroundings(double around_c, const Surroundings& surroundings, const BedAround& bed) {
    const auto require = [](const char* field, double value, const Unit& unit, const Range& range,
                            Remedy remedy) {
        require_number("around the wire", field, value, unit, range, remedy);
    };
    require("air_c", around_c, unit::celsius, {.low = -100.0, .high = 1500.0},
            say<"heat.state_celsius">);
    require("irradiance_w_m2", surroundings.irradiance_w_m2.value_or(0.0), unit::watt_per_m2,
            {.low = 0.0, .high = 1e4},
            [] { return say<"heat.full_sun_has">(with<"sun">(1000.0, unit::watt_per_m2)); });
    require("wind_m_s", surroundings.wind_m_s.value_or(0.0), unit::metre_per_second,
            {.low = 0.0, .high = 100.0},
            [] { return say<"heat.still_air_has">(with<"wind">(0.0, unit::metre_per_second)); });
    require("conductivity_w_mk", bed.conductivity_w_mk.value_or(dry_sand_low_w_mk),
            unit::watt_per_m_k, {.low = 1e-6, .high = 1e4}, dry_sand_has);
}

}  // namespace

WireGeometry wire_geometry(const Wire& wire, const Insulation* insulation,
                           std::vector<Assumption>& assumed) {
    constexpr auto used = std::to_array<std::string_view>(
        {"area_mm2", "strands", "resistance_ohm_per_km", "outer_diameter_mm"});
    require_fields(wire_fields(), &wire, title_of(wire), used);
    if (insulation != nullptr && insulation->conductivity_w_mk) {
        require_number(
            "insulation \"" + insulation->id + '"', "conductivity_w_mk",
            *insulation->conductivity_w_mk, unit::watt_per_m_k, {.low = 1e-6, .high = 1e4},
            [] { return say<"heat.plastics_have">(with<"low">(0.1), with<"high">(0.4)); });
    }
    constexpr double default_wall_mm = 0.8;
    constexpr double default_conductivity = 0.2;
    const double conductor_mm = conductor_diameter_mm(wire);
    double outer_mm = wire.outer_diameter_mm.value_or(conductor_mm + 2.0 * default_wall_mm);
    outer_mm = std::max(outer_mm, conductor_mm);
    if (!wire.outer_diameter_mm) {
        assumed.push_back(
            {title_of(wire), "outer_diameter_mm", sentence_of(Amount{outer_mm, unit::millimetre}),
             say<"heat.insulation_wall">(with<"wall">(default_wall_mm, unit::millimetre))});
    }
    const bool known = insulation != nullptr && insulation->conductivity_w_mk;
    const double conductivity = known ? *insulation->conductivity_w_mk : default_conductivity;
    if (!known) {
        assumed.push_back({title_of(wire), "insulation conductivity_w_mk",
                           sentence_of(Amount{default_conductivity, unit::watt_per_m_k}),
                           from_memory()});
    }
    return {.outer_m = outer_mm / 1000.0,
            .insulation_k_m_per_w = std::log(outer_mm / conductor_mm) / (2.0 * pi * conductivity)};
}

double shell_k_m_per_w(double outer_m, double conductivity_w_mk) {
    return std::max(0.0, std::log(around_m / (0.5 * outer_m))) / (2.0 * pi * conductivity_w_mk);
}

std::optional<WireCooling> wire_cooling(const Wire& wire, const WireGeometry& geometry,
                                        const Surroundings& surroundings, const BedAround& bed,
                                        std::vector<Assumption>& assumed) {
    const bool in_bed = surroundings.kind == SurroundingsKind::bed;
    const std::optional<double> around =
        in_bed && !surroundings.air_c ? bed.temperature_c : surroundings.air_c;
    if (!around) return std::nullopt;
    check_surroundings(*around, surroundings, bed);
    WireCooling cooling{.around_c = *around};
    const int loaded = std::max(1, surroundings.loaded_conductors.value_or(1));
    if (in_bed || surroundings.kind == SurroundingsKind::cavity) {
        const double conductivity =
            in_bed ? bed.conductivity_w_mk.value_or(dry_sand_low_w_mk) : cavity_fill_w_mk;
        // All heat of a bundle is assumed to pass the shell around one of its wires.
        cooling.solid_k_m_per_w = loaded * shell_k_m_per_w(geometry.outer_m, conductivity);
        if (!in_bed) {
            assumed.push_back({title_of(wire), "fill of the cavity",
                               say<"heat.cavity_fill">(
                                   with<"thick">(around_m, unit::metre),
                                   with<"conductivity">(cavity_fill_w_mk, unit::watt_per_m_k)),
                               say<"heat.hot_side">()});
        } else if (!bed.conductivity_w_mk) {
            assumed.push_back({title_of(wire), "conductivity of the bed",
                               sentence_of(Amount{dry_sand_low_w_mk, unit::watt_per_m_k, 6}),
                               say<"heat.low_dry_sand">()});
        }
        return cooling;
    }
    const bool buried = surroundings.kind == SurroundingsKind::buried;
    if (buried || surroundings.kind == SurroundingsKind::conduit) {
        cooling.current_share = left_together(loaded);
        assumed.push_back(
            {title_of(wire), buried ? "heat given off in the ground" : "heat given off in conduit",
             say<"heat.less_current">(with<"share">(cooling.current_share, unit::none, 6)),
             say<"heat.estimate">()});
        return cooling;
    }
    if (loaded > 1) {
        cooling.current_share = left_together(loaded);
        assumed.push_back(
            {title_of(wire), "heat given off in a bundle",
             say<"heat.less_current">(with<"share">(cooling.current_share, unit::none, 6)),
             say<"heat.estimate">()});
    }
    if (surroundings.kind == SurroundingsKind::sunlit) {
        cooling.irradiance_w_m2 = surroundings.irradiance_w_m2.value_or(1000.0);
    }
    cooling.wind_m_s = surroundings.wind_m_s.value_or(0.0);
    return cooling;
}

double heat_to_air(double outer_m, double surface_c, double air_c, double wind_m_s,
                   double emissivity) {
    const double surface_k = surface_c + zero_celsius_k;
    const double air_k = air_c + zero_celsius_k;
    const double h = convection_cylinder(outer_m, surface_k, air_k, wind_m_s);
    const double radiation = emissivity * stefan_boltzmann *
                             (surface_k * surface_k + air_k * air_k) * (surface_k + air_k);
    return pi * outer_m * (h + radiation) * (surface_k - air_k);
}

}  // namespace heatmatch
