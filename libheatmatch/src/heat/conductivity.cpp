#include "heatmatch/heat/conductivity.hpp"

#include "base/sentences.hpp"
#include "heat_input.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/units.hpp"

namespace heatmatch {

using base_sentences::from_memory;
using heat_sentences::say;

namespace {

constexpr double reference_k = 293.15;
// 4 sigma/(2/0.9 - 1): radiation across a gap between grains of emissivity 0.9.
constexpr double grain_radiation_w_m2k4 = 1.856e-7;
constexpr double search_from_k = 1.0;
constexpr double search_to_k = 6000.0;

double cube(double x) {
    return x * x * x;
}

/// For large stones with a low k20 the conductivity would become negative in the cold: below the
/// reference temperature at most half of k20 counts as radiation.
double radiation_at(double t_k, double radiation, double k20_w_mk) {
    if (t_k >= reference_k) return radiation;
    return std::min(radiation, 0.5 * k20_w_mk / cube(reference_k));
}

}  // namespace

Conductivity Conductivity::of_grains(double k20_w_mk, double grain_mm) {
    Conductivity result;
    result.k20_w_mk_ = k20_w_mk;
    result.radiation_ = grain_radiation_w_m2k4 * grain_mm / 1000.0;
    return result;
}

Conductivity Conductivity::of_table(const std::vector<TablePoint>& table, double factor) {
    Conductivity result;
    for (const TablePoint& point : table) {
        result.points_.push_back(
            {.t_k = point.t_c + zero_celsius_k, .k_w_mk = point.value * factor});
    }
    if (result.points_.empty()) return result;
    double sum = 0.0;
    for (std::size_t i = 1; i < result.points_.size(); ++i) {
        const Point& before = result.points_[i - 1];
        Point& point = result.points_[i];
        sum += 0.5 * (before.k_w_mk + point.k_w_mk) * (point.t_k - before.t_k);
        point.theta_w_m = sum;
    }
    const double shift = result.theta(reference_k);
    for (Point& point : result.points_) point.theta_w_m -= shift;
    return result;
}

Conductivity Conductivity::constant(double k_w_mk) {
    return of_table({{20.0, k_w_mk}});
}

double Conductivity::at(double t_k) const {
    if (points_.empty()) {
        return k20_w_mk_ * std::sqrt(std::sqrt(t_k / reference_k)) +
               radiation_at(t_k, radiation_, k20_w_mk_) * (cube(t_k) - cube(reference_k));
    }
    if (t_k <= points_.front().t_k) return points_.front().k_w_mk;
    if (t_k >= points_.back().t_k) return points_.back().k_w_mk;
    std::size_t i = 1;
    while (points_[i].t_k < t_k) ++i;
    const Point& a = points_[i - 1];
    const Point& b = points_[i];
    return a.k_w_mk + (b.k_w_mk - a.k_w_mk) * (t_k - a.t_k) / (b.t_k - a.t_k);
}

double Conductivity::theta(double t_k) const {
    if (points_.empty()) {
        const double x = t_k / reference_k;
        const double lattice = k20_w_mk_ * reference_k / 1.25 * (x * std::sqrt(std::sqrt(x)) - 1.0);
        const double reference3 = cube(reference_k);
        return lattice + radiation_at(t_k, radiation_, k20_w_mk_) *
                             ((t_k * cube(t_k) - reference_k * reference3) / 4.0 -
                              reference3 * (t_k - reference_k));
    }
    if (t_k <= points_.front().t_k) {
        return points_.front().theta_w_m + points_.front().k_w_mk * (t_k - points_.front().t_k);
    }
    if (t_k >= points_.back().t_k) {
        return points_.back().theta_w_m + points_.back().k_w_mk * (t_k - points_.back().t_k);
    }
    std::size_t i = 1;
    while (points_[i].t_k < t_k) ++i;
    const Point& a = points_[i - 1];
    return a.theta_w_m + 0.5 * (a.k_w_mk + at(t_k)) * (t_k - a.t_k);
}

double Conductivity::temperature_k(double theta_w_m) const {
    // Newton from the present slope; Theta rises with T, so a bracket bounds it.
    double low = search_from_k;
    double high = search_to_k;
    double t = std::clamp(reference_k + theta_w_m / at(reference_k), low, high);
    constexpr int most_steps = 60;
    constexpr double close_enough_k = 1e-9;
    for (int step = 0; step < most_steps; ++step) {
        const double error = theta(t) - theta_w_m;
        (error > 0.0 ? high : low) = t;
        double next = t - error / at(t);
        if (!(next > low && next < high)) next = 0.5 * (low + high);
        if (std::fabs(next - t) < close_enough_k * t) return next;
        t = next;
    }
    return t;
}

double Conductivity::mean(double a_k, double b_k) const {
    constexpr double same_k = 1e-3;
    if (std::fabs(b_k - a_k) < same_k) return at(0.5 * (a_k + b_k));
    return (theta(b_k) - theta(a_k)) / (b_k - a_k);
}

HeatCapacity::HeatCapacity(const std::vector<TablePoint>& table_j_kgk)
    : table_(table_j_kgk.empty() ? Conductivity::constant(0.0)
                                 : Conductivity::of_table(table_j_kgk)) {}

double HeatCapacity::at(double t_k) const {
    return table_.at(t_k);
}

double HeatCapacity::enthalpy(double t_k) const {
    return table_.theta(t_k);
}

double HeatCapacity::mean(double a_k, double b_k) const {
    return table_.mean(a_k, b_k);
}

BedFill bed_fill(const Medium& medium, ConductivityEnd end, bool moist) {
    check_fill(medium);
    BedFill fill{.heat_capacity = HeatCapacity(medium.heat_capacity_j_kgk),
                 .density_kg_m3 = medium.density_kg_m3};
    const std::string title = "medium \"" + medium.id + '"';
    const bool wet = moist && medium.moist_k_w_mk;
    const double typical = wet ? *medium.moist_k_w_mk : medium.k20_w_mk;
    const auto& known_low = wet ? medium.moist_k_low_w_mk : medium.k20_low_w_mk;
    const auto& known_high = wet ? medium.moist_k_high_w_mk : medium.k20_high_w_mk;
    // Not above the low end of dry sand: 0.17 of 0.27.
    const double default_low = wet ? 0.75 : 0.62;
    constexpr double default_high = 1.3;
    if (moist && !wet) {
        fill.assumed.push_back({title, "moist_k_w_mk", say<"heat.as_dry">(), from_memory()});
    }
    double k20 = typical;
    if (end != ConductivityEnd::typical) {
        const bool low = end == ConductivityEnd::low;
        const auto& known = low ? known_low : known_high;
        k20 = known.value_or(typical * (low ? default_low : default_high));
        if (!known) {
            const std::string field =
                std::string(wet ? "moist_k" : "k20") + (low ? "_low_w_mk" : "_high_w_mk");
            fill.assumed.push_back(
                {title, field, sentence_of(Amount{k20, unit::watt_per_m_k}), from_memory()});
        }
    }
    if (!medium.conductivity_w_mk.empty() && !wet) {
        fill.conductivity = Conductivity::of_table(medium.conductivity_w_mk, k20 / medium.k20_w_mk);
    } else if (medium.form == MediumForm::granular && !wet) {
        constexpr double default_grain_mm = 0.5;
        if (!medium.grain_mm) {
            fill.assumed.push_back({title, "grain_mm",
                                    sentence_of(Amount{default_grain_mm, unit::millimetre}),
                                    from_memory()});
        }
        fill.conductivity =
            Conductivity::of_grains(k20, medium.grain_mm.value_or(default_grain_mm));
    } else {
        fill.conductivity = Conductivity::constant(k20);
    }
    return fill;
}

Sentences fill_warnings(const Medium& medium) {
    Sentences warnings;
    // Metal grains conduct more: turnings and shot are denser than any sand.
    constexpr double dry_sand_most_w_mk = 0.6;
    constexpr double metal_density = 1900.0;
    const bool measured = !medium.conductivity_w_mk.empty();
    if (medium.form == MediumForm::granular && !measured && medium.k20_w_mk > dry_sand_most_w_mk &&
        medium.density_kg_m3 < metal_density) {
        warnings.push_back(say<"heat.moist_ground">(
            with<"medium">(medium.id), with<"field">("k20_w_mk"),
            with<"given">(medium.k20_w_mk, unit::watt_per_m_k),
            with<"low">({0.17, unit::watt_per_m_k, 3, Shown::number}),
            with<"high">(0.35, unit::watt_per_m_k), with<"moist">("moist_k_w_mk")));
    }
    return warnings;
}

}  // namespace heatmatch
