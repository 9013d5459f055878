#include "heatmatch/match/margins/fuse_margins.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "heatmatch/match/circuit/code_current.hpp"
#include "heatmatch/match/circuit/opening.hpp"
#include "heatmatch/match/circuit/string_protection.hpp"

namespace heatmatch {

using margins_sentences::say;

namespace {

/// Why it protects no string whatever its rating; empty where the rating decides.
Sentence no_protection(const Circuit& circuit, const PlacedDevice& placed) {
    const Control& control = placed.control;
    if (!protects_strings(control)) return say<"device.no_fuse">();
    if (!in_a_string(circuit, placed)) return say<"device.fuse_behind_the_joint">();
    const bool one_way = !is_fuse(control) && control.polarised.value_or(false);
    return one_way && circuit.panels.parallel > 1 ? say<"device.fuse_breaks_one_way">()
                                                  : Sentence{};
}

Margin fuse_margin(const Circuit& circuit, const PlacedDevice& placed) {
    const Opening opening = opening_load(circuit, placed);
    Margin margin{.name = "string fuse",
                  .subject = "device \"" + placed.control.id + '"',
                  .value = table_current_factor * circuit.string_current_a(),
                  .unit = unit::ampere,
                  .source = "nec-690-9"};
    if (Sentence why = no_protection(circuit, placed); !why.empty()) {
        margin.value.reset();
        margin.headroom = -1.0;
        margin.severity = Severity::danger;
        margin.said = std::move(why);
        return margin;
    }
    if (!opening.rated_a || opening.unrated) {
        margin.value = opening.volts;
        margin.limit = opening.unrated ? 0.0 : opening.rated_v;
        margin.unit = unit::volt;
        margin.said = say<"device.fuse_volts">();
        if (*margin.limit <= 0.0) {
            margin.said = say<"device.fuse_without_rating">();
            margin.headroom = -1.0;
            margin.severity = Severity::danger;
            return margin;
        }
        grade(margin);
        return margin;
    }
    margin.consequence = Severity::caution;
    margin.limit = opening.rated_a;
    margin.said = say<"device.fuse_amperes">(with<"factor">(table_current_factor));
    grade(margin);
    if (*margin.headroom >= 0.0)
        margin.severity = Severity::none;  // a rating close to the limit is
                                           // intended
    return margin;
}

/// The largest fuse for a small copper wire [A]: 7, 10, 15, 20 and 30 for 18, 16, 14, 12 and 10
/// AWG; for larger wire the 60 °C column of the table, up to 4 AWG; 0 below 18 AWG. An intermediate
/// size counts as the next smaller. @cite nec-240-4 @cite nec-310
double largest_fuse_a(const Wire& wire) {
    struct Fused {
        double area_mm2 = 0.0;
        double fuse_a = 0.0;
    };
    constexpr auto table = std::to_array<Fused>({{21.1, 70.0},
                                                 {13.2, 55.0},
                                                 {8.3, 40.0},
                                                 {5.2, 30.0},
                                                 {3.3, 20.0},
                                                 {2.0, 15.0},
                                                 {1.3, 10.0},
                                                 {0.8, 7.0}});
    for (const Fused& row : table) {
        if (wire.area_mm2 >= row.area_mm2) return row.fuse_a;
    }
    return 0.0;
}

/// The fuse against the thinnest wire it has to protect: that of its own run and of strings.
Margin fuse_wire_margin(const Circuit& circuit, const PlacedDevice& placed) {
    Margin margin{.name = "string fuse wire",
                  .subject = "device \"" + placed.control.id + '"',
                  .unit = unit::ampere,
                  .said = say<"device.fuse_wire_alone">(),
                  .source = "nec-240-4"};
    for (const DcRating& rating : placed.control.dc_ratings) {
        margin.value = std::max(margin.value.value_or(0.0), rating.a_dc);
    }
    bool every_wire = true;
    std::string thinnest;
    for (const RunParts& parts : circuit.runs) {
        if (parts.run.carries != Carried::string && parts.run.name != placed.device.run) continue;
        if (!parts.wire) {
            every_wire = false;
            continue;
        }
        const double fuse_a = largest_fuse_a(*parts.wire);
        if (margin.limit && fuse_a >= *margin.limit) continue;
        margin.limit = fuse_a;
        thinnest = parts.run.name;
    }
    const bool too_large = margin.value && margin.limit && *margin.value > *margin.limit;
    if (!margin.value || !margin.limit || (!every_wire && !too_large)) {
        if (!margin.value) margin.said = say<"device.fuse_rating_unknown">();
        margin.limit.reset();
        margin.missing = {margin.value ? "run.wire" : "dc_ratings"};
        grade(margin);
        return margin;
    }
    margin.said = say<"device.fuse_wire">(with<"run">(thinnest));
    // The current of the other strings is the largest fault current through it.
    const double fed_a = lasting_fed_a(circuit);
    if (fed_a <= *margin.limit) margin.consequence = Severity::warning;
    // A fuse of exactly the permitted rating is intended.
    margin.severity = too_large ? margin.consequence : Severity::none;
    margin.headroom = too_large && *margin.limit > 0.0
                          ? (*margin.limit - *margin.value) / *margin.limit
                          : (too_large ? -1.0 : 1.0);
    return margin;
}

}  // namespace

std::vector<Margin> fuse_margins(const Circuit& circuit, const PlacedDevice& placed) {
    return {fuse_margin(circuit, placed), fuse_wire_margin(circuit, placed)};
}

}  // namespace heatmatch
