#include "heatmatch/heat/element_resistance.hpp"

#include "base/sentences.hpp"
#include "sentences.hpp"

#include <algorithm>

#include "heatmatch/base/interpolation.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using base_sentences::from_memory;
using heat_sentences::say;

namespace {

constexpr double rated_coil_c = 600.0;
constexpr double red_hot_c = 700.0;
constexpr double default_plus_pct = 5.0;
constexpr double default_minus_pct = 10.0;
constexpr double meter_share = 0.01;

/// Largest and smallest factor at the coil temperature over that at the rated one.
ResistanceFactor over_rated(const Alloy* alloy, double coil_temperature_c) {
    const ResistanceFactor now = resistance_factor(alloy, coil_temperature_c);
    const ResistanceFactor rated = resistance_factor(alloy, rated_coil_c);
    const double a = now.low / rated.low;
    const double b = now.high / rated.high;
    return {.low = std::min(a, b), .typical = now.typical / rated.typical, .high = std::max(a, b)};
}

}  // namespace

ResistanceFactor resistance_factor(const Alloy* alloy, double coil_temperature_c) {
    if (alloy != nullptr && !alloy->resistance_factor.empty()) {
        const double factor = interpolate(alloy->resistance_factor, coil_temperature_c, 1.0);
        return {.low = factor, .typical = factor, .high = factor};
    }
    const double share = std::clamp((coil_temperature_c - 20.0) / 680.0, 0.0, 1.0);
    return {.low = 1.0 - 0.03 * share, .typical = 1.0 + 0.02 * share, .high = 1.0 + 0.17 * share};
}

ElementResistance element_resistance(const Element& element, const Alloy* alloy,
                                     double coil_temperature_c) {
    ElementResistance result;
    const std::string title = "element \"" + element.id + '"';
    result.fixed = alloy == nullptr || alloy->fixed_resistance.value_or(true);
    if (alloy == nullptr) {
        const ResistanceFactor red_hot = resistance_factor(nullptr, red_hot_c);
        result.assumed.push_back(
            {title, "alloy",
             say<"heat.unknown_alloy">(with<"low">(red_hot.low), with<"high">(red_hot.high),
                                       with<"temperature">(red_hot_c, unit::celsius)),
             sentence_of(Name{"gb-t-1234"})});
    }
    result.assumed.push_back({title, "coil temperature in use",
                              sentence_of(Amount{coil_temperature_c, unit::celsius, 6}),
                              from_memory()});
    if (element.measured_resistance_ohm) {
        const double cold = *element.measured_resistance_ohm;
        const ResistanceFactor factor = resistance_factor(alloy, coil_temperature_c);
        result.basis = ResistanceBasis::measured;
        result.low_ohm = cold * (1.0 - meter_share) * factor.low;
        result.typical_ohm = cold * factor.typical;
        result.high_ohm = cold * (1.0 + meter_share) * factor.high;
        return result;
    }
    const double plus_pct = element.power_tolerance_plus_pct.value_or(default_plus_pct);
    const double minus_pct = element.power_tolerance_minus_pct.value_or(default_minus_pct);
    const double plus = plus_pct / 100.0;
    const double minus = minus_pct / 100.0;
    if (!element.power_tolerance_plus_pct || !element.power_tolerance_minus_pct) {
        result.assumed.push_back(
            {title, "power tolerance",
             say<"heat.tolerance">(with<"plus">({plus_pct, unit::percent, 6, Shown::change}),
                                   with<"minus">(minus_pct, unit::percent, 6)),
             sentence_of(Name{"tubular-catalogue-tolerance"})});
    }
    double ohms = 0.0;
    ResistanceFactor factor;
    if (element.resistance_ohm) {
        result.basis = ResistanceBasis::printed;
        ohms = *element.resistance_ohm;
        factor = resistance_factor(alloy, coil_temperature_c);
    } else {
        result.basis = ResistanceBasis::volts_and_watts;
        ohms = *element.rated_v * *element.rated_v / *element.rated_w;
        factor = over_rated(alloy, coil_temperature_c);
        result.assumed.push_back({title, "coil temperature at rated watts",
                                  sentence_of(Amount{rated_coil_c, unit::celsius}), from_memory()});
    }
    result.low_ohm = ohms / (1.0 + plus) * factor.low;
    result.typical_ohm = ohms * factor.typical;
    result.high_ohm = ohms / (1.0 - minus) * factor.high;
    return result;
}

}  // namespace heatmatch
