"""Weather through Python: frames, refusals, files; sums against pvlib."""

from __future__ import annotations

import pickle
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import numpy as np
import pandas as pd
import pvlib
import pytest
from weather_years import GREENSBORO, SAND_POINT, energies, in_season, site_of, tmy3

NAN = float("nan")


@pytest.fixture(scope="module")
def frame() -> pd.DataFrame:
    """Two days of June in Greensboro, from the file; times are starts of hours."""
    hours = tmy3(GREENSBORO)[0].shift(-1, freq="h").loc["2025-06-10":"2025-06-11"]
    assert len(hours) == 48
    return hours


@pytest.fixture(scope="module")
def site() -> hm.Site:
    """Panels at 36 degrees in Greensboro."""
    return site_of(tmy3(GREENSBORO)[1], 36)


def refusal(frame: Any, site: hm.Site, **options: Any) -> str:
    with pytest.raises(hm.InvalidInput) as caught:
        hm.Weather.from_frame(frame, site, **options)
    return str(caught.value)


@pytest.mark.parametrize(("path", "tilt"), [(GREENSBORO, 36), (GREENSBORO, 90), (SAND_POINT, 55)])
def test_the_sun_on_the_plane_agrees_with_pvlib(path: Path, tilt: float) -> None:
    hours, meta = tmy3(path)
    ours = hm.Weather.from_frame(
        hours.drop(columns="wind_speed"), site_of(meta, tilt), label="right"
    )
    middle = hours.index - pd.Timedelta("30min")
    sun = pvlib.solarposition.get_solarposition(
        middle, meta["latitude"], meta["longitude"], meta["altitude"]
    )
    up = sun["apparent_zenith"].to_numpy() < 90
    theirs = pvlib.irradiance.get_total_irradiance(
        tilt,
        180,
        sun["apparent_zenith"].to_numpy(),
        sun["azimuth"].to_numpy(),
        np.where(up, hours["dni"], 0.0),
        hours["ghi"].to_numpy(),
        hours["dhi"].to_numpy(),
        dni_extra=pvlib.irradiance.get_extra_radiation(middle.day_of_year.to_numpy()),
        model="haydavies",
        albedo=0.2,
    )
    on_glass = np.asarray(theirs["poa_global"])
    assert ours.heating_irradiance_w_m2.sum() == pytest.approx(on_glass.sum(), rel=0.005)
    for month in range(1, 13):
        rows = ours.month == month
        assert ours.heating_irradiance_w_m2[rows].sum() == pytest.approx(
            on_glass[rows].sum(), rel=0.01
        )
    # Behind the glass: the physical model for the beam, its mean over sky and ground for the rest.
    angle = pvlib.irradiance.aoi(
        tilt, 180, sun["apparent_zenith"].to_numpy(), sun["azimuth"].to_numpy()
    )
    spread = pvlib.iam.marion_diffuse("physical", tilt)
    cells = (
        theirs["poa_direct"] * pvlib.iam.physical(angle)
        + theirs["poa_sky_diffuse"] * spread["sky"]
        + theirs["poa_ground_diffuse"] * spread["ground"]
    )
    assert ours.plane_irradiance_w_m2.sum() == pytest.approx(np.sum(cells), rel=0.01)


@pytest.mark.parametrize(
    ("path", "tilt", "year_pct", "season_pct"),
    [(GREENSBORO, 36, (-3, 0), (-7, -2)), (SAND_POINT, 55, (-9, -4), (-24, -12))],
    ids=["Greensboro", "Sand-Point"],
)
def test_global_light_alone_gives_less_than_with_its_parts(
    path: Path,
    tilt: float,
    year_pct: tuple[float, float],
    season_pct: tuple[float, float],
    starter: hm.Catalog,
) -> None:
    hours, meta = tmy3(path)
    panel = starter.panels["silicon-60-cell-245"]
    site = site_of(meta, tilt)
    parts = hm.Weather.from_frame(hours, site, label="right")
    alone = hm.Weather.from_frame(hours.drop(columns=["dni", "dhi"]), site, label="right")
    year = 100 * (energies(alone, panel) / energies(parts, panel) - 1)
    rows = in_season(parts)
    season = 100 * (energies(alone, panel, rows=rows) / energies(parts, panel, rows=rows) - 1)
    for errors, (low, high) in ((year, year_pct), (season, season_pct)):
        assert (errors > low).all()
        assert (errors < high).all()


def test_the_zone_of_the_clock_does_not_matter(frame: pd.DataFrame, site: hm.Site) -> None:
    here = hm.Weather.from_frame(frame, site)
    assert hm.Weather.from_frame(frame.tz_convert("UTC"), site) == here
    assert hm.Weather.from_frame(frame.tz_convert("Asia/Kolkata"), site) == here
    assert "without a time zone" in refusal(frame.tz_localize(None), site)
    wrong = frame.tz_localize(None).tz_localize("Asia/Tokyo")
    assert "while the sun is down" in refusal(wrong, site)


