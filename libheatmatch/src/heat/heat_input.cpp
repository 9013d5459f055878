#include "heat_input.hpp"

#include "sentences.hpp"

#include <array>
#include <cmath>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using heat_sentences::say;

void require_number(std::string_view part, const char* field, double value, const Unit& unit,
                    const Range& range, Remedy remedy) {
    if (std::isfinite(value) && range.holds(value)) return;
    throw InvalidInput({.part = std::string(part),
                        .field = field,
                        .value = format_quantity(value, unit, UnitSystem::si),
                        .allowed = range.text(unit),
                        .remedy = remedy()});
}

Sentence dry_sand_has() {
    return say<"heat.dry_sand_has">(with<"low">(0.17), with<"high">(0.35));
}

void require_fields(std::span<const Field> fields, const void* record, const std::string& part,
                    std::span<const std::string_view> names) {
    for (const std::string_view name : names) {
        const Field& field = *find_field(fields, name);
        check_value(field, field.get(record), part);
    }
}

void check_fill(const Medium& medium) {
    constexpr auto names = std::to_array<std::string_view>(
        {"form", "grain_mm", "k20_w_mk", "k20_low_w_mk", "k20_high_w_mk", "density_kg_m3",
         "heat_capacity_j_kgk", "conductivity_w_mk", "moist_k_w_mk", "moist_k_low_w_mk",
         "moist_k_high_w_mk"});
    require_fields(medium_fields(), &medium, "medium \"" + medium.id + '"', names);
}

void check_store_sizes(const Store& store) {
    constexpr Range size{.low = 1e-6, .high = 1000.0};
    constexpr Range loss{.low = 0.0, .high = 1e6};
    const auto require = [](const char* field, const std::optional<double>& value, const Unit& unit,
                            const Range& range, Remedy remedy) {
        if (value) require_number("store", field, *value, unit, range, remedy);
    };
    const Remedy metres = say<"heat.measure_vessel_metres">;
    if (store.shape == StoreShape::box) {
        require("width_m", store.width_m, unit::metre, size, metres);
        require("depth_m", store.depth_m, unit::metre, size, metres);
    } else {
        require("diameter_m", store.diameter_m, unit::metre, size, metres);
    }
    require("height_m", store.height_m, unit::metre, size, metres);
    require("wall_emissivity", store.wall_emissivity, unit::none, {.low = 0.0, .high = 1.0},
            [] { return say<"heat.emissivities">(with<"bright">(0.3), with<"paint">(0.9)); });
    const Remedy losses = [] {
        return say<"heat.losses">(with<"low">(5.0), with<"high">(11.0), with<"lagged">(0.3),
                                  with<"worst">(1.0));
    };
    require("top_u_w_m2k", store.top_u_w_m2k, unit::watt_per_m2_k, loss, losses);
    require("side_u_w_m2k", store.side_u_w_m2k, unit::watt_per_m2_k, loss, losses);
    require("bottom_u_w_m2k", store.bottom_u_w_m2k, unit::watt_per_m2_k, loss, losses);
}

namespace {

constexpr std::string_view charge_part = "charge of a bed";

void check_legs(const LegLayout& legs) {
    constexpr Range length{.low = 1e-6, .high = 1000.0};
    require_number(charge_part, "legs", static_cast<double>(legs.legs.size()), unit::count,
                   {.low = 1.0, .high = 1e4}, say<"heat.lay_out_legs">);
    require_number(charge_part, "leg_length_m", legs.leg_length_m, unit::metre, length,
                   say<"heat.measure_leg">);
    require_number(charge_part, "radius_m", legs.radius_m, unit::metre, length,
                   say<"heat.of_sheath_or_pipe">);
    require_number(charge_part, "sheath_radius_m", legs.sheath_radius_m, unit::metre, length,
                   say<"heat.half_diameter">);
    for (const LegLayout::Leg& leg : legs.legs) {
        for (const double place_m : {leg.x_m, leg.y_m}) {
            require_number(charge_part, "place of a leg", place_m, unit::metre,
                           {.low = -1000.0, .high = 1000.0}, say<"heat.metres_from_store_axis">);
        }
    }
}

void check_shell(const StoreShell& shell) {
    constexpr Range size{.low = 1e-9, .high = 1e9};
    constexpr Range loss{.low = 0.0, .high = 1e6};
    const Remedy remedy = say<"heat.make_shell">;
    require_number(charge_part, "volume_m3", shell.volume_m3, unit::cubic_metre, size, remedy);
    require_number(charge_part, "height_m", shell.height_m, unit::metre, size, remedy);
    require_number(charge_part, "radius_m", shell.radius_m, unit::metre, size, remedy);
    require_number(charge_part, "side_m2", shell.side_m2, unit::square_metre, size, remedy);
    require_number(charge_part, "top_m2", shell.top_m2, unit::square_metre, size, remedy);
    require_number(charge_part, "bottom_m2", shell.bottom_m2, unit::square_metre, size, remedy);
    require_number(charge_part, "wall_emissivity", shell.wall_emissivity, unit::none,
                   {.low = 0.0, .high = 1.0}, remedy);
    require_number(charge_part, "top_u_w_m2k", shell.top_u_w_m2k, unit::watt_per_m2_k, loss,
                   remedy);
    require_number(charge_part, "side_u_w_m2k", shell.side_u_w_m2k, unit::watt_per_m2_k, loss,
                   remedy);
    require_number(charge_part, "bottom_u_w_m2k", shell.bottom_u_w_m2k, unit::watt_per_m2_k, loss,
                   remedy);
}

}  // namespace

void check_bed_charge(const BedCharge& charge, double power_w) {
    require_number(charge_part, "power_w", power_w, unit::watt, {.low = 0.0, .high = 1e9},
                   say<"heat.power_of_legs">);
    require_number(charge_part, "air_c", charge.air_c, unit::celsius,
                   {.low = -100.0, .high = 1500.0}, say<"heat.give_air">);
    require_number(charge_part, "hours", charge.hours, unit::hour, {.low = 1e-6, .high = 1e7},
                   say<"heat.how_long">);
    require_number(charge_part, "days", charge.days, unit::none, {.low = 1.0, .high = 3660.0},
                   say<"heat.one_day">);
    require_number(charge_part, "gap_m", charge.gap_m, unit::metre, {.low = 0.0, .high = 1.0},
                   [] { return say<"heat.grains_touch">(with<"nothing">(0.0)); });
    require_number(charge_part, "rod_j_m_k", charge.rod_j_m_k, unit::none,
                   {.low = 0.0, .high = 1e6}, [] {
                       return say<"heat.rod_has">(with<"diameter">(8.0, unit::millimetre),
                                                  with<"heat">(170.0));
                   });
    constexpr Range density{.low = 1e-3, .high = 1e5};
    require_number(charge_part, "density_kg_m3", charge.fill.density_kg_m3, unit::kilogram_per_m3,
                   density, say<"heat.make_fill">);
    check_shell(charge.shell);
    check_legs(charge.legs);
    for (const HeatedLegs& other : charge.others) {
        check_legs(other.legs);
        require_number(charge_part, "power_w of other legs", other.power_w, unit::watt,
                       {.low = 0.0, .high = 1e9}, say<"heat.power_of_legs">);
    }
}

void check_sheath_limit(double limit_c) {
    require_number(charge_part, "limit_c", limit_c, unit::celsius, {.low = -273.15, .high = 3000.0},
                   say<"heat.give_sheath_limit">);
}

}  // namespace heatmatch
