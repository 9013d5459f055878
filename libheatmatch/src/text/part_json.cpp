#include "heatmatch/text/part_json.hpp"

#include "base/sentences.hpp"
#include "json_record.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <set>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/suggestion.hpp"

namespace heatmatch {

using text_sentences::say;

namespace {

constexpr std::string_view catalog_key = "heatmatch_catalog";
constexpr std::string_view removed_key = "removed";
constexpr int catalog_version = 1;

Part read_part(const PartKindInfo& info, const Json& object, const std::string& origin) {
    Part part = make_part(info.kind);
    std::string title = origin + std::string(info.name);
    expect_object(object, title);
    const auto id = object.find("id");
    if (id != object.end() && id->is_string()) {
        title += ' ' + quote(id->get_ref<const std::string&>(), 80);
    }
    read_record(info.fields, part_record(part), object, title);
    check_part(part);
    return part;
}

/// The kind for a key of the file. Throws InvalidInput naming the file as well.
const PartKindInfo& kind_of_key(const std::string& key, std::string_view origin) {
    std::vector<std::string_view> known;
    for (const PartKindInfo& info : part_kinds()) {
        if (info.plural == key) return info;
        known.push_back(info.plural);
    }
    throw InvalidInput(ErrorDetail{.part = std::string(origin),
                                   .field = clip(key),
                                   .allowed = "a kind of part, in the plural",
                                   .remedy = suggestion(key, known)});
}

void check_catalog_version(const Json& root, const std::string& origin) {
    expect_object(root, origin);
    const auto found = root.find(std::string(catalog_key));
    if (found == root.end()) {
        throw InvalidInput(ErrorDetail{.part = origin,
                                       .field = std::string(catalog_key),
                                       .value = "(missing)",
                                       .allowed = "1",
                                       .remedy = say<"text.is_it_catalog">()});
    }
    if (!found->is_number_integer() || *found != catalog_version) {
        throw InvalidInput(ErrorDetail{.part = origin,
                                       .field = std::string(catalog_key),
                                       .value = found->dump().substr(0, 40),
                                       .allowed = "1",
                                       .remedy = say<"text.newer">()});
    }
}

}  // namespace

std::string part_to_json(const Part& part, int indent) {
    return write_record(part_kind(part).fields, part_record(part)).dump(indent);
}

Part part_from_json(PartKind kind, std::string_view text) {
    const PartKindInfo& info = part_kind(kind);
    return read_part(info, parse_json(text, info.name).root, "");
}

std::string catalog_to_json(const CatalogText& catalog) {
    Json root = Json::object();
    root[std::string(catalog_key)] = catalog_version;
    for (const PartKindInfo& info : part_kinds()) {
        Json rows = Json::array();
        for (const Part& part : catalog.rows) {
            if (part_kind(part).kind == info.kind) {
                rows.push_back(write_record(info.fields, part_record(part)));
            }
        }
        if (!rows.empty()) root[std::string(info.plural)] = std::move(rows);
    }
    Json removed = Json::object();
    for (const auto& [kind, id] : catalog.removed) {
        removed[std::string(part_kind(kind).plural)].push_back(id);
    }
    if (!removed.empty()) root[std::string(removed_key)] = std::move(removed);
    return root.dump(2) + '\n';
}

CatalogText catalog_from_json(std::string_view text, std::string_view origin,
                              std::vector<RefusedRow>* refused) {
    const ParsedJson parsed = parse_json(text, origin);
    check_catalog_version(parsed.root, std::string(origin));
    CatalogText catalog;
    std::set<std::pair<PartKind, std::string>> gone;
    for (const auto& item : parsed.root.items()) {
        if (item.key() == catalog_key) continue;
        if (item.key() == removed_key) {
            expect_object(item.value(), std::string(origin) + ": removed");
            for (const auto& list : item.value().items()) {
                const PartKind kind = kind_of_key(list.key(), origin).kind;
                expect_array(list.value(), std::string(origin) + ": removed " + list.key());
                for (const Json& id : list.value()) {
                    const std::pair<PartKind, std::string> removed{
                        kind, id.is_string() ? id.get<std::string>() : id.dump()};
                    check_value({.name = "id", .kind = FieldKind::slug, .required = true},
                                id.is_string() ? Value{removed.second} : Value{},
                                std::string(origin) + ": removed " + list.key());
                    if (gone.insert(removed).second) catalog.removed.push_back(removed);
                }
            }
            continue;
        }
        const PartKindInfo& info = kind_of_key(item.key(), origin);
        expect_array(item.value(), std::string(origin) + ": " + item.key());
        const auto lines = parsed.lines.find(item.key());
        std::set<std::string> ids;
        std::size_t index = 0;
        for (const Json& object : item.value()) {
            const std::size_t line = lines != parsed.lines.end() && index < lines->second.size()
                                         ? lines->second[index]
                                         : 0;
            ++index;
            const std::string place = std::string(origin) + ", line " + std::to_string(line) + ": ";
            try {
                Part part = read_part(info, object, place);
                if (!ids.insert(part_id(part)).second) {
                    throw InvalidInput(ErrorDetail{.part = place + part_title(part),
                                                   .field = "id",
                                                   .value = part_id(part),
                                                   .allowed = "unique among " + item.key(),
                                                   .remedy = say<"text.rename_or_remove">()});
                }
                catalog.rows.push_back(std::move(part));
                catalog.lines.push_back(line);
            } catch (const InvalidInput& error) {
                if (refused == nullptr) throw;
                const auto id = object.is_object() ? object.find("id") : object.end();
                const bool named = object.is_object() && id != object.end() && id->is_string();
                refused->push_back({.line = line,
                                    .id = named ? id->get<std::string>() : "",
                                    .reason = error.what()});
            }
        }
    }
    for (const Part& part : catalog.rows) {
        const std::string id = part_id(part);
        if (!gone.contains({part_kind(part).kind, id})) continue;
        throw InvalidInput(ErrorDetail{.part = std::string(origin) + ": " + part_title(part),
                                       .field = "id",
                                       .value = quote(id),
                                       .allowed = "either given or removed, not both",
                                       .remedy = say<"text.take_out">()});
    }
    return catalog;
}

std::string value_to_json(const Field& field, const Value& value) {
    return write_value(field, value).dump();
}

Value value_from_json(const Field& field, std::string_view text, std::string_view part) {
    return read_value(field, parse_json(text, part).root, std::string(part));
}

}  // namespace heatmatch
