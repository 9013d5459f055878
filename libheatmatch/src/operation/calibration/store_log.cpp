#include "heatmatch/operation/calibration/store_log.hpp"

#include "sentences.hpp"
#include "text/csv.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/plain_text.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using calibration_sentences::say;

namespace {

constexpr double not_read = std::numeric_limits<double>::quiet_NaN();
constexpr double open_low_c = -150.0;
constexpr double open_high_c = 1250.0;

[[noreturn]] void refuse(const std::string& field, const std::string& value,
                         const std::string& allowed, Sentence remedy) {
    throw InvalidInput({.part = "log of the store",
                        .field = field,
                        .value = value,
                        .allowed = allowed,
                        .remedy = std::move(remedy)});
}

std::string in_row(const char* field, std::size_t row) {
    return std::string(field) + " in row " + std::to_string(row);
}

void check_probe(const Probe& probe) {
    if (word_of(probe.place).empty()) {
        refuse("place of \"" + probe.name + '"', std::to_string(static_cast<int>(probe.place)),
               "bed, wall, lid or sheath", say<"calibration.say_place">());
    }
    if (probe.place != ProbePlace::bed) return;
    if (!probe.radius_m || !probe.height_m) {
        refuse("\"" + probe.name + '"', "without radius or height", "both",
               say<"calibration.measure_place">());
    }
}

void check_rows(const StoreLog& log) {
    const std::size_t rows = log.size();
    const auto expect = [rows](const std::string& field, std::size_t found) {
        if (found == rows) return;
        refuse(field, std::to_string(found) + " values",
               std::to_string(rows) + " values, as hours has", say<"calibration.each_row">());
    };
    expect("power_w", log.power_w.size());
    expect("air_c", log.air_c.size());
    if (log.temperature_c.size() != log.probes.size() || log.probes.empty()) {
        refuse("temperature_c", std::to_string(log.temperature_c.size()) + " lists",
               "one for each probe, at least one", say<"calibration.name_probes">());
    }
    for (std::size_t i = 0; i < log.probes.size(); ++i) {
        check_probe(log.probes[i]);
        expect("temperature of \"" + log.probes[i].name + '"', log.temperature_c[i].size());
    }
    if (rows < 2)
        refuse("rows", std::to_string(rows), "at least 2", say<"calibration.log_hours">());
    for (std::size_t row = 0; row < rows; ++row) {
        if (!std::isfinite(log.hours[row]) || (row > 0 && log.hours[row] <= log.hours[row - 1])) {
            refuse(in_row("hours", row), format_number(log.hours[row]) + " h",
                   row == 0 ? "a number" : "after " + format_number(log.hours[row - 1]) + " h",
                   say<"calibration.sort_rows">());
        }
        if (!(log.power_w[row] >= 0.0 && log.power_w[row] <= 1e5)) {
            refuse(in_row("power_w", row), format_number(log.power_w[row]) + " W", "0 to 100000 W",
                   say<"calibration.power">());
        }
        if (!(log.air_c[row] >= -60.0 && log.air_c[row] <= 80.0)) {
            refuse(in_row("air_c", row), format_number(log.air_c[row]) + " °C", "-60 to 80 °C",
                   say<"calibration.air">());
        }
    }
}

/// A probe whose value is constant while the store is heated is stuck.
bool is_stuck(const std::vector<double>& list) {
    constexpr double moves_k = 0.05;
    double low = std::numeric_limits<double>::infinity();
    double high = -low;
    std::size_t count = 0;
    for (const double each : list) {
        if (!std::isfinite(each)) continue;
        low = std::min(low, each);
        high = std::max(high, each);
        ++count;
    }
    return count > 3 && high - low < moves_k;
}

/// First of the readings after which a probe is constant although the store is heated. Failed
/// readings in between, or at the end, are skipped.
std::size_t frozen_from(const std::vector<double>& list, const std::vector<double>& power_w) {
    constexpr double moves_k = 0.005;
    const auto last =
        std::find_if(list.rbegin(), list.rend(), [](double each) { return std::isfinite(each); });
    if (last == list.rend()) return list.size();
    std::size_t first = list.size();
    int heated = 0;
    for (std::size_t row = list.size(); row-- > 0;) {
        if (!std::isfinite(list[row])) continue;
        if (std::fabs(list[row] - *last) >= moves_k) break;
        first = row;
        heated += power_w[row] > 0.0 ? 1 : 0;
    }
    constexpr int shortest = 12;
    return heated >= shortest ? first : list.size();
}

void leave_out(StoreLog& log, std::size_t probe, std::size_t from, Sentence why) {
    auto& list = log.temperature_c[probe];
    std::fill(list.begin() + static_cast<std::ptrdiff_t>(from), list.end(), not_read);
    auto named = with<"probe">(log.probes[probe].name);
    auto because = with<"why">(std::move(why));
    log.remarks.push_back(from > 0 ? say<"calibration.left_out_from">(
                                         named, with<"row">(static_cast<double>(from)), because)
                                   : say<"calibration.left_out">(named, because));
}

void leave_out_faults(StoreLog& log) {
    bool any_moves = false;
    for (const auto& list : log.temperature_c) any_moves = any_moves || !is_stuck(list);
    for (std::size_t i = 0; i < log.probes.size(); ++i) {
        auto& list = log.temperature_c[i];
        std::size_t open = 0;
        for (double& each : list) {
            if (!(each < open_low_c || each > open_high_c)) continue;
            each = not_read;
            ++open;
        }
        if (open > 0) {
            log.remarks.push_back(say<"calibration.open_probe">(
                with<"readings">(static_cast<double>(open)), with<"probe">(log.probes[i].name),
                with<"low">(
                    Amount{.value = open_low_c, .unit = unit::celsius, .shown = Shown::number}),
                with<"high">(open_high_c, unit::celsius)));
        }
        if (is_stuck(list)) {
            leave_out(
                log, i, 0,
                any_moves ? say<"calibration.others_move">() : say<"calibration.is_heated">());
            continue;
        }
        const std::size_t frozen = frozen_from(list, log.power_w);
        if (frozen < list.size()) leave_out(log, i, frozen, say<"calibration.frozen">());
    }
}

double number_of(const std::string& cell, const std::string& column, std::size_t line) {
    if (cell.empty()) return not_read;
    std::size_t used = 0;
    double value = not_read;
    try {
        value = std::stod(cell, &used);
    } catch (const std::exception&) {
        used = 0;
    }
    if (used == cell.size() && used > 0) return value;
    refuse(column + " in line " + std::to_string(line), quote(cell), "a number, or empty",
           say<"calibration.unit_in_name">());
}

Probe probe_of(const std::string& column) {
    const auto at = column.find("_c");
    const std::string word = column.substr(0, at);
    const auto place = find_choice<ProbePlace>(word);
    if (!place) {
        refuse("place of \"" + column + '"', quote(word), "bed, wall, lid or sheath",
               say<"calibration.say_place">());
    }
    Probe probe{.name = column, .place = *place};
    const auto sign = column.find('@');
    if (sign == std::string::npos) return probe;
    const auto comma = column.find_first_of(",;", sign);
    if (comma == std::string::npos) {
        refuse("column", quote(column), "such as \"bed_c@0.12,0.40\"",
               say<"calibration.radius_and_height">());
    }
    probe.radius_m = number_of(column.substr(sign + 1, comma - sign - 1), column, 1);
    probe.height_m = number_of(column.substr(comma + 1), column, 1);
    return probe;
}

}  // namespace

