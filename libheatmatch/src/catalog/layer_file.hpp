#pragma once

#include <string>

#include <SQLiteCpp/Database.h>

namespace heatmatch {

/// An open catalog file.
struct LayerFile {
    SQLite::Database database;
    bool read_only = false;
    bool blank = false;      //!< still without tables; the first change creates them
    int schema_cookie = -1;  //!< SQLite's schema counter at the last comparison
    std::string frozen{};    //!< size and modification time of a file that cannot be locked
};

/// Opens a catalog file, or creates it if absent, and updates its tables to this version. An
/// existing empty file stays empty. A file that is not writable is opened for reading. Throws
/// FileError and CatalogError as Catalog::open does.
[[nodiscard]] LayerFile open_layer(const std::string& path, int wait_ms);

/// Throws the CatalogError of a statement that was stopped for exceeding the step limit.
[[noreturn]] void refuse_endless(const std::string& path);

/// Rechecks a file before it is read or changed, because another program may have filled it or
/// changed its tables. Throws CatalogError for unknown tables.
void look_again(LayerFile& file, const std::string& path);
/// Creates the tables of a blank file, inside the transaction of its first change.
void fill_blank(LayerFile& file);
/// Switches a file to write-ahead logging, where its folder permits it.
void log_ahead(LayerFile& file);

/// Whether another file, or none, is now at the path.
[[nodiscard]] bool has_moved(LayerFile& file);
/// Merges the log before closing, so that a plain copy of the file is complete.
void bring_log_in(LayerFile& file);

}  // namespace heatmatch
