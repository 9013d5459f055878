#include "heatmatch/match/plan/array_bound.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace heatmatch {

namespace {

/// The curve of one panel in a node; its substrings are in the same light.
MixedArrayCurve curve_of(const StringPanel& panel, const WeatherNodes& nodes, std::size_t node) {
    const double rise = (panel.noct_c - 20.0) / 800.0;
    const double cell_c = nodes.base_c[node] + nodes.heating_irradiance_w_m2[node] * rise;
    const PanelConditions here{.irradiance_w_m2 = nodes.irradiance_w_m2[node],
                               .cell_temperature_c = cell_c};
    return MixedArray{.strings = {{.panels = {panel}}}}.at({&here, 1});
}

}  // namespace

double ArrayBound::Point::up_to_w(double current_a) const {
    if (current_a >= imp_a) return vmp_v * imp_a;
    return current_a * std::min(voc_v, vmp_v * (2.0 - current_a / imp_a));
}

ArrayBound::ArrayBound(std::vector<WeatherNodes> planes, const std::vector<BoundGroup>& groups)
    : hours_(planes.empty() ? std::vector<double>{} : planes.front().hours) {
    points_.reserve(groups.size() * hours_.size());
    for (const BoundGroup& group : groups) {
        for (std::size_t node = 0; node < hours_.size(); ++node) {
            const MixedArrayCurve curve = curve_of(group.panel, planes[group.plane], node);
            const OperatingPoint best = curve.maximum_power();
            double per_v = std::numeric_limits<double>::infinity();
            if (!group.panel.bypass) {
                // The curve is concave: its tangent is above it, and so is this chord's slope.
                const double step_v = 1e-4 * curve.open_circuit_voltage_v();
                const double less_a = curve.short_circuit_current_a() - curve.current_a(step_v);
                per_v = step_v > 0.0 ? less_a / step_v : 0.0;
            }
            points_.push_back({.isc_a = curve.short_circuit_current_a(),
                               .imp_a = best.current_a,
                               .vmp_v = best.voltage_v,
                               .voc_v = curve.open_circuit_voltage_v(),
                               .per_v = per_v});
        }
    }
}

double ArrayBound::string_current_a(const PanelCounts& panels, std::size_t node,
                                    double open_v) const {
    double most_a = 0.0;
    double carried_a = std::numeric_limits<double>::infinity();
    for (std::size_t g = 0; g < panels.size(); ++g) {
        if (panels[g] == 0) continue;
        const Point& at = point(g, node);
        most_a = std::max(most_a, at.isc_a);
        if (std::isinf(at.per_v)) continue;
        carried_a = std::min(carried_a, at.isc_a + at.per_v * (open_v - at.voc_v));
    }
    return std::min(most_a, carried_a);
}

void ArrayBound::add_string(const PanelCounts& panels, ArrayLimits& limits) const {
    for (std::size_t node = 0; node < hours_.size(); ++node) {
        double open_v = 0.0;
        for (std::size_t g = 0; g < panels.size(); ++g) open_v += panels[g] * point(g, node).voc_v;
        const double most_a = string_current_a(panels, node, open_v);
        double power_w = 0.0;
        for (std::size_t g = 0; g < panels.size(); ++g) {
            if (panels[g] == 0) continue;
            // Currents up to this panel's, above which it delivers nothing.
            const double isc_a = point(g, node).isc_a;
            const double up_to_a = std::min(isc_a, most_a);
            double sum_w = 0.0;
            for (std::size_t k = 0; k < panels.size(); ++k) {
                if (panels[k] == 0 || point(k, node).isc_a < isc_a) continue;
                sum_w += panels[k] * point(k, node).up_to_w(up_to_a);
            }
            power_w = std::max(power_w, sum_w);
        }
        limits.power_w[node] += power_w;
        limits.current_a[node] += most_a;
        limits.voltage_v[node] = std::max(limits.voltage_v[node], open_v);
    }
}

ArrayLimits ArrayBound::limits(const ArrayFamily& family, const FamilyArray& array) const {
    ArrayLimits limits{.power_w = std::vector<double>(hours_.size(), 0.0),
                       .current_a = std::vector<double>(hours_.size(), 0.0),
                       .voltage_v = std::vector<double>(hours_.size(), 0.0)};
    for (const std::size_t string : array.strings) {
        add_string(family.strings[string].panels, limits);
    }
    return limits;
}

double ArrayBound::at_most_kwh(const ArrayLimits& limits, double resistance_ohm) const {
    const double per_ohm = 1.0 / resistance_ohm;
    double sum = 0.0;
    for (std::size_t node = 0; node < hours_.size(); ++node) {
        const double current_a = limits.current_a[node];
        const double voltage_v = limits.voltage_v[node];
        const double power_w = std::min(
            limits.power_w[node],
            std::min(current_a * current_a * resistance_ohm, voltage_v * voltage_v * per_ohm));
        sum += hours_[node] * power_w;
    }
    return (1.0 + curve_allowance) * sum / 1000.0;
}

double ArrayBound::at_most_kwh(const ArrayLimits& limits) const {
    double sum = 0.0;
    for (std::size_t node = 0; node < hours_.size(); ++node) {
        sum += hours_[node] * limits.power_w[node];
    }
    return (1.0 + curve_allowance) * sum / 1000.0;
}

double ArrayBound::largest_kwh(std::size_t group) const {
    double sum = 0.0;
    for (std::size_t node = 0; node < hours_.size(); ++node) {
        const Point& at = point(group, node);
        sum += hours_[node] * at.vmp_v * at.imp_a;
    }
    return sum / 1000.0;
}

}  // namespace heatmatch
