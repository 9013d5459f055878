#include "catalog_impl.hpp"

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/suggestion.hpp"
#include "heatmatch/text/starter.hpp"

namespace heatmatch {

namespace {

/// Sets the given fields; texts with numbers are read in their units. Coefficients come last,
/// because V/K is relative to another field.
void set_values(Part& part, const std::map<std::string, Value>& values) {
    const auto fields = part_kind(part).fields;
    const std::string title = part_title(part);
    void* record = part_record(part);
    for (const auto& [name, value] : values) {
        if (find_field(fields, name) == nullptr) refuse_unknown_field(fields, name, title);
    }
    for (const bool relative : {false, true}) {
        for (const Field& field : fields) {
            const auto given = values.find(std::string(field.name));
            if (given == values.end() || field.relative_to.empty() == relative) continue;
            Value value = given->second;
            const bool is_number =
                field.kind == FieldKind::number || field.kind == FieldKind::count;
            if (const auto* text = std::get_if<std::string>(&value); text != nullptr && is_number) {
                value = read_quantity(
                    field, *text, title,
                    relative ? relative_base(fields, record, field.relative_to) : std::nullopt);
            }
            set_field(fields, record, field.name, value, title);
        }
    }
    check_part(part);
}

[[noreturn]] void refuse_missing(const Parts& parts, PartKind kind, const std::string& id) {
    std::vector<std::string_view> known;
    for_each_list(parts, [&](const auto& list, PartKind listed) {
        if (listed != kind) return;
        for (const auto& part : list) known.emplace_back(part.id);
    });
    const std::string title = std::string(part_kind(kind).name) + ' ' + quote(id, 80);
    const Sentence remedy = suggestion(id, known);
    throw NotFound(
        "no " + title + " in the catalog to edit; " + remedy.text(),
        ErrorDetail{.part = title, .field = "id", .value = quote(id, 80), .remedy = remedy});
}

}  // namespace

void refuse_stale(const Part& part, const Part& read_as, const Part& now) {
    std::string changes;
    std::string first;
    for (const Field& field : part_kind(part).fields) {
        const Value was = field.get(part_record(read_as));
        const Value is = field.get(part_record(now));
        // A change that the part contains as well is not undone.
        if (was == is || field.get(part_record(part)) == is) continue;
        if (first.empty()) first = field.name;
        const auto shown = [&field](const Value& value) {
            return std::holds_alternative<std::monostate>(value) ? "unknown"
                                                                 : format_value(field, value);
        };
        changes += (changes.empty() ? "" : ", ") + std::string(field.name) + " from " + shown(was) +
                   " to " + shown(is);
    }
    if (changes.empty()) return;
    throw CatalogError(
        "replace " + part_title(part) +
            " is refused, nothing was changed: after it was read, another change set " + changes +
            "; read the part again, or set single fields (edit)",
        ErrorDetail{.part = part_title(part), .field = first});
}

Part Catalog::edit(PartKind kind, const std::string& id,
                   const std::map<std::string, Value>& values) {
    const std::lock_guard lock(impl_->mutex);
    impl_->check_writable();
    if (values.contains("id")) {
        throw InvalidInput(
            "id cannot be edited; add a part of the new id and remove the old one",
            ErrorDetail{.part = std::string(part_kind(kind).name) + ' ' + quote(id, 80),
                        .field = "id"});
    }
    std::optional<Part> edited;
    impl_->apply([&] {
        edited = impl_->find(kind, id);
        if (!edited) refuse_missing(merge_layer(starter_parts(), impl_->file->database), kind, id);
        set_values(*edited, values);
        std::string names;
        for (const auto& [name, value] : values) names += (names.empty() ? "" : ", ") + name;
        return Change{.action = "edit " + part_title(*edited) + " (" + names + ')',
                      .rows = {{kind, id, {.row = edited}}}};
    });
    return *edited;
}

void Catalog::replace(const Part& part, const std::optional<Part>& read_as) {
    const std::lock_guard lock(impl_->mutex);
    impl_->check_writable();
    check_part(part);
    const PartKind kind = part_kind(part).kind;
    const std::string& id = part_id(part);
    std::optional<Part> base = read_as;
    if (!base) {
        const auto written = impl_->written.find({kind, id});
        if (written != impl_->written.end()) {
            base = written->second;
        } else if (impl_->shown) {
            base = impl_->shown->find(kind, id);
        }
    }
    impl_->apply([&] {
        const auto now = impl_->find(kind, id);
        if (!now) {
            throw NotFound("no " + part_title(part) + " in the catalog to replace; add it instead",
                           ErrorDetail{.part = part_title(part), .field = "id"});
        }
        if (base && part_kind(*base).kind == kind && part_id(*base) == id) {
            refuse_stale(part, *base, *now);
        }
        return Change{.action = "replace " + part_title(part), .rows = {{kind, id, {.row = part}}}};
    });
}

}  // namespace heatmatch
