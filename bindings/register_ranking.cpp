#include "pybind.hpp"
#include "state.hpp"

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/match/assess.hpp"
#include "heatmatch/match/cautions.hpp"
#include "heatmatch/match/explain.hpp"
#include "heatmatch/match/rank.hpp"

namespace heatmatch::python {

namespace {

std::vector<Condition> conditions_from(const py::object& object) {
    if (object.is_none()) return RankOptions{}.conditions;
    std::vector<Condition> conditions;
    try {
        for (const py::handle& item : object) {
            const auto pair = py::tuple(py::reinterpret_borrow<py::object>(item));
            if (pair.size() != 2) throw py::value_error();
            conditions.push_back({pair[0].cast<double>(), pair[1].cast<double>()});
        }
    } catch (const std::exception&) {
        throw InvalidInput(ErrorDetail{.part = "ranking",
                                       .field = "conditions",
                                       .value = quote(py::repr(object).cast<std::string>()),
                                       .allowed = "pairs of W/m2 and cell temperature in °C",
                                       .remedy = "write it as in [(1000, 45), (600, 35)]"});
    }
    return conditions;
}

py::tuple candidate_state(const Candidate& candidate) {
    return py::make_tuple(state_of(candidate.circuit), states_of(candidate.delivered),
                          states_of(candidate.margins), candidate.price_to_buy, candidate.currency);
}

Candidate candidate_from(const py::tuple& state) {
    return {.circuit = circuit_from(state[0].cast<py::tuple>()),
            .delivered = items_from(state[1], delivered_from),
            .margins = items_from(state[2], margin_from),
            .price_to_buy = state[3].cast<std::optional<double>>(),
            .currency = state[4].cast<std::string>()};
}

template <class List>
py::tuple candidate_states(const List& candidates) {
    py::tuple states(candidates.size());
    for (std::size_t i = 0; i < candidates.size(); ++i) states[i] = candidate_state(candidates[i]);
    return states;
}

Ranking run_rank(const Catalog& catalog, const Installation& installation, std::size_t top,
                 std::size_t keep_rejected, int max_bank, const py::object& conditions,
                 double coil_temperature_c, const py::object& progress) {
    RankOptions options{.conditions = conditions_from(conditions),
                        .max_bank = max_bank,
                        .top = top,
                        .keep_rejected = keep_rejected,
                        .coil_temperature_c = coil_temperature_c};
    // A signal or a progress function that raises stops the ranking; its exception goes on.
    bool raised = false;
    options.progress = [&](double share) {
        const py::gil_scoped_acquire acquire;
        if (PyErr_CheckSignals() != 0) raised = true;
        if (raised) return false;
        if (progress.is_none()) return true;
        try {
            progress(share);
        } catch (py::error_already_set& error) {
            error.restore();
            raised = true;
        }
        return !raised;
    };
    const auto parts = catalog.snapshot();
    try {
        const py::gil_scoped_release release;
        return rank(*parts, installation, options);
    } catch (const Interrupted&) {
        if (PyErr_Occurred() != nullptr) throw py::error_already_set();
        throw;
    }
}

void register_candidate(py::module_& module) {
    py::class_<Step>(module, "Step", "One step of an explanation.")
        .def_readonly("name", &Step::name, "what is computed")
        .def_readonly("formula", &Step::formula, "in words")
        .def_readonly("numbers", &Step::numbers, "the formula with its numbers")
        .def_readonly("value", &Step::value, "the result")
        .def_readonly("unit", &Step::unit, "of the result")
        .def_readonly("source", &Step::source, "cite key, or where a given value comes from")
        .def("__repr__",
             [](const Step& step) {
                 std::string text = step.name + ": " + step.formula;
                 if (!step.numbers.empty()) text += " = " + step.numbers;
                 text += " = " + format_number(step.value) + ' ' + step.unit;
                 return step.source.empty() ? text : text + " [" + step.source + "]";
             })
        .def(py::pickle(
            [](const Step& step) {
                return py::make_tuple(step.name, step.formula, step.numbers, step.value, step.unit,
                                      step.source);
            },
            [](const py::tuple& state) {
                return Step{state[0].cast<std::string>(), state[1].cast<std::string>(),
                            state[2].cast<std::string>(), state[3].cast<double>(),
                            state[4].cast<std::string>(), state[5].cast<std::string>()};
            }));
    py::class_<Candidate>(module, "Candidate", "One circuit with its numbers.")
        .def_readonly("circuit", &Candidate::circuit, "the circuit")
        .def_readonly("delivered", &Candidate::delivered, "one for each condition")
        .def_readonly("margins", &Candidate::margins, "every named check")
        .def_readonly("price_to_buy", &Candidate::price_to_buy, "or None if a price is unknown")
        .def_readonly("currency", &Candidate::currency, "of the price")
        .def_property_readonly("mean_power_w", &Candidate::mean_power_w, "over the conditions [W]")
        .def_property_readonly("mean_power_low_w", &Candidate::mean_power_low_w, "[W]")
        .def_property_readonly("mean_power_high_w", &Candidate::mean_power_high_w, "[W]")
        .def_property_readonly(
            "worst",
            [](const Candidate& candidate) -> std::optional<Margin> {
                const Margin* worst = candidate.worst();
                return worst == nullptr ? std::nullopt : std::optional<Margin>(*worst);
            },
            "the most severe margin")
        .def_property_readonly(
            "severity",
            [](const Candidate& candidate) {
                return std::string(severity_name(candidate.severity()));
            },
            "of the worst margin")
        .def_property_readonly("smallest_headroom", &Candidate::smallest_headroom,
                               "of the margins whose passing is a danger")
        .def_property_readonly("not_assessed", &Candidate::not_assessed, "margins that lack data")
        .def_property_readonly(
            "assumed", [](const Candidate& candidate) { return texts_of(candidate.assumed()); },
            "what was assumed anywhere")
        .def(
            "explain", [](const Candidate& candidate) { return explain(candidate); },
            "Every formula with its numbers put in, down to the nameplate.")
        .def("__repr__",
             [](const Candidate& candidate) {
                 return "<Candidate " + candidate.circuit.title() + ": " +
                        format_number(candidate.mean_power_w(), 4) + " W, " +
                        std::string(severity_name(candidate.severity())) + ">";
             })
        .def(py::pickle(&candidate_state, &candidate_from));
}

}  // namespace

void register_ranking(py::module_& module) {
    register_candidate(module);
    py::class_<Ranking>(module, "Ranking", "Candidates in order, and what became of the others.")
        .def_readonly("candidates", &Ranking::candidates, "without danger, best first")
        .def_readonly("rejected", &Ranking::rejected, "with danger, most power first")
        .def_readonly("reasons", &Ranking::reasons, "margin -> pairings it rejected")
        .def_readonly("evaluated", &Ranking::evaluated, "pairings looked at")
        .def_readonly("remarks", &Ranking::remarks, "what to know first")
        .def_property_readonly(
            "conditions",
            [](const Ranking& ranking) {
                py::list pairs;
                for (const Condition& condition : ranking.conditions) {
                    pairs.append(
                        py::make_tuple(condition.irradiance_w_m2, condition.cell_temperature_c));
                }
                return pairs;
            },
            "pairs of W/m2 and cell temperature in °C")
        .def(
            "pareto", [](const Ranking& ranking) { return ranking.pareto; },
            "Candidates that no other beats in power, headroom and price at once.")
        .def("__len__", [](const Ranking& ranking) { return ranking.candidates.size(); })
        .def(
            "__getitem__",
            [](const Ranking& ranking, py::ssize_t index) -> const Candidate& {
                const auto size = static_cast<py::ssize_t>(ranking.candidates.size());
                if (index < 0) index += size;
                if (index < 0 || index >= size) throw py::index_error("no such candidate");
                return ranking.candidates[static_cast<std::size_t>(index)];
            },
            py::arg("index"), py::pos_only(), py::return_value_policy::reference_internal)
        .def(
            "__getitem__",
            [](const Ranking& ranking, const py::slice& slice) {
                py::list all = py::cast(ranking.candidates);
                return py::list(all[slice]);
            },
            py::arg("index"), py::pos_only())
        .def(
            "__iter__",
            [](const Ranking& ranking) {
                return py::make_iterator(ranking.candidates.begin(), ranking.candidates.end());
            },
            py::keep_alive<0, 1>())
        .def(py::pickle(
            [](const Ranking& ranking) {
                py::list conditions;
                for (const Condition& c : ranking.conditions) {
                    conditions.append(py::make_tuple(c.irradiance_w_m2, c.cell_temperature_c));
                }
                return py::make_tuple(candidate_states(ranking.candidates),
                                      candidate_states(ranking.rejected), ranking.reasons,
                                      candidate_states(ranking.pareto), ranking.evaluated,
                                      conditions, ranking.remarks);
            },
            [](const py::tuple& state) {
                return Ranking{.candidates = items_from(state[0], candidate_from),
                               .rejected = items_from(state[1], candidate_from),
                               .reasons = state[2].cast<std::map<std::string, std::size_t>>(),
                               .pareto = items_from(state[3], candidate_from),
                               .evaluated = state[4].cast<std::size_t>(),
                               .conditions = conditions_from(state[5]),
                               .remarks = state[6].cast<std::vector<std::string>>()};
            }));
    const RankOptions defaults;
    module.def("rank", &run_rank, py::arg("catalog"), py::arg("installation"), py::kw_only(),
               py::arg("top") = defaults.top, py::arg("keep_rejected") = defaults.keep_rejected,
               py::arg("max_bank") = defaults.max_bank, py::arg("conditions") = py::none(),
               py::arg("coil_temperature_c") = defaults.coil_temperature_c,
               py::arg("progress") = py::none(),
               "Ranks every owned panel group x allowed element x bank x hook-up.");
    module.def(
        "assess",
        [](const Catalog& catalog, const Installation& installation, const py::object& conditions,
           double coil_temperature_c) {
            RankOptions options{.conditions = conditions_from(conditions),
                                .coil_temperature_c = coil_temperature_c};
            return assess(*catalog.snapshot(), installation, options);
        },
        py::arg("catalog"), py::arg("installation"), py::kw_only(),
        py::arg("conditions") = py::none(),
        py::arg("coil_temperature_c") = defaults.coil_temperature_c,
        "Judges the circuit that stands.");
    module.def(
        "cautions",
        [] {
            std::vector<std::string> sentences;
            for (const std::string_view sentence : cautions()) sentences.emplace_back(sentence);
            return sentences;
        },
        "What every report of a circuit must show, one sentence each.");
}

}  // namespace heatmatch::python
