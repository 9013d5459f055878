"""Hourly years of sun and air from many places, and the twelve means of each.

Three lie in pvlib's wheel, the others among the test data of its source distribution, which the
long run fetches (or finds unpacked where HEATMATCH_PVLIB_SOURCE points): stations (TMY3, TMY2 and
IWEC files, their sun largely modelled from clouds seen) and satellites (PVGIS, NSRDB,
SolarAnywhere, their hours moments rather than means).
"""

from __future__ import annotations

import os
import subprocess
import sys
import tarfile
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

import heatmatch as hm
import numpy as np
import numpy.typing as npt
import pandas as pd
import pvlib
from pvlib import iotools
from weather_years import GREENSBORO, MIAMI, NAMES, SAND_POINT, site_of, tmy2, tmy3

Numbers = npt.NDArray[np.float64]
Frame = tuple[pd.DataFrame, dict[str, float]]
COLORADO = {"latitude": 40.53, "longitude": -108.54, "altitude": 2168.0}


@dataclass(frozen=True)
class HourlyYear:
    """A year on panels that look to the equator."""

    name: str
    tilt_deg: float
    site: hm.Site
    hours: hm.Weather
    lows_c: Numbers
    highs_c: Numbers

    def sums(self) -> Numbers:
        """Mean daily sum before the glass in each month, where no wind is known [kWh/m2]."""
        hours = self.hours
        sums = np.bincount(hours.month, hours.heating_irradiance_w_m2 * hours.hours, minlength=13)[
            1:
        ]
        return np.asarray(sums / 1000 / hours.days)

    def months(self) -> hm.Weather:
        """The year that is made from its twelve means."""
        return hm.Weather.from_months(self.site, self.sums(), self.lows_c, self.highs_c)


def common_year(frame: pd.DataFrame) -> pd.DataFrame:
    """The same hours, all in one year without a leap day, in order."""
    frame = frame[~((frame.index.month == 2) & (frame.index.day == 29))]
    moments = pd.DatetimeIndex([moment.replace(year=2025) for moment in frame.index])
    return frame.set_axis(moments).sort_index()


def amsterdam(data: Path) -> Frame:
    """An EPW file of IWEC; pvlib labels its hours at their start."""
    frame, meta = iotools.read_epw(data / "NLD_Amsterdam062400_IWEC.epw", coerce_year=2025)
    return frame[NAMES], meta


def piedmont(data: Path) -> Frame:
    """A typical year of PVGIS; the satellite looks 0.1761 h after each moment, as its file says."""
    table = pd.read_csv(data / "pvgis_tmy_test.csv")
    table.index = pd.to_datetime(table["time(UTC)"], format="%Y%m%d:%H%M").dt.tz_localize("UTC")
    table = table.rename(
        columns={
            "T2m": "temp_air",
            "G(h)": "ghi",
            "Gb(n)": "dni",
            "Gd(h)": "dhi",
            "WS10m": NAMES[4],
        }
    )
    meta = {"latitude": 45.0, "longitude": 8.0, "altitude": 250.0}
    return common_year(table[NAMES].astype(float)), meta


def burlington(data: Path) -> Frame:
    """The year 2021 by satellite in the columns of TMY3; times are ends of hours."""
    (path,) = data.glob("Burlington*TMY3 format.csv")
    table = pd.read_csv(path, skiprows=1, encoding="latin-1")
    day, hour = pd.to_datetime(table.iloc[:, 0]), table.iloc[:, 1].str[:2].astype(int)
    heads = ("GHI (", "DNI (", "DHI (", "Dry-bulb (", "Wspd (")
    columns = [next(name for name in table.columns if name.startswith(head)) for head in heads]
    frame = table[columns].astype(float).set_axis(NAMES, axis=1)
    frame.index = pd.DatetimeIndex(day + pd.to_timedelta(hour, "h")).tz_localize("Etc/GMT+5")
    return frame, {"latitude": 44.465, "longitude": -73.205, "altitude": 41.0}