def test_the_label_says_where_in_its_step_a_time_lies(frame: pd.DataFrame, site: hm.Site) -> None:
    left = hm.Weather.from_frame(frame, site)
    ends = frame.shift(1, freq="h")
    assert hm.Weather.from_frame(ends, site, label="right") == left
    middles = frame.shift(30, freq="min")
    assert hm.Weather.from_frame(middles, site, label="center") == left
    assert hm.Weather.from_frame(middles, site, label=0.5) == left
    for label in ("end", 1.5, None, -0.1):
        assert "label" in refusal(frame, site, label=label)


def test_minutes_are_taken_as_they_are(frame: pd.DataFrame, site: hm.Site) -> None:
    minutes = frame.resample("1min").ffill()
    fine = hm.Weather.from_frame(minutes, site)
    coarse = hm.Weather.from_frame(frame, site)
    assert fine.step_hours == pytest.approx(1 / 60)
    assert not fine.has_cloud_band
    assert coarse.has_cloud_band
    # Held through the hour, the diffuse light is the same and the sun moves on.
    assert fine.irradiation_kwh_m2 == pytest.approx(
        coarse.irradiation_kwh_m2 * len(minutes) / 60 / len(frame), rel=0.03
    )


BAD_ROWS: list[tuple[str, float, str]] = [
    ("ghi", NAN, "ghi_w_m2[12] at 2025-06-10 17:00 UTC = not a number"),
    ("ghi", 1701, "ghi_w_m2[12] at 2025-06-10 17:00 UTC = 1701 W/m2"),
    ("ghi", -11, "ghi_w_m2[12]"),
    ("dni", 1401, "dni_w_m2[12]"),
    ("dhi", -11, "dhi_w_m2[12]"),
    ("temp_air", 300, "not in K"),
    ("temp_air", NAN, "air_c[12]"),
    ("wind_speed", 81, "wind_m_s[12]"),
    ("wind_speed", -1, "wind_m_s[12]"),
]


@pytest.mark.parametrize(("column", "value", "words"), BAD_ROWS)
def test_a_reading_that_cannot_be_is_named(
    column: str, value: float, words: str, frame: pd.DataFrame, site: hm.Site
) -> None:
    bad = frame.astype(float).copy()
    bad.iloc[12, bad.columns.get_loc(column)] = value
    assert words in refusal(bad, site)


BAD_FRAMES: list[tuple[Callable[[pd.DataFrame], Any], str]] = [
    (lambda f: f.rename(columns={"temp_air": "Temp Air"}), 'did you mean "temp_air"?'),
    (lambda f: f.rename(columns={"ghi": "GHI"}), 'did you mean "ghi"?'),
    (lambda f: f.rename(columns={"wind_speed": "WindSpeed"}), 'did you mean "wind_speed"?'),
    (lambda f: f.rename(columns={"temp_air": "temp_aer"}), 'did you mean "temp_air"?'),
    (lambda f: f.rename(columns={"temp_air": "T2m"}), "with temp_air"),
    (lambda f: f.rename(columns={"temp_air": "temp_air_roof"}), "with temp_air"),
    (lambda f: f[["dni", "temp_air"]], "with ghi, or with dni and dhi"),
    (lambda f: pd.concat([f, f[["ghi"]]], axis=1), '"ghi" twice'),
    (lambda f: f.assign(ghi="much"), "column ghi = of"),
    (lambda f: f.reset_index(drop=True), "a DatetimeIndex with a time zone"),
    (lambda f: f.iloc[::-1], "sort the rows by time"),
    (lambda f: f.iloc[[0, 1, 1, 2]], "remove the duplicate row"),
    (lambda f: f.iloc[:1], "2 rows or more"),
    (lambda f: f.iloc[:0], "unix_time_s = 0 values"),
    (lambda f: f.iloc[::2], "steps of 7200 s"),
    (lambda f: f.assign(ghi=0.0, dni=0.0, dhi=0.0), "no sun in 48 rows"),
    (lambda f: f.iloc[0:5], "no sun in 5 rows"),
    (lambda f: f["ghi"], "a pandas DataFrame"),
    (lambda f: f.to_dict(), "a pandas DataFrame"),
]


@pytest.mark.parametrize(("change", "words"), BAD_FRAMES, ids=[words for _, words in BAD_FRAMES])
def test_a_frame_that_cannot_be_used_is_refused(
    change: Callable[[pd.DataFrame], Any], words: str, frame: pd.DataFrame, site: hm.Site
) -> None:
    assert words in refusal(change(frame), site)


