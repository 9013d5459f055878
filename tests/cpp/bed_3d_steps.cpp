#include "bed_3d.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

namespace {

constexpr double zero_c = 273.15;

}  // namespace

double Bed3d::flux(Outside& outside, double theta, double& slope) const {
    const double air_k = store_.air_c + zero_c;
    const double u = outside.kind == 1 ? store_.shell.top_u_w_m2k : store_.shell.bottom_u_w_m2k;
    double surface_k = outside.surface_k;
    double leaves = 0.0;
    double steep = 0.0;
    double k = 1.0;
    for (int newton = 0; newton < 60; ++newton) {
        leaves = outside.kind == 0 ? side_w_m2_.at(surface_k) : u * (surface_k - air_k);
        steep = outside.kind == 0 ? side_w_m2_.slope(surface_k) : u;
        k = theta_of_.slope(surface_k);
        const double by = (theta - theta_of_.at(surface_k) - outside.deep_m * leaves) /
                          (k + outside.deep_m * steep);
        surface_k += by;
        if (std::fabs(by) < 1e-9) break;
    }
    outside.surface_k = surface_k;
    slope = steep / (k + outside.deep_m * steep);
    return leaves;
}

double Bed3d::outward() {
    double sum = 0.0;
    for (Outside& outside : outsides_) {
        double slope = 0.0;
        const double leaves = outside.area_m2 * flux(outside, theta_[outside.cell], slope);
        sum += leaves;
        residual_[outside.cell] -= leaves;
        diagonal_[outside.cell] += outside.area_m2 * slope;
    }
    return sum;
}

/// Heat flow out of every cell by conduction.
void Bed3d::conduct(const std::vector<double>& v, std::vector<double>& out) const {
    std::fill(out.begin(), out.end(), 0.0);
    for (const auto& link : disc_.links) {
        const double g = link.form * level_m_;
        const double* a = v.data() + link.a * levels_;
        const double* b = v.data() + link.b * levels_;
        double* out_a = out.data() + link.a * levels_;
        double* out_b = out.data() + link.b * levels_;
        for (std::size_t k = 0; k < levels_; ++k) {
            const double w = g * (a[k] - b[k]);
            out_a[k] += w;
            out_b[k] -= w;
        }
    }
    for (std::size_t c = 0; c < disc_.columns.size(); ++c) {
        const double g = disc_.columns[c].area_m2 / level_m_;
        const double* a = v.data() + c * levels_;
        double* out_a = out.data() + c * levels_;
        for (std::size_t k = 0; k + 1 < levels_; ++k) {
            const double w = g * (a[k] - a[k + 1]);
            out_a[k] += w;
            out_a[k + 1] -= w;
        }
    }
}

/// Conjugate gradients with the diagonal as preconditioner. A hundredth of the residual suffices
/// within Newton's method, which repeats it.
void Bed3d::solve() {
    const std::size_t n = theta_.size();
    for (std::size_t c = 0; c < n; ++c) inverse_[c] = 1.0 / (diagonal_[c] + conduction_[c]);
    std::fill(change_.begin(), change_.end(), 0.0);
    double rho = 0.0;
    for (std::size_t c = 0; c < n; ++c) {
        search_[c] = inverse_[c] * residual_[c];
        rho += search_[c] * residual_[c];
    }
    const double enough = 1e-4 * rho;
    for (int turn = 0; turn < 400 && rho > enough; ++turn) {
        conduct(search_, product_);
        double curve = 0.0;
        for (std::size_t c = 0; c < n; ++c) {
            product_[c] += diagonal_[c] * search_[c];
            curve += product_[c] * search_[c];
        }
        const double alpha = rho / curve;
        double next = 0.0;
        for (std::size_t c = 0; c < n; ++c) {
            change_[c] += alpha * search_[c];
            residual_[c] -= alpha * product_[c];
            next += inverse_[c] * residual_[c] * residual_[c];
        }
        const double beta = next / rho;
        rho = next;
        for (std::size_t c = 0; c < n; ++c)
            search_[c] = inverse_[c] * residual_[c] + beta * search_[c];
    }
    for (std::size_t c = 0; c < n; ++c) theta_[c] += change_[c];
}

double Bed3d::stage(const std::vector<double>& base, double step_s, double power_w) {
    const std::size_t n = theta_.size();
    const double leg_w = power_w / static_cast<double>(store_.legs.legs.size());
    double lost_w = 0.0;
    for (int newton = 0; newton < 30; ++newton) {
        conduct(theta_, residual_);
        double moved = 0.0;
        for (std::size_t c = 0; c < n; ++c) {
            const double mass = mass_kg_[c / levels_];
            residual_[c] = -residual_[c] - (mass * enthalpy_.at(theta_[c]) - base[c]) / step_s;
            diagonal_[c] = mass * enthalpy_.slope(theta_[c]) / step_s;
        }
        for (const Source& source : sources_) {
            for (std::size_t k = 0; k < levels_; ++k) {
                residual_[source.column * levels_ + k] +=
                    source.share * source.weight * leg_w * leg_share_[k];
            }
        }
        lost_w = outward();
        for (const double w : residual_) moved += std::fabs(w);
        if (moved < 1e-6 * (0.25 * power_w + std::fabs(lost_w)) + 1e-9) break;
        solve();
    }
    return lost_w;
}

void Bed3d::run(double power_w, double seconds) {
    const double gamma = 1.0 - std::sqrt(0.5);
    const std::size_t n = theta_.size();
    std::vector<double> base(n);
    std::vector<double> now(n);
    double done = 0.0;
    double step = mesh_.first_step_s;
    power_w_ = power_w;
    while (done < seconds * (1.0 - 1e-12)) {
        const double left = seconds - done;
        const double dt = step >= left ? left : (2.0 * step > left ? 0.5 * left : step);
        for (std::size_t c = 0; c < n; ++c) now[c] = base[c] = enthalpy(c);
        const double first_w = stage(base, gamma * dt, power_w);
        for (std::size_t c = 0; c < n; ++c)
            base[c] = now[c] + (1.0 - gamma) / gamma * (enthalpy(c) - now[c]);
        const double second_w = stage(base, gamma * dt, power_w);
        lost_j_ += dt * ((1.0 - gamma) * first_w + gamma * second_w);
        done += dt;
        step = std::min(1.25 * step, mesh_.longest_step_s);
    }
    supplied_j_ += power_w * seconds;
}
