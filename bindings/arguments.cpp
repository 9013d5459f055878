#include "pybind.hpp"

#include "heatmatch/base/error.hpp"

namespace heatmatch::python {

std::string shown(const py::handle& object) {
    try {
        return quote(py::str(py::repr(object)).cast<std::string>());
    } catch (const std::exception&) {
        PyErr_Clear();
        return "(not readable)";
    }
}

void check_argument(const char* name, double value, const Unit& unit, const Range& range) {
    if (range.holds(value)) return;
    throw InvalidInput(ErrorDetail{.field = name,
                                   .value = format_quantity(value, unit, UnitSystem::si, 8),
                                   .allowed = range.text(unit),
                                   .remedy = verbatim("correct the argument")});
}

bool is_flag(const py::handle& object) {
    if (py::isinstance<py::bool_>(object)) return true;
    if (!py::hasattr(object, "dtype") || !py::hasattr(object, "ndim")) return false;
    return py::str(object.attr("dtype")).cast<std::string>() == "bool" &&
           object.attr("ndim").cast<int>() == 0;
}

std::string text_from(const py::handle& object, const char* name, const std::string& part) {
    try {
        return object.cast<std::string>();
    } catch (const std::exception&) {
        PyErr_Clear();
        throw InvalidInput(ErrorDetail{.part = part,
                                       .field = name,
                                       .value = "(not readable)",
                                       .allowed = "text in UTF-8",
                                       .remedy = verbatim("type the text again")});
    }
}

std::string path_from(const py::object& path) {
    return text_from(py::module_::import("os").attr("fspath")(path), "path");
}

DoubleArray numbers_from(const py::object& input, const char* name) {
    const auto refuse = [&]() -> DoubleArray {
        PyErr_Clear();
        throw InvalidInput(ErrorDetail{.field = name,
                                       .value = shown(input),
                                       .allowed = "a number or an array of numbers",
                                       .remedy = verbatim("give numbers without units")});
    };
    const auto raw = py::array::ensure(input);
    if (!raw) return refuse();
    const char kind = raw.dtype().kind();
    if (kind != 'i' && kind != 'u' && kind != 'f') {
        // An empty list contains no value of a wrong type.
        if (raw.size() != 0 || kind == 'U' || kind == 'S') return refuse();
    }
    const auto numbers = DoubleArray::ensure(raw);
    return numbers ? numbers : refuse();
}

}  // namespace heatmatch::python
