"""Operating points beside pvlib's fastest way, and fits beside pvlib's, in one run.

pvlib's fastest way into a resistor, as far as we found: i_from_v at zero volts by Lambert's W, the
load added to the series resistance, in blocks that stay in the cache. Run with
``.venv/bin/python -m pytest tests/bench --benchmark-enable -s``; the last test prints the ratio.
"""

from __future__ import annotations

import time
from collections.abc import Callable

import heatmatch as hm
import numpy as np
import pytest
from pvlib import ivtools, pvsystem

POINTS = 200_000
BLOCK = 16_384


class Loads:
    """Random modules, suns, temperatures and loads, as arrays."""

    def __init__(self) -> None:
        rng = np.random.default_rng(11)
        diodes = [hm.fit_single_diode(panel) for panel in hm.Catalog.starter().panels.values()]
        curves = []
        for _ in range(2000):
            diode = diodes[rng.integers(len(diodes))]
            sun, cell = rng.uniform(10.0, 1200.0), rng.uniform(-20.0, 70.0)
            curves.append(diode.at(irradiance_w_m2=sun, cell_temperature_c=cell))
        pick = rng.integers(len(curves), size=POINTS)

        def gather(name: str) -> np.ndarray:
            return np.array([getattr(curve, name) for curve in curves])[pick]

        self.light = gather("light_current_a")
        self.ln_i0 = gather("ln_saturation_current")
        self.series = gather("series_resistance_ohm")
        self.shunt = gather("shunt_conductance_s")
        self.ideality = gather("ideality_v")
        match = gather("open_circuit_voltage_v") / gather("short_circuit_current_a")
        self.ohms = match * 10 ** rng.uniform(-1.0, 1.0, POINTS)

    def heatmatch(self) -> np.ndarray:
        """Power by heatmatch."""
        return hm.operating_points(
            self.light, self.ln_i0, self.series, self.shunt, self.ideality, self.ohms
        ).power_w

    def pvlib(self) -> np.ndarray:
        """Power by pvlib, block by block."""
        current = np.empty(POINTS)
        saturation = np.exp(self.ln_i0)
        with np.errstate(divide="ignore"):
            shunt = 1.0 / self.shunt
        for start in range(0, POINTS, BLOCK):
            part = slice(start, start + BLOCK)
            current[part] = pvsystem.i_from_v(
                0.0,
                self.light[part],
                saturation[part],
                self.series[part] + self.ohms[part],
                shunt[part],
                self.ideality[part],
                method="lambertw",
            )
        return current * current * self.ohms


@pytest.fixture(scope="module")
def loads() -> Loads:
    """The same points for everybody."""
    return Loads()


def test_operating_points_by_heatmatch(benchmark: Callable, loads: Loads) -> None:
    assert benchmark(loads.heatmatch).shape == (POINTS,)


def test_operating_points_by_pvlib(benchmark: Callable, loads: Loads) -> None:
    power = benchmark(loads.pvlib)
    good = np.isfinite(power)
    np.testing.assert_allclose(loads.heatmatch()[good], power[good], rtol=1e-8)


def test_fits_by_heatmatch(benchmark: Callable) -> None:
    panels = list(hm.Catalog.starter().panels.values())
    fits = benchmark(lambda: [hm.fit_single_diode(panel) for panel in panels])
    assert len(fits) == len(panels)


def best_of(work: Callable[[], object], rounds: int = 7) -> float:
    """Shortest of several runs [s]."""
    times = []
    for _ in range(rounds):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return min(times)


def test_print_the_ratios(loads: Loads, capsys: pytest.CaptureFixture[str]) -> None:
    ours, theirs = best_of(loads.heatmatch), best_of(loads.pvlib)
    panels = list(hm.Catalog.starter().panels.values())
    fit = best_of(lambda: [hm.fit_single_diode(panel) for panel in panels]) / len(panels)

    def pvlib_fit() -> None:
        for panel in panels:
            ivtools.sdm.fit_desoto_batzelis(
                v_mp=panel.v_mp,
                i_mp=panel.i_mp,
                v_oc=panel.v_oc,
                i_sc=panel.i_sc,
                alpha_sc=panel.alpha_isc_pct_per_k / 100 * panel.i_sc,
                beta_voc=panel.beta_voc_pct_per_k / 100 * panel.v_oc,
            )

    explicit = best_of(pvlib_fit) / len(panels)
    with capsys.disabled():
        print(
            f"\noperating point: heatmatch {1e9 * ours / POINTS:.1f} ns, "
            f"pvlib {1e9 * theirs / POINTS:.1f} ns, ratio {theirs / ours:.2f}"
        )
        print(
            f"datasheet fit: heatmatch {1e6 * fit:.1f} us, pvlib's explicit approximation "
            f"{1e6 * explicit:.1f} us, ratio {explicit / fit:.1f}"
        )
