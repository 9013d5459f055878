#pragma once

#include "reference_csv.hpp"

#include <cmath>

#include "heatmatch/solar/single_diode.hpp"

/// The module of a row of pv_open.csv or energy_open.csv.
inline heatmatch::SingleDiode diode_of(const ReferenceRow& row) {
    return {.light_current_a = number(row, "I_L_ref_A"),
            .ln_saturation_current = std::log(number(row, "I_o_ref_A")),
            .series_resistance_ohm = number(row, "R_s_ohm"),
            .shunt_conductance_s = 1.0 / number(row, "R_sh_ref_ohm"),
            .modified_ideality_v = number(row, "a_ref_V"),
            .alpha_isc_a_per_k = number(row, "alpha_sc_A_per_K"),
            .band_gap_ev = number(row, "EgRef_eV"),
            .band_gap_per_k = number(row, "dEgdT_per_K")};
}
