#include "heatmatch/solar/energy_curve.hpp"

#include "diode_kernel.hpp"
#include "mixed_sums.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include <boost/math/tools/roots.hpp>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using solar_sentences::say;

namespace {

constexpr double first_ratio = 0.1;  // of Vmp/Imp
constexpr double last_ratio = 30.0;

void check_resistance(double resistance_ohm, const char* field) {
    if (resistance_ohm >= 0.0) return;
    throw InvalidInput(ErrorDetail{.part = "energy curve",
                                   .field = field,
                                   .value = format_number(resistance_ohm) + " ohm",
                                   .allowed = ">= 0 ohm",
                                   .remedy = say<"solar.positive_ohms">()});
}

std::vector<double> geometric_grid(double first, double last, std::size_t points) {
    std::vector<double> grid(points);
    const double step = std::log(last / first) / static_cast<double>(points - 1);
    for (std::size_t i = 0; i < points; ++i) {
        grid[i] = first * std::exp(step * static_cast<double>(i));
    }
    return grid;
}

/// Grid around Vmp/Imp, or, where the weather is never bright, around the match at its brightest
/// moment, where the resistance is higher in proportion.
std::vector<double> grid_for(const WeatherNodes& nodes, double stc_match_ohm, std::size_t points) {
    if (!(stc_match_ohm > 0.0) || std::isinf(stc_match_ohm) || points < 2) {
        const bool few = points < 2;
        throw InvalidInput(ErrorDetail{
            .part = "energy curve",
            .field = few ? "points" : "stc_match_ohm",
            .value = few ? std::to_string(points) : format_number(stc_match_ohm) + " ohm",
            .allowed = few ? ">= 2" : "> 0 ohm and finite",
            .remedy = few ? say<"solar.default_points">(with<"points">(48.0))
                          : say<"solar.label_ohms">()});
    }
    constexpr double dimmest_w_m2 = 10.0;
    double brightest = dimmest_w_m2;
    for (double irradiance : nodes.irradiance_w_m2) brightest = std::max(brightest, irradiance);
    const double middle = stc_match_ohm * std::max(1.0, stc_irradiance_w_m2 / (1.5 * brightest));
    return geometric_grid(first_ratio * middle, last_ratio * middle, points);
}

/// The plane with the brightest node.
const WeatherNodes& brightest_plane(const PlacedArray& placed) {
    if (placed.planes.empty()) {
        throw InvalidInput(ErrorDetail{.part = "energy curve",
                                       .field = "planes",
                                       .value = "none",
                                       .allowed = "at least one",
                                       .remedy = say<"solar.one_sky">()});
    }
    const auto brightest = [](const WeatherNodes& plane) {
        const auto& sun = plane.irradiance_w_m2;
        return sun.empty() ? 0.0 : *std::max_element(sun.begin(), sun.end());
    };
    return *std::max_element(
        placed.planes.begin(), placed.planes.end(),
        [&](const WeatherNodes& a, const WeatherNodes& b) { return brightest(a) < brightest(b); });
}

}  // namespace

