#include "heatmatch/heat/wire_temperature.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include <boost/math/tools/roots.hpp>

#include "heatmatch/base/units.hpp"
#include "heatmatch/heat/air.hpp"

namespace heatmatch {

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double stefan_boltzmann = 5.670374419e-8;
constexpr double emissivity = 0.9;
constexpr double absorptance = 0.9;
constexpr double hottest_c = 1500.0;
constexpr double conduit_current_share = 0.7;
constexpr double dry_sand_low_w_mk = 0.20;
constexpr double sand_around_m = 0.1;

struct Geometry {
    double outer_m = 0.0;
    double insulation_k_m_per_w = 0.0;  //!< thermal resistance of one metre [K m/W]
};

Geometry geometry_of(const Wire& wire, const Insulation* insulation,
                     std::vector<Assumption>& assumed) {
    constexpr double default_wall_mm = 0.8;
    constexpr double default_conductivity = 0.2;
    const std::string title = "wire \"" + wire.id + '"';
    const double conductor_mm = conductor_diameter_mm(wire);
    double outer_mm = wire.outer_diameter_mm.value_or(conductor_mm + 2.0 * default_wall_mm);
    outer_mm = std::max(outer_mm, conductor_mm);
    if (!wire.outer_diameter_mm) {
        assumed.push_back({title, "outer_diameter_mm", format_number(outer_mm, 3) + " mm",
                           "0.8 mm of insulation, from memory"});
    }
    const bool known = insulation != nullptr && insulation->conductivity_w_mk;
    const double conductivity = known ? *insulation->conductivity_w_mk : default_conductivity;
    if (!known) {
        assumed.push_back({title, "insulation conductivity_w_mk", "0.2 W/mK", "from memory"});
    }
    return {.outer_m = outer_mm / 1000.0,
            .insulation_k_m_per_w = std::log(outer_mm / conductor_mm) / (2.0 * pi * conductivity)};
}

/// Heat a metre of wire gives to still air, less what the sun puts in [W/m].
double heat_lost(double outer_m, double surface_c, double air_c, double irradiance_w_m2) {
    const double surface_k = surface_c + zero_celsius_k;
    const double air_k = air_c + zero_celsius_k;
    const double h = free_convection_cylinder(outer_m, surface_k, air_k);
    const double radiation = emissivity * stefan_boltzmann *
                             (surface_k * surface_k + air_k * air_k) * (surface_k + air_k) *
                             (surface_k - air_k);
    return pi * outer_m * (h * (surface_k - air_k) + radiation) -
           absorptance * irradiance_w_m2 * outer_m;
}

ConductorTemperature in_air(const Wire& wire, const Geometry& geometry, double current_a,
                            double air_c, double irradiance_w_m2) {
    const auto conductor_at = [&](double surface_c) {
        return surface_c +
               std::max(0.0, heat_lost(geometry.outer_m, surface_c, air_c, irradiance_w_m2)) *
                   geometry.insulation_k_m_per_w;
    };
    const auto surplus = [&](double surface_c) {
        return heat_lost(geometry.outer_m, surface_c, air_c, irradiance_w_m2) -
               current_a * current_a * resistance_ohm_per_m(wire, conductor_at(surface_c));
    };
    // The first balance above the air: with R rising, a second, unstable one may lie beyond it.
    constexpr double step_c = 2.0;
    double low = air_c;
    double high = air_c;
    while (surplus(high) < 0.0) {
        low = high;
        high += step_c;
        if (high > hottest_c)
            return {.conductor_c = hottest_c, .surface_c = hottest_c, .runaway = true};
    }
    if (high > low) {
        std::uintmax_t steps = 100;
        high = boost::math::tools::toms748_solve(
                   surplus, low, high, boost::math::tools::eps_tolerance<double>(48), steps)
                   .second;
    }
    return {.conductor_c = conductor_at(high), .surface_c = high};
}

ConductorTemperature in_bed(const Wire& wire, const Geometry& geometry, double current_a,
                            double bed_c) {
    const double sand =
        std::log(sand_around_m / (0.5 * geometry.outer_m)) / (2.0 * pi * dry_sand_low_w_mk);
    const double resistance = geometry.insulation_k_m_per_w + std::max(0.0, sand);
    // R is linear in T, so the balance is: Tc = bed + c (r0 + r1 Tc).
    const double c = current_a * current_a * resistance;
    const double r0 = resistance_ohm_per_m(wire, 0.0);
    const double r1 = (resistance_ohm_per_m(wire, 100.0) - r0) / 100.0;
    if (c * r1 >= 1.0) return {.conductor_c = hottest_c, .surface_c = hottest_c, .runaway = true};
    const double conductor_c = (bed_c + c * r0) / (1.0 - c * r1);
    const double heat = current_a * current_a * resistance_ohm_per_m(wire, conductor_c);
    return {.conductor_c = conductor_c,
            .surface_c = conductor_c - heat * geometry.insulation_k_m_per_w};
}

}  // namespace

std::optional<ConductorTemperature> conductor_temperature(const Wire& wire,
                                                          const Insulation* insulation,
                                                          double current_a,
                                                          const Surroundings& surroundings) {
    if (!surroundings.air_c || surroundings.kind == "cavity") return std::nullopt;
    std::vector<Assumption> assumed;
    const Geometry geometry = geometry_of(wire, insulation, assumed);
    const double air_c = *surroundings.air_c;
    ConductorTemperature result;
    if (surroundings.kind == "bed") {
        assumed.push_back({"wire \"" + wire.id + '"', "conductivity of the bed", "0.2 W/mK",
                           "low end of dry sand"});
        result = in_bed(wire, geometry, current_a, air_c);
    } else if (surroundings.kind == "conduit") {
        assumed.push_back({"wire \"" + wire.id + '"', "heat given off in conduit",
                           "that of free air at current/0.7", "estimate"});
        result = in_air(wire, geometry, current_a / conduit_current_share, air_c, 0.0);
    } else {
        const bool sunlit = surroundings.kind == "sunlit";
        const double sun = sunlit ? surroundings.irradiance_w_m2.value_or(1000.0) : 0.0;
        result = in_air(wire, geometry, current_a, air_c, sun);
    }
    result.assumed = std::move(assumed);
    return result;
}

double ampacity_correction(double conductor_c, double ambient_c, double table_ambient_c) {
    if (ambient_c >= conductor_c) return 0.0;
    return std::sqrt((conductor_c - ambient_c) / (conductor_c - table_ambient_c));
}

std::optional<double> corrected_ampacity_a(const Wire& wire, double ambient_c,
                                           std::optional<double> limit_c) {
    if (!wire.ampacity_a) return std::nullopt;
    const double tabulated_c = *wire.ampacity_conductor_c;
    const double highest_c = std::min(tabulated_c, limit_c.value_or(tabulated_c));
    if (ambient_c >= highest_c) return 0.0;
    // Heat given off goes with the square of current and with the rise over the air.
    return *wire.ampacity_a *
           std::sqrt((highest_c - ambient_c) / (tabulated_c - *wire.ampacity_ambient_c));
}

}  // namespace heatmatch
