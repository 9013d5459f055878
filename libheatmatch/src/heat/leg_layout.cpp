#include "heatmatch/heat/leg_layout.hpp"

#include "leg_width.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/heat/heated_legs.hpp"
#include "heatmatch/heat/joint_layout.hpp"

namespace heatmatch {

namespace {

double outer_radius_of(const std::vector<LegLayout::Leg>& legs) {
    double outer = 0.0;
    for (const LegLayout::Leg& leg : legs) outer = std::max(outer, std::hypot(leg.x_m, leg.y_m));
    return outer;
}

/// Whether a bundle, in either orientation, is within two half sides.
bool is_within(const LegLayout::Leg& half, double most_a, double most_b) {
    const auto [a, b] = half;
    return (a <= most_a && b <= most_b) || (b <= most_a && a <= most_b);
}

}  // namespace

LegLayout::Leg half_across(std::span<const LegLayout::Leg> legs, double radius_m) {
    LegLayout::Leg half;
    for (const LegLayout::Leg& leg : legs) {
        half.x_m = std::max(half.x_m, std::fabs(leg.x_m));
        half.y_m = std::max(half.y_m, std::fabs(leg.y_m));
    }
    return {half.x_m + radius_m, half.y_m + radius_m};
}

std::vector<double> LegLayout::distances_m() const {
    if (!from_hottest_m.empty()) return from_hottest_m;
    std::vector<double> best;
    double largest = 0.0;
    for (std::size_t i = 0; i < legs.size(); ++i) {
        std::vector<double> distances{radius_m};
        double sum = 0.0;
        for (std::size_t j = 0; j < legs.size(); ++j) {
            if (i == j) continue;
            const double d = std::hypot(legs[i].x_m - legs[j].x_m, legs[i].y_m - legs[j].y_m);
            distances.push_back(std::max(d, radius_m));
            sum += std::asinh(0.5 * leg_length_m / distances.back());
        }
        if (best.empty() || sum > largest) {
            best = std::move(distances);
            largest = sum;
        }
    }
    return best;
}

bool LegLayout::may_stand(const StoreShell& shell) const {
    if (leg_length_m > shell.height_m) return false;
    if (shell.round) return outer_radius_of(legs) + radius_m <= shell.radius_m;
    return is_within(half_across(legs, radius_m), 0.5 * shell.length_m, shell.radius_m);
}

// With either side of the bundle up; in a box along either of its sides.
bool LegLayout::may_lie(const StoreShell& shell) const {
    const Leg half = half_across(legs, radius_m);
    const double half_height = 0.5 * shell.height_m;
    if (shell.round) {
        const auto lie = [&](double flat, double up) {
            return up <= half_height && std::hypot(0.5 * leg_length_m, flat) <= shell.radius_m;
        };
        return lie(half.x_m, half.y_m) || lie(half.y_m, half.x_m);
    }
    return (leg_length_m <= shell.length_m && is_within(half, shell.radius_m, half_height)) ||
           (leg_length_m <= 2.0 * shell.radius_m &&
            is_within(half, 0.5 * shell.length_m, half_height));
}

double LegLayout::room_aside_m(const StoreShell& shell, double clear_m) const {
    const double most_m = shell.radius_m - radius_m - clear_m;
    double room_m = most_m;
    for (const Leg& leg : legs) {
        const double off_m = !shell.round ? 0.0 : (lies ? 0.5 * leg_length_m : leg.y_m);
        const double reach_m = std::sqrt(std::max(0.0, most_m * most_m - off_m * off_m));
        room_m = std::min(room_m, reach_m - leg.x_m);
    }
    return std::max(0.0, room_m);
}

double LegLayout::farthest_aside_m(const StoreShell& shell) const {
    const double room_m = room_aside_m(shell, UnstatedPlaces::clear_m);
    return room_m > 0.0 ? room_m : room_aside_m(shell, 0.0);
}

double LegLayout::outer_radius_m() const {
    return outer_radius_of(legs);
}

double LegLayout::wall_concentration(const StoreShell& shell) const {
    const HeatedLegs alone{.legs = *this, .power_w = 1.0};
    return joint_wall_concentration({&alone, 1}, shell);
}

std::vector<std::string> missing_lengths(const Element& element) {
    std::vector<std::string> missing;
    if (element.heated_length_mm.value_or(0.0) <= 0.0) missing.emplace_back("heated_length_mm");
    if (element.sheath_diameter_mm.value_or(0.0) <= 0.0) missing.emplace_back("sheath_diameter_mm");
    return missing;
}

LegLayout leg_layout(const Element& element, int elements, const Store& store) {
    const BankInStore alone{.element = element, .elements = elements};
    return joint_layout({&alone, 1}, store).front();
}

}  // namespace heatmatch
