#pragma once

#include "layer.hpp"
#include "layer_file.hpp"

#include <functional>
#include <map>
#include <mutex>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <SQLiteCpp/Exception.h>
#include <SQLiteCpp/Transaction.h>

#include "heatmatch/catalog/catalog.hpp"

namespace heatmatch {

/// The content of one change.
struct Change {
    std::string action{};
    std::vector<RowChange> rows{};
    int undoes = 0;
};

/// The open file of a Catalog, or none for the starter. Each public call locks the mutex before it
/// calls these members.
struct Catalog::Impl {
    std::string path{};
    std::optional<LayerFile> file{};
    std::mutex mutex{};
    bool closed = false;
    bool uncertain = false;                 //!< whether the last change was kept is not known
    std::shared_ptr<const Parts> cached{};  //!< merged view as of cached_version
    int cached_version = 0;                 //!< SQLite's data_version, changed by commits of others
    std::shared_ptr<const Parts> shown{};   //!< last snapshot returned
    /// Parts written since then; empty for a removed part.
    std::map<std::pair<PartKind, std::string>, std::optional<Part>> written{};

    Impl() = default;
    Impl(const Impl&) = delete;
    Impl& operator=(const Impl&) = delete;
    /// Merges the write-ahead log into the file, so that a plain copy of it is complete.
    ~Impl();

    void close();
    /// Throws CatalogError once closed.
    void check_open() const;
    /// Throws the error of a file that accepts no change: the starter, or a file that is closed,
    /// not writable, or in doubt.
    void check_writable() const;
    /// The same for a call that reads a text before it locks the mutex.
    void expect_writable();
    /// Runs work on the file, or returns an empty result where the user has no rows; converts
    /// SQLite's errors.
    template <class Result, class Work>
    Result read(Work work);

    /// Plans and makes a change in one immediate transaction with one history entry, so that what
    /// the plan read is still valid. Checks references on the merged view. Returns the entry, or
    /// nothing if the plan has no rows.
    std::optional<HistoryEntry> apply(const std::function<Change()>& plan);
    /// The part of that id in the merged view.
    [[nodiscard]] std::optional<Part> find(PartKind kind, const std::string& id);
    [[nodiscard]] std::shared_ptr<const Parts> merged();
    [[nodiscard]] std::shared_ptr<const Parts> show();
    /// Imports parts and removals as one change, or reports their errors.
    ImportReport import(const CatalogText& catalog, std::vector<RefusedRow> refused, bool keep_good,
                        const std::string& origin);

  private:
    std::optional<HistoryEntry> make_change(const std::function<Change()>& plan);
    void refuse_moved();
    void commit(SQLite::Transaction& transaction, const HistoryEntry& entry);
    [[noreturn]] void refuse_unknown(const HistoryEntry& entry, const std::string& why);
};

/// Converts an error of SQLite into one that names the file and the remedy.
[[noreturn]] void rethrow_sqlite(const std::string& path);

/// Throws CatalogError where a part would undo a change made elsewhere since `read_as`.
void refuse_stale(const Part& part, const Part& read_as, const Part& now);

template <class Result, class Work>
Result Catalog::Impl::read(Work work) {
    check_open();
    if (!file) return {};
    try {
        const SQLite::Transaction one_view(file->database);
        look_again(*file, path);
        return file->blank ? Result{} : work(file->database);
    } catch (const SQLite::Exception&) {
        rethrow_sqlite(path);
    }
}

}  // namespace heatmatch
