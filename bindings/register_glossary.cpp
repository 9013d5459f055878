#include "docs_glossary.hpp"
#include "pybind.hpp"

#include <span>

#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/setting/installation.hpp"

namespace heatmatch::python {

namespace {

/// Entries of a field table, as dicts.
py::list entries_of(std::span<const Field> table) {
    py::list fields;
    for (const Field& field : table) {
        py::list words;
        for (const std::string_view word : field.words) words.append(std::string(word));
        py::list columns;
        for (const Column& column : field.columns) {
            columns.append(py::make_tuple(std::string(column.name), std::string(column.unit.symbol),
                                          std::string(column.meaning)));
        }
        py::dict entry;
        entry["name"] = std::string(field.name);
        entry["kind"] = static_cast<int>(field.kind);
        entry["unit"] = std::string(field.unit.symbol);
        entry["range"] = field.kind == FieldKind::number || field.kind == FieldKind::count
                             ? field.range.text(field.unit)
                             : std::string();
        entry["required"] = field.required;
        entry["meaning"] = std::string(field.meaning);
        entry["careful"] = std::holds_alternative<std::monostate>(field.careful)
                               ? std::string()
                               : format_value(field, field.careful) + " (" +
                                     std::string(field.careful_source) + ")";
        entry["words"] = words;
        entry["columns"] = columns;
        entry["refers_to"] = std::string(field.refers_to);
        fields.append(entry);
    }
    return fields;
}

}  // namespace

void register_glossary(py::module_& module) {
    module.def(
        "glossary",
        [] {
            py::dict all;
            for (const PartKindInfo& info : part_kinds()) {
                all[py::str(std::string(info.name))] = entries_of(info.fields);
            }
            return all;
        },
        docs::glossary);
    module.def(
        "installation_glossary",
        [] {
            py::dict all;
            const auto add = [&all](const char* name, std::span<const Field> table) {
                all[name] = entries_of(table);
            };
            add("site", site_fields());
            add("weather", monthly_normals_fields());
            add("panels", owned_panels_fields());
            add("panels.measured", panel_measurement_fields());
            add("elements", allowed_elements_fields());
            add("elements.any", element_filter_fields());
            add("store", store_fields());
            add("runs", wire_run_fields());
            add("runs.surroundings", surroundings_fields());
            add("devices", device_fields());
            add("space", space_fields());
            add("space.covers", cover_area_fields());
            add("goals", goals_fields());
            add("circuit", existing_circuit_fields());
            return all;
        },
        docs::installation_glossary);
}

}  // namespace heatmatch::python
