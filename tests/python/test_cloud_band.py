"""What clouds within the hour do to energy, and whether the band of the hourly means holds it.

Hourly means give one end of the band, the split into sun and overcast the other; the energy summed
over the minutes themselves must lie between them. Sources: minutes measured by NREL on a day of
broken cloud; and minutes drawn after Skartveit and Olseth, The probability density and
autocorrelation of short-term global and beam irradiance, Solar Energy 49 (1992) 477-487 (their
equations read in an open implementation): two beta densities between a lowest and a highest
clear-sky index, by the hour's mean index and its spread.
"""

from __future__ import annotations

from pathlib import Path

import heatmatch as hm
import numpy as np
import numpy.typing as npt
import pandas as pd
import pytest
from scipy.special import gamma
from scipy.stats import beta
from weather_years import GREENSBORO, RATIOS, energies, in_season, site_of, tmy3

MEASURED = Path(__file__).parents[1] / "reference" / "minutes_open.csv"
GOLDEN_CO = {"latitude": 39.742, "longitude": -105.18, "altitude": 1829.0}
# Beyond the band by as much of the energy: the sun moves within an hour, and a minute may be
# brighter than a clear sky or darker than the hour's diffuse light. The measured hours have a low
# sun, which moves most.
TOLERANCE = 0.01
LOW_SUN_TOLERANCE = 0.03
Numbers = npt.NDArray[np.float64]


def check(name: str, minutes: Numbers, hourly: Numbers, split: Numbers, tolerance: float) -> None:
    """Prints the three and checks the ends: small and large resistances."""
    print(f"\n{name}: R/(Vmp/Imp)", *(f"{ratio:7.1f}" for ratio in RATIOS))
    print("hours over minutes [%] ", *(f"{e:7.2f}" for e in 100 * (hourly / minutes - 1)))
    print("split over minutes [%] ", *(f"{e:7.2f}" for e in 100 * (split / minutes - 1)))
    # In between the curve of power over sun bends both ways, and neither is a bound.
    for i in np.flatnonzero((RATIOS <= 0.8) | (RATIOS >= 2.0)):
        low, high = sorted((hourly[i], split[i]))
        assert low * (1 - tolerance) <= minutes[i] <= high * (1 + tolerance), RATIOS[i]
    assert (split > hourly)[RATIOS <= 0.8].all()
    assert (split < hourly)[RATIOS >= 2.0].all()


def test_measured_minutes_lie_in_the_band(starter: hm.Catalog) -> None:
    table = pd.read_csv(MEASURED, comment="#")
    ghi = table["ghi_w_m2"].set_axis(pd.DatetimeIndex(pd.to_datetime(table["time"])))
    frame = pd.DataFrame({"ghi": ghi.astype(float), "temp_air": 0.0})
    # The thin winter air of the high plains is cleaner than the usual turbidity of 3.
    site = hm.Site(**site_of(GOLDEN_CO, 60).to_dict(), linke_turbidity=[2.0] * 12)
    panel = starter.panels["silicon-60-cell-245"]
    minutes = hm.Weather.from_frame(frame, site)
    hourly = hm.Weather.from_frame(frame.resample("1h").mean().dropna(), site)
    assert len(hourly) == 4
    split = hourly.split_by_cloud()
    found = (energies(weather, panel) for weather in (minutes, hourly, split))
    check("measured", *found, LOW_SUN_TOLERANCE)


def spread_of(index: Numbers, rng: np.random.Generator) -> Numbers:
    """Standard deviation of the clear-sky index within each hour, drawn (Skartveit and Olseth)."""
    before, after = np.roll(index, 1), np.roll(index, -1)
    three_hours = np.sqrt(0.5 * ((index - before) ** 2 + (after - index) ** 2))
    weight = np.select([index <= 0.6, index <= 0.9], [1.3, 1.0], 0.7)
    mean = weight * (0.87 * index**2 * (1 - index) + 0.39 * np.sqrt(index) * three_hours)
    mean = np.clip(mean, 1e-6, None)
    shape = 0.88 + 42 * mean**2
    drawn = (-np.log(rng.uniform(1e-6, 1, len(index)))) ** (1 / shape) / gamma(1 + 1 / shape)
    return np.asarray(np.clip(drawn * mean, 1e-4, 0.45))


