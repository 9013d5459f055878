"""The same jobs by pvlib and NumPy, in the fastest way we found.

Into a resistor: ``i_from_v`` at zero volts by Lambert's W, the load added to the series resistance,
in blocks that stay in the cache.
"""

from __future__ import annotations

from dataclasses import dataclass

import heatmatch as hm
import numpy as np
import numpy.typing as npt
from pvlib import pvsystem

Array = npt.NDArray[np.float64]
BLOCK = 16_384


def currents(
    light: Array, saturation: Array, series: Array, shunt: Array, ideality: Array, ohms: Array
) -> Array:
    """Currents into resistances by pvlib, all at once [A]."""
    with np.errstate(over="ignore", invalid="ignore"):  # a few points give no number
        current = pvsystem.i_from_v(
            0.0, light, saturation, series + ohms, shunt, ideality, method="lambertw"
        )
    return np.asarray(current)


class Loads:
    """Random modules, suns, temperatures and loads, as arrays."""

    def __init__(self, points: int) -> None:
        rng = np.random.default_rng(11)
        diodes = [hm.fit_single_diode(panel) for panel in hm.Catalog.starter().panels.values()]
        curves = []
        for _ in range(2000):
            diode = diodes[rng.integers(len(diodes))]
            sun, cell = rng.uniform(10.0, 1200.0), rng.uniform(-20.0, 70.0)
            curves.append(diode.at(irradiance_w_m2=sun, cell_temperature_c=cell))
        pick = rng.integers(len(curves), size=points)

        def gather(name: str) -> Array:
            return np.array([getattr(curve, name) for curve in curves])[pick]

        self.points = points
        self.light = gather("light_current_a")
        self.ln_i0 = gather("ln_saturation_current")
        self.saturation = np.exp(self.ln_i0)
        self.series = gather("series_resistance_ohm")
        self.conductance = gather("shunt_conductance_s")
        with np.errstate(divide="ignore"):
            self.shunt = 1.0 / self.conductance
        self.ideality = gather("ideality_v")
        match = gather("open_circuit_voltage_v") / gather("short_circuit_current_a")
        self.ohms = match * 10 ** rng.uniform(-1.0, 1.0, points)

    def heatmatch(self) -> Array:
        """Power by heatmatch [W]."""
        return hm.operating_points(
            self.light, self.ln_i0, self.series, self.conductance, self.ideality, self.ohms
        ).power_w

    def pvlib(self, block: int = BLOCK) -> Array:
        """Power by pvlib, block by block [W]."""
        current = np.empty(self.points)
        for start in range(0, self.points, block):
            part = slice(start, start + block)
            current[part] = currents(
                self.light[part],
                self.saturation[part],
                self.series[part],
                self.shunt[part],
                self.ideality[part],
                self.ohms[part],
            )
        return current * current * self.ohms

    def pvlib_whole(self) -> Array:
        """Power by pvlib, the whole arrays at once [W]."""
        return self.pvlib(self.points)


@dataclass
class Year:
    """The sunlit hours of a year."""

    sun_w_m2: Array
    cell_c: Array


@dataclass
class Hours:
    """One panel's curve in every sunlit hour."""

    light: Array
    saturation: Array
    series: Array
    shunt: Array
    ideality: Array

    def kwh(self, ohms: Array, block: int = BLOCK) -> Array:
        """Energy over the year into each of the resistances [kWh]."""
        together = max(1, block // len(self.light))
        sums = [self._block(ohms[i : i + together]) for i in range(0, len(ohms), together)]
        return np.concatenate(sums) / 1000.0

    def _block(self, ohms: Array) -> Array:
        load = ohms[:, np.newaxis]
        current = currents(
            self.light, self.saturation, self.series, self.shunt, self.ideality, load
        )
        return np.asarray((current * current).sum(axis=1) * ohms)


def hours_of_diode(diode: hm.SingleDiode, year: Year) -> Hours:
    """Curves of a panel by pvlib's translation; without a series resistance that follows heat."""
    conductance = diode.shunt_conductance_s
    parameters = pvsystem.calcparams_desoto(
        year.sun_w_m2,
        year.cell_c,
        alpha_sc=diode.alpha_isc_a_per_k,
        a_ref=diode.modified_ideality_v,
        I_L_ref=diode.light_current_a,
        I_o_ref=np.exp(diode.ln_saturation_current),
        R_sh_ref=1.0 / conductance if conductance > 0.0 else np.inf,
        R_s=diode.series_resistance_ohm,
        EgRef=diode.band_gap_ev,
        dEgdT=diode.band_gap_per_k,
    )
    light, saturation, series, shunt, ideality = parameters
    return Hours(light, saturation, np.full_like(light, series), shunt, ideality)
