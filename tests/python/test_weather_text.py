"""Weather files in any encoding and spelling, leap years among their months, and their wind."""

from __future__ import annotations

import codecs
import json
from pathlib import Path

import heatmatch as hm
import numpy as np
import pandas as pd
import pytest
from test_weather_files import PANELS, YEARS, write_epw
from weather_years import GREENSBORO, SAND_POINT, energies, in_season, site_of, tmy3


@pytest.fixture(scope="module")
def text() -> str:
    """The file with a place's name that is not ASCII."""
    return GREENSBORO.read_bytes().decode("latin-1").replace("GREENSBORO", "CAÑÓN DEL PEÑASCO")


@pytest.fixture(scope="module")
def year() -> hm.Weather:
    """What the file gives as it is."""
    return hm.weather.read_tmy3(GREENSBORO, PANELS)


# Source: the encodings that Python documents, and the marks of Unicode 15, chapter 23.8.
@pytest.mark.parametrize(
    ("encoding", "mark"),
    [
        ("utf-8", b""),
        ("utf-8", codecs.BOM_UTF8),
        ("utf-16-le", codecs.BOM_UTF16_LE),
        ("utf-16-be", codecs.BOM_UTF16_BE),
        ("utf-32-le", codecs.BOM_UTF32_LE),
        ("latin-1", b""),
        ("cp1252", b""),
    ],
)
def test_a_file_is_read_in_any_common_encoding(
    encoding: str, mark: bytes, text: str, year: hm.Weather, tmp_path: Path
) -> None:
    path = tmp_path / "year.csv"
    path.write_bytes(mark + text.encode(encoding))
    assert hm.weather.read_file(path, PANELS) == year


@pytest.mark.parametrize("ends", ["\r\n", "\r"])
def test_lines_may_end_in_any_way(ends: str, text: str, year: hm.Weather, tmp_path: Path) -> None:
    path = tmp_path / "year.csv"
    path.write_bytes("\n".join(text.splitlines()).replace("\n", ends).encode("latin-1"))
    assert hm.weather.read_tmy3(path, PANELS) == year


def test_what_is_no_text_is_refused_as_such(tmp_path: Path, text: str) -> None:
    path = tmp_path / "year.csv"
    for raw in (text.encode("utf-16-le"), b"\0" * 100, codecs.BOM_UTF8 + b"\xff\xfe"):
        path.write_bytes(raw)
        with pytest.raises(hm.InvalidInput, match=r"must be a text; save it as text in UTF-8"):
            hm.weather.read_tmy3(path, PANELS)
    with pytest.raises(hm.FileError, match="is a folder"):
        hm.weather.read_tmy3(tmp_path, PANELS)


def respelt(text: str, *changes: tuple[str, str]) -> str:
    first, header, rest = text.split("\n", 2)
    for known, other in changes:
        assert known in header
        header = header.replace(known, other, 1)
    return "\n".join([first, header, rest])


def test_headers_spelt_otherwise_are_found(text: str, year: hm.Weather, tmp_path: Path) -> None:
    path = tmp_path / "year.csv"
    path.write_text(
        respelt(
            text,
            ("Date (MM/DD/YYYY)", "date (mm/dd/yyyy)"),
            ("Time (HH:MM)", " Time (HH:MM)"),
            ("GHI (W/m^2)", "ghi [W/m2]"),
            ("DNI (W/m^2)", "DNI"),
            ("DHI (W/m^2)", "Dhi(W/m²)"),
            ("Dry-bulb (C)", "Dry bulb (°C)"),
            ("Wspd (m/s)", "WSPD [m/s]"),
        ),
        encoding="utf-8",
    )
    assert hm.weather.read_tmy3(path, PANELS) == year


@pytest.mark.parametrize(
    ("known", "other", "words"),
    [
        ("Dry-bulb (C)", "Dry-bulb (F)", r"\(F\) = in F must be in the unit of Dry-bulb \(C\)"),
        ("Wspd (m/s)", "Wspd (km/h)", r"in km/h must be in the unit of Wspd \(m/s\)"),
        ("Dry-bulb (C)", "Outside", "with temp_air"),
        ("Date (MM/DD/YYYY)", "Day", "Date"),
    ],
)
def test_headers_that_are_not_found_are_named(
    known: str, other: str, words: str, text: str, tmp_path: Path
) -> None:
    path = tmp_path / "year.csv"
    path.write_text(respelt(text, (known, other)), encoding="utf-8")
    with pytest.raises(hm.InvalidInput, match=words):
        hm.weather.read_tmy3(path, PANELS)


