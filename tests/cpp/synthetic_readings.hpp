#pragma once

#include "demo.hpp"

#include <array>
#include <cmath>
#include <limits>
#include <random>
#include <string>
#include <vector>

#include "heatmatch/heat/bed_charge.hpp"
#include "heatmatch/operation/diagnosis/diagnosis.hpp"
#include "heatmatch/operation/meter/readings.hpp"
#include "heatmatch/solar/single_diode.hpp"

/// A circuit as it really is, for readings made without the library's own model of faults: curves
/// of single panels, strings added by bisection, Ohm's law.
struct RealCircuit {
    heatmatch::SingleDiode panel{};
    std::vector<double> strings{};       //!< panels' worth of volts in each
    std::vector<double> branches_ohm{};  //!< of the bank, cold
    double hot_ratio = 1.0;
    double wire_ohm = 0.0;
    double joint_ohm = 0.0;        //!< between the voltmeters
    double array_joint_ohm = 0.0;  //!< before the voltmeter at the array
    double sun_share = 1.0;        //!< on the cells
    double panel_extra_ohm = 0.0;  //!< in each panel
    double measured_element_ohm = 1.0;
    double odd_element_ohm = 0.0;  //!< of the one with a fault; 0: none has

    [[nodiscard]] double bank_ohm() const {
        double siemens = 0.0;
        for (const double ohm : branches_ohm) siemens += 1.0 / ohm;
        return siemens > 0.0 ? 1.0 / siemens : std::numeric_limits<double>::infinity();
    }
};

/// What ideal meters show.
struct TrueReading {
    double array_v = 0.0;
    double bank_v = 0.0;
    double bank_a = 0.0;
    double open_v = 0.0;
    double short_a = 0.0;
};

inline TrueReading read_ideally(const RealCircuit& real, double sun_w_m2, double cell_c) {
    heatmatch::DiodeCurve curve = real.panel.at(sun_w_m2 * real.sun_share, cell_c);
    curve.series_resistance_ohm += real.panel_extra_ohm;
    const auto current = [&](double volts) {
        double sum = 0.0;
        for (const double panels : real.strings) sum += curve.current_a(volts / panels);
        return sum;
    };
    const auto volts_into = [&](double siemens) {
        double low = 0.0;
        double high = 0.0;
        for (const double panels : real.strings) {
            high = std::max(high, panels * curve.open_circuit_voltage_v());
        }
        for (int step = 0; step < 60; ++step) {
            const double middle = 0.5 * (low + high);
            (current(middle) > middle * siemens ? low : high) = middle;
        }
        return 0.5 * (low + high);
    };
    TrueReading reading{.open_v = volts_into(0.0), .short_a = current(0.0)};
    if (real.array_joint_ohm > 0.0) {
        const double siemens = 1.0 / real.array_joint_ohm;
        reading.short_a = volts_into(siemens) * siemens;
    }
    const double hot = real.bank_ohm() * real.hot_ratio;
    if (std::isinf(hot)) {
        reading.array_v = reading.bank_v = reading.open_v;
        return reading;
    }
    const double total = hot + real.wire_ohm + real.joint_ohm + real.array_joint_ohm;
    reading.bank_a = volts_into(1.0 / total) / total;
    reading.bank_v = reading.bank_a * hot;
    reading.array_v = reading.bank_a * (hot + real.wire_ohm + real.joint_ohm);
    return reading;
}

/// The circuit as it is described, every value typical.
inline RealCircuit sound_circuit(const heatmatch::Circuit& circuit) {
    const heatmatch::Bank& bank = circuit.bank;
    const double cold =
        heatmatch::element_resistance(bank.element, bank.alloy ? &*bank.alloy : nullptr, 20.0)
            .typical_ohm;
    return {.panel = circuit.panel.today,
            .strings = std::vector<double>(static_cast<std::size_t>(circuit.panels.parallel),
                                           circuit.panels.series),
            .branches_ohm = std::vector<double>(static_cast<std::size_t>(bank.hookup.parallel),
                                                cold * bank.hookup.series),
            .hot_ratio = bank.each.typical_ohm / cold,
            .wire_ohm = circuit.wire_ohm(),
            .measured_element_ohm = cold};
}

/// Meters with the stated errors: volts 1 % + 0.1 V, amperes 2 % + 0.05 A, sun 5 %, panel 3 K, ohms
/// 2 % + 0.1 ohm, one standard deviation each.
class NoisyMeters {
  public:
    explicit NoisyMeters(unsigned seed, double noise = 1.0) : random_(seed), noise_(noise) {}

