#pragma once

#include <string>

#include <SQLiteCpp/Database.h>

namespace heatmatch {

/// An open catalog file.
struct LayerFile {
    SQLite::Database database;
    bool read_only = false;
    bool blank = false;      //!< nothing is in it yet; the first change makes its tables
    int schema_cookie = -1;  //!< SQLite's count of schema changes when it was last compared
    std::string frozen{};    //!< size and time of a file that cannot be locked where it is
};

/// Opens a catalog file, or creates it where there is none, and brings its tables up to this
/// version. A file that is there and empty stays empty. What cannot be written is opened for
/// reading. Throws FileError and CatalogError as Catalog::open says.
[[nodiscard]] LayerFile open_layer(const std::string& path, int wait_ms);

/// Throws the CatalogError of a statement that was stopped because it went on and on.
[[noreturn]] void refuse_endless(const std::string& path);

/// Looks at a file again before it is read or changed: whether another program has filled it or
/// changed its tables since. Throws CatalogError for tables that are not ours.
void look_again(LayerFile& file, const std::string& path);
/// Makes the tables of a blank file, inside the transaction of its first change.
void fill_blank(LayerFile& file);
/// Has commits of a file written to a log first, where its folder allows it.
void log_ahead(LayerFile& file);

/// Whether another file, or none, is at the path by now.
[[nodiscard]] bool has_moved(LayerFile& file);
/// Brings the log in, so that a plain copy of the file is whole, before it is closed.
void bring_log_in(LayerFile& file);

}  // namespace heatmatch
