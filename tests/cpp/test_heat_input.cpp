#include "demo.hpp"
#include "heat_beds.hpp"
#include "odd_numbers.hpp"
#include "refusal.hpp"

#include <cmath>
#include <string>

#include <doctest/doctest.h>

#include "heatmatch/heat/bed_charge.hpp"
#include "heatmatch/heat/hot_tail.hpp"
#include "heatmatch/heat/sheath_temperature.hpp"
#include "heatmatch/heat/wire_temperature.hpp"

namespace {

heatmatch::BedCharge plain_pot() {
    return {.fill = dry_sand(0.27, 0.5),
            .shell = bare_cylinder(0.27, 0.26),
            .legs = upright_legs(2, 0.2, 0.05)};
}

template <class Function>
void check_field_refused(const std::string& field, const Function& function) {
    const std::string text = refusal_of<heatmatch::InvalidInput>(function);
    CAPTURE(text);
    CHECK(contains(text, field));
}

}  // namespace

TEST_CASE("the closed form refuses meaningless charges, and names the field") {
    check_field_refused("density_kg_m3",
                        [] { static_cast<void>(heatmatch::bed_temperatures({}, 100.0)); });
    heatmatch::BedCharge no_legs = plain_pot();
    no_legs.legs.legs.clear();
    check_field_refused("legs", [&] { static_cast<void>(bed_temperatures(no_legs, 100.0)); });
    for (const double odd : {not_a_number, endless, -1.0}) {
        CAPTURE(odd);
        check_field_refused("power_w",
                            [odd] { static_cast<void>(bed_temperatures(plain_pot(), odd)); });
        check_field_refused(
            "distance_m", [odd] { static_cast<void>(bed_temperature_c(plain_pot(), 100.0, odd)); });
        check_field_refused("factor",
                            [odd] { static_cast<void>(largest_power_w(plain_pot(), 540.0, odd)); });
        check_field_refused("longest_h", [odd] {
            static_cast<void>(hours_to_limit(plain_pot(), 100.0, 540.0, odd));
        });
        const auto refuses = [odd](const char* field, auto set) {
            heatmatch::BedCharge charge = plain_pot();
            set(charge, odd);
            check_field_refused(field, [&] { static_cast<void>(bed_temperatures(charge, 100.0)); });
            check_field_refused(field, [&] { static_cast<void>(largest_power_w(charge, 540.0)); });
        };
        refuses("hours", [](auto& charge, double value) { charge.hours = value; });
        refuses("days", [](auto& charge, double value) { charge.days = value; });
        refuses("gap_m", [](auto& charge, double value) { charge.gap_m = value; });
        refuses("density", [](auto& charge, double value) { charge.fill.density_kg_m3 = value; });
        refuses("volume_m3", [](auto& charge, double value) { charge.shell.volume_m3 = value; });
        refuses("side_u_w_m2k",
                [](auto& charge, double value) { charge.shell.side_u_w_m2k = value; });
        refuses("leg_length_m",
                [](auto& charge, double value) { charge.legs.leg_length_m = value; });
    }
    check_field_refused("limit_c",
                        [] { static_cast<void>(largest_power_w(plain_pot(), not_a_number)); });
    check_field_refused(
        "limit_c", [] { static_cast<void>(hours_to_limit(plain_pot(), 100.0, not_a_number)); });
}

