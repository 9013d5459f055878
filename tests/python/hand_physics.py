"""The physics of a plan worked by hand: NumPy, SciPy and pvlib, nothing of the library.

Sources: W. De Soto, S. A. Klein, W. A. Beckman 2006, Solar Energy 80 (single diode, translation;
pvlib's calcparams_desoto). H. S. Carslaw, J. C. Jaeger 1959, Conduction of Heat in Solids (line
sources). IEC 60028 (copper). ASTM B258 (gauges). S. W. Churchill, H. H. S. Chu 1975 (free
convection). U.S. Standard Atmosphere 1976 (air). The empirical numbers of sand are the catalog's.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from pvlib import pvsystem
from scipy import optimize, special

Row = dict[str, Any]
Numbers = Any  # a number or an array of them

BOLTZMANN_EV_K = 8.617333262e-5
STEFAN = 5.670374419e-8
ZERO_C = 273.15
STC_K = ZERO_C + 25
SILICON_EV = 1.121
SILICON_EV_PER_K = -0.0002677
BYPASS_V = 0.5


def _band_gap_ratio(kelvin: float) -> float:
    """`ln I0(T) - ln I0(25 °C)`."""
    gap = SILICON_EV * (1 + SILICON_EV_PER_K * (kelvin - STC_K))
    return 3 * np.log(kelvin / STC_K) + (SILICON_EV / STC_K - gap / kelvin) / BOLTZMANN_EV_K


@dataclass
class Diode:
    """Five parameters that meet Isc, Voc, Vmp, Imp and beta of a label, and gamma by Rs(T)."""

    label: Row
    light_a: float
    ln_dark: float
    series_ohm: float
    shunt_s: float
    ideality_v: float
    series_per_k: float = 0.0

    @classmethod
    def fitted(cls, label: Row) -> Diode:
        isc, voc, vmp, imp = (label[name] for name in ("i_sc", "v_oc", "v_mp", "i_mp"))
        alpha = label["alpha_isc_pct_per_k"] / 100 * isc
        beta = label["beta_voc_pct_per_k"] / 100 * voc

        def current(v: float, i: float, five: Any) -> float:
            light, ln_dark, series, shunt, a = five
            inner = v + i * series
            return light - np.exp(ln_dark) * np.expm1(inner / a) - inner * shunt - i

        def misses(five: Any) -> list[float]:
            light, ln_dark, series, shunt, a = five
            slope = np.exp(ln_dark + (vmp + imp * series) / a) / a + shunt
            hot = STC_K + 1
            warm = (light + alpha, ln_dark + _band_gap_ratio(hot), series, shunt, a * hot / STC_K)
            return [
                current(0, isc, five),
                current(voc, 0, five),
                current(vmp, imp, five),
                imp - vmp * slope / (1 + slope * series),  # dP/dV = 0
                current(voc + beta, 0, warm),
            ]

        for ideality in np.arange(0.8, 1.6, 0.1):
            a = ideality * label["cells_in_series"] * BOLTZMANN_EV_K * STC_K
            start = [isc, np.log(isc) - voc / a, 0.3, 0.003, a]
            found = optimize.root(misses, start, options={"xtol": 1e-12})
            if max(map(abs, misses(found.x))) < 1e-8 and min(found.x[2:]) > 0:
                break
        else:
            raise AssertionError(label["id"])
        made = cls(label, *found.x)

        def miss_of_gamma(per_k: float) -> float:
            made.series_per_k = per_k
            low, at, high = (made.points(1000.0, 25.0 + dt)["p_mp"] for dt in (-0.5, 0.0, 0.5))
            return float(100 * (high - low) / at - label["gamma_pmp_pct_per_k"])

        made.series_per_k = float(optimize.brentq(miss_of_gamma, -0.012, 0.012))
        return made

    def parameters(self, sun: Numbers, cell_c: Numbers) -> Any:
        return pvsystem.calcparams_desoto(
            sun,
            cell_c,
            alpha_sc=self.label["alpha_isc_pct_per_k"] / 100 * self.label["i_sc"],
            a_ref=self.ideality_v,
            I_L_ref=self.light_a,
            I_o_ref=np.exp(self.ln_dark),
            R_sh_ref=1 / self.shunt_s,
            R_s=self.series_ohm * (1 + self.series_per_k * (np.asarray(cell_c) - 25)),
            EgRef=SILICON_EV,
            dEgdT=SILICON_EV_PER_K,
        )

    def points(self, sun: Numbers, cell_c: Numbers) -> Any:
        return pvsystem.singlediode(*self.parameters(sun, cell_c))


@dataclass
class Panels:
    """Equal panels of a string; amperes and volts as shares of new ones."""

    diode: Diode
    count: int
    amperes: float = 1.0
    volts: float = 1.0

    def volts_at(self, current: Numbers, parameters: Any) -> Numbers:
        own = self.volts * pvsystem.v_from_i(current / self.amperes, *parameters)
        lowest = -BYPASS_V * self.diode.label["bypass_diodes"]
        return self.count * np.maximum(own, lowest)


def string_current_a(
    string: list[Panels], sun: Numbers, cells_c: list[Numbers], ohm: float
) -> Numbers:
    """Volts of unlike panels added at equal current into a resistance, halved to 1e-15."""
    sun = np.atleast_1d(np.asarray(sun, dtype=float))
    known = [
        panels.diode.parameters(sun, np.atleast_1d(np.asarray(cell_c, dtype=float)))
        for panels, cell_c in zip(string, cells_c, strict=True)
    ]
    low, high = np.zeros_like(sun), np.max([each[0] for each in known], axis=0) * 1.1
    for _ in range(50):
        middle = (low + high) / 2
        volts = sum(p.volts_at(middle, each) for p, each in zip(string, known, strict=True))
        above = volts > middle * ohm
        low, high = np.where(above, middle, low), np.where(above, high, middle)
    return (low + high) / 2


def gauge_m2(awg: int) -> float:
    """ASTM B258."""
    return float(np.pi / 4 * (0.127e-3 * 92 ** ((36 - awg) / 39)) ** 2)


def copper_ohm_per_m(area_m2: float, conductor_c: float) -> float:
    """IEC 60028, strands 2 % longer."""
    return 1.02 / 58e6 / area_m2 * (1 + 0.00393 * (conductor_c - 20))


def air_at(kelvin: float) -> tuple[float, float]:
    """Conductivity [W/mK] and kinematic viscosity [m2/s]."""
    viscosity = 1.458e-6 * kelvin**1.5 / (kelvin + 110.4)
    density = 101325 / (287.05 * kelvin)
    conductivity = 2.64638e-3 * kelvin**1.5 / (kelvin + 245.4 * 10 ** (-12 / kelvin))
    return conductivity, viscosity / density


def film_w_m2k(size_m: float, surface_k: float, air_k: float, *, plate: bool) -> float:
    """Churchill and Chu: free convection at a horizontal cylinder, or at a vertical plate."""
    film_k = (surface_k + air_k) / 2
    conductivity, viscosity = air_at(film_k)
    prandtl = 0.70
    rayleigh = 9.80665 / film_k * abs(surface_k - air_k) * size_m**3 * prandtl / viscosity**2
    least, edge = (0.825, 0.492) if plate else (0.60, 0.559)
    shape = (1 + (edge / prandtl) ** (9 / 16)) ** (8 / 27)
    return float((least + 0.387 * rayleigh ** (1 / 6) / shape) ** 2 * conductivity / size_m)


@dataclass
class Wire:
    """A run of two conductors, by its row in the catalog."""

    area_m2: float
    outer_m: float
    insulation_w_mk: float

    def conductor_c(self, amperes: float, air_c: float, sun: float = 0.0) -> float:
        """Heat made in the conductor and by the sun leaves by convection and radiation."""
        air_k = air_c + ZERO_C
        # Strands lie wider than a solid conductor: 2.32 for 2.05 mm (NEC chapter 9, table 8).
        conductor_m = 2.32 / 2.05 * np.sqrt(4 * self.area_m2 / np.pi)
        inner = np.log(self.outer_m / conductor_m) / (2 * np.pi * self.insulation_w_mk)

        def given_off(surface_k: float) -> float:
            film = film_w_m2k(self.outer_m, surface_k, air_k, plate=False)
            radiated = 0.9 * STEFAN * (surface_k**4 - air_k**4)
            lost = np.pi * self.outer_m * (film * (surface_k - air_k) + radiated)
            return float(lost - 0.9 * sun * self.outer_m)

        def excess(surface_k: float) -> float:
            inside_c = surface_k + given_off(surface_k) * inner - ZERO_C
            made = amperes**2 * copper_ohm_per_m(self.area_m2, inside_c)
            return made - given_off(surface_k)

        surface_k = float(optimize.brentq(excess, air_k + 1e-6, air_k + 300))
        return surface_k + given_off(surface_k) * float(inner) - ZERO_C


@dataclass
class Sand:
    """k(T) and c(T) of a dry granular fill; k by two terms, its integral in closed form."""

    k20: float
    row: Row

    def theta(self, kelvin: float) -> float:
        radiation = 1.856e-7 * self.row["grain_mm"] / 1000
        contact = self.k20 * kelvin**1.25 / 1.25 / 293.15**0.25
        return contact + radiation * (kelvin**4 / 4 - 293.15**3 * kelvin)

    def mean_w_mk(self, a_k: float, b_k: float) -> float:
        if abs(a_k - b_k) < 1e-3:
            a_k, b_k = a_k - 0.5, a_k + 0.5
        return (self.theta(b_k) - self.theta(a_k)) / (b_k - a_k)

    def mean_j_m3k(self, a_k: float, b_k: float) -> float:
        table = self.row["heat_capacity_j_kgk"]
        at = np.linspace(a_k, b_k, 400) - ZERO_C
        knots = [row["t_c"] for row in table], [row["heat_capacity_j_kgk"] for row in table]
        return float(self.row["density_kg_m3"] * np.mean(np.interp(at, *knots)))


@dataclass
class Bed:
    """Upright legs in a round bed that is charged some hours a day, some days."""

    sand: Sand
    diameter_m: float
    height_m: float
    emissivity: float
    top_u: float
    bottom_u: float
    leg_m: float
    rod_m: float  # radius
    legs: list[tuple[float, float]]
    hours: float
    air_c: float
    days: int = 3

    def bulk_k(self, power_w: float) -> tuple[float, float]:
        """Mean of the bed, and its edge: one time constant behind its wall."""
        air_k = self.air_c + ZERO_C
        end_m2 = np.pi / 4 * self.diameter_m**2
        volume = end_m2 * self.height_m
        outer = self.leg_m / 2 * np.sqrt((1 + 6 * volume / (np.pi * self.leg_m**3)) ** (2 / 3) - 1)
        mean = outer * np.exp(-0.5)
        inner = np.arcsinh(self.leg_m / 2 / mean) - np.arcsinh(self.leg_m / 2 / outer)
        bed_k = edge_k = air_k + 10
        for _ in range(100):
            film = film_w_m2k(self.height_m, edge_k, air_k, plate=True)
            radiated = self.emissivity * STEFAN * (edge_k**2 + air_k**2) * (edge_k + air_k)
            ua = (film + radiated) * np.pi * self.diameter_m * self.height_m
            ua += (self.top_u + self.bottom_u) * end_m2
            conductivity = self.sand.mean_w_mk(edge_k, bed_k)
            through = 1 / (1 / ua + inner / (2 * np.pi * conductivity * self.leg_m))
            tau_s = self.sand.mean_j_m3k(air_k, bed_k) * volume / through
            of_days = sum(np.exp(-day * 86400 / tau_s) for day in range(self.days))
            rise = power_w / through * (1 - np.exp(-self.hours * 3600 / tau_s)) * of_days
            bed_k, edge_k = air_k + rise, air_k + rise * through / ua
        self.mean_m = float(mean)
        return float(bed_k), float(edge_k)

    def sheath_c(self, power_w: float) -> float:
        """`Theta(Ts) = Theta(Tb) + q'/2pi sum(asinh(L/2d) - asinh(L/2rho))`, the hottest leg."""
        bed_k, _ = self.bulk_k(power_w)
        half = self.leg_m / 2
        per_m = power_w / (len(self.legs) * self.leg_m)

        def spread(from_leg: tuple[float, float], diffused_m2: float) -> float:
            total = 0.0
            for leg in self.legs:
                d2 = (leg[0] - from_leg[0]) ** 2 + (leg[1] - from_leg[1]) ** 2
                if leg == from_leg:
                    d2 = self.rod_m**2
                    reached = d2 + 2.246 * diffused_m2
                else:
                    reached = d2 * np.exp(special.exp1(d2 / 4 / diffused_m2))
                rho = (reached**-2 + self.mean_m**-4) ** -0.25
                total += max(0.0, np.arcsinh(half / np.sqrt(d2)) - np.arcsinh(half / rho))
            return total

        def of_leg(leg: tuple[float, float]) -> float:
            hot_k = bed_k + 100
            for _ in range(100):
                capacity = self.sand.mean_j_m3k(bed_k, hot_k)
                diffusivity = self.sand.mean_w_mk(bed_k, hot_k) / capacity
                day_m2, charge_m2 = diffusivity * 86400, diffusivity * self.hours * 3600
                total = spread(leg, charge_m2)
                for before in range(1, self.days):
                    started = spread(leg, before * day_m2 + charge_m2)
                    total += started - spread(leg, before * day_m2)
                wanted = self.sand.theta(bed_k) + per_m / (2 * np.pi) * total
                hot_k = optimize.brentq(lambda t, w=wanted: self.sand.theta(t) - w, 250, 3000)
            return float(hot_k) - ZERO_C

        return max(map(of_leg, self.legs))
