#include "heat_input.hpp"

#include <array>
#include <cmath>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

void require_number(std::string_view part, const char* field, double value, const Unit& unit,
                    const Range& range, const char* remedy) {
    if (std::isfinite(value) && range.holds(value)) return;
    throw InvalidInput({.part = std::string(part),
                        .field = field,
                        .value = format_quantity(value, unit, UnitSystem::si),
                        .allowed = range.text(unit),
                        .remedy = remedy});
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
                            const Range& range, const char* remedy) {
        if (value) require_number("store", field, *value, unit, range, remedy);
    };
    const char* metres = "measure the inside of the vessel in metres";
    if (store.shape == "box") {
        require("width_m", store.width_m, unit::metre, size, metres);
        require("depth_m", store.depth_m, unit::metre, size, metres);
    } else {
        require("diameter_m", store.diameter_m, unit::metre, size, metres);
    }
    require("height_m", store.height_m, unit::metre, size, metres);
    require("wall_emissivity", store.wall_emissivity, unit::none, {.low = 0.0, .high = 1.0},
            "bright metal has 0.3, paint 0.9");
    const char* losses = "bare metal has 5 to 11, lagging 0.3 to 1";
    require("top_u_w_m2k", store.top_u_w_m2k, unit::watt_per_m2_k, loss, losses);
    require("side_u_w_m2k", store.side_u_w_m2k, unit::watt_per_m2_k, loss, losses);
    require("bottom_u_w_m2k", store.bottom_u_w_m2k, unit::watt_per_m2_k, loss, losses);
}

namespace {

constexpr std::string_view charge_part = "charge of a bed";

void check_legs(const LegLayout& legs) {
    constexpr Range length{.low = 1e-6, .high = 1000.0};
    require_number(charge_part, "legs", static_cast<double>(legs.legs.size()), unit::count,
                   {.low = 1.0, .high = 1e4}, "lay them out with leg_layout()");
    require_number(charge_part, "leg_length_m", legs.leg_length_m, unit::metre, length,
                   "measure the heated part of a leg");
    require_number(charge_part, "radius_m", legs.radius_m, unit::metre, length,
                   "that of the sheath, or of a pipe over it");
    require_number(charge_part, "sheath_radius_m", legs.sheath_radius_m, unit::metre, length,
                   "half the diameter of the sheath");
    for (const LegLayout::Leg& leg : legs.legs) {
        for (const double place_m : {leg.x_m, leg.y_m}) {
            require_number(charge_part, "place of a leg", place_m, unit::metre,
                           {.low = -1000.0, .high = 1000.0}, "metres from the axis of the store");
        }
    }
}

void check_shell(const StoreShell& shell) {
    constexpr Range size{.low = 1e-9, .high = 1e9};
    constexpr Range loss{.low = 0.0, .high = 1e6};
    const char* remedy = "make it with store_shell()";
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
                   "give the power of all legs together");
    require_number(charge_part, "air_c", charge.air_c, unit::celsius,
                   {.low = -100.0, .high = 1500.0}, "give the air around the store in °C");
    require_number(charge_part, "hours", charge.hours, unit::hour, {.low = 1e-6, .high = 1e7},
                   "say how long it is charged");
    require_number(charge_part, "days", charge.days, unit::none, {.low = 1.0, .high = 3660.0},
                   "at least one day charges it");
    require_number(charge_part, "gap_m", charge.gap_m, unit::metre, {.low = 0.0, .high = 1.0},
                   "0 where the grains touch the sheath");
    require_number(charge_part, "rod_j_m_k", charge.rod_j_m_k, unit::none,
                   {.low = 0.0, .high = 1e6}, "an 8 mm rod has about 170 J/mK");
    constexpr Range density{.low = 1e-3, .high = 1e5};
    require_number(charge_part, "density_kg_m3", charge.fill.density_kg_m3, unit::kilogram_per_m3,
                   density, "make the fill with bed_fill()");
    check_shell(charge.shell);
    check_legs(charge.legs);
}

void check_sheath_limit(double limit_c) {
    require_number(charge_part, "limit_c", limit_c, unit::celsius, {.low = -273.15, .high = 3000.0},
                   "give the limit of the sheath in °C");
}

}  // namespace heatmatch
