#pragma once

/// The files of catalog/ and the demo installation, compiled in by the build.
namespace heatmatch::starter {

extern const char panels_json[];
extern const char elements_json[];
extern const char wires_json[];
extern const char insulations_json[];
extern const char controls_json[];
extern const char connectors_json[];
extern const char media_json[];
extern const char alloys_json[];
extern const char sheaths_json[];
extern const char covers_json[];
extern const char sources_json[];
extern const char demo_installation_json[];

}  // namespace heatmatch::starter
