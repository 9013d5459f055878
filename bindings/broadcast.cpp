#include "broadcast.hpp"

#include "heatmatch/base/error.hpp"

namespace heatmatch::python {

namespace {

std::string shape_text(const DoubleArray& array) {
    return py::str(array.attr("shape")).cast<std::string>();
}

void check_elements(const NumberArgument& argument, const DoubleArray& numbers) {
    for (py::ssize_t i = 0; i < numbers.size(); ++i) {
        // An unknown input stays unknown: the result is NaN too.
        if (!std::isnan(numbers.data()[i]))
            check_argument(argument.name, numbers.data()[i], argument.unit, argument.allowed);
    }
}

}  // namespace

void broadcast_into(std::span<const NumberArgument> arguments, std::span<DoubleArray> columns) {
    const py::module_ numpy = py::module_::import("numpy");
    py::object common = py::tuple();
    for (std::size_t k = 0; k < arguments.size(); ++k) {
        columns[k] = numbers_from(arguments[k].given, arguments[k].name);
        check_elements(arguments[k], columns[k]);
        try {
            common = numpy.attr("broadcast_shapes")(common, columns[k].attr("shape"));
        } catch (const py::error_already_set&) {
            throw InvalidInput(ErrorDetail{
                .field = std::string(arguments[k].name) + " shape",
                .value = shape_text(columns[k]),
                .allowed = "a number or an array of shape " + py::str(common).cast<std::string>(),
                .remedy = verbatim("give numbers and arrays of one length")});
        }
    }
    for (DoubleArray& column : columns)
        column = DoubleArray::ensure(numpy.attr("broadcast_to")(column, common));
}

}  // namespace heatmatch::python
