#include "sentences.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/error.hpp"
#include "heatmatch/base/field.hpp"
#include "heatmatch/base/plain_text.hpp"

namespace heatmatch {

using base_sentences::say;

namespace {

[[noreturn]] void refuse(std::string_view part, std::string field, std::string value,
                         std::string allowed, Sentence remedy) {
    throw InvalidInput(ErrorDetail{.part = std::string(part),
                                   .field = std::move(field),
                                   .value = std::move(value),
                                   .allowed = std::move(allowed),
                                   .remedy = std::move(remedy)});
}

/// Line of the glossary, where there is no more specific remedy.
Sentence meaning_of(const Field& field) {
    return sentence_of(Name{std::string(field.meaning)});
}

void check_number(double value, const Unit& unit, const Range& range, std::string_view part,
                  const std::string& name, const Sentence& remedy) {
    if (std::isfinite(value) && range.holds(value)) return;
    refuse(part, name, exact_text(value, unit), range.text(unit),
           remedy.empty() ? say<"base.correct_or_leave_out">() : remedy);
}

bool is_slug(const std::string& text) {
    if (text.empty() || text.size() > 80) return false;
    return std::all_of(text.begin(), text.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-' || c == '.' || c == '_';
    });
}

/// Example id for the kind of part to which a field refers, or for a part of the user.
std::string_view id_example(std::string_view kind) {
    constexpr auto examples = std::to_array<std::pair<std::string_view, std::string_view>>({
        {"panel", "silicon-60-cell-245"},
        {"element", "oven-lower-1200-230"},
        {"wire", "thhn-12-awg"},
        {"insulation", "pvc-nylon-90"},
        {"control", "pv-isolator-2-pole"},
        {"connector", "pv-plug-4-mm"},
        {"medium", "dry-sand"},
        {"alloy", "nicr-80-20"},
        {"sheath", "stainless"},
        {"cover", "twin-wall-8mm"},
    });
    const auto* const found =
        std::find_if(examples.begin(), examples.end(),
                     [kind](const auto& example) { return example.first == kind; });
    return found == examples.end() ? "my-part-2" : found->second;
}

void check_whole(double value, const Unit& unit, std::string_view part, const std::string& name) {
    if (!(unit == unit::count) || !std::isfinite(value) || value == std::floor(value)) return;
    refuse(part, name, format_number(value, 12), "a whole number", say<"base.correct">());
}

void check_rows(const Field& field, const Rows& rows, std::string_view part) {
    if (field.kind == FieldKind::record && rows.size() != 1) {
        refuse(part, std::string(field.name), std::to_string(rows.size()) + " records",
               "one record", meaning_of(field));
    }
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (rows[i].size() != field.columns.size()) {
            refuse(part, std::string(field.name),
                   std::to_string(rows[i].size()) + " values in a row",
                   std::to_string(field.columns.size()) + " values", meaning_of(field));
        }
        for (std::size_t k = 0; k < field.columns.size(); ++k) {
            const Column& column = field.columns[k];
            const std::string place =
                field.kind == FieldKind::record ? std::string() : '[' + std::to_string(i) + ']';
            const std::string name =
                std::string(field.name) + place + '.' + std::string(column.name);
            check_whole(rows[i][k], column.unit, part, name);
            check_number(rows[i][k], column.unit, column.range, part, name, field.remedy);
        }
        const bool sorted_by_temperature = field.columns[0].name == "t_c";
        if (sorted_by_temperature && i > 0 && rows[i][0] <= rows[i - 1][0]) {
            refuse(part, std::string(field.name), exact_text(rows[i][0], field.columns[0].unit),
                   "above the temperature of the previous row",
                   say<"base.sort">(with<"column">(field.columns[0].name)));
        }
    }
}

void check_text(const Field& field, const std::string& text, std::string_view part) {
    constexpr std::size_t longest = 20000;
    const std::string name(field.name);
    if (text.size() > longest) {
        refuse(part, name, quote(text), "at most 20000 bytes long", say<"base.shorten">());
    }
    if (!is_plain_text(text)) {
        refuse(part, name, "(not readable)", "text in UTF-8 without control characters",
               say<"base.type_again">());
    }
    const bool named = field.kind == FieldKind::slug || field.kind == FieldKind::reference;
    if (named && !is_slug(text)) {
        refuse(part, name, quote(text), "1 to 80 lowercase letters, digits, '-', '_' or '.'",
               say<"base.write_as">(with<"example">(id_example(field.refers_to))));
    }
    if (field.kind == FieldKind::choice &&
        std::find(field.words.begin(), field.words.end(), text) == field.words.end()) {
        refuse_word(text, field.words, part, field.name);
    }
}

struct Checker {
    const Field& field;
    std::string_view part;

    void operator()(std::monostate) const {
        if (field.required) {
            refuse(part, std::string(field.name), "(missing)", "given", meaning_of(field));
        }
    }
    void operator()(bool) const { expect(field.kind == FieldKind::flag, "true or false"); }
    void operator()(double value) const {
        expect(field.kind == FieldKind::number || field.kind == FieldKind::count, "a number");
        if (field.kind == FieldKind::count) {
            check_whole(value, unit::count, part, std::string(field.name));
        }
        check_number(value, field.unit, field.range, part, std::string(field.name), field.remedy);
    }
    void operator()(const std::string& text) const {
        expect(field.kind == FieldKind::text || field.kind == FieldKind::choice ||
                   field.kind == FieldKind::slug || field.kind == FieldKind::reference,
               "a text");
        if (text.empty()) return (*this)(std::monostate{});
        check_text(field, text, part);
    }
    void operator()(const std::vector<double>& list) const {
        expect(field.kind == FieldKind::numbers, "a list of numbers");
        for (double value : list) {
            check_whole(value, field.unit, part, std::string(field.name));
            check_number(value, field.unit, field.range, part, std::string(field.name),
                         field.remedy);
        }
    }
    void operator()(const std::vector<std::string>& list) const {
        expect(field.kind == FieldKind::texts, "a list of texts");
        for (const std::string& text : list) check_text(field, text, part);
    }
    void operator()(const Rows& rows) const {
        expect(field.kind == FieldKind::rows || field.kind == FieldKind::record,
               "a list of records");
        check_rows(field, rows, part);
    }
    void operator()(const TextMap& map) const {
        expect(field.kind == FieldKind::text_map, "an object of texts");
        for (const auto& [key, text] : map) {
            check_text(field, key, part);
            check_text(field, text, part);
        }
    }
    void expect(bool fits, const char* got) const {
        if (!fits) {
            refuse(part, std::string(field.name), got, "a value of another type",
                   say<"base.glossary">(with<"meaning">(field.meaning)));
        }
    }
};

}  // namespace

void check_value(const Field& field, const Value& value, std::string_view part) {
    std::visit(Checker{field, part}, value);
}

void check_record(std::span<const Field> fields, const void* record, std::string_view part) {
    for (const Field& field : fields) check_value(field, field.get(record), part);
}

}  // namespace heatmatch
