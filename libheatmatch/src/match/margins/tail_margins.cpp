#include "heatmatch/match/margins/tail_margins.hpp"

#include "said.hpp"
#include "sentences_of_runs.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "heatmatch/match/margins/element_margins.hpp"

namespace heatmatch {

using margins_sentences::of_runs::say;

namespace {

constexpr double end_seal_limit_c = 200.0;

constexpr auto tail_names =
    std::to_array<const char*>({"terminal temperature", "end seal", "hot tail insulation",
                                "hot tail plating", "hot tail joint"});

/// Input for the margins of the end of an element.
struct TailView {
    const Circuit& circuit;
    const TailHeat& tail;
    const TailTemperatures& at;
    std::string element;
    std::string run;
};

Sentence words_of(TerminalPlace place) {
    if (place == TerminalPlace::buried) return say<"tail.buried">();
    return place == TerminalPlace::in_box ? say<"tail.in_box">() : say<"tail.outside">();
}

Margin tail_margin(const TailView& view, const char* name, Severity consequence,
                   const std::string& subject, std::optional<double> limit_c, Sentence said,
                   std::string source) {
    Margin margin{.name = name,
                  .subject = subject,
                  .consequence = consequence,
                  .value = view.at.terminal_c,
                  .limit = limit_c,
                  .unit = unit::celsius,
                  .said = std::move(said),
                  .source = std::move(source),
                  .assumed = view.tail.assumed};
    margin.assumed.insert(margin.assumed.end(), view.at.assumed.begin(), view.at.assumed.end());
    return margin;
}

void judge(Margin& margin, const TailView& view, const char* missing = "", Sentence unknown = {}) {
    if (!margin.limit) {
        margin.said = std::move(unknown);
        margin.missing = {missing};
    }
    grade(margin, room_c);
    const bool stated = view.tail.air_stated;
    if (!stated && margin.severity == Severity::none && margin.consequence == Severity::danger) {
        margin.severity = Severity::caution;
        add(margin, say<"tail.air_not_stated">(with<"air">(view.at.air_c, unit::celsius)));
    }
    // The air around a tail may have any temperature: if not stated, the careful headroom is -1.
    if (!stated) {
        margin.careful_headroom = std::min(margin.headroom.value_or(-1.0), -1.0);
        margin.missing.emplace_back("surroundings.air_c");
    }
    if (view.at.runaway) {
        margin.headroom = -1.0;
        margin.severity = margin.consequence;
        margin.said = say<"tail.runs_away">();
    }
}

Margin terminal_margin(const TailView& view) {
    const Element& element = view.circuit.bank.element;
    const auto there = [&view](Sentence what) {
        return say<"tail.terminals">(with<"place">(words_of(view.tail.tail.place)),
                                     with<"what">(std::move(what)));
    };
    Margin margin = tail_margin(view, "terminal temperature", Severity::danger, view.element,
                                element.terminal_limit_c, there(say<"tail.terminals_allow">()),
                                element.provenance.source);
    judge(margin, view, "terminal_limit_c", there(say<"tail.terminals_unknown">()));
    return margin;
}

/// Without a store there is no heat from the pin: temperature of the wire by its stated
/// surroundings.
Margin terminal_without_store(const Circuit& circuit, const Site& site,
                              const std::string& subject) {
    const Element& element = circuit.bank.element;
    Margin margin{.name = "terminal temperature",
                  .subject = subject,
                  .value = terminal_temperature_c(circuit, site),
                  .limit = element.terminal_limit_c,
                  .unit = unit::celsius,
                  .said = say<"tail.without_store">(),
                  .source = element.provenance.source};
    if (!margin.value) {
        margin.said = say<"tail.state_air">();
        margin.missing = {"surroundings.air_c"};
    } else if (!margin.limit) {
        margin.said = say<"tail.limit_unknown">();
        margin.missing = {"terminal_limit_c"};
    }
    grade(margin, room_c);
    return margin;
}

Margin seal_margin(const TailView& view) {
    Margin margin = tail_margin(view, "end seal", Severity::warning, view.element, end_seal_limit_c,
                                say<"tail.seals">(), "element-end-seals");
    judge(margin, view);
    return margin;
}

/// Distance along the wire from which it is suitable: 6 cm, or nowhere.
Sentence from_where(const TailView& view, double limit_c) {
    const auto distance_m = view.at.distance_for_limit_m(limit_c);
    if (!distance_m) return say<"tail.does_nowhere">();
    return say<"tail.does_from">(with<"distance">(100.0 * *distance_m, unit::centimetre, 2));
}

Margin insulation_margin(const TailView& view) {
    const auto& insulation = view.tail.run.insulation;
    const auto wire_is = [&view](Sentence what) {
        return say<"tail.wire">(with<"run">(view.tail.run.run.name), with<"what">(std::move(what)));
    };
    Margin margin =
        tail_margin(view, "hot tail insulation", Severity::danger, view.run,
                    insulation ? std::optional(insulation->limit_c) : std::nullopt,
                    insulation ? wire_is(say<"run.insulation">(with<"family">(insulation->family)))
                               : Sentence{},
                    insulation ? insulation->provenance.source : "common-practice");
    judge(margin, view, "insulation", wire_is(say<"tail.insulation_unknown">()));
    if (margin.headroom && *margin.headroom < 0.0 && !view.at.runaway) {
        add(margin, from_where(view, insulation->limit_c));
    }
    return margin;
}

Margin plating_margin(const TailView& view) {
    const Wire& wire = *view.tail.run.wire;
    Margin margin =
        tail_margin(view, "hot tail plating", Severity::warning, view.run, conductor_limit_c(wire),
                    say<"tail.here">(with<"what">(metal_limit(wire))), "astm-b33");
    judge(margin, view);
    return margin;
}

Margin joint_margin(const TailView& view) {
    const auto& connector = view.tail.run.connector;
    Margin margin = tail_margin(
        view, "hot tail joint", Severity::danger, view.run,
        connector ? std::optional(connector->limit_c) : std::nullopt,
        connector
            ? say<"tail.here">(with<"what">(say<"run.joint_heat">(with<"joint">(connector->label))))
            : Sentence{},
        connector ? connector->provenance.source : "common-practice");
    judge(margin, view, "connector", say<"tail.here">(with<"what">(say<"tail.joint_unknown">())));
    return margin;
}

std::optional<TailTemperatures> hottest_tail(const Circuit& circuit, const Extremes& extremes) {
    std::optional<TailTemperatures> hottest;
    for (const ElementSeen& one : elements_seen(circuit, extremes)) {
        auto at = tail_of(one.circuit, one.bright, one.heat);
        if (!at) return std::nullopt;
        const bool hotter =
            !hottest || at->runaway || (!hottest->runaway && at->terminal_c > hottest->terminal_c);
        if (hotter) hottest = std::move(at);
    }
    return hottest;
}

}  // namespace

std::optional<TailTemperatures> tail_of(const Circuit& circuit, const Extremes& extremes,
                                        const std::optional<HeatPoint>& point) {
    if (!point) return std::nullopt;
    if (circuit.bank.unlike) return hottest_tail(circuit, extremes);
    const TailHeat tail = tail_heat(circuit);
    if (!tail.known()) return std::nullopt;
    return tail_at(tail, circuit, extremes.element_power_w, point->sheath_c);
}

std::vector<Margin> tail_margins(const Circuit& circuit, const Site& site, const Extremes& extremes,
                                 const std::optional<HeatPoint>& point) {
    if (circuit.bank.unlike) {
        return of_each_element(elements_seen(circuit, extremes), [&site](const ElementSeen& one) {
            return tail_margins(one.circuit, site, one.bright, one.heat);
        });
    }
    const std::string element = "element \"" + circuit.bank.element.id + '"';
    const TailHeat tail = tail_heat(circuit);
    if (!tail.known() || !point) {
        std::vector<std::string> missing = tail.missing;
        if (missing.empty()) missing = {"an element that fits"};
        const std::string run = "run \"" + tail.run.run.name + '"';
        std::vector<Margin> margins;
        for (const char* name : tail_names) {
            if (!circuit.heat && margins.empty()) {
                margins.push_back(terminal_without_store(circuit, site, element));
                continue;
            }
            const bool of_run = std::string_view(name).starts_with("hot tail");
            margins.push_back(not_assessed(name, of_run ? run : element,
                                           say<"tail.needs">(with<"missing">(missing.front())),
                                           missing));
        }
        return margins;
    }
    const TailTemperatures at = tail_at(tail, circuit, extremes.element_power_w, point->sheath_c);
    const TailView view{circuit, tail, at, element, "run \"" + tail.run.run.name + '"'};
    return {terminal_margin(view), seal_margin(view), insulation_margin(view), plating_margin(view),
            joint_margin(view)};
}

}  // namespace heatmatch
