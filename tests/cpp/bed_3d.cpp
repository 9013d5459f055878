#include "bed_3d.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <stdexcept>
#include <vector>

namespace {

constexpr double zero_c = 273.15;
constexpr double pi = std::numbers::pi;
constexpr double coldest_k = 200.0;
constexpr double hottest_k = 2500.0;

bool mirrored(const heatmatch::LegLayout& legs) {
    const auto has = [&legs](double x, double y) {
        for (const auto& leg : legs.legs) {
            if (std::hypot(leg.x_m - x, leg.y_m - y) < 1e-6) return true;
        }
        return false;
    };
    for (const auto& leg : legs.legs) {
        if (!has(-leg.x_m, leg.y_m) || !has(leg.x_m, -leg.y_m)) return false;
    }
    return true;
}

}  // namespace

Bed3d::Bed3d(const Bed3dStore& store, const Bed3dMesh& mesh) : store_(store), mesh_(mesh) {
    if (!mirrored(store.legs)) throw std::invalid_argument("legs are not a mirrored layout");
    const heatmatch::Conductivity& conductivity = store.fill.conductivity;
    constexpr std::size_t fine = 20000;
    const double low = conductivity.theta(coldest_k);
    const double high = conductivity.theta(hottest_k);
    // The inverse is found by stepping upward, not by the library's own, which is tested here.
    double walked_k = coldest_k;
    temperature_ = EvenTable(low, high, fine, [&](double theta) {
        for (int newton = 0; newton < 50; ++newton) {
            const double by = (theta - conductivity.theta(walked_k)) / conductivity.at(walked_k);
            walked_k += by;
            if (std::fabs(by) < 1e-10) break;
        }
        return walked_k;
    });
    enthalpy_ = EvenTable(low, high, fine, [&](double theta) {
        return store.fill.heat_capacity.enthalpy(temperature_.at(theta));
    });
    const double air_k = store.air_c + zero_c;
    side_w_m2_ = EvenTable(coldest_k, hottest_k, 4600, [&](double wall_k) {
        return store.shell.side_w_m2k(wall_k, air_k) * (wall_k - air_k);
    });
    theta_of_ =
        EvenTable(coldest_k, hottest_k, fine, [&](double t_k) { return conductivity.theta(t_k); });
    build(mesh);
}

void Bed3d::build(const Bed3dMesh& mesh) {
    const double r = store_.shell.radius_m;
    std::vector<double> xs;
    std::vector<double> ys;
    for (const auto& leg : store_.legs.legs) {
        if (leg.x_m < -1e-9 || leg.y_m < -1e-9) continue;
        xs.push_back(store_.lies ? 0.5 * store_.legs.leg_length_m : leg.x_m);
        ys.push_back(leg.y_m);
    }
    x_ = quarter_axis(xs, r, mesh.near_m, mesh.growth);
    y_ = quarter_axis(ys, r, x_.near_m, mesh.growth);
    disc_ = quarter_disc_of(x_, y_, r);
    const double h = store_.shell.height_m;
    const auto halves = static_cast<std::size_t>(std::max(2.0, std::round(0.5 * h / mesh.high_m)));
    levels_ = 2 * halves + 1;  // odd, so that one level is at half the height
    level_m_ = h / static_cast<double>(levels_);
    const double density = store_.fill.density_kg_m3;
    for (const auto& column : disc_.columns)
        mass_kg_.push_back(density * column.area_m2 * level_m_);
    place_legs();
    surface();
    const std::size_t n = disc_.columns.size() * levels_;
    theta_.assign(n, store_.fill.conductivity.theta(store_.start_c + zero_c));
    for (auto* work : {&residual_, &diagonal_, &change_, &search_, &product_, &inverse_}) {
        work->assign(n, 0.0);
    }
    start_j_.resize(n);
    for (std::size_t c = 0; c < n; ++c) start_j_[c] = enthalpy(c);
    conduction_diagonal();
}

