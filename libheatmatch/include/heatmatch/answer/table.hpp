#pragma once

#include <vector>

#include "heatmatch/base/sentence.hpp"

namespace heatmatch {

/// One column of a table: its heading, and whether its cells are numbers.
struct TableColumn {
    Sentence head{};
    bool number = false;  //!< aligned to the right

    friend bool operator==(const TableColumn&, const TableColumn&) = default;
};

/// A table as data, before layout. Every row has one cell for each column; an empty sentence leaves
/// its cell empty.
struct Table {
    Sentence title{};
    std::vector<TableColumn> columns{};
    std::vector<Sentences> rows{};
    Sentences legend{};  //!< meaning of the columns

    friend bool operator==(const Table&, const Table&) = default;
};

}  // namespace heatmatch
