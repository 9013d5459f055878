#pragma once

#include <fstream>
#include <map>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

/// One row of a reference file: column name -> text.
using ReferenceRow = std::map<std::string, std::string>;

inline std::vector<std::string> split_csv(const std::string& line) {
    std::vector<std::string> cells(1);
    bool quoted = false;
    for (char c : line) {
        if (c == '"') {
            quoted = !quoted;
        } else if (c == ',' && !quoted) {
            cells.emplace_back();
        } else {
            cells.back() += c;
        }
    }
    return cells;
}

/// Reads a CSV file of tests/reference; lines that begin with # are its sources.
inline std::vector<ReferenceRow> read_reference(const std::string& name) {
    std::ifstream file(std::string(HEATMATCH_REFERENCE_DIR) + "/" + name);
    if (!file) throw std::runtime_error("no reference file " + name);
    std::vector<std::string> header;
    std::vector<ReferenceRow> rows;
    for (std::string line; std::getline(file, line);) {
        if (line.empty() || line[0] == '#') continue;
        const std::vector<std::string> cells = split_csv(line);
        if (header.empty()) {
            header = cells;
            continue;
        }
        ReferenceRow row;
        for (std::size_t i = 0; i < header.size() && i < cells.size(); ++i)
            row[header[i]] = cells[i];
        rows.push_back(row);
    }
    return rows;
}

inline double number(const ReferenceRow& row, const std::string& column) {
    return std::stod(row.at(column));
}