TEST_CASE("a store, a fill and an element out of range are refused before anything is computed") {
    const heatmatch::Medium sand = heatmatch::find_medium(starter(), "dry-sand");
    const heatmatch::Element rod{
        .id = "rod", .sheath_diameter_mm = 8.0, .heated_length_mm = 400.0, .legs = 2};
    const heatmatch::Store vessel{
        .shape = heatmatch::StoreShape::cylinder, .diameter_m = 0.27, .height_m = 0.26};
    const auto heated = [](const auto& medium, const auto& store, const auto& element) {
        static_cast<void>(sheath_temperature(medium, store, element, 1, {.power_w = 100.0}));
    };
    heated(sand, vessel, rod);
    for (const double odd : {not_a_number, endless, -0.3}) {
        CAPTURE(odd);
        heatmatch::Store store = vessel;
        store.diameter_m = odd;
        check_field_refused("diameter_m", [&] { heated(sand, store, rod); });
        store = vessel;
        store.wall_emissivity = odd;
        check_field_refused("wall_emissivity", [&] { heated(sand, store, rod); });
        heatmatch::Medium medium = sand;
        medium.k20_low_w_mk = odd;
        check_field_refused("k20_low_w_mk", [&] { heated(medium, vessel, rod); });
        medium = sand;
        medium.heat_capacity_j_kgk.front().value = odd;
        check_field_refused("heat_capacity_j_kgk", [&] { heated(medium, vessel, rod); });
        heatmatch::Element element = rod;
        element.leg_spacing_mm = odd;
        check_field_refused("leg_spacing_mm", [&] { heated(sand, vessel, element); });
    }
    heatmatch::Medium water = heatmatch::find_medium(starter(), "water");
    water.density_kg_m3 = -1.0;
    check_field_refused("density_kg_m3", [&] { heated(water, vessel, rod); });
}

TEST_CASE("a wire out of range is refused, and a cold end of no length counts as none") {
    const heatmatch::Wire lead = heatmatch::find_wire(starter(), "silicone-14-awg");
    const auto air = heatmatch::Surroundings::open_air(25.0);
    for (const double odd : {not_a_number, endless, -1.0}) {
        CAPTURE(odd);
        check_field_refused("current_a", [&] {
            static_cast<void>(conductor_temperature(lead, nullptr, odd, air));
        });
        heatmatch::Wire wire = lead;
        wire.area_mm2 = odd;
        check_field_refused(
            "area_mm2", [&] { static_cast<void>(conductor_temperature(wire, nullptr, 4.0, air)); });
        heatmatch::Surroundings windy = air;
        windy.wind_m_s = odd;
        check_field_refused("wind_m_s", [&] {
            static_cast<void>(conductor_temperature(lead, nullptr, 4.0, windy));
        });
    }
    check_field_refused("air_c", [&] {
        static_cast<void>(conductor_temperature(lead, nullptr, 4.0,
                                                heatmatch::Surroundings::open_air(not_a_number)));
    });
    heatmatch::HotTail tail{.sheath_c = 500.0, .bed_c = 150.0};
    const double at_once_c = tail_temperatures(tail, lead, nullptr).terminal_c;
    tail.cold_length_m = 5e-324;
    CHECK(tail_temperatures(tail, lead, nullptr).terminal_c == at_once_c);
    tail.beyond_m = 0.0;
    const double in_wall_c = tail_temperatures(tail, lead, nullptr).terminal_c;
    tail.beyond_m = 5e-324;
    CHECK(tail_temperatures(tail, lead, nullptr).terminal_c == in_wall_c);
}

// Source: the law itself, `k20 (T/T0)^0.25 + C d (T^3 - T0^3)`: from -100 °C on it must conduct.
TEST_CASE("large stones of a low conductivity still conduct in the cold") {
    for (const double grain_mm : {20.0, 100.0, 500.0}) {
        const auto stones = heatmatch::Conductivity::of_grains(0.3, grain_mm);
        CAPTURE(grain_mm);
        for (double t_k = 173.15; t_k < 293.0; t_k += 10.0) {
            CHECK(stones.at(t_k) > 0.0);
            CHECK(stones.at(t_k) < stones.at(t_k + 10.0));
            CHECK(stones.temperature_k(stones.theta(t_k)) == doctest::Approx(t_k).epsilon(1e-9));
        }
        CHECK(stones.at(293.15) == doctest::Approx(0.3));
    }
}

TEST_CASE("a cable too long for a tiny store is reported as a misfit") {
    const heatmatch::Element cable{
        .id = "cable", .sheath_diameter_mm = 3.0, .heated_length_mm = 200000.0};
    const heatmatch::Store thimble{
        .shape = heatmatch::StoreShape::cylinder, .diameter_m = 0.02, .height_m = 0.02};
    const heatmatch::LegLayout layout = leg_layout(cable, 1, thimble);
    CHECK(contains(layout.misfit, "10000"));
    CHECK(layout.legs.empty());
    check_field_refused("elements",
                        [&] { static_cast<void>(leg_layout(cable, 1000000, thimble)); });
}
