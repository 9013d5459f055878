"""The skies of twelve months, looked at from panels of another tilt."""

from __future__ import annotations

import pickle

import heatmatch as hm
import numpy as np
import pandas as pd
import pytest
from pvlib import irradiance, solarposition
from weather_years import GREENSBORO, site_of, tmy3


@pytest.fixture(scope="module")
def measured() -> tuple[dict[str, float], dict[int, np.ndarray]]:
    """Greensboro's hours on planes of several tilts, mean daily sums by month [kWh/m2].

    Source: NSRDB TMY3 723170, global, direct and diffuse as filed; planes by pvlib, Hay and Davies.
    """
    frame, meta = tmy3(GREENSBORO)
    middle = frame.index - pd.Timedelta("30min")
    sun = solarposition.get_solarposition(
        middle, meta["latitude"], meta["longitude"], meta["altitude"]
    )
    extra = irradiance.get_extra_radiation(middle.day_of_year.to_numpy())
    sums = {}
    for tilt in (0, 36, 60, 90):
        plane = irradiance.get_total_irradiance(
            tilt,
            180,
            sun["apparent_zenith"].to_numpy(),
            sun["azimuth"].to_numpy(),
            frame["dni"].to_numpy(),
            frame["ghi"].to_numpy(),
            frame["dhi"].to_numpy(),
            dni_extra=extra,
            albedo=0.2,
            model="haydavies",
        )["poa_global"]
        total = pd.Series(np.nan_to_num(plane)).groupby(middle.month).sum() / 1000
        sums[tilt] = total.to_numpy() / np.array([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31])
    return meta, sums


@pytest.mark.parametrize(("given", "wanted"), [(0, 60), (36, 0), (36, 60), (60, 36), (60, 90)])
def test_another_tilt_is_that_of_measured_hours(
    measured: tuple[dict[str, float], dict[int, np.ndarray]], given: int, wanted: int
) -> None:
    meta, sums = measured
    sky = hm.MonthlySky(site_of(meta, given), sums[given], [0] * 12, [10] * 12)
    turned = sky.sun_hours(tilt_deg=wanted)
    ratio = turned / sums[wanted]
    # A flat plane has the least information on the beam of winter.
    month, year = (0.08, 0.03) if given == 0 else (0.05, 0.015)
    assert np.abs(ratio - 1).max() < month
    assert turned.sum() == pytest.approx(sums[wanted].sum(), rel=year)


def test_it_pickles_and_refuses(demo: hm.Installation) -> None:
    sky = hm.MonthlySky(demo.site, **demo.to_dict()["weather"])
    assert pickle.loads(pickle.dumps(sky)).weather(tilt_deg=30) == sky.weather(tilt_deg=30)
    assert sky.weather() == hm.Weather.from_installation(demo)
    assert repr(sky) == "MonthlySky(60 deg tilt)"
    with pytest.raises(hm.InvalidInput, match="site: tilt_deg = 120"):
        sky.weather(tilt_deg=120)
    with pytest.raises(hm.InvalidInput, match="sun_hours = 2 dimensions"):
        hm.MonthlySky(demo.site, [[1.0] * 12], [0] * 12, [10] * 12)
