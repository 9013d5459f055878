#include "heatmatch/heat/bed_shells.hpp"

#include "bed_checks.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using heat_sentences::say;

namespace {

constexpr BedChecks shells_input{"bed of shells"};

}  // namespace

BedShells::BedShells(BedFill fill, StoreShell shell, LegLayout legs, double air_c, double start_c)
    : fill_(std::move(fill)), shell_(std::move(shell)), legs_(std::move(legs)) {
    shells_input.temperature("air_c", air_c);
    shells_input.temperature("start_c", start_c);
    shells_input.size("density_kg_m3", fill_.density_kg_m3);
    shells_input.size("volume_m3", shell_.volume_m3);
    shells_input.size("radius_m", shell_.radius_m);
    shells_input.size("height_m", shell_.height_m);
    shells_input.size("legs", static_cast<double>(legs_.legs.size()));
    shells_input.size("leg_length_m", legs_.leg_length_m);
    shells_input.size("radius_m of the legs", legs_.radius_m);
    air_k_ = air_c + zero_celsius_k;
    start_k_ = start_c + zero_celsius_k;
    t_k_.fill(start_k_);
    lay_out();
}

void BedShells::lay_out() {
    const double l = legs_.leg_length_m;
    const double end_m3 = pi * l * l * l / 6.0;
    const double grown = std::cbrt(1.0 + shell_.volume_m3 / end_m3);
    const double outer_m = 0.5 * l * std::sqrt(grown * grown - 1.0);
    double x_m = 0.0;
    double y_m = 0.0;
    const auto count = static_cast<double>(legs_.legs.size());
    for (const LegLayout::Leg& leg : legs_.legs) {
        x_m += leg.x_m / count;
        y_m += leg.y_m / count;
    }
    double square = 0.0;
    for (const LegLayout::Leg& leg : legs_.legs) {
        square += ((leg.x_m - x_m) * (leg.x_m - x_m) + (leg.y_m - y_m) * (leg.y_m - y_m)) / count;
    }
    constexpr double most_share = 0.8;  // larger shells would leave no bed around the legs
    const double inner_m =
        std::min(std::max(std::sqrt(square), legs_.radius_m), most_share * outer_m);
    superposition_ = count * std::log(inner_m);
    for (const double d : legs_.distances_m()) superposition_ -= std::log(d);

    const auto field = [l](double r) { return std::asinh(0.5 * l / r) / (2.0 * pi * l); };
    const auto volume_m3 = [l, end_m3](double r) {
        const double stretch = 1.0 + 4.0 * r * r / (l * l);
        return end_m3 * (stretch * std::sqrt(stretch) - 1.0);
    };
    const double ratio = std::pow(outer_m / inner_m, 1.0 / static_cast<double>(shell_count));
    double from_m = inner_m;
    double from_m3 = 0.0;  // volume between the legs counts to the first shell
    double before = field(inner_m);
    for (std::size_t i = 0; i < shell_count; ++i) {
        const double to_m = i + 1 == shell_count ? outer_m : from_m * ratio;
        // Radius of the mean of a logarithmic field over the shell.
        const double a2 = from_m * from_m;
        const double b2 = to_m * to_m;
        const double node_m =
            std::exp((b2 * std::log(to_m) - a2 * std::log(from_m)) / (b2 - a2) - 0.5);
        const double here = field(node_m);
        (i == 0 ? inner_form_ : form_[i - 1]) = before - here;
        before = here;
        const double to_m3 = i + 1 == shell_count ? shell_.volume_m3 : volume_m3(to_m);
        mass_kg_[i] = fill_.density_kg_m3 * (to_m3 - from_m3);
        from_m = to_m;
        from_m3 = to_m3;
    }
    form_[shell_count - 1] = before - field(outer_m);
}

