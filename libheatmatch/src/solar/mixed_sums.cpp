#include "mixed_sums.hpp"

#include "warm_string.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "heatmatch/solar/energy_curve.hpp"
#include "heatmatch/solar/string_curve.hpp"

namespace heatmatch {

namespace {

/// One node of an array: its operating points into rising resistances.
class WarmArray {
  public:
    explicit WarmArray(std::vector<WarmString> strings) : strings_(std::move(strings)) {}

    std::vector<WarmString>& strings() { return strings_; }

    void begin() {
        open_v_ = 0.0;
        for (WarmString& string : strings_) {
            string.begin();
            open_v_ = std::max(open_v_, string.open_v);
        }
        guess_ = -1.0;
    }
    [[nodiscard]] bool delivers() const { return open_v_ > 0.0; }

    /// Power and dP/d(ln R) into a resistance; `step` is that of ln R from the one before.
    void into(double ohm, double step, double& power_w, double& slope_w) {
        double voltage = 0.0;
        double slope_s = 0.0;  // dI/dV of the array
        if (strings_.size() == 1) {
            WarmString& only = strings_.front();
            double low = 0.0;
            double high = only.largest_a;
            only.narrow(ohm, low, high);
            constexpr double inside = 1.0 - 1e-9;  // at a kink the slope is that beyond it
            const double guess =
                std::max(low, std::min(guess_ > 0.0 ? guess_ : high, inside * high));
            const double current = warm_root(
                [&](double at) {
                    const double excess = only.voltage_at(at) - at * ohm;
                    return FallingValue{excess, only.slope_ohm - ohm, at * ohm};
                },
                low, high, guess);
            voltage = current * ohm;
            slope_s = only.slope_ohm < 0.0 ? 1.0 / only.slope_ohm : -HUGE_VAL;
        } else {
            const double guess = guess_ > 0.0 ? guess_ : 0.5 * open_v_;
            voltage = warm_root(
                [&](double at) {
                    FallingValue sum{-at / ohm, -1.0 / ohm, at / ohm};
                    for (WarmString& string : strings_) {
                        sum.value += of_string(string, at, sum.slope);
                    }
                    return sum;
                },
                0.0, open_v_, guess);
            double sum = 0.0;
            for (WarmString& string : strings_) static_cast<void>(of_string(string, voltage, sum));
            slope_s = sum;
        }
        // From I(V) = V/R: dV/d(ln R) = (V/R) / (1/R - dI/dV).
        const double current = voltage / ohm;
        const double per_ln = std::isinf(slope_s) ? 0.0 : current / (1.0 / ohm - slope_s);
        power_w = voltage * current;
        slope_w = 2.0 * current * per_ln - power_w;
        if (strings_.size() == 1) {
            guess_ = current * std::exp(step * (per_ln / std::max(voltage, 1e-12) - 1.0));
        } else {
            guess_ = voltage * std::exp(step * per_ln / std::max(voltage, 1e-12));
        }
    }

  private:
    /// Current of a string at a voltage; adds its dI/dV.
    static double of_string(WarmString& string, double voltage_v, double& slope_s) {
        if (voltage_v >= string.open_v && string.blocks) return 0.0;
        double low = 0.0;
        double high = string.largest_a;
        if (voltage_v > string.open_v) {
            high = 0.0;
            low = -std::max(string.largest_a, 1e-3);
            while (string.voltage_at(low) < voltage_v) low *= 2.0;
        }
        string.current_a = warm_root(
            [&](double at) {
                const double excess = string.voltage_at(at) - voltage_v;
                return FallingValue{excess, string.slope_ohm, voltage_v};
            },
            low, high, string.current_a);
        if (string.slope_ohm < 0.0) slope_s += 1.0 / string.slope_ohm;
        return string.current_a;
    }

