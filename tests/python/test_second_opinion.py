"""Unlike arrays against pvmismatch, a library that sums I-V curves of cells.

Its model is ours where its second diode and its avalanche current are off, and the shunt resistance
is so high that how it follows the sun does not matter. It interpolates its curves, so the agreement
is that of its table: 0.3 % of the largest power or of the open-circuit voltage.
"""

from __future__ import annotations

import warnings
from typing import Any

import heatmatch as hm
import numpy as np
import pytest

with warnings.catch_warnings():  # its docstrings hold escapes that Python warns of
    warnings.simplefilter("ignore")
    from pvmismatch.pvmismatch_lib import pvcell, pvconstants, pvmodule, pvstring, pvsystem

_CELLS, _SUBSTRINGS = 60, 3
_BOLTZMANN_OVER_CHARGE = 8.617333262e-05  # CODATA 2018
_T_K = 298.15
_FINE = pvconstants.PVconstants(npts=1001)


def _cell(short_a: float) -> Any:
    """A cell of one diode."""
    return pvcell.PVcell(
        Rs=0.005,
        Rsh=1.0e6,
        Isat1_T0=3.0e-10,
        Isat2_T0=0.0,
        Isc0_T0=short_a,
        aRBD=0.0,
        bRBD=0.0,
        alpha_Isc=0.0,
        Tcell=_T_K,
        pvconst=_FINE,
    )


def _module(short_a: float) -> Any:
    columns = pvmodule.standard_cellpos_pat(_CELLS // 6, [2] * _SUBSTRINGS)
    return pvmodule.PVmodule(cell_pos=columns, pvcells=_cell(short_a), pvconst=_FINE, Vbypass=-0.5)


def _panel(short_a: float) -> hm.StringPanel:
    """The same module as a single diode."""
    cell = _cell(short_a)
    diode = hm.SingleDiode(
        light_current_a=float(cell.Igen),
        saturation_current_a=3.0e-10,
        series_resistance_ohm=0.005 * _CELLS,
        shunt_resistance_ohm=1.0e6 * _CELLS,
        modified_ideality_v=_CELLS * _BOLTZMANN_OVER_CHARGE * _T_K,
        alpha_isc_a_per_k=0.0,
    )
    return hm.StringPanel(diode, substrings=_SUBSTRINGS)


def _system(strings: list[list[float]], suns: list[list[list[float]]]) -> Any:
    """`suns`: of each substring, in suns."""
    made = pvsystem.PVsystem(
        pvconst=_FINE,
        numberStrs=len(strings),
        pvstrs=[
            pvstring.PVstring(
                numberMods=len(string),
                pvmods=[_module(short_a) for short_a in string],
                pvconst=_FINE,
            )
            for string in strings
        ],
    )
    for s, string in enumerate(suns):
        for m, module in enumerate(string):
            cells = np.repeat(module, _CELLS // _SUBSTRINGS)
            made.setSuns({s: {m: [cells.tolist(), list(range(_CELLS))]}})
    return made


@pytest.mark.filterwarnings("ignore:divide by zero", "ignore:invalid value")  # of their tables
@pytest.mark.parametrize(
    ("strings", "suns"),
    [
        ([[8.0, 8.0, 5.0]], [[[1, 1, 1], [1, 1, 1], [1, 1, 1]]]),
        ([[8.0, 8.0]], [[[1, 1, 1], [1, 0.2, 1]]]),
        ([[8.0, 8.0], [5.0, 5.0, 5.0]], [[[1] * 3] * 2, [[0.6] * 3] * 3]),
    ],
    ids=["weak panel in series", "shaded substring", "strings of unequal length"],
)
def test_power_curves_agree(strings: list[list[float]], suns: list[list[list[float]]]) -> None:
    theirs = _system(strings, suns)
    ours = hm.Array([[_panel(short_a) for short_a in string] for string in strings]).at(
        irradiance_w_m2=1000.0,
        cell_temperature_c=25.0,
        shade=[[1.0 - sun for sun in module] for string in suns for module in string],
    )
    volts, power = np.asarray(theirs.Vsys), np.asarray(theirs.Psys)
    largest = float(power.max())
    assert ours.maximum_power().power_w == pytest.approx(largest, rel=2e-3)
    inside = (volts >= 0.0) & (volts <= ours.open_circuit_voltage_v) & (power >= 0.0)
    assert inside.sum() > 30
    # Their table is of lines: where the current falls steeply, volts are compared instead.
    apart_v = 3e-3 * ours.open_circuit_voltage_v
    for voltage_v, power_w in zip(volts[inside], power[inside], strict=True):
        at = [max(0.0, voltage_v + shift) for shift in (-apart_v, 0.0, apart_v)]
        near = [voltage_v * float(ours.current_a(v)) for v in at]
        assert min(near) - 3e-3 * largest <= power_w <= max(near) + 3e-3 * largest
