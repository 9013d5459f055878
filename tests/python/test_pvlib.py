"""Curves and operating points against pvlib on random modules and conditions.

Source: pvlib-python, calcparams_desoto and i_from_v with method lambertw; the load R enters as
series resistance, so that the current at zero volts of the sum is the current into R.
"""

from __future__ import annotations

import heatmatch as hm
import numpy as np
import pytest
from pvlib import pvsystem


def test_translation_and_load_agree_with_pvlib(starter: hm.Catalog) -> None:
    rng = np.random.default_rng(5)
    ohms = np.geomspace(0.05, 500.0, 40)
    for panel in starter.panels.values():
        fit = hm.fit_single_diode(panel, use_gamma=False)
        sun = float(rng.uniform(50.0, 1200.0))
        cell = float(rng.uniform(-30.0, 75.0))
        light, i0, rs, shunt, ideality = pvsystem.calcparams_desoto(
            sun,
            cell,
            alpha_sc=fit.alpha_isc_a_per_k,
            a_ref=fit.modified_ideality_v,
            I_L_ref=fit.light_current_a,
            I_o_ref=np.exp(fit.ln_saturation_current),
            R_sh_ref=np.inf if fit.shunt_conductance_s == 0 else 1 / fit.shunt_conductance_s,
            R_s=fit.series_resistance_ohm,
            EgRef=fit.band_gap_ev,
            dEgdT=fit.band_gap_per_k,
        )
        with np.errstate(over="ignore", invalid="ignore"):
            current = pvsystem.i_from_v(
                0.0, light, i0, rs + ohms, shunt, ideality, method="lambertw"
            )
        curve = fit.at(irradiance_w_m2=sun, cell_temperature_c=cell)
        # The peer has no value where the exponential of its Lambert argument overflows.
        given = np.isfinite(current)
        assert given[ohms * light / ideality < 500.0].all()
        ours = curve.into_resistance(ohms).current_a
        np.testing.assert_allclose(ours[given], current[given], rtol=1e-9)
        best = pvsystem.singlediode(light, i0, rs, shunt, ideality, method="lambertw")
        assert curve.maximum_power().power_w == pytest.approx(float(best["p_mp"]), rel=1e-7)
        assert curve.open_circuit_voltage_v == pytest.approx(float(best["v_oc"]), rel=1e-9)


def test_the_listed_parameters_agree_with_the_cec_model(starter: hm.Catalog) -> None:
    table = pvsystem.retrieve_sam("cecmod")
    row = table[table.columns[4321]]
    panel = starter.panels["silicon-60-cell-245"].replace(
        v_oc=row.V_oc_ref,
        i_sc=row.I_sc_ref,
        v_mp=row.V_mp_ref,
        i_mp=row.I_mp_ref,
        alpha_isc_pct_per_k=100 * row.alpha_sc / row.I_sc_ref,
        beta_voc_pct_per_k=100 * row.beta_oc / row.V_oc_ref,
        listed_fit={
            "light_current_a": row.I_L_ref,
            "saturation_current_a": row.I_o_ref,
            "series_resistance_ohm": row.R_s,
            "shunt_resistance_ohm": row.R_sh_ref,
            "modified_ideality_v": row.a_ref,
            "adjust_pct": row.Adjust,
            "band_gap_ev": 1.121,
            "band_gap_per_k": -0.0002677,
        },
    )
    diode = panel.listed_diode()
    for sun, cell in ((1000.0, 25.0), (300.0, 5.0), (850.0, 60.0)):
        light, i0, rs, shunt, ideality = pvsystem.calcparams_cec(
            sun, cell, row.alpha_sc, row.a_ref, row.I_L_ref, row.I_o_ref, row.R_sh_ref, row.R_s,
            row.Adjust,
        )  # fmt: skip
        current = pvsystem.i_from_v(0.0, light, i0, rs + 5.0, shunt, ideality, method="lambertw")
        curve = diode.at(irradiance_w_m2=sun, cell_temperature_c=cell)
        assert curve.into_resistance(5.0).current_a == pytest.approx(float(current), rel=1e-9)