EnergyCurve::EnergyCurve(const SingleDiode& diode, double noct_c, const WeatherNodes& nodes,
                         double stc_match_ohm, VectorWidth width, std::size_t points)
    : stc_match_ohm_(stc_match_ohm),
      ohm_(grid_for(nodes, stc_match_ohm, points)),
      kwh_(points, 0.0),
      slope_(points, 0.0),
      hours_(nodes.hours) {
    const std::size_t count = nodes.size();
    for (auto* list : {&light_current_a_, &ln_saturation_current_, &series_resistance_ohm_,
                       &shunt_conductance_s_, &ideality_v_}) {
        list->reserve(count);
    }
    const double rise = (noct_c - 20.0) / 800.0;
    std::size_t weighted = 0;
    for (std::size_t k = 0; k < count; ++k) {
        const DiodeCurve at = diode.at(nodes.irradiance_w_m2[k],
                                       nodes.base_c[k] + nodes.heating_irradiance_w_m2[k] * rise);
        light_current_a_.push_back(at.light_current_a);
        ln_saturation_current_.push_back(at.ln_saturation_current);
        series_resistance_ohm_.push_back(at.series_resistance_ohm);
        shunt_conductance_s_.push_back(at.shunt_conductance_s);
        ideality_v_.push_back(at.ideality_v);
        if (hours_[k] > 0.0) weighted = k + 1;  // those of the extremes are last
    }
    kernel::build_of(width).energy_sums({.light_current_a = light_current_a_.data(),
                                         .ln_saturation_current = ln_saturation_current_.data(),
                                         .series_resistance_ohm = series_resistance_ohm_.data(),
                                         .shunt_conductance_s = shunt_conductance_s_.data(),
                                         .ideality_v = ideality_v_.data(),
                                         .count = weighted},
                                        {.hours = hours_.data(),
                                         .resistance_ohm = ohm_.data(),
                                         .count = points,
                                         .energy_wh = kwh_.data(),
                                         .slope_wh = slope_.data()});
    for (double& energy : kwh_) energy /= 1000.0;
    for (double& slope : slope_) slope /= 1000.0;
}

EnergyCurve::EnergyCurve(PlacedArray placed, double stc_match_ohm, std::size_t points)
    : stc_match_ohm_(stc_match_ohm),
      ohm_(grid_for(brightest_plane(placed), stc_match_ohm, points)),
      kwh_(points, 0.0),
      slope_(points, 0.0),
      hours_(placed.planes.front().hours),
      placed_(std::make_shared<const PlacedArray>(std::move(placed))) {
    mixed_sums(placed_->array, placed_->places, placed_->planes, ohm_, kwh_, slope_);
    for (double& energy : kwh_) energy /= 1000.0;
    for (double& slope : slope_) slope /= 1000.0;
}

OperatingPoint EnergyCurve::point(std::size_t node, double resistance_ohm) const {
    return placed_ ? placed_->at(node).into_resistance(resistance_ohm)
                   : curve(node).into_resistance(resistance_ohm);
}

double EnergyCurve::open_circuit_voltage_v(std::size_t node) const {
    return placed_ ? placed_->at(node).open_circuit_voltage_v()
                   : curve(node).open_circuit_voltage_v();
}

CurveTable EnergyCurve::table() const {
    const double step = std::log(last_ratio / first_ratio) / static_cast<double>(ohm_.size() - 1);
    return {.ln_first = std::log(ohm_.front()),
            .step = step,
            .per_step = 1.0 / step,
            .value = kwh_.data(),
            .slope = slope_.data(),
            .count = ohm_.size()};
}

double EnergyCurve::delivered_kwh(double resistance_ohm) const {
    check_resistance(resistance_ohm, "resistance_ohm");
    if (resistance_ohm == 0.0 || ohm_.empty()) return 0.0;
    return table().at(std::log(resistance_ohm));
}

double EnergyCurve::delivered_kwh(double resistance_ohm, double wire_ohm) const {
    check_resistance(wire_ohm, "wire_ohm");
    if (std::isinf(resistance_ohm)) return 0.0;
    const double total = resistance_ohm + wire_ohm;
    return total > 0.0 ? delivered_kwh(total) * resistance_ohm / total : 0.0;
}

double EnergyCurve::slope_kwh(double resistance_ohm) const {
    check_resistance(resistance_ohm, "resistance_ohm");
    if (resistance_ohm == 0.0 || ohm_.empty()) return 0.0;
    return table().slope_at(std::log(resistance_ohm));
}

double EnergyCurve::mpp_kwh() const {
    if (placed_) {
        double sum = 0.0;
        for (std::size_t node = 0; node < hours_.size(); ++node) {
            if (hours_[node] <= 0.0) continue;
            sum += hours_[node] * placed_->at(node).maximum_power().power_w;
        }
        return sum / 1000.0;
    }
    std::vector<double> power_w(hours_.size());
    maximum_powers({.light_current_a = light_current_a_,
                    .ln_saturation_current = ln_saturation_current_,
                    .series_resistance_ohm = series_resistance_ohm_,
                    .shunt_conductance_s = shunt_conductance_s_,
                    .ideality_v = ideality_v_},
                   power_w);
    return std::inner_product(hours_.begin(), hours_.end(), power_w.begin(), 0.0) / 1000.0;
}

