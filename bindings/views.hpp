#pragma once

#include "pybind.hpp"

#include <array>
#include <span>
#include <vector>

namespace heatmatch::python {

/// A list that an object owns, as an array that shares its memory and cannot be written.
template <class Number>
py::array view_of(const py::object& owner, std::span<const Number> list) {
    py::array_t<Number> view(static_cast<py::ssize_t>(list.size()), list.data(), owner);
    view.attr("flags").attr("writeable") = false;
    return view;
}

/// A copy, for pickles.
template <class Number>
py::array_t<Number> array_of(const std::vector<Number>& list) {
    return py::array_t<Number>(static_cast<py::ssize_t>(list.size()), list.data());
}

/// A tuple of a function's result for each item.
template <class Item>
py::tuple tuple_with(const std::vector<Item>& items, py::tuple (*state)(const Item&)) {
    py::tuple states(items.size());
    for (std::size_t i = 0; i < items.size(); ++i) states[i] = state(items[i]);
    return states;
}

/// A number of a record with its name in Python and its meaning.
template <class Record>
struct NamedNumber {
    const char* name = "";
    double Record::*member = nullptr;
    const char* meaning = "";
};

template <class Record, std::size_t Count>
void add_numbers(py::class_<Record>& cls, const std::array<NamedNumber<Record>, Count>& numbers) {
    for (const auto& number : numbers) {
        cls.def_readonly(number.name, number.member, number.meaning);
    }
}

template <class Record, std::size_t Count>
py::tuple numbers_state(const Record& record,
                        const std::array<NamedNumber<Record>, Count>& numbers) {
    py::tuple state(Count);
    for (std::size_t i = 0; i < Count; ++i) state[i] = record.*(numbers[i].member);
    return state;
}

template <class Record, std::size_t Count>
void fill_numbers(Record& record, const std::array<NamedNumber<Record>, Count>& numbers,
                  const py::handle& state) {
    const auto values = state.cast<py::tuple>();
    for (std::size_t i = 0; i < Count; ++i) {
        record.*(numbers[i].member) = values[i].template cast<double>();
    }
}

}  // namespace heatmatch::python