def minute_indices(index: float, spread: float) -> Numbers:
    """Sixty quantiles of the clear-sky index within an hour, of that mean."""
    classes = np.searchsorted([0.3, 0.6, 0.9], index)
    down, up = [(-0.03, 1.66), (0.2, 4.26), (0.47, 0.89), (2.0, 0.38)][classes]
    lowest = max(0.0, (index - 0.03) * np.exp(-11 * down * spread**1.4) - 0.09)
    highest = (index - 1.5) * np.exp(-9 * up * spread**1.3) + 1.5
    width = highest - lowest
    mean, part = (index - lowest) / width, spread / width
    if not 0 < mean < 1:
        return np.full(60, index)
    first = mean * (0.01 + 0.98 * np.exp(-60 * part**3.3))
    second = (mean - 1) * (0.01 + 0.98 * np.exp(-11 * part**2)) + 1
    share = (second - mean) / (second - first)
    grid = np.linspace(0, 1, 401)
    cdf = np.zeros_like(grid)
    for centre, most, weight in ((first, 0.014, share), (second, 0.006, 1 - share)):
        limits = (
            most,
            centre**2 * (1 - centre) / (1 + centre),
            centre * (1 - centre) ** 2 / (2 - centre),
        )
        variance = min(limits)
        a = max(1.0, centre**2 * (1 - centre) / variance - centre)
        b = max(1.0, (centre * (1 - centre) - variance) * (1 - centre) / variance)
        cdf += weight * beta.cdf(grid, a, b)
    drawn = lowest + width * np.interp((np.arange(60) + 0.5) / 60, cdf, grid)
    return np.asarray(drawn * index / drawn.mean())


def drawn_minutes(days: range) -> tuple[pd.DataFrame, pd.DataFrame]:
    """Minutes and hours of those days of the year of Greensboro; times are starts."""
    hours = tmy3(GREENSBORO)[0].shift(-1, freq="h")[["ghi", "temp_air"]]
    hours = hours.iloc[np.concatenate([np.arange(24 * day, 24 * day + 24) for day in days])]
    steps = pd.to_timedelta(np.tile(np.arange(60), len(hours)), "min")
    times = pd.DatetimeIndex(np.repeat(hours.index, 60) + steps)
    sun = hm.sun_position(36.1, -79.95, 273.0, times + pd.Timedelta("30s"))
    clear = hm.clear_sky(
        sun.apparent_zenith_deg,
        elevation_m=273.0,
        extraterrestrial_w_m2=sun.extraterrestrial_w_m2,
    ).ghi_w_m2.reshape(-1, 60)
    index = np.clip(hours["ghi"].to_numpy() / np.maximum(clear.mean(1), 1.0), 0, 1.1)
    spread = spread_of(index, np.random.default_rng(7))
    rng = np.random.default_rng(8)
    drawn = np.zeros_like(clear)
    for hour in np.flatnonzero(clear.mean(1) > 30):
        drawn[hour] = rng.permutation(minute_indices(index[hour], spread[hour]))
    ghi = (drawn * clear).ravel()
    split = hm.erbs_split(ghi, sun.zenith_deg, sun.extraterrestrial_w_m2)
    minutes = pd.DataFrame(
        {
            "ghi": ghi,
            "dni": np.minimum(split.dni_w_m2, 1100.0),
            "dhi": split.dhi_w_m2,
            "temp_air": np.repeat(hours["temp_air"].to_numpy(), 60),
        },
        index=times,
    )
    return minutes, minutes.resample("1h").mean().dropna()


@pytest.mark.parametrize("season", [True, False], ids=["season", "year"])
def test_drawn_minutes_lie_in_the_band(season: bool, starter: hm.Catalog) -> None:
    frame, means = drawn_minutes(range(2, 365, 9))
    site = site_of(tmy3(GREENSBORO)[1], 36)
    panel = starter.panels["silicon-60-cell-245"]
    minutes = hm.Weather.from_frame(frame, site)
    hourly = hm.Weather.from_frame(means, site)
    split = hourly.split_by_cloud()
    found = []
    for weather in (minutes, hourly, split):
        rows = in_season(weather) if season else None
        found.append(energies(weather, panel, rows=rows))
    check("drawn", *found, TOLERANCE)
