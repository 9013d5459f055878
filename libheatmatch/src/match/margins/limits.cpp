#include "heatmatch/match/margins/limits.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

#include "heatmatch/match/circuit/code_current.hpp"
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
Share share_of(const ArrayCurve& bright, Hookup hookup, double wire_ohm, double own_ohm,
               double mate_ohm, double other_ohm) {
    const double branch = own_ohm + (hookup.series - 1) * mate_ohm;
    const double others = (hookup.parallel - 1) / (hookup.series * other_ohm);
    const double bank = 1.0 / (1.0 / branch + others);
    const double current = bright.into_resistance(bank + wire_ohm).current_a;
    const double own = current * bank / branch;
    return {.current_a = current,
            .element_power_w = own * own * own_ohm,
            .element_voltage_v = own * own_ohm};
}

/// Resistance at which equal elements absorb the most power, if it lies within the band.
std::optional<double> matched_ohm(const ArrayCurve& bright, Hookup hookup, double wire_ohm,
                                  const ElementResistance& each) {
    const double bank = bank_ohm_of_most_power(bright, wire_ohm);
    const double ohm = bank / hookup.resistance_factor();
    if (ohm <= each.low_ohm || ohm >= each.high_ohm) return std::nullopt;
    return ohm;
}

/// Sampled resistances of the element: the largest power may lie inside its band, and is flat
/// there.
std::array<double, 5> samples(const ElementResistance& each) {
    const double step = 0.25 * (each.high_ohm - each.low_ohm);
    return {each.low_ohm, each.low_ohm + step, each.low_ohm + 2.0 * step, each.low_ohm + 3.0 * step,
            each.high_ohm};
}

void keep_larger(Extremes& result, const Share& share) {
    result.current_a = std::max(result.current_a, share.current_a);
    result.element_power_w = std::max(result.element_power_w, share.element_power_w);
    result.element_voltage_v = std::max(result.element_voltage_v, share.element_voltage_v);
}

/// The largest over the resistance of the element, of the others in its branch, and of the other
/// branches; for those that a hook-up does not have, one end suffices.
Extremes worst_of(const ArrayCurve& bright, Hookup hookup, double wire_ohm,
                  const ElementResistance& each) {
    Extremes result;
    const auto both = std::to_array({each.low_ohm, each.high_ohm});
    const std::span<const double> ends(both);
    const auto mates = ends.first(hookup.series > 1 ? 2 : 1);
    const auto others = ends.first(hookup.parallel > 1 ? 2 : 1);
    for (const double own : samples(each)) {
        for (const double mate : mates) {
            for (const double other : others) {
                keep_larger(result, share_of(bright, hookup, wire_ohm, own, mate, other));
            }
        }
    }
    if (const auto matched = matched_ohm(bright, hookup, wire_ohm, each)) {
        keep_larger(result, share_of(bright, hookup, wire_ohm, *matched, *matched, *matched));
    }
    return result;
}

}  // namespace

SingleDiode brightest_panel(const PanelInService& panel) {
    return panel.as_new.scaled(panel.bright_isc_a() / panel.panel.i_sc,
                               panel.cold.v_oc_at_25_c / panel.panel.v_oc);
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

Extremes extremes(const ArrayCurve& bright, const Bank& bank, double wire_ohm) {
    Extremes result = worst_of(bright, bank.hookup, wire_ohm, bank.each);
    if (bank.hookup.parallel == 1) return result;
    result.survivor_power_w =
        largest_element_power_w(bright, bank.hookup_left(), wire_ohm, bank.each);
    return result;
}

double coldest_wire_c(const Site& site) {
    return std::min(site.record_low_c, room_c);
}

Extremes bright_extremes(const Circuit& circuit, const Site& site) {
    return extremes(bright_curve(circuit.panel, circuit.panels, site), circuit.bank,
                    circuit.wire_ohm_at(coldest_wire_c(site)));
}

bool is_bare(const Bank& bank) {
    return bank.sheath && bank.sheath->bare.value_or(false);
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
