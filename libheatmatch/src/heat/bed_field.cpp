#include "heatmatch/heat/bed_field.hpp"

#include "bed_checks.hpp"
#include "bed_field_grid.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using heat_sentences::say;

namespace {

constexpr BedChecks field_input{"field of a bed"};

void check_loss(const char* field, double value) {
    if (std::isfinite(value) && value >= 0.0) return;
    field_input.refuse(field, format_number(value), ">= 0",
                       say<"heat.none_is">(with<"nothing">(0.0)));
}

void check_mesh(const BedFieldMesh& mesh) {
    constexpr std::size_t fewest = 3;
    constexpr std::size_t most = 200;
    const auto check = [](const char* field, std::size_t count) {
        if (count >= fewest && count <= most) return;
        field_input.refuse(field, std::to_string(count), "3 to 200",
                           say<"heat.mesh_serves">(with<"across">(12.0), with<"high">(18.0)));
    };
    check("across", mesh.across);
    check("high", mesh.high);
    constexpr double longest_s = 3600.0;  // in longer steps a strong fan may cause overshoot
    if (mesh.longest_step_s > 0.0 && mesh.longest_step_s <= longest_s) return;
    field_input.refuse("longest_step_s", format_number(mesh.longest_step_s) + " s",
                       "above 0, up to 3600 s", say<"heat.step_serves">(with<"step">(600.0)));
}

void check_parts(const BedFill& fill, const StoreShell& shell, const LegLayout& legs) {
    field_input.size("density_kg_m3", fill.density_kg_m3);
    field_input.size("heat_capacity_j_kgk", fill.heat_capacity.at(zero_celsius_k));
    field_input.size("volume_m3", shell.volume_m3);
    field_input.size("height_m", shell.height_m);
    check_loss("side_m2", shell.side_m2);
    check_loss("top_m2", shell.top_m2);
    check_loss("bottom_m2", shell.bottom_m2);
    check_loss("side_u_w_m2k", shell.side_u_w_m2k);
    check_loss("top_u_w_m2k", shell.top_u_w_m2k);
    check_loss("bottom_u_w_m2k", shell.bottom_u_w_m2k);
    field_input.size("legs", static_cast<double>(legs.legs.size()));
    field_input.size("leg_length_m", legs.leg_length_m);
    field_input.size("radius_m of the legs", legs.radius_m);
}

std::string within(double most_m) {
    return "0 to " + format_number(most_m) + " m";
}

}  // namespace

BedField::BedField(BedFill fill, StoreShell shell, LegLayout legs, double air_c, double start_c,
                   BedFieldMesh mesh, double rod_j_m_k)
    : fill_(std::move(fill)), shell_(std::move(shell)), legs_(std::move(legs)), mesh_(mesh) {
    field_input.temperature("air_c", air_c);
    field_input.temperature("start_c", start_c);
    check_parts(fill_, shell_, legs_);
    check_mesh(mesh_);
    check_loss("rod_j_m_k", rod_j_m_k);
    grid_ = std::make_shared<const BedFieldGrid>(fill_, shell_, legs_, mesh_, rod_j_m_k);
    following_w_.assign(LegModes::state_size, 0.0);
    const double start = grid_->table.theta(start_c + zero_celsius_k);
    const std::size_t cells = grid_->cells();
    theta_.assign(cells, start);
    wall_theta_.assign(grid_->high, start);
    lid_theta_.assign(grid_->across, start);
    floor_theta_.assign(grid_->across, start);
    heat_j_.assign(cells, 0.0);
    base_j_.assign(cells, 0.0);
    holds_j_.assign(cells, 0.0);
    t_slope_.assign(cells, 0.0);
    residual_.assign(cells, 0.0);
    diagonal_.assign(cells, 0.0);
    start_ = start;
    set_air_c(air_c);
}

void BedField::step(double power_w, double seconds) {
    if (!std::isfinite(power_w) || power_w < 0.0) {
        field_input.refuse("power_w", format_number(power_w) + " W", ">= 0 W",
                           say<"heat.what_legs_take">());
    }
    constexpr double longest_s = 1e10;
    if (!(seconds >= 0.0 && seconds <= longest_s)) {
        field_input.refuse("seconds", format_number(seconds) + " s", "0 to 1e10 s",
                           say<"heat.how_long_it_lasts">());
    }
    constexpr int most_halvings = 10;
    power_w_ = power_w;
    const auto steps = static_cast<long>(std::ceil(seconds / mesh_.longest_step_s));
    for (long i = 0; i < steps; ++i) {
        advance(power_w, seconds / static_cast<double>(steps), most_halvings);
    }
}

