#pragma once

#include <string>
#include <vector>

namespace heatmatch {

/// One change of a catalog file: a call, however many rows it touched.
struct HistoryEntry {
    int number = 0;
    std::string at_utc{};  //!< ISO 8601
    std::string action{};  //!< `replace panel "barn-pair"`
    int rows = 0;          //!< that it touched
    int undoes = 0;        //!< number of the entry it took back; 0 for an ordinary change
    bool undone = false;   //!< taken back by a later entry
};

}  // namespace heatmatch
