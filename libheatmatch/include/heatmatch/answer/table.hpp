#pragma once

#include <vector>

#include "heatmatch/base/sentence.hpp"

namespace heatmatch {

/// One column of a table: what its head says, and whether its cells are numbers.
struct TableColumn {
    Sentence head{};
    bool number = false;  //!< aligned to the right

    friend bool operator==(const TableColumn&, const TableColumn&) = default;
};

/// A table as data, for whoever lays it out: every row has a cell for each column, and an empty
/// sentence leaves its cell empty.
struct Table {
    Sentence title{};
    std::vector<TableColumn> columns{};
    std::vector<Sentences> rows{};
    Sentences legend{};  //!< what its columns mean

    friend bool operator==(const Table&, const Table&) = default;
};

}  // namespace heatmatch