/// Surfaces and flows at the present moment.
void BedField::look() {
    constexpr double any_s = 1.0;
    balance(power_w_, any_s);
}

void BedField::set_air_c(double air_c) {
    field_input.temperature("air_c", air_c);
    const double air_k = air_c + zero_celsius_k;
    if (air_k == air_k_) return;
    air_k_ = air_k;
    wall_w_m2_.clear();
    look();
}

void BedField::set_extraction_w_k(double w_k) {
    check_loss("extraction_w_k", w_k);
    extraction_w_k_ = w_k;
    look();
}

double BedField::celsius(double theta) const {
    return grid_->table.at(theta).t_k - zero_celsius_k;
}

/// Theta of a node, or of the surface beyond the outermost nodes, counted from 1.
double BedField::node_theta(std::size_t ring, std::size_t level) const {
    const BedFieldGrid& grid = *grid_;
    const std::size_t i = std::clamp(ring, std::size_t{1}, grid.across) - 1;
    const std::size_t k = std::clamp(level, std::size_t{1}, grid.high) - 1;
    const bool side = ring > grid.across;
    if (level == 0) return side ? std::min(wall_theta_[k], floor_theta_[i]) : floor_theta_[i];
    if (level > grid.high) return side ? std::min(wall_theta_[k], lid_theta_[i]) : lid_theta_[i];
    return side ? wall_theta_[k] : theta_[k * grid.across + i];
}

double BedField::theta_at(double radius_m, double height_m) const {
    const auto place = [](const std::vector<double>& nodes, double end, double at) {
        const auto after = std::ranges::upper_bound(nodes, at);
        const auto ring = static_cast<std::size_t>(after - nodes.begin());
        const double low = ring == 0 ? 0.0 : nodes[ring - 1];
        const double high = after == nodes.end() ? end : *after;
        return std::pair{ring, high > low ? (at - low) / (high - low) : 0.0};
    };
    const auto [ring, outwards] = place(grid_->r_m, grid_->radius_m, radius_m);
    const auto [level, upwards] = place(grid_->z_m, grid_->height_m, height_m);
    const auto along = [&, ring = ring, outwards = outwards](std::size_t at_level) {
        const double inner = node_theta(ring, at_level);
        return inner + outwards * (node_theta(ring + 1, at_level) - inner);
    };
    const double below = along(level);
    return below + upwards * (along(level + 1) - below);
}

double BedField::at_c(double radius_m, double height_m) const {
    if (!(radius_m >= 0.0 && radius_m <= grid_->radius_m)) {
        field_input.refuse("radius_m", format_number(radius_m) + " m", within(grid_->radius_m),
                           say<"heat.metres_from_axis">());
    }
    if (!(height_m >= 0.0 && height_m <= grid_->height_m)) {
        field_input.refuse("height_m", format_number(height_m) + " m", within(grid_->height_m),
                           say<"heat.metres_above_floor">());
    }
    return celsius(theta_at(radius_m, height_m));
}

/// Theta at half the height, mean around the axis, interpolated in ln r between the nodes.
double BedField::mean_around(double radius_m) const {
    const BedFieldGrid& grid = *grid_;
    if (radius_m > grid.r_m.back()) {
        return theta_at(std::min(radius_m, grid.radius_m), 0.5 * grid.height_m);
    }
    const Between level = grid.level_at(0.5 * grid.height_m);
    const Between ring = grid.ring_at(radius_m);
    const auto along = [&](std::size_t k) {
        const double* row = theta_.data() + k * grid.across;
        return ring.share * row[ring.first] + (1.0 - ring.share) * row[ring.first + 1];
    };
    return level.share * along(level.first) + (1.0 - level.share) * along(level.first + 1);
}

