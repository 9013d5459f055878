#include "heatmatch/match/margins/tail_margins.hpp"

#include <array>
#include <utility>

namespace heatmatch {

namespace {

constexpr double end_seal_limit_c = 200.0;

constexpr auto names =
    std::to_array<const char*>({"terminal temperature", "end seal", "hot tail insulation",
                                "hot tail plating", "hot tail joint"});

/// The end of an element as its margins see it.
struct TailView {
    const Circuit& circuit;
    const TailHeat& tail;
    const TailTemperatures& at;
    std::string element;
    std::string run;
};

const char* words_of(TerminalPlace place) {
    if (place == TerminalPlace::buried) return "buried in the bed";
    return place == TerminalPlace::in_box ? "in a box outside the wall" : "outside the wall";
}

Margin tail_margin(const TailView& view, const char* name, Severity consequence,
                   const std::string& subject, std::optional<double> limit_c, std::string text,
                   std::string source) {
    Margin margin{.name = name,
                  .subject = subject,
                  .consequence = consequence,
                  .value = view.at.terminal_c,
                  .limit = limit_c,
                  .unit = unit::celsius,
                  .said = std::move(text),
                  .source = std::move(source),
                  .assumed = view.tail.assumed};
    margin.assumed.insert(margin.assumed.end(), view.at.assumed.begin(), view.at.assumed.end());
    return margin;
}

void judge(Margin& margin, const TailView& view, const char* missing, const std::string& unknown) {
    if (!margin.limit) {
        margin.said = unknown;
        margin.missing = {missing};
    }
    grade(margin, room_c);
    const Surroundings& around = view.tail.run.run.surroundings;
    const bool stated = around.kind == "bed" || around.air_c;
    if (!stated && margin.severity == Severity::none && margin.consequence == Severity::danger) {
        margin.severity = Severity::caution;
        margin.said += " The air around it is not stated: it may be far hotter than was assumed.";
    }
    if (view.at.runaway) {
        margin.headroom = -1.0;
        margin.severity = margin.consequence;
        margin.said = "The wire at the terminal finds no steady temperature: it runs away.";
    }
}

Margin terminal_margin(const TailView& view) {
    const Element& element = view.circuit.bank.element;
    const std::string there = std::string("Its terminals, ") + words_of(view.tail.tail.place) +
                              ", reach {value} by the heat that comes down its cold end";
    Margin margin = tail_margin(view, "terminal temperature", Severity::danger, view.element,
                                element.terminal_limit_c, there + "; they allow {limit}.",
                                element.provenance.source);
    judge(margin, view, "terminal_limit_c", there + "; what they allow is not known.");
    return margin;
}

/// No store, so no heat down the pin: what the stated surroundings alone make of the wire there.
Margin terminal_without_store(const Circuit& circuit, const Site& site,
                              const std::string& subject) {
    const Element& element = circuit.bank.element;
    Margin margin{.name = "terminal temperature",
                  .subject = subject,
                  .value = terminal_temperature_c(circuit, site),
                  .limit = element.terminal_limit_c,
                  .unit = unit::celsius,
                  .said =
                      "By the stated surroundings the wire is at {value} where it meets the "
                      "terminals; they allow {limit}. Heat that comes down the element's own pin "
                      "is not counted: no store is described.",
                  .source = element.provenance.source};
    if (!margin.value) {
        margin.said = "State the temperature around the run at the element to judge its terminals.";
        margin.missing = {"surroundings.air_c"};
    } else if (!margin.limit) {
        margin.said = "The limit of the terminals is not known; the wire there is at {value}.";
        margin.missing = {"terminal_limit_c"};
    }
    grade(margin, room_c);
    return margin;
}

Margin seal_margin(const TailView& view) {
    Margin margin = tail_margin(view, "end seal", Severity::warning, view.element, end_seal_limit_c,
                                "Its end seals reach {value}; silicone and epoxy stand {limit} or "
                                "less, then damp gets into the magnesia.",
                                "element-end-seals");
    judge(margin, view, "", "");
    return margin;
}

/// From which distance along the wire it would do: 6 cm (2.4 in), or nowhere.
std::string from_where(const TailView& view, double limit_c) {
    constexpr double cm_per_inch = 2.54;
    const auto distance_m = view.at.distance_for_limit_m(limit_c);
    if (!distance_m) return " It would do nowhere along this run.";
    const double cm = 100.0 * *distance_m;
    return " It would do from " + format_number(cm, 2) + " cm (" +
           format_number(cm / cm_per_inch, 2) + " in) after the terminal on.";
}

Margin insulation_margin(const TailView& view) {
    const auto& insulation = view.tail.run.insulation;
    const std::string wire = "At the terminal the wire of \"" + view.tail.run.run.name + "\" is ";
    Margin margin = tail_margin(view, "hot tail insulation", Severity::danger, view.run,
                                insulation ? std::optional(insulation->limit_c) : std::nullopt,
                                wire + "at {value}; " + (insulation ? insulation->family : "") +
                                    " insulation is rated {limit} and melts or chars beyond it.",
                                insulation ? insulation->provenance.source : "common-practice");
    judge(margin, view, "insulation", wire + "at {value}; its insulation is not known.");
    if (margin.headroom && *margin.headroom < 0.0 && !view.at.runaway) {
        margin.said += from_where(view, insulation->limit_c);
    }
    return margin;
}

Margin plating_margin(const TailView& view) {
    const Wire& wire = *view.tail.run.wire;
    const std::string metal = wire.plating == "bare" ? "bare " + wire.conductor
                                                     : wire.plating + "-plated " + wire.conductor;
    Margin margin = tail_margin(
        view, "hot tail plating", Severity::warning, view.run, conductor_limit_c(wire),
        "At the terminal it is at {value}; " + metal + " oxidises above {limit} and ages early.",
        "astm-b33");
    judge(margin, view, "", "");
    return margin;
}

Margin joint_margin(const TailView& view) {
    const auto& connector = view.tail.run.connector;
    Margin margin = tail_margin(view, "hot tail joint", Severity::danger, view.run,
                                connector ? std::optional(connector->limit_c) : std::nullopt,
                                "At the terminal it is at {value}; its joint (" +
                                    (connector ? connector->label : "") + ") is rated {limit}.",
                                connector ? connector->provenance.source : "common-practice");
    judge(margin, view, "connector",
          "At the terminal it is at {value}; what joins the wire there is not known.");
    return margin;
}

}  // namespace

std::optional<TailTemperatures> tail_of(const Circuit& circuit, const Extremes& extremes,
                                        const std::optional<HeatPoint>& point) {
    if (!point) return std::nullopt;
    const TailHeat tail = tail_heat(circuit);
    if (!tail.known()) return std::nullopt;
    return tail_at(tail, circuit, extremes.element_power_w, point->sheath_c);
}

std::vector<Margin> tail_margins(const Circuit& circuit, const Site& site, const Extremes& extremes,
                                 const std::optional<HeatPoint>& point) {
    const std::string element = "element \"" + circuit.bank.element.id + '"';
    const TailHeat tail = tail_heat(circuit);
    if (!tail.known() || !point) {
        std::vector<std::string> missing = tail.missing;
        if (missing.empty()) missing = {"an element that fits"};
        const std::string run = "run \"" + tail.run.run.name + '"';
        std::vector<Margin> margins;
        for (const char* name : names) {
            if (!circuit.heat && margins.empty()) {
                margins.push_back(terminal_without_store(circuit, site, element));
                continue;
            }
            const bool of_run = std::string_view(name).starts_with("hot tail");
            margins.push_back(not_assessed(name, of_run ? run : element,
                                           "How hot its end gets needs " + missing.front() + ".",
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
