#include "heatmatch/solar/mixed_array.hpp"

#include "falling_root.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <string>
#include <tuple>
#include <utility>

#include <boost/math/tools/roots.hpp>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/solar/datasheet_fit.hpp"

namespace heatmatch {

namespace {

using solar_sentences::say;

[[noreturn]] void refuse_array(std::string part, const char* field, std::string value,
                               const char* allowed, Sentence remedy) {
    throw InvalidInput(ErrorDetail{.part = std::move(part),
                                   .field = field,
                                   .value = std::move(value),
                                   .allowed = allowed,
                                   .remedy = std::move(remedy)});
}

std::string place_of(std::size_t string, std::size_t panel) {
    return "array: string " + std::to_string(string + 1) + ", panel " + std::to_string(panel + 1);
}

// Forward voltages of silicon and Schottky diodes: common practice, no source.
Sentence diode_drops() {
    return say<"solar.diode_drop">(with<"drop">(0.7, unit::volt), with<"low">(0.4, unit::volt));
}

Sentence shade_remedy() {
    return say<"solar.shade_of_substring">(with<"none">(0.0), with<"all">(1.0));
}

bool is_drop(double volts) {
    return volts >= 0.0 && volts <= 2.0;
}

/// Adds a substring to its equals.
void add_equal(std::vector<EqualSubstrings>& all, const DiodeCurve& curve,
               const std::optional<double>& bypass_v) {
    for (EqualSubstrings& each : all) {
        if (each.curve == curve && each.bypass_v == bypass_v) {
            each.count += 1.0;
            return;
        }
    }
    all.push_back({.curve = curve, .count = 1.0, .bypass_v = bypass_v});
}

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

StringPanel string_panel(const Panel& panel) {
    const DatasheetFit fit = fit_single_diode(panel);
    StringPanel made{.diode = fit, .assumed = fit.assumed};
    const bool silicon = !panel.technology || panel.technology == Technology::mono_si ||
                         panel.technology == Technology::multi_si ||
                         panel.technology == Technology::heterojunction;
    constexpr int usual_diodes = 3;
    const int diodes = panel.bypass_diodes.value_or(silicon ? usual_diodes : 0);
    if (!panel.bypass_diodes) {
        made.assumed.push_back(
            {.part = "panel \"" + panel.id + '"',
             .field = "bypass_diodes",
             .value = say<"solar.number">(with<"number">(static_cast<double>(diodes))),
             .source = say<"solar.common_practice">()});
    }
    made.substrings = std::max(1, diodes);
    made.bypass = diodes > 0;
    return made;
}

MixedArray MixedArray::of(std::vector<PanelString> strings) {
    if (strings.empty()) {
        refuse_array("array", "strings", "none", "at least one string", say<"solar.one_panel">());
    }
    for (std::size_t s = 0; s < strings.size(); ++s) {
        const std::string string = "array: string " + std::to_string(s + 1);
        if (strings[s].panels.empty()) {
            refuse_array(string, "panels", "none", "at least one panel", say<"solar.one_panel">());
        }
        if (const auto drop = strings[s].blocking_v; drop && !is_drop(*drop)) {
            refuse_array(string, "blocking_v", format_number(*drop) + " V", "0 to 2 V",
                         diode_drops());
        }
        for (std::size_t p = 0; p < strings[s].panels.size(); ++p) {
            const StringPanel& panel = strings[s].panels[p];
            if (panel.substrings < 1) {
                refuse_array(place_of(s, p), "substrings", std::to_string(panel.substrings),
                             "at least 1", say<"solar.one_substring">());
            }
            if (panel.bypass && !is_drop(panel.bypass_v)) {
                refuse_array(place_of(s, p), "bypass_v", format_number(panel.bypass_v) + " V",
                             "0 to 2 V", diode_drops());
            }
        }
    }
    return {.strings = std::move(strings)};
}

std::size_t MixedArray::panel_count() const {
    std::size_t count = 0;
    for (const PanelString& string : strings) count += string.panels.size();
    return count;
}

MixedArrayCurve MixedArray::at(std::span<const PanelConditions> conditions) const {
    if (conditions.size() != panel_count()) {
        refuse_array(
            "array", "conditions", std::to_string(conditions.size()) + " panels",
            "one for each panel, string by string",
            say<"solar.panel_conditions">(with<"count">(static_cast<double>(panel_count()))));
    }
    std::vector<MixedArrayCurve::String> result;
    std::size_t index = 0;
    for (std::size_t s = 0; s < strings.size(); ++s) {
        MixedArrayCurve::String string{.curve = {.blocking_v = strings[s].blocking_v}};
        for (std::size_t p = 0; p < strings[s].panels.size(); ++p) {
            const StringPanel& panel = strings[s].panels[p];
            const PanelConditions& here = conditions[index++];
            const auto count = static_cast<std::size_t>(panel.substrings);
            if (!(here.irradiance_w_m2 >= 0.0 && here.irradiance_w_m2 <= 2000.0)) {
                refuse_array(place_of(s, p), "irradiance_w_m2",
                             format_number(here.irradiance_w_m2) + " W/m2", "0 to 2000 W/m2",
                             say<"solar.sun_of_panel">());
            }
            if (!here.shade.empty() && here.shade.size() != count) {
                refuse_array(place_of(s, p), "shade",
                             std::to_string(here.shade.size()) + " substrings",
                             "one for each substring, or none", shade_remedy());
            }
            const SingleDiode one =
                panel.diode.scaled(1.0, 1.0 / static_cast<double>(panel.substrings));
            MixedArrayCurve::Panel made{.bypass_v = panel.bypass ? std::optional(panel.bypass_v)
                                                                 : std::nullopt};
            for (std::size_t i = 0; i < count; ++i) {
                const double shade = here.shade.empty() ? 0.0 : here.shade[i];
                if (!(shade >= 0.0 && shade <= 1.0)) {
                    refuse_array(place_of(s, p), "shade", format_number(shade), "0 to 1",
                                 shade_remedy());
                }
                const DiodeCurve curve =
                    one.at(here.irradiance_w_m2 * (1.0 - shade), here.cell_temperature_c);
                add_equal(string.curve.substrings, curve, made.bypass_v);
                made.substrings.push_back(curve);
            }
            string.panels.push_back(std::move(made));
        }
        result.push_back(std::move(string));
    }
    return MixedArrayCurve(std::move(result));
}

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
                add_equal(alone.substrings, curve, panel.bypass_v);
            }
            sum += MixedArrayCurve({{.curve = alone, .panels = {panel}}}).maximum_power().power_w;
        }
    }
    return sum;
}

}  // namespace heatmatch