def test_months_of_leap_years_and_of_others_make_one_year(tmp_path: Path) -> None:
    hours = tmy3(GREENSBORO)[0].shift(-1, freq="h")
    path = tmp_path / "year.epw"
    write_epw(path, hours)
    plain = hm.weather.read_epw(path, PANELS)
    lines = path.read_text(encoding="utf-8").splitlines()
    # February from a leap year, with its last day; the others from years without one.
    leap = [line.replace("2011,2,28,", "2012,2,29,") for line in lines if ",2,28," in line]
    february = [line.replace("2011,2,", "2012,2,") for line in lines]
    after = max(i for i, line in enumerate(february) if line.startswith("2012,2,28,")) + 1
    assert YEARS[1] == 2011
    path.write_text("\n".join([*february[:after], *leap, *february[after:]]), encoding="utf-8")
    mixed = hm.weather.read_epw(path, PANELS)
    assert len(mixed) == len(plain) + 24
    assert mixed.days[1] == pytest.approx(plain.days[1] + 1, abs=0.2)
    assert mixed.irradiation_kwh_m2 == pytest.approx(plain.irradiation_kwh_m2, rel=0.01)
    # A year that is one of those that were, whole, stays as it is.
    write_epw(path, hours, [2023] * 12)
    assert len(hm.weather.read_epw(path, PANELS)) == 8760


def test_the_columns_of_pvgis_may_be_spelt_otherwise(tmp_path: Path) -> None:
    rows = [f"2010{t:%m%d:%H%M}" for t in pd.date_range("2010-01-01", periods=8760, freq="h")]
    sun = np.clip(900 * np.sin(np.pi * ((np.arange(8760) + 0.6) % 24 - 6) / 12), 0, None) * 0.5
    head = "Latitude (decimal degrees): 45.0\nLongitude (decimal degrees): 0.0\nElevation (m): 9\n"
    head += "month,year\n" + "".join(f"{month},2010\n" for month in range(1, 13))
    read = {}
    for name in (
        "time(UTC),T2m,G(h),Gb(n),Gd(h),WS10m",
        "Time (UTC), t2m [°C],G(H),gb(n),Gd(h),ws10m",
    ):
        table = "".join(f"{t},9.5,{g:.0f},0,{g:.0f},3\n" for t, g in zip(rows, sun, strict=True))
        path = tmp_path / "year.csv"
        path.write_text(head + name + "\n" + table, encoding="latin-1")
        read[name] = hm.weather.read_file(path, PANELS)
    first, second = read.values()
    assert first == second
    assert any("of the wind at 10 m" in text for text in first.assumed)


def test_wind_of_a_mast_is_brought_down_to_the_panels_and_told(tmp_path: Path) -> None:
    frame, meta = tmy3(GREENSBORO)
    site = site_of(meta, 36)
    mast = hm.Weather.from_frame(frame, site, label="right")
    told = [text for text in mast.assumed if "wind_m_s" in text]
    assert told == ["weather: wind_m_s = 74.8% of the wind at 10 m, converted to 2 m (fao-56)"]
    # Source: FAO Irrigation and Drainage Paper 56, equation 47, put in by hand.
    slower = frame.assign(wind_speed=frame["wind_speed"] * 4.87 / np.log(67.8 * 10 - 5.42))
    there = hm.Weather.from_frame(slower, site, label="right", wind_height_m=2.0)
    np.testing.assert_allclose(
        mast.heating_irradiance_w_m2, there.heating_irradiance_w_m2, rtol=1e-3
    )  # 4.87 is 4.869
    assert not any("wind_m_s" in text for text in there.assumed)
    # The higher the mast, the less is left, the warmer the cells.
    hot = [
        hm.Weather.from_frame(
            frame, site, label="right", wind_height_m=height
        ).heating_irradiance_w_m2.sum()
        for height in (2, 3, 10, 30, 100)
    ]
    assert hot == sorted(hot)
    for height in (0, -1, 301, float("nan"), float("inf")):
        with pytest.raises(hm.InvalidInput, match="wind_height_m"):
            hm.Weather.from_frame(frame, site, wind_height_m=height)
    assert hm.weather.read_tmy3(GREENSBORO, site) == mast
    told_of = json.dumps(hm.weather.read_tmy3(GREENSBORO, site, wind_height_m=2.0).assumed)
    assert "wind_m_s" not in told_of


def test_the_wind_of_a_mast_brought_down_warms_cells(starter: hm.Catalog) -> None:
    panel = starter.panels["silicon-60-cell-245"]
    for path, tilt in ((GREENSBORO, 36), (SAND_POINT, 55)):
        frame, meta = tmy3(path)
        mast, panels = (
            hm.Weather.from_frame(frame, site_of(meta, tilt), label="right", wind_height_m=height)
            for height in (10.0, 2.0)
        )
        rows = in_season(mast)
        less = 100 * (energies(mast, panel, rows=rows) / energies(panels, panel, rows=rows) - 1)
        warmer = (mast.cell_temperature_c(noct_c=45) - panels.cell_temperature_c(noct_c=45)).max()
        # Into little resistance a panel is a source of current, which warmth raises a little.
        assert less.min() < 0
        assert less.max() < 0.5
        assert warmer > 0
