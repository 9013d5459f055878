"""Arrays of unlike panels by pvlib and NumPy: substrings in series, strings in parallel.

A string's voltages add at equal current, a bypass diode holds its substring at -0.5 V, and the
currents of strings add at equal voltage. Currents and voltages are pvlib's, by Lambert's W.
"""

from __future__ import annotations

from dataclasses import dataclass

import heatmatch as hm
import numpy as np
import numpy.typing as npt
from pvlib import pvsystem

Floats = npt.NDArray[np.float64]
SUBSTRINGS = 3
BYPASS_V = -0.5


@dataclass
class Substrings:
    """Equal substrings of a string, hour by hour."""

    light: Floats
    saturation: Floats
    series: Floats
    shunt: Floats
    ideality: Floats
    count: int

    def voltage_v(self, current: Floats) -> Floats:
        """Of one of them, held by its bypass diode [V]."""
        with np.errstate(all="ignore"):
            volts = pvsystem.v_from_i(
                current, self.light, self.saturation, self.series, self.shunt, self.ideality,
                method="lambertw",
            )  # fmt: skip
        return np.maximum(np.nan_to_num(volts, nan=-np.inf), BYPASS_V)


def substrings_of(diode: hm.SingleDiode, sun: Floats, cells: Floats, count: int) -> Substrings:
    """The substrings of `count` equal panels of three substrings."""
    with np.errstate(divide="ignore"):
        light, saturation, series, shunt, ideality = pvsystem.calcparams_desoto(
            sun, cells,
            alpha_sc=diode.alpha_isc_a_per_k,
            a_ref=diode.modified_ideality_v / SUBSTRINGS,
            I_L_ref=diode.light_current_a,
            I_o_ref=np.exp(diode.ln_saturation_current),
            R_sh_ref=1.0 / diode.shunt_conductance_s / SUBSTRINGS
            if diode.shunt_conductance_s
            else np.inf,
            R_s=diode.series_resistance_ohm / SUBSTRINGS,
            EgRef=diode.band_gap_ev,
            dEgdT=diode.band_gap_per_k,
        )  # fmt: skip
    return Substrings(light, saturation, series, shunt, ideality, SUBSTRINGS * count)


@dataclass
class UnlikeArray:
    """Strings in parallel."""

    strings: list[list[Substrings]]

    def string_v(self, string: list[Substrings], current: Floats) -> Floats:
        """Voltage of a string at a current [V]."""
        return sum(
            (kind.count * kind.voltage_v(current) for kind in string), np.zeros_like(current)
        )

    def into_one(self, ohms: float, halvings: int = 56) -> Floats:
        """Power of the only string into a resistance, by halving its current [W]."""
        (string,) = self.strings
        low = np.zeros_like(string[0].light)
        high = np.max([kind.light for kind in string], axis=0) * 1.0001 + 1e-9
        for _ in range(halvings):
            middle = 0.5 * (low + high)
            more = self.string_v(string, middle) > middle * ohms
            low, high = np.where(more, middle, low), np.where(more, high, middle)
        return low * low * ohms

    def current_a(self, string: list[Substrings], volts: Floats, halvings: int) -> Floats:
        """Current of a string at a voltage, reverse current included [A]."""
        high = np.max([kind.light for kind in string], axis=0) * 1.0001 + 1e-9
        low = -np.full_like(high, 50.0)
        for _ in range(halvings):
            middle = 0.5 * (low + high)
            more = self.string_v(string, middle) > volts
            low, high = np.where(more, middle, low), np.where(more, high, middle)
        return low

    def into(self, ohms: float, most_v: float, halvings: int = 48) -> Floats:
        """Power of all strings into a resistance, by halving their voltage [W]."""
        low = np.zeros_like(self.strings[0][0].light)
        high = np.full_like(low, most_v)
        for _ in range(halvings):
            middle = 0.5 * (low + high)
            current = sum(
                (self.current_a(string, middle, halvings + 8) for string in self.strings),
                np.zeros_like(low),
            )
            more = current > middle / ohms
            low, high = np.where(more, middle, low), np.where(more, high, middle)
        return low * low / ohms

    def sampled(self, ohms: Floats, hours: Floats, points: int = 100) -> Floats:
        """Energy of the only string into many resistances from sampled curves [kWh].

        Each hour has a curve of `points` currents; ``np.interp`` finds the resistances on it.
        """
        (string,) = self.strings
        most = np.max([kind.light for kind in string], axis=0)
        shares = 1.0 - np.linspace(0.0, 1.0, points) ** 2  # close together where the curve bends
        volts = np.zeros((points, len(most)))
        for i, share in enumerate(shares):
            volts[i] = self.string_v(string, share * most)
        power = np.zeros(len(ohms))
        for hour in np.flatnonzero(most > 0.0):
            current = shares * most[hour]
            good = (volts[:, hour] > 0.0) & (current > 0.0)
            loads = volts[good, hour] / current[good]
            found = np.interp(np.log(ohms), np.log(loads), current[good])
            power += hours[hour] * found * found * ohms
        return power / 1000.0
