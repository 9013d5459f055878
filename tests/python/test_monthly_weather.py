"""A year made from twelve means against the hourly year that the means are of.

Source of the hourly years: NREL, TMY2 and TMY3, as pvlib carries them. What is compared is what
decides a design: the energy of one panel into six resistances, in the heating season and the year.
"""

from __future__ import annotations

from pathlib import Path

import heatmatch as hm
import numpy as np
import pandas as pd
import pytest
from weather_years import (
    GREENSBORO,
    MIAMI,
    RATIOS,
    SAND_POINT,
    energies,
    in_season,
    site_of,
    tmy2,
    tmy3,
)

# Largest error from 0.7 times the best ohms up to twice Vmp/Imp, and at 3 times: a resistance that
# large lives on dim light. One far too small lives on the brightest hours, which places of the same
# means share out differently: at the sea, hours have fewer of them than the means say.
BOUND_PCT = 6.0
DIM_BOUND_PCT = 8.0
FAR_TOO_FEW_OHMS_BOUND_PCT = 13.0


def months(weather: hm.Weather) -> np.ndarray:
    """Mean daily sum before the glass in each month, where no wind is known [kWh/m2]."""
    sums = np.bincount(weather.month, weather.heating_irradiance_w_m2, minlength=13)[1:]
    return np.asarray(sums / 1000 / weather.days)


def air_means(frame: pd.DataFrame) -> tuple[np.ndarray, np.ndarray]:
    """Mean daily low and high of the air in each month of a common year [°C]."""
    daily = frame["temp_air"].to_numpy().reshape(365, 24)
    first = np.cumsum([0, 31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30])
    counts = np.diff([*first, 365])
    low, high = (np.add.reduceat(day, first) / counts for day in (daily.min(1), daily.max(1)))
    return low, high


@pytest.mark.parametrize(
    ("path", "tilt_deg"),
    [(GREENSBORO, 36), (GREENSBORO, 60), (SAND_POINT, 55), (MIAMI, 26)],
    ids=["Greensboro-36", "Greensboro-60", "Sand-Point-55", "Miami-26"],
)
def test_twelve_means_give_the_energy_of_the_hours(
    path: Path, tilt_deg: float, starter: hm.Catalog
) -> None:
    frame, meta = tmy2(path) if path == MIAMI else tmy3(path)
    site = site_of(meta, tilt_deg)
    hourly = hm.Weather.from_frame(frame.drop(columns="wind_speed"), site, label="right")
    lows, highs = air_means(frame)
    made = hm.Weather.from_months(site, months(hourly), lows, highs)
    np.testing.assert_allclose(months(made), months(hourly), rtol=1e-8)

    panel = starter.panels["silicon-60-cell-245"]
    year = 100 * (energies(made, panel) / energies(hourly, panel) - 1)
    season = 100 * (
        energies(made, panel, rows=in_season(made))
        / energies(hourly, panel, rows=in_season(hourly))
        - 1
    )
    curve = hm.EnergyCurve(panel, hourly)
    sensible = 0.7 * curve.best_resistance_ohm / curve.stc_match_ohm <= RATIOS
    for errors in (season, year):
        assert np.abs(errors[sensible & (RATIOS <= 2)]).max() < BOUND_PCT
        assert np.abs(errors[sensible]).max() < DIM_BOUND_PCT
        assert np.abs(errors).max() < FAR_TOO_FEW_OHMS_BOUND_PCT
    # Behind the glass too: the sun comes from the same heights.
    assert made.irradiation_kwh_m2 == pytest.approx(hourly.irradiation_kwh_m2, rel=0.01)


def test_an_installation_has_its_weather_made_from_its_months(demo: hm.Installation) -> None:
    months = demo.to_dict()["weather"]
    own = hm.Weather.from_installation(demo)
    assert own == hm.Weather.from_months(demo.site, **months)
    bare = hm.Installation.from_dict(
        {k: v for k, v in demo.to_dict().items() if k not in ("weather", "goals")}
    )
    with pytest.raises(hm.InvalidInput, match="weather = none must be twelve monthly means"):
        hm.Weather.from_installation(bare)
