#include "heatmatch/catalog/catalog.hpp"

#include "catalog_impl.hpp"

#include <algorithm>
#include <filesystem>
#include <utility>

#include <SQLiteCpp/Exception.h>
#include <SQLiteCpp/Statement.h>
#include <SQLiteCpp/Transaction.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/text/file_writer.hpp"
#include "heatmatch/text/starter.hpp"

namespace heatmatch {

namespace {

/// Names what keeps a change from being made; a long list is cut.
std::string list_references(const std::vector<BrokenReference>& broken) {
    constexpr std::size_t most = 5;
    std::string text;
    for (std::size_t i = 0; i < broken.size() && i < most; ++i) {
        text += (i == 0 ? "" : ", ") + broken[i].text();
    }
    if (broken.size() > most) text += " and " + std::to_string(broken.size() - most) + " more";
    return text;
}

/// Says which part names what is not there, and what to do: depending on whether the change names
/// something missing, or takes away what others name.
[[noreturn]] void refuse_references(const std::string& action,
                                    const std::vector<BrokenReference>& broken,
                                    const std::vector<RowChange>& changes) {
    const BrokenReference& first = broken.front();
    const bool names_missing =
        std::any_of(changes.begin(), changes.end(), [&first](const RowChange& change) {
            return change.state.row && change.kind == first.from_kind && change.id == first.from_id;
        });
    throw CatalogError(
        action + " is refused, nothing was changed: " + list_references(broken) +
            " would name a part that is not there; " +
            (names_missing ? "add it, or correct the name" : "change or remove those first"),
        ErrorDetail{
            .part = std::string(part_kind(first.from_kind).name) + ' ' + quote(first.from_id),
            .field = first.field,
            .value = first.to_id,
            .allowed = "a " + first.to_kind + " of the catalog"});
}

}  // namespace

void rethrow_sqlite(const std::string& path) {
    try {
        throw;
    } catch (const SQLite::Exception& error) {
        constexpr int busy = 5;
        constexpr int locked = 6;
        constexpr int read_only = 8;
        const int code = error.getErrorCode();
        if (code == busy || code == locked) {
            throw CatalogError(
                "\"" + path +
                    "\" is in use by another program; nothing was changed: close it or "
                    "try again",
                ErrorDetail{.part = path});
        }
        if (code == read_only) {
            throw FileError("cannot write \"" + path + "\": it is read-only; nothing was changed",
                            ErrorDetail{.part = path});
        }
        throw CatalogError("\"" + path + "\": " + error.what() + "; nothing was changed",
                           ErrorDetail{.part = path});
    }
}

Catalog::Impl::~Impl() {
    close();
}

void Catalog::Impl::close() {
    closed = true;
    cached.reset();
    if (!database) return;
    try {
        database->exec("PRAGMA wal_checkpoint(TRUNCATE)");
    } catch (const SQLite::Exception&) {
        // Another program still reads the file: SQLite brings the log in later.
        database.reset();
        return;
    }
    database.reset();
}

void Catalog::Impl::check_open() const {
    if (closed) throw CatalogError("the catalog \"" + path + "\" is closed; open it again");
}

SQLite::Database& Catalog::Impl::writable() {
    check_open();
    if (!database) {
        throw CatalogError("the starter catalog is read-only; open a file of your own over it");
    }
    return *database;
}

std::shared_ptr<const Parts> Catalog::Impl::merged() {
    check_open();
    if (!database) return {&starter_parts(), [](const Parts*) {}};
    return guarded([this] {
        const int version = database->execAndGet("PRAGMA data_version").getInt();
        if (!cached || version != cached_version) {
            const SQLite::Transaction one_view(*database);
            cached = std::make_shared<const Parts>(merge_layer(starter_parts(), *database));

            cached_version = version;
        }
        return cached;
    });
}

RowState Catalog::Impl::without_copies(const RowChange& change) {
    if (!change.state.row) return change.state;
    const auto starter = starter_parts().find(change.kind, change.id);
    return starter && *starter == *change.state.row ? RowState{} : change.state;
}

bool Catalog::Impl::has(PartKind kind, const std::string& id) {
    const RowState state = read_state(writable(), kind, id);
    return state.row || (!state.removed && starter_parts().find(kind, id));
}

int Catalog::Impl::apply(const std::string& action, std::vector<RowChange> changes,
                         const std::function<void()>& condition, int undoes) {
    SQLite::Database& file = writable();
    for (RowChange& change : changes) change.state = without_copies(change);
    return guarded([&] {
        SQLite::Transaction transaction(file, SQLite::TransactionBehavior::IMMEDIATE);
        condition();

        std::vector<RowChange> before;
        for (const RowChange& change : changes) {
            before.push_back({change.kind, change.id, read_state(file, change.kind, change.id)});
            write_state(file, change);
        }
        const auto broken = broken_references(merge_layer(starter_parts(), file));
        if (!broken.empty()) refuse_references(action, broken, changes);
        const int number = append_history(file, action, before, changes, undoes);
        transaction.commit();
        cached.reset();
        return number;
    });
}

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
    impl->database.emplace(open_layer(path, wait_ms));
    return Catalog(std::move(impl));
}

