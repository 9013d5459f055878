#include "lived_days.hpp"

#include "heatmatch/answer/checks_table.hpp"
#include "heatmatch/answer/diagnosis_table.hpp"
#include "heatmatch/answer/energy_table.hpp"
#include "heatmatch/answer/months_table.hpp"
#include "heatmatch/answer/peaks_table.hpp"
#include "heatmatch/answer/sheet_table.hpp"

namespace heatmatch::python {

namespace {

void register_days(py::module_& module) {
    module.def(
        "energy_table", [](const LivedDays& lived) { return energy_table(lived.run); },
        py::arg("run"), "Energy balance of a run.");
    module.def("dark_days_title", &dark_days_title, py::arg("days"),
               "Title on a page of so many days of the darkest month.");
    module.def(
        "peaks_table",
        [](const LivedDays& lived, const std::vector<PartPeak>& peaks) {
            return peaks_table(lived.run, peaks);
        },
        py::arg("run"), py::arg("peaks"),
        "Highest temperature of every part in a run, beside its limit and time.");
    module.def(
        "worst_peaks",
        [](const std::vector<PartPeak>& peaks, std::size_t most) {
            return worst_peaks(peaks, most);
        },
        py::arg("peaks"), py::kw_only(), py::arg("most"),
        "The peaks that come first in a short answer.");
    module.def("shortened_days", &shortened_days, py::arg("left_out"),
               "What a short answer leaves out.");
    module.def("peaks_in_days_title", &peaks_in_days_title, "Title on a page of a week.");
    module.def("stagnation_title", &stagnation_title, "Title on a page of a stagnation.");
    module.def("welded_shut_title", &welded_shut_title,
               "Heading of a stagnation that follows a run.");
    module.def(
        "months_table", [](const LivedDays& lived) { return months_table(lived.answer); },
        py::arg("run"), "Energy per day and conditions at night, by month.");
    module.def("nights_title", &nights_title, "Title on a page of a week.");
}

void register_sheet(py::module_& module) {
    module.def("sheet_table", &sheet_table, py::arg("sheet"),
               "The expected readings; its title is the circuit.");
    module.def("sheet_title", &sheet_title, py::arg("sheet"), "Title over a text.");
    module.def("sheet_caption", &sheet_caption, py::arg("sheet"),
               "Title over a table without room for a legend.");
    module.def("sheet_plain_title", &sheet_plain_title, "Title on a page of that circuit alone.");
    module.def("checks_table", &checks_table, py::arg("sheet"), "What to measure and inspect.");
    module.def("check_lines", &check_lines, py::arg("check"),
               "One check as lines: what to expect, how to read it, what a lower and a higher "
               "value mean.");
    module.def("not_known_sentences", &not_known_sentences, py::arg("sheet"),
               "What the sheet could not determine.");
}

void register_explanations(py::module_& module) {
    module.def("diagnosis_table", &diagnosis_table, py::arg("diagnosis"),
               "All explanations; those that readings do not separate are marked.");
    module.def("diagnosis_sentences", &diagnosis_sentences, py::arg("diagnosis"),
               "Meaning of the first explanations, and what to measure next.");
    module.def("short_diagnosis", &short_diagnosis, py::arg("diagnosis"),
               "The verdict, the explanations that fit, and what to measure next.");
    module.def(
        "bank_reading",
        [](const Readings& readings) {
            return readings.rows.empty() ? Sentence{} : bank_reading(readings.rows.front());
        },
        py::arg("readings"), "Resistance and power of volts and amperes; may be empty.");
    module.def("evidence_title", &evidence_title, py::arg("diagnosis"),
               "Heading of the evidence for the best explanation; may be empty.");
    module.def("readings_title", &readings_title, py::arg("circuit"),
               "Heading of the results from readings of a circuit.");
}

}  // namespace

void register_answer_days(py::module_& module) {
    register_days(module);
    register_sheet(module);
    register_explanations(module);
}

}  // namespace heatmatch::python
