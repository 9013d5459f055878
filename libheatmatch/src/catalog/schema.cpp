#include "heatmatch/catalog/schema.hpp"

#include "row_codec.hpp"

#include <array>
#include <charconv>
#include <cmath>

#include "heatmatch/parts/parts.hpp"

namespace heatmatch {

namespace {

std::string exact(double value) {
    std::array<char, 32> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), value).ptr;
    return {text.data(), end};
}

std::string quoted(std::string_view text) {
    std::string result = "'";
    for (char c : text) {
        result += c;
        if (c == '\'') result += '\'';
    }
    return result + '\'';
}

std::string_view sql_type(FieldKind kind) {
    switch (kind) {
        case FieldKind::number:
            return "REAL";
        case FieldKind::count:
        case FieldKind::flag:
            return "INTEGER";
        default:
            return "TEXT";
    }
}

std::string range_condition(const Field& field) {
    const std::string name(field.name);
    std::string condition;
    if (std::isfinite(field.range.low)) {
        condition = name + (field.range.low_open ? " > " : " >= ") + exact(field.range.low);
    }
    if (std::isfinite(field.range.high)) {
        condition += (condition.empty() ? "" : " AND ") + name + " <= " + exact(field.range.high);
    }
    return condition;
}

/// Condition of a named CHECK; empty where the type suffices.
std::string condition_of(const Field& field) {
    const std::string name(field.name);
    switch (field.kind) {
        case FieldKind::number:
        case FieldKind::count:
            return range_condition(field);
        case FieldKind::flag:
            return name + " IN (0, 1)";
        case FieldKind::choice: {
            std::string words;
            for (std::string_view word : field.words)
                words += (words.empty() ? "" : ", ") + quoted(word);
            return name + " IN (" + words + ")";
        }
        case FieldKind::slug:
        case FieldKind::reference:
            return "length(" + name + ") BETWEEN 1 AND 80 AND " + name +
                   " NOT GLOB '*[^a-z0-9._-]*'";
        case FieldKind::text:
            return {};
        default:
            return name + " IS NULL OR json_valid(" + name + ")";
    }
}

}  // namespace

std::string column_definition(const PartKindInfo& info, const Field& field) {
    std::string definition(field.name);
    definition += ' ';
    definition += sql_type(field.kind);
    if (field.name == "id") {
        definition += " PRIMARY KEY NOT NULL";
    } else if (field.required) {
        definition += " NOT NULL";
    }
    const std::string condition = condition_of(field);
    if (condition.empty()) return definition;
    const char* rule = field.kind == FieldKind::number || field.kind == FieldKind::count ? "range"
                       : field.kind == FieldKind::choice                                 ? "words"
                                                                                         : "form";
    return definition + " CONSTRAINT " + std::string(info.name) + '_' + std::string(field.name) +
           '_' + rule + " CHECK (" + condition + ")";
}

std::vector<std::string> schema_statements() {
    std::vector<std::string> statements;
    for (const PartKindInfo& info : part_kinds()) {
        std::string sql = "CREATE TABLE " + std::string(info.plural) + " (\n";
        for (const Field& field : info.fields) {
            sql += "  " + column_definition(info, field) +
                   (&field == &info.fields.back() ? "\n" : ",\n");
        }
        statements.push_back(sql + ") STRICT, WITHOUT ROWID");
    }
    statements.emplace_back(
        "CREATE TABLE removed (\n"
        "  kind TEXT NOT NULL,\n"
        "  id TEXT NOT NULL,\n"
        "  PRIMARY KEY (kind, id)\n"
        ") STRICT, WITHOUT ROWID");
    statements.emplace_back(
        "CREATE TABLE history (\n"
        "  number INTEGER PRIMARY KEY,\n"
        "  at_utc TEXT NOT NULL,\n"
        "  action TEXT NOT NULL,\n"
        "  undoes INTEGER REFERENCES history (number)\n"
        ") STRICT");
    statements.emplace_back(
        "CREATE TABLE history_rows (\n"
        "  number INTEGER NOT NULL REFERENCES history (number),\n"
        "  step INTEGER NOT NULL,\n"
        "  kind TEXT NOT NULL,\n"
        "  id TEXT NOT NULL,\n"
        "  before TEXT CONSTRAINT history_rows_before_form CHECK (before IS NULL OR "
        "json_valid(before)),\n"
        "  after TEXT CONSTRAINT history_rows_after_form CHECK (after IS NULL OR "
        "json_valid(after)),\n"
        "  PRIMARY KEY (number, step)\n"
        ") STRICT, WITHOUT ROWID");
    return statements;
}

}  // namespace heatmatch
