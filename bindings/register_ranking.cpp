#include "docs_classes_more.hpp"
#include "docs_ranking.hpp"
#include "parts_view.hpp"
#include "progress_call.hpp"
#include "state.hpp"

#include <optional>

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/match/circuit/hookup.hpp"
#include "heatmatch/match/margins/cautions.hpp"
#include "heatmatch/match/rank/rank.hpp"

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
        throw InvalidInput(
            ErrorDetail{.part = "ranking",
                        .field = "conditions",
                        .value = quote(py::repr(object).cast<std::string>()),
                        .allowed = "pairs of W/m2 and cell temperature in °C",
                        .remedy = verbatim("write it as in [(1000, 45), (600, 35)]")});
    }
    return conditions;
}

template <class List>
py::tuple candidate_states(const List& candidates) {
    py::tuple states(candidates.size());
    for (std::size_t i = 0; i < candidates.size(); ++i) states[i] = state_of(candidates[i]);
    return states;
}

py::object recommended_state(const Ranking& ranking) {
    if (!ranking.recommended) return py::none();
    return state_of(*ranking.recommended);
}

std::optional<Candidate> recommended_from(const py::object& state) {
    if (state.is_none()) return std::nullopt;
    return candidate_from(state.cast<py::tuple>());
}

py::tuple alternative_states(const Ranking& ranking) {
    py::tuple states(ranking.alternatives.size());
    for (std::size_t i = 0; i < ranking.alternatives.size(); ++i) {
        const Alternative& each = ranking.alternatives[i];
        states[i] = py::make_tuple(word_of(each.kind), state_of(each.candidate));
    }
    return states;
}

std::vector<Alternative> alternatives_from(const py::object& states) {
    std::vector<Alternative> all;
    for (const py::handle& item : states) {
        const auto state = item.cast<py::tuple>();
        all.push_back({.kind = find_choice<AlternativeKind>(state[0].cast<std::string>()).value(),
                       .candidate = candidate_from(state[1].cast<py::tuple>())});
    }
    return all;
}

/// Weather with at least the lifetime of the call.
std::shared_ptr<const Weather> borrowed(const Weather* weather) {
    return {weather, [](const Weather*) {}};
}

Ranking run_rank(const Catalog& catalog, const Installation& installation, const Weather* weather,
                 std::size_t top, std::size_t keep_rejected, int max_bank,
                 std::optional<double> volts_max, bool fold, const std::string& group,
                 const std::string& element, const std::optional<std::string>& panels,
                 const std::optional<std::string>& bank, const py::object& conditions,
                 double coil_temperature_c, bool exact_weather, std::size_t threads,
                 const std::string& vector_width, const py::object& progress,
                 std::shared_ptr<RankMemory> memory) {
    ProgressCall call(progress);
    RankOptions options{.weather = borrowed(weather),
                        .exact_weather = exact_weather,
                        .conditions = conditions_from(conditions),
                        .max_bank = max_bank,
                        .volts_max = volts_max,
                        .group = group,
                        .element = element,
                        .top = top,
                        .fold = fold,
                        .keep_rejected = keep_rejected,
                        .coil_temperature_c = coil_temperature_c,
                        .threads = threads,
                        .vector_width = vector_width_from(vector_width),
                        .memory = std::move(memory)};
    if (panels) options.panels = parse_hookup(*panels, "ranking", "panels");
    if (bank) options.bank = parse_hookup(*bank, "ranking", "bank");
    options.progress = call.callback();
    const auto parts = snapshot_of(catalog);
    return call.run([&] { return rank(*parts, installation, options); });
}

}  // namespace

