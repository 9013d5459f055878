#include "bed_checks.hpp"
#include "bed_field_grid.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/heat/bed_field.hpp"

namespace heatmatch {

using heat_sentences::say;

namespace {

constexpr BedChecks field_place{"field of a bed"};

std::string inside(double most_m) {
    return "0 to " + format_number(most_m) + " m";
}

}  // namespace

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
        field_place.refuse("radius_m", format_number(radius_m) + " m", inside(grid_->radius_m),
                           say<"heat.metres_from_axis">());
    }
    if (!(height_m >= 0.0 && height_m <= grid_->height_m)) {
        field_place.refuse("height_m", format_number(height_m) + " m", inside(grid_->height_m),
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

/// Theta that the legs contribute at a spot above the mean around the axis.
double BedField::over_mean(double x_m, double y_m, std::size_t own) const {
    double theta = 0.0;
    for (std::size_t b = 0; b < power_w_.size(); ++b) {
        const LegsInGrid& bank = grid_->banks[b];
        const double over_w =
            power_w_[b] * grid_->over_rings(bank.legs, x_m, y_m) -
            LegModes::lacking(following_w_[b], bank.modes.at(x_m, y_m), power_w_[b]);
        const double share = b == own ? 1.0 : finite_share(bank.legs, x_m, y_m);
        theta += share * over_w * bank.per_watt();
    }
    return theta;
}

/// Theta at the surface of a leg.
double BedField::view_theta(const LegView& view) const {
    double theta = mean_around(grid_->from_axis(view.leg.x_m, view.leg.y_m));
    for (std::size_t b = 0; b < power_w_.size(); ++b) {
        const double over_w = power_w_[b] * view.superposition[b] -
                              LegModes::lacking(following_w_[b], view.waves[b], power_w_[b]);
        theta += over_w * grid_->banks[b].per_watt();
    }
    return theta;
}

const LegView& BedField::hottest_of(std::size_t bank) const {
    const std::vector<LegView>& views = grid_->banks.at(bank).views;
    if (views.size() == 1) return views.front();
    return *std::ranges::max_element(views, {},
                                     [this](const LegView& view) { return view_theta(view); });
}

double BedField::near_leg_c(double distance_m, std::size_t bank) const {
    const LegLayout::Leg& leg = hottest_of(bank).leg;
    // Perpendicular to the line to the axis, because a row of legs is left at a right angle.
    const double from_axis_m = std::hypot(leg.x_m, leg.y_m);
    const double at_m = std::max(distance_m, grid_->banks[bank].legs.radius_m);
    const double share = from_axis_m > 0.0 ? at_m / from_axis_m : 0.0;
    const double x_m = leg.x_m - share * leg.y_m;
    const double y_m = from_axis_m > 0.0 ? leg.y_m + share * leg.x_m : at_m;
    if (!(distance_m >= 0.0 && grid_->from_axis(x_m, y_m) <= grid_->radius_m)) {
        field_place.refuse("distance_m", format_number(distance_m) + " m", "within the bed",
                           say<"heat.metres_from_leg_axis">());
    }
    return celsius(mean_around(grid_->from_axis(x_m, y_m)) + over_mean(x_m, y_m, bank));
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
        const double over_k = celsius(mean + over_mean(x_m, y_m, 0)) - mean_c;
        around.below_k = std::max(around.below_k, -over_k);
        around.above_k = std::max(around.above_k, over_k);
    }
    return around;
}

double BedField::sheath_c(std::size_t bank) const {
    return celsius(view_theta(hottest_of(bank)));
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
    double over = 0.0;  // at the hottest of the spots that face a bank
    double sheaths_c = sheath_c();
    for (std::size_t b = 0; b < power_w_.size(); ++b) {
        double there = 0.0;
        for (std::size_t from = 0; from < power_w_.size(); ++from) {
            const double each =
                LegModes::wall(following_w_[from], grid_->banks[b].at_wall_spot[from], biot) *
                grid_->banks[from].per_watt();
            // What short legs on the other side leave out of the mean here is not counted.
            there += from == b ? each : std::max(0.0, each);
        }
        over = std::max(over, there);
        sheaths_c = std::max(sheaths_c, sheath_c(b));
    }
    const double edge_k = grid_->table.at(highest + over).t_k;
    const double within_k = std::max(at.t_k, std::min(edge_k, sheaths_c + zero_celsius_k));
    return shell_.side_surface_k(within_k, air_k_) - zero_celsius_k;
}

double BedField::lid_c() const {
    const double edge_c = celsius(*std::ranges::max_element(lid_theta_));
    return shell_.lid_surface_k(edge_c + zero_celsius_k, air_k_) - zero_celsius_k;
}

}  // namespace heatmatch
