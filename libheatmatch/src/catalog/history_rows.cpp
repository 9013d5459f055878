#include "layer.hpp"

#include <map>
#include <set>

#include <SQLiteCpp/Statement.h>

#include "heatmatch/text/part_json.hpp"

namespace heatmatch {

namespace {

/// Empty, `"removed"` or the row as JSON.
std::optional<std::string> state_text(const RowState& state) {
    if (state.row) return part_to_json(*state.row, -1);
    if (state.removed) return "\"removed\"";
    return std::nullopt;
}

RowState state_from(const SQLite::Column& column, PartKind kind) {
    if (column.isNull()) return {};
    const std::string text = column.getString();
    if (text == "\"removed\"") return {.removed = true};
    return {.row = part_from_json(kind, text)};
}

void bind_optional(SQLite::Statement& statement, int index,
                   const std::optional<std::string>& text) {
    if (text) {
        statement.bind(index, *text);
    } else {
        statement.bind(index);
    }
}

}  // namespace

HistoryEntry append_history(SQLite::Database& database, const std::string& action,
                            const std::vector<RowChange>& before,
                            const std::vector<RowChange>& after, int undoes) {
    SQLite::Statement entry(database,
                            "INSERT INTO history (at_utc, action, undoes) "
                            "VALUES (strftime('%Y-%m-%dT%H:%M:%SZ', 'now'), ?, ?)");
    entry.bind(1, action);
    if (undoes > 0) {
        entry.bind(2, undoes);
    } else {
        entry.bind(2);
    }
    entry.exec();
    const auto number = static_cast<int>(database.getLastInsertRowid());
    SQLite::Statement row(database,
                          "INSERT INTO history_rows (number, step, kind, id, before, after) "
                          "VALUES (?, ?, ?, ?, ?, ?)");
    for (std::size_t step = 0; step < after.size(); ++step) {
        row.bind(1, number);
        row.bind(2, static_cast<int>(step));
        row.bind(3, std::string(part_kind(after[step].kind).name));
        row.bind(4, after[step].id);
        bind_optional(row, 5, state_text(before[step].state));
        bind_optional(row, 6, state_text(after[step].state));
        row.exec();
        row.reset();
    }
    SQLite::Statement made(database, "SELECT at_utc FROM history WHERE number = ?");
    made.bind(1, number);
    made.executeStep();
    return {.number = number,
            .at_utc = made.getColumn(0).getString(),
            .action = action,
            .rows = static_cast<int>(after.size()),
            .undoes = undoes};
}

std::vector<HistoryEntry> read_history(SQLite::Database& database) {
    // Counted and joined here: a subquery for each entry would take quadratic time.
    std::map<int, int> rows_of;
    SQLite::Statement rows(database, "SELECT number, count(*) FROM history_rows GROUP BY number");
    while (rows.executeStep()) rows_of[rows.getColumn(0).getInt()] = rows.getColumn(1).getInt();
    SQLite::Statement query(database,
                            "SELECT number, at_utc, action, undoes FROM history ORDER BY number");
    std::vector<HistoryEntry> entries;
    std::set<int> undone;
    while (query.executeStep()) {
        const int undoes = query.getColumn(3).isNull() ? 0 : query.getColumn(3).getInt();
        const int number = query.getColumn(0).getInt();
        if (undoes != 0) undone.insert(undoes);
        entries.push_back({.number = number,
                           .at_utc = query.getColumn(1).getString(),
                           .action = query.getColumn(2).getString(),
                           .rows = rows_of[number],
                           .undoes = undoes});
    }
    for (HistoryEntry& entry : entries) entry.undone = undone.contains(entry.number);
    return entries;
}

HistoryRows read_history_rows(SQLite::Database& database, int number) {
    SQLite::Statement query(database,
                            "SELECT kind, id, before, after FROM history_rows "
                            "WHERE number = ? ORDER BY step");
    query.bind(1, number);
    HistoryRows rows;
    while (query.executeStep()) {
        const PartKind kind = part_kind(query.getColumn(0).getString()).kind;
        const std::string id = query.getColumn(1).getString();
        rows.before.push_back({kind, id, state_from(query.getColumn(2), kind)});
        rows.after.push_back({kind, id, state_from(query.getColumn(3), kind)});
    }
    return rows;
}

}  // namespace heatmatch
