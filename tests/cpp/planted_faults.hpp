#pragma once

#include "synthetic_readings.hpp"

#include <cmath>
#include <string>
#include <vector>

/// A circuit with a fault, and readings of it.
struct PlantedCase {
    heatmatch::Candidate candidate{};
    heatmatch::FaultKind kind = heatmatch::FaultKind::as_expected;
    heatmatch::Readings readings{};
    std::string told{};  //!< what was planted, for a message
    RealCircuit real{};
    std::vector<double> suns{};   //!< of each row
    std::vector<double> cells{};  //!< of each row [°C]
};

/// Circuits that the faults are planted in: one string and several, one branch and several.
inline const std::vector<heatmatch::Candidate>& bench_candidates() {
    static const std::vector<heatmatch::Candidate> all{
        bench_candidate("silicon-60-cell-245", {2, 1}, "tubular-1000-120", {1, 2}, 9.0),
        bench_candidate("silicon-36-cell-135", {2, 2}, "tubular-1000-120", {1, 4}, 6.0),
        bench_candidate("silicon-72-cell-300", {3, 1}, "strip-500-120", {1, 2}, 15.0),
        bench_candidate("silicon-72-cell-300", {1, 3}, "tubular-1000-120", {2, 1}, 4.0),
        bench_candidate("half-cut-120-cell-335", {2, 2}, "strip-500-120", {2, 4}, 12.0),
        bench_candidate("silicon-60-cell-270", {4, 1}, "tubular-1000-120", {1, 1}, 10.0)};
    return all;
}

/// Kinds that a circuit can have.
inline std::vector<heatmatch::FaultKind> possible_kinds(const heatmatch::Circuit& circuit) {
    using heatmatch::FaultKind;
    std::vector<FaultKind> kinds{FaultKind::as_expected,   FaultKind::element_open,
                                 FaultKind::turns_shorted, FaultKind::section_bypassed,
                                 FaultKind::hot_joint,     FaultKind::low_sun,
                                 FaultKind::dirt,          FaultKind::aged};
    if (circuit.panels.count() > 1) {
        kinds.push_back(FaultKind::panel_missing);
        kinds.push_back(FaultKind::panels_hooked_otherwise);
    }
    if (circuit.bank.hookup.count() > 1) kinds.push_back(FaultKind::bank_hooked_otherwise);
    return kinds;
}

/// Another hook-up of as many things.
inline heatmatch::Hookup other_hookup(const heatmatch::Hookup& own, NoisyMeters& dice) {
    std::vector<heatmatch::Hookup> others;
    for (int series = 1; series <= own.count(); ++series) {
        if (own.count() % series == 0 && series != own.series) {
            others.push_back({series, own.count() / series});
        }
    }
    return others[static_cast<std::size_t>(dice.whole(0, static_cast<int>(others.size()) - 1))];
}

/// Puts a fault of that kind and a random size into a circuit.
inline std::string plant(RealCircuit& real, heatmatch::FaultKind kind,
                         const heatmatch::Circuit& circuit, NoisyMeters& dice) {
    using heatmatch::FaultKind;
    const double stc_match_ohm = *circuit.panel.panel.v_mp / *circuit.panel.panel.i_mp;
    const double each = real.measured_element_ohm;
    const double infinite = std::numeric_limits<double>::infinity();
    const bool odd_one_measured = dice.chance(0.5);
    switch (kind) {
        case FaultKind::element_open: {
            real.branches_ohm.pop_back();
            real.odd_element_ohm = infinite;
            if (odd_one_measured) real.measured_element_ohm = infinite;
            return "one branch";
        }
        case FaultKind::turns_shorted: {
            const double share = dice.uniform(0.25, 0.8);
            real.branches_ohm.back() -= share * each;
            real.odd_element_ohm = (1.0 - share) * each;
            if (odd_one_measured) real.measured_element_ohm = (1.0 - share) * each;
            return std::to_string(share);
        }
        case FaultKind::section_bypassed: {
            const int sections = circuit.panel.panel.bypass_diodes.value_or(3);
            const int lost = dice.whole(1, sections - 1);
            real.strings.back() -= static_cast<double>(lost) / sections;
            return std::to_string(lost) + " of " + std::to_string(sections);
        }
        case FaultKind::panel_missing: {
            const bool whole_string =
                circuit.panels.parallel > 1 && (circuit.panels.series == 1 || dice.chance(0.5));
            if (whole_string) {
                real.strings.pop_back();
                return "a string";
            }
            real.strings.back() -= 1.0;
            return "a panel";
        }
        case FaultKind::hot_joint: {
            const double ohm = real.bank_ohm() * std::exp(dice.uniform(std::log(0.08), 0.0));
            const bool in_array = dice.chance(0.4);
            (in_array ? real.array_joint_ohm : real.joint_ohm) = ohm;
            return std::to_string(ohm) + (in_array ? " in the array" : "");
        }
        case FaultKind::low_sun:
        case FaultKind::dirt:
            real.sun_share = dice.uniform(0.35, 0.8);
            return std::to_string(real.sun_share);
        case FaultKind::aged: {
            const double current = dice.uniform(0.6, 0.85);
            real.panel = real.panel.scaled(current, 1.0);
            real.panel_extra_ohm = stc_match_ohm * dice.uniform(0.15, 0.6);
            return std::to_string(current) + ", " + std::to_string(real.panel_extra_ohm);
        }
        case FaultKind::panels_hooked_otherwise: {
            const heatmatch::Hookup hookup = other_hookup(circuit.panels, dice);
            real.strings.assign(static_cast<std::size_t>(hookup.parallel), hookup.series);
            return hookup.label();
        }
        case FaultKind::bank_hooked_otherwise: {
            const heatmatch::Hookup hookup = other_hookup(circuit.bank.hookup, dice);
            real.branches_ohm.assign(static_cast<std::size_t>(hookup.parallel),
                                     each * hookup.series);
            return hookup.label();
        }
        default:
            return "";
    }
}

