#pragma once

#include "demo.hpp"

#include <utility>
#include <vector>

#include "heatmatch/match/candidate/candidate.hpp"

/// A candidate with margins only.
inline heatmatch::Candidate with_margins(std::vector<heatmatch::Margin> margins) {
    heatmatch::Candidate candidate;
    candidate.made = heatmatch::LazyMargins(std::move(margins));
    return candidate;
}

/// Silicon panels into one element; 8.66 A and 43.4 V a panel on the coldest morning.
inline heatmatch::Circuit silicon_circuit(heatmatch::Hookup panels) {
    return bench_circuit("silicon-60-cell-245", panels, "tubular-1000-120", {1, 1});
}

/// A run of that wire with a splice, by its name.
inline heatmatch::RunParts spliced_run(const char* name, const char* wire, double air_c = 30.0) {
    heatmatch::RunParts parts = bench_run(wire, air_c);
    parts.run.name = name;
    parts.connector = heatmatch::find_connector(starter(), "lever-splice");
    return parts;
}