void Catalog::close() {
    impl_->close();
}

const std::string& Catalog::path() const {
    return impl_->path;
}

Parts Catalog::parts() const {
    return *snapshot();
}

std::shared_ptr<const Parts> Catalog::snapshot() const {
    return impl_->merged();
}

bool Catalog::is_own(PartKind kind, const std::string& id) const {
    impl_->check_open();
    if (!impl_->database) return false;
    return impl_->guarded([&] { return read_state(*impl_->database, kind, id).row.has_value(); });
}

void Catalog::add(const Part& part) {
    check_part(part);
    const PartKind kind = part_kind(part).kind;
    impl_->apply("add " + part_title(part), {{kind, part_id(part), {.row = part}}}, [&] {
        if (!impl_->has(kind, part_id(part))) return;
        throw CatalogError(part_title(part) + ": id = \"" + part_id(part) +
                               "\" is taken; choose another id, or replace the part",
                           ErrorDetail{.part = part_title(part), .field = "id"});
    });
}

void Catalog::replace(const Part& part) {
    check_part(part);
    const PartKind kind = part_kind(part).kind;
    impl_->apply("replace " + part_title(part), {{kind, part_id(part), {.row = part}}}, [&] {
        if (impl_->has(kind, part_id(part))) return;
        throw NotFound("no " + part_title(part) + " in the catalog to replace; add it instead",
                       ErrorDetail{.part = part_title(part), .field = "id"});
    });
}

void Catalog::remove(PartKind kind, const std::string& id) {
    const std::string title = std::string(part_kind(kind).name) + " \"" + id + '"';
    const bool in_starter = starter_parts().find(kind, id).has_value();
    impl_->apply("remove " + title, {{kind, id, {.removed = in_starter}}}, [&] {
        if (impl_->has(kind, id)) return;
        throw NotFound("no " + title + " in the catalog to remove",
                       ErrorDetail{.part = title, .field = "id"});
    });
}

std::vector<HistoryEntry> Catalog::history() const {
    impl_->check_open();
    if (!impl_->database) return {};
    return impl_->guarded([this] { return read_history(*impl_->database); });
}

HistoryEntry Catalog::undo() {
    SQLite::Database& file = impl_->writable();
    const std::vector<HistoryEntry> entries = history();
    const auto newest =
        std::find_if(entries.rbegin(), entries.rend(),
                     [](const HistoryEntry& entry) { return entry.undoes == 0 && !entry.undone; });
    if (newest == entries.rend()) {
        throw CatalogError("there is nothing to undo in \"" + path() + '"');
    }
    const HistoryRows rows =
        impl_->guarded([&] { return read_history_rows(file, newest->number); });
    const auto unchanged = [&] {
        for (const RowChange& left : rows.after) {
            if (read_state(file, left.kind, left.id) == left.state) continue;
            throw CatalogError("entry " + std::to_string(newest->number) + " (" + newest->action +
                               ") cannot be undone: " + std::string(part_kind(left.kind).name) +
                               " \"" + left.id +
                               "\" was changed since by something else; edit it by hand");
        }
    };
    impl_->apply("undo " + std::to_string(newest->number) + " (" + newest->action + ")",
                 rows.before, unchanged, newest->number);
    return history().back();
}

void Catalog::save_copy(const std::string& path) const {
    impl_->check_open();
    std::error_code ignored;
    if (std::filesystem::exists(path, ignored)) {
        throw FileError("cannot write a copy to \"" + path + "\": it exists; choose a new name",
                        ErrorDetail{.part = path});
    }
    if (!impl_->database) {
        throw CatalogError("the starter catalog has no file to copy; it is part of the library");
    }
    // As private as the catalog itself.
    const auto mode =
        static_cast<unsigned>(std::filesystem::status(impl_->path, ignored).permissions());
    constexpr unsigned read_and_write = 0666;
    FileWriter file(path,
                    {.replace = false, .mode = mode & read_and_write, .what = "write a copy to"});
    try {
        SQLite::Statement copy(*impl_->database, "VACUUM INTO ?");
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