/// Newton for the temperatures at the end of an implicit step; false if it does not converge.
bool BedShells::settle(Nodes& t_k, double power_w, double seconds) const {
    constexpr int most_turns = 60;
    constexpr double close_enough_k = 1e-9;
    constexpr double longest_leap_k = 300.0;
    constexpr double coldest_k = 10.0;
    constexpr double nudge_k = 1e-3;
    const auto loss = [this](double edge_k) {
        return shell_.loss_w_k(edge_k, air_k_) * (edge_k - air_k_);
    };
    for (int turn = 0; turn < most_turns; ++turn) {
        Nodes surplus{};   // heat into a node in excess of the heat it stores [W]
        Nodes own{};       // derivative with respect to the node's own temperature [W/K]
        Nodes inwards{};   // derivative with respect to the temperature of the node inside
        Nodes outwards{};  // and of the node outside
        surplus[0] = power_w;
        for (std::size_t i = 0; i < shell_count; ++i) {
            const double flow =
                (fill_.conductivity.theta(t_k[i]) - fill_.conductivity.theta(t_k[i + 1])) /
                form_[i];
            const double by_inner = fill_.conductivity.at(t_k[i]) / form_[i];
            const double by_outer = fill_.conductivity.at(t_k[i + 1]) / form_[i];
            surplus[i] -= flow;
            surplus[i + 1] += flow;
            own[i] += by_inner;
            own[i + 1] += by_outer;
            outwards[i] = by_outer;
            inwards[i + 1] = by_inner;
            const double taken =
                fill_.heat_capacity.enthalpy(t_k[i]) - fill_.heat_capacity.enthalpy(t_k_[i]);
            surplus[i] -= mass_kg_[i] * taken / seconds;
            own[i] += mass_kg_[i] * fill_.heat_capacity.at(t_k[i]) / seconds;
        }
        surplus[shell_count] -= loss(t_k[shell_count]);
        own[shell_count] +=
            (loss(t_k[shell_count] + nudge_k) - loss(t_k[shell_count] - nudge_k)) / (2.0 * nudge_k);
        // Thomas: own dT - inwards dT(inside) - outwards dT(outside) = surplus.
        for (std::size_t i = 1; i < node_count; ++i) {
            const double share = inwards[i] / own[i - 1];
            own[i] -= share * outwards[i - 1];
            surplus[i] += share * surplus[i - 1];
        }
        double moved = 0.0;
        double outside = 0.0;
        for (std::size_t i = node_count; i-- > 0;) {
            outside = (surplus[i] + outwards[i] * outside) / own[i];
            const double by = std::clamp(outside, -longest_leap_k, longest_leap_k);
            t_k[i] = std::max(coldest_k, t_k[i] + by);
            moved = std::max(moved, std::fabs(outside));
        }
        if (moved < close_enough_k) return true;
    }
    return false;
}

void BedShells::advance(double power_w, double seconds, int halvings_left) {
    Nodes next = t_k_;
    if (!settle(next, power_w, seconds) && halvings_left > 0) {
        advance(power_w, 0.5 * seconds, halvings_left - 1);
        advance(power_w, 0.5 * seconds, halvings_left - 1);
        return;
    }
    t_k_ = next;
    lost_j_ += loss_w() * seconds;
    supplied_j_ += power_w * seconds;
}

void BedShells::step(double power_w, double seconds) {
    if (!std::isfinite(power_w) || power_w < 0.0) {
        shells_input.refuse("power_w", format_number(power_w) + " W", ">= 0 W",
                            say<"heat.what_legs_take">());
    }
    if (!std::isfinite(seconds) || seconds < 0.0) {
        shells_input.refuse("seconds", format_number(seconds) + " s", ">= 0 s",
                            say<"heat.how_long_it_lasts">());
    }
    constexpr int most_halvings = 10;
    power_w_ = power_w;
    const auto steps = static_cast<long>(std::ceil(seconds / longest_step_s));
    for (long i = 0; i < steps; ++i) {
        advance(power_w, seconds / static_cast<double>(steps), most_halvings);
    }
}

void BedShells::set_air_c(double air_c) {
    shells_input.temperature("air_c", air_c);
    air_k_ = air_c + zero_celsius_k;
}

double BedShells::sheath_c() const {
    const double q = power_w_ / legs_.heated_length_m();
    const double theta = fill_.conductivity.theta(t_k_.front()) + power_w_ * inner_form_ +
                         q / (2.0 * pi) * superposition_;
    return fill_.conductivity.temperature_k(theta) - zero_celsius_k;
}

double BedShells::bed_mean_c() const {
    double sum = 0.0;
    double mass = 0.0;
    for (std::size_t i = 0; i < shell_count; ++i) {
        sum += mass_kg_[i] * t_k_[i];
        mass += mass_kg_[i];
    }
    return sum / mass - zero_celsius_k;
}

double BedShells::edge_c() const {
    return t_k_.back() - zero_celsius_k;
}

double BedShells::wall_c() const {
    const double edge_k = t_k_.back();
    const double spot_k = air_k_ + (edge_k - air_k_) * legs_.wall_concentration(shell_);
    const double within_k = std::max(edge_k, std::min(spot_k, sheath_c() + zero_celsius_k));
    return shell_.side_surface_k(within_k, air_k_) - zero_celsius_k;
}

double BedShells::lid_c() const {
    return shell_.lid_surface_k(t_k_.back(), air_k_) - zero_celsius_k;
}

double BedShells::loss_w() const {
    return shell_.loss_w_k(t_k_.back(), air_k_) * (t_k_.back() - air_k_);
}

double BedShells::stored_kwh() const {
    double sum = 0.0;
    const double start = fill_.heat_capacity.enthalpy(start_k_);
    for (std::size_t i = 0; i < shell_count; ++i) {
        sum += mass_kg_[i] * (fill_.heat_capacity.enthalpy(t_k_[i]) - start);
    }
    return sum / joules_per_kwh;
}

double BedShells::lost_kwh() const {
    return lost_j_ / joules_per_kwh;
}

double BedShells::supplied_kwh() const {
    return supplied_j_ / joules_per_kwh;
}

}  // namespace heatmatch
