#include "tail_input.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/error.hpp"
#include "heatmatch/base/field.hpp"

namespace heatmatch {

namespace {

void require(const char* field, double value, const Unit& unit, const Range& range,
             const char* remedy) {
    if (range.holds(value)) return;
    throw InvalidInput({.part = "hot tail",
                        .field = field,
                        .value = format_quantity(value, unit, UnitSystem::si),
                        .allowed = range.text(unit),
                        .remedy = remedy});
}

}  // namespace

void check_hot_tail(const HotTail& tail) {
    constexpr Range temperature{.low = -60.0, .high = 1500.0};
    constexpr Range above_zero{.low = 1e-6, .high = 1e4};
    constexpr Range length{.low = 0.0, .high = 100.0};
    const char* degrees = "state it in degrees Celsius";
    const char* metres = "lengths are in metres";
    require("sheath_c", tail.sheath_c, unit::celsius, temperature, degrees);
    require("bed_c", tail.bed_c, unit::celsius, temperature, degrees);
    require("air_c", tail.air_c, unit::celsius, temperature, degrees);
    require("bed_conductivity_w_mk", tail.bed_conductivity_w_mk, unit::watt_per_m_k, above_zero,
            "dry sand has 0.2 to 0.35");
    require("sheath_conductivity_w_mk", tail.sheath_conductivity_w_mk, unit::watt_per_m_k,
            above_zero, "stainless steel has about 19");
    require("sheath_diameter_mm", tail.sheath_diameter_mm, unit::millimetre,
            {.low = 1.0, .high = 100.0}, "tubular elements have 6 to 16 mm");
    require("sheath_emissivity", tail.sheath_emissivity, unit::none, {.low = 0.0, .high = 1.0},
            "0.1 is polished, 0.9 sooty");
    require("cold_length_m", tail.cold_length_m, unit::metre, length, metres);
    require("wall_m", tail.wall_m, unit::metre, length, metres);
    require("beyond_m", tail.beyond_m, unit::metre, length, metres);
    require("box_wire_m", tail.box_wire_m, unit::metre, length, metres);
    require("box_area_m2", tail.box_area_m2, unit::square_metre, above_zero,
            "add up the six sides");
    require("box_u_w_m2k", tail.box_u_w_m2k, unit::watt_per_m2_k, above_zero,
            "a closed box has about 5");
    require("contact_ohm", tail.contact_ohm, unit::ohm, {.low = 0.0, .high = 100.0},
            "a sound terminal has milliohms");
    require("current_a", tail.current_a, unit::ampere, {.low = 0.0, .high = 1e4},
            "state the largest current of this element");
    require("buried_wire_m", tail.buried_wire_m, unit::metre, {.low = 0.0}, metres);
    const auto loss = [&above_zero](const char* field, const std::optional<double>& value) {
        if (value) require(field, *value, unit::watt_per_m_k, above_zero, "leave it out");
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
    constexpr double wall_share = 0.0875;
    constexpr double magnesia_w_mk = 2.3;
    constexpr double pin_w_mk = 50.0;
    const double square_m2 = diameter_mm * diameter_mm * 1e-6;
    const double inside = 0.25 * pi * (1.0 - 2.0 * wall_share) * (1.0 - 2.0 * wall_share);
    const double tube = pi * (1.0 - wall_share) * wall_share;
    const double pin = cold_pin ? 0.25 * pi * cold_pin_share * cold_pin_share : 0.0;
    return square_m2 * (tube * conductivity_w_mk + (inside - pin) * magnesia_w_mk + pin * pin_w_mk);
}

}  // namespace heatmatch
