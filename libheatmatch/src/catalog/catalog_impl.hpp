#pragma once

#include "layer.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include <SQLiteCpp/Database.h>

#include "heatmatch/catalog/catalog.hpp"

namespace heatmatch {

/// The open file of a Catalog, or none for the starter.
struct Catalog::Impl {
    std::string path{};
    std::optional<SQLite::Database> database{};
    bool closed = false;
    std::shared_ptr<const Parts> cached{};  //!< merged view as of cached_version
    int cached_version = 0;                 //!< SQLite's data_version, which others' commits move

    Impl() = default;
    Impl(const Impl&) = delete;
    Impl& operator=(const Impl&) = delete;
    /// Brings the write-ahead log into the file, so that a plain copy of it is whole.
    ~Impl();

    void close();
    /// Throws CatalogError once closed.
    void check_open() const;
    /// A row equal to the starter's is not kept as one's own: the starter's shows instead.
    [[nodiscard]] static RowState without_copies(const RowChange& change);
    /// The file, for a change. Throws CatalogError for the starter.
    [[nodiscard]] SQLite::Database& writable();
    /// Runs work with SQLite's errors turned into ours.
    template <class Work>
    auto guarded(Work work);
    /// Applies changes in one transaction with one history entry, checking references on the
    /// merged view. The condition is asked first, in the same transaction, so that what it saw
    /// still holds; it throws if the changes must not be made. Gives the entry's number.
    int apply(
        const std::string& action, std::vector<RowChange> changes,
        const std::function<void()>& condition = [] {}, int undoes = 0);
    /// Whether the merged view has a part.
    [[nodiscard]] bool has(PartKind kind, const std::string& id);
    [[nodiscard]] std::shared_ptr<const Parts> merged();
    /// Puts parts and removals in as one change, or reports what is wrong with them.
    ImportReport import(const CatalogText& catalog, std::vector<RefusedRow> refused, bool keep_good,
                        const std::string& origin);
};

/// Turns an error of SQLite into one that names the file and the remedy.
[[noreturn]] void rethrow_sqlite(const std::string& path);

template <class Work>
auto Catalog::Impl::guarded(Work work) {
    try {
        return work();
    } catch (const SQLite::Exception&) {
        rethrow_sqlite(path);
    }
}

}  // namespace heatmatch
