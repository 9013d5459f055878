#include "bed_field_grid.hpp"
#include "level_matrix.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <vector>

#include "heatmatch/heat/bed_field.hpp"

namespace heatmatch {

namespace {

// The wall's flux is tabulated over the temperature difference to the air, for the whole range.
constexpr double lowest_excess_k = -1700.0;
constexpr std::size_t excess_count = 5200;

}  // namespace

BedField::Outside BedField::wall_flux(double wall_k) {
    if (shell_.side_u_w_m2k > 0.0) {
        return {.flux_w_m2 = shell_.side_u_w_m2k * (wall_k - air_k_), .slope = shell_.side_u_w_m2k};
    }
    if (wall_w_m2_.empty()) {
        wall_w_m2_.assign(excess_count, std::numeric_limits<double>::quiet_NaN());
    }
    const auto flux = [this](std::size_t i) {
        double& known = wall_w_m2_[i];
        if (std::isnan(known)) {
            const double excess_k = static_cast<double>(i) + lowest_excess_k;
            const double at_k = std::max(air_k_ + excess_k, 1.0);
            known = shell_.side_w_m2k(at_k, air_k_) * excess_k;
        }
        return known;
    };
    const double place = wall_k - air_k_ - lowest_excess_k;
    const auto last = static_cast<double>(excess_count - 2);
    const auto i = static_cast<std::size_t>(std::clamp(place, 0.0, last));
    const double low = flux(i);
    const double slope = flux(i + 1) - low;
    return {.flux_w_m2 = low + slope * (place - static_cast<double>(i)), .slope = slope};
}

/// The flux through a surface, by Newton for Theta there: `Theta + deep flux = Theta of the node`.
/// A `u` below zero denotes the side wall.
BedField::Outside BedField::outside(double theta, double deep_m, double u_w_m2k, double& surface) {
    constexpr int most_turns = 40;
    constexpr double close_enough = 1e-11;
    Outside out;
    for (int turn = 0; turn < most_turns; ++turn) {
        const ThetaTable::At at = grid_->table.at(surface);
        out = u_w_m2k < 0.0 ? wall_flux(at.t_k)
                            : Outside{.flux_w_m2 = u_w_m2k * (at.t_k - air_k_), .slope = u_w_m2k};
        const double steep = out.slope * at.t_slope;
        const double by = (theta - surface - deep_m * out.flux_w_m2) / (1.0 + deep_m * steep);
        surface += by;
        out.flux_w_m2 += steep * by;
        out.slope = steep / (1.0 + deep_m * steep);
        if (std::fabs(by) < close_enough * (1.0 + std::fabs(theta))) break;
    }
    return out;
}

/// Net heat conducted out of every cell.
void BedField::conduct() {
    const BedFieldGrid& grid = *grid_;
    for (std::size_t k = 0; k < grid.high; ++k) {
        const std::size_t row = k * grid.across;
        for (std::size_t i = 0; i + 1 < grid.across; ++i) {
            const double w =
                grid.outwards[i] * grid.level_m[k] * (theta_[row + i] - theta_[row + i + 1]);
            residual_[row + i] -= w;
            residual_[row + i + 1] += w;
        }
        if (k + 1 == grid.high) break;
        const std::size_t above = row + grid.across;
        for (std::size_t i = 0; i < grid.across; ++i) {
            const double w =
                grid.upwards[k] * grid.ring_m2[i] * (theta_[row + i] - theta_[above + i]);
            residual_[row + i] -= w;
            residual_[above + i] += w;
        }
    }
}

/// Heat loss through wall, lid and floor [W].
double BedField::leave() {
    const BedFieldGrid& grid = *grid_;
    double sum = 0.0;
    const auto put = [&](std::size_t cell, double area_m2, const Outside& out) {
        residual_[cell] -= area_m2 * out.flux_w_m2;
        diagonal_[cell] += area_m2 * out.slope;
        sum += area_m2 * out.flux_w_m2;
    };
    for (std::size_t k = 0; k < grid.high; ++k) {
        const std::size_t cell = (k + 1) * grid.across - 1;
        put(cell, grid.side_m2_m * grid.level_m[k],
            outside(theta_[cell], grid.wall_deep_m, -1.0, wall_theta_[k]));
    }
    const std::size_t top = (grid.high - 1) * grid.across;
    for (std::size_t i = 0; i < grid.across; ++i) {
        put(top + i, grid.lid_scale * grid.ring_m2[i],
            outside(theta_[top + i], grid.lid_deep_m, shell_.top_u_w_m2k, lid_theta_[i]));
        put(i, grid.floor_scale * grid.ring_m2[i],
            outside(theta_[i], grid.floor_deep_m, shell_.bottom_u_w_m2k, floor_theta_[i]));
    }
    return sum;
}

/// Heat balance of every cell, and its derivative with respect to Theta.
void BedField::balance(double seconds) {
    const BedFieldGrid& grid = *grid_;
    const ThetaTable::At start = grid.table.at(start_);
    extraction_w_ = 0.0;
    for (std::size_t c = 0; c < grid.cells(); ++c) {
        const ThetaTable::At at = grid.table.at(theta_[c]);
        const double holds_j =
            grid.mass_kg[c] * (at.j_kg - start.j_kg) + grid.rod_j_k[c] * (at.t_k - start.t_k);
        const double fan_w_k = extraction_w_k_ * grid.volume_share[c];
        const double fan_w = fan_w_k * (at.t_k - air_k_);
        extraction_w_ += fan_w;
        holds_j_[c] = holds_j;
        t_slope_[c] = at.t_slope;
        residual_[c] = heat_w_[c] + (base_j_[c] - holds_j) / seconds - fan_w;
        diagonal_[c] = (grid.mass_kg[c] * at.j_slope + grid.rod_j_k[c] * at.t_slope) / seconds +
                       fan_w_k * at.t_slope;
    }
    conduct();
    loss_w_ = leave();
}

void BedField::refactor(double seconds) {
    const BedFieldGrid& grid = *grid_;
    factor_.resize(LevelMatrix::size(grid.across, grid.high));
    factor_s_ = seconds;
    LevelMatrix matrix(factor_, grid.across, grid.high);
    matrix.clear();
    for (std::size_t c = 0; c < grid.cells(); ++c) {
        const std::size_t k = c / grid.across;
        const std::size_t i = c % grid.across;
        matrix.add(c, diagonal_[c]);
        if (i + 1 < grid.across) matrix.link_outwards(c, grid.outwards[i] * grid.level_m[k]);
        if (k + 1 < grid.high) matrix.link_upwards(c, grid.upwards[k] * grid.ring_m2[i]);
    }
    matrix.factor();
}

/// One implicit stage from `base_j_`: Newton, reusing the last matrix while it converges. The
/// remaining imbalance is stored in the heat of its cell, so that energy is conserved.
bool BedField::stage(double seconds) {
    constexpr int most_turns = 40;
    constexpr double close_enough = 1e-6;
    constexpr double nothing_w = 1e-9;
    constexpr double slow = 0.1;
    constexpr double longest_leap_k = 1000.0;
    constexpr double still = 1e-7;  // of Theta: less than a microkelvin, and above rounding
    double moved = 1.0;
    double before_w = std::numeric_limits<double>::infinity();
    for (int turn = 0; turn < most_turns; ++turn) {
        balance(seconds);
        double left_w = 0.0;
        for (const double w : residual_) left_w += std::fabs(w);
        if (!std::isfinite(left_w)) return false;
        const double scale_w = all_w() + std::fabs(loss_w_) + std::fabs(extraction_w_);
        if (left_w < close_enough * scale_w + nothing_w || moved < still) return true;
        if (factor_s_ != seconds || left_w > slow * before_w) refactor(seconds);
        before_w = left_w;
        change_ = residual_;
        LevelMatrix(factor_, grid_->across, grid_->high).solve(change_);
        moved = 0.0;
        for (std::size_t c = 0; c < theta_.size(); ++c) {
            const double leap = longest_leap_k / t_slope_[c];
            theta_[c] += std::clamp(change_[c], -leap, leap);
            moved = std::max(moved, std::fabs(change_[c]));
        }
    }
    return false;
}

/// Two implicit stages with one matrix, second order and without ringing. @cite alexander-1977
void BedField::advance(double seconds, int halvings_left) {
    const double gamma = 1.0 - std::sqrt(0.5);
    const double stage_s = gamma * seconds;
    const std::vector<double> theta = theta_;
    base_j_ = heat_j_;
    double lost_j = 0.0;
    double taken_j = 0.0;
    bool settled = true;
    for (const double weight : {1.0 - gamma, gamma}) {
        settled = stage(stage_s) && settled;
        lost_j += weight * seconds * loss_w_;
        taken_j += weight * seconds * extraction_w_;
        for (std::size_t c = 0; c < theta_.size(); ++c) {
            const double reached_j = holds_j_[c] + stage_s * residual_[c];
            if (weight == gamma) {
                base_j_[c] = reached_j;
            } else {
                theta_[c] += (1.0 - gamma) / gamma * (theta_[c] - theta[c]);  // initial guess
                base_j_[c] = heat_j_[c] + (1.0 - gamma) / gamma * (reached_j - base_j_[c]);
            }
        }
    }
    if (!settled && halvings_left > 0) {
        theta_ = theta;
        advance(0.5 * seconds, halvings_left - 1);
        advance(0.5 * seconds, halvings_left - 1);
        return;
    }
    heat_j_.swap(base_j_);
    for (std::size_t b = 0; b < power_w_.size(); ++b) {
        const LegLayout::Leg& leg = hottest_of(b).leg;
        const double around = mean_around(grid_->from_axis(leg.x_m, leg.y_m));
        const double diffusivity_m2_s =
            1.0 / (fill_.density_kg_m3 * grid_->table.at(around).j_slope);
        grid_->banks[b].modes.follow(following_w_[b], power_w_[b], diffusivity_m2_s, seconds);
    }
    lost_j_ += lost_j;
    taken_j_ += taken_j;
    supplied_j_ += all_w() * seconds;
}

}  // namespace heatmatch