double BedField::near_leg_c(double distance_m) const {
    const LegLayout::Leg& leg = grid_->hottest;
    // Perpendicular to the line to the axis, because a row of legs is left at a right angle.
    const double from_axis_m = std::hypot(leg.x_m, leg.y_m);
    const double at_m = std::max(distance_m, legs_.radius_m);
    const double share = from_axis_m > 0.0 ? at_m / from_axis_m : 0.0;
    const double x_m = leg.x_m - share * leg.y_m;
    const double y_m = from_axis_m > 0.0 ? leg.y_m + share * leg.x_m : at_m;
    if (!(distance_m >= 0.0 && grid_->from_axis(x_m, y_m) <= grid_->radius_m)) {
        field_input.refuse("distance_m", format_number(distance_m) + " m", "within the bed",
                           say<"heat.metres_from_leg_axis">());
    }
    const double over_w = power_w_ * grid_->over_rings(x_m, y_m) -
                          LegModes::lacking(following_w_, grid_->modes.at(x_m, y_m), power_w_);
    return celsius(mean_around(grid_->from_axis(x_m, y_m)) +
                   over_w / (2.0 * pi * legs_.heated_length_m()));
}

BedField::Around BedField::around_k(double radius_m) const {
    const double mean = mean_around(radius_m);
    const double mean_c = at_c(radius_m, 0.5 * grid_->height_m);
    constexpr int spots = 24;
    Around around;
    for (int i = 0; i < spots; ++i) {
        const double angle = 2.0 * pi * i / spots;
        const double x_m = radius_m * std::cos(angle);
        const double y_m = radius_m * std::sin(angle);
        const double over_w = power_w_ * grid_->over_rings(x_m, y_m) -
                              LegModes::lacking(following_w_, grid_->modes.at(x_m, y_m), power_w_);
        const double over_k =
            celsius(mean + over_w / (2.0 * pi * legs_.heated_length_m())) - mean_c;
        around.below_k = std::max(around.below_k, -over_k);
        around.above_k = std::max(around.above_k, over_k);
    }
    return around;
}

double BedField::sheath_c() const {
    const BedFieldGrid& grid = *grid_;
    const double over_w = power_w_ * grid.superposition -
                          LegModes::lacking(following_w_, grid.modes.at_hottest(), power_w_);
    return celsius(mean_around(grid.from_axis(grid.hottest.x_m, grid.hottest.y_m)) +
                   over_w / (2.0 * pi * legs_.heated_length_m()));
}

double BedField::bed_mean_c() const {
    double sum = 0.0;
    for (std::size_t c = 0; c < theta_.size(); ++c) {
        sum += grid_->volume_share[c] * celsius(theta_[c]);
    }
    return sum;
}

double BedField::edge_c() const {
    double sum = 0.0;
    for (std::size_t k = 0; k < grid_->high; ++k) {
        sum += grid_->level_m[k] * celsius(wall_theta_[k]);
    }
    return sum / grid_->height_m;
}

double BedField::wall_mean_c() const {
    return shell_.side_surface_k(edge_c() + zero_celsius_k, air_k_) - zero_celsius_k;
}

double BedField::wall_c() const {
    const double highest = *std::ranges::max_element(wall_theta_);
    const ThetaTable::At at = grid_->table.at(highest);
    const double biot = shell_.side_w_m2k(at.t_k, air_k_) * shell_.radius_m * at.t_slope;
    const double over =
        grid_->modes.wall(following_w_, biot) / (2.0 * pi * legs_.heated_length_m());
    const double edge_k = grid_->table.at(highest + over).t_k;
    const double within_k = std::max(at.t_k, std::min(edge_k, sheath_c() + zero_celsius_k));
    return shell_.side_surface_k(within_k, air_k_) - zero_celsius_k;
}

double BedField::lid_c() const {
    const double edge_c = celsius(*std::ranges::max_element(lid_theta_));
    return shell_.lid_surface_k(edge_c + zero_celsius_k, air_k_) - zero_celsius_k;
}

double BedField::stored_kwh() const {
    double sum = 0.0;
    for (const double j : heat_j_) sum += j;
    return sum / joules_per_kwh;
}

double BedField::lost_kwh() const {
    return lost_j_ / joules_per_kwh;
}

double BedField::taken_kwh() const {
    return taken_j_ / joules_per_kwh;
}

double BedField::supplied_kwh() const {
    return supplied_j_ / joules_per_kwh;
}

}  // namespace heatmatch
