#pragma once

#include <string>
#include <vector>

namespace heatmatch {

/// One change of a catalog file: a call, however many rows it touched.
struct HistoryEntry {
    int number = 0;
    std::string at_utc{};  //!< ISO 8601
    std::string action{};  //!< `replace panel "barn-pair"`
    int rows = 0;          //!< number of rows changed
    int undoes = 0;        //!< number of the entry that it undoes; 0 for an ordinary change
    bool undone = false;   //!< undone by a later entry
};

}  // namespace heatmatch
