#pragma once

#include "heat_beds.hpp"
#include "reference_csv.hpp"

#include <array>
#include <sstream>
#include <string>
#include <vector>

#include "heatmatch/heat/bed_charge.hpp"

/// A drum with two circuits, and the temperatures that another solution found in it.
struct JointDrum {
    heatmatch::BedCharge charge{};  //!< of circuit a, with b as the other one
    double power_w = 0.0;           //!< of circuit a
    std::array<double, 2> sheath_c{};
    double bed_mean_c = 0.0;
    double wall_c = 0.0;
    double floor_c = 0.0;

    /// The same drum seen by circuit b.
    [[nodiscard]] heatmatch::BedCharge of_b() const {
        heatmatch::BedCharge seen = charge;
        seen.legs = charge.others.front().legs;
        seen.others.front() = {.legs = charge.legs, .power_w = power_w};
        return seen;
    }
    [[nodiscard]] double power_b_w() const { return charge.others.front().power_w; }
};

/// The rows of tests/reference/joint_open.csv.
inline std::vector<JointDrum> joint_drums() {
    std::vector<JointDrum> drums;
    for (const ReferenceRow& row : read_reference("joint_open.csv")) {
        const auto legs = [&row](const char* column) {
            heatmatch::LegLayout layout{.leg_length_m = number(row, "leg_length_m"),
                                        .radius_m = number(row, "sheath_diameter_mm") / 2e3,
                                        .sheath_radius_m = number(row, "sheath_diameter_mm") / 2e3};
            std::string text = row.at(column);
            for (char& c : text) c = c == ':' || c == ';' ? ' ' : c;
            std::istringstream places(text);
            for (double x = 0.0, y = 0.0; places >> x >> y;) {
                layout.legs.push_back({.x_m = x / 1e3, .y_m = y / 1e3});
            }
            return layout;
        };
        JointDrum drum{.charge = {.fill = dry_sand(0.27, 0.5),
                                  .shell = bare_cylinder(number(row, "diameter_m"),
                                                         number(row, "height_m"), 0.3),
                                  .legs = legs("legs_a_mm"),
                                  .air_c = number(row, "air_c"),
                                  .hours = number(row, "hours"),
                                  .others = {{.legs = legs("legs_b_mm"),
                                              .power_w = number(row, "power_b_w")}}},
                       .power_w = number(row, "power_a_w"),
                       .sheath_c = {number(row, "sheath_a_c"), number(row, "sheath_b_c")},
                       .bed_mean_c = number(row, "bed_mean_c"),
                       .wall_c = number(row, "wall_c"),
                       .floor_c = number(row, "floor_inner_c")};
        drum.charge.shell.stands_u_w_m2k = 4.0;  // floor_inner_c is of the fill
        drums.push_back(drum);
    }
    return drums;
}
