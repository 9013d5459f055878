#include "parts_view.hpp"
#include "pybind.hpp"

#include "heatmatch/answer/started.hpp"
#include "heatmatch/catalog/catalog.hpp"

namespace heatmatch::python {

namespace {

using Pairs = std::vector<std::pair<std::string, std::string>>;

QuestionKind kind_of(const std::string& word) {
    return read_choice<QuestionKind>(word, "answer", "question");
}

std::vector<TypedAnswer> typed(const Pairs& pairs) {
    std::vector<TypedAnswer> answers;
    for (const auto& [kind, text] : pairs) {
        answers.push_back({.question = kind_of(kind), .text = text});
    }
    return answers;
}

}  // namespace

void register_start(py::module_& module) {
    module.def(
        "questions",
        [](const std::string& units) {
            py::list all;
            for (const Question& one : questions(unit_system_of(units))) {
                py::dict plain;
                plain["kind"] = std::string(word_of(one.kind));
                plain["ask"] = one.ask;
                plain["example"] = one.example;
                plain["unknown"] = one.unknown;
                plain["repeats"] = one.repeats;
                all.append(plain);
            }
            return all;
        },
        py::kw_only(), py::arg("units") = "si", "The questions of a new installation, in order.");
    module.def("how_to_answer", &how_to_answer, py::arg("back"), "How to answer.");
    module.def("answer_like", &answer_like, py::arg("example"), "An example of an answer.");
    module.def("ask_for_more", &ask_for_more, "That a question is asked once more.");
    module.def(
        "understand",
        [](const Catalog& catalog, const Pairs& earlier, const std::string& kind,
           const std::string& text, const std::string& units) {
            const auto parts = snapshot_of(catalog);
            const Understanding read =
                understand(*parts, typed(earlier), {kind_of(kind), text}, unit_system_of(units));
            return py::make_tuple(read.accepted, read.said);
        },
        py::arg("catalog"), py::arg("earlier"), py::arg("kind"), py::arg("text"), py::kw_only(),
        py::arg("units") = "si", "Whether an answer is accepted, and how it was read.");
    module.def(
        "start_installation",
        [](const Catalog& catalog, const Pairs& answers, const std::string& units) {
            const auto parts = snapshot_of(catalog);
            Started made = start_installation(*parts, typed(answers), unit_system_of(units));
            return py::make_tuple(std::move(made.installation), std::move(made.assumed));
        },
        py::arg("catalog"), py::arg("answers"), py::kw_only(), py::arg("units") = "si",
        "The installation of those answers, and what was assumed.");
}

}  // namespace heatmatch::python
