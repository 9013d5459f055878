#include "layer_file.hpp"

#include "protection.hpp"
#include "row_codec.hpp"
#include "schema_check.hpp"

#include <filesystem>

#include <SQLiteCpp/Backup.h>
#include <SQLiteCpp/Exception.h>
#include <SQLiteCpp/Transaction.h>
#include <sqlite3.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/schema.hpp"

namespace heatmatch {

namespace {

int pragma(SQLite::Database& database, const char* name) {
    return database.execAndGet(std::string("PRAGMA ") + name).getInt();
}

bool is_blank(SQLite::Database& database) {
    return pragma(database, "application_id") == 0 && pragma(database, "user_version") == 0 &&
           database.execAndGet("SELECT count(*) FROM sqlite_master").getInt() == 0;
}

void create_tables(SQLite::Database& database) {
    for (const std::string& statement : schema_statements()) database.exec(statement);
    database.exec("PRAGMA application_id = " + std::to_string(catalog_application_id));
    database.exec("PRAGMA user_version = " + std::to_string(schema_version));
}

void migrate(SQLite::Database& database) {
    SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
    // Another program may have done this during the wait for the lock.
    if (pragma(database, "user_version") < schema_version) {
        add_missing_columns(database);
        database.exec("PRAGMA user_version = " + std::to_string(schema_version));
    }
    transaction.commit();
}

/// Rejects a file that is not a catalog, or one that this version cannot read.
void check_identity(SQLite::Database& database, const std::string& path) {
    const int version = pragma(database, "user_version");
    if (pragma(database, "application_id") != catalog_application_id) {
        throw CatalogError("\"" + path +
                               "\" is a SQLite file, but not a heatmatch catalog; name another "
                               "file, or a new one to create",
                           ErrorDetail{.part = path});
    }
    if (version > schema_version) {
        throw CatalogError("\"" + path + "\" was written by a newer heatmatch (schema " +
                               std::to_string(version) + ", this one reads up to " +
                               std::to_string(schema_version) + "); update heatmatch",
                           ErrorDetail{.part = path});
    }
}

/// Size and modification time, to recognize a file that cannot be locked.
std::string stamp_of(const std::string& path) {
    std::error_code failed;
    const auto size = std::filesystem::file_size(path, failed);
    const auto time = std::filesystem::last_write_time(path, failed);
    return failed ? "gone"
                  : std::to_string(size) + ' ' + std::to_string(time.time_since_epoch().count());
}

/// The address of an immutable file for SQLite.
std::string frozen_address(const std::string& path) {
    std::string address = "file:";
    for (const char c : path) {
        if (c == '%') {
            address += "%25";
        } else if (c == '?') {
            address += "%3f";
        } else if (c == '#') {
            address += "%23";
        } else {
            address += c;
        }
    }
    return address + "?immutable=1";
}

/// Older tables of a read-only file are updated in memory.
void migrate_in_memory(LayerFile& file, const std::string& path) {
    SQLite::Database copy(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    SQLite::Backup(copy, file.database).executeStep();
    protect(copy);
    migrate(copy);
    file.database = std::move(copy);
    file.frozen = stamp_of(path);
}

/// Compares the schema of the file, and updates its tables.
void settle(LayerFile& file, const std::string& path) {
    check_identity(file.database, path);
    check_schema(file.database, path);
    if (pragma(file.database, "user_version") < schema_version) {
        if (file.read_only) {
            migrate_in_memory(file, path);
        } else {
            migrate(file.database);
        }
    }
    file.schema_cookie = pragma(file.database, "schema_version");
}

LayerFile open_for_change(const std::string& path, int wait_ms) {
    std::error_code ignored;
    const bool is_new = !std::filesystem::exists(path, ignored);
    LayerFile file{
        .database = SQLite::Database(path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE, wait_ms)};
    protect(file.database);
    file.read_only = sqlite3_db_readonly(file.database.getHandle(), "main") == 1;
    file.blank = is_blank(file.database);
    if (file.blank && is_new) {
        SQLite::Transaction transaction(file.database, SQLite::TransactionBehavior::IMMEDIATE);
        fill_blank(file);
        transaction.commit();
        file.blank = false;
    }
    if (!file.blank) {
        settle(file, path);
        log_ahead(file);
    }
    file.database.exec("PRAGMA synchronous = FULL");
    file.database.exec("PRAGMA foreign_keys = ON");
    return file;
}

/// A file in a folder where SQLite can create neither lock nor log.
LayerFile open_frozen(const std::string& path) {
    LayerFile file{.database = SQLite::Database(frozen_address(path),
                                                SQLite::OPEN_READONLY | SQLite::OPEN_URI),
                   .read_only = true,
                   .frozen = stamp_of(path)};
    protect(file.database);
    file.blank = is_blank(file.database);
    if (!file.blank) settle(file, path);
    return file;
}

bool has_log(const std::string& path) {
    std::error_code failed;
    const auto size = std::filesystem::file_size(path + "-wal", failed);
    return !failed && size > 0;
}

[[noreturn]] void refuse_opening(const std::string& path, const SQLite::Exception& error) {
    const int code = error.getErrorCode();
    if (code == SQLITE_NOTADB || code == SQLITE_CORRUPT) {
        throw CatalogError("\"" + path + "\" is not a heatmatch catalog, or is damaged (" +
                               error.what() + "); name another file, or restore a copy",
                           ErrorDetail{.part = path});
    }
    if (code == SQLITE_BUSY) {
        throw CatalogError("\"" + path + "\" is in use by another program; close it or try again",
                           ErrorDetail{.part = path});
    }
    if (code == SQLITE_INTERRUPT) refuse_endless(path);
    const std::string remedy = has_log(path)
                                   ? "; the newest changes are still in \"" + path +
                                         "-wal\": copy both files into a folder you may write to"
                                   : "; check that the folder exists and that you may write to it";
    throw FileError("cannot open \"" + path + "\": " + error.what() + remedy,
                    ErrorDetail{.part = path});
}

}  // namespace

void refuse_endless(const std::string& path) {
    throw CatalogError(
        "\"" + path +
            "\" needs more computing steps to read than any catalog: it is damaged, or "
            "made to block a program; use another file",
        ErrorDetail{.part = path});
}

LayerFile open_layer(const std::string& path, int wait_ms) {
    if (path.empty() || path == ":memory:") {
        throw FileError("cannot open \"" + path +
                            "\": it names no file; name one, such as "
                            "mine.heatmatch",
                        ErrorDetail{.part = path});
    }
    std::error_code ignored;
    if (std::filesystem::is_directory(path, ignored)) {
        throw FileError("cannot open \"" + path + "\": it is a folder; name a file in it",
                        ErrorDetail{.part = path});
    }
    try {
        return open_for_change(path, wait_ms);
    } catch (const SQLite::Exception& error) {
        const int code = error.getErrorCode();
        const bool no_folder_of_ours = code == SQLITE_CANTOPEN || code == SQLITE_READONLY;
        if (!no_folder_of_ours || has_log(path) || !std::filesystem::exists(path, ignored)) {
            refuse_opening(path, error);
        }
    }
    try {
        return open_frozen(path);
    } catch (const SQLite::Exception& error) {
        refuse_opening(path, error);
    }
}

void look_again(LayerFile& file, const std::string& path) {
    if (!file.frozen.empty() && file.frozen != stamp_of(path)) {
        throw CatalogError("\"" + path +
                               "\" was changed since it was opened, and cannot be locked where "
                               "it is; open it again",
                           ErrorDetail{.part = path});
    }
    if (file.blank) {
        if (is_blank(file.database)) return;
        check_identity(file.database, path);
        file.blank = false;
    }
    const int cookie = pragma(file.database, "schema_version");
    if (cookie == file.schema_cookie) return;
    check_schema(file.database, path);
    file.schema_cookie = cookie;
}

void fill_blank(LayerFile& file) {
    // Another program may have filled it during the wait for the lock.
    if (file.blank && is_blank(file.database)) create_tables(file.database);
}

void log_ahead(LayerFile& file) {
    if (file.read_only) return;
    try {
        file.database.exec("PRAGMA journal_mode = WAL");
    } catch (const SQLite::Exception& error) {
        const int code = error.getErrorCode();
        if (code == SQLITE_CANTOPEN || code == SQLITE_READONLY) {
            file.read_only = true;
        } else if (code != SQLITE_BUSY) {
            // In use at this moment, it keeps its present log; the next opening requests it again.
            throw;
        }
    }
}

bool has_moved(LayerFile& file) {
    int moved = 0;
    sqlite3_file_control(file.database.getHandle(), "main", SQLITE_FCNTL_HAS_MOVED, &moved);
    return moved != 0;
}

void bring_log_in(LayerFile& file) {
    if (file.read_only) return;
    if (has_moved(file)) {
        // SQLite would delete the log by name, which may now be that of another file.
        int keep = 1;
        sqlite3_file_control(file.database.getHandle(), "main", SQLITE_FCNTL_PERSIST_WAL, &keep);
    }
    try {
        file.database.exec("PRAGMA wal_checkpoint(TRUNCATE)");
    } catch (const SQLite::Exception& error) {
        // Another program still reads the file: SQLite merges the log later.
        static_cast<void>(error);
    }
}

}  // namespace heatmatch
