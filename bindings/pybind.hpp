#pragma once

// The only file that includes pybind11, so that every file uses the same casters.
#include <string>

#include <pybind11/functional.h>
#include <pybind11/numpy.h>
#include <pybind11/operators.h>
#include <pybind11/pybind11.h>
#include <pybind11/stl.h>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/error.hpp"
#include "heatmatch/base/field.hpp"
#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/solar/vector_width.hpp"

namespace py = pybind11;

namespace heatmatch::python {

/// The member of a class of `heatmatch.choices` with that word; None for an empty one.
[[nodiscard]] py::object choice_object(std::span<const std::string_view> words,
                                       std::string_view word);

/// A field's value as a Python object: None, bool, float, int, str, list, dict.
[[nodiscard]] py::object to_python(const Field& field, const Value& value);
/// The same with a word of a choice as a member of its class.
[[nodiscard]] py::object property_value(const Field& field, const Value& value);
/// The reverse; numbers may be texts with a unit. Throws InvalidInput naming part and field.
[[nodiscard]] Value from_python(const Field& field, const py::handle& object,
                                const std::string& part,
                                std::optional<double> relative_base = std::nullopt);

/// Fills a record from keyword arguments and checks it; unknown names are refused.
void fill_record(std::span<const Field> fields, void* record, const py::dict& arguments,
                 const std::string& part);
/// The known fields of a record.
[[nodiscard]] py::dict record_to_dict(std::span<const Field> fields, const void* record);

/// The docstring of a field's property: its glossary line as a noun phrase with unit, words and
/// what None means.
[[nodiscard]] std::string field_doc(const Field& field, bool may_be_unknown);

/// Gives a class read-only properties, one for each field, with its glossary line.
template <class Class>
void add_field_properties(Class& cls, std::span<const Field> fields) {
    for (const Field& field : fields) {
        using Record = typename Class::type;
        const Record fresh{};
        const bool may_be_unknown =
            !field.required && std::holds_alternative<std::monostate>(field.get(&fresh));
        const std::string doc = field_doc(field, may_be_unknown);
        cls.def_property_readonly(
            std::string(field.name).c_str(),
            [&field](const Record& record) { return property_value(field, field.get(&record)); },
            doc.c_str());
    }
}

/// Assumptions, one sentence each.
[[nodiscard]] Sentences texts_of(const std::vector<Assumption>& assumptions);
/// Assumptions as tuples, for pickles, and back.
[[nodiscard]] py::list assumption_states(const std::vector<Assumption>& assumptions);
[[nodiscard]] std::vector<Assumption> assumptions_from(const py::handle& states);

/// Checks a scalar argument as if it were a field. Throws InvalidInput naming it and its range.
void check_argument(const char* name, double value, const Unit& unit, const Range& range);
/// Whether an object is True or False, of Python or of NumPy.
[[nodiscard]] bool is_flag(const py::handle& object);
/// A path or text as a string. Throws InvalidInput for text that UTF-8 cannot encode.
[[nodiscard]] std::string text_from(const py::handle& object, const char* name,
                                    const std::string& part = {});
[[nodiscard]] std::string path_from(const py::object& path);

using DoubleArray = py::array_t<double, py::array::c_style | py::array::forcecast>;

/// A number, list or array as doubles. Throws InvalidInput naming the argument for anything else.
[[nodiscard]] DoubleArray numbers_from(const py::object& input, const char* name);

/// Applies a function to a number or to every element of an array, without the interpreter lock.
template <class Function>
py::object map_numbers(const py::object& input, const char* name, Function function) {
    const DoubleArray in = numbers_from(input, name);
    if (in.ndim() == 0) return py::float_(function(*in.data()));
    py::array_t<double> out(std::vector<py::ssize_t>(in.shape(), in.shape() + in.ndim()));
    const double* source = in.data();
    double* target = out.mutable_data();
    const py::ssize_t size = in.size();
    {
        const py::gil_scoped_release release;
        for (py::ssize_t i = 0; i < size; ++i) target[i] = function(source[i]);
    }
    return out;
}

/// A unit set by its name. Throws InvalidInput.
[[nodiscard]] UnitSystem unit_system_of(const std::string& name);

/// A vector width by its name. Throws InvalidInput.
[[nodiscard]] VectorWidth vector_width_from(const std::string& name);

void register_errors(py::module_& module);
void register_files(py::module_& module);
void register_sentence(py::module_& module);
void register_choices(py::module_& module);
void register_parts(py::module_& module);
void register_setting(py::module_& module);
void register_diode(py::module_& module);
void register_fits(py::module_& module);
void register_array(py::module_& module);
void register_mixed_array(py::module_& module);
void register_heat(py::module_& module);
void register_sheath_heat(py::module_& module);
void register_bed(py::module_& module);
void register_bank_heat(py::module_& module);
void register_tail(py::module_& module);
void register_wire_check(py::module_& module);
void register_sun(py::module_& module);
void register_plane(py::module_& module);
void register_rear(py::module_& module);
void register_weather(py::module_& module);
void register_monthly_sky(py::module_& module);
void register_energy(py::module_& module);
void register_season(py::module_& module);
void register_duties(py::module_& module);
void register_bill(py::module_& module);
void register_candidate(py::module_& module);
void register_parts_view(py::module_& module);
void register_glossary(py::module_& module);
void register_catalog(py::module_& module);
void register_margin(py::module_& module);
void register_circuit(py::module_& module);
void register_plan(py::module_& module);
void register_ranking(py::module_& module);
void register_answer(py::module_& module);
void register_comparison(py::module_& module);
void register_first_screen(py::module_& module);
void register_space(py::module_& module);
void register_day_answer(py::module_& module);
void register_day(py::module_& module);
void register_stagnation(py::module_& module);
void register_store_log(py::module_& module);
void register_calibration(py::module_& module);
void register_meter(py::module_& module);
void register_diagnosis(py::module_& module);
void register_answer_days(py::module_& module);
void register_start(py::module_& module);

/// An object as text for a message, also a recursive one or one without a repr.
[[nodiscard]] std::string shown(const py::handle& object);

/// A text that was given to be read. Bytes count too; what is no UTF-8 is refused as any bad input.
struct GivenText {
    std::string text{};
};

/// The `heatmatch.Sentence` of a sentence: a str of its text in SI units, with its data.
[[nodiscard]] py::object sentence_object(Sentence sentence);
/// The reverse; a plain str is unchanged.
[[nodiscard]] bool read_sentence(const py::handle& object, Sentence& sentence);

}  // namespace heatmatch::python

