#include "pybind.hpp"

#include "heatmatch/answer/check_counts.hpp"
#include "heatmatch/answer/delivered_table.hpp"
#include "heatmatch/answer/duties_table.hpp"
#include "heatmatch/answer/heat_table.hpp"
#include "heatmatch/answer/kept_table.hpp"
#include "heatmatch/answer/margins_table.hpp"
#include "heatmatch/answer/ranking_summary.hpp"
#include "heatmatch/answer/ranking_table.hpp"
#include "heatmatch/answer/season_table.hpp"
#include "heatmatch/answer/table.hpp"
#include "heatmatch/answer/verdict.hpp"
#include "heatmatch/answer/wires_table.hpp"
#include "heatmatch/answer/wiring_list.hpp"

namespace heatmatch::python {

namespace {

using Candidates = std::vector<const Candidate*>;

void register_table(py::module_& module) {
    py::class_<TableColumn>(module, "TableColumn", "One column of a table.")
        .def_readonly("head", &TableColumn::head, "what its head says")
        .def_readonly("number", &TableColumn::number, "whether its cells are numbers")
        .def("__repr__",
             [](const TableColumn& column) { return "<TableColumn " + column.head.text() + ">"; })
        .def(py::self == py::self)
        .def(py::pickle(
            [](const TableColumn& column) { return py::make_tuple(column.head, column.number); },
            [](const py::tuple& state) {
                return TableColumn{state[0].cast<Sentence>(), state[1].cast<bool>()};
            }));
    py::class_<Table>(module, "Table", "A table as data, for whoever lays it out.")
        .def_readonly("title", &Table::title, "empty where it needs none")
        .def_readonly("columns", &Table::columns, "their heads")
        .def_readonly("rows", &Table::rows, "a cell for each column; an empty one may be empty")
        .def_readonly("legend", &Table::legend, "what its columns mean")
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
        "Candidates, a row each, numbered or by letters; `share`: of what the panels could give, "
        "beside the sheath too.");
    module.def("ranking_legend", &ranking_legend, py::arg("ranking"), py::kw_only(),
               py::arg("share") = true, "What the columns of a ranking mean.");
    module.def("pairing_sentence", &pairing_sentence, py::arg("circuit"),
               "Panels and elements, each in its hook-up, in one line.");
    module.def("price_sentence", &price_sentence, py::arg("candidate"),
               "What is to be bought for it, with its currency.");
    module.def("reasons_sentence", &reasons_sentence, py::arg("ranking"),
               "Why pairings were rejected.");
    module.def("nothing_left", &nothing_left, py::arg("ranking"), "Why no pairing is left.");
    module.def("nothing_to_rank", &nothing_to_rank, "That neither is a rejected one.");
    module.def("best_title", &best_title, py::arg("ranking"),
               "Head of a table of the best, or of the best rejected ones.");
    module.def("shown_title", &shown_title, py::arg("ranking"), "The same with the reasons.");
    module.def("front_title", &front_title, "Head of a table of what no other beats.");
    module.def("front_letters_title", &front_letters_title, py::arg("ranking"), py::arg("shown"),
               "The same for a table by letters of the first `shown`.");
    module.def("strongest_rejected", &strongest_rejected, py::arg("ranking"),
               "The rejected pairing of most heat and why it was; empty where there is none.");
}

void register_verdict(py::module_& module) {
    module.def("verdict", &verdict, py::arg("candidate"), "What it comes to; a danger first.");
    module.def("margin_sentence", &margin_sentence, py::arg("candidate"),
               "What its margins come to; a danger is named.");
    module.def("nearest_sentence", &nearest_sentence, py::arg("candidate"),
               "Which limit whose passing is a danger is nearest; may be empty.");
    module.def("lived_week_sentence", &lived_week_sentence, py::arg("season"),
               "What stands before the answer of a week of its darkest month.");
    module.def("space_sentence", &space_sentence, py::arg("candidate"),
               "What its heat does for the space.");
}

void register_margins(py::module_& module) {
    module.def(
        "margins_table",
        [](const Candidate& candidate, bool source, bool missing) {
            return margins_table(candidate, {.source = source, .missing = missing});
        },
        py::arg("candidate"), py::kw_only(), py::arg("source") = true, py::arg("missing") = false,
        "A row for each margin, the most severe first; `missing`: what would have to be known.");
    module.def("margins_plain_title", &margins_plain_title,
               "Its title where the order goes without saying.");
    module.def("margin_lines", &margin_lines, py::arg("candidate"), py::kw_only(),
               py::arg("everything") = false, "The same as lines.");
    module.def("margin_reason", &margin_reason, py::arg("margin"),
               "Part or run of a margin and what it says.");
}

void register_duties_tables(py::module_& module) {
    module.def("counts_sentence", &counts_sentence, py::arg("candidate"),
               "How many checks were made, and what they found.");
    module.def("not_checked_lines", &not_checked_lines, py::arg("candidate"),
               "What stands directly under the counts: what nobody checked, by what to state.");
    module.def(
        "code_duties",
        [](const Circuit& circuit, const Site& site) { return code_duties(circuit, site); },
        py::arg("circuit"), py::arg("site"), "Duties of the code of a circuit at a site.");
    module.def("duties_table", &duties_table, py::arg("candidate"),
               "A row for each duty of the code.");
    module.def("duty_lines", &duty_lines, py::arg("candidate"),
               "Those that are due, or may be, as lines.");
    module.def("duties_legend", &duties_legend, "That duties decide nothing here, and who does.");
    module.def("duties_sentence", &duties_sentence, py::arg("candidate"),
               "How many duties are due, and how many of them have what.");
    module.def("scope_sentence", &scope_sentence, py::arg("candidate"), "What duties depend on.");
    module.def("steps_sentence", &steps_sentence, py::arg("candidate"),
               "Which steps at which duties begin the cold volts are past.");
}

void register_candidate_tables(py::module_& module) {
    module.def("circuit_sentence", &circuit_sentence, py::arg("candidate"),
               "What it is: its circuit, its ohms, those of the label, its cold volts.");
    module.def("delivered_table", &delivered_table, py::arg("candidate"),
               "What it delivers at each condition.");
    module.def("delivered_plain_title", &delivered_plain_title,
               "Its title on a page of that circuit alone.");
    module.def("heat_table", &heat_table, py::arg("candidate"),
               "How hot it makes its store; no row where that is not known.");
    module.def("season_table", &season_table, py::arg("season"),
               "A column for each month that the weather has.");
    module.def("season_months_title", &season_months_title,
               "Its title on a page that explains no more.");
    module.def("season_sentences", &season_sentences, py::arg("candidate"),
               "What it delivers over the season, and why its best ohms are what they are.");
    module.def("darkest_month", &darkest_month, py::arg("season"),
               "The month of the season with least heat, 1 to 12; None where it has no months.");
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
        py::arg("circuit"), py::arg("checks"), "The runs of a circuit, a row each.");
    module.def(
        "wire_lines",
        [all_of](const Checks& checks) {
            py::list lines;
            for (const WireLines& line : wire_lines(all_of(checks))) {
                lines.append(py::make_tuple(line.reason, line.remedies));
            }
            return lines;
        },
        py::arg("checks"), "For each run its severity and reason, and what would do instead.");
    module.def(
        "wiring_list",
        [all_of](const Circuit& circuit, const Checks& checks) {
            return wiring_list(circuit, all_of(checks));
        },
        py::arg("circuit"), py::arg("checks"), "Every run by the zone it lies in.");
    module.def(
        "wiring_reasons",
        [all_of](const Circuit& circuit, const Checks& checks) {
            return wiring_reasons(circuit, all_of(checks));
        },
        py::arg("circuit"), py::arg("checks"),
        "Why each run is judged so, and what is placed on no run.");
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
        "candidate and what was chosen.");
    module.def("nothing_kept", &nothing_kept, "What stands in its place while there are none.");
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
