#pragma once

#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <nlohmann/json.hpp>

#include "heatmatch/base/field.hpp"

namespace heatmatch {

/// Keeps the order of the file, so that the output can be compared with it.
using Json = nlohmann::ordered_json;

/// A parsed file and the first lines of the objects in its lists: `panels` -> {3, 9, ...}.
struct ParsedJson {  // NOLINT(bugprone-exception-escape): the move of the tree throws nothing
    Json root;
    std::map<std::string, std::vector<std::size_t>> lines;
};

/// Parses JSON. Throws InvalidInput with line and column for broken text, for a key given twice
/// and for nesting deeper than 32.
[[nodiscard]] ParsedJson parse_json(std::string_view text, std::string_view origin);

/// Sets a record from an object. Keys neither in the field table nor in `other_keys` are rejected,
/// naming the nearest known one. Values are checked against their fields.
void read_record(std::span<const Field> fields, void* record, const Json& object,
                 const std::string& part, std::span<const std::string_view> other_keys = {});

/// The known fields of a record as an object.
[[nodiscard]] Json write_record(std::span<const Field> fields, const void* record);

[[nodiscard]] Value read_value(const Field& field, const Json& json, const std::string& part,
                               std::optional<double> relative_base = std::nullopt);
[[nodiscard]] Json write_value(const Field& field, const Value& value);

/// Rejects anything but an object (or list), naming what is expected there.
void expect_object(const Json& json, const std::string& part);
void expect_array(const Json& json, const std::string& part);

}  // namespace heatmatch
