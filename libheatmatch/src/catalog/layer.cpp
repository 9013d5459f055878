#include "layer.hpp"

#include "row_codec.hpp"

#include <SQLiteCpp/Statement.h>

namespace heatmatch {

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
