#include "pybind.hpp"

#include "heatmatch/answer/sentence_tables.hpp"
#include "heatmatch/text/sentence_json.hpp"

namespace heatmatch::python {

namespace {

/// Data of a `heatmatch.Sentence`.
struct HeldSentence {
    Sentence sentence{};
};

py::object value_object(const Argument& argument) {
    if (const auto* amount = std::get_if<Amount>(&argument.value)) {
        return py::make_tuple(amount->value, std::string(amount->unit.symbol));
    }
    if (const auto* name = std::get_if<Name>(&argument.value)) return py::str(name->text);
    return py::cast(std::get<Sentences>(argument.value));
}

py::dict arguments_of(const HeldSentence& held) {
    py::dict arguments;
    for (const Argument& argument : held.sentence.arguments) {
        arguments[py::str(std::string(argument.name))] = value_object(argument);
    }
    return arguments;
}

using Rename = std::function<std::string(const std::string&, const std::string&)>;

void rename(Sentence& sentence, const Rename& change) {
    for (Argument& argument : sentence.arguments) {
        if (auto* name = std::get_if<Name>(&argument.value)) {
            name->text = change(std::string(argument.name), name->text);
        } else if (auto* parts = std::get_if<Sentences>(&argument.value)) {
            for (Sentence& part : *parts) rename(part, change);
        }
    }
}

}  // namespace

py::object sentence_object(Sentence sentence) {
    return py::module_::import("heatmatch.text.sentence")
        .attr("Sentence")(HeldSentence{std::move(sentence)});
}

bool read_sentence(const py::handle& object, Sentence& sentence) {
    if (!py::isinstance<py::str>(object)) return false;
    if (py::hasattr(object, "_held")) {
        sentence = object.attr("_held").cast<HeldSentence&>().sentence;
    } else {
        sentence = verbatim(object.cast<std::string>());
    }
    return true;
}

void register_sentence(py::module_& module) {
    py::class_<HeldSentence>(module, "HeldSentence", "Data of a heatmatch.Sentence.")
        .def_property_readonly(
            "id", [](const HeldSentence& held) { return std::string(held.sentence.id()); },
            "of its line in the table of its room")
        .def_property_readonly("arguments", &arguments_of,
                               "name -> (value, unit) | name | list of sentences")
        .def(
            "text",
            [](const HeldSentence& held, const std::string& units) {
                return held.sentence.text(unit_system_of(units));
            },
            py::kw_only(), py::arg("units") = "si", "The sentence in either unit set.")
        .def(
            "renamed",
            [](const HeldSentence& held, const Rename& change) {
                HeldSentence other = held;
                rename(other.sentence, change);
                return other;
            },
            py::arg("change"),
            "The same with other names: `change` returns each name from its placeholder "
            "and its present text.")
        .def(
            "to_json", [](const HeldSentence& held) { return sentence_to_json(held.sentence); },
            "By id and arguments.")
        .def_static(
            "from_json",
            [](const GivenText& given) {
                return HeldSentence{sentence_from_json(given.text, &find_template)};
            },
            py::arg("text"), "The same back.")
        .def(
            "__eq__",
            [](const HeldSentence& a, const HeldSentence& b) { return a.sentence == b.sentence; },
            py::is_operator());
}

}  // namespace heatmatch::python
