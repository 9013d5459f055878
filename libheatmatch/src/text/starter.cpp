#include "heatmatch/text/starter.hpp"

#include "starter_text.hpp"

#include <algorithm>

#include "heatmatch/text/part_json.hpp"

namespace heatmatch {

namespace {

Parts read_starter() {
    Parts parts;
    for (const char* text :
         {starter::panels_json, starter::elements_json, starter::wires_json,
          starter::insulations_json, starter::controls_json, starter::connectors_json,
          starter::media_json, starter::alloys_json, starter::sheaths_json, starter::covers_json}) {
        for (const Part& part : catalog_from_json(text, "starter catalog").rows) parts.put(part);
    }
    for_each_list(parts, [](auto& list, PartKind) {
        std::sort(list.begin(), list.end(),
                  [](const auto& a, const auto& b) { return a.id < b.id; });
    });
    return parts;
}

}  // namespace

const Parts& starter_parts() {
    static const Parts parts = read_starter();
    return parts;
}

std::string_view sources_json() {
    return starter::sources_json;
}

std::string_view demo_installation_json() {
    return starter::demo_installation_json;
}

}  // namespace heatmatch
