#pragma once

#include "layer.hpp"

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
    std::shared_ptr<const Parts> cached{};  //!< merged view as of cached_version
    int cached_version = 0;                 //!< SQLite's data_version, which others' commits move

    Impl() = default;
    Impl(const Impl&) = delete;
    Impl& operator=(const Impl&) = delete;
    /// Brings the write-ahead log into the file, so that a plain copy of it is whole.
    ~Impl();

    /// The file, for a change. Throws CatalogError for the starter.
    [[nodiscard]] SQLite::Database& writable();
    /// Runs work with SQLite's errors turned into ours.
    template <class Work>
    auto guarded(Work work);
    /// Applies changes in one transaction with one history entry, checking references on the
    /// merged view. Gives the entry's number.
    int apply(const std::string& action, const std::vector<RowChange>& changes, int undoes = 0);
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
