#include "heatmatch/text/part_csv.hpp"

#include "base/sentences.hpp"
#include "csv.hpp"
#include "json_record.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <set>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/suggestion.hpp"

namespace heatmatch {

using text_sentences::say;

namespace {

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
}

/// A cell as the JSON value for its field.
Json cell_to_json(const Field& field, const std::string& cell, const std::string& part) {
    switch (field.kind) {
        case FieldKind::flag: {
            const std::string word = lower(cell);
            if (word == "true" || word == "yes" || word == "1") return true;
            if (word == "false" || word == "no" || word == "0") return false;
            return cell;
        }
        case FieldKind::numbers:
        case FieldKind::texts:
        case FieldKind::rows:
        case FieldKind::record:
        case FieldKind::text_map:
            return parse_json(cell, part + ": " + std::string(field.name)).root;
        default:
            return cell;
    }
}

}  // namespace

CatalogText parts_from_csv(PartKind kind, std::string_view text, std::string_view origin,
                           std::vector<RefusedRow>& refused, bool number_records) {
    const PartKindInfo& info = part_kind(kind);
    const std::vector<CsvRecord> records = read_csv(text, origin);
    if (records.empty()) {
        throw InvalidInput(ErrorDetail{
            .part = std::string(origin),
            .field = "header",
            .value = "(missing)",
            .allowed = "a line of field names",
            .remedy = say<"text.begin_with">(with<"fields">("id,label,source,source_kind,..."))});
    }
    std::vector<const Field*> columns;
    for (const std::string& name : records.front().cells) {
        const Field* field = find_field(info.fields, name);
        if (field != nullptr && std::find(columns.begin(), columns.end(), field) != columns.end()) {
            throw InvalidInput(ErrorDetail{.part = std::string(origin),
                                           .field = "column " + quote(name),
                                           .value = "a second one",
                                           .allowed = "given once",
                                           .remedy = say<"text.remove_one">()});
        }
        columns.push_back(field);
        if (field != nullptr) continue;
        throw InvalidInput(ErrorDetail{.part = std::string(origin),
                                       .field = "column " + quote(name),
                                       .allowed = "a field of the kind " + std::string(info.name),
                                       .remedy = suggestion(name, info.fields)});
    }
    CatalogText parts;
    std::set<std::string> ids;
    for (std::size_t r = 1; r < records.size(); ++r) {
        const CsvRecord& record = records[r];
        const std::size_t line = number_records ? r + 1 : record.line;
        std::string title =
            std::string(origin) + ", line " + std::to_string(line) + ": " + std::string(info.name);
        std::string id;
        try {
            if (record.cells.size() > columns.size()) {
                throw InvalidInput(
                    ErrorDetail{.part = title,
                                .field = "cells",
                                .value = std::to_string(record.cells.size()),
                                .allowed = "at most " + std::to_string(columns.size()),
                                .remedy = say<"text.quote_cells">()});
            }
            Json object = Json::object();
            for (std::size_t c = 0; c < record.cells.size(); ++c) {
                if (columns[c]->name == "id") id = record.cells[c];
            }
            title += ' ' + quote(id, 80);
            for (std::size_t c = 0; c < record.cells.size(); ++c) {
                if (record.cells[c].empty()) continue;
                object[std::string(columns[c]->name)] =
                    cell_to_json(*columns[c], record.cells[c], title);
            }
            Part part = make_part(kind);
            read_record(info.fields, part_record(part), object, title);
            check_part(part);
            if (!ids.insert(id).second) {
                throw InvalidInput(ErrorDetail{.part = title,
                                               .field = "id",
                                               .value = id,
                                               .allowed = "unique in the file",
                                               .remedy = say<"text.rename_or_remove">()});
            }
            parts.rows.push_back(std::move(part));
            parts.lines.push_back(line);
        } catch (const InvalidInput& error) {
            refused.push_back({.line = line, .id = clip(id), .reason = error.what()});
        }
    }
    return parts;
}

}  // namespace heatmatch