    double volts(double v) { return positive(v + (0.01 * v + 0.1) * error(0)); }
    double amperes(double a) { return positive(a + (0.02 * a + 0.05) * error(1)); }
    double sun(double g) { return positive(g * (1.0 + 0.05 * error(2))); }
    double celsius(double t) { return t + 3.0 * error(3); }
    double ohms(double r) { return std::isinf(r) ? r : positive(r + (0.02 * r + 0.1) * error(4)); }
    /// From now on each meter is off by the same share in every reading, but for a third of it.
    void hold_errors() {
        for (double& each : held_) each = normal();
        holds_ = true;
    }
    double normal() { return noise_ * gauss_(random_); }
    double uniform(double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random_);
    }
    int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(random_); }
    bool chance(double share) { return uniform(0.0, 1.0) < share; }

  private:
    static double positive(double value) { return std::max(0.0, value); }
    double error(std::size_t meter) {
        return holds_ ? 0.94 * held_[meter] + 0.33 * normal() : normal();
    }
    std::mt19937 random_;
    std::normal_distribution<double> gauss_{0.0, 1.0};
    double noise_ = 1.0;
    std::array<double, 5> held_{};
    bool holds_ = false;
};

/// Which meters are at hand.
struct MeterSet {
    bool array_v = true;
    bool bank_v = true;
    bool bank_a = true;
    bool open_v = true;
    bool short_a = true;
    bool irradiance = true;
    bool panel_temperature = true;
    bool air = true;
    bool element_ohm = true;
    bool bank_ohm = true;
};

/// One row of readings of a real circuit.
inline heatmatch::Reading noisy_reading(const RealCircuit& real, double sun_w_m2, double cell_c,
                                        double air_c, const MeterSet& set, NoisyMeters& meters) {
    const TrueReading is = read_ideally(real, sun_w_m2, cell_c);
    heatmatch::Reading row;
    if (set.irradiance) row.irradiance_w_m2 = meters.sun(sun_w_m2);
    if (set.panel_temperature) row.panel_temperature_c = meters.celsius(cell_c - 2.0);
    if (set.air) row.air_c = air_c;
    if (set.array_v) row.array_v = meters.volts(is.array_v);
    if (set.bank_v) row.bank_v = meters.volts(is.bank_v);
    if (set.bank_a) row.bank_a = meters.amperes(is.bank_a);
    if (set.open_v) row.open_v = meters.volts(is.open_v);
    if (set.short_a) row.short_a = meters.amperes(is.short_a);
    if (set.element_ohm) row.element_ohm = meters.ohms(real.measured_element_ohm);
    if (set.bank_ohm) row.bank_ohm = meters.ohms(real.bank_ohm());
    return row;
}

/// A candidate of a bench circuit with that length of wire.
inline heatmatch::Candidate bench_candidate(std::string_view panel, heatmatch::Hookup panels,
                                            std::string_view element, heatmatch::Hookup bank,
                                            double wire_m) {
    heatmatch::Candidate candidate{.circuit = bench_circuit(panel, panels, element, bank)};
    heatmatch::RunParts run = bench_run("pv-wire-12-awg", 25.0);
    run.run.length_m = wire_m;
    candidate.circuit.runs = {run};
    return candidate;
}

/// The explanation of that kind; the test stops without one.
inline heatmatch::Hypothesis hypothesis_of(const heatmatch::Diagnosis& diagnosis,
                                           heatmatch::FaultKind kind) {
    const auto found = std::find_if(diagnosis.ranked.begin(), diagnosis.ranked.end(),
                                    [kind](const auto& h) { return h.kind == kind; });
    REQUIRE(found != diagnosis.ranked.end());
    return *found;
}

/// Whether the explanation is in the first group.
inline bool in_group(const heatmatch::Diagnosis& diagnosis, heatmatch::FaultKind kind) {
    for (std::size_t i = 0; i < diagnosis.group; ++i) {
        if (diagnosis.ranked[i].kind == kind) return true;
    }
    return false;
}

/// Two panels in series into two elements side by side.
inline const heatmatch::Candidate& bench_pair() {
    static const heatmatch::Candidate candidate =
        bench_candidate("silicon-60-cell-245", {2, 1}, "tubular-1000-120", {1, 2}, 9.0);
    return candidate;
}
