#include "run_view.hpp"
#include "said.hpp"
#include "sentences_of_runs.hpp"

#include <algorithm>

#include "heatmatch/match/circuit/code_current.hpp"
#include "heatmatch/match/margins/run_ampacity.hpp"

namespace heatmatch {

using margins_sentences::of_runs::say;

namespace {

Sentence laid_said(const RunAmpacity& ampacity) {
    if (ampacity.terminals) return say<"run.laid_terminals">();
    switch (ampacity.method.value_or(LayingMethod::bundle)) {
        case LayingMethod::free_air:
            return say<"run.laid_free_air">();
        case LayingMethod::bundle:
            return say<"run.laid_bundle">();
        case LayingMethod::raceway:
            return say<"run.laid_raceway">();
        case LayingMethod::thermal_insulation:
            return say<"run.laid_insulation">();
        case LayingMethod::earth:
            return say<"run.laid_earth">();
    }
    return {};
}

/// Other corrections of the value besides that for the air.
Sentence also_said(const RunAmpacity& ampacity) {
    Sentences also;
    if (ampacity.together) {
        also.push_back(say<"run.also_together">(with<"count">(*ampacity.together, unit::count)));
    }
    if (ampacity.roof_k > 0.0) {
        also.push_back(say<"run.also_roof">(with<"rise">(ampacity.roof_k, unit::kelvin)));
    }
    if (ampacity.limited) also.push_back(say<"run.also_insulation">());
    return also.empty() ? Sentence{} : say<"run.also">(with<"also">(std::move(also)));
}

Sentence missing_said(const RunAmpacity& ampacity) {
    if (!ampacity.method) return say<"run.no_table_in_bed">();
    const std::string& field = ampacity.missing.front();
    if (field == "limit_wet_c") return say<"run.wet_limit_unknown">();
    if (field == "surroundings.air_c") return say<"run.correction_needs_air">();
    if (field == "site.code") return say<"run.one_code_only">();
    if (field == "insulation") return say<"run.insulation_unknown">();
    return say<"run.table_current_unknown">();
}

/// With unknown facts the excess is not known: headroom is at most 0.
void keep_no_headroom(Margin& margin) {
    margin.headroom = std::min(margin.headroom.value_or(-1.0), -1.0);
}

/// A current above the ampacity of every installation method is too high in any.
Margin without_table(Margin margin, const RunAmpacity& ampacity) {
    if (ampacity.most_a && *margin.value > *ampacity.most_a) {
        margin.limit = ampacity.most_a;
        margin.said = say<"run.more_than_any">();
        grade(margin);
        keep_no_headroom(margin);
        return margin;
    }
    margin.value.reset();
    margin.said = missing_said(ampacity);
    margin.missing = ampacity.missing;
    return margin;
}

Margin corrected_margin(Margin margin, const RunView& run, const RunAmpacity& ampacity) {
    margin.value = lasting_current_factor * run.code_isc_a;
    margin.limit = ampacity.corrected_a;
    margin.said = say<"run.corrected_current">(with<"factor">(lasting_current_factor),
                                               with<"laid">(laid_said(ampacity)),
                                               with<"also">(also_said(ampacity)));
    if (*margin.limit <= 0.0) {
        margin.headroom = -1.0;
        margin.severity = margin.consequence;
        margin.said = say<"run.hotter_than_allowed">();
        return margin;
    }
    grade(margin);
    return margin;
}

Margin margin_by(const RunView& run, const RunAmpacity& ampacity) {
    Margin margin{.name = "run current",
                  .subject = run.subject,
                  .consequence = Severity::warning,
                  .value = table_current_factor * run.code_isc_a,
                  .limit = ampacity.table_a,
                  .unit = unit::ampere,
                  .said = say<"run.table_current">(with<"factor">(table_current_factor),
                                                   with<"laid">(laid_said(ampacity))),
                  .source = "nec-690-8"};
    if (!ampacity.table_a) return without_table(std::move(margin), ampacity);
    grade(margin);
    if (ampacity.corrected_a) {
        Margin corrected = corrected_margin(margin, run, ampacity);
        if (*corrected.headroom < *margin.headroom) margin = std::move(corrected);
    }
    if (ampacity.unmarked && margin.severity != Severity::none)
        margin.missing.emplace_back("control.terminal_limit_c");
    // A current above the value of one code, or above the uncorrected value, is too high whatever
    // is unknown.
    if (ampacity.whole) return margin;
    if (margin.severity == Severity::warning) {
        keep_no_headroom(margin);
        return margin;
    }
    margin.severity = Severity::not_assessed;
    margin.headroom.reset();
    add(margin, missing_said(ampacity));
    margin.missing = ampacity.missing;
    return margin;
}

/// Whether a raceway that is not excluded may surround it.
bool may_lie_in_raceway(const RunView& run) {
    const Surroundings& around = run.around();
    const bool open =
        around.kind == SurroundingsKind::open_air || around.kind == SurroundingsKind::sunlit;
    return open && !around.metal_raceway;
}

/// The same wire in a raceway, close above a roof unless stated to be away from one.
std::optional<double> headroom_in_raceway(const RunView& run) {
    Surroundings inside = run.around();
    inside.metal_raceway = true;
    if (!inside.roof_distance_mm) inside.roof_distance_mm = 0.0;
    return margin_by(run, run_ampacity(run.circuit, run.parts, run.site, inside)).headroom;
}

}  // namespace

Margin run_current_margin(const RunView& run) {
    Margin margin = margin_by(run, run_ampacity(run.circuit, run.parts, run.site));
    // A raceway cools less, whether or not the wire may be installed without one.
    if (may_lie_in_raceway(run)) {
        const double inside = headroom_in_raceway(run).value_or(-1.0);
        if (inside < margin.headroom.value_or(1.0)) {
            margin.careful_headroom = inside;
            margin.missing.emplace_back("surroundings.metal_raceway");
        }
    }
    return margin;
}

}  // namespace heatmatch
