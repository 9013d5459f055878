"""Operating points against 40-digit arithmetic.

Source: the single-diode equation itself (De Soto 2006), solved with mpmath at 40 digits; the
translation to sun and temperature is repeated here in the same digits. Tolerance 1e-12 relative.
"""

from __future__ import annotations

import random

import heatmatch as hm
import mpmath as mp
import pytest

mp.mp.dps = 40
BOLTZMANN_EV = mp.mpf("8.617333262e-05")
ZERO_C = mp.mpf("273.15")


def exact_current(diode: hm.SingleDiode, sun: float, cell: float, ohms: float) -> mp.mpf:
    """Current into `ohms` by bisection and Newton on the 40-digit equation."""
    t0 = 25 + ZERO_C
    t = mp.mpf(cell) + ZERO_C
    dt = mp.mpf(cell) - 25
    share = mp.mpf(sun) / 1000
    light = share * (mp.mpf(diode.light_current_a) + mp.mpf(diode.alpha_isc_a_per_k) * dt)
    gap0 = mp.mpf(diode.band_gap_ev)
    gap = gap0 * (1 + mp.mpf(diode.band_gap_per_k) * dt)
    ln_i0 = mp.mpf(diode.ln_saturation_current) + 3 * mp.log(t / t0)
    ln_i0 += gap0 / (BOLTZMANN_EV * t0) - gap / (BOLTZMANN_EV * t)
    i0 = mp.exp(ln_i0)
    a = mp.mpf(diode.modified_ideality_v) * t / t0
    shunt = mp.mpf(diode.shunt_conductance_s) * share
    rs = mp.mpf(diode.series_resistance_ohm)
    total = rs + mp.mpf(ohms)
    # x = V + I Rs: light + i0 - i0 exp(x/a) - (shunt + 1/total) x = 0, falling in x.
    slope = shunt + 1 / total

    def surplus(x: mp.mpf) -> mp.mpf:
        return light + i0 - i0 * mp.exp(x / a) - slope * x

    low, high = mp.mpf(0), (light + i0) / slope
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if surplus(middle) > 0 else (low, middle)
    x = (low + high) / 2
    for _ in range(12):
        x -= surplus(x) / (-i0 * mp.exp(x / a) / a - slope)
    assert abs(surplus(x)) < mp.mpf("1e-30") * (light + i0)
    return x / total


def random_points(count: int) -> list[tuple[hm.SingleDiode, float, float, float]]:
    """Modules over the whole range of real ones, suns 1 to 1300, loads 1e-4 to 1e6 ohm."""
    rng = random.Random(20)
    points = []
    for n in range(count):
        cells = rng.choice([20, 36, 60, 72, 96, 170])
        light = rng.uniform(0.5, 18.0)
        ideality = cells * 0.0257 * rng.uniform(0.9, 2.2)
        v_oc = cells * rng.uniform(0.5, 0.9)
        diode = hm.SingleDiode(
            light_current_a=light,
            saturation_current_a=light * float(mp.exp(-v_oc / ideality)),
            series_resistance_ohm=0.0 if n % 9 == 0 else rng.uniform(0.01, 3.0),
            shunt_resistance_ohm=float("inf") if n % 7 == 0 else rng.uniform(30.0, 5000.0),
            modified_ideality_v=ideality,
            alpha_isc_a_per_k=light * rng.uniform(0.0, 1e-3),
        )
        sun = 10 ** rng.uniform(0.0, 3.1139) if n % 3 else rng.choice([1.0, 1000.0, 1300.0])
        ohms = 10 ** rng.uniform(-4.0, 6.0)
        points.append((diode, sun, rng.uniform(-40.0, 85.0), ohms))
    return points


@pytest.mark.parametrize("block", range(6))
def test_operating_points_agree_with_forty_digits(block: int) -> None:
    points = random_points(300)[block::6]
    assert len(points) == 50
    for diode, sun, cell, ohms in points:
        current = exact_current(diode, sun, cell, ohms)
        curve = diode.at(irradiance_w_m2=sun, cell_temperature_c=cell)
        point = curve.into_resistance(ohms)
        worst = abs(mp.mpf(point.current_a) / current - 1)
        assert worst < mp.mpf("1e-12"), (sun, cell, ohms, float(worst))
        power = current * current * mp.mpf(ohms)
        assert abs(mp.mpf(point.power_w) / power - 1) < mp.mpf("2e-12")
