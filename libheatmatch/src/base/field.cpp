#include "heatmatch/base/field.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/quantity.hpp"

namespace heatmatch {

using base_sentences::did_you_mean;
using base_sentences::say;

namespace {

std::size_t edit_distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t kept = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
            diagonal = row[j];
            row[j] = std::min({kept, row[j] + 1, row[j - 1] + 1});
        }
    }
    return row[b.size()];
}

}  // namespace

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

const Field* find_field(std::span<const Field> fields, std::string_view name) {
    const auto found = std::find_if(fields.begin(), fields.end(),
                                    [name](const Field& field) { return field.name == name; });
    return found == fields.end() ? nullptr : &*found;
}

std::string nearest_name(std::string_view wrong, std::span<const std::string_view> known) {
    if (known.empty()) return {};
    const std::string_view start = wrong.substr(0, 80);
    // A name that goes on where the wrong one stops ("tilt", tilt_deg) is nearer than any other.
    const auto distance = [start](std::string_view name) {
        const bool begins = !start.empty() && name.starts_with(start);
        return begins ? std::size_t{0} : edit_distance(start, name);
    };
    const auto best = std::min_element(known.begin(), known.end(),
                                       [&](auto a, auto b) { return distance(a) < distance(b); });
    return std::string(*best);
}

std::string nearest_field(std::string_view wrong, std::span<const Field> fields) {
    std::vector<std::string_view> names;
    names.reserve(fields.size());
    for (const Field& field : fields) names.push_back(field.name);
    return nearest_name(wrong, names);
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
        return parse_quantity(text, field.unit);
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
                                   .remedy = did_you_mean(nearest_field(name, fields))});
}

void set_field(std::span<const Field> fields, void* record, std::string_view name,
               const Value& value, std::string_view part) {
    const Field* field = find_field(fields, name);
    if (field == nullptr) refuse_unknown_field(fields, name, part);
    check_value(*field, value, part);
    field->set(record, value);
}

}  // namespace heatmatch
