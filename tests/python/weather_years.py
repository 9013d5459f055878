"""Hourly years that pvlib carries, and what a panel gives into resistances in a weather."""

from __future__ import annotations

import functools
from pathlib import Path

import heatmatch as hm
import numpy as np
import numpy.typing as npt
import pandas as pd
import pvlib
from pvlib import iotools

DATA = Path(pvlib.__file__).parent / "data"
GREENSBORO = DATA / "723170TYA.CSV"
SAND_POINT = DATA / "703165TY.csv"
MIAMI = DATA / "12839.tm2"
RATIOS = np.array([0.6, 0.8, 1.0, 1.4, 2.0, 3.0])
SEASON = (11, 12, 1, 2, 3)


def site_of(meta: dict[str, float], tilt_deg: float) -> hm.Site:
    """A site that looks south from the place of a file."""
    return hm.Site(
        record_low_c=-30,
        latitude_deg=meta["latitude"],
        longitude_deg=meta["longitude"],
        elevation_m=meta["altitude"],
        tilt_deg=tilt_deg,
        azimuth_deg=180,
        albedo=0.2,
    )


@functools.cache
def tmy3(path: Path) -> tuple[pd.DataFrame, dict[str, float]]:
    """A TMY3 file; times are ends of hours."""
    frame, meta = iotools.read_tmy3(path, coerce_year=2025, map_variables=True)
    return frame[["ghi", "dni", "dhi", "temp_air", "wind_speed"]], meta


@functools.cache
def tmy2(path: Path) -> tuple[pd.DataFrame, dict[str, float]]:
    """A TMY2 file by the fixed columns of its manual; times are made ends of hours.

    Source: NREL, User's Manual for TMY2s, table 3-2.
    """
    with path.open(encoding="ascii") as file:
        head = file.readline().split()
        rows = [
            (line[3:5], line[5:7], line[7:9], *(line[a:b] for a, b in COLUMNS)) for line in file
        ]
    table = pd.DataFrame(rows, columns=["month", "day", "hour", *NAMES]).astype(float)
    zone = int(head[3])
    day = pd.to_datetime(table[["month", "day"]].assign(year=2025))
    table.index = pd.DatetimeIndex(day + pd.to_timedelta(table["hour"], "h")).tz_localize(
        f"Etc/GMT{-zone:+d}"
    )
    table["temp_air"] /= 10
    table["wind_speed"] /= 10
    return table[NAMES], {"latitude": 25.8, "longitude": -80.27, "altitude": 2.0}


NAMES = ["ghi", "dni", "dhi", "temp_air", "wind_speed"]
COLUMNS = [(17, 21), (23, 27), (29, 33), (67, 71), (95, 98)]


def energies(
    weather: hm.Weather, panel: hm.Panel, *, rows: npt.NDArray[np.bool_] | None = None
) -> npt.NDArray[np.float64]:
    """Energy of a panel into RATIOS times its Vmp/Imp, operating point by operating point [kWh]."""
    diode = hm.fit_single_diode(panel)
    ohms = RATIOS * panel.v_mp / panel.i_mp
    cell = weather.cell_temperature_c(noct_c=45)
    total = np.zeros(len(ohms))
    sun, hours = weather.plane_irradiance_w_m2, weather.hours
    chosen = sun > 0 if rows is None else rows & (sun > 0)
    for row in np.flatnonzero(chosen):
        curve = diode.at(irradiance_w_m2=float(sun[row]), cell_temperature_c=float(cell[row]))
        total += curve.into_resistance(ohms).power_w * hours[row]
    return total / 1000


def in_season(weather: hm.Weather) -> npt.NDArray[np.bool_]:
    """Rows from November to March."""
    return np.isin(weather.month, SEASON)
