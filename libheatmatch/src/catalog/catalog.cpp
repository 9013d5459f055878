#include "heatmatch/catalog/catalog.hpp"

#include "catalog_impl.hpp"
#include "protection.hpp"

#include <algorithm>
#include <filesystem>
#include <utility>

#include <SQLiteCpp/Statement.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/text/file_writer.hpp"
#include "heatmatch/text/starter.hpp"

namespace heatmatch {

namespace {

/// The entry to undo: of that number, or the newest not yet undone.
const HistoryEntry& entry_to_undo(const std::vector<HistoryEntry>& entries,
                                  std::optional<int> number, const std::string& path) {
    const auto found =
        std::find_if(entries.rbegin(), entries.rend(), [&number](const HistoryEntry& entry) {
            return number ? entry.number == *number : entry.undoes == 0 && !entry.undone;
        });
    const std::string named = number ? "entry " + std::to_string(*number) : std::string();
    if (found == entries.rend()) {
        throw CatalogError(number ? "there is no " + named + " in the history of \"" + path +
                                        "\"; nothing was changed"
                                  : "there is nothing to undo in \"" + path + '"',
                           ErrorDetail{.part = path});
    }
    if (found->undoes != 0) {
        throw CatalogError(named + " (" + found->action +
                               ") is itself an undo; nothing was changed: make the change again",
                           ErrorDetail{.part = path});
    }
    if (!found->undone) return *found;
    const auto by =
        std::find_if(entries.begin(), entries.end(),
                     [&found](const HistoryEntry& entry) { return entry.undoes == found->number; });
    throw CatalogError(named + " (" + found->action + ") was already undone, by entry " +
                           std::to_string(by->number) + "; nothing was changed",
                       ErrorDetail{.part = path});
}

}  // namespace

Catalog::Catalog(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
Catalog::Catalog(Catalog&&) noexcept = default;
Catalog& Catalog::operator=(Catalog&&) noexcept = default;
Catalog::~Catalog() = default;

Catalog Catalog::starter() {
    return Catalog(std::make_unique<Impl>());
}

Catalog Catalog::open(const std::string& path, int wait_ms) {
    auto impl = std::make_unique<Impl>();
    impl->path = path;
    impl->file.emplace(open_layer(path, wait_ms));
    return Catalog(std::move(impl));
}

void Catalog::close() {
    const std::lock_guard lock(impl_->mutex);
    impl_->close();
}

const std::string& Catalog::path() const {
    return impl_->path;
}

Parts Catalog::parts() const {
    return *snapshot();
}

std::shared_ptr<const Parts> Catalog::snapshot() const {
    const std::lock_guard lock(impl_->mutex);
    return impl_->show();
}

bool Catalog::is_own(PartKind kind, const std::string& id) const {
    const std::lock_guard lock(impl_->mutex);
    return impl_->read<bool>(
        [&](SQLite::Database& database) { return read_state(database, kind, id).row.has_value(); });
}

void Catalog::add(const Part& part) {
    const std::lock_guard lock(impl_->mutex);
    impl_->check_writable();
    check_part(part);
    const PartKind kind = part_kind(part).kind;
    impl_->apply([&] {
        if (impl_->find(kind, part_id(part))) {
            throw CatalogError(part_title(part) + ": id = \"" + part_id(part) +
                                   "\" is taken; choose another id, or replace the part",
                               ErrorDetail{.part = part_title(part), .field = "id"});
        }
        return Change{.action = "add " + part_title(part),
                      .rows = {{kind, part_id(part), {.row = part}}}};
    });
}

void Catalog::remove(PartKind kind, const std::string& id) {
    const std::lock_guard lock(impl_->mutex);
    const std::string title = std::string(part_kind(kind).name) + " \"" + id + '"';
    const bool in_starter = starter_parts().find(kind, id).has_value();
    impl_->apply([&] {
        if (!impl_->find(kind, id)) {
            throw NotFound("no " + title + " in the catalog to remove",
                           ErrorDetail{.part = title, .field = "id"});
        }
        return Change{.action = "remove " + title, .rows = {{kind, id, {.removed = in_starter}}}};
    });
}

std::vector<HistoryEntry> Catalog::history() const {
    const std::lock_guard lock(impl_->mutex);
    return impl_->read<std::vector<HistoryEntry>>(read_history);
}

HistoryEntry Catalog::undo(std::optional<int> number) {
    const std::lock_guard lock(impl_->mutex);
    const auto made = impl_->apply([&] {
        SQLite::Database& database = impl_->file->database;
        const std::vector<HistoryEntry> entries = read_history(database);
        const HistoryEntry& entry = entry_to_undo(entries, number, path());
        const HistoryRows rows = read_history_rows(database, entry.number);
        for (const RowChange& left : rows.after) {
            if (read_state(database, left.kind, left.id) == left.state) continue;
            throw CatalogError("entry " + std::to_string(entry.number) + " (" + entry.action +
                               ") cannot be undone: " + std::string(part_kind(left.kind).name) +
                               " \"" + left.id + "\" was changed afterwards; edit it by hand");
        }
        return Change{.action = "undo " + std::to_string(entry.number) + " (" + entry.action + ")",
                      .rows = rows.before,
                      .undoes = entry.number};
    });
    if (made) return *made;
    throw CatalogError("the history of \"" + path() +
                           "\" lacks the rows of that entry; nothing was changed: restore a copy",
                       ErrorDetail{.part = path()});
}

void Catalog::save_copy(const std::string& path) const {
    const std::lock_guard lock(impl_->mutex);
    impl_->check_open();
    std::error_code ignored;
    if (std::filesystem::exists(path, ignored)) {
        throw FileError("cannot write a copy to \"" + path + "\": it exists; choose a new name",
                        ErrorDetail{.part = path});
    }
    if (!impl_->file) {
        throw CatalogError("the starter catalog has no file to copy; it is part of the library");
    }
    // Checks its tables before copying.
    impl_->read<bool>([](SQLite::Database&) { return true; });
    // Permissions of the catalog itself.
    const auto mode =
        static_cast<unsigned>(std::filesystem::status(impl_->path, ignored).permissions());
    constexpr unsigned read_and_write = 0666;
    FileWriter file(path,
                    {.replace = false, .mode = mode & read_and_write, .what = "write a copy to"});
    try {
        const TrustForCopy trust(impl_->file->database);
        SQLite::Statement copy(impl_->file->database, "VACUUM INTO ?");
        copy.bind(1, file.partial());
        copy.exec();
    } catch (const SQLite::Exception& error) {
        throw FileError("cannot write a copy to \"" + path + "\": " + error.what() +
                            "; check that the folder exists and that you may write to it",
                        ErrorDetail{.part = path});
    }
    file.keep();
}

}  // namespace heatmatch