namespace pybind11::detail {

template <>
struct type_caster<heatmatch::Sentence> {
    PYBIND11_TYPE_CASTER(heatmatch::Sentence, const_name("Sentence"));

    bool load(handle source, bool) { return heatmatch::python::read_sentence(source, value); }
    static handle cast(const heatmatch::Sentence& sentence, return_value_policy, handle) {
        return heatmatch::python::sentence_object(sentence).release();
    }
};

template <>
struct type_caster<heatmatch::python::GivenText> {
    PYBIND11_TYPE_CASTER(heatmatch::python::GivenText, const_name("str"));

    bool load(handle source, bool) {
        if (!isinstance<str>(source) && !isinstance<bytes>(source)) return false;
        value.text = heatmatch::python::text_from(source, "text");
        return true;
    }
};

/// Newer releases have a caster for every enum, which is not used for choices.
template <typename Type, typename>
struct type_caster_enum_type_enabled;
template <heatmatch::Choice Kind>
struct type_caster_enum_type_enabled<Kind, void> : std::false_type {};

/// A choice: in Python a member of its class, or its word.
template <heatmatch::Choice Kind>
struct type_caster<Kind> {
    PYBIND11_TYPE_CASTER(Kind, const_name("str"));

    bool load(handle source, bool) {
        if (!isinstance<str>(source)) return false;
        const auto word = source.cast<std::string>();
        const auto found = heatmatch::find_choice<Kind>(word);
        if (!found) heatmatch::refuse_word(word, words_of(Kind{}));
        value = *found;
        return true;
    }
    static handle cast(Kind kind, return_value_policy, handle) {
        return heatmatch::python::choice_object(words_of(kind), word_of(kind)).release();
    }
};

}  // namespace pybind11::detail
