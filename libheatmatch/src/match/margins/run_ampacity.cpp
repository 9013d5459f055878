#include "heatmatch/match/margins/run_ampacity.hpp"

#include "insulation_limit.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "heatmatch/base/awg.hpp"
#include "heatmatch/heat/air.hpp"
#include "heatmatch/parts/ampacity_correction.hpp"
#include "heatmatch/parts/wire_kind.hpp"

namespace heatmatch {

namespace {

constexpr double terminals_c = 60.0;
constexpr double large_terminals_c = 75.0;
constexpr double largest_small_awg = 1.0;
constexpr double special_c = 90.0;  // types whose higher rating applies to special applications
                                    // only
// Nickel plate conducts less than the copper of columns not for nickel.
constexpr double nickel_plate_share = 0.87;
constexpr double nickel_column_c = 250.0;
constexpr double hot_column_c = 150.0;

/// Input of the tables for a wire.
struct Laid {
    const Circuit& circuit;
    const RunParts& run;
    const Wire& wire;
    const Surroundings& around;
    WireKind kind = WireKind::unknown;
    bool at_element = false;
    std::optional<InsulationLimit> insulation{};
    std::optional<double> rating_c{};
};

/// Result of one code.
struct CodeFigure {
    std::optional<double> table_a{};
    std::optional<double> corrected_a{};
    std::string source{};
    bool terminals = false;
    bool limited = false;
    bool beyond = false;
};

std::optional<double> rating_of(const Laid& laid) {
    if (!laid.insulation) return std::nullopt;
    double rating_c = laid.insulation->limit_c;
    const bool special = laid.kind == WireKind::dry_building && !laid.at_element;
    if (special) rating_c = std::min(rating_c, special_c);
    return std::min(rating_c, conductor_limit_c(laid.wire));
}

/// A value for an installation method with less cooling also applies.
bool holds_for(LayingMethod figure, LayingMethod method) {
    if (figure == method) return true;
    if (method == LayingMethod::free_air)
        return figure == LayingMethod::bundle || figure == LayingMethod::raceway;
    return method == LayingMethod::bundle && figure == LayingMethod::raceway;
}

std::optional<TabulatedAmpacity> of_table(const Laid& laid, WiringCode code, LayingMethod method) {
    if (laid.wire.conductor && laid.wire.conductor != ConductorMetal::copper) return std::nullopt;
    const AmpacityGroup group = ampacity_group(laid.kind);
    auto found = tabulated_ampacity(code, method, group, laid.wire.area_mm2, *laid.rating_c);
    // Insulation with a limit below any column: the coolest column, corrected for that limit.
    if (!found) found = coolest_ampacity(code, method, group, laid.wire.area_mm2);
    if (found && laid.wire.plating == Plating::nickel && found->conductor_c >= hot_column_c &&
        found->conductor_c < nickel_column_c) {
        found->current_a *= nickel_plate_share;
    }
    return found;
}

std::optional<TabulatedAmpacity> of_its_own(const Laid& laid, LayingMethod method) {
    const Wire& wire = laid.wire;
    if (!wire.ampacity_a || !wire.ampacity_method) return std::nullopt;
    if (!holds_for(*wire.ampacity_method, method)) return std::nullopt;
    return TabulatedAmpacity{.current_a = *wire.ampacity_a,
                             .ambient_c = *wire.ampacity_ambient_c,
                             .conductor_c = *wire.ampacity_conductor_c};
}

std::string source_of_own(const Wire& wire) {
    const auto& of = wire.provenance.source_of;
    const auto found = of.find("ampacity_a");
    return found == of.end() ? wire.provenance.source : found->second;
}

/// Column permitted by the terminals of devices in the run: the marking of each, 60 °C without a
/// marking, and never more than 75 °C; empty without a device.
struct DeviceTerminals {
    std::optional<double> column_c{};
    bool marked = true;
};
DeviceTerminals device_terminals(const Laid& laid) {
    DeviceTerminals found;
    for (const PlacedDevice& placed : laid.circuit.devices) {
        if (placed.device.run != laid.run.run.name || placed.device.duty == Duty::senses_only)
            continue;
        const auto& marked_c = placed.control.terminal_limit_c;
        const double column_c = std::min(marked_c.value_or(terminals_c), large_terminals_c);
        found.column_c = std::min(found.column_c.value_or(column_c), column_c);
        found.marked = found.marked && marked_c;
    }
    return found;
}

/// Column for the joints; empty where the rule does not apply. Cables of the 60 °C column count as
/// such.
std::optional<double> joints_c(const Laid& laid) {
    if (laid.kind == WireKind::indoor_cable || laid.kind == WireKind::feeder_cable)
        return terminals_c;
    const auto& connector = laid.run.connector;
    const bool own_limit =
        laid.at_element || (connector && connector->place.value_or(ConnectorPlace::cold_end) !=
                                             ConnectorPlace::cold_end);
    if (own_limit) return std::nullopt;
    const bool large = laid.wire.area_mm2 > 1.02 * awg_area_mm2(largest_small_awg);
    return large ? large_terminals_c : terminals_c;
}

/// Column of the NEC for terminals. Below its coolest column the permitted rise above the air of
/// the table is smaller: I' = I sqrt((Tc' - Ta)/(Tc - Ta)). @cite nec-310-15-ambient
std::optional<double> at_terminals_a(const Laid& laid, double counted_c) {
    if (laid.wire.conductor && laid.wire.conductor != ConductorMetal::copper) return std::nullopt;
    constexpr auto raceway = LayingMethod::raceway;
    constexpr auto single = AmpacityGroup::single;
    const double area_mm2 = laid.wire.area_mm2;
    const auto column = tabulated_ampacity(WiringCode::nec, raceway, single, area_mm2, counted_c);
    if (column) return column->current_a;
    const auto coolest = coolest_ampacity(WiringCode::nec, raceway, single, area_mm2);
    if (!coolest) return std::nullopt;
    const double rise_k = std::max(0.0, counted_c - coolest->ambient_c);
    return coolest->current_a * std::sqrt(rise_k / (coolest->conductor_c - coolest->ambient_c));
}

void take_smaller(std::optional<double>& smallest, const std::optional<double>& other) {
    if (other) smallest = std::min(smallest.value_or(*other), *other);
}

/// A value for a cooler conductor than that of this wire, in air that is too hot for that
/// conductor, does not apply to it.
bool is_beyond(const Laid& laid, WiringCode code, const TabulatedAmpacity& figure,
               double ambient_c) {
    return figure.conductor_c < *laid.rating_c && ambient_c < *laid.rating_c &&
           ambient_factor(code, figure, *laid.rating_c, ambient_c) <= 0.0;
}

int loaded_together(const Surroundings& around, LayingMethod method) {
    return method == LayingMethod::free_air ? 1 : around.loaded_conductors.value_or(2);
}

double roof_rise(const Laid& laid, LayingMethod method) {
    const Surroundings& around = laid.around;
    if (method != LayingMethod::raceway) return 0.0;
    if (laid.wire.marking.find("XHHW-2") != std::string::npos) return 0.0;
    if (around.roof_distance_mm) return roof_rise_k(*around.roof_distance_mm);
    return around.kind == SurroundingsKind::sunlit ? near_roof_rise_k : 0.0;
}

CodeFigure by_code(const Laid& laid, WiringCode code, LayingMethod method) {
    CodeFigure result;
    const Surroundings& around = laid.around;
    const int together = loaded_together(around, method);
    std::optional<double> ambient_c = around.air_c;
    if (ambient_c && code == WiringCode::nec) *ambient_c += roof_rise(laid, method);
    const auto by_company = grouping_factor(code, together);
    const auto take = [&](const std::optional<TabulatedAmpacity>& figure,
                          const std::string& source) {
        if (!figure) return;
        if (ambient_c && is_beyond(laid, code, *figure, *ambient_c)) {
            result.beyond = true;
            return;
        }
        if (!result.table_a || figure->current_a < *result.table_a) {
            result.source = source;
            result.limited = *laid.rating_c < figure->conductor_c;
        }
        take_smaller(result.table_a, figure->current_a);
        if (!ambient_c || !by_company) return;
        const double by_air = ambient_factor(code, *figure, *laid.rating_c, *ambient_c);
        take_smaller(result.corrected_a, figure->current_a * by_air * *by_company);
    };
    const auto table = of_table(laid, code, method);
    take(table, table ? std::string(table->source) : std::string());
    take(of_its_own(laid, method), source_of_own(laid.wire));
    std::optional<double> counted_c = joints_c(laid);
    take_smaller(counted_c, device_terminals(laid).column_c);
    if (code != WiringCode::nec || !counted_c || !result.table_a) return result;
    const std::optional<double> at_terminals = at_terminals_a(laid, *counted_c);
    if (!at_terminals) return {};
    if (*at_terminals < *result.table_a) {
        result.terminals = true;
        result.source = "nec-110-14";
    }
    take_smaller(result.table_a, at_terminals);
    if (result.corrected_a) take_smaller(result.corrected_a, at_terminals);
    return result;
}

std::optional<double> most_of(const Laid& laid, const Site& site) {
    std::optional<double> most = laid.wire.ampacity_a;
    for (const WiringCode code : {WiringCode::nec, WiringCode::iec}) {
        if (site.code.value_or(code) != code || !laid.rating_c) continue;
        if (const auto found = of_table(laid, code, LayingMethod::free_air))
            most = std::max(most.value_or(0.0), found->current_a);
    }
    return most;
}

}  // namespace

std::optional<LayingMethod> laying_method(const Surroundings& around) {
    if (around.kind == SurroundingsKind::bed) return std::nullopt;
    if (around.kind == SurroundingsKind::buried) return LayingMethod::earth;
    if (around.kind == SurroundingsKind::cavity) return LayingMethod::thermal_insulation;
    if (around.kind == SurroundingsKind::conduit || around.metal_raceway.value_or(false))
        return LayingMethod::raceway;
    return around.loaded_conductors == 1 ? LayingMethod::free_air : LayingMethod::bundle;
}

RunAmpacity run_ampacity(const Circuit& circuit, const RunParts& run, const Site& site) {
    return run_ampacity(circuit, run, site, run.run.surroundings);
}

RunAmpacity run_ampacity(const Circuit& circuit, const RunParts& run, const Site& site,
                         const Surroundings& around) {
    RunAmpacity result{.method = laying_method(around)};
    if (!run.wire) return result;
    Laid laid{.circuit = circuit, .run = run, .wire = *run.wire, .around = around};
    laid.kind = wire_kind(*run.wire, run.insulation ? &*run.insulation : nullptr);
    laid.at_element = circuit.run_at_element() == &run;
    if (run.insulation) laid.insulation = insulation_limit(circuit, run, site);
    result.wet_unknown = laid.insulation && laid.insulation->wet_unknown;
    laid.rating_c = rating_of(laid);
    result.rating_c = laid.rating_c.value_or(0.0);
    result.most_a = most_of(laid, site);
    if (!result.method || !laid.rating_c) {
        result.missing = {result.method ? "insulation" : "a table for wire in a bed"};
        return result;
    }
    const int together = loaded_together(around, *result.method);
    if (together > 3) result.together = together;
    result.whole = !result.wet_unknown;
    bool table_known = true;
    for (const WiringCode code : {WiringCode::nec, WiringCode::iec}) {
        if (site.code.value_or(code) != code) continue;
        const CodeFigure figure = by_code(laid, code, *result.method);
        table_known = table_known && figure.table_a;
        result.whole = result.whole && figure.table_a && figure.corrected_a && !figure.beyond;
        result.beyond = result.beyond || figure.beyond;
        if (figure.table_a && (!result.table_a || *figure.table_a < *result.table_a)) {
            result.source = figure.source;
            result.terminals = figure.terminals;
        }
        result.limited = result.limited || figure.limited;
        if (code == WiringCode::nec) result.roof_k = roof_rise(laid, *result.method);
        take_smaller(result.table_a, figure.table_a);
        take_smaller(result.corrected_a, figure.corrected_a);
    }
    const DeviceTerminals devices = device_terminals(laid);
    const bool decide = devices.column_c && *devices.column_c < joints_c(laid).value_or(special_c);
    result.unmarked = result.terminals && decide && !devices.marked;
    if (!table_known) {
        result.missing.emplace_back(result.table_a ? "site.code" : "ampacity_a");
    } else if (!around.air_c) {
        result.missing.emplace_back("surroundings.air_c");
    } else if (result.wet_unknown) {
        result.missing.emplace_back("limit_wet_c");
    } else if (result.beyond) {
        result.missing.emplace_back("a table for so hot a place");
    } else if (!result.whole) {
        result.missing.emplace_back("a table for so many wires together");
    }
    return result;
}

}  // namespace heatmatch
