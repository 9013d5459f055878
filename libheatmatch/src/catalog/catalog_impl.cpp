#include "catalog_impl.hpp"

#include <algorithm>

#include <sqlite3.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/text/starter.hpp"

namespace heatmatch {

namespace {

/// Lists the references that prevent a change; a long list is cut.
std::string list_references(const std::vector<BrokenReference>& broken) {
    constexpr std::size_t most = 5;
    std::string text;
    for (std::size_t i = 0; i < broken.size() && i < most; ++i) {
        text += (i == 0 ? "" : ", ") + broken[i].text();
    }
    if (broken.size() > most) text += " and " + std::to_string(broken.size() - most) + " more";
    return text;
}

/// Reports which part refers to a missing one, and the remedy: this depends on whether the change
/// refers to a missing part or removes one that others refer to.
[[noreturn]] void refuse_references(const Change& change,
                                    const std::vector<BrokenReference>& broken) {
    const BrokenReference& first = broken.front();
    const bool names_missing =
        std::any_of(change.rows.begin(), change.rows.end(), [&first](const RowChange& row) {
            return row.state.row && row.kind == first.from_kind && row.id == first.from_id;
        });
    throw CatalogError(
        change.action + " is refused, nothing was changed: " + list_references(broken) +
            " would name a part that is not there; " +
            (names_missing ? "add it, or correct the name" : "change or remove those first"),
        ErrorDetail{
            .part = std::string(part_kind(first.from_kind).name) + ' ' + quote(first.from_id),
            .field = first.field,
            .value = first.to_id,
            .allowed = "the id of one of the " + std::string(part_kind(first.to_kind).plural) +
                       " of the catalog"});
}

/// A row equal to the starter's is not stored in the user's file: the starter's row applies.
RowState without_copy(const RowChange& change) {
    if (!change.state.row) return change.state;
    const auto starter = starter_parts().find(change.kind, change.id);
    return starter && *starter == *change.state.row ? RowState{} : change.state;
}

std::optional<Part> shown_of(PartKind kind, const std::string& id, const RowState& state) {
    if (state.row) return state.row;
    return state.removed ? std::nullopt : starter_parts().find(kind, id);
}

}  // namespace

void rethrow_sqlite(const std::string& path) {
    try {
        throw;
    } catch (const SQLite::Exception& error) {
        const int code = error.getErrorCode();
        if (code == SQLITE_BUSY || code == SQLITE_LOCKED) {
            throw CatalogError(
                "\"" + path +
                    "\" is in use by another program; nothing was changed: close it or "
                    "try again",
                ErrorDetail{.part = path});
        }
        if (code == SQLITE_INTERRUPT) refuse_endless(path);
        if (code == SQLITE_READONLY) {
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
    shown.reset();
    written.clear();
    if (file) bring_log_in(*file);
    file.reset();
}

void Catalog::Impl::check_open() const {
    if (!closed) return;
    throw CatalogError(
        (path.empty() ? std::string("the starter catalog") : "the catalog \"" + path + '"') +
            " is closed; open it again",
        ErrorDetail{.part = path});
}

void Catalog::Impl::check_writable() const {
    check_open();
    if (!file) {
        throw CatalogError("the starter catalog is read-only; open a file of your own over it");
    }
    if (file->read_only) {
        throw FileError("cannot write \"" + path +
                            "\": it is read-only; nothing was changed: copy it into a folder you "
                            "may write to and open the copy",
                        ErrorDetail{.part = path});
    }
    if (uncertain) {
        throw CatalogError("\"" + path +
                               "\" accepts no change until it is opened again, because it is not "
                               "known whether the last one was kept; nothing was changed",
                           ErrorDetail{.part = path});
    }
}

void Catalog::Impl::expect_writable() {
    const std::lock_guard lock(mutex);
    check_writable();
}

std::shared_ptr<const Parts> Catalog::Impl::merged() {
    const std::shared_ptr<const Parts> starter(&starter_parts(), [](const Parts*) {});
    const auto view = read<std::shared_ptr<const Parts>>([&](SQLite::Database& database) {
        const int version = database.execAndGet("PRAGMA data_version").getInt();
        if (!cached || version != cached_version) {
            cached = std::make_shared<const Parts>(merge_layer(*starter, database));
            cached_version = version;
        }
        return cached;
    });
    return view ? view : starter;
}

std::shared_ptr<const Parts> Catalog::Impl::show() {
    shown = merged();
    written.clear();
    return shown;
}

std::optional<Part> Catalog::Impl::find(PartKind kind, const std::string& id) {
    return shown_of(kind, id, read_state(file->database, kind, id));
}

std::optional<HistoryEntry> Catalog::Impl::apply(const std::function<Change()>& plan) {
    check_writable();
    const bool was_blank = file->blank;
    std::optional<HistoryEntry> entry;
    try {
        entry = make_change(plan);
    } catch (const SQLite::Exception&) {
        file->blank = was_blank;
        rethrow_sqlite(path);
    } catch (...) {
        file->blank = was_blank;
        throw;
    }
    if (!was_blank) return entry;
    file->blank = !entry;
    try {
        log_ahead(*file);
    } catch (const SQLite::Exception& error) {
        // The change is made; the next opening requests the log again.
        static_cast<void>(error);
    }
    return entry;
}

std::optional<HistoryEntry> Catalog::Impl::make_change(const std::function<Change()>& plan) {
    SQLite::Database& database = file->database;
    SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
    fill_blank(*file);
    look_again(*file, path);
    refuse_moved();
    Change change = plan();
    if (change.rows.empty()) return std::nullopt;

    std::vector<RowChange> before;
    for (RowChange& row : change.rows) {
        row.state = without_copy(row);
        before.push_back({row.kind, row.id, read_state(database, row.kind, row.id)});
        write_state(database, row);
    }
    const auto broken = broken_references(merge_layer(starter_parts(), database));
    if (!broken.empty()) refuse_references(change, broken);
    const HistoryEntry entry =
        append_history(database, change.action, before, change.rows, change.undoes);
    refuse_moved();
    cached.reset();
    commit(transaction, entry);
    for (const RowChange& row : change.rows) {
        written[{row.kind, row.id}] = shown_of(row.kind, row.id, row.state);
    }
    return entry;
}

void Catalog::Impl::refuse_moved() {
    if (!has_moved(*file)) return;
    throw FileError("\"" + path +
                        "\" was replaced or deleted since it was opened; nothing was changed: save "
                        "what this one holds (save_copy or export_json), then open the file again",
                    ErrorDetail{.part = path});
}

void Catalog::Impl::commit(SQLite::Transaction& transaction, const HistoryEntry& entry) {
    try {
        transaction.commit();
    } catch (const SQLite::Exception& error) {
        const int code = error.getErrorCode();
        if (code == SQLITE_BUSY || code == SQLITE_LOCKED || code == SQLITE_CONSTRAINT) throw;
        refuse_unknown(entry, error.what());
    }
    if (has_moved(*file)) refuse_unknown(entry, "the file was replaced or deleted meanwhile");
}

void Catalog::Impl::refuse_unknown(const HistoryEntry& entry, const std::string& why) {
    uncertain = true;
    std::string text = "whether " + quote(entry.action, 200) + " was kept in \"" + path +
                       "\" is not known: " + why +
                       "; open the file again and look at its history (heatmatch catalog "
                       "history): the change was kept if entry " +
                       std::to_string(entry.number) + " is there";
    if (entry.undoes != 0) {
        text += "; to try again, undo entry " + std::to_string(entry.undoes) + " by its number";
    }
    throw OutcomeUnknown(text, ErrorDetail{.part = path});
}

}  // namespace heatmatch
