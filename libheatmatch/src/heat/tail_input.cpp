#include "tail_input.hpp"

#include "heat_input.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/error.hpp"
#include "heatmatch/base/field.hpp"

namespace heatmatch {

using heat_sentences::say;

namespace {

void require(const char* field, double value, const Unit& unit, const Range& range, Remedy remedy) {
    if (range.holds(value)) return;
    throw InvalidInput({.part = "element lead",
                        .field = field,
                        .value = format_quantity(value, unit, UnitSystem::si),
                        .allowed = range.text(unit),
                        .remedy = remedy()});
}

}  // namespace

void check_hot_tail(const HotTail& tail) {
    constexpr Range temperature{.low = -60.0, .high = 1500.0};
    constexpr Range above_zero{.low = 1e-6, .high = 1e4};
    constexpr Range length{.low = 0.0, .high = 100.0};
    const Remedy degrees = say<"heat.state_celsius">;
    const Remedy metres = say<"heat.in_metres">;
    require("sheath_c", tail.sheath_c, unit::celsius, temperature, degrees);
    require("bed_c", tail.bed_c, unit::celsius, temperature, degrees);
    require("air_c", tail.air_c, unit::celsius, temperature, degrees);
    require("bed_conductivity_w_mk", tail.bed_conductivity_w_mk, unit::watt_per_m_k, above_zero,
            dry_sand_has);
    require("sheath_conductivity_w_mk", tail.sheath_conductivity_w_mk, unit::watt_per_m_k,
            above_zero, [] { return say<"heat.steel_has">(with<"typical">(19.0)); });
    require("sheath_diameter_mm", tail.sheath_diameter_mm, unit::millimetre,
            {.low = 1.0, .high = 100.0}, [] {
                return say<"heat.tubes_have">(
                    with<"low">({6.0, unit::millimetre, 3, Shown::number}),
                    with<"high">(16.0, unit::millimetre));
            });
    require("sheath_emissivity", tail.sheath_emissivity, unit::none, {.low = 0.0, .high = 1.0},
            [] { return say<"heat.polished">(with<"polished">(0.1), with<"sooty">(0.9)); });
    require("cold_length_m", tail.cold_length_m, unit::metre, length, metres);
    require("wall_m", tail.wall_m, unit::metre, length, metres);
    require("beyond_m", tail.beyond_m, unit::metre, length, metres);
    require("lagging_m", tail.lagging_m, unit::metre, length, metres);
    require("lagging_hot_c", tail.lagging_hot_c.value_or(tail.bed_c), unit::celsius, temperature,
            degrees);
    require("box_wire_m", tail.box_wire_m, unit::metre, length, metres);
    require("box_area_m2", tail.box_area_m2, unit::square_metre, above_zero, say<"heat.six_sides">);
    require("box_u_w_m2k", tail.box_u_w_m2k, unit::watt_per_m2_k, above_zero,
            [] { return say<"heat.box_has">(with<"typical">(5.0)); });
    require("contact_ohm", tail.contact_ohm, unit::ohm, {.low = 0.0, .high = 100.0},
            say<"heat.sound_terminal">);
    require("current_a", tail.current_a, unit::ampere, {.low = 0.0, .high = 1e4},
            say<"heat.state_largest_current">);
    require("buried_wire_m", tail.buried_wire_m, unit::metre, {.low = 0.0}, metres);
    const auto loss = [&above_zero](const char* field, const std::optional<double>& value) {
        if (value) require(field, *value, unit::watt_per_m_k, above_zero, say<"heat.leave_out">);
    };
    loss("sheath_loss_w_mk", tail.sheath_loss_w_mk);
    loss("wire_loss_w_mk", tail.wire_loss_w_mk);
}

std::optional<double> sheath_conductivity_w_mk(std::string_view sheath_id) {
    constexpr auto known = std::to_array<std::pair<std::string_view, double>>({
        {"copper", 385.0},
        {"carbon-steel", 45.0},
        {"rust-resisting-iron", 45.0},
        {"finned-steel", 45.0},
        {"copper-nickel", 28.0},
        {"chrome-steel", 25.0},
        {"stainless", 19.0},
        {"alloy-800", 18.0},
        {"alloy-840", 18.0},
        {"alloy-600", 18.0},
    });
    const auto found = std::find_if(known.begin(), known.end(), [sheath_id](const auto& each) {
        return each.first == sheath_id;
    });
    return found == known.end() ? std::nullopt : std::optional(found->second);
}

double sheath_ka_w_m_k(double diameter_mm, double conductivity_w_mk, bool cold_pin) {
    constexpr double pin_w_mk = 50.0;
    const double square_m2 = diameter_mm * diameter_mm * 1e-6;
    const double inside = 0.25 * pi * (1.0 - 2.0 * tube_wall_share) * (1.0 - 2.0 * tube_wall_share);
    const double tube = pi * (1.0 - tube_wall_share) * tube_wall_share;
    const double pin = cold_pin ? 0.25 * pi * cold_pin_share * cold_pin_share : 0.0;
    return square_m2 * (tube * conductivity_w_mk + (inside - pin) * magnesia_w_mk + pin * pin_w_mk);
}

}  // namespace heatmatch
