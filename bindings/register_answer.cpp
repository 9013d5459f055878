#include "pybind.hpp"

#include "heatmatch/answer/check_counts.hpp"
#include "heatmatch/answer/circuits_table.hpp"
#include "heatmatch/answer/delivered_table.hpp"
#include "heatmatch/answer/duties_table.hpp"
#include "heatmatch/answer/heat_table.hpp"
#include "heatmatch/answer/kept_table.hpp"
#include "heatmatch/answer/margins_table.hpp"
#include "heatmatch/answer/marked_ranking.hpp"
#include "heatmatch/answer/ranking_summary.hpp"
#include "heatmatch/answer/ranking_table.hpp"
#include "heatmatch/answer/season_table.hpp"
#include "heatmatch/answer/spared_wire.hpp"
#include "heatmatch/answer/table.hpp"
#include "heatmatch/answer/verdict.hpp"
#include "heatmatch/answer/wires_table.hpp"
#include "heatmatch/answer/wiring_list.hpp"

namespace heatmatch::python {

namespace {

using Candidates = std::vector<const Candidate*>;

void register_table(py::module_& module) {
    py::class_<TableColumn>(module, "TableColumn", "One column of a table.")
        .def_readonly("head", &TableColumn::head, "heading of the column")
        .def_readonly("number", &TableColumn::number, "whether its cells are numbers")
        .def("__repr__",
             [](const TableColumn& column) { return "<TableColumn " + column.head.text() + ">"; })
        .def(py::self == py::self)
        .def(py::pickle(
            [](const TableColumn& column) { return py::make_tuple(column.head, column.number); },
            [](const py::tuple& state) {
                return TableColumn{state[0].cast<Sentence>(), state[1].cast<bool>()};
            }));
    py::class_<Table>(module, "Table", "A table as data, before layout.")
        .def_readonly("title", &Table::title, "empty where it needs none")
        .def_readonly("columns", &Table::columns, "their heads")
        .def_readonly("rows", &Table::rows, "one cell for each column; cells may be empty")
        .def_readonly("legend", &Table::legend, "meaning of the columns")
        .def("__repr__",
             [](const Table& table) {
                 return "<Table of " + std::to_string(table.rows.size()) + " rows, " +
                        std::to_string(table.columns.size()) + " columns>";
             })
        .def(py::self == py::self)
        .def(py::pickle(
            [](const Table& table) {
                return py::make_tuple(table.title, table.columns, table.rows, table.legend);
            },
            [](const py::tuple& state) {
                return Table{state[0].cast<Sentence>(), state[1].cast<std::vector<TableColumn>>(),
                             state[2].cast<std::vector<Sentences>>(), state[3].cast<Sentences>()};
            }));
}

void register_rankings(py::module_& module) {
    module.def(
        "ranking_table",
        [](const Candidates& candidates, bool share, bool letters) {
            return ranking_table(candidates, {.share = share, .letters = letters});
        },
        py::arg("candidates"), py::kw_only(), py::arg("share") = true, py::arg("letters") = false,
        "Candidates, one row each, with numbers or letters; `share`: with utilization, "
        "also where the sheath is shown.");
    module.def(
        "marked_table",
        [](const Ranking& ranking, std::size_t top, bool share) {
            return marked_table(ranking, top, {.share = share});
        },
        py::arg("ranking"), py::arg("top"), py::kw_only(), py::arg("share") = true,
        "The first candidates, the recommended one marked; first where it is not among them.");
    module.def("short_legend", &short_legend, py::arg("ranking"),
               "The marks and columns of that table in short.");
    module.def("nearest_instead", &nearest_instead, py::arg("ranking"), py::arg("shown"),
               "That nothing is recommended, why, and which circuit is shown instead.");
    module.def("unused_lines", &unused_lines, py::arg("ranking"), py::arg("installation"),
               "Groups and named elements that no candidate has, each with the nearest reason.");
    module.def(
        "place_of",
        [](const Ranking& ranking, const Candidate& candidate) {
            return place_of(ranking, candidate);
        },
        py::arg("ranking"), py::arg("candidate"), "Place among the candidates, or None.");
    module.def(
        "circuits_table", [](const Candidates& circuits) { return circuits_table(circuits); },
        py::arg("circuits"), "Circuits of one installation, one row each, and a last row for all.");
    module.def("ranking_legend", &ranking_legend, py::arg("ranking"), py::kw_only(),
               py::arg("share") = true, "Meaning of the columns of a ranking.");
    module.def("pairing_sentence", &pairing_sentence, py::arg("circuit"),
               "Panels and elements, each in its hook-up, in one line.");
    module.def("price_sentence", &price_sentence, py::arg("candidate"),
               "Purchase price, with its currency.");
    module.def("reasons_sentence", &reasons_sentence, py::arg("ranking"),
               "Why pairings were rejected.");
    module.def("short_ranking", &short_ranking, py::arg("ranking"),
               "How many pairings were evaluated and rejected, and which option lists the rest.");
    module.def("nothing_left", &nothing_left, py::arg("ranking"), "Why no pairing is left.");
    module.def("nothing_to_rank", &nothing_to_rank,
               "Message if nothing is left, not even a rejected pairing.");
    module.def("best_title", &best_title, py::arg("ranking"),
               "Title of a table of the best, or of the best rejected pairings.");
    module.def("shown_title", &shown_title, py::arg("ranking"), "The same with the reasons.");
    module.def("front_title", &front_title, "Title of a table of Pareto-optimal pairings.");
    module.def("front_letters_title", &front_letters_title, py::arg("ranking"), py::arg("shown"),
               "The same for a table with letters for the first `shown` rows.");
    module.def("strongest_rejected", &strongest_rejected, py::arg("ranking"),
               "The rejected pairing with the most heat, and the reason; may be empty.");
}

void register_verdict(py::module_& module) {
    module.def("verdict", &verdict, py::arg("candidate"), "Verdict; dangers come first.");
    module.def("margin_sentence", &margin_sentence, py::arg("candidate"),
               "Summary of the margins; a danger is named.");
    module.def("nearest_sentence", &nearest_sentence, py::arg("candidate"),
               "Nearest limit whose exceedance is a danger; may be empty.");
    module.def("lived_week_sentence", &lived_week_sentence, py::arg("season"),
               "Heading of the simulated week of its darkest month.");
    module.def("space_sentence", &space_sentence, py::arg("candidate"),
               "Effect of the heat on the space.");
}

void register_margins(py::module_& module) {
    module.def(
        "margins_table",
        [](const Candidate& candidate, bool source, bool missing) {
            return margins_table(candidate, {.source = source, .missing = missing});
        },
        py::arg("candidate"), py::kw_only(), py::arg("source") = true, py::arg("missing") = false,
        "One row for each margin, the most severe first; `missing`: with missing fields.");
    module.def("margins_plain_title", &margins_plain_title, "Title where the order is evident.");
    module.def("margin_lines", &margin_lines, py::arg("candidate"), py::kw_only(),
               py::arg("everything") = false, "The same as lines.");
    module.def("margin_reason", &margin_reason, py::arg("margin"),
               "Part or run of a margin and its sentence.");
}

void register_duties_tables(py::module_& module) {
    module.def("counts_sentence", &counts_sentence, py::arg("candidate"),
               "Counts of checks, and of their findings.");
    module.def("not_checked_lines", &not_checked_lines, py::arg("candidate"),
               "Lines directly under the counts: checks not made, by field to state.");
    module.def(
        "code_duties",
        [](const Circuit& circuit, const Site& site) { return code_duties(circuit, site); },
        py::arg("circuit"), py::arg("site"), "Duties of the code of a circuit at a site.");
    module.def("duties_table", &duties_table, py::arg("candidate"),
               "One row for each duty of the code.");
    module.def("duty_lines", &duty_lines, py::arg("candidate"),
               "Code requirements that apply, or may apply, as lines.");
    module.def("duties_legend", &duties_legend,
               "Note that duties change no rank or severity, and who decides.");
    module.def("duties_sentence", &duties_sentence, py::arg("candidate"),
               "Counts of duties, by how they are met.");
    module.def("scope_sentence", &scope_sentence, py::arg("candidate"),
               "Facts on which duties depend.");
    module.def("steps_sentence", &steps_sentence, py::arg("candidate"),
               "Which of the voltage steps of duties the cold voltage exceeds.");
}

void register_candidate_tables(py::module_& module) {
    module.def("circuit_sentence", &circuit_sentence, py::arg("candidate"),
               "Circuit, load resistance, Vmp/Imp of the label and cold voltage.");
    module.def("delivered_table", &delivered_table, py::arg("candidate"),
               "Power at each condition.");
    module.def("delivered_plain_title", &delivered_plain_title,
               "Title on a page of that circuit alone.");
    module.def("heat_table", &heat_table, py::arg("candidate"),
               "Temperatures in its store; no row where they are not known.");
    module.def("season_table", &season_table, py::arg("season"),
               "One column for each month of the weather.");
    module.def("season_months_title", &season_months_title,
               "Title on a page without further explanation.");
    module.def("season_sentences", &season_sentences, py::arg("candidate"),
               "Heat over the season, and why the best resistance differs from Vmp/Imp.");
    module.def("darkest_month", &darkest_month, py::arg("season"),
               "Month of the season with the least heat, 1 to 12; None without months.");
}

void register_wires(py::module_& module) {
    using Checks = std::vector<const WireCheck*>;
    const auto all_of = [](const Checks& checks) {
        std::vector<WireCheck> all;
        for (const WireCheck* check : checks) all.push_back(*check);
        return all;
    };
    module.def(
        "wires_table",
        [all_of](const Circuit& circuit, const Checks& checks) {
            return wires_table(circuit, all_of(checks));
        },
        py::arg("circuit"), py::arg("checks"), "The runs of a circuit, one row each.");
    module.def(
        "wire_lines",
        [all_of](const Checks& checks, const Circuit* circuit) {
            py::list lines;
            for (const WireLines& line : wire_lines(all_of(checks), circuit)) {
                lines.append(py::make_tuple(line.reason, line.remedies));
            }
            return lines;
        },
        py::arg("checks"), py::arg("circuit") = py::none(),
        "For each run its severity and reason, and a suitable wire.");
    module.def("spared_wires", &spared_wires, py::arg("ranking"),
               "Pairings that a ranking omits because a wire would not withstand them.");
    module.def(
        "wiring_list",
        [all_of](const Circuit& circuit, const Checks& checks) {
            return wiring_list(circuit, all_of(checks));
        },
        py::arg("circuit"), py::arg("checks"), "Every run by zone.");
    module.def(
        "wiring_reasons",
        [all_of](const Circuit& circuit, const Checks& checks) {
            return wiring_reasons(circuit, all_of(checks));
        },
        py::arg("circuit"), py::arg("checks"),
        "Reason for each run's severity, and parts that are on no run.");
}

KeptChoice kept_from(const py::tuple& kept) {
    const auto choice = kept[3].cast<py::dict>();
    const auto amount = [&](const char* name) {
        return choice[name].cast<std::optional<double>>();
    };
    return {.name = kept[0].cast<std::string>(),
            .place = kept[1].cast<std::string>(),
            .candidate = kept[2].cast<const Candidate*>(),
            .tilt_deg = amount("tilt_deg"),
            .sun_pct = amount("sun_pct"),
            .wire = choice["wire"].cast<std::optional<std::string>>().value_or(""),
            .length_m = amount("length_m"),
            .k20_w_mk = amount("k20_w_mk"),
            .record_low_c = amount("record_low_c")};
}

void register_kept(py::module_& module) {
    module.def(
        "kept_table",
        [](const std::vector<py::tuple>& kept) {
            std::vector<KeptChoice> choices;
            for (const py::tuple& one : kept) choices.push_back(kept_from(one));
            return kept_table(choices);
        },
        py::arg("kept"),
        "Choices side by side, each a tuple of its name, the name of the installation, its "
        "candidate and the chosen values.");
    module.def("nothing_kept", &nothing_kept, "Text shown while no choice is kept.");
}

}  // namespace

void register_answer(py::module_& module) {
    register_table(module);
    register_rankings(module);
    register_verdict(module);
    register_margins(module);
    register_duties_tables(module);
    register_candidate_tables(module);
    register_wires(module);
    register_kept(module);
}

}  // namespace heatmatch::python
