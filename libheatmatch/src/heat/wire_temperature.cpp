#include "heatmatch/heat/wire_temperature.hpp"

#include "bed_checks.hpp"
#include "heat_input.hpp"
#include "sentences.hpp"
#include "wire_cooling.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include <boost/math/tools/roots.hpp>

namespace heatmatch {

using heat_sentences::say;

namespace {

/// Heat per meter from wire to air, minus absorbed sunlight [W/m].
double heat_lost(const WireGeometry& geometry, const WireCooling& cooling, double surface_c) {
    return heat_to_air(geometry.outer_m, surface_c, cooling.around_c, cooling.wind_m_s) -
           sun_absorbed * cooling.irradiance_w_m2 * geometry.outer_m;
}

/// Conductor temperature above a surface with that heat output [°C].
double conductor_above(const WireGeometry& geometry, double surface_c, double heat_w_m) {
    return surface_c + std::max(0.0, heat_w_m) * geometry.insulation_k_m_per_w;
}

template <class Function>
double bracketed_root(const Function& function, double low, double high) {
    std::uintmax_t steps = 100;
    return boost::math::tools::toms748_solve(function, low, high,
                                             boost::math::tools::eps_tolerance<double>(48), steps)
        .second;
}

ConductorTemperature in_air(const Wire& wire, const WireGeometry& geometry,
                            const WireCooling& cooling, double current_a) {
    const double counted_a = current_a / cooling.current_share;
    const auto surplus = [&](double surface_c) {
        const double lost = heat_lost(geometry, cooling, surface_c);
        return lost - counted_a * counted_a *
                          resistance_ohm_per_m(wire, conductor_above(geometry, surface_c, lost));
    };
    // The first balance above the air temperature: R rises, so a second, unstable one may exist
    // above.
    constexpr double step_c = 2.0;
    constexpr double step_share = 0.15;
    double low = cooling.around_c;
    double high = cooling.around_c;
    while (surplus(high) < 0.0) {
        low = high;
        high += std::max(step_c, step_share * (high - cooling.around_c));
        if (high > hottest_c)
            return {.conductor_c = hottest_c, .surface_c = hottest_c, .runaway = true};
    }
    if (high > low) high = bracketed_root(surplus, low, high);
    const double lost = heat_lost(geometry, cooling, high);
    return {.conductor_c = conductor_above(geometry, high, lost), .surface_c = high};
}

ConductorTemperature in_solid(const Wire& wire, const WireGeometry& geometry,
                              const WireCooling& cooling, double current_a) {
    const double resistance = geometry.insulation_k_m_per_w + *cooling.solid_k_m_per_w;
    // R is linear in T, so the balance is: Tc = bed + c (r0 + r1 Tc).
    const double c = current_a * current_a * resistance;
    const double r0 = resistance_ohm_per_m(wire, 0.0);
    const double r1 = (resistance_ohm_per_m(wire, 100.0) - r0) / 100.0;
    if (c * r1 >= 1.0) return {.conductor_c = hottest_c, .surface_c = hottest_c, .runaway = true};
    const double conductor_c = (cooling.around_c + c * r0) / (1.0 - c * r1);
    const double heat = current_a * current_a * resistance_ohm_per_m(wire, conductor_c);
    return {.conductor_c = conductor_c,
            .surface_c = conductor_c - heat * geometry.insulation_k_m_per_w};
}

/// Above the highest computed temperature the result only states that it is exceeded, and is never
/// below a result at less current or in cooler surroundings.
ConductorTemperature within_reach(const ConductorTemperature& at, double around_c) {
    if (!at.runaway && at.conductor_c <= hottest_c) return at;
    const double beyond_c = std::max(hottest_c, around_c);
    return {.conductor_c = beyond_c, .surface_c = beyond_c, .runaway = true};
}

}  // namespace

std::optional<ConductorTemperature> conductor_temperature(const Wire& wire,
                                                          const Insulation* insulation,
                                                          double current_a,
                                                          const Surroundings& surroundings,
                                                          const BedAround& bed) {
    require_number("current of the wire", "current_a", current_a, unit::ampere,
                   {.low = 0.0, .high = 1e6}, say<"heat.state_amperes">);
    std::vector<Assumption> assumed;
    const WireGeometry geometry = wire_geometry(wire, insulation, assumed);
    const auto cooling = wire_cooling(wire, geometry, surroundings, bed, assumed);
    if (!cooling) return std::nullopt;
    ConductorTemperature result =
        within_reach(cooling->solid_k_m_per_w ? in_solid(wire, geometry, *cooling, current_a)
                                              : in_air(wire, geometry, *cooling, current_a),
                     cooling->around_c);
    result.assumed = std::move(assumed);
    return result;
}

std::optional<double> ampacity_by_balance_a(const Wire& wire, const Insulation* insulation,
                                            double limit_c, const Surroundings& surroundings,
                                            const BedAround& bed) {
    require_number("ampacity of the wire", "limit_c", limit_c, unit::celsius,
                   {.low = -273.15, .high = 1500.0}, say<"heat.state_conductor_limit">);
    std::vector<Assumption> assumed;
    const WireGeometry geometry = wire_geometry(wire, insulation, assumed);
    const auto cooling = wire_cooling(wire, geometry, surroundings, bed, assumed);
    if (!cooling) return std::nullopt;
    if (cooling->around_c >= limit_c) return 0.0;
    double heat = 0.0;
    if (cooling->solid_k_m_per_w) {
        heat = (limit_c - cooling->around_c) /
               (geometry.insulation_k_m_per_w + *cooling->solid_k_m_per_w);
    } else {
        const auto above_limit = [&](double surface_c) {
            const double lost = heat_lost(geometry, *cooling, surface_c);
            return conductor_above(geometry, surface_c, lost) - limit_c;
        };
        heat =
            heat_lost(geometry, *cooling, bracketed_root(above_limit, cooling->around_c, limit_c));
    }
    return cooling->current_share *
           std::sqrt(std::max(0.0, heat) / resistance_ohm_per_m(wire, limit_c));
}

RunLoss run_loss(const Wire& wire, double one_way_m, double current_a, double conductor_c) {
    const double ohm = 2.0 * one_way_m * resistance_ohm_per_m(wire, conductor_c);
    return {.drop_v = current_a * ohm, .heat_w = current_a * current_a * ohm};
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
    // Heat output is proportional to the square of current and to the rise above the air.
    return *wire.ampacity_a *
           std::sqrt((highest_c - ambient_c) / (tabulated_c - *wire.ampacity_ambient_c));
}

}  // namespace heatmatch
