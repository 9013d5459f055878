#include "json_record.hpp"

#include "base/sentences.hpp"
#include "sentences.hpp"

#include <cmath>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/suggestion.hpp"

namespace heatmatch {

using text_sentences::say;

namespace {

std::string shown(const Json& json) {
    return clip(json.dump(-1, ' ', false, Json::error_handler_t::replace));
}

[[noreturn]] void refuse(const std::string& part, std::string field, std::string value,
                         std::string allowed, Sentence remedy) {
    throw InvalidInput(ErrorDetail{.part = part,
                                   .field = std::move(field),
                                   .value = std::move(value),
                                   .allowed = std::move(allowed),
                                   .remedy = std::move(remedy)});
}

double read_number(const Field& field, const Unit& unit, const Range& range,
                   const std::string& name, const Json& json, const std::string& part,
                   std::optional<double> relative_base) {
    if (json.is_number()) return json.get<double>();
    if (json.is_string()) {
        Field named = field;
        named.name = name;
        named.unit = unit;
        named.range = range;
        return read_quantity(named, json.get_ref<const std::string&>(), part, relative_base);
    }
    const std::string example = example_of(unit, range);
    refuse(part, name, shown(json), "a number, or a text with a number and a unit",
           say<"text.write_number">(with<"number">(example.substr(0, example.find(' '))),
                                    with<"with_unit">(example)));
}

std::vector<double> read_row(const Field& field, const Json& json, const std::string& part,
                             std::size_t index) {
    const std::string place = field.kind == FieldKind::record
                                  ? std::string(field.name)
                                  : std::string(field.name) + '[' + std::to_string(index) + ']';
    if (!json.is_object()) {
        refuse(part, place, shown(json), "an object", say<"text.glossary">());
    }
    std::vector<std::string_view> names;
    for (const Column& column : field.columns) names.push_back(column.name);
    for (const auto& item : json.items()) {
        if (std::find(names.begin(), names.end(), item.key()) != names.end()) continue;
        refuse(part, place + '.' + clip(item.key()), "", "a known key",
               suggestion(item.key(), names));
    }
    std::vector<double> row;
    for (const Column& column : field.columns) {
        const std::string name = place + '.' + std::string(column.name);
        const auto found = json.find(std::string(column.name));
        if (found == json.end()) {
            refuse(part, name, "(missing)", "given",
                   sentence_of(Name{std::string(column.meaning)}));
        }
        row.push_back(
            read_number(field, column.unit, column.range, name, *found, part, std::nullopt));
    }
    return row;
}

Json number_to_json(double value) {
    constexpr double exact_integer = 1e15;
    if (value == std::floor(value) && std::fabs(value) < exact_integer) {
        return static_cast<std::int64_t>(value);
    }
    return value;
}

Json row_to_json(const Field& field, const std::vector<double>& row) {
    Json object = Json::object();
    for (std::size_t k = 0; k < field.columns.size(); ++k) {
        object[std::string(field.columns[k].name)] = number_to_json(row.at(k));
    }
    return object;
}

}  // namespace

void expect_object(const Json& json, const std::string& part) {
    if (json.is_object()) return;
    refuse(part, "value", shown(json), "an object in braces", say<"text.readme">());
}

void expect_array(const Json& json, const std::string& part) {
    if (json.is_array()) return;
    refuse(part, "value", shown(json), "a list in brackets", say<"text.readme">());
}

Value read_value(const Field& field, const Json& json, const std::string& part,
                 std::optional<double> relative_base) {
    const std::string name(field.name);
    const auto wrong = [&](const char* allowed) {
        refuse(part, name, shown(json), allowed, sentence_of(Name{std::string(field.meaning)}));
    };
    if (json.is_null()) return {};
    switch (field.kind) {
        case FieldKind::text:
        case FieldKind::choice:
        case FieldKind::slug:
        case FieldKind::reference:
            if (!json.is_string()) wrong("a text");
            return json.get<std::string>();
        case FieldKind::number:
        case FieldKind::count:
            return read_number(field, field.unit, field.range, name, json, part, relative_base);
        case FieldKind::flag:
            if (!json.is_boolean()) wrong("true or false");
            return json.get<bool>();
        case FieldKind::numbers: {
            if (!json.is_array()) wrong("a list of numbers");
            std::vector<double> list;
            for (const Json& item : json) {
                list.push_back(
                    read_number(field, field.unit, field.range, name, item, part, std::nullopt));
            }
            return list.empty() ? Value{} : Value{list};
        }
        case FieldKind::texts: {
            if (!json.is_array()) wrong("a list of texts");
            std::vector<std::string> list;
            for (const Json& item : json) {
                if (!item.is_string()) wrong("a list of texts");
                list.push_back(item.get<std::string>());
            }
            return list.empty() ? Value{} : Value{list};
        }
        case FieldKind::rows: {
            if (!json.is_array()) wrong("a list of objects");
            Rows rows;
            for (const Json& item : json) rows.push_back(read_row(field, item, part, rows.size()));
            return rows.empty() ? Value{} : Value{rows};
        }
        case FieldKind::record:
            return Rows{read_row(field, json, part, 0)};
        case FieldKind::text_map: {
            if (!json.is_object()) wrong("an object of texts");
            TextMap map;
            for (const auto& item : json.items()) {
                if (!item.value().is_string()) wrong("an object of texts");
                map[item.key()] = item.value().get<std::string>();
            }
            return map.empty() ? Value{} : Value{map};
        }
    }
    return {};
}

void read_record(std::span<const Field> fields, void* record, const Json& object,
                 const std::string& part, std::span<const std::string_view> other_keys) {
    expect_object(object, part);
    std::vector<std::string_view> known(other_keys.begin(), other_keys.end());
    for (const Field& field : fields) known.push_back(field.name);
    for (const auto& item : object.items()) {
        if (std::find(known.begin(), known.end(), item.key()) != known.end()) continue;
        refuse(part, clip(item.key()), "", "a known field", suggestion(item.key(), known));
    }
    // Fields that may be relative to another field are read after it.
    for (const bool relative : {false, true}) {
        for (const Field& field : fields) {
            if (field.relative_to.empty() == relative) continue;
            const auto found = object.find(std::string(field.name));
            if (found == object.end() || found->is_null()) {
                if (field.required) check_value(field, Value{}, part);
                continue;
            }
            const auto base = relative ? relative_base(fields, record, field.relative_to)
                                       : std::optional<double>{};
            const Value value = read_value(field, *found, part, base);
            check_value(field, value, part);
            field.set(record, value);
        }
    }
    check_record(fields, record, part);
}

Json write_value(const Field& field, const Value& value) {
    struct Writer {
        const Field& field;
        Json operator()(std::monostate) const { return nullptr; }
        Json operator()(bool flag) const { return flag; }
        Json operator()(double number) const { return number_to_json(number); }
        Json operator()(const std::string& text) const { return text; }
        Json operator()(const std::vector<double>& list) const {
            Json array = Json::array();
            for (double number : list) array.push_back(number_to_json(number));
            return array;
        }
        Json operator()(const std::vector<std::string>& list) const { return list; }
        Json operator()(const Rows& rows) const {
            if (field.kind == FieldKind::record) return row_to_json(field, rows.at(0));
            Json array = Json::array();
            for (const auto& row : rows) array.push_back(row_to_json(field, row));
            return array;
        }
        Json operator()(const TextMap& map) const {
            Json object = Json::object();
            for (const auto& [key, text] : map) object[key] = text;
            return object;
        }
    };
    return std::visit(Writer{field}, value);
}

Json write_record(std::span<const Field> fields, const void* record) {
    Json object = Json::object();
    for (const Field& field : fields) {
        const Value value = field.get(record);
        if (std::holds_alternative<std::monostate>(value)) continue;
        object[std::string(field.name)] = write_value(field, value);
    }
    return object;
}

}  // namespace heatmatch
