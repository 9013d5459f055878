#include "pybind.hpp"

#include <algorithm>
#include <cctype>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/suggestion.hpp"

namespace heatmatch::python {

namespace {

[[noreturn]] void refuse(const Field& field, const py::handle& object, const std::string& part,
                         const std::string& name, const std::string& allowed) {
    throw InvalidInput(ErrorDetail{.part = part,
                                   .field = name,
                                   .value = shown(object),
                                   .allowed = allowed,
                                   .remedy = sentence_of(Name{std::string(field.meaning)})});
}

double number_from(const Field& field, const Unit& unit, const std::string& name,
                   const py::handle& object, const std::string& part,
                   std::optional<double> relative_base) {
    if (py::isinstance<py::str>(object)) {
        Field named = field;
        named.name = name;
        named.unit = unit;
        return read_quantity(named, text_from(object, name.c_str(), part), part, relative_base);
    }
    if (!is_flag(object)) {
        const double number = PyFloat_AsDouble(object.ptr());
        if (!(number == -1.0 && PyErr_Occurred() != nullptr)) return number;
        PyErr_Clear();
    }
    refuse(field, object, part, name, "a number, or a text with a number and a unit");
}

std::vector<double> row_from(const Field& field, const py::handle& object,
                             const std::string& part) {
    if (!py::isinstance<py::dict>(object)) {
        refuse(field, object, part, std::string(field.name), "a dict");
    }
    const auto dict = py::reinterpret_borrow<py::dict>(object);
    std::vector<std::string_view> names;
    for (const Column& column : field.columns) names.push_back(column.name);
    for (const auto& [key, value] : dict) {
        const std::string name = text_from(py::str(key), "name of a field", part);
        if (std::find(names.begin(), names.end(), name) != names.end()) continue;
        refuse(field, key, part, std::string(field.name) + '.' + name,
               "a known key; " + suggestion(name, names).text());
    }
    std::vector<double> row;
    for (const Column& column : field.columns) {
        const std::string name = std::string(field.name) + '.' + std::string(column.name);
        const py::str key(std::string(column.name));
        if (!dict.contains(key)) refuse(field, py::none(), part, name, "given");
        row.push_back(number_from(field, column.unit, name, dict[key], part, std::nullopt));
    }
    return row;
}

py::dict row_to_python(const Field& field, const std::vector<double>& row) {
    py::dict dict;
    for (std::size_t k = 0; k < field.columns.size(); ++k) {
        const py::str key(std::string(field.columns[k].name));
        if (field.columns[k].unit == unit::count) {
            dict[key] = py::int_(static_cast<long long>(row[k]));
        } else {
            dict[key] = py::float_(row[k]);
        }
    }
    return dict;
}

template <class Item, class Read>
std::vector<Item> list_from(const Field& field, const py::handle& object, const std::string& part,
                            const char* expected, Read read) {
    const bool is_other = py::isinstance<py::str>(object) || py::isinstance<py::dict>(object);
    if (is_other || !py::isinstance<py::iterable>(object)) {
        refuse(field, object, part, std::string(field.name), expected);
    }
    std::vector<Item> list;
    for (const py::handle& item : py::reinterpret_borrow<py::iterable>(object))
        list.push_back(read(item));
    return list;
}

}  // namespace

std::string field_doc(const Field& field, bool may_be_unknown) {
    std::string said;
    if (!field.unit.symbol.empty()) said += " [" + std::string(field.unit.symbol) + "]";
    for (std::size_t k = 0; k < field.words.size(); ++k) {
        said += (k == 0                        ? ": "
                 : k + 1 == field.words.size() ? " or "
                                               : ", ") +
                quote(std::string(field.words[k]));
    }
    std::string doc(field.meaning);
    if (field.kind == FieldKind::flag) doc.insert(0, "whether ");
    doc.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(doc.front())));
    // Unit and words belong to the main phrase; what follows it are remarks.
    doc.insert(std::min(doc.find_first_of(";:"), doc.size()), said);
    for (std::size_t k = 0; k < field.columns.size(); ++k) {
        const Column& column = field.columns[k];
        doc += (k == 0 ? "; keys: " : ", ") + std::string(column.name);
        if (!column.unit.symbol.empty()) doc += " [" + std::string(column.unit.symbol) + "]";
    }
    return doc + (may_be_unknown ? "; None if not stated." : ".");
}

py::object to_python(const Field& field, const Value& value) {
    struct Converter {
        const Field& field;
        py::object operator()(std::monostate) const { return py::none(); }
        py::object operator()(bool flag) const { return py::bool_(flag); }
        py::object operator()(double number) const {
            if (field.kind == FieldKind::count) return py::int_(static_cast<long long>(number));
            return py::float_(number);
        }
        py::object operator()(const std::string& text) const { return py::str(text); }
        py::object operator()(const std::vector<double>& list) const {
            py::list out;
            for (double number : list) out.append((*this)(number));
            return out;
        }
        py::object operator()(const std::vector<std::string>& list) const { return py::cast(list); }
        py::object operator()(const Rows& rows) const {
            if (field.kind == FieldKind::record) return row_to_python(field, rows.at(0));
            py::list out;
            for (const auto& row : rows) out.append(row_to_python(field, row));
            return out;
        }
        py::object operator()(const TextMap& map) const { return py::cast(map); }
    };
    return std::visit(Converter{field}, value);
}

