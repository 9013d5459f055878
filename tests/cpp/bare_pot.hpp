#pragma once

#include "demo.hpp"
#include "extent.hpp"
#include "heat_beds.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include "heatmatch/heat/bed_charge.hpp"
#include "heatmatch/heat/hot_tail.hpp"
#include "heatmatch/heat/sheath_temperature.hpp"

// A bare pot of some 23 kg of dry sand heated with 240 W in air of 11 °C, and common practice on
// it.

inline constexpr double pot_air_c = 11.0;
inline constexpr double pot_power_w = 240.0;
inline constexpr double pot_diameter_m = 0.27;
inline constexpr double pot_height_m = 0.26;

/// Common practice, no source.
inline constexpr Extent mean_3_h{113.0, 131.0};
inline constexpr Extent mean_5_h{157.0, 183.0};
inline constexpr Extent probe_3_h{71.0, 96.0};
inline constexpr Extent probe_5_h{125.0, 135.0};

struct PotLayout {
    std::string name{};
    heatmatch::LegLayout legs{};
};

/// In the middle of the pot, upright: a hairpin, a shorter one, one bent twice.
inline const std::vector<PotLayout>& pot_layouts() {
    static const std::vector<PotLayout> all = {{"hairpin 2 x 0.20 m", upright_legs(2, 0.20, 0.05)},
                                               {"hairpin 2 x 0.14 m", upright_legs(2, 0.14, 0.05)},
                                               {"four legs 0.20 m", upright_legs(4, 0.20, 0.05)}};
    return all;
}

inline heatmatch::BedCharge pot(double k20_w_mk, double emissivity,
                                const heatmatch::LegLayout& legs) {
    return {.fill = dry_sand(k20_w_mk, 0.5),
            .shell = bare_cylinder(pot_diameter_m, pot_height_m, emissivity),
            .legs = legs,
            .air_c = pot_air_c};
}

inline constexpr std::array<double, 5> cold_mm = {25.0, 50.0, 75.0, 100.0, 150.0};
inline constexpr std::array<double, 5> heated_mm = {300.0, 600.0, 900.0, 1200.0, 1500.0};

/// Terminals of an element in that pot after five hours, one for each cold length [°C].
struct Terminals {
    double sheath_c = 0.0;
    std::array<double, cold_mm.size()> buried_c{};
    std::array<double, cold_mm.size()> outside_c{};  //!< the last 30 mm are beyond the wall
};

inline Terminals terminals_of(double heated_length_mm, heatmatch::ConductivityEnd end) {
    const heatmatch::Element element{
        .id = "rod", .sheath_diameter_mm = 8.0, .heated_length_mm = heated_length_mm};
    const heatmatch::Store store{.shape = heatmatch::StoreShape::cylinder,
                                 .diameter_m = pot_diameter_m,
                                 .height_m = pot_height_m};
    const heatmatch::BedCharge charge =
        bed_charge(heatmatch::find_medium(starter(), "dry-sand"), store, element, 1,
                   {.power_w = pot_power_w, .hours = 5.0, .air_c = pot_air_c}, end);
    const heatmatch::Wire& wire = heatmatch::find_wire(starter(), "silicone-14-awg");
    const heatmatch::Insulation& insulation =
        heatmatch::find_insulation(starter(), wire.insulation);
    Terminals result{.sheath_c = bed_temperatures(charge, pot_power_w).sheath_c};
    for (std::size_t i = 0; i < cold_mm.size(); ++i) {
        const double cold_m = cold_mm[i] / 1000.0;
        for (const auto place :
             {heatmatch::TerminalPlace::buried, heatmatch::TerminalPlace::outside}) {
            const bool buried = place == heatmatch::TerminalPlace::buried;
            heatmatch::HotTail tail{.sheath_c = result.sheath_c,
                                    .bed_conductivity_w_mk = charge.fill.conductivity.at(293.15),
                                    .air_c = pot_air_c,
                                    .sheath_conductivity_w_mk = 18.0,
                                    .place = place,
                                    .contact_ohm = 0.005,
                                    .current_a = std::sqrt(pot_power_w / 15.0)};
            tail.beyond_m = std::min(0.030, cold_m);
            tail.cold_length_m = buried ? cold_m : cold_m - tail.beyond_m;
            tail.bed_c =
                bed_temperature_c(charge, pot_power_w, std::max(0.025, tail.cold_length_m));
            (buried ? result.buried_c : result.outside_c)[i] =
                tail_temperatures(tail, wire, &insulation).terminal_c;
        }
    }
    return result;
}
