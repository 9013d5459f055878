"""The months that `start` guesses from the latitude alone, against typical years of three stations.

Sources: TMY3 and TMY2 files of NREL that pvlib carries. The relation was not fitted to them.
"""

from __future__ import annotations

from pathlib import Path

import heatmatch as hm
import numpy as np
import pandas as pd
import pytest
from heatmatch import _library as _core
from weather_years import GREENSBORO, MIAMI, SAND_POINT, tmy2, tmy3

SUN_BAND = 0.35
AIR_BAND_K = 18.0


def monthly(frame: pd.DataFrame) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Mean daily sun [kWh/m2] and mean daily minimum and maximum of the air [°C] of each month."""
    month = frame.index.month
    days = frame.groupby([month, frame.index.day])
    sun = days["ghi"].sum().groupby(level=0).mean() / 1000
    low = days["temp_air"].min().groupby(level=0).mean()
    high = days["temp_air"].max().groupby(level=0).mean()
    return sun.to_numpy(), low.to_numpy(), high.to_numpy()


@pytest.mark.parametrize("station", [GREENSBORO, SAND_POINT, MIAMI], ids=lambda path: path.stem)
def test_guessed_months_lie_within_the_stated_bands_of_typical_years(station: Path) -> None:
    frame, meta = (tmy2 if station == MIAMI else tmy3)(station)
    sun, low, high = monthly(frame)
    answers = [("latitude", f"{meta['latitude']}"), ("mounting", "flat")]
    made, assumed = _core.start_installation(hm.Catalog.starter(), answers)
    told = " ".join(str(one) for one in assumed)
    assert f"{SUN_BAND:.0%}".replace("%", " %") in told or f"{SUN_BAND:.0%}" in told
    assert f"{AIR_BAND_K:.0f} K" in told
    guessed = made.weather
    guessed_sun = np.array(guessed.sun_hours)
    assert guessed_sun.sum() == pytest.approx(sun.sum(), rel=SUN_BAND)
    assert np.abs(np.array(guessed.temp_min_c) - low).max() < AIR_BAND_K
    # The warmest month is at the hot end of its band on purpose.
    warmest = int(np.argmax(guessed.temp_max_c))
    assert guessed.temp_max_c[warmest] > high.max()
    others = np.arange(12) != warmest
    assert np.abs(np.array(guessed.temp_max_c) - high)[others].max() < AIR_BAND_K