py::object property_value(const Field& field, const Value& value) {
    const auto* word = std::get_if<std::string>(&value);
    const bool chosen = field.kind == FieldKind::choice && word != nullptr;
    return chosen ? choice_object(field.words, *word) : to_python(field, value);
}

Value from_python(const Field& field, const py::handle& object, const std::string& part,
                  std::optional<double> relative_base) {
    const std::string name(field.name);
    if (object.is_none()) return {};
    switch (field.kind) {
        case FieldKind::number:
        case FieldKind::count:
            return number_from(field, field.unit, name, object, part, relative_base);
        case FieldKind::flag:
            if (!py::isinstance<py::bool_>(object))
                refuse(field, object, part, name, "True or False");
            return object.cast<bool>();
        case FieldKind::numbers: {
            auto list =
                list_from<double>(field, object, part, "a list of numbers", [&](py::handle item) {
                    return number_from(field, field.unit, name, item, part, std::nullopt);
                });
            return list.empty() ? Value{} : Value{std::move(list)};
        }
        case FieldKind::texts: {
            auto list = list_from<std::string>(
                field, object, part, "a list of texts",
                [&](py::handle item) { return text_from(py::str(item), name.c_str(), part); });
            return list.empty() ? Value{} : Value{std::move(list)};
        }
        case FieldKind::rows: {
            auto rows = list_from<std::vector<double>>(
                field, object, part, "a list of dicts",
                [&](py::handle item) { return row_from(field, item, part); });
            return rows.empty() ? Value{} : Value{std::move(rows)};
        }
        case FieldKind::record:
            return Rows{row_from(field, object, part)};
        case FieldKind::text_map: {
            if (!py::isinstance<py::dict>(object))
                refuse(field, object, part, name, "a dict of texts");
            TextMap map;
            for (const auto& [key, text] : py::reinterpret_borrow<py::dict>(object)) {
                map[text_from(py::str(key), name.c_str(), part)] =
                    text_from(py::str(text), name.c_str(), part);
            }
            return map.empty() ? Value{} : Value{std::move(map)};
        }
        default:
            if (!py::isinstance<py::str>(object)) refuse(field, object, part, name, "a text");
            return text_from(object, name.c_str(), part);
    }
}

void fill_record(std::span<const Field> fields, void* record, const py::dict& arguments,
                 const std::string& part) {
    for (const auto& [key, value] : arguments) {
        const std::string name = text_from(py::str(key), "name of a field", part);
        if (find_field(fields, name) == nullptr) refuse_unknown_field(fields, name, part);
    }
    for (const bool relative : {false, true}) {
        for (const Field& field : fields) {
            const py::str key{std::string(field.name)};
            if (field.relative_to.empty() == relative) continue;
            if (!arguments.contains(key)) {
                const Value held = field.get(record);
                const bool fresh =
                    std::holds_alternative<std::monostate>(held) || held == Value{0.0};
                if (field.required && fresh) check_value(field, Value{}, part);
                continue;
            }
            const auto base = relative ? relative_base(fields, record, field.relative_to)
                                       : std::optional<double>{};
            const Value value = from_python(field, arguments[key], part, base);
            check_value(field, value, part);
            field.set(record, value);
        }
    }
}

py::dict record_to_dict(std::span<const Field> fields, const void* record) {
    py::dict dict;
    for (const Field& field : fields) {
        const Value value = field.get(record);
        if (std::holds_alternative<std::monostate>(value)) continue;
        dict[py::str(std::string(field.name))] = to_python(field, value);
    }
    return dict;
}

Sentences texts_of(const std::vector<Assumption>& assumptions) {
    Sentences sentences;
    for (const Assumption& assumption : assumptions) sentences.push_back(assumption.said());
    return sentences;
}

py::list assumption_states(const std::vector<Assumption>& assumptions) {
    py::list states;
    for (const Assumption& a : assumptions) {
        states.append(py::make_tuple(a.part, a.field, a.value, a.source));
    }
    return states;
}

std::vector<Assumption> assumptions_from(const py::handle& states) {
    std::vector<Assumption> assumptions;
    for (const py::handle& state : states) {
        const auto a = state.cast<py::tuple>();
        assumptions.push_back({a[0].cast<std::string>(), a[1].cast<std::string>(),
                               a[2].cast<Sentence>(), a[3].cast<Sentence>()});
    }
    return assumptions;
}

}  // namespace heatmatch::python
