"""The energy curve of an array of unlike panels beside the same sum by pvlib, in one run.

Run with ``.venv/bin/python -m pytest tests/bench/bench_unlike.py --benchmark-enable -s``; the last
test prints the ratio.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import clock
import heatmatch as hm
import numpy as np
import pytest
from unlike_peer import UnlikeArray, substrings_of

KINDS = ("silicon-60-cell-245", "silicon-60-cell-270", "silicon-72-cell-355")
WHERE = ((0, 0), (1, 0), (2, 1), (0, 1), (1, 0), (2, 0))  # six panels of three kinds on two planes
NOCT_C = 45.0


class Yard:
    """The array, its weather, and the same by pvlib."""

    def __init__(self) -> None:
        panels = hm.Catalog.starter().panels
        diodes = [hm.fit_single_diode(panels[kind], use_gamma=False) for kind in KINDS]
        south = hm.Weather.from_installation(hm.demo())
        planes = [south, south.on_plane(tilt_deg=40, azimuth_deg=260)]
        self.array = hm.Array([[hm.StringPanel(diodes[kind], substrings=3) for kind, _ in WHERE]])
        self.weathers = [planes[plane] for _, plane in WHERE]
        suns = np.array([plane.plane_irradiance_w_m2 for plane in planes])
        rows = np.flatnonzero(suns.max(axis=0) > 0.0)
        self.hours = np.asarray(south.hours)[rows]
        cells = [np.asarray(plane.cell_temperature_c(noct_c=NOCT_C))[rows] for plane in planes]
        self.peer = UnlikeArray(
            [
                [
                    substrings_of(diodes[kind], suns[plane][rows], cells[plane], WHERE.count(where))
                    for where in dict.fromkeys(WHERE)
                    for kind, plane in [where]
                ]
            ]
        )
        self.ohms = np.geomspace(0.3, 6.0, 64) * self.ours().stc_match_ohm

    def ours(self) -> hm.EnergyCurve:
        """The curve, from rows of weather to 64 resistances."""
        return hm.EnergyCurve(self.array, self.weathers, noct_c=NOCT_C)

    def theirs(self) -> Any:
        """The same sum by pvlib, hour by hour on curves of 100 points [kWh]."""
        return self.peer.sampled(self.ohms, self.hours)


@pytest.fixture(scope="module")
def yard() -> Yard:
    return Yard()


def test_unlike_array_by_heatmatch(benchmark: Callable[..., Any], yard: Yard) -> None:
    curve = benchmark(yard.ours)
    np.testing.assert_allclose(curve.delivered_kwh(yard.ohms), yard.theirs(), rtol=3e-3)


def test_print_the_ratio_of_the_sums(capsys: pytest.CaptureFixture[str], yard: Yard) -> None:
    best = clock.best_in_turn({"ours": yard.ours, "theirs": yard.theirs}, 3)
    with capsys.disabled():
        print(
            f"\nsix panels of three kinds on two planes, 64 resistances: heatmatch "
            f"{clock.duration(best['ours'])}, pvlib hour by hour "
            f"{clock.duration(best['theirs'])}, ratio "
            f"{clock.ratio_of(best['theirs'], best['ours'])}"
        )
