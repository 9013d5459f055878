#include "heatmatch/base/field.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/quantity.hpp"
#include "heatmatch/base/suggestion.hpp"

namespace heatmatch {

using base_sentences::say;

bool Range::holds(double value) const {
    return (low_open ? value > low : value >= low) && value <= high;
}

std::string Range::text(const Unit& unit) const {
    const bool has_low = std::isfinite(low);
    const bool has_high = std::isfinite(high);
    std::string result;
    if (has_low) result = (low_open ? "> " : ">= ") + exact_text(low, unit);
    if (has_low && has_high) result += " and ";
    if (has_high) result += "<= " + exact_text(high, unit);
    return result.empty() ? "a finite number" : result;
}

std::string example_of(const Unit& unit, const Range& range) {
    constexpr double usual = 15.0;
    double number = usual;
    if (!range.holds(number)) {
        const bool has_low = std::isfinite(range.low);
        const bool has_high = std::isfinite(range.high);
        if (has_low && has_high) {
            number = round_significant(0.5 * (range.low + range.high), unit == unit::count ? 3 : 1);
        } else {
            number = has_low ? range.low + usual : range.high - usual;
        }
    }
    if (unit == unit::count) number = std::round(number);
    if (!range.holds(number)) number = std::isfinite(range.high) ? range.high : range.low;
    return exact_text(number, unit);
}

const Field* find_field(std::span<const Field> fields, std::string_view name) {
    const auto found = std::find_if(fields.begin(), fields.end(),
                                    [name](const Field& field) { return field.name == name; });
    return found == fields.end() ? nullptr : &*found;
}

std::optional<double> relative_base(std::span<const Field> fields, const void* record,
                                    std::string_view expression) {
    double base = 1.0;
    while (!expression.empty()) {
        const std::size_t star = expression.find('*');
        const Field* field = find_field(fields, expression.substr(0, star));
        const Value value = field == nullptr ? Value{} : field->get(record);
        const double* number = std::get_if<double>(&value);
        if (number == nullptr || *number == 0.0) return std::nullopt;
        base *= *number;
        expression = star == std::string_view::npos ? "" : expression.substr(star + 1);
    }
    return base;
}

double read_quantity(const Field& field, std::string_view text, std::string_view part,
                     std::optional<double> relative_base) {
    try {
        if (!field.relative_to.empty()) {
            const Quantity read = parse_quantity(text);
            if (read.has_unit && read.unit.dimension == field.relative_unit.dimension) {
                if (!relative_base) {
                    throw InvalidInput(ErrorDetail{
                        .value = quote(text),
                        .allowed = "in " + std::string(field.unit.symbol),
                        .remedy = say<"base.as_well">(with<"fields">(field.relative_to))});
                }
                const double relative = read.value * read.unit.factor / *relative_base;
                return round_significant(relative / field.unit.factor, 12);
            }
        }
        return parse_quantity(text, field.unit, example_of(field.unit, field.range));
    } catch (const InvalidInput& error) {
        ErrorDetail detail = error.detail();
        detail.part = part;
        detail.field = field.name;
        throw InvalidInput(detail);
    }
}

std::string format_value(const Field& field, const Value& value, UnitSystem system) {
    struct Formatter {
        const Field& field;
        UnitSystem system;
        std::string operator()(std::monostate) const { return "unknown"; }
        std::string operator()(bool flag) const { return flag ? "yes" : "no"; }
        std::string operator()(double number) const {
            return format_quantity(number, field.unit, system, system == UnitSystem::si ? 8 : 4);
        }
        std::string operator()(const std::string& text) const { return text; }
        std::string operator()(const std::vector<double>& list) const {
            std::string text;
            for (double number : list) text += (text.empty() ? "" : ", ") + (*this)(number);
            return text;
        }
        std::string operator()(const std::vector<std::string>& list) const {
            std::string text;
            for (const std::string& item : list) text += (text.empty() ? "" : ", ") + item;
            return text;
        }
        std::string operator()(const Rows& rows) const {
            std::string text;
            for (const auto& row : rows) {
                text += text.empty() ? "" : "; ";
                for (std::size_t k = 0; k < row.size() && k < field.columns.size(); ++k) {
                    text += (k > 0 ? ", " : "") + std::string(field.columns[k].name) + ' ' +
                            format_quantity(row[k], field.columns[k].unit, system, 6);
                }
            }
            return text;
        }
        std::string operator()(const TextMap& map) const {
            std::string text;
            for (const auto& [key, item] : map)
                text += (text.empty() ? "" : "; ") + key + ": " + item;
            return text;
        }
    };
    return std::visit(Formatter{field, system}, value);
}

void refuse_unknown_field(std::span<const Field> fields, std::string_view name,
                          std::string_view part) {
    throw InvalidInput(ErrorDetail{.part = std::string(part),
                                   .field = std::string(name),
                                   .allowed = "a known field",
                                   .remedy = suggestion(name, fields)});
}

void set_field(std::span<const Field> fields, void* record, std::string_view name,
               const Value& value, std::string_view part) {
    const Field* field = find_field(fields, name);
    if (field == nullptr) refuse_unknown_field(fields, name, part);
    check_value(*field, value, part);
    field->set(record, value);
}

}  // namespace heatmatch