def nsrdb(name: str) -> Callable[[Path], Frame]:
    """A year of NSRDB at 40.5 N in Colorado; times are the moments of its pictures."""

    def read(data: Path) -> Frame:
        table = pd.read_csv(data / name)
        heads = ("GHI", "DNI", "DHI", "Temperature", "Wind Speed")
        when = pd.to_datetime(table[["Year", "Month", "Day", "Hour", "Minute"]])
        table.index = pd.DatetimeIndex(when).tz_localize("Etc/GMT+7")
        table = table.rename(columns=dict(zip(heads, NAMES, strict=True)))
        return common_year(table[NAMES].astype(float)), COLORADO

    return read


def golden(data: Path) -> Frame:
    """A TMY2 year as PVWatts gives it back; its hours begin at their number."""
    table = pd.read_csv(data / "pvwatts_8760_rackmount.csv", skiprows=17)
    table = table[pd.to_numeric(table["Hour"], errors="coerce").notna()].astype(float)
    when = pd.to_datetime(table[["Month", "Day", "Hour"]].assign(year=2025))
    table.index = pd.DatetimeIndex(when).tz_localize("Etc/GMT+7")
    heads = {"Beam": "dni", "Diffuse": "dhi", "Ambient": "temp_air", "Wind": NAMES[4]}
    table = table.rename(columns=lambda name: heads.get(name.split()[0], name))
    return table[list(heads.values())], {
        "latitude": 39.73,
        "longitude": -105.18,
        "altitude": 1820.0,
    }


# Name, reader, where in its step a time lies, tilts.
WHEEL: tuple[tuple[str, Callable[[Path], Frame], str | float, tuple[float, ...]], ...] = (
    ("Greensboro", lambda _: tmy3(GREENSBORO), "right", (36, 60)),
    ("Sand Point", lambda _: tmy3(SAND_POINT), "right", (55, 30)),
    ("Miami", lambda _: tmy2(MIAMI), "right", (26, 50)),
)
SOURCE: tuple[tuple[str, Callable[[Path], Frame], str | float, tuple[float, ...]], ...] = (
    ("Amsterdam", amsterdam, "left", (37, 60)),
    ("Piedmont", piedmont, 0.5 - 0.1761, (35, 60)),
    ("Burlington", burlington, "right", (45, 70)),
    ("Colorado typical 2017", nsrdb("test_psm3_tmy-2017.csv"), "center", (40, 60)),
    ("Colorado typical 2023", nsrdb("test_psm4_tmy-2023.csv"), "center", (40, 60)),
    ("Colorado 2017", nsrdb("test_psm3_2017.csv"), "center", (40,)),
    ("Colorado 2023", nsrdb("test_psm4_2023.csv"), "center", (40,)),
    ("Golden", golden, "left", (40, 60)),
)
FITTED = ("Amsterdam", "Burlington")


def air_means(frame: pd.DataFrame) -> tuple[Numbers, Numbers]:
    """Mean daily low and high of the air in each month of a common year [°C]."""
    daily = frame["temp_air"].to_numpy().reshape(365, -1)
    first = np.cumsum([0, 31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30])
    counts = np.diff([*first, 365])
    low, high = (np.add.reduceat(day, first) / counts for day in (daily.min(1), daily.max(1)))
    return low, high


def years_of(
    places: tuple[tuple[str, Callable[[Path], Frame], str | float, tuple[float, ...]], ...],
    data: Path,
) -> Iterator[HourlyYear]:
    """The years of these places on each of their tilts, without wind, as means know none."""
    for name, read, label, tilts in places:
        frame, meta = read(data)
        for tilt_deg in tilts:
            site = site_of(meta, tilt_deg)
            hours = hm.Weather.from_frame(frame.drop(columns=NAMES[4]), site, label=label)
            yield HourlyYear(name, tilt_deg, site, hours, *air_means(frame))


def source_data(into: Path) -> Path:
    """The test data of pvlib's source distribution, fetched where nobody unpacked it."""
    given = os.environ.get("HEATMATCH_PVLIB_SOURCE")
    if given:
        return Path(given) / "tests" / "data"
    get = ["download", "--quiet", "--no-binary", ":all:", "--no-deps", "-d", str(into)]
    version = f"pvlib=={pvlib.__version__}"
    subprocess.run([sys.executable, "-m", "pip", *get, version], check=True, timeout=500)
    (packed,) = into.glob("pvlib-*.tar.gz")
    with tarfile.open(packed) as archive:
        archive.extractall(into, filter="data")
    return into / packed.name.removesuffix(".tar.gz") / "tests" / "data"
