#include "duty_means.hpp"

#include "sentences_of_duties.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include "heatmatch/match/margins/bonding_margin.hpp"
#include "heatmatch/match/margins/limits.hpp"
#include "heatmatch/parts/wire_kind.hpp"

namespace heatmatch {

namespace {

using candidate_sentences::of_duties::say;

Sentences as_names(const std::vector<std::string>& texts) {
    Sentences names;
    for (const std::string& text : texts) names.push_back(sentence_of(Name{text}));
    return names;
}

OpeningSite duty_site(const Site& site) {
    return {.floating = site.earthing != Earthing::grounded,
            .irradiance_w_m2 = site.bright_irradiance_w_m2};
}

/// How a detector meets a duty, by the devices that it opens.
MeansHere means_of_detector(const Circuit& circuit, const PlacedDevice& placed, const Site& site,
                            bool must_open) {
    MeansHere found{.devices = {placed.control.id}};
    const std::string& device = placed.control.id;
    if (operated_of(placed.control) == OperatedKind::by_current) {
        found.met_by = must_open ? DutyMeans::not_met : DutyMeans::nobody_stated;
        found.here = must_open ? say<"duty.finds_half">(with<"device">(device))
                               : say<"duty.earth_fuse">(with<"device">(device));
        return found;
    }
    if (!must_open) {
        found.met_by = DutyMeans::a_device;
        found.here = say<"duty.finds">(with<"device">(device));
        return found;
    }
    const Opening opening = opens(circuit, placed, Occasion::fault, duty_site(site));
    if (opening.answer == Answer::yes) {
        found.met_by = DutyMeans::a_device;
        found.here =
            say<"duty.finds_and_opens">(with<"device">(device), with<"breaker">(opening.breaker));
        if (opening.breaker != device) found.devices.push_back(opening.breaker);
        return found;
    }
    found.met_by = opening.answer == Answer::no ? DutyMeans::not_met : DutyMeans::nobody_stated;
    found.missing = opening.missing;
    found.here = say<"duty.finds_only">(with<"device">(device), with<"why">(opening.why));
    return found;
}

bool insulated_for(const Circuit& circuit) {
    const double volts = circuit.cold_voltage_v();
    return !circuit.runs.empty() &&
           std::all_of(circuit.runs.begin(), circuit.runs.end(), [volts](const RunParts& parts) {
               return parts.wire && parts.insulation && parts.wire->voltage_rating_v &&
                      *parts.wire->voltage_rating_v >= volts;
           });
}

/// Whether it opens without supply: it itself, or a device that drives it.
bool opens_unsupplied(const Circuit& circuit, const PlacedDevice& placed) {
    const auto does = [](const PlacedDevice& each) {
        return each.device.opens_on_supply_loss.value_or(false);
    };
    return does(placed) ||
           std::any_of(circuit.devices.begin(), circuit.devices.end(),
                       [&](const PlacedDevice& other) {
                           const auto& drives = other.device.drives;
                           return does(other) && std::find(drives.begin(), drives.end(),
                                                           placed.control.id) != drives.end();
                       });
}

}  // namespace

MeansHere means_to_find(const Circuit& circuit, const Site& site, DetectedFault fault,
                        bool must_open) {
    MeansHere best{.met_by = DutyMeans::not_met, .here = say<"duty.finds_none">()};
    const auto better = [](DutyMeans a, DutyMeans b) {
        const auto order = [](DutyMeans met) {
            return met == DutyMeans::a_device ? 0 : met == DutyMeans::nobody_stated ? 1 : 2;
        };
        return order(a) < order(b);
    };
    for (const PlacedDevice& placed : circuit.devices) {
        if (placed.control.detects != fault) continue;
        MeansHere found = means_of_detector(circuit, placed, site, must_open);
        if (best.devices.empty() || better(found.met_by, best.met_by)) best = std::move(found);
    }
    return best;
}

MeansHere means_to_disconnect(const Circuit& circuit, const Site& site, bool all_conductors) {
    MeansHere best{.met_by = DutyMeans::not_met, .here = say<"duty.none_by_hand">()};
    OpeningSite at = duty_site(site);
    at.floating = at.floating || all_conductors;
    for (const PlacedDevice& placed : circuit.devices) {
        if (placed.device.duty != Duty::breaks_dc) continue;
        const Opening opening = opens(circuit, placed, Occasion::by_hand, at);
        const std::string& device = placed.control.id;
        if (opening.answer == Answer::yes) {
            return {.met_by = DutyMeans::a_device,
                    .here = say<"duty.by_hand">(with<"device">(device)),
                    .devices = {device}};
        }
        const bool unknown = opening.answer == Answer::unknown;
        if (!best.devices.empty() && (!unknown || best.met_by == DutyMeans::nobody_stated))
            continue;
        best = {.met_by = unknown ? DutyMeans::nobody_stated : DutyMeans::not_met,
                .here = say<"duty.not_by_hand">(with<"device">(device), with<"why">(opening.why)),
                .devices = {device},
                .missing = opening.missing};
    }
    if (best.met_by == DutyMeans::not_met) best.devices.clear();
    return best;
}

MeansHere means_to_shut_down(const Circuit& circuit, const Site& site) {
    for (const PlacedDevice& placed : circuit.devices) {
        const auto operated = operated_of(placed.control);
        const bool commanded =
            operated == OperatedKind::by_coil || operated == OperatedKind::by_signal;
        if (placed.device.duty != Duty::breaks_dc || !commanded) continue;
        const Opening load = opening_load(circuit, placed, duty_site(site));
        const bool rated = load.rated_a && *load.rated_a >= load.amperes;
        if (!rated || !opens_unsupplied(circuit, placed)) continue;
        return {.met_by = DutyMeans::nobody_stated,
                .here = say<"duty.opens_unsupplied">(with<"device">(placed.control.id)),
                .devices = {placed.control.id}};
    }
    return {.met_by = DutyMeans::not_met, .here = say<"duty.none_shuts_down">()};
}

MeansHere means_to_guard(const Circuit& circuit, const Site& site) {
    if (is_bare(circuit.bank)) {
        return {.met_by = DutyMeans::not_met, .here = say<"duty.covers_bare">()};
    }
    if (!site.live_parts_enclosed) {
        return {.here = say<"duty.covers_untold">(), .missing = {"site.live_parts_enclosed"}};
    }
    if (!*site.live_parts_enclosed) {
        return {.met_by = DutyMeans::not_met, .here = say<"duty.no_covers">()};
    }
    if (!insulated_for(circuit)) {
        return {.here = say<"duty.insulation_untold">(), .missing = {"run.wire"}};
    }
    return {.met_by = DutyMeans::as_stated, .here = say<"duty.covers">()};
}

MeansHere means_to_bond(const Circuit& circuit, const Site& site) {
    const bool stored = circuit.heat && circuit.heat->store;
    const BondingGaps gaps = bonding_gaps(site, stored ? &circuit.heat->store->store : nullptr);
    if (!gaps.open.empty()) {
        return {.met_by = DutyMeans::not_met,
                .here = say<"duty.not_bonded">(with<"fields">(as_names(gaps.open)))};
    }
    if (!gaps.not_told.empty()) {
        return {.here = say<"duty.bonds_untold">(with<"fields">(as_names(gaps.not_told))),
                .missing = gaps.not_told};
    }
    return {.met_by = DutyMeans::as_stated, .here = say<"duty.bonded">()};
}

MeansHere means_to_enclose(const Circuit& circuit, const std::vector<const RunParts*>& inside) {
    std::vector<std::string> open;
    std::vector<std::string> untold;
    for (const RunParts* parts : inside) {
        const Surroundings& around = parts->run.surroundings;
        const Insulation* insulation = parts->insulation ? &*parts->insulation : nullptr;
        const bool clad =
            parts->wire && wire_kind(*parts->wire, insulation) == WireKind::metal_clad;
        // In the bed it is part of the heater, inside its vessel.
        const bool in_bed = around.kind == SurroundingsKind::bed;
        if (clad || in_bed || around.metal_raceway.value_or(false)) continue;
        const bool may_be = !around.metal_raceway && around.kind == SurroundingsKind::conduit;
        const bool surely = parts->run.inside.value_or(false) && !may_be;
        (surely ? open : untold).push_back(parts->run.name);
    }
    if (!open.empty()) {
        return {.met_by = DutyMeans::not_met,
                .here = say<"duty.not_in_metal">(with<"runs">(as_names(open)))};
    }
    if (!untold.empty()) {
        return {.here = say<"duty.metal_untold">(with<"runs">(as_names(untold))),
                .missing = {"run.inside", "surroundings.metal_raceway"}};
    }
    if (circuit.runs.empty()) {
        return {.here = say<"duty.metal_untold">(with<"runs">(as_names({"runs"}))),
                .missing = {"runs"}};
    }
    return {.met_by = DutyMeans::as_stated, .here = say<"duty.in_metal">()};
}

}  // namespace heatmatch
