#include "heatmatch/match/margins/limit_margins.hpp"

#include "sentences_of_limits.hpp"

#include <algorithm>
#include <utility>

#include "heatmatch/match/margins/sensor_margins.hpp"

namespace heatmatch {

using margins_sentences::of_limits::say;

namespace {

/// The limit to be assessed, and whether it opens the circuit.
struct JudgedLimit {
    const PlacedDevice* placed = nullptr;  //!< null without one
    Opening opening{};
};

/// One that opens the circuit, else the first.
JudgedLimit judged_limit(const Circuit& circuit, const OpeningSite& site) {
    const PlacedDevice* limit = opening_limit(circuit, site);
    if (limit == nullptr) {
        const auto found = std::find_if(circuit.devices.begin(), circuit.devices.end(), is_limit);
        if (found == circuit.devices.end()) return {};
        limit = &*found;
    }
    return {.placed = limit, .opening = opens(circuit, *limit, Occasion::limit, site)};
}

/// A limit that may not open the circuit does not stop the heating, however early it acts.
Margin in_time_margin(const Circuit& circuit, const JudgedLimit& judged,
                      const std::optional<double>& element_w) {
    Margin margin{.name = "limit acts in time",
                  .subject = "circuit",
                  .severity = Severity::warning,
                  .consequence = Severity::warning,
                  .said = say<"limit.none_acts">(),
                  .source = "common-practice"};
    if (judged.placed == nullptr) return margin;
    const PlacedDevice& limit = *judged.placed;
    if (!limit.device.set_tolerance_k) margin.missing = {"device.set_tolerance_k"};
    if (!element_w) {
        margin.severity = Severity::not_assessed;
        margin.said = say<"limit.no_heat">();
        margin.missing = BankHeat::lacks(circuit.heat.get());
        return margin;
    }
    const auto name = with<"name">(limit.control.id);
    const Opening& opening = judged.opening;
    if (opening.answer != Answer::yes) {
        margin.said = say<"limit.opens_nothing">(name, with<"why">(opening.why));
        margin.missing.insert(margin.missing.end(), opening.missing.begin(), opening.missing.end());
        return margin;
    }
    if (const OtherBank* other = unlimited_circuit(circuit)) {
        margin.said = say<"limit.not_all">(name, with<"circuit">(Name{other->circuit}));
        return margin;
    }
    const LimitInTime found = limit_in_time(circuit, limit, *element_w);
    if (found.acts == Answer::yes) {
        margin.severity = Severity::none;
        margin.said = say<"limit.acts">(name, with<"day">(found.day));
    } else if (!found.called_for) {
        margin.severity = Severity::none;
        margin.said = say<"limit.not_called">();
    } else {
        const auto first = with<"first">(found.first);
        const bool unsure =
            found.acts == Answer::unknown || found.first == say<"limit.sheath_unknown">();
        margin.said =
            unsure ? say<"limit.may_be_late">(name, first) : say<"limit.late">(name, first);
    }
    return margin;
}

Margin supply_margin(const JudgedLimit& judged) {
    Margin margin{.name = "limit supply",
                  .subject = "circuit",
                  .severity = Severity::warning,
                  .consequence = Severity::warning,
                  .said = say<"limit.none_fails">(),
                  .source = "common-practice"};
    if (judged.placed == nullptr) return margin;
    const Device& device = judged.placed->device;
    if (!device.opens_on_supply_loss) margin.missing.emplace_back("device.opens_on_supply_loss");
    if (!device.opens_on_probe_break) margin.missing.emplace_back("device.opens_on_probe_break");
    if (!device.opens_on_supply_loss.value_or(true)) {
        margin.said = say<"limit.supply_keeps">();
    } else if (!device.opens_on_probe_break.value_or(true)) {
        margin.said = say<"limit.probe_keeps">();
    } else if (!margin.missing.empty()) {
        margin.said = say<"limit.supply_not_told">();
    } else if (judged.opening.answer != Answer::yes) {
        margin.missing = judged.opening.missing;
        margin.said = say<"limit.supply_of_nothing">(with<"name">(judged.placed->control.id),
                                                     with<"why">(judged.opening.why));
    } else {
        margin.said = say<"limit.supply_opens">();
        margin.severity = Severity::none;
    }
    return margin;
}

}  // namespace

std::vector<Margin> limit_margins(const Circuit& circuit, const std::optional<HeatPoint>& point,
                                  const OpeningSite& site) {
    std::optional<double> element_w;
    if (point) {
        const BankHeat& heat = *circuit.heat;
        element_w = 100.0 * point->w_per_cm * heat.heated_length_m / heat.elements;
    }
    const JudgedLimit limit = judged_limit(circuit, site);
    std::vector<Margin> margins{in_time_margin(circuit, limit, element_w), supply_margin(limit)};
    for (Margin& margin : sensor_margins(circuit, point)) margins.push_back(std::move(margin));
    return margins;
}

}  // namespace heatmatch
