#include "layer.hpp"

#include "row_codec.hpp"

#include <filesystem>

#include <SQLiteCpp/Exception.h>
#include <SQLiteCpp/Statement.h>
#include <SQLiteCpp/Transaction.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/schema.hpp"

namespace heatmatch {

namespace {

int pragma(SQLite::Database& database, const char* name) {
    return database.execAndGet(std::string("PRAGMA ") + name).getInt();
}

void create_tables(SQLite::Database& database) {
    SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
    // Another program may have created them while this one waited for the lock.
    if (pragma(database, "user_version") == 0) {
        for (const std::string& statement : schema_statements()) database.exec(statement);
        database.exec("PRAGMA application_id = " + std::to_string(catalog_application_id));
        database.exec("PRAGMA user_version = " + std::to_string(schema_version));
    }
    transaction.commit();
}

void migrate(SQLite::Database& database) {
    SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
    add_missing_columns(database);
    database.exec("PRAGMA user_version = " + std::to_string(schema_version));
    transaction.commit();
}

void check_identity(SQLite::Database& database, const std::string& path) {
    const int tables = database.execAndGet("SELECT count(*) FROM sqlite_master").getInt();
    const int id = pragma(database, "application_id");
    const int version = pragma(database, "user_version");
    if (tables == 0 && id == 0 && version == 0) return create_tables(database);
    if (id != catalog_application_id) {
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
    if (version < schema_version) migrate(database);
}

}  // namespace

SQLite::Database open_layer(const std::string& path, int wait_ms) {
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
        SQLite::Database database(path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE, wait_ms);
        check_identity(database, path);
        database.exec("PRAGMA journal_mode = WAL");
        database.exec("PRAGMA synchronous = FULL");
        database.exec("PRAGMA foreign_keys = ON");
        return database;
    } catch (const SQLite::Exception& error) {
        constexpr int not_a_database = 26;
        constexpr int corrupt = 11;
        constexpr int busy = 5;
        const int code = error.getErrorCode();
        if (code == not_a_database || code == corrupt) {
            throw CatalogError("\"" + path + "\" is not a heatmatch catalog, or is damaged (" +
                                   error.what() + "); name another file, or restore a copy",
                               ErrorDetail{.part = path});
        }
        if (code == busy) {
            throw CatalogError(
                "\"" + path + "\" is in use by another program; close it or try again",
                ErrorDetail{.part = path});
        }
        throw FileError("cannot open \"" + path + "\": " + error.what() +
                            "; check that the folder exists and that you may write to it",
                        ErrorDetail{.part = path});
    }
}

RowState read_state(SQLite::Database& database, PartKind kind, const std::string& id) {
    RowState state{.row = read_row(database, part_kind(kind), id)};
    SQLite::Statement query(database, "SELECT 1 FROM removed WHERE kind = ? AND id = ?");
    query.bind(1, std::string(part_kind(kind).name));
    query.bind(2, id);
    state.removed = query.executeStep();
    return state;
}

void write_state(SQLite::Database& database, const RowChange& change) {
    const PartKindInfo& info = part_kind(change.kind);
    if (change.state.row) {
        write_row(database, *change.state.row);
    } else {
        delete_row(database, info, change.id);
    }
    SQLite::Statement statement(
        database, change.state.removed ? "INSERT OR IGNORE INTO removed (kind, id) VALUES (?, ?)"
                                       : "DELETE FROM removed WHERE kind = ? AND id = ?");
    statement.bind(1, std::string(info.name));
    statement.bind(2, change.id);
    statement.exec();
}

std::vector<std::pair<PartKind, std::string>> removed_ids(SQLite::Database& database) {
    SQLite::Statement query(database, "SELECT kind, id FROM removed ORDER BY kind, id");
    std::vector<std::pair<PartKind, std::string>> ids;
    while (query.executeStep()) {
        ids.emplace_back(part_kind(query.getColumn(0).getString()).kind,
                         query.getColumn(1).getString());
    }
    return ids;
}

}  // namespace heatmatch
