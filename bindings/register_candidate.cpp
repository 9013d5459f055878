#include "docs_classes_more.hpp"
#include "pybind.hpp"
#include "state.hpp"
#include "tail.hpp"

#include "heatmatch/answer/check_counts.hpp"
#include "heatmatch/answer/duties_table.hpp"
#include "heatmatch/match/candidate/advice.hpp"
#include "heatmatch/match/candidate/explain.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"

namespace heatmatch::python {

py::tuple state_of(const Candidate& candidate) {
    py::object season = py::none();
    if (candidate.season) season = state_of(*candidate.season);
    py::object space = py::none();
    if (candidate.space) space = state_of(*candidate.space);
    return py::make_tuple(
        state_of(candidate.circuit), states_of(candidate.delivered), states_of(candidate.margins()),
        candidate.price_to_buy, candidate.currency, season, candidate.remarks,
        record_to_dict(site_fields(), &candidate.site), state_of(candidate.bright), space,
        state_of(candidate.bill), candidate.like_it);
}

Candidate candidate_from(const py::tuple& state) {
    std::optional<Season> season;
    if (!state[5].is_none()) season = season_from(state[5].cast<py::tuple>());
    std::optional<SpaceBalance> space;
    if (!state[9].is_none()) space = space_balance_from(state[9].cast<py::tuple>());
    Site site;
    fill_record(site_fields(), &site, state[7].cast<py::dict>(), "site");
    return {.circuit = circuit_from(state[0].cast<py::tuple>()),
            .delivered = items_from(state[1], delivered_from),
            .season = std::move(season),
            .price_to_buy = state[3].cast<std::optional<double>>(),
            .currency = state[4].cast<std::string>(),
            .bill = bill_from(state[10].cast<py::tuple>()),
            .site = std::move(site),
            .bright = extremes_from(state[8].cast<py::tuple>()),
            .space = std::move(space),
            .remarks = state[6].cast<Sentences>(),
            .like_it = state[11].cast<int>(),
            .made = LazyMargins(items_from(state[2], margin_from))};
}

void register_candidate(py::module_& module) {
    py::class_<Step>(module, "Step", docs::class_step)
        .def_readonly("name", &Step::name, "Quantity that is computed.")
        .def_readonly("formula", &Step::formula, "Formula in words and symbols.")
        .def_readonly("numbers", &Step::numbers,
                      "Formula with its numbers; empty for a value that was given.")
        .def_readonly("value", &Step::value, "Result, in `unit`.")
        .def_readonly("unit", &Step::unit, "Unit of `value`.")
        .def_readonly("source", &Step::source,
                      "Key of ``sources``, or the origin of a given value.")
        .def_property_readonly("description", &said,
                               "Whole step with its result and its source, in one sentence.")
        .def("__repr__", [](const Step& step) { return said(step).text(); })
        .def(py::pickle(
            [](const Step& step) {
                return py::make_tuple(step.name, step.formula, step.numbers, step.value, step.unit,
                                      step.source);
            },
            [](const py::tuple& state) {
                return Step{state[0].cast<Sentence>(),    state[1].cast<Sentence>(),
                            state[2].cast<Sentence>(),    state[3].cast<double>(),
                            state[4].cast<std::string>(), state[5].cast<Sentence>()};
            }));
    py::class_<Candidate>(module, "Candidate", "One circuit with its numbers.")
        .def_readonly("circuit", &Candidate::circuit, "the circuit")
        .def_readonly("delivered", &Candidate::delivered, "one for each condition")
        .def_readonly("season", &Candidate::season, "energy over the season; None without weather")
        .def_property_readonly(
            "margins",
            [](const Candidate& candidate) -> const std::vector<Margin>& {
                return candidate.margins();
            },
            "every named check")
        .def_readonly("site", &Candidate::site, "that it is judged at")
        .def_readonly("bright", &Candidate::bright, "load on its elements in cold, bright weather")
        .def_readonly("space", &Candidate::space,
                      "heat loss of the space heated by its store, or None")
        .def_property_readonly(
            "heat",
            [](const Candidate& candidate) { return heat_of(candidate.circuit, candidate.bright); },
            "temperatures of its store in cold, bright weather, or None")
        .def_readonly("price_to_buy", &Candidate::price_to_buy, "or None if a price is unknown")
        .def_readonly("currency", &Candidate::currency, "of the price")
        .def_readonly("bill", &Candidate::bill, "all parts, owned and to buy")
        .def_readonly("like_it", &Candidate::like_it, "pairings of its load folded under it")
        .def_readonly("remarks", &Candidate::remarks,
                      "remarks of an assessment; a ranking has its own")
        .def_property_readonly("mean_power_w", &Candidate::mean_power_w, "over the conditions [W]")
        .def_property_readonly("mean_power_low_w", &Candidate::mean_power_low_w, "[W]")
        .def_property_readonly("mean_power_high_w", &Candidate::mean_power_high_w, "[W]")
        .def_property_readonly("objective", &Candidate::objective,
                               "objective of a ranking: season energy [kWh], mean power [W] "
                               "without weather")
        .def_property_readonly(
            "worst",
            [](const Candidate& candidate) -> std::optional<Margin> {
                const Margin* worst = candidate.worst();
                return worst == nullptr ? std::nullopt : std::optional<Margin>(*worst);
            },
            "the most severe margin")
        .def_property_readonly(
            "severity", [](const Candidate& candidate) { return candidate.severity(); },
            "of the worst margin")
        .def_property_readonly(
            "worst_severity", [](const Candidate& candidate) { return candidate.worst_severity(); },
            "the worst that any margin may be with unstated facts at their careful ends")
        .def_property_readonly(
            "deciding_fact",
            [](const Candidate& candidate) -> std::optional<std::pair<std::string, std::string>> {
                const auto fact = candidate.deciding_fact();
                if (!fact) return std::nullopt;
                return std::pair{fact->part, fact->field};
            },
            "(part, field) of the unstated fact that decides whether it is a danger, or None")
        .def_property_readonly(
            "nearest_limit",
            [](const Candidate& candidate) {
                const Margin* nearest = candidate.nearest_limit();
                return nearest == nullptr ? std::nullopt : std::optional<Margin>(*nearest);
            },
            "the margin of the smallest headroom, or None")
        .def_property_readonly("heat_unknown", &Candidate::heat_unknown,
                               "whether a store is described but how hot the sheath gets in it is "
                               "not known: smallest_headroom then leaves that out")
        .def_property_readonly("smallest_headroom", &Candidate::smallest_headroom,
                               "of the margins whose passing is a danger")
        .def_property_readonly("not_assessed", &Candidate::not_assessed, "margins that lack data")
        .def_property_readonly("checks", &check_counts, "counts of checks and of their findings")
        .def_property_readonly("not_checked", &not_checked,
                               "checks that lack a fact, by fact; checks not made come first")
        .def("code_duties", &duties_of,
             "Duties of the code that is stated, else of both; they change no rank and no "
             "severity.")
        .def_property_readonly(
            "assumed", [](const Candidate& candidate) { return texts_of(candidate.assumed()); },
            "assumptions")
        .def_property_readonly(
            "tail",
            [](const Candidate& candidate) {
                return candidate_tail(candidate.circuit, candidate.bright);
            },
            "temperatures along the end of an element, or None")
        .def("check_wires", &checked_wires, py::arg("catalog") = nullptr,
             "Every run: its temperature, its limits, and a suitable wire of the catalog.")
        .def(
            "advice",
            [](const Candidate& candidate) {
                const py::gil_scoped_release release;
                return advise(candidate);
            },
            "Largest power of its elements in their store, and changes within the limits.")
        .def(
            "explain", [](const Candidate& candidate) { return explain(candidate); },
            "Every formula with its numbers, down to the nameplate.")
        .def("__repr__",
             [](const Candidate& candidate) {
                 return "<Candidate " + candidate.circuit.title() + ": " +
                        format_number(candidate.objective(), 4) +
                        (candidate.season ? " kWh, " : " W, ") +
                        text_of_choice(candidate.severity()) + ">";
             })
        .def(py::pickle([](const Candidate& candidate) { return state_of(candidate); },
                        &candidate_from));
}

}  // namespace heatmatch::python
