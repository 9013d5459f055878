#include "heatmatch/match/margins/limits.hpp"

#include "unlike_extremes.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <vector>

#include "heatmatch/match/circuit/code_current.hpp"
#include "heatmatch/match/circuit/unlike_bank.hpp"
#include "heatmatch/match/margins/touch_limit.hpp"

namespace heatmatch {

namespace {

void keep_worse(Screened& screened, double headroom, const std::string& reason) {
    if (headroom >= screened.headroom) return;
    screened.headroom = headroom;
    screened.reason = reason;
}

/// Current of the array into bank and wire, and power of one element from its share.
struct Share {
    double current_a = 0.0;
    double element_power_w = 0.0;
    double element_voltage_v = 0.0;
};

/// One element of `own_ohm` in series with others in its branch and parallel to other branches.
template <class Curve>
Share share_of(const Curve& bright, Hookup hookup, double wire_ohm, double own_ohm, double mate_ohm,
               double other_ohm) {
    const double branch = own_ohm + (hookup.series - 1) * mate_ohm;
    const double others = (hookup.parallel - 1) / (hookup.series * other_ohm);
    const double bank = 1.0 / (1.0 / branch + others);
    const double current = bright.into_resistance(bank + wire_ohm).current_a;
    const double own = current * bank / branch;
    return {.current_a = current,
            .element_power_w = own * own * own_ohm,
            .element_voltage_v = own * own_ohm};
}

/// Resistances at which equal elements absorb the most power.
std::array<double, 1> matched_ohms(const ArrayCurve& bright, Hookup hookup, double wire_ohm) {
    return {bank_ohm_of_most_power(bright, wire_ohm) / hookup.resistance_factor()};
}

/// A curve of unlike panels may have several maxima.
std::vector<double> matched_ohms(const MixedArrayCurve& bright, Hookup hookup, double wire_ohm) {
    std::vector<double> ohms;
    for (const OperatingPoint& best : bright.power_maxima()) {
        if (best.current_a <= 0.0) continue;
        ohms.push_back((best.voltage_v / best.current_a - wire_ohm) / hookup.resistance_factor());
    }
    return ohms;
}

/// Samples of an element's resistance; a curve with kinks is less flat near its maximum.
template <class Curve>
constexpr int samples_of = 5;
template <>
constexpr int samples_of<MixedArrayCurve> = 33;

/// One of `count` resistances over the band of an element.
double sample(const ElementResistance& each, int index, int count) {
    const double step = (each.high_ohm - each.low_ohm) / (count - 1);
    return index + 1 < count ? each.low_ohm + index * step : each.high_ohm;
}

void keep_larger(Extremes& result, const Share& share) {
    result.current_a = std::max(result.current_a, share.current_a);
    result.element_power_w = std::max(result.element_power_w, share.element_power_w);
    result.element_voltage_v = std::max(result.element_voltage_v, share.element_voltage_v);
}

/// The largest over the resistance of the element, of the others in its branch, and of the other
/// branches; for those that a hook-up does not have, one end suffices.
template <class Curve>
Extremes worst_of(const Curve& bright, Hookup hookup, double wire_ohm,
                  const ElementResistance& each) {
    Extremes result;
    const auto both = std::to_array({each.low_ohm, each.high_ohm});
    const std::span<const double> ends(both);
    const auto mates = ends.first(hookup.series > 1 ? 2 : 1);
    const auto others = ends.first(hookup.parallel > 1 ? 2 : 1);
    constexpr int count = samples_of<Curve>;
    for (int i = 0; i < count; ++i) {
        const double own = sample(each, i, count);
        for (const double mate : mates) {
            for (const double other : others) {
                keep_larger(result, share_of(bright, hookup, wire_ohm, own, mate, other));
            }
        }
    }
    for (const double ohm : matched_ohms(bright, hookup, wire_ohm)) {
        if (ohm <= each.low_ohm || ohm >= each.high_ohm) continue;
        keep_larger(result, share_of(bright, hookup, wire_ohm, ohm, ohm, ohm));
    }
    return result;
}

}  // namespace

SingleDiode brightest_panel(const PanelInService& panel) {
    return panel_as(panel, PanelState::brightest);
}

ArrayCurve bright_curve(const PanelInService& panel, Hookup panels, const Site& site) {
    return Array{
        .panel = brightest_panel(panel), .series = panels.series, .parallel = panels.parallel}
        .at(site.bright_irradiance_w_m2, site.record_low_c + bright_cold_rise_k);
}

double largest_element_power_w(const ArrayCurve& bright, Hookup hookup, double wire_ohm,
                               const ElementResistance& each) {
    return worst_of(bright, hookup, wire_ohm, each).element_power_w;
}

namespace {

template <class Curve>
Extremes extremes_of(const Curve& bright, const Bank& bank, double wire_ohm, double branch_ohm) {
    if (bank.unlike) {
        const double common_ohm = wire_ohm - branch_ohm * bank.branch_wire_share();
        const auto source = [&bright](double ohm) { return bright.into_resistance(ohm); };
        return unlike_extremes(source, *bank.unlike, {std::max(0.0, common_ohm), branch_ohm});
    }
    Extremes result = worst_of(bright, bank.hookup, wire_ohm, bank.each);
    if (bank.hookup.parallel == 1) return result;
    result.survivor_power_w =
        worst_of(bright, bank.hookup_left(), wire_ohm, bank.each).element_power_w;
    return result;
}

}  // namespace

Extremes extremes(const ArrayCurve& bright, const Bank& bank, double wire_ohm, double branch_ohm) {
    return extremes_of(bright, bank, wire_ohm, branch_ohm);
}

double coldest_wire_c(const Site& site) {
    return std::min(site.record_low_c, room_c);
}

Extremes bright_extremes(const Circuit& circuit, const Site& site) {
    const double wire_c = coldest_wire_c(site);
    const double wire_ohm = circuit.wire_ohm_at(wire_c);
    const double branch_ohm = circuit.branch_ohm_at(wire_c);
    if (circuit.unlike) {
        return extremes_of(circuit.unlike->curve(PanelState::brightest, site.bright_irradiance_w_m2,
                                                 site.record_low_c + bright_cold_rise_k),
                           circuit.bank, wire_ohm, branch_ohm);
    }
    return extremes(bright_curve(circuit.panel, circuit.panels, site), circuit.bank, wire_ohm,
                    branch_ohm);
}

bool is_bare(const Bank& bank) {
    const auto bare = [](const Bank& one) {
        return one.sheath && one.sheath->bare.value_or(false);
    };
    if (!bank.unlike) return bare(bank);
    const std::vector<Bank>& all = bank.unlike->elements;
    return std::any_of(all.begin(), all.end(), bare);
}

bool heats_liquid(const Bank& bank, const BankHeat* heat) {
    return heat != nullptr && heat->liquid && heat->known() && is_made_for_liquid(bank.element);
}

BankLimits bank_limits(const Bank& bank, const BankHeat* heat) {
    const Element& element = bank.element;
    BankLimits limits{.element_power_w = element.rated_w, .terminal_c = element.terminal_limit_c};
    if (limits.element_power_w && heats_liquid(bank, heat)) {
        *limits.element_power_w *= most_share_in_liquid;
    }
    if (is_bare(bank)) {
        limits.sheath_voltage_v = bare_wire_v;
    } else if (element.rated_v) {
        const double peak = element.rated_dc.value_or(false) ? 1.0 : std::sqrt(2.0);
        limits.sheath_voltage_v = peak * *element.rated_v;
    }
    return limits;
}

Screened screen_bank(const Extremes& extremes, const BankLimits& limits, double cold_voltage_v,
                     std::optional<double> terminal_c) {
    Screened screened;
    if (limits.element_power_w) {
        keep_worse(screened, headroom_of(extremes.element_power_w, *limits.element_power_w),
                   "element power");
    }
    if (limits.sheath_voltage_v) {
        keep_worse(screened, headroom_of(cold_voltage_v, *limits.sheath_voltage_v),
                   "sheath voltage");
    }
    if (limits.terminal_c && terminal_c) {
        keep_worse(screened, headroom_of(*terminal_c, *limits.terminal_c, room_c),
                   "terminal temperature");
    }
    return screened;
}

ArrayScreened screen_array(const PanelInService& panel, Hookup panels, const Site& site) {
    ArrayScreened array;
    if (const auto& limit = panel.panel.max_system_voltage_v) {
        keep_worse(array.screened, headroom_of(panel.cold.v_oc * panels.series, *limit),
                   "cold voltage");
    } else {
        ++array.not_assessed;
        array.doubtful = true;
    }
    const double cold_v = panel.cold.v_oc * panels.series;
    if (site.live_parts_enclosed == false) {
        keep_worse(array.screened, headroom_of(cold_v, touch_limit_v(site)), "touch voltage");
    } else if (!site.live_parts_enclosed) {
        array.doubtful |= cold_v > touch_limit_v(site);
    }
    if (panels.parallel > 1) {
        if (const auto& limit = panel.panel.max_series_fuse_a) {
            const auto fed_by = [&panels](double each_a) {
                return (panels.parallel - 1) * lasting_current_a(each_a);
            };
            const double fed = fed_by(panel.bright_isc_a());
            keep_worse(array.screened, headroom_of(fed, *limit), "reverse current");
            if (!panel.panel.bifaciality)
                array.doubtful |= fed_by(panel.at_careful_end().bright_isc_a()) > *limit;
        } else {
            ++array.not_assessed;
            array.doubtful = true;
        }
    }
    if (panels.series > 1) ++array.not_assessed;  // mismatch within a string
    return array;
}

Screened screen_margins(const std::vector<Margin>& margins) {
    Screened screened;
    for (const Margin& margin : margins) {
        if (margin.consequence != Severity::danger || !margin.headroom) continue;
        keep_worse(screened, *margin.headroom, margin.name);
    }
    return screened;
}

std::optional<double> terminal_temperature_c(const Circuit& circuit, const Site& site) {
    std::optional<double> hottest;
    const double current =
        circuit.short_circuit_current_a() * site.bright_irradiance_w_m2 / stc_irradiance_w_m2;
    for (const RunParts& parts : circuit.runs) {
        const bool at_element =
            parts.run.carries == Carried::bank || parts.run.carries == Carried::branch;
        if (!at_element || !parts.wire) continue;
        const auto found = parts.temperature(current * circuit.current_share(parts.run));
        if (found) hottest = std::max(hottest.value_or(found->conductor_c), found->conductor_c);
    }
    return hottest;
}

}  // namespace heatmatch
