#include "heatmatch/heat/store_shell.hpp"

#include "base/sentences.hpp"
#include "heat_input.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/heat/air.hpp"

namespace heatmatch {

namespace {

constexpr double default_emissivity = 0.9;
constexpr double default_top_u = 3.0;
constexpr double default_bottom_u = 4.0;

double radiation_w_m2k(double emissivity, double surface_k, double air_k) {
    return emissivity * stefan_boltzmann * (surface_k * surface_k + air_k * air_k) *
           (surface_k + air_k);
}

/// Surface temperature of insulation with `u`, air film included, computed from outside.
double insulated_surface_k(double u, double emissivity, double edge_k, double air_k) {
    // Still air and radiation near room temperature, from memory: 8 for paint, 4 for bright foil.
    const double to_air_w_m2k = 3.0 + 5.0 * emissivity / default_emissivity;
    return air_k + (edge_k - air_k) * std::min(1.0, u / to_air_w_m2k);
}

/// Conductivity of the metal of a vessel [W/mK]; 0 for materials that do not spread heat. From
/// memory.
double metal_w_mk(StoreMaterial material) {
    switch (material) {
        case StoreMaterial::steel:
        case StoreMaterial::galvanised_steel:
            return 45.0;
        case StoreMaterial::stainless_steel:
            return 15.0;
        case StoreMaterial::aluminium:
            return 150.0;
        case StoreMaterial::copper:
            return 350.0;
        default:
            return 0.0;
    }
}

void stand(StoreShell& shell, StandsOn on) {
    constexpr double concrete_w_m2k = 6.0;
    constexpr double legs_w_m2k = 4.0;
    constexpr double under_legs = 0.7;
    if (on == StandsOn::concrete) shell.stands_u_w_m2k = concrete_w_m2k;
    if (on != StandsOn::metal_legs) return;
    shell.stands_u_w_m2k = legs_w_m2k;
    shell.stands_share = under_legs;
}

}  // namespace

double free_convection_plate(double height_m, double surface_k, double air_k) {
    constexpr double gravity = 9.80665;
    constexpr double lowest_k = 0.01;
    const double difference_k = std::max(std::fabs(surface_k - air_k), lowest_k);
    const double film_k = 0.5 * (surface_k + air_k);
    const Air air = air_at(film_k);
    const double rayleigh = gravity / film_k * difference_k * height_m * height_m * height_m *
                            air.prandtl /
                            (air.kinematic_viscosity_m2_s * air.kinematic_viscosity_m2_s);
    static const double shape = std::pow(1.0 + std::pow(0.492 / 0.70, 9.0 / 16.0), 8.0 / 27.0);
    const double root = 0.825 + 0.387 * std::cbrt(std::sqrt(rayleigh)) / shape;
    return root * root * air.conductivity_w_mk / height_m;
}

double StoreShell::side_w_m2k(double wall_k, double air_k) const {
    if (side_u_w_m2k > 0.0) return side_u_w_m2k;
    return side_factor * (free_convection_plate(height_m, wall_k, air_k) +
                          radiation_w_m2k(wall_emissivity, wall_k, air_k));
}

double StoreShell::loss_w_k(double wall_k, double air_k) const {
    return side_w_m2k(wall_k, air_k) * side_m2 + top_u_w_m2k * top_m2 + bottom_u_w_m2k * bottom_m2;
}

double StoreShell::side_surface_k(double edge_k, double air_k) const {
    return side_u_w_m2k > 0.0 ? insulated_surface_k(side_u_w_m2k, wall_emissivity, edge_k, air_k)
                              : edge_k;
}

// The material of the lid is not stated: paint is assumed.
double StoreShell::lid_surface_k(double edge_k, double air_k) const {
    return insulated_surface_k(top_u_w_m2k, default_emissivity, edge_k, air_k);
}

double StoreShell::floor_u_w_m2k() const {
    return std::min(bottom_u_w_m2k, stands_u_w_m2k);
}

double StoreShell::floor_surface_k(double edge_k, double air_k) const {
    return air_k + (edge_k - air_k) * stands_share * floor_u_w_m2k() / stands_u_w_m2k;
}

std::vector<std::string> missing_sizes(const Store& store) {
    std::vector<std::string> missing;
    const auto need = [&missing](const std::optional<double>& size, const char* name) {
        if (!size) missing.emplace_back(name);
    };
    if (store.shape == StoreShape::box) {
        need(store.width_m, "width_m");
        need(store.depth_m, "depth_m");
    } else {
        need(store.diameter_m, "diameter_m");
    }
    need(store.height_m, "height_m");
    return missing;
}

StoreShell store_shell(const Store& store) {
    const std::vector<std::string> missing = missing_sizes(store);
    if (!missing.empty()) {
        const Field& field = *find_field(store_fields(), missing.front());
        throw InvalidInput({.part = "store",
                            .field = missing.front(),
                            .value = "not given",
                            .allowed = field.range.text(field.unit),
                            .remedy = heat_sentences::say<"heat.measure_vessel">()});
    }
    check_store_sizes(store);
    StoreShell shell;
    shell.height_m = *store.height_m;
    double around = 0.0;
    if (store.shape == StoreShape::box) {
        const double width = *store.width_m;
        const double depth = *store.depth_m;
        shell.top_m2 = width * depth;
        around = 2.0 * (width + depth);
        shell.radius_m = 0.5 * std::min(width, depth);
        shell.length_m = std::max(width, depth);
        shell.round = false;
    } else {
        const double diameter = *store.diameter_m;
        shell.top_m2 = pi / 4.0 * diameter * diameter;
        around = pi * diameter;
        shell.radius_m = 0.5 * diameter;
        shell.length_m = diameter;
    }
    shell.bottom_m2 = shell.top_m2;
    shell.side_m2 = around * shell.height_m;
    shell.volume_m3 = shell.top_m2 * shell.height_m;
    const auto take = [&shell](const std::optional<double>& given, double otherwise,
                               const char* field, const Unit& unit) {
        if (!given) {
            shell.assumed.push_back({"store", field, sentence_of(Amount{otherwise, unit, 6}),
                                     base_sentences::from_memory()});
        }
        return given.value_or(otherwise);
    };
    if (store.side_u_w_m2k) {
        shell.side_u_w_m2k = *store.side_u_w_m2k;
        shell.wall_emissivity = store.wall_emissivity.value_or(default_emissivity);
    } else {
        shell.wall_emissivity =
            take(store.wall_emissivity, default_emissivity, "wall_emissivity", unit::none);
    }
    shell.top_u_w_m2k = take(store.top_u_w_m2k, default_top_u, "top_u_w_m2k", unit::watt_per_m2_k);
    shell.bottom_u_w_m2k =
        take(store.bottom_u_w_m2k, default_bottom_u, "bottom_u_w_m2k", unit::watt_per_m2_k);
    stand(shell, store.stands_on.value_or(StandsOn::wood));
    if (store.vessel && store.vessel_mm) {
        shell.skin_w_k = metal_w_mk(*store.vessel) * *store.vessel_mm / 1000.0;
    }
    const double measured = store.loss_factor.value_or(1.0);
    shell.side_factor = measured;
    shell.side_u_w_m2k *= measured;
    shell.top_u_w_m2k *= measured;
    shell.bottom_u_w_m2k *= measured;
    return shell;
}

}  // namespace heatmatch
