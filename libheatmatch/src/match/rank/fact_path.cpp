#include "fact_path.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "heatmatch/base/field.hpp"
#include "heatmatch/match/margins/run_ampacity.hpp"

namespace heatmatch {

namespace {

using rank_sentences::say;

bool is_field(std::span<const Field> fields, std::string_view name) {
    return find_field(fields, name) != nullptr;
}

Sentence as_text(const std::string& path) {
    return sentence_of(Name{path});
}

/// A field of a part: inline by its place, otherwise in the catalog.
template <typename Kind>
Sentence of_part(const std::vector<Kind>& inlined, std::string_view list, std::string_view kind,
                 const std::string& id, const std::string& field) {
    for (std::size_t i = 0; i < inlined.size(); ++i) {
        if (inlined[i].id != id) continue;
        return say<"lacks.of_inline">(with<"kind">(list), with<"place">(Name{std::to_string(i)}),
                                      with<"field">(Name{field}));
    }
    return say<"lacks.of_catalog">(with<"field">(Name{field}), with<"kind">(kind),
                                   with<"part">(Name{id}));
}

/// The run of a margin: its subject, or for an element the run at it.
const RunParts* run_of(const Circuit& circuit, const std::string& subject) {
    for (const RunParts& parts : circuit.runs) {
        if (subject == "run \"" + parts.run.name + '"') return &parts;
    }
    return circuit.run_at_element();
}

std::string run_path(const Installation& place, const RunParts& parts) {
    for (std::size_t i = 0; i < place.runs.size(); ++i) {
        if (place.runs[i].name == parts.run.name) return "runs[" + std::to_string(i) + "].";
    }
    return "runs[].";
}

/// Whether the table of a code applies to the wire once it is stated to be in a raceway.
bool applies_in_raceway(const Candidate& candidate, const RunParts& parts) {
    Surroundings inside = parts.run.surroundings;
    if (inside.metal_raceway.value_or(false)) return false;
    inside.metal_raceway = true;
    return run_ampacity(candidate.circuit, parts, candidate.site, inside).missing.empty();
}

Sentence of_wire(const Installation& place, const Candidate& candidate, const RunParts& parts,
                 const std::string& field) {
    Sentence path = of_part(place.parts.wires, "wires", "wire", parts.wire->id, field);
    if (field != "ampacity_a" || !applies_in_raceway(candidate, parts)) return path;
    return say<"lacks.either">(
        with<"path">(as_text(run_path(place, parts) + "surroundings.metal_raceway")),
        with<"other">(std::move(path)));
}

std::optional<Sentence> of_run(const Installation& place, const Candidate& candidate,
                               const std::string& subject, const std::string& field) {
    const RunParts* const parts = run_of(candidate.circuit, subject);
    if (parts == nullptr) return std::nullopt;
    if (field.starts_with("surroundings.")) return as_text(run_path(place, *parts) + field);
    if (field.starts_with("run.")) return as_text(run_path(place, *parts) + field.substr(4));
    if (!subject.starts_with("run ")) return std::nullopt;
    if (is_field(wire_run_fields(), field)) return as_text(run_path(place, *parts) + field);
    if (parts->wire && is_field(wire_fields(), field)) {
        return of_wire(place, candidate, *parts, field);
    }
    if (parts->insulation && is_field(insulation_fields(), field)) {
        return of_part(place.parts.insulations, "insulations", "insulation", parts->insulation->id,
                       field);
    }
    return std::nullopt;
}

}  // namespace

Sentence fact_path(const Installation& place, const Candidate& candidate, const Margin& margin,
                   const std::string& field) {
    constexpr std::string_view whole[] = {"store", "runs", "devices"};
    const bool list = std::find(std::begin(whole), std::end(whole), field) != std::end(whole);
    if (list || field.starts_with("site.") || field.starts_with("store.")) return as_text(field);
    if (auto found = of_run(place, candidate, margin.subject, field)) return *std::move(found);
    const Circuit& circuit = candidate.circuit;
    if (margin.subject.starts_with("panel ") && is_field(panel_fields(), field)) {
        return of_part(place.parts.panels, "panels", "panel", circuit.panel.panel.id, field);
    }
    if (margin.subject.starts_with("element ") && is_field(element_fields(), field)) {
        return of_part(place.parts.elements, "elements", "element", circuit.bank.element.id, field);
    }
    if (is_field(store_fields(), field)) return as_text("store." + field);
    if (is_field(element_fields(), field)) {
        return of_part(place.parts.elements, "elements", "element", circuit.bank.element.id, field);
    }
    return say<"lacks.without_field">(with<"what">(Name{field}),
                                      with<"subject">(Name{margin.subject}));
}

}  // namespace heatmatch