double EnergyCurve::best_resistance_ohm() const {
    return best_resistance_ohm(0.0);
}

double EnergyCurve::best_resistance_ohm(double wire_ohm) const {
    check_resistance(wire_ohm, "wire_ohm");
    if (ohm_.empty()) return 0.0;
    const CurveTable look = table();
    // d/d(ln R) of E(R + Rw) R/(R + Rw), over R/(R + Rw): decreases through zero once.
    const auto slope = [&](double ln_ohm) {
        const double ohm = std::exp(ln_ohm);
        const double total = ohm + wire_ohm;
        return look.slope_at(std::log(total)) * ohm / total +
               look.at(std::log(total)) * wire_ohm / total;
    };
    double low = look.ln_first;
    double high = look.ln_first + look.step * static_cast<double>(ohm_.size() - 1);
    constexpr double further = 4.6;  // a factor of one hundred
    if (slope(low) <= 0.0) return ohm_.front();
    if (slope(high) >= 0.0) high += further;
    if (slope(high) >= 0.0) return std::exp(high);
    std::uintmax_t steps = 100;
    const auto [left, right] = boost::math::tools::toms748_solve(
        slope, low, high, boost::math::tools::eps_tolerance<double>(40), steps);
    return std::exp(0.5 * (left + right));
}

LargestPoint EnergyCurve::largest(double resistance_ohm) const {
    check_resistance(resistance_ohm, "resistance_ohm");
    LargestPoint largest;
    for (std::size_t k = 0; k < hours_.size(); ++k) {
        const OperatingPoint now = point(k, resistance_ohm);
        largest.power_w = std::max(largest.power_w, now.power_w);
        largest.voltage_v = std::max(largest.voltage_v, now.voltage_v);
        largest.current_a = std::max(largest.current_a, now.current_a);
    }
    return largest;
}

double EnergyCurve::hours_above(double resistance_ohm, double power_w) const {
    check_resistance(resistance_ohm, "resistance_ohm");
    double hours = 0.0;
    for (std::size_t k = 0; k < hours_.size(); ++k) {
        if (hours_[k] > 0.0 && point(k, resistance_ohm).power_w > power_w) {
            hours += hours_[k];
        }
    }
    return hours;
}

double EnergyCurve::near_short_circuit_share(double resistance_ohm) const {
    check_resistance(resistance_ohm, "resistance_ohm");
    double near = 0.0;
    double all = 0.0;
    for (std::size_t k = 0; k < hours_.size(); ++k) {
        if (hours_[k] <= 0.0) continue;
        all += hours_[k];
        if (point(k, resistance_ohm).voltage_v < 0.5 * open_circuit_voltage_v(k)) {
            near += hours_[k];
        }
    }
    return all > 0.0 ? near / all : 0.0;
}

DiodeCurve EnergyCurve::curve(std::size_t node) const {
    return {.light_current_a = light_current_a_[node],
            .ln_saturation_current = ln_saturation_current_[node],
            .series_resistance_ohm = series_resistance_ohm_[node],
            .shunt_conductance_s = shunt_conductance_s_[node],
            .ideality_v = ideality_v_[node]};
}

double exact_kwh(const SingleDiode& diode, double noct_c, const Weather& weather,
                 double resistance_ohm) {
    check_resistance(resistance_ohm, "resistance_ohm");
    double sum = 0.0;
    for (std::size_t row = 0; row < weather.size(); ++row) {
        if (weather.irradiance_w_m2[row] <= 0.0) continue;
        const DiodeCurve at =
            diode.at(weather.irradiance_w_m2[row], weather.cell_temperature_c(row, noct_c));
        sum += weather.hours[row] * at.into_resistance(resistance_ohm).power_w;
    }
    return sum / 1000.0;
}

}  // namespace heatmatch
