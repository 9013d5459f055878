#pragma once

#include "pybind.hpp"

#include <array>
#include <cmath>

namespace heatmatch::python {

/// A number or an array from the caller, with the allowed range of its elements.
struct NumberArgument {
    const char* name = "";
    py::object given{};
    Unit unit{};
    Range allowed{};
};

/// Arguments as arrays of one shape; numbers are repeated.
template <std::size_t Count>
struct Broadcast {
    std::array<DoubleArray, Count> columns{};
    std::vector<py::ssize_t> shape{};  //!< empty if all are numbers
};

/// Doubles of the common shape of all; throws InvalidInput naming the first argument whose shape
/// or element does not fit.
void broadcast_into(std::span<const NumberArgument> arguments, std::span<DoubleArray> columns);

template <std::size_t Count>
Broadcast<Count> broadcast(const std::array<NumberArgument, Count>& arguments) {
    Broadcast<Count> result;
    broadcast_into(arguments, result.columns);
    const DoubleArray& first = result.columns.front();
    result.shape.assign(first.shape(), first.shape() + first.ndim());
    return result;
}

/// Applies a function of `In` numbers with `Out` results to every element, without the
/// interpreter lock.
template <std::size_t Out, std::size_t In, class Function>
std::array<py::array_t<double>, Out> map_broadcast(const Broadcast<In>& in, Function function) {
    std::array<py::array_t<double>, Out> results{};
    std::array<double*, Out> targets{};
    std::array<const double*, In> sources{};
    for (std::size_t k = 0; k < Out; ++k) {
        results[k] = py::array_t<double>(in.shape);
        targets[k] = results[k].mutable_data();
    }
    for (std::size_t k = 0; k < In; ++k) sources[k] = in.columns[k].data();
    const py::ssize_t size = in.columns.front().size();
    const py::gil_scoped_release release;
    for (py::ssize_t i = 0; i < size; ++i) {
        std::array<double, In> values{};
        for (std::size_t k = 0; k < In; ++k) values[k] = sources[k][i];
        const std::array<double, Out> row = function(values);
        for (std::size_t k = 0; k < Out; ++k) targets[k][i] = row[k];
    }
    return results;
}

/// The same with one result: a number for numbers, an array for arrays.
template <std::size_t In, class Function>
py::object map_to_one(const std::array<NumberArgument, In>& arguments, Function function) {
    const Broadcast<In> in = broadcast(arguments);
    const auto results = map_broadcast<1>(in, [&function](const std::array<double, In>& values) {
        return std::array<double, 1>{function(values)};
    });
    if (in.shape.empty()) return py::float_(*results[0].data());
    return results[0];
}

}  // namespace heatmatch::python
