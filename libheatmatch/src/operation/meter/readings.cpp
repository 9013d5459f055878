#include "heatmatch/operation/meter/readings.hpp"

#include "sentences.hpp"
#include "text/csv.hpp"

#include <algorithm>
#include <cctype>
#include <limits>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/field_access.hpp"
#include "heatmatch/base/suggestion.hpp"
#include "heatmatch/text/text_file.hpp"

namespace heatmatch {

using meter_sentences::say;

namespace {

constexpr Unit second{"s", Dimension::time};

std::string without_spaces(std::string_view text) {
    std::string result;
    for (const char c : text) {
        if (c != ' ' && c != '\t') result += c;
    }
    return result;
}

std::string lower(std::string_view text) {
    std::string result = without_spaces(text);
    for (char& c : result) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    return result;
}

bool failed_word(const std::string& word) {
    constexpr auto words = std::to_array<std::string_view>(
        {"nan", "na", "n/a", "null", "none", "open", "err", "error", "fault", "---", "--", "-"});
    return std::find(words.begin(), words.end(), word) != words.end();
}

/// A cell as a number; NaN for a failed reading, infinite for a resistance beyond the meter's
/// range.
double read_cell(const Field& field, const std::string& cell, const std::string& part) {
    constexpr double nan = std::numeric_limits<double>::quiet_NaN();
    const std::string word = lower(cell);
    const bool beyond = word == "ol" || word == "o.l" || word == "0l" || word == "inf" ||
                        word == "infinite" || word == "over";
    if (field.unit == unit::ohm && (beyond || word == "open")) {
        return std::numeric_limits<double>::infinity();
    }
    if (beyond || failed_word(word)) return nan;
    return read_quantity(field, cell, part);
}

std::vector<const Field*> read_header(const CsvRecord& header, const std::string& origin) {
    std::vector<const Field*> columns;
    for (const std::string& cell : header.cells) {
        const std::string name = without_spaces(cell);
        const Field* field = find_field(reading_fields(), name);
        if (field == nullptr) {
            throw InvalidInput(ErrorDetail{.part = origin,
                                           .field = "column " + quote(name),
                                           .allowed = "a field of a reading",
                                           .remedy = suggestion(name, reading_fields())});
        }
        if (std::find(columns.begin(), columns.end(), field) != columns.end()) {
            throw InvalidInput(ErrorDetail{.part = origin,
                                           .field = "column " + quote(name),
                                           .value = "a second one",
                                           .allowed = "given once",
                                           .remedy = say<"readings.given_twice">()});
        }
        columns.push_back(field);
    }
    return columns;
}

}  // namespace

std::span<const Field> reading_fields() {
    // Ranges reject values that no meter shows; wrong units are detected by comparison with the
    // circuit.
    static constexpr Range volts{.low = -1e7, .high = 1e7};
    static constexpr Range amperes{.low = -1e6, .high = 1e6};
    static constexpr Range ohms{.low = 0.0, .high = std::numeric_limits<double>::infinity()};
    static constexpr Range celsius{.low = -1e5, .high = 1e5};
    const auto number = [](std::string_view name, const Unit& unit, const Range& range,
                           std::string_view meaning) {
        return Field{.name = name,
                     .kind = FieldKind::number,
                     .unit = unit,
                     .range = range,
                     .meaning = meaning};
    };
    static const auto fields = std::to_array<Field>({
        bind<&Reading::unix_time_s>(
            number("unix_time_s", second, {.low = 0.0, .high = 1e11}, "seconds since 1970, UTC")),
        bind<&Reading::irradiance_w_m2>(number("irradiance_w_m2", unit::watt_per_m2,
                                               {.low = -1e4, .high = 1e6},
                                               "sun on the plane of the panels")),
        bind<&Reading::panel_temperature_c>(
            number("panel_temperature_c", unit::celsius, celsius, "back of a panel")),
        bind<&Reading::array_v>(
            number("array_v", unit::volt, volts, "volts at the array while it heats")),
        bind<&Reading::bank_v>(number("bank_v", unit::volt, volts, "volts at the bank")),
        bind<&Reading::bank_a>(number("bank_a", unit::ampere, amperes, "amperes of the bank")),
        bind<&Reading::open_v>(
            number("open_v", unit::volt, volts, "volts of the array, disconnected")),
        bind<&Reading::short_a>(
            number("short_a", unit::ampere, amperes, "amperes of the array, shorted")),
        bind<&Reading::element_ohm>(
            number("element_ohm", unit::ohm, ohms, "one element, cold and disconnected")),
        bind<&Reading::bank_ohm>(
            number("bank_ohm", unit::ohm, ohms, "the bank, cold and disconnected")),
        bind<&Reading::sheath_c>(number("sheath_c", unit::celsius, celsius, "hottest sheath")),
        bind<&Reading::store_c>(number("store_c", unit::celsius, celsius, "bulk of the store")),
        bind<&Reading::air_c>(number("air_c", unit::celsius, celsius, "air outdoors")),
    });
    return fields;
}

Readings read_readings_csv(std::string_view text_or_path) {
    const bool is_text = text_or_path.find('\n') != std::string_view::npos;
    const std::string origin = is_text ? "readings" : std::string(text_or_path);
    const std::string text = is_text ? std::string(text_or_path) : read_text_file(origin);
    const std::vector<CsvRecord> records = read_csv(text, origin);
    if (records.empty()) {
        throw InvalidInput(ErrorDetail{.part = origin,
                                       .field = "header",
                                       .value = "(missing)",
                                       .allowed = "a line of field names",
                                       .remedy = say<"readings.begin_with">(
                                           with<"columns">(Name{"unix_time_s,bank_v,bank_a"}))});
    }
    const std::vector<const Field*> columns = read_header(records.front(), origin);
    Readings readings;
    for (std::size_t r = 1; r < records.size(); ++r) {
        const CsvRecord& record = records[r];
        const std::string part = origin + ", line " + std::to_string(record.line);
        if (record.cells.size() > columns.size()) {
            throw InvalidInput(ErrorDetail{.part = part,
                                           .field = "cells",
                                           .value = std::to_string(record.cells.size()),
                                           .allowed = "at most " + std::to_string(columns.size()),
                                           .remedy = say<"readings.decimal_point">()});
        }
        Reading reading;
        for (std::size_t c = 0; c < record.cells.size(); ++c) {
            if (lower(record.cells[c]).empty()) continue;
            columns[c]->set(&reading, read_cell(*columns[c], record.cells[c], part));
        }
        readings.rows.push_back(reading);
    }
    return readings;
}

}  // namespace heatmatch
