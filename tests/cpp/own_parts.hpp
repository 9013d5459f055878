#pragma once

#include <string>

#include "heatmatch/catalog/catalog.hpp"

/// Read from a nameplate.
inline const heatmatch::Provenance by_label{.source = "label",
                                            .source_kind = heatmatch::SourceKind::nameplate};

/// A panel that the starter does not have.
inline heatmatch::Panel own_panel(const std::string& id, double v_oc = 37.5) {
    return {.id = id, .label = "Own", .v_oc = v_oc, .i_sc = 8.66, .provenance = by_label};
}

inline bool has_panel(const heatmatch::Catalog& catalog, const std::string& id) {
    return catalog.parts().find(heatmatch::PartKind::panel, id).has_value();
}