/// A random case of the kind: its own tolerance of element and panels, one to five rows, a random
/// set of meters with noise; or four rows with all of them. Held errors are the same in every row.
inline PlantedCase planted_case(const heatmatch::Candidate& candidate, heatmatch::FaultKind kind,
                                unsigned seed, bool all_meters = false, bool held_errors = false) {
    NoisyMeters dice(seed);
    PlantedCase planted{.candidate = candidate, .kind = kind};
    const heatmatch::Circuit& circuit = candidate.circuit;
    RealCircuit real = sound_circuit(circuit);
    // Tolerances: half a band is one standard deviation.
    const auto& each = circuit.bank.each;
    const double z = dice.normal();
    const double band =
        z < 0.0 ? 1.0 - each.low_ohm / each.typical_ohm : each.high_ohm / each.typical_ohm - 1.0;
    const double tolerance = 1.0 + 0.4 * band * z;
    for (double& ohm : real.branches_ohm) ohm *= tolerance;
    real.measured_element_ohm *= tolerance;
    const double spread =
        0.25 * (circuit.panel.current_factor_high - circuit.panel.current_factor_low);
    real.panel = real.panel.scaled(1.0 + spread * dice.normal(), 1.0 + 0.01 * dice.normal());
    planted.told = plant(real, kind, circuit, dice);
    const MeterSet some{.array_v = dice.chance(0.5),
                        .bank_v = dice.chance(0.85),
                        .bank_a = dice.chance(0.9),
                        .open_v = dice.chance(0.5),
                        .short_a = dice.chance(0.4),
                        .irradiance = dice.chance(0.5),
                        .panel_temperature = dice.chance(0.6),
                        .air = dice.chance(0.6),
                        .element_ohm = dice.chance(0.3),
                        .bank_ohm = dice.chance(0.3)};
    const MeterSet set = all_meters ? MeterSet{} : some;
    if (held_errors) dice.hold_errors();
    const int rows = all_meters ? 4 : dice.whole(1, 5);
    for (int row = 0; row < rows; ++row) {
        const double sun = dice.uniform(250.0, 1050.0);
        const double air = dice.uniform(-5.0, 28.0);
        const double cell = air + sun * dice.uniform(0.022, 0.038);
        planted.readings.rows.push_back(noisy_reading(real, sun, cell, air, set, dice));
        planted.suns.push_back(sun);
        planted.cells.push_back(cell);
    }
    planted.real = real;
    return planted;
}

/// Adds what a named reading of the meters would have shown to every row; false for one that is not
/// a field of a reading.
inline bool add_reading(PlantedCase& planted, const std::string& name, NoisyMeters& meters) {
    for (std::size_t i = 0; i < planted.readings.rows.size(); ++i) {
        heatmatch::Reading& row = planted.readings.rows[i];
        const TrueReading is = read_ideally(planted.real, planted.suns[i], planted.cells[i]);
        if (name == "open_v") {
            row.open_v = meters.volts(is.open_v);
        } else if (name == "short_a") {
            row.short_a = meters.amperes(is.short_a);
        } else if (name == "array_v") {
            row.array_v = meters.volts(is.array_v);
        } else if (name == "bank_v") {
            row.bank_v = meters.volts(is.bank_v);
        } else if (name == "bank_a") {
            row.bank_a = meters.amperes(is.bank_a);
        } else if (name == "bank_ohm") {
            row.bank_ohm = meters.ohms(planted.real.bank_ohm());
        } else if (name == "element_ohm") {
            const double odd = planted.real.odd_element_ohm;
            row.element_ohm = meters.ohms(odd > 0.0 ? odd : planted.real.measured_element_ohm);
        } else if (name == "irradiance_w_m2") {
            row.irradiance_w_m2 = meters.sun(planted.suns[i]);
        } else {
            return false;
        }
    }
    return true;
}
