"""Operating points beside pvlib's fastest way, and fits beside pvlib's, in one run.

Run with ``.venv/bin/python -m pytest tests/bench --benchmark-enable -s``; the last test prints the
ratio of the fits. ``season.py`` prints the others.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import clock
import heatmatch as hm
import numpy as np
import pytest
from peers import Loads
from pvlib import ivtools

POINTS = 200_000


@pytest.fixture(scope="module")
def loads() -> Loads:
    """The same points for everybody."""
    return Loads(POINTS)


def test_operating_points_by_heatmatch(benchmark: Callable[..., Any], loads: Loads) -> None:
    assert benchmark(loads.heatmatch).shape == (POINTS,)


def test_operating_points_by_pvlib(benchmark: Callable[..., Any], loads: Loads) -> None:
    power = benchmark(loads.pvlib)
    good = np.isfinite(power)
    np.testing.assert_allclose(loads.heatmatch()[good], power[good], rtol=1e-8)


def test_fits_by_heatmatch(benchmark: Callable[..., Any]) -> None:
    panels = list(hm.Catalog.starter().panels.values())
    fits = benchmark(lambda: [hm.fit_single_diode(panel) for panel in panels])
    assert len(fits) == len(panels)


def test_print_the_ratio_of_the_fits(capsys: pytest.CaptureFixture[str]) -> None:
    panels = list(hm.Catalog.starter().panels.values())

    def ours() -> None:
        for panel in panels:
            hm.fit_single_diode(panel)

    def theirs() -> None:
        for panel in panels:
            ivtools.sdm.fit_desoto_batzelis(
                v_mp=panel.v_mp,
                i_mp=panel.i_mp,
                v_oc=panel.v_oc,
                i_sc=panel.i_sc,
                alpha_sc=panel.alpha_isc_pct_per_k / 100 * panel.i_sc,
                beta_voc=panel.beta_voc_pct_per_k / 100 * panel.v_oc,
            )

    best = clock.best_in_turn({"ours": ours, "theirs": theirs}, 7)
    with capsys.disabled():
        print(
            f"\ndatasheet fit: heatmatch {clock.duration(best['ours'] / len(panels))}, pvlib's "
            f"explicit approximation {clock.duration(best['theirs'] / len(panels))}, ratio "
            f"{clock.ratio_of(best['theirs'], best['ours'])}"
        )
