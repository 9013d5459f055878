#include "heatmatch/solar/mixed_array_curve.hpp"

#include "falling_root.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <tuple>
#include <utility>

#include <boost/math/tools/roots.hpp>

namespace heatmatch {

namespace {

PanelPoint panel_point(const MixedArrayCurve::Panel& panel, double current_a) {
    PanelPoint point{.current_a = current_a};
    for (const DiodeCurve& curve : panel.substrings) {
        const EqualSubstrings one{.curve = curve, .count = 1.0};
        double volts = StringCurve{.substrings = {one}}.at_current(current_a).voltage_v;
        const bool conducts = panel.bypass_v && volts < -*panel.bypass_v;
        point.bypassed.push_back(conducts);
        if (conducts) {
            volts = -*panel.bypass_v;
            // The diode carries what the substring cannot at that voltage.
            point.bypass_w += *panel.bypass_v * std::max(0.0, current_a - one.current_a(volts));
        }
        point.voltage_v += volts;
    }
    point.power_w = point.voltage_v * current_a;
    return point;
}

}  // namespace

MixedArrayCurve::MixedArrayCurve(std::vector<String> strings) : strings_(std::move(strings)) {
    double most_v = 0.0;
    double least_v = std::numeric_limits<double>::infinity();
    for (const String& string : strings_) {
        const double open_v = string.curve.open_circuit_voltage_v();
        most_v = std::max(most_v, open_v);
        least_v = std::min(least_v, open_v);
    }
    if (strings_.size() == 1 || most_v - least_v < 1e-14 * most_v) {
        open_v_ = most_v;
        return;
    }
    const auto surplus = [&](double voltage_v) {
        const Sum sum = sum_at(voltage_v);
        return ValueAndSlope{sum.current_a, sum.slope_s, sum.scale_a};
    };
    open_v_ =
        surplus(most_v).value >= 0.0 ? most_v : falling_root(surplus, least_v, most_v, most_v);
}

MixedArrayCurve::Sum MixedArrayCurve::sum_at(double voltage_v) const {
    Sum sum;
    for (const String& string : strings_) {
        const double current = string.curve.current_a(voltage_v);
        sum.current_a += current;
        sum.scale_a += std::fabs(current);
        if (current == 0.0 && string.curve.blocking_v) continue;
        sum.slope_s += 1.0 / string.curve.at_current(current).slope_ohm;
    }
    return sum;
}

double MixedArrayCurve::current_a(double voltage_v) const {
    return sum_at(voltage_v).current_a;
}

double MixedArrayCurve::voltage_v(double current_a) const {
    if (strings_.size() == 1) {
        const StringCurve& only = strings_.front().curve;
        return std::max(0.0, only.at_current(current_a).voltage_v - only.blocking_v.value_or(0.0));
    }
    const auto surplus = [&](double voltage_v) {
        const Sum sum = sum_at(voltage_v);
        return ValueAndSlope{sum.current_a - current_a, sum.slope_s, sum.scale_a};
    };
    if (current_a <= 0.0) return open_v_;
    if (surplus(0.0).value <= 0.0) return 0.0;
    return falling_root(surplus, 0.0, open_v_, 0.8 * open_v_);
}

OperatingPoint MixedArrayCurve::into_resistance(double resistance_ohm) const {
    if (std::isinf(resistance_ohm)) return {.voltage_v = open_v_};
    double current = 0.0;
    double voltage = 0.0;
    if (strings_.size() == 1) {
        current = strings_.front().curve.current_into(resistance_ohm);
        voltage = current * resistance_ohm;
    } else if (resistance_ohm <= 0.0) {
        current = current_a(0.0);
    } else if (open_v_ > 0.0) {
        const auto surplus = [&](double voltage_v) {
            const Sum sum = sum_at(voltage_v);
            return ValueAndSlope{sum.current_a - voltage_v / resistance_ohm,
                                 sum.slope_s - 1.0 / resistance_ohm,
                                 sum.scale_a + voltage_v / resistance_ohm};
        };
        voltage = falling_root(surplus, 0.0, open_v_, 0.8 * open_v_);
        current = voltage / resistance_ohm;
    }
    return {.voltage_v = voltage, .current_a = current, .power_w = voltage * current};
}

ArrayPoint MixedArrayCurve::at_voltage(double voltage_v) const {
    ArrayPoint point{.total = {.voltage_v = voltage_v}};
    for (const String& string : strings_) {
        StringPoint each{.current_a = string.curve.current_a(voltage_v)};
        each.blocking_w = string.curve.blocking_v.value_or(0.0) * each.current_a;
        for (const Panel& panel : string.panels) {
            each.panels.push_back(panel_point(panel, each.current_a));
        }
        point.total.current_a += each.current_a;
        point.strings.push_back(std::move(each));
    }
    point.total.power_w = point.total.voltage_v * point.total.current_a;
    return point;
}

std::vector<OperatingPoint> MixedArrayCurve::power_maxima() const {
    std::vector<double> ends{0.0, open_v_};
    for (const String& string : strings_) {
        const std::vector<double> kinks = string.curve.kinks_v();
        std::copy_if(kinks.begin(), kinks.end(), std::back_inserter(ends),
                     [this](double voltage_v) { return voltage_v < open_v_; });
    }
    std::sort(ends.begin(), ends.end());
    const auto slope_w_v = [this](double voltage_v) {
        const Sum sum = sum_at(voltage_v);
        return sum.current_a + voltage_v * sum.slope_s;
    };
    std::vector<OperatingPoint> found;
    for (std::size_t i = 0; i + 1 < ends.size(); ++i) {
        // Just inside: at the kink itself rounding decides which side its slope is of.
        const double inside = 1e-9 * (ends[i + 1] - ends[i]);
        double low = ends[i] + inside;
        double high = ends[i + 1] - inside;
        if (!(low < high) || slope_w_v(low) <= 0.0 || slope_w_v(high) >= 0.0) continue;
        std::uintmax_t steps = 100;
        std::tie(low, high) = boost::math::tools::toms748_solve(
            slope_w_v, low, high, boost::math::tools::eps_tolerance<double>(50), steps);
        const double voltage = 0.5 * (low + high);
        const double current = current_a(voltage);
        found.push_back({.voltage_v = voltage, .current_a = current, .power_w = voltage * current});
    }
    return found;
}

OperatingPoint MixedArrayCurve::maximum_power() const {
    OperatingPoint best;
    for (const OperatingPoint& each : power_maxima()) {
        if (each.power_w > best.power_w) best = each;
    }
    return best;
}

double MixedArrayCurve::sum_of_maxima_w() const {
    double sum = 0.0;
    for (const String& string : strings_) {
        for (const Panel& panel : string.panels) {
            StringCurve alone;
            for (const DiodeCurve& curve : panel.substrings) {
                alone.add(curve, panel.bypass_v);
            }
            sum += MixedArrayCurve({{.curve = alone, .panels = {panel}}}).maximum_power().power_w;
        }
    }
    return sum;
}

}  // namespace heatmatch