void Bed3d::lay_legs() {
    // A leg between two levels is split by its distance to each.
    const double at =
        std::max(0.0, store_.low_m.value_or(0.5 * store_.shell.height_m) / level_m_ - 0.5);
    for (std::size_t k = 0; k < levels_; ++k) {
        leg_share_.push_back(std::max(0.0, 1.0 - std::fabs(at - static_cast<double>(k))));
    }
    const double length = store_.legs.leg_length_m;
    for (const auto& leg : store_.legs.legs) {
        if (leg.y_m < -1e-9) continue;
        const std::size_t j = y_.cell_of(leg.y_m);
        for (std::size_t c = 0; c < disc_.columns.size(); ++c) {
            const auto& column = disc_.columns[c];
            if (column.j != j) continue;
            const double along =
                std::min(0.5 * length, x_.faces_m[column.i + 1]) - x_.faces_m[column.i];
            const double share = std::max(0.0, along) / length * (leg.y_m < 1e-9 ? 0.5 : 1.0);
            if (share > 0.0) sources_.push_back({.column = c, .share = share});
        }
    }
}

void Bed3d::place_legs() {
    if (store_.lies) return lay_legs();
    const double length = store_.legs.leg_length_m;
    const double low = store_.low_m.value_or(0.5 * (store_.shell.height_m - length));
    for (std::size_t k = 0; k < levels_; ++k) {
        const double from = std::max(low, static_cast<double>(k) * level_m_);
        const double to = std::min(low + length, static_cast<double>(k + 1) * level_m_);
        leg_share_.push_back(std::max(0.0, to - from) / length);
    }
    for (std::size_t index = 0; index < store_.legs.legs.size(); ++index) {
        const auto& leg = store_.legs.legs[index];
        if (leg.x_m < -1e-9 || leg.y_m < -1e-9) continue;
        const double weight = store_.weights.empty() ? 1.0 : store_.weights[index];
        const std::size_t i = x_.cell_of(std::fabs(leg.x_m));
        const std::size_t j = y_.cell_of(std::fabs(leg.y_m));
        for (std::size_t c = 0; c < disc_.columns.size(); ++c) {
            if (disc_.columns[c].i != i || disc_.columns[c].j != j) continue;
            const double share = (leg.x_m < 1e-9 ? 0.5 : 1.0) * (leg.y_m < 1e-9 ? 0.5 : 1.0);
            sources_.push_back({.column = c, .share = share, .leg = index, .weight = weight});
        }
    }
}

void Bed3d::conduction_diagonal() {
    conduction_.assign(theta_.size(), 0.0);
    for (const auto& link : disc_.links) {
        for (std::size_t k = 0; k < levels_; ++k) {
            conduction_[link.a * levels_ + k] += link.form * level_m_;
            conduction_[link.b * levels_ + k] += link.form * level_m_;
        }
    }
    for (std::size_t c = 0; c < theta_.size(); ++c) {
        const std::size_t k = c % levels_;
        const double upright = disc_.columns[c / levels_].area_m2 / level_m_;
        conduction_[c] += upright * ((k > 0 ? 1.0 : 0.0) + (k + 1 < levels_ ? 1.0 : 0.0));
    }
}

void Bed3d::surface() {
    const double start_k = store_.start_c + zero_c;
    for (std::size_t c = 0; c < disc_.columns.size(); ++c) {
        const auto& column = disc_.columns[c];
        const std::size_t first = c * levels_;
        outsides_.push_back({first, column.area_m2, 0.5 * level_m_, 2, start_k});
        outsides_.push_back({first + levels_ - 1, column.area_m2, 0.5 * level_m_, 1, start_k});
        if (column.arc_m <= 0.0) continue;
        for (std::size_t k = 0; k < levels_; ++k) {
            outsides_.push_back({first + k, column.arc_m * level_m_, column.deep_m, 0, start_k});
        }
    }
}

