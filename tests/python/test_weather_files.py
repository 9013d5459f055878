"""Files of typical years: the place, the label of the hours and the columns are those of the file.

The EPW and PVGIS files are written here from the hours of Greensboro, in the formats that the
readers of pvlib document; the sun on the panels must be that of the hours themselves.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import numpy as np
import pandas as pd
import pytest
from weather_years import GREENSBORO, site_of, tmy3

PANELS = hm.Site(record_low_c=-20, tilt_deg=36, azimuth_deg=180, albedo=0.2)
YEARS = [2003, 2011, 2007, 2003, 2015, 2004, 2012, 2009, 2003, 2016, 2005, 2010]


@pytest.fixture(scope="module")
def hours() -> pd.DataFrame:
    """The year, its times the starts of hours."""
    return tmy3(GREENSBORO)[0].shift(-1, freq="h")


@pytest.fixture(scope="module")
def direct(hours: pd.DataFrame) -> hm.Weather:
    """The weather that the files must give."""
    return hm.Weather.from_frame(hours, site_of(tmy3(GREENSBORO)[1], 36))


def write_epw(path: Path, hours: pd.DataFrame, years: list[int] = YEARS) -> None:
    """Eight header lines, then 35 columns; hours count from 1, each month has its own year."""
    lines = ["LOCATION,Greensboro,NC,USA,TMY3,723170,36.1,-79.95,-5.0,273.0"]
    lines += ["HEADER"] * 7
    for time, row in hours.iterrows():
        cells = ["0"] * 35
        cells[:6] = [years[time.month - 1], time.month, time.day, time.hour + 1, 60, "?"]
        cells[6] = row.temp_air
        cells[13], cells[14], cells[15] = row.ghi, row.dni, row.dhi
        cells[21] = row.wind_speed
        lines.append(",".join(str(cell) for cell in cells))
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")


def write_pvgis(path: Path, hours: pd.DataFrame) -> None:
    """JSON in UTC; the sun is that of half an hour after the full hour."""
    in_utc = hours.tz_convert("UTC").sort_index()
    rows = [
        {
            "time(UTC)": f"{YEARS[time.month - 1]}{time:%m%d:%H%M}",
            "T2m": row.temp_air,
            "G(h)": row.ghi,
            "Gb(n)": row.dni,
            "Gd(h)": row.dhi,
            "WS10m": row.wind_speed,
        }
        for time, row in in_utc.iterrows()
    ]
    place = {
        "latitude": 36.1,
        "longitude": -79.95,
        "elevation": 273.0,
        "irradiance_time_offset": 0.5,
    }
    rows = sorted(rows, key=lambda row: str(row["time(UTC)"])[4:])  # as a typical year has them
    content = {
        "inputs": {"location": place},
        "outputs": {"months_selected": [], "tmy_hourly": rows},
        "meta": {"inputs": {}},
    }
    path.write_text(json.dumps(content), encoding="utf-8")


def same(weather: hm.Weather, direct: hm.Weather) -> None:
    """The same year: the sun to the calendar's shift of days, the air and wind alike."""
    assert len(weather) == len(direct) == 8760
    assert weather.irradiation_kwh_m2 == pytest.approx(direct.irradiation_kwh_m2, rel=1e-3)
    assert weather.heating_irradiance_w_m2.sum() == pytest.approx(
        direct.heating_irradiance_w_m2.sum(), rel=1e-3
    )
    assert np.sort(weather.base_c).tolist() == np.sort(direct.base_c).tolist()
    np.testing.assert_allclose(weather.days, direct.days, atol=0.5)


def test_a_tmy3_file_is_its_hours(direct: hm.Weather) -> None:
    weather = hm.weather.read_tmy3(GREENSBORO, PANELS)
    np.testing.assert_allclose(
        weather.plane_irradiance_w_m2, direct.plane_irradiance_w_m2, atol=1e-9
    )
    assert weather.remarks == []


def test_an_epw_file_is_its_hours(tmp_path: Path, hours: pd.DataFrame, direct: hm.Weather) -> None:
    path = tmp_path / "greensboro.epw"
    write_epw(path, hours)
    same(hm.weather.read_epw(path, PANELS), direct)


def test_a_typical_year_of_pvgis_is_its_hours(
    tmp_path: Path, hours: pd.DataFrame, direct: hm.Weather
) -> None:
    path = tmp_path / "greensboro.json"
    write_pvgis(path, hours)
    same(hm.weather.read_pvgis(path, PANELS), direct)


def test_the_place_of_the_site_wins_over_that_of_the_file() -> None:
    elsewhere = hm.Site(**(PANELS.to_dict() | {"latitude_deg": 36.1, "elevation_m": 1000}))
    weather = hm.weather.read_tmy3(GREENSBORO, elsewhere)
    assert not any("elevation_m" in text for text in weather.assumed)
    far = hm.Site(**(PANELS.to_dict() | {"longitude_deg": 100}))
    with pytest.raises(hm.InvalidInput, match="while the sun is down"):
        hm.weather.read_tmy3(GREENSBORO, far)


@pytest.mark.parametrize("read", [hm.weather.read_tmy3, hm.weather.read_epw, hm.weather.read_pvgis])
def test_what_is_no_such_file_is_refused(read: Callable[..., hm.Weather], tmp_path: Path) -> None:
    with pytest.raises(hm.FileError, match="no such file"):
        read(tmp_path / "nowhere.csv", PANELS)
    wrong = tmp_path / "wrong.csv"
    wrong.write_text("a,b\n1,2\n", encoding="utf-8")
    with pytest.raises(
        hm.InvalidInput, match=r"(?s)wrong\.csv: cannot be read as .*Weather\.from_frame"
    ):
        read(wrong, PANELS)


def test_a_file_does_not_know_the_panels() -> None:
    with pytest.raises(hm.InvalidInput, match="the tilt of the panels"):
        hm.weather.read_tmy3(GREENSBORO)


def test_the_kind_of_a_file_is_told_by_its_name_and_content(
    tmp_path: Path, hours: pd.DataFrame, direct: hm.Weather
) -> None:
    write_epw(tmp_path / "year.EPW", hours)
    write_pvgis(tmp_path / "year.json", hours)
    for path in (tmp_path / "year.EPW", tmp_path / "year.json", GREENSBORO):
        same(hm.weather.read_file(path, PANELS), direct)
    with pytest.raises(hm.InvalidInput, match=r"\.epw, \.csv or \.json"):
        hm.weather.read_file(tmp_path / "year.tm2", PANELS)
    with pytest.raises(hm.FileError, match="no such file"):
        hm.weather.read_file(tmp_path / "nowhere.csv", PANELS)


def test_the_command_line_ranks_with_a_file_of_weather(
    command: Callable[..., Any], demo: hm.Installation, tmp_path: Path
) -> None:
    place = demo.to_dict()
    del place["weather"]
    for name in ("latitude_deg", "longitude_deg", "elevation_m"):
        del place["site"][name]
    path = tmp_path / "place.json"
    path.write_text(json.dumps(place), encoding="utf-8")
    done = command("rank", path, "--top", 2, "--weather", GREENSBORO)
    assert (done.code, done.err) == (0, "")
    assert "kWh/day" in done.out
    without = command("rank", path, "--top", 2, "--full")
    assert "Without weather data, ranked by power" in " ".join(without.out.split())
    data = json.loads(command("assess", path, "--weather", GREENSBORO, "--json").out)
    assert data["season_kwh"] > 0.0
