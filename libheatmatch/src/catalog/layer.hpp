#pragma once

#include <optional>
#include <string>
#include <vector>

#include <SQLiteCpp/Database.h>

#include "heatmatch/catalog/history.hpp"
#include "heatmatch/parts/parts.hpp"

namespace heatmatch {

/// State of one id in the user's file: absent (the starter's row applies, if there is one), a row,
/// or the removal of the starter's row.
struct RowState {
    std::optional<Part> row{};
    bool removed = false;

    friend bool operator==(const RowState&, const RowState&) = default;
};

/// One row that a change sets.
struct RowChange {
    PartKind kind = PartKind::panel;
    std::string id{};
    RowState state{};
};

[[nodiscard]] RowState read_state(SQLite::Database& database, PartKind kind, const std::string& id);
void write_state(SQLite::Database& database, const RowChange& change);

/// Starter ids removed by the file, by kind and id.
[[nodiscard]] std::vector<std::pair<PartKind, std::string>> removed_ids(SQLite::Database& database);

/// Appends an entry with its rows to the history and returns it.
[[nodiscard]] HistoryEntry append_history(SQLite::Database& database, const std::string& action,
                                          const std::vector<RowChange>& before,
                                          const std::vector<RowChange>& after, int undoes);
[[nodiscard]] std::vector<HistoryEntry> read_history(SQLite::Database& database);
/// Rows of an entry before and after it.
struct HistoryRows {
    std::vector<RowChange> before{};
    std::vector<RowChange> after{};
};
[[nodiscard]] HistoryRows read_history_rows(SQLite::Database& database, int number);

/// The starter's rows, overlaid with those of the file; each kind in order of id.
[[nodiscard]] Parts merge_layer(const Parts& starter, SQLite::Database& database);

/// A reference of a part to a missing one: `wire "x" names insulation "y"`.
struct BrokenReference {
    PartKind from_kind = PartKind::panel;
    std::string from_id{};
    std::string field{};
    std::string to_kind{};
    std::string to_id{};

    [[nodiscard]] std::string text() const;
};
[[nodiscard]] std::vector<BrokenReference> broken_references(const Parts& parts);

}  // namespace heatmatch