std::size_t StoreLog::readings() const {
    std::size_t count = 0;
    for (const auto& list : temperature_c) {
        count += static_cast<std::size_t>(std::count_if(
            list.begin(), list.end(), [](double each) { return std::isfinite(each); }));
    }
    return count;
}

StoreLog checked_log(StoreLog log) {
    check_rows(log);
    leave_out_faults(log);
    return log;
}

StoreLog store_log_from_csv(std::string_view text) {
    const std::vector<CsvRecord> records = read_csv(text, "log of the store");
    if (records.empty()) {
        refuse("header", "(missing)", "hours, power_w, air_c and a column for each probe",
               say<"calibration.name_columns">());
    }
    StoreLog log;
    std::vector<std::vector<double>*> columns;
    const std::vector<std::string>& names = records.front().cells;
    std::set<std::string> seen;
    std::size_t probes = 0;
    for (const std::string& name : names) {
        if (!is_plain_text(name)) {
            refuse("column", quote(name), "text in UTF-8 without control characters",
                   say<"calibration.name_columns">());
        }
        if (!seen.insert(name).second) {
            refuse("column", quote(name) + " twice", "there once", say<"calibration.drop_one">());
        }
        if (name != "hours" && name != "power_w" && name != "air_c") ++probes;
    }
    for (const char* needed : {"hours", "power_w", "air_c"}) {
        if (seen.contains(needed)) continue;
        refuse("header", std::string("without ") + needed,
               "hours, power_w, air_c and a column for each probe",
               say<"calibration.add_column">());
    }
    log.temperature_c.resize(probes);
    for (const std::string& name : names) {
        if (name == "hours") {
            columns.push_back(&log.hours);
        } else if (name == "power_w") {
            columns.push_back(&log.power_w);
        } else if (name == "air_c") {
            columns.push_back(&log.air_c);
        } else {
            log.probes.push_back(probe_of(name));
            columns.push_back(&log.temperature_c[log.probes.size() - 1]);
        }
    }
    for (std::size_t i = 1; i < records.size(); ++i) {
        const CsvRecord& record = records[i];
        if (record.cells.size() != columns.size()) {
            refuse("line " + std::to_string(record.line),
                   std::to_string(record.cells.size()) + " cells",
                   std::to_string(columns.size()) + " as the header has",
                   say<"calibration.fill_line">());
        }
        for (std::size_t k = 0; k < columns.size(); ++k) {
            columns[k]->push_back(number_of(record.cells[k], names[k], record.line));
        }
    }
    return checked_log(std::move(log));
}

}  // namespace heatmatch
