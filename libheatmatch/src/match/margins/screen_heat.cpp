#include "screen_heat.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include <boost/math/tools/roots.hpp>

#include "heatmatch/match/margins/bank_margins.hpp"
#include "heatmatch/match/margins/careful_case.hpp"
#include "heatmatch/match/margins/device_margins.hpp"
#include "heatmatch/match/margins/limit_margins.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"
#include "heatmatch/match/margins/store_margins.hpp"
#include "heatmatch/match/margins/tail_margins.hpp"

namespace heatmatch {

int count_not_assessed(const std::vector<Margin>& margins) {
    return static_cast<int>(std::count_if(margins.begin(), margins.end(), [](const Margin& margin) {
        return margin.severity == Severity::not_assessed;
    }));
}

HeatScreened screen_heat(const Circuit& circuit, const Site& site, const Extremes& extremes) {
    const std::optional<HeatPoint> heat = heat_of(circuit, extremes);
    const std::vector<Margin> tail = tail_margins(circuit, site, extremes, heat);
    HeatScreened worst{.screened = screen_margins(sheath_margins_in_use(circuit, heat)),
                       .tail_not_assessed = count_not_assessed(tail)};
    const auto keep_worse = [&worst](const Screened& other) {
        if (other.headroom < worst.screened.headroom) worst.screened = other;
    };
    keep_worse(screen_margins(store_margins(circuit, heat, opening_site(site))));
    keep_worse(screen_margins(tail));
    if (!heat) return worst;
    // With a limit in time it is a warning; whether it is in time matters only where this decides.
    const Screened stagnant = screen_margins({stagnation_margin(circuit, *heat, false)});
    const bool decides = stagnant.headroom < worst.screened.headroom;
    if (decides && !limit_counts(circuit, extremes.element_power_w, opening_site(site)))
        worst.screened = stagnant;
    return worst;
}

namespace {

/// Which of the limits in largest_element_w() is reached at this power.
std::string reason_of_sheath(const BankHeat& heat, double element_w) {
    constexpr double met_k = 1e-3;
    // Just above: a damp bed counts as dry from here on.
    constexpr double above = 1.0 + 1e-9;
    const BankHeat::Judged judged = heat.judged_at(above * element_w);
    if (heat.coil_limit_c && judged.coil_c > *heat.coil_limit_c - met_k) return "coil temperature";
    if (heat.sheath && judged.sheath_c < heat.sheath->verdict_limit_c - met_k) return "stagnation";
    return "sheath temperature";
}

}  // namespace

HeatLimit heat_limit(const Circuit& circuit, double most_w) {
    if (!circuit.heat) return {};
    if (!circuit.heat->misfit.empty()) return {.element_w = 0.0, .reason = "fit in store"};
    if (!circuit.heat->missing.empty()) return {};
    const auto screened = [&](double element_w) {
        return screen_heat(circuit, Site{}, {.element_power_w = element_w}).screened;
    };
    // With a limit that opens the circuit, the result of a stagnation is a warning.
    if (std::isfinite(most_w) && screened(most_w).headroom >= 0.0) return {.element_w = most_w};
    const bool stagnation = opening_limit(circuit) == nullptr;
    const auto by_sheath = circuit.heat->largest_element_w(stagnation);
    // Bracket of the root, from the limit of the sheath alone.
    constexpr double any_w = 1e5;
    const double high = std::min(by_sheath.value_or(any_w), std::min(most_w, any_w));
    if (screened(high).headroom >= 0.0) {
        if (!by_sheath) return {};
        return {.element_w = high, .reason = reason_of_sheath(*circuit.heat, high)};
    }
    if (screened(0.0).headroom < 0.0) return {.element_w = 0.0, .reason = screened(0.0).reason};
    std::uintmax_t steps = 60;
    const auto root = boost::math::tools::toms748_solve(
        [&](double element_w) { return screened(element_w).headroom; }, 0.0, high,
        boost::math::tools::eps_tolerance<double>(30), steps);
    return {.element_w = root.first, .reason = screened(root.second).reason};
}

bool may_be_danger(const std::vector<Margin>& margins) {
    return std::any_of(margins.begin(), margins.end(), [](const Margin& margin) {
        return margin.worst_severity == Severity::danger;
    });
}

bool doubtful_bank(const Circuit& circuit, const Site& site) {
    const auto idle = [](const Circuit& as, const Site& at) {
        const std::optional<HeatPoint> heat = heat_of(as, Extremes{});
        std::vector<Margin> all = bank_margins(as, Extremes{});
        for (auto&& more :
             {sheath_margins(as, heat, opening_site(at)), limit_margins(as, heat, opening_site(at)),
              store_margins(as, heat, opening_site(at)),
              std::vector{survivor_sheath_margin(as, Extremes{})},
              tail_margins(as, at, Extremes{}, heat)}) {
            all.insert(all.end(), more.begin(), more.end());
        }
        // The voltage of the array belongs to the wiring, and is 0 here.
        return all;
    };
    return may_be_danger(judged(circuit, site, idle));
}

int lacking_of_bank(const Circuit& circuit, const Site& site) {
    const std::optional<HeatPoint> heat = heat_of(circuit, Extremes{});
    const int tail =
        circuit.heat ? 0 : count_not_assessed(tail_margins(circuit, site, Extremes{}, heat));
    return tail + count_not_assessed(bank_margins(circuit, Extremes{})) +
           count_not_assessed(sheath_margins(circuit, heat, opening_site(site))) +
           count_not_assessed(limit_margins(circuit, heat, opening_site(site))) +
           count_not_assessed({survivor_sheath_margin(circuit, Extremes{})}) +
           count_not_assessed(store_margins(circuit, heat, opening_site(site)));
}

}  // namespace heatmatch
