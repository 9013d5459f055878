#include "heatmatch/match/margins/opening_margins.hpp"

#include "said.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <string>

#include "heatmatch/match/circuit/opens.hpp"

namespace heatmatch {

using margins_sentences::say;

namespace {

/// Severity if that obstacle prevents a DC-breaking device from being a disconnect.
Severity without_disconnect(Obstacle obstacle) {
    switch (obstacle) {
        case Obstacle::fuse:
        case Obstacle::made_for_ac:
        case Obstacle::semiconductor:
        case Obstacle::rating:
            return Severity::danger;
        default:
            return Severity::warning;
    }
}

/// A device must be able to open the circuit by hand; others do not improve the result.
Margin disconnect_margin(const Circuit& circuit, const OpeningSite& site) {
    Margin margin{.name = "disconnect",
                  .subject = "circuit",
                  .severity = Severity::warning,
                  .consequence = Severity::warning,
                  .said = say<"device.no_disconnect">(),
                  .source = "nec-690-13"};
    bool listed = false;
    for (const PlacedDevice& placed : circuit.devices) {
        if (placed.device.duty != Duty::breaks_dc) continue;
        const Opening opening = opens(circuit, placed, Occasion::by_hand, site);
        if (opening.answer == Answer::yes) {
            margin.severity = Severity::none;
            margin.consequence = Severity::warning;
            margin.headroom.reset();
            margin.missing.clear();
            margin.said = say<"device.disconnect">(with<"name">(placed.control.id));
            return margin;
        }
        const Severity found = without_disconnect(opening.obstacle);
        if (listed && found <= margin.severity) continue;
        listed = true;
        margin.severity = found;
        margin.consequence = found;
        if (found == Severity::danger) margin.headroom = -1.0;
        margin.missing = opening.missing;
        margin.said =
            say<"device.bad_disconnect">(with<"name">(placed.control.id), with<"why">(opening.why));
    }
    return margin;
}

/// Whether a thermostat also opens by those contacts, or may: whatever its set point, and whether
/// its driven devices are stated or not.
bool thermostat_may_open_by(const Circuit& circuit, const std::string& breaker,
                            const OpeningSite& site) {
    return std::any_of(
        circuit.devices.begin(), circuit.devices.end(), [&](const PlacedDevice& placed) {
            if (!placed.control.sense_high_c || is_limit(placed)) return false;
            PlacedDevice set = placed;
            set.device.set_c = placed.control.sense_high_c;
            const Opening opening = opens(circuit, set, Occasion::thermostat, site);
            if (opening.answer == Answer::no) return false;
            const auto& missing = opening.missing;
            const bool untold =
                std::find(missing.begin(), missing.end(), "device.drives") != missing.end();
            return untold || opening.breaker == breaker;
        });
}

/// A second, independent limit that does not reset automatically, and the device it opens.
Margin independent_limit_margin(const Circuit& circuit, const OpeningSite& site) {
    Margin margin{.name = "independent limit",
                  .subject = "circuit",
                  .severity = Severity::warning,
                  .consequence = Severity::warning,
                  .said = say<"device.no_limit">(),
                  .source = "common-practice"};
    bool listed = false;
    for (const PlacedDevice& placed : circuit.devices) {
        if (!is_limit(placed)) continue;
        const Opening opening = opens(circuit, placed, Occasion::limit, site);
        if (opening.answer == Answer::yes) {
            const bool common = thermostat_may_open_by(circuit, opening.breaker, site);
            margin.severity = common ? Severity::caution : Severity::none;
            margin.missing.clear();
            margin.said = say<"device.limit">(with<"name">(placed.control.id),
                                              with<"breaker">(opening.breaker));
            if (common) add(margin, say<"device.common_cause">());
            if (!common) return margin;
            listed = true;
            continue;
        }
        if (listed) continue;
        listed = true;
        margin.missing = opening.missing;
        margin.said = say<"device.limit_opens_nothing">(with<"name">(placed.control.id),
                                                        with<"why">(opening.why));
    }
    return margin;
}

}  // namespace

std::vector<Margin> opening_margins(const Circuit& circuit, const OpeningSite& site) {
    return {disconnect_margin(circuit, site), independent_limit_margin(circuit, site)};
}

}  // namespace heatmatch
