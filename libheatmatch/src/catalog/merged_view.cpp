#include "layer.hpp"
#include "row_codec.hpp"

#include <algorithm>
#include <set>

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/catalog.hpp"

namespace heatmatch {

namespace {

/// Merges one kind: both lists are sorted by id, and the file's row replaces the starter's.
template <class P>
std::vector<P> merge_list(const std::vector<P>& starter, const std::vector<Part>& own,
                          const std::set<std::string>& removed) {
    std::vector<P> merged;
    merged.reserve(starter.size() + own.size());
    std::set<std::string_view> own_ids;
    for (const Part& part : own) own_ids.insert(part_id(part));
    for (const P& part : starter) {
        if (!own_ids.contains(part.id) && !removed.contains(part.id)) merged.push_back(part);
    }
    for (const Part& part : own) merged.push_back(std::get<P>(part));
    std::sort(merged.begin(), merged.end(), [](const P& a, const P& b) { return a.id < b.id; });
    return merged;
}

}  // namespace

Parts merge_layer(const Parts& starter, SQLite::Database& database) {
    Parts merged = starter;
    const auto removed = removed_ids(database);
    for_each_list(merged, [&](auto& list, PartKind kind) {
        std::set<std::string> gone;
        for (const auto& [removed_kind, id] : removed) {
            if (removed_kind == kind) gone.insert(id);
        }
        const std::vector<Part> own = read_rows(database, part_kind(kind));
        if (!own.empty() || !gone.empty()) list = merge_list(list, own, gone);
    });
    return merged;
}

std::string BrokenReference::text() const {
    return std::string(part_kind(from_kind).name) + " \"" + from_id + "\" (" + field + " names " +
           to_kind + " \"" + to_id + "\")";
}

std::vector<BrokenReference> broken_references(const Parts& parts) {
    std::set<std::pair<std::string_view, std::string_view>> known;
    for_each_list(parts, [&known](const auto& list, PartKind kind) {
        for (const auto& part : list) known.emplace(part_kind(kind).name, part.id);
    });
    std::vector<BrokenReference> broken;
    for_each_list(parts, [&](const auto& list, PartKind kind) {
        for (const Field& field : part_kind(kind).fields) {
            if (field.kind != FieldKind::reference) continue;
            for (const auto& part : list) {
                const Value value = field.get(&part);
                const auto* id = std::get_if<std::string>(&value);
                if (id == nullptr || known.contains({field.refers_to, *id})) continue;
                broken.push_back({.from_kind = kind,
                                  .from_id = part.id,
                                  .field = std::string(field.name),
                                  .to_kind = std::string(field.refers_to),
                                  .to_id = *id});
            }
        }
    });
    return broken;
}

}  // namespace heatmatch