    std::vector<WarmString> strings_{};
    double open_v_ = 0.0;
    double guess_ = -1.0;
};

std::vector<std::vector<SubstringKind>> kinds_of(const MixedArray& array,
                                                 std::span<const PanelPlace> places) {
    std::vector<std::vector<SubstringKind>> strings;
    std::size_t index = 0;
    for (const PanelString& string : array.strings) {
        std::vector<SubstringKind> kinds;
        for (const StringPanel& panel : string.panels) {
            const PanelPlace& place = places[index++];
            for (int i = 0; i < panel.substrings; ++i) {
                const double shade =
                    place.shade.empty() ? 0.0 : place.shade[static_cast<std::size_t>(i)];
                const SubstringKind made{
                    .one = panel.diode.scaled(1.0, 1.0 / static_cast<double>(panel.substrings)),
                    .bypass_v = panel.bypass ? std::optional(panel.bypass_v) : std::nullopt,
                    .plane = place.plane,
                    .noct_c = place.noct_c,
                    .light = 1.0 - shade};
                auto known =
                    std::find_if(kinds.begin(), kinds.end(),
                                 [&made](const SubstringKind& kind) { return kind.equals(made); });
                if (known == kinds.end()) known = kinds.insert(kinds.end(), made);
                known->count += 1.0;
            }
        }
        strings.push_back(std::move(kinds));
    }
    return strings;
}

double cell_c_of(const WeatherNodes& nodes, std::size_t node, double noct_c) {
    return nodes.base_c[node] + nodes.heating_irradiance_w_m2[node] * (noct_c - 20.0) / 800.0;
}

}  // namespace

std::vector<PanelConditions> conditions_of(std::span<const PanelPlace> places,
                                           std::span<const WeatherNodes> planes, std::size_t node) {
    std::vector<PanelConditions> conditions;
    conditions.reserve(places.size());
    for (const PanelPlace& place : places) {
        const WeatherNodes& nodes = planes[place.plane];
        conditions.push_back({.irradiance_w_m2 = nodes.irradiance_w_m2[node],
                              .cell_temperature_c = cell_c_of(nodes, node, place.noct_c),
                              .shade = place.shade});
    }
    return conditions;
}

MixedArrayCurve PlacedArray::at(std::size_t node) const {
    return array.at(conditions_of(places, planes, node));
}

void mixed_sums(const MixedArray& array, std::span<const PanelPlace> places,
                std::span<const WeatherNodes> planes, std::span<const double> resistance_ohm,
                std::span<double> energy_wh, std::span<double> slope_wh) {
    // Checks places and shades as the curves of a single moment do.
    static_cast<void>(array.at(conditions_of(places, planes, 0)));
    const auto kinds = kinds_of(array, places);
    std::vector<WarmString> strings(kinds.size());
    for (std::size_t s = 0; s < kinds.size(); ++s) {
        strings[s].kinds.resize(kinds[s].size());
        strings[s].blocks = array.strings[s].blocking_v.has_value();
        strings[s].blocking_v = array.strings[s].blocking_v.value_or(0.0);
    }
    WarmArray warm(std::move(strings));
    const std::vector<double>& hours = planes.front().hours;
    for (std::size_t node = 0; node < hours.size(); ++node) {
        if (hours[node] <= 0.0) continue;
        for (std::size_t s = 0; s < kinds.size(); ++s) {
            for (std::size_t k = 0; k < kinds[s].size(); ++k) {
                const SubstringKind& kind = kinds[s][k];
                const WeatherNodes& nodes = planes[kind.plane];
                warm.strings()[s].kinds[k].set(kind,
                                               kind.one.at(nodes.irradiance_w_m2[node] * kind.light,
                                                           cell_c_of(nodes, node, kind.noct_c)));
            }
        }
        warm.begin();
        if (!warm.delivers()) continue;
        for (std::size_t r = 0; r < resistance_ohm.size(); ++r) {
            const double step = r + 1 < resistance_ohm.size()
                                    ? std::log(resistance_ohm[r + 1] / resistance_ohm[r])
                                    : 0.0;
            double power_w = 0.0;
            double slope_w = 0.0;
            warm.into(resistance_ohm[r], step, power_w, slope_w);
            energy_wh[r] += hours[node] * power_w;
            slope_wh[r] += hours[node] * slope_w;
        }
    }
}

}  // namespace heatmatch
