#include "heatmatch/match/margins/element_margins.hpp"

#include "survivors.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "heatmatch/match/circuit/element_view.hpp"
#include "heatmatch/match/circuit/unlike_bank.hpp"
#include "heatmatch/match/margins/limit_in_time.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"

namespace heatmatch {

namespace {

std::string id_title(const Element& element) {
    return "element \"" + element.id + '"';
}

/// Every temperature of both, the higher one.
void keep_hotter(HeatPoint& hottest, const HeatPoint& other) {
    constexpr auto temperatures = std::to_array<double HeatPoint::*>(
        {&HeatPoint::w_per_cm, &HeatPoint::sheath_c, &HeatPoint::gap_k, &HeatPoint::coil_c,
         &HeatPoint::void_c, &HeatPoint::bed_mean_c, &HeatPoint::wall_c, &HeatPoint::lid_c,
         &HeatPoint::floor_c, &HeatPoint::inner_c, &HeatPoint::stagnation_sheath_c,
         &HeatPoint::stagnation_least_c, &HeatPoint::stagnation_wall_c,
         &HeatPoint::stagnation_inner_c, &HeatPoint::stagnation_lid_c,
         &HeatPoint::stagnation_floor_c, &HeatPoint::stagnation_bottom_c,
         &HeatPoint::moist_sheath_c});
    for (double HeatPoint::*at : temperatures) hottest.*at = std::max(hottest.*at, other.*at);
    TemperatureBand& band = hottest.sheath_band;
    band.low_c = std::max(band.low_c, other.sheath_band.low_c);
    band.typical_c = std::max(band.typical_c, other.sheath_band.typical_c);
    band.high_c = std::max(band.high_c, other.sheath_band.high_c);
    hottest.boils = hottest.boils || other.boils;
}

/// Whether the first is worse than the second, of one name and subject.
bool is_worse(const Margin& first, const Margin& second) {
    const int badness_of_first = badness(first.severity, first.consequence);
    const int badness_of_second = badness(second.severity, second.consequence);
    if (badness_of_first != badness_of_second) return badness_of_first > badness_of_second;
    return first.headroom.value_or(1.0) < second.headroom.value_or(1.0);
}

}  // namespace

std::vector<ElementSeen> elements_seen(const Circuit& circuit, const Extremes& bright) {
    const UnlikeBank& bank = *circuit.bank.unlike;
    std::vector<double> element_w;
    for (const UnlikeLoad& load : bright.elements) element_w.push_back(load.power_w);
    std::vector<ElementSeen> seen;
    for (std::size_t i = 0; i < bank.elements.size(); ++i) {
        const UnlikeLoad& load = bright.elements[i];
        ElementSeen one{.element = i,
                        .title = bank.title_of(i),
                        .circuit = element_view(circuit, i, element_w),
                        .bright = {.element_power_w = load.power_w,
                                   .element_voltage_v = load.voltage_v,
                                   .survivor_power_w = load.survivor_power_w(),
                                   .current_a = bright.current_a}};
        one.heat = heat_of(one.circuit, one.bright);
        seen.push_back(std::move(one));
    }
    return seen;
}

std::optional<HeatPoint> hottest_of(const std::vector<ElementSeen>& seen) {
    std::optional<HeatPoint> hottest;
    for (const ElementSeen& one : seen) {
        if (!one.heat) return std::nullopt;
        if (hottest) {
            keep_hotter(*hottest, *one.heat);
        } else {
            hottest = one.heat;
        }
    }
    return hottest;
}

bool limit_counts_for_all(const std::vector<ElementSeen>& seen, const OpeningSite& site) {
    return std::all_of(seen.begin(), seen.end(), [&site](const ElementSeen& one) {
        return limit_counts(one.circuit, one.bright.element_power_w, site);
    });
}

std::vector<Margin> of_each_element(
    const std::vector<ElementSeen>& seen,
    const std::function<std::vector<Margin>(const ElementSeen& one)>& margins) {
    std::vector<Margin> all;
    for (const ElementSeen& one : seen) {
        const std::string id = id_title(one.circuit.bank.element);
        for (Margin& margin : margins(one)) {
            if (margin.subject == id) margin.subject = one.title;
            all.push_back(std::move(margin));
        }
    }
    return worst_of_each(std::move(all));
}

std::vector<Margin> worst_of_each(std::vector<Margin> margins) {
    std::vector<Margin> worst;
    for (Margin& margin : margins) {
        const auto same = std::find_if(worst.begin(), worst.end(), [&margin](const Margin& known) {
            return known.name == margin.name && known.subject == margin.subject;
        });
        if (same == worst.end()) {
            worst.push_back(std::move(margin));
            continue;
        }
        std::optional<double> careful = same->careful_headroom;
        if (margin.careful_headroom) {
            careful =
                std::min(careful.value_or(*margin.careful_headroom), *margin.careful_headroom);
        }
        if (is_worse(margin, *same)) *same = std::move(margin);
        same->careful_headroom = careful;
    }
    return worst;
}

Margin survivor_sheath_of(const ElementSeen& one, const Circuit& circuit, const Extremes& bright) {
    const std::vector<double>& with_open_w = bright.elements[one.element].with_open_w;
    std::vector<Margin> found;
    for (std::size_t open = 0; open < with_open_w.size(); ++open) {
        if (with_open_w[open] <= 0.0) continue;
        std::vector<double> left_w;
        for (const UnlikeLoad& load : bright.elements) left_w.push_back(load.with_open_w[open]);
        const Circuit left = element_view(circuit, one.element, left_w);
        found.push_back(survivor_sheath_in(one.circuit, left.heat.get(), with_open_w[open]));
    }
    if (found.empty()) return survivor_sheath_margin(one.circuit, one.bright);
    return worst_of_each(std::move(found)).front();
}

}  // namespace heatmatch