void register_ranking(py::module_& module) {
    py::class_<Ranking>(module, "Ranking",
                        "Candidates in order, and a summary of the rejected ones.")
        .def_readonly("candidates", &Ranking::candidates, "without danger, best first")
        .def_readonly("rejected", &Ranking::rejected, "with danger, most heat first")
        .def_readonly("reasons", &Ranking::reasons, "margin -> pairings it rejected")
        .def_readonly("evaluated", &Ranking::evaluated, "number of pairings screened")
        .def_readonly("above_volts", &Ranking::above_volts,
                      "pairings left out, whose array exceeds volts_max")
        .def_readonly("volts_max", &Ranking::volts_max, "of an array at the record low, or None")
        .def_readonly("by_season", &Ranking::by_season,
                      "ordered by season energy, not by mean power")
        .def_readonly("remarks", &Ranking::remarks, "remarks")
        .def_readonly("recommended", &Ranking::recommended, "or None")
        .def_readonly("lacking", &Ranking::lacking, "what a recommendation lacks")
        .def(
            "alternatives",
            [](const Ranking& ranking) {
                py::list all;
                for (const Alternative& each : ranking.alternatives) {
                    all.append(py::make_tuple(each.kind, each.candidate));
                }
                return all;
            },
            "Pairs of a kind of alternative and its candidate.")
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
            "Candidates that are Pareto-optimal in heat, whole percents of headroom and price.")
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
                                      conditions, ranking.remarks, ranking.by_season,
                                      recommended_state(ranking), alternative_states(ranking),
                                      ranking.lacking, ranking.above_volts, ranking.volts_max);
            },
            [](const py::tuple& state) {
                return Ranking{.candidates = items_from(state[0], candidate_from),
                               .rejected = items_from(state[1], candidate_from),
                               .reasons = state[2].cast<std::map<std::string, std::size_t>>(),
                               .pareto = items_from(state[3], candidate_from),
                               .recommended = recommended_from(state[8]),
                               .alternatives = alternatives_from(state[9]),
                               .lacking = state[10].cast<Sentence>(),
                               .evaluated = state[4].cast<std::size_t>(),
                               .above_volts = state[11].cast<std::size_t>(),
                               .volts_max = state[12].cast<std::optional<double>>(),
                               .conditions = conditions_from(state[5]),
                               .by_season = state[7].cast<bool>(),
                               .remarks = state[6].cast<Sentences>()};
            }));
    py::class_<RankMemory, std::shared_ptr<RankMemory>>(module, "RankMemory",
                                                        docs::class_rank_memory)
        .def(py::init<>(), docs::rank_memory)
        .def(py::pickle([](const RankMemory&) { return py::make_tuple(); },
                        [](const py::tuple&) { return std::make_shared<RankMemory>(); }));
    const RankOptions defaults;
    // The memory of the package, unless a caller passes one or None.
    const auto memory = std::make_shared<RankMemory>();
    module.def("rank", &run_rank, py::arg("catalog"), py::arg("installation"),
               py::arg("weather") = py::none(), py::kw_only(), py::arg("top") = defaults.top,
               py::arg("keep_rejected") = defaults.keep_rejected,
               py::arg("max_bank") = defaults.max_bank, py::arg("volts_max") = py::none(),
               py::arg("fold") = defaults.fold, py::arg("group") = "", py::arg("element") = "",
               py::arg("panels") = py::none(), py::arg("bank") = py::none(),
               py::arg("conditions") = py::none(),
               py::arg("coil_temperature_c") = defaults.coil_temperature_c,
               py::arg("exact_weather") = false, py::arg("threads") = 0,
               py::arg("vector_width") = "automatic", py::arg("progress") = py::none(),
               py::arg("memory") = memory, docs::rank);
    const auto define = [&](const char* name, auto assessed, const char* doc) {
        module.def(
            name,
            [assessed](const Catalog& catalog, const Installation& installation,
                       const Weather* weather, const py::object& conditions,
                       double coil_temperature_c, bool exact_weather,
                       std::shared_ptr<RankMemory> kept) {
                const RankOptions options{.weather = borrowed(weather),
                                          .exact_weather = exact_weather,
                                          .conditions = conditions_from(conditions),
                                          .coil_temperature_c = coil_temperature_c,
                                          .memory = std::move(kept)};
                const auto parts = snapshot_of(catalog);
                const py::gil_scoped_release release;
                return assessed(*parts, installation, options);
            },
            py::arg("catalog"), py::arg("installation"), py::arg("weather") = py::none(),
            py::kw_only(), py::arg("conditions") = py::none(),
            py::arg("coil_temperature_c") = defaults.coil_temperature_c,
            py::arg("exact_weather") = false, py::arg("memory") = memory, doc);
    };
    define("assess", &assess, docs::assess);
    define("assess_circuits", &assess_circuits, docs::assess_circuits);
    module.def("cautions", &cautions, py::kw_only(), py::arg("in_liquid") = false, docs::cautions);
}

}  // namespace heatmatch::python
