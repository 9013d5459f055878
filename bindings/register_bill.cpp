#include "docs_classes.hpp"
#include "pybind.hpp"
#include "state.hpp"

#include "heatmatch/answer/bill_table.hpp"
#include "heatmatch/parts/parts.hpp"

namespace heatmatch::python {

namespace {

py::tuple state_of_line(const BillLine& line) {
    return py::make_tuple(part_kind(line.kind).name, line.part, line.label, line.quantity,
                          line.owned, line.to_buy, line.price.low, line.price.high,
                          line.price.currency, word_of(line.state), line.why, line.of_store);
}

BillLine line_from(const py::tuple& state) {
    return {.kind = part_kind(state[0].cast<std::string>()).kind,
            .part = state[1].cast<std::string>(),
            .label = state[2].cast<std::string>(),
            .quantity = state[3].cast<double>(),
            .owned = state[4].cast<double>(),
            .to_buy = state[5].cast<double>(),
            .price = {.low = state[6].cast<std::optional<double>>(),
                      .high = state[7].cast<std::optional<double>>(),
                      .currency = state[8].cast<std::string>()},
            .state = find_choice<BillState>(state[9].cast<std::string>()).value(),
            .why = state[10].cast<Sentence>(),
            .of_store = state[11].cast<bool>()};
}

void register_line(py::module_& module) {
    py::class_<BillLine>(module, "BillLine", docs::class_bill_line)
        .def_property_readonly(
            "kind", [](const BillLine& line) { return std::string(part_kind(line.kind).name); },
            "Kind of part: \"element\", \"wire\", \"connector\" or \"control\".")
        .def_property_readonly(
            "part",
            [](const BillLine& line) -> std::optional<std::string> {
                if (line.part.empty()) return std::nullopt;
                return line.part;
            },
            "Id of the part; None where no part of the catalog suits.")
        .def_readonly("label", &BillLine::label, "Label of the part.")
        .def_readonly("quantity", &BillLine::quantity, "Quantity needed, in `unit`.")
        .def_readonly("owned", &BillLine::owned, "Quantity owned, in `unit`.")
        .def_readonly("to_buy", &BillLine::to_buy, "Quantity to buy, in `unit`.")
        .def_property_readonly(
            "unit", [](const BillLine& line) { return std::string(line.unit().symbol); },
            "Unit of the quantities: \"m\" for wire, empty for pieces.")
        .def_property_readonly("low", &BillLine::low,
                               "Lowest price of what is to buy, in `currency`; None if not known.")
        .def_property_readonly("typical", &BillLine::typical,
                               "Middle of low and high price, in `currency`; None if not known.")
        .def_property_readonly("high", &BillLine::high,
                               "Highest price of what is to buy, in `currency`; None if not known.")
        .def_property_readonly(
            "currency", [](const BillLine& line) { return line.price.currency; },
            "Currency of the prices of this line, as code of ISO 4217.")
        .def_property_readonly(
            "state", [](const BillLine& line) { return line.state; },
            "Whether its price is added: \"known\", \"no part\", \"price not known\" or \"other "
            "currency\".")
        .def_readonly("why", &BillLine::why, "Purpose and place, in words.")
        .def(py::self == py::self)
        .def("__repr__",
             [](const BillLine& line) {
                 return "<BillLine " + (line.part.empty() ? "no part" : line.part) + ": " +
                        format_number(line.to_buy) + " to buy>";
             })
        .def(py::pickle(&state_of_line, &line_from));
}

}  // namespace

py::tuple state_of(const Bill& bill) {
    py::tuple lines(bill.lines.size());
    for (std::size_t i = 0; i < bill.lines.size(); ++i) lines[i] = state_of_line(bill.lines[i]);
    return py::make_tuple(lines, bill.currency, bill.budget, bill.remarks);
}

Bill bill_from(const py::tuple& state) {
    return {.lines = items_from(state[0], line_from),
            .currency = state[1].cast<std::string>(),
            .budget = state[2].cast<std::optional<double>>(),
            .remarks = state[3].cast<Sentences>()};
}

void register_bill(py::module_& module) {
    register_line(module);
    py::class_<Bill>(module, "Bill", "All parts of a circuit: owned and to buy.")
        .def_readonly("lines", &Bill::lines, "one for each kind of part")
        .def_readonly("currency", &Bill::currency, "of the totals")
        .def_readonly("budget", &Bill::budget, "as stated, or None")
        .def_readonly("remarks", &Bill::remarks, "listed devices that are not on it")
        .def_property_readonly("low", &Bill::low, "or None")
        .def_property_readonly("typical", &Bill::typical, "or None")
        .def_property_readonly("high", &Bill::high, "or None")
        .def_property_readonly("complete", &Bill::complete, "whether every line is known")
        .def_property_readonly(
            "within_budget", [](const Bill& bill) { return bill.within_budget(); },
            "yes, no or unknown")
        .def(py::self == py::self)
        .def("__repr__", [](const Bill& bill) { return "<" + bill_sentence(bill).text() + ">"; })
        .def(py::pickle([](const Bill& bill) { return state_of(bill); }, &bill_from));
    module.def("bill_sentence", &bill_sentence, py::arg("bill"),
               "Total beside the budget, or what is missing.");
    module.def("bill_table", &bill_table, py::arg("bill"), "One row for each line of a bill.");
    module.def("bill_lines", &bill_lines, py::arg("bill"), "The same as lines.");
    module.def("bill_remarks", &bill_remarks, py::arg("candidate"),
               "What is not on the bill of a candidate.");
}

}  // namespace heatmatch::python
