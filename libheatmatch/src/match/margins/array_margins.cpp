#include "heatmatch/match/margins/array_margins.hpp"

#include "said.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

#include "heatmatch/match/circuit/code_current.hpp"
#include "heatmatch/match/circuit/string_protection.hpp"
#include "heatmatch/match/margins/bonding_margin.hpp"
#include "heatmatch/match/margins/limits.hpp"
#include "heatmatch/match/margins/touch_limit.hpp"
#include "heatmatch/match/margins/unlike_array_margins.hpp"

namespace heatmatch {

using margins_sentences::say;

namespace {

/// The whole array's voltage against one kind of panel in it.
Margin cold_voltage_margin(const Circuit& circuit, const PanelInService& service) {
    const Panel& panel = service.panel;
    const std::string subject = "panel \"" + panel.id + '"';
    Margin margin{.name = "cold voltage",
                  .subject = subject,
                  .value = circuit.cold_voltage_v(),
                  .limit = panel.max_system_voltage_v,
                  .unit = unit::volt,
                  .said = say<"array.cold_voltage">(),
                  .source = service.cold.source};
    if (!margin.limit) {
        constexpr double older_v = 600.0;
        margin.said = say<"array.cold_voltage_alone">(with<"older">(older_v, unit::volt));
        margin.missing = {"max_system_voltage_v"};
    }
    if (service.cold.from_table) {
        margin.assumed.push_back({.part = subject,
                                  .field = "cold voltage factor",
                                  .value = sentence_of(Amount{service.cold.factor, unit::none, 4}),
                                  .source = sentence_of(Name{"nec-690-7"})});
    }
    grade(margin);
    return margin;
}

/// Unknown fields of the insulation for this voltage.
std::vector<std::string> unknown_of_insulation(const Circuit& circuit) {
    if (circuit.runs.empty()) return {"runs"};
    for (const RunParts& parts : circuit.runs) {
        if (!parts.wire) return {"wire"};
        if (!parts.insulation) return {"insulation"};
        if (!parts.wire->voltage_rating_v) return {"voltage_rating_v"};
    }
    return {};
}

bool is_insulated(const Circuit& circuit) {
    const double volts = circuit.cold_voltage_v();
    return !is_bare(circuit.bank) && unknown_of_insulation(circuit).empty() &&
           std::all_of(circuit.runs.begin(), circuit.runs.end(), [volts](const RunParts& parts) {
               return *parts.wire->voltage_rating_v >= volts;
           });
}

/// Above 30 V in wet places and 60 V in dry ones live parts have to be out of reach: then
/// insulation and covers decide. @cite iec-60364-4-41
Margin touch_voltage_margin(const Circuit& circuit, const Site& site) {
    const bool wet = site.counts_as_wet();
    // Within reach of persons: a danger if stated; if not stated, the careful end of its field.
    const bool within_reach = !site.live_parts_enclosed.value_or(true);
    constexpr double wet_v = 30.0;
    Margin margin{.name = "touch voltage",
                  .subject = "live parts",
                  .consequence = within_reach ? Severity::danger : Severity::warning,
                  .value = circuit.cold_voltage_v(),
                  .limit = touch_limit_v(site),
                  .unit = unit::volt,
                  .said = wet ? say<"array.touch_wet">() : say<"array.touch_dry">(),
                  .source = "iec-60364-4-41"};
    if (*margin.value > wet_v && !site.wet) {
        margin.missing.push_back("site.wet");
        if (*margin.value > *margin.limit) margin.said = say<"array.touch_unstated">();
    }
    if (*margin.value <= *margin.limit) {
        margin.said = say<"array.touch_below">();
        grade(margin);
        return margin;
    }
    if (within_reach) {
        add(margin, say<"array.touch_open">());
    } else if (!site.live_parts_enclosed) {
        margin.missing.push_back("site.live_parts_enclosed");
    } else if (*site.live_parts_enclosed && is_insulated(circuit)) {
        margin.consequence = Severity::caution;
        add(margin, say<"array.touch_enclosed">());
    } else if (*site.live_parts_enclosed) {
        add(margin, say<"array.touch_insulation_unknown">());
        for (const std::string& field : unknown_of_insulation(circuit)) {
            margin.missing.push_back(field);
        }
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
                  .said = say<"array.series_arc">(),
                  .source = "nec-690-11"};
    grade(margin);
    return margin;
}

/// The largest rating of the devices that protect one string each [A].
std::optional<double> string_fuse_a(const Circuit& circuit) {
    std::optional<double> largest;
    for (const PlacedDevice& placed : circuit.devices) {
        if (const auto rated_a = string_protection_a(circuit, placed))
            largest = std::max(largest.value_or(0.0), *rated_a);
    }
    return largest;
}

/// `fed_a`: of the other strings, into one with this panel.
Margin reverse_current_margin(const Circuit& circuit, const Panel& panel, double fed_a) {
    Margin margin{.name = "reverse current",
                  .subject = "panel \"" + panel.id + '"',
                  .value = fed_a,
                  .limit = panel.max_series_fuse_a,
                  .unit = unit::ampere,
                  .said = say<"array.reverse_current">(),
                  .source = "nec-690-9"};
    if (circuit.panels.parallel == 1) {
        margin.said = say<"array.one_string">();
        margin.severity = Severity::none;
        margin.headroom = 1.0;
        return margin;
    } else if (!margin.limit) {
        margin.said = say<"array.reverse_current_alone">();
        margin.missing = {"max_series_fuse_a"};
    } else if (const auto fuse_a = string_fuse_a(circuit)) {
        // A faulty string may carry the smaller of the fuse rating and the current of the others.
        margin.value = std::min(*margin.value, *fuse_a);
        margin.said = say<"array.reverse_with_fuses">(with<"fuse">(*fuse_a, unit::ampere, 6));
        if (*fuse_a <= *margin.limit) {  // exactly as the code requires
            margin.severity = Severity::none;
            margin.headroom = 1.0;
            return margin;
        }
    } else if (*margin.value > *margin.limit) {
        add(margin, say<"array.fuse_each">());
    }
    grade(margin);
    return margin;
}

/// The panels of a group are assumed to be equal; only a meter can show differences.
Margin mismatch_margin(const std::string& group, int series) {
    const std::string subject = "group \"" + group + '"';
    if (series == 1) {
        Margin margin{.name = "string mismatch",
                      .subject = subject,
                      .severity = Severity::none,
                      .consequence = Severity::caution,
                      .said = say<"array.one_in_series">(),
                      .source = "common-practice"};
        return margin;
    }
    Margin margin = not_assessed("string mismatch", subject, say<"array.mismatch">(),
                                 {"panels[].measured.i_sc"});
    margin.consequence = Severity::caution;
    margin.limit = 5.0;
    margin.unit = unit::percent;
    margin.source = "common-practice";
    margin.assumed.push_back({.part = subject,
                              .field = "spread of i_sc",
                              .value = sentence_of(Amount{0.0, unit::percent}),
                              .source = say<"array.taken_as_equal">()});
    return margin;
}

/// The margins of each kind of panel: its volts, and the current into its strings.
void add_kinds(std::vector<Margin>& volts, std::vector<Margin>& amperes, const Circuit& circuit) {
    if (!circuit.unlike) {
        volts.push_back(cold_voltage_margin(circuit, circuit.panel));
        amperes.push_back(
            reverse_current_margin(circuit, circuit.panel.panel, lasting_fed_a(circuit)));
        return;
    }
    const UnlikeArray& array = *circuit.unlike;
    std::vector<std::string> done;
    for (std::size_t g = 0; g < array.groups.size(); ++g) {
        const Panel& panel = array.panel(g).panel;
        if (std::find(done.begin(), done.end(), panel.id) != done.end()) continue;
        done.push_back(panel.id);
        volts.push_back(cold_voltage_margin(circuit, array.panel(g)));
        double fed_a = 0.0;
        for (std::size_t s = 0; s < array.strings.size(); ++s) {
            const bool in_string =
                std::any_of(array.strings[s].begin(), array.strings[s].end(),
                            [&](std::size_t i) { return array.panel(i).panel.id == panel.id; });
            if (in_string) fed_a = std::max(fed_a, lasting_fed_a(circuit, s));
        }
        amperes.push_back(reverse_current_margin(circuit, panel, fed_a));
    }
}

/// Of each group, by the most of its panels in one string.
std::vector<Margin> mismatch_margins(const Circuit& circuit) {
    if (!circuit.unlike) return {mismatch_margin(circuit.owned.group, circuit.panels.series)};
    const UnlikeArray& array = *circuit.unlike;
    std::vector<Margin> margins;
    for (std::size_t g = 0; g < array.groups.size(); ++g) {
        int most = 1;
        for (std::size_t s = 0; s < array.strings.size(); ++s) {
            most = std::max(most, array.count_in(s, g));
        }
        margins.push_back(mismatch_margin(array.groups[g].owned.group, most));
    }
    return margins;
}

}  // namespace

std::vector<Margin> array_margins(const Circuit& circuit, const Site& site) {
    std::vector<Margin> margins;
    std::vector<Margin> amperes;
    add_kinds(margins, amperes, circuit);
    const auto append = [&margins](std::vector<Margin> more) {
        margins.insert(margins.end(), std::make_move_iterator(more.begin()),
                       std::make_move_iterator(more.end()));
    };
    append({touch_voltage_margin(circuit, site), series_arc_margin(circuit)});
    append(std::move(amperes));
    append(mismatch_margins(circuit));
    if (circuit.unlike) append(unlike_array_margins(circuit, site));
    margins.push_back(bonding_margin(circuit, site));
    return margins;
}

}  // namespace heatmatch
