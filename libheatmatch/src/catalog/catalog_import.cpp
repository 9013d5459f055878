#include "catalog_impl.hpp"
#include "row_codec.hpp"

#include <algorithm>

#include "heatmatch/base/error.hpp"
#include "heatmatch/text/module_csv.hpp"
#include "heatmatch/text/part_csv.hpp"
#include "heatmatch/text/starter.hpp"
#include "heatmatch/text/text_file.hpp"

namespace heatmatch {

namespace {

[[noreturn]] void refuse_import(const std::string& origin, const std::vector<RefusedRow>& refused) {
    constexpr std::size_t most = 10;
    std::string text = "import of " + origin +
                       " is refused, nothing was changed: " + std::to_string(refused.size()) +
                       (refused.size() == 1 ? " row" : " rows") + " cannot be used";
    for (std::size_t i = 0; i < refused.size() && i < most; ++i) text += "\n  " + refused[i].reason;
    if (refused.size() > most) {
        text += "\n  and " + std::to_string(refused.size() - most) + " more";
    }
    text += "\ncorrect them, or keep the good rows only (keep_good)";
    throw CatalogError(text, ErrorDetail{.part = origin});
}

/// Removes rows that refer to parts in neither the file nor the catalog.
void refuse_broken(CatalogText& text, const Parts& merged, const std::string& origin,
                   std::vector<RefusedRow>& refused) {
    // Rejecting one row may break another that refers to it.
    for (bool again = true; again;) {
        again = false;
        Parts trial = merged;
        for (const Part& part : text.rows) trial.put(part);
        for (const BrokenReference& broken : broken_references(trial)) {
            const auto found =
                std::find_if(text.rows.begin(), text.rows.end(), [&broken](const Part& part) {
                    return part_kind(part).kind == broken.from_kind &&
                           part_id(part) == broken.from_id;
                });
            if (found == text.rows.end()) continue;
            const auto place = found - text.rows.begin();
            const std::size_t line = text.lines[static_cast<std::size_t>(place)];
            refused.push_back({.line = line,
                               .id = broken.from_id,
                               .reason = origin + ", line " + std::to_string(line) + ": " +
                                         broken.text() + ": no such " + broken.to_kind +
                                         "; add it, or correct the name"});
            text.lines.erase(text.lines.begin() + place);
            text.rows.erase(found);
            again = true;
        }
    }
}

/// Rows and removals of an import that change something.
std::vector<RowChange> changes_of(const CatalogText& text, SQLite::Database& file,
                                  ImportReport& report) {
    std::vector<RowChange> changes;
    std::map<std::pair<PartKind, std::string>, const Part*> known;
    std::vector<std::vector<Part>> own;
    for (const PartKindInfo& info : part_kinds()) own.push_back(read_rows(file, info));
    for (const auto& list : own) {
        for (const Part& part : list) known[{part_kind(part).kind, part_id(part)}] = &part;
    }
    const auto hidden = removed_ids(file);
    for (const Part& part : text.rows) {
        const PartKind kind = part_kind(part).kind;
        const auto mine = known.find({kind, part_id(part)});
        if (mine != known.end() && *mine->second == part) {
            ++report.unchanged;
            continue;
        }
        const auto starter = starter_parts().find(kind, part_id(part));
        const bool is_hidden =
            std::find(hidden.begin(), hidden.end(), std::pair(kind, part_id(part))) != hidden.end();
        const bool present = mine != known.end() || (starter && !is_hidden);
        if (mine == known.end() && !is_hidden && starter && *starter == part) {
            ++report.unchanged;
            continue;
        }
        ++(present ? report.replaced : report.added);
        changes.push_back({kind, part_id(part), {.row = part}});
    }
    for (const auto& [kind, id] : text.removed) {
        const RowState wanted{.removed = starter_parts().find(kind, id).has_value()};
        if (read_state(file, kind, id) == wanted) {
            ++report.unchanged;
            continue;
        }
        ++report.removed;
        changes.push_back({kind, id, wanted});
    }
    return changes;
}

}  // namespace

ImportReport Catalog::Impl::import(const CatalogText& catalog, std::vector<RefusedRow> refused,
                                   bool keep_good, const std::string& origin) {
    const std::lock_guard lock(mutex);
    ImportReport report{.refused = std::move(refused)};
    const auto entry = apply([&] {
        CatalogText kept = catalog;
        const std::vector<Part>& rows = kept.rows;
        // Removals in the same file are not applied here; broken references are found when they
        // are.
        const bool refers = std::any_of(rows.begin(), rows.end(), [](const Part& part) {
            const auto fields = part_kind(part).fields;
            return std::any_of(fields.begin(), fields.end(), [](const Field& field) {
                return field.kind == FieldKind::reference;
            });
        });
        if (refers)
            refuse_broken(kept, merge_layer(starter_parts(), file->database), origin,
                          report.refused);
        if (!report.refused.empty() && !keep_good) refuse_import(origin, report.refused);
        return Change{.action = "import " + origin,
                      .rows = changes_of(kept, file->database, report)};
    });
    if (entry) report.entry = entry->number;
    return report;
}

ImportReport Catalog::import_json(const std::string& path, bool keep_good) {
    impl_->expect_writable();
    return import_json_text(read_text_file(path), path, keep_good);
}

ImportReport Catalog::import_json_text(std::string_view text, const std::string& origin,
                                       bool keep_good) {
    impl_->expect_writable();
    std::vector<RefusedRow> refused;
    const CatalogText catalog = catalog_from_json(text, origin, &refused);
    return impl_->import(catalog, std::move(refused), keep_good, origin);
}

ImportReport Catalog::import_csv_text(PartKind kind, std::string_view text,
                                      const std::string& origin, bool keep_good,
                                      bool number_records) {
    impl_->expect_writable();
    std::vector<RefusedRow> refused;
    const CatalogText catalog = parts_from_csv(kind, text, origin, refused, number_records);
    return impl_->import(catalog, std::move(refused), keep_good, origin);
}

ImportReport Catalog::import_module_csv(const std::string& path, bool keep_good) {
    impl_->expect_writable();
    std::vector<RefusedRow> refused;
    CatalogText catalog;
    for (Panel& panel : panels_from_module_csv(read_text_file(path), path, refused)) {
        catalog.rows.emplace_back(std::move(panel));
    }
    return impl_->import(catalog, std::move(refused), keep_good, path);
}

std::string Catalog::export_json_text() const {
    const std::lock_guard lock(impl_->mutex);
    return catalog_to_json(impl_->read<CatalogText>([](SQLite::Database& database) {
        CatalogText catalog;
        for (const PartKindInfo& info : part_kinds()) {
            for (Part& part : read_rows(database, info)) catalog.rows.push_back(std::move(part));
        }
        catalog.removed = removed_ids(database);
        return catalog;
    }));
}

void Catalog::export_json(const std::string& path, bool force) const {
    write_text_file(path, export_json_text(), {.replace = force});
}

std::string Catalog::export_all_json_text() const {
    return catalog_to_json({.rows = list_parts(*snapshot())});
}

}  // namespace heatmatch
