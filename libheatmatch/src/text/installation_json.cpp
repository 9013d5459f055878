#include "heatmatch/text/installation_json.hpp"

#include "json_record.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <array>

#include "heatmatch/base/error.hpp"

namespace heatmatch {

using text_sentences::say;

namespace {

constexpr std::string_view installation_key = "heatmatch_installation";
constexpr int installation_version = 1;
constexpr auto known_keys = std::to_array<std::string_view>(
    {installation_key, "name", "notes", "site", "weather", "panels", "elements", "store", "runs",
     "devices", "space", "goals", "circuit", "circuits", "parts"});

template <class T>
T read(std::span<const Field> fields, const Json& json, const std::string& part,
       std::span<const std::string_view> other_keys = {}) {
    T record{};
    read_record(fields, &record, json, part, other_keys);
    return record;
}

/// `panels[1] "barn pair"`: the place of an item, with its name where it has one.
std::string place_of(const std::string& list, std::size_t index, const Json& item,
                     const char* name_key) {
    std::string place = list + '[' + std::to_string(index) + ']';
    if (item.is_object()) {
        const auto name = item.find(name_key);
        if (name != item.end() && name->is_string()) {
            place += ' ' + quote(name->get_ref<const std::string&>(), 80);
        }
    }
    return place;
}

template <class Reader>
auto read_list(const Json& json, const std::string& origin, const std::string& list,
               const char* name_key, Reader reader) {
    expect_array(json, origin + ": " + list);
    std::vector<decltype(reader(json, origin))> items;
    for (const Json& item : json) {
        items.push_back(reader(item, origin + ": " + place_of(list, items.size(), item, name_key)));
    }
    return items;
}

/// A shade may be written as one number or as twelve lists of hours: one list of numbers.
Json with_flat_shade(Json json) {
    const auto shade = json.is_object() ? json.find("shade_pct") : json.end();
    if (shade == json.end() || shade->is_null()) return json;
    if (!shade->is_array()) {
        *shade = Json::array({*shade});
        return json;
    }
    const auto is_day = [](const Json& hours) { return hours.is_array() && hours.size() == 24; };
    if (shade->size() != 12 || !std::all_of(shade->begin(), shade->end(), is_day)) return json;
    Json flat = Json::array();
    for (const Json& month : *shade) {
        for (const Json& hour : month) flat.push_back(hour);
    }
    *shade = std::move(flat);
    return json;
}

OwnedPanels read_owned_panels(const Json& given, const std::string& part) {
    const Json json = with_flat_shade(given);
    constexpr auto others = std::to_array<std::string_view>({"measured"});
    auto owned = read<OwnedPanels>(owned_panels_fields(), json, part, others);
    const auto measured = json.find("measured");
    if (measured != json.end() && !measured->is_null()) {
        owned.measured =
            read<PanelMeasurement>(panel_measurement_fields(), *measured, part + " measured");
    }
    check_owned_panels(owned, part);
    return owned;
}

AllowedElements read_allowed_elements(const Json& json, const std::string& part) {
    constexpr auto others = std::to_array<std::string_view>({"any"});
    auto allowed = read<AllowedElements>(allowed_elements_fields(), json, part, others);
    const auto any = json.find("any");
    if (any != json.end() && !any->is_null()) {
        allowed.any = read<ElementFilter>(element_filter_fields(), *any, part + " any");
    }
    check_allowed_elements(allowed, part);
    return allowed;
}

WireRun read_run(const Json& json, const std::string& part) {
    constexpr auto others = std::to_array<std::string_view>({"surroundings"});
    auto run = read<WireRun>(wire_run_fields(), json, part, others);
    const auto surroundings = json.find("surroundings");
    if (surroundings != json.end() && !surroundings->is_null()) {
        run.surroundings =
            read<Surroundings>(surroundings_fields(), *surroundings, part + " surroundings");
    }
    return run;
}

Space read_space(const Json& json, const std::string& origin) {
    constexpr auto others = std::to_array<std::string_view>({"covers"});
    auto space = read<Space>(space_fields(), json, origin + ": space", others);
    const auto covers = json.find("covers");
    if (covers != json.end() && !covers->is_null()) {
        space.covers = read_list(*covers, origin, "space covers", "cover",
                                 [](const Json& item, const std::string& part) {
                                     return read<CoverArea>(cover_area_fields(), item, part);
                                 });
    }
    return space;
}

Parts read_parts(const Json& json, const std::string& origin) {
    expect_object(json, origin + ": parts");
    Parts parts;
    for (const auto& item : json.items()) {
        const PartKindInfo& info = part_kind(item.key());
        expect_array(item.value(), origin + ": parts " + item.key());
        std::size_t parts_read = 0;
        for (const Json& object : item.value()) {
            Part part = make_part(info.kind);
            const std::string title =
                origin + ": " + place_of(std::string(info.name), parts_read++, object, "id");
            read_record(info.fields, part_record(part), object, title);
            check_part(part);
            if (parts.find(info.kind, part_id(part))) {
                throw InvalidInput(ErrorDetail{.part = title,
                                               .field = "id",
                                               .value = part_id(part),
                                               .allowed = "unique among " + item.key(),
                                               .remedy = say<"text.rename_or_remove">()});
            }
            parts.put(part);
        }
    }
    return parts;
}

/// A text of the installation itself.
std::string read_text(std::string_view name, const Json& json, const std::string& origin) {
    const Field field{.name = name, .kind = FieldKind::text, .meaning = name};
    const Value value = read_value(field, json, origin);
    check_value(field, value, origin);
    const auto* const given = std::get_if<std::string>(&value);
    return given == nullptr ? std::string() : *given;
}

void check_installation_version(const Json& root, const std::string& origin) {
    const auto found = root.find(std::string(installation_key));
    const bool fits =
        found != root.end() && found->is_number_integer() && *found == installation_version;
    if (fits) return;
    throw InvalidInput(ErrorDetail{
        .part = origin,
        .field = std::string(installation_key),
        .value = found == root.end() ? "(missing)" : found->dump().substr(0, 40),
        .allowed = "1",
        .remedy =
            say<"text.begins_with">(with<"beginning">(R"({"heatmatch_installation": 1, ...})"))});
}

template <class T>
void write_if(Json& root, const char* key, const std::optional<T>& record,
              std::span<const Field> fields) {
    if (record) root[key] = write_record(fields, &*record);
}

Json write_parts(const Parts& parts) {
    Json object = Json::object();
    for (const Part& part : list_parts(parts)) {
        const PartKindInfo& info = part_kind(part);
        object[std::string(info.plural)].push_back(write_record(info.fields, part_record(part)));
    }
    return object;
}

}  // namespace

Installation installation_from_json(std::string_view text, std::string_view origin_text) {
    const std::string origin(origin_text);
    const Json root = parse_json(text, origin).root;
    expect_object(root, origin);
    check_installation_version(root, origin);
    Installation installation;
    read_record({}, &installation, root, origin, known_keys);
    const auto with = [&root](const char* key, auto use) {
        const auto found = root.find(key);
        if (found != root.end() && !found->is_null()) use(*found);
    };
    const auto site = root.find("site");
    if (site == root.end() || site->is_null()) {
        throw InvalidInput(ErrorDetail{.part = origin,
                                       .field = "site",
                                       .value = "(missing)",
                                       .allowed = "given",
                                       .remedy = say<"text.at_least">(heatmatch::with<"example">(
                                           R"({"record_low_c": -20})"))});
    }
    with("name", [&](const Json& json) { installation.name = read_text("name", json, origin); });
    with("notes", [&](const Json& json) { installation.notes = read_text("notes", json, origin); });
    with("site", [&](const Json& json) {
        installation.site = read<Site>(site_fields(), json, origin + ": site");
        check_site(installation.site);
    });
    with("weather", [&](const Json& json) {
        installation.weather =
            read<MonthlyNormals>(monthly_normals_fields(), json, origin + ": weather");
        check_monthly_normals(*installation.weather);
        check_record_low(installation.site, *installation.weather);
    });
    with("panels", [&](const Json& json) {
        installation.panels = read_list(json, origin, "panels", "group", read_owned_panels);
    });
    with("elements", [&](const Json& json) {
        installation.elements =
            read_list(json, origin, "elements", "element", read_allowed_elements);
    });
    with("store", [&](const Json& json) {
        installation.store = read<Store>(store_fields(), json, origin + ": store");
    });
    with("runs", [&](const Json& json) {
        installation.runs = read_list(json, origin, "runs", "name", read_run);
    });
    with("devices", [&](const Json& json) {
        installation.devices = read_list(json, origin, "devices", "part",
                                         [](const Json& item, const std::string& part) {
                                             return read<Device>(device_fields(), item, part);
                                         });
    });
    with("space", [&](const Json& json) { installation.space = read_space(json, origin); });
    with("goals", [&](const Json& json) {
        installation.goals = read<Goals>(goals_fields(), json, origin + ": goals");
    });
    with("circuit", [&](const Json& json) {
        installation.circuit =
            read<ExistingCircuit>(existing_circuit_fields(), json, origin + ": circuit");
    });
    with("circuits", [&](const Json& json) {
        installation.circuits = read_list(
            json, origin, "circuits", "name", [](const Json& item, const std::string& part) {
                return read<ExistingCircuit>(existing_circuit_fields(), item, part);
            });
    });
    with("parts", [&](const Json& json) { installation.parts = read_parts(json, origin); });
    return installation;
}

std::string installation_to_json(const Installation& installation) {
    Json root = Json::object();
    root[std::string(installation_key)] = installation_version;
    if (!installation.name.empty()) root["name"] = installation.name;
    if (!installation.notes.empty()) root["notes"] = installation.notes;
    root["site"] = write_record(site_fields(), &installation.site);
    write_if(root, "weather", installation.weather, monthly_normals_fields());
    for (const OwnedPanels& owned : installation.panels) {
        Json object = write_record(owned_panels_fields(), &owned);
        write_if(object, "measured", owned.measured, panel_measurement_fields());
        root["panels"].push_back(std::move(object));
    }
    for (const AllowedElements& allowed : installation.elements) {
        Json object = write_record(allowed_elements_fields(), &allowed);
        write_if(object, "any", allowed.any, element_filter_fields());
        root["elements"].push_back(std::move(object));
    }
    write_if(root, "store", installation.store, store_fields());
    for (const WireRun& run : installation.runs) {
        Json object = write_record(wire_run_fields(), &run);
        object["surroundings"] = write_record(surroundings_fields(), &run.surroundings);
        root["runs"].push_back(std::move(object));
    }
    for (const Device& device : installation.devices) {
        root["devices"].push_back(write_record(device_fields(), &device));
    }
    if (installation.space) {
        Json object = write_record(space_fields(), &*installation.space);
        for (const CoverArea& area : installation.space->covers) {
            object["covers"].push_back(write_record(cover_area_fields(), &area));
        }
        root["space"] = std::move(object);
    }
    Json goals = write_record(goals_fields(), &installation.goals);
    if (!goals.empty()) root["goals"] = std::move(goals);
    write_if(root, "circuit", installation.circuit, existing_circuit_fields());
    for (const ExistingCircuit& circuit : installation.circuits) {
        root["circuits"].push_back(write_record(existing_circuit_fields(), &circuit));
    }
    Json parts = write_parts(installation.parts);
    if (!parts.empty()) root["parts"] = std::move(parts);
    return root.dump(2) + '\n';
}

}  // namespace heatmatch
