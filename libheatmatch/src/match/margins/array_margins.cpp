#include "heatmatch/match/margins/array_margins.hpp"

#include <algorithm>

#include "heatmatch/match/circuit/code_current.hpp"

namespace heatmatch {

namespace {

Margin cold_voltage_margin(const Circuit& circuit) {
    const Panel& panel = circuit.panel.panel;
    const std::string subject = "panel \"" + panel.id + '"';
    Margin margin{.name = "cold voltage",
                  .subject = subject,
                  .value = circuit.cold_voltage_v(),
                  .limit = panel.max_system_voltage_v,
                  .unit = unit::volt,
                  .said =
                      "At the record low the open string stands at {value}; the panels allow "
                      "{limit}.",
                  .source = circuit.panel.cold.source};
    if (!margin.limit) {
        margin.said =
            "At the record low the open string stands at {value}; what the panels allow "
            "is not known: read the label (older ones often allow 600 V).";
        margin.missing = {"max_system_voltage_v"};
    }
    if (circuit.panel.cold.from_table) {
        margin.assumed.push_back({.part = subject,
                                  .field = "cold voltage factor",
                                  .value = format_number(circuit.panel.cold.factor, 4),
                                  .source = "nec-690-7"});
    }
    grade(margin);
    return margin;
}

Margin touch_voltage_margin(const Circuit& circuit, bool wet) {
    Margin margin{
        .name = "touch voltage",
        .subject = "live parts",
        .consequence = Severity::warning,
        .value = circuit.cold_voltage_v(),
        .limit = wet ? 30.0 : 60.0,
        .unit = unit::volt,
        .said = wet ? "Up to {value} direct current in a wet place: above {limit} no live "
                      "part may be touchable. It can kill."
                    : "Up to {value} direct current: above {limit} no live part may be "
                      "touchable. It can kill.",
        .source = "iec-60364-4-41"};
    if (*margin.value <= *margin.limit) {
        margin.said =
            "Up to {value} direct current; the limit for touchable parts here is {limit}.";
    }
    grade(margin);
    return margin;
}

Margin series_arc_margin(const Circuit& circuit) {
    Margin margin{.name = "series arc",
                  .subject = "joints and switches",
                  .consequence = Severity::caution,
                  .value = circuit.cold_voltage_v(),
                  .limit = 80.0,
                  .unit = unit::volt,
                  .said =
                      "Up to {value}: a loose joint can hold an arc. From {limit} on, some codes "
                      "ask for arc-fault protection on or in buildings; arcs burn below it too.",
                  .source = "nec-690-11"};
    grade(margin);
    return margin;
}

/// Fuses that protect one string each; nothing if there are none.
const PlacedDevice* string_fuse(const Circuit& circuit) {
    const auto found = std::find_if(
        circuit.devices.begin(), circuit.devices.end(),
        [](const PlacedDevice& placed) { return placed.device.duty == "protects a string"; });
    return found == circuit.devices.end() ? nullptr : &*found;
}

Margin reverse_current_margin(const Circuit& circuit) {
    const Panel& panel = circuit.panel.panel;
    const int others = circuit.panels.parallel - 1;
    Margin margin{.name = "reverse current",
                  .subject = "panel \"" + panel.id + '"',
                  .value = others * lasting_current_factor * circuit.panel.i_sc_limit_a,
                  .limit = panel.max_series_fuse_a,
                  .unit = unit::ampere,
                  .said =
                      "A faulty string can be fed {value} by the others; its panels allow a "
                      "series fuse of {limit}.",
                  .source = "nec-690-9"};
    if (others == 0) {
        margin.said = "One string: no other can feed it backwards.";
        margin.severity = Severity::none;
        margin.headroom = 1.0;
        return margin;
    } else if (!margin.limit) {
        margin.said =
            "A faulty string can be fed {value} by the others; the largest series fuse of "
            "the panels is not known: read the label.";
        margin.missing = {"max_series_fuse_a"};
    } else if (const PlacedDevice* fuse = string_fuse(circuit);
               fuse != nullptr && !fuse->control.dc_ratings.empty()) {
        // The smaller of the fuse and what the others feed is what a faulty string may carry.
        margin.value = std::min(*margin.value, fuse->control.dc_ratings.front().a_dc);
        margin.said = "With string fuses of " +
                      format_number(fuse->control.dc_ratings.front().a_dc) +
                      " A a faulty string can be fed {value}; its panels allow {limit}.";
    } else if (*margin.value > *margin.limit) {
        margin.said += " Fuse each string, or use fewer strings.";
    }
    grade(margin);
    return margin;
}

/// The panels of a group are taken as equal; only a meter can tell.
Margin mismatch_margin(const Circuit& circuit) {
    const std::string subject = "group \"" + circuit.owned.group + '"';
    if (circuit.panels.series == 1) {
        Margin margin{.name = "string mismatch",
                      .subject = subject,
                      .severity = Severity::none,
                      .consequence = Severity::caution,
                      .said = "One panel in each string: none limits another.",
                      .source = "common-practice"};
        return margin;
    }
    Margin margin = not_assessed("string mismatch", subject,
                                 "Panels in series count as equal here; measure each one's "
                                 "short-circuit current in the same hour and keep those within "
                                 "{limit} together.",
                                 {"i_sc of each panel"});
    margin.consequence = Severity::caution;
    margin.limit = 5.0;
    margin.unit = unit::percent;
    margin.source = "common-practice";
    margin.assumed.push_back({.part = subject,
                              .field = "spread of i_sc",
                              .value = "0%",
                              .source = "panels of one group are taken as equal"});
    return margin;
}

}  // namespace

std::vector<Margin> array_margins(const Circuit& circuit, const Site& site) {
    return {cold_voltage_margin(circuit), touch_voltage_margin(circuit, site.wet),
            series_arc_margin(circuit), reverse_current_margin(circuit), mismatch_margin(circuit)};
}

}  // namespace heatmatch