void Bed3d::run(std::span<const double> power_w, const std::vector<std::size_t>& legs,
                double seconds) {
    double all_w = 0.0;
    std::vector<double> leg_w;
    for (std::size_t i = 0; i < legs.size(); ++i) {
        all_w += power_w[i];
        leg_w.resize(leg_w.size() + legs[i], power_w[i] / static_cast<double>(legs[i]));
    }
    const double mean_w = all_w / static_cast<double>(leg_w.size());
    for (Source& source : sources_) source.weight = leg_w[source.leg] / mean_w;
    run(all_w, seconds);
}

double Bed3d::sheath_c() const {
    return sheath_c(0, store_.legs.legs.size());
}

double Bed3d::sheath_c(std::size_t first, std::size_t last) const {
    const double lattice_m =
        0.14 * std::hypot(x_.near_m, y_.near_m);  // 0.198 of the side of a square cell
    const double q = power_w_ / store_.legs.heated_length_m();
    double hottest = coldest_k;
    for (const Source& source : sources_) {
        if (source.leg < first || source.leg >= last) continue;
        const double theta =
            theta_[source.column * levels_ + levels_ / 2] +
            source.weight * q / (2.0 * pi) * std::log(lattice_m / store_.legs.radius_m);
        hottest = std::max(hottest, temperature_.at(theta));
    }
    return hottest - zero_c;
}

double Bed3d::centre_c() const {
    return temperature_.at(theta_[levels_ / 2]) - zero_c;
}

double Bed3d::probe_c(bool on_x, double from_axis_m) const {
    double inner_m = 0.0;
    double inner = 0.0;
    bool any = false;
    for (std::size_t c = 0; c < disc_.columns.size(); ++c) {
        const auto& column = disc_.columns[c];
        if ((on_x ? column.j : column.i) != 0) continue;
        const double outer_m = on_x ? column.x_m : column.y_m;
        const double outer = theta_[c * levels_ + levels_ / 2];
        if (outer_m >= from_axis_m) {  // Theta is linear between cell centers
            const double share = any ? (from_axis_m - inner_m) / (outer_m - inner_m) : 1.0;
            return temperature_.at(inner + share * (outer - inner)) - zero_c;
        }
        inner_m = outer_m;
        inner = outer;
        any = true;
    }
    throw std::invalid_argument("the probe is at the wall");
}

double Bed3d::bed_mean_c() const {
    double sum = 0.0;
    double mass = 0.0;
    for (std::size_t c = 0; c < theta_.size(); ++c) {
        sum += mass_kg_[c / levels_] * temperature_.at(theta_[c]);
        mass += mass_kg_[c / levels_];
    }
    return sum / mass - zero_c;
}

double Bed3d::hottest_c(int kind) const {
    double hottest = 0.0;
    for (const Outside& outside : outsides_) {
        if (outside.kind == kind) hottest = std::max(hottest, outside.surface_k);
    }
    return hottest - zero_c;
}

double Bed3d::wall_c() const {
    return hottest_c(0);
}

double Bed3d::lid_c() const {
    return hottest_c(1);
}

double Bed3d::floor_c() const {
    return hottest_c(2);
}

double Bed3d::mean_c(int kind) const {
    double sum = 0.0;
    double area_m2 = 0.0;
    for (const Outside& outside : outsides_) {
        if (outside.kind != kind) continue;
        sum += outside.area_m2 * outside.surface_k;
        area_m2 += outside.area_m2;
    }
    return sum / area_m2 - zero_c;
}

double Bed3d::wall_mean_c() const {
    return mean_c(0);
}

double Bed3d::lid_mean_c() const {
    return mean_c(1);
}

double Bed3d::stored_j() const {
    double sum = 0.0;
    for (std::size_t c = 0; c < theta_.size(); ++c) sum += enthalpy(c) - start_j_[c];
    return 4.0 * sum;
}

double Bed3d::volume_m3() const {
    double sum = 0.0;
    for (const auto& column : disc_.columns) sum += column.area_m2;
    return 4.0 * sum * store_.shell.height_m;
}

double Bed3d::side_m2() const {
    double sum = 0.0;
    for (const auto& column : disc_.columns) sum += column.arc_m;
    return 4.0 * sum * store_.shell.height_m;
}