def test_the_site_must_know_its_panels(frame: pd.DataFrame, site: hm.Site) -> None:
    for field in ("latitude_deg", "longitude_deg", "tilt_deg"):
        open_site = hm.Site(**{k: v for k, v in site.to_dict().items() if k != field})
        assert f"site: {field} = (missing)" in refusal(frame, open_site)
    bare = {"record_low_c": -20, "latitude_deg": 36, "longitude_deg": -80, "tilt_deg": 36}
    assumed = " ".join(hm.Weather.from_frame(frame, hm.Site(**bare)).assumed)
    for words in ("azimuth_deg = 180 deg", "elevation_m = 0 m", "albedo = 0.2", "turbidity = 3"):
        assert words in assumed
    with pytest.raises(hm.InvalidInput, match="snow_cover_pct = 3 values"):
        hm.Site(record_low_c=-20, snow_cover_pct=[10, 20, 30])


def test_repairs_and_gaps_are_told(frame: pd.DataFrame, site: hm.Site) -> None:
    odd = frame.astype(float).copy()
    odd.iloc[0, odd.columns.get_loc("ghi")] = -3.0
    odd = odd.drop(odd.index[10:13])
    weather = hm.Weather.from_frame(odd, site)
    assert "1 gaps, 3 h missing" in weather.remarks
    assert "1 small negative readings of the sun counted as 0" in weather.remarks
    assert weather.days[5] == pytest.approx(45 / 24)


def test_weather_is_a_value(frame: pd.DataFrame, site: hm.Site) -> None:
    weather = hm.Weather.from_frame(frame, site)
    again = pickle.loads(pickle.dumps(weather))
    assert again == weather
    assert again.assumed == weather.assumed
    assert weather != weather.split_by_cloud()
    assert len(weather) == 48
    assert repr(weather).startswith("Weather(48 rows, 48 h, ")
    with pytest.raises(ValueError, match="read-only"):
        weather.plane_irradiance_w_m2[0] = 1.0
    with pytest.raises(TypeError):
        hash(weather)
    # An array keeps the weather it lies in.
    sun = hm.Weather.from_frame(frame, site).plane_irradiance_w_m2
    np.testing.assert_array_equal(sun, weather.plane_irradiance_w_m2)


def test_weather_from_the_plane_takes_arrays() -> None:
    sun = np.array([0.0, 500.0, 800.0])
    weather = hm.Weather.from_plane(sun, [5, 20, 30], 0.5, month=[1, 1, 2])
    np.testing.assert_array_equal(weather.plane_irradiance_w_m2, sun)
    np.testing.assert_array_equal(weather.cell_temperature_c(noct_c=50), [5, 20, 30])
    assert weather.irradiation_kwh_m2 == pytest.approx(0.65)
    assert weather.clear_w_m2 is None
    assert weather.month.tolist() == [1, 1, 2]
    for month in ([1, 1], [1, 1, 13], [1, 1, 0.5], [1, 1, NAN]):
        with pytest.raises(hm.InvalidInput, match="month"):
            hm.Weather.from_plane(sun, [5, 20, 30], 0.5, month=month)
    with pytest.raises(hm.InvalidInput, match="one dimension"):
        hm.Weather.from_plane(sun.reshape(1, 3), [5, 20, 30], 0.5)
    with pytest.raises(hm.InvalidInput, match="noct_c"):
        weather.cell_temperature_c(noct_c=500)


def test_clear_days_are_brighter_than_any_weather(site: hm.Site) -> None:
    clear = hm.Weather.clear_days(site)
    hourly = hm.Weather.from_frame(tmy3(GREENSBORO)[0], site, label="right")
    assert clear.irradiation_kwh_m2 > 1.2 * hourly.irradiation_kwh_m2
    warm = hm.Weather.clear_days(site, temp_min_c=[20] * 12, temp_max_c=[30] * 12)
    assert warm.base_c.min() > 19
    with pytest.raises(hm.InvalidInput, match="temp_max_c = \\(missing\\)"):
        hm.Weather.clear_days(site, temp_min_c=[20] * 12)


def test_more_sun_than_the_sky_has_is_refused(site: hm.Site) -> None:
    air = [0] * 12, [10] * 12
    with pytest.raises(hm.InvalidInput, match=r"sun_hours\[0\] \(January\) = 12 kWh/m2 must be"):
        hm.Weather.from_months(site, [12] * 12, *air)
    with pytest.raises(hm.InvalidInput, match="sun_hours = 3 values"):
        hm.Weather.from_months(site, [3] * 3, *air)


def test_files_are_read_without_pvlib_only_with_an_error(
    monkeypatch: pytest.MonkeyPatch, site: hm.Site
) -> None:
    monkeypatch.setitem(sys.modules, "pvlib", None)
    for read in (hm.weather.read_tmy3, hm.weather.read_epw, hm.weather.read_pvgis):
        with pytest.raises(ImportError, match=r"libheatmatch\[weather\]"):
            read(GREENSBORO, site)
