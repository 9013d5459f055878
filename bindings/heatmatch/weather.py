"""Weather from data frames and from the files of typical years."""

from __future__ import annotations

import difflib
import os
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from heatmatch import _core
from heatmatch.errors import InvalidInput
from heatmatch.io import weather_text
from heatmatch.io.files import checked_path
from heatmatch.io.frames import pandas_or_error
from heatmatch.io.times import seconds_since_1970

if TYPE_CHECKING:
    import pandas as _pd

COLUMNS = ("ghi", "dni", "dhi", "temp_air", "wind_speed")


def _refusal(field: str, value: str, allowed: str, remedy: str) -> InvalidInput:
    """The error for a frame that cannot be used."""
    message = f"weather: {field} = {value} must be {allowed}; {remedy}"
    return InvalidInput(message, "weather", field, value, allowed, remedy)


def _plain(name: object) -> str:
    """A column's name as it is compared: without case, blanks, signs and unit in brackets."""
    return weather_text.stem(str(name)[:80])


def _check_names(frame: _pd.DataFrame) -> None:
    """Refuses names that come twice, that are almost known, or that lack what is needed."""
    names = list(frame.columns)
    missing = [known for known in COLUMNS if known not in names]
    for known in COLUMNS:
        if names.count(known) > 1:
            raise _refusal("columns", f'"{known}" twice', "there once", "drop one of the two")
    for name in names:
        if name in COLUMNS:
            continue
        near = difflib.get_close_matches(_plain(name), [_plain(m) for m in missing], 1, 0.8)
        if near:
            meant = next(known for known in missing if _plain(known) == near[0])
            raise _refusal(
                "column", f'"{name}"', f"one of {', '.join(COLUMNS)}", f'rename it to "{meant}"?'
            )
    found = ", ".join(str(name) for name in names)[:200] or "none"
    if "temp_air" in missing:
        raise _refusal(
            "columns", found, "with temp_air, the air in °C", "add it, or rename its column"
        )
    if "ghi" in missing and ("dni" in missing or "dhi" in missing):
        raise _refusal(
            "columns",
            found,
            "with ghi, or with dni and dhi, in W/m2",
            "rename the columns of the sun",
        )


def _numbers(frame: _pd.DataFrame, name: str) -> npt.NDArray[np.float64] | None:
    """One column as numbers, or None if it is not there."""
    if name not in frame.columns:
        return None
    column = frame[name]
    if column.dtype.kind not in "iuf":
        raise _refusal(
            f"column {name}",
            f"of {column.dtype}",
            "numbers without units",
            "convert it with pandas.to_numeric",
        )
    return np.asarray(column.to_numpy(dtype=np.float64, na_value=np.nan))


def from_frame(
    frame: _pd.DataFrame,
    site: _core.Site,
    *,
    label: str | float = "left",
    wind_height_m: float = 10.0,
) -> _core.Weather:
    """Weather on a site's panels from a data frame of sun and air.

    Parameters
    ----------
    frame : pandas.DataFrame
        Index of moments with a time zone, rising, in steps of 1 minute to 1 hour. Columns ``ghi``
        or ``dni`` and ``dhi`` [W/m2] (or all three), ``temp_air`` [°C] and, if known,
        ``wind_speed`` [m/s]; others are not read.
    site : Site
        Latitude, longitude and tilt must be known; what else is missing is assumed and listed.
    label : {"left", "center", "right"} or float
        Where in its step a row's time lies; left is its start.
    wind_height_m : float
        Above the ground, at which the wind was measured; it is brought down to that at the panels.
        Weather stations measure at 10 m; give 2 if the instrument is at the panels.

    Returns
    -------
    Weather
        Gaps and repairs are counted in ``remarks``.

    Raises
    ------
    InvalidInput
        Names row and time of a reading that cannot be, or the column or index that is wrong.
    """
    pd = pandas_or_error()
    if not isinstance(frame, pd.DataFrame):
        raise _refusal(
            "frame",
            type(frame).__name__,
            "a pandas DataFrame",
            "use Weather.from_arrays for arrays",
        )
    if not isinstance(frame.index, pd.DatetimeIndex):
        raise _refusal(
            "index",
            f"of {frame.index.dtype}",
            "a DatetimeIndex with a time zone",
            "make it with pandas.to_datetime(..., utc=True)",
        )
    if frame.index.tz is None:
        raise _refusal(
            "index",
            "of times without a time zone",
            "a DatetimeIndex with a time zone",
            'say which clock it is: frame.tz_localize("UTC"), or "Etc/GMT+5" for a clock five '
            "hours behind it",
        )
    _check_names(frame)
    air = _numbers(frame, "temp_air")
    assert air is not None  # its name was checked
    return _core.Weather.from_arrays(
        site,
        seconds_since_1970(frame.index),
        air,
        ghi_w_m2=_numbers(frame, "ghi"),
        dni_w_m2=_numbers(frame, "dni"),
        dhi_w_m2=_numbers(frame, "dhi"),
        wind_m_s=_numbers(frame, "wind_speed"),
        label=label,
        wind_height_m=wind_height_m,
    )


def _placed(
    site: _core.Site | None, latitude: float, longitude: float, elevation: float
) -> _core.Site:
    """The site, with the place of the file where it has none."""
    place = {"latitude_deg": latitude, "longitude_deg": longitude, "elevation_m": elevation}
    if site is None:
        raise _refusal(
            "site",
            "None",
            "a Site with the tilt of the panels",
            "a file knows the place, not the panels: Site(tilt_deg=60, record_low_c=-20)",
        )
    return _core.Site(**(place | site.to_dict()))


def read_epw(
    path: str | os.PathLike[str], site: _core.Site | None = None, *, wind_height_m: float = 10.0
) -> _core.Weather:
    """Weather on a site's panels from an EPW file; its hours are labelled at their start.

    Latitude, longitude and elevation are taken from the file where the site has none. The wind of
    the file is taken as measured at 10 m unless `wind_height_m` is given.
    """
    frame, place = weather_text.read_epw(path)
    return from_frame(frame, _placed(site, *place), label="left", wind_height_m=wind_height_m)


def read_tmy3(
    path: str | os.PathLike[str], site: _core.Site | None = None, *, wind_height_m: float = 10.0
) -> _core.Weather:
    """Weather on a site's panels from a TMY3 file; its hours are labelled at their end.

    Latitude, longitude and elevation are taken from the file where the site has none. The wind of
    the file is taken as measured at 10 m unless `wind_height_m` is given.
    """
    frame, place = weather_text.read_tmy3(path)
    return from_frame(frame, _placed(site, *place), label="right", wind_height_m=wind_height_m)


def read_pvgis(
    path: str | os.PathLike[str], site: _core.Site | None = None, *, wind_height_m: float = 10.0
) -> _core.Weather:
    """Weather on a site's panels from a typical year of PVGIS, as CSV or JSON.

    Its sun is that of a moment, which the file's irradiance time offset tells; without one it is
    the full hour. Latitude, longitude and elevation are taken from the file where the site has
    none. The wind of the file is that at 10 m above the ground unless `wind_height_m` is given.
    """
    frame, place, offset_h = weather_text.read_pvgis(path)
    label = min(1.0, max(0.0, 0.5 - offset_h))
    return from_frame(frame, _placed(site, *place), label=label, wind_height_m=wind_height_m)


def read_file(
    path: str | os.PathLike[str], site: _core.Site | None = None, *, wind_height_m: float = 10.0
) -> _core.Weather:
    """Weather on a site's panels from a file of a typical year, its kind told by name and content.

    EPW by its ending; JSON, and CSV that begins with a latitude, as PVGIS; other CSV as TMY3. The
    text may be in UTF-8, UTF-16 with its mark, or Latin-1.
    """
    name = checked_path(path, "read")
    ending = os.path.splitext(name)[1].lower()
    if ending not in (".epw", ".json", ".csv"):
        raise _refusal(
            "file", f'"{name}"', "an .epw, .csv or .json file", "take one of EPW, TMY3 or PVGIS"
        )
    read = {".epw": read_epw, ".json": read_pvgis}.get(ending)
    if read is None:
        start = weather_text.text_of(name).lstrip()[:8].lower()
        read = read_pvgis if start == "latitude" else read_tmy3
    return read(path, site, wind_height_m=wind_height_m)


def from_installation(installation: _core.Installation) -> _core.Weather:
    """Weather on an installation's panels from its own twelve monthly means.

    Raises
    ------
    InvalidInput
        The installation has none.
    """
    normals = installation.to_dict().get("weather")
    if normals is None:
        raise _refusal(
            "weather",
            "none",
            "twelve monthly means in the installation",
            "give it sun_hours, temp_min_c and temp_max_c, or name a file of a typical year",
        )
    return _core.Weather.from_months(installation.site, **normals)


def attach() -> None:
    """Gives the compiled class what is written in Python."""
    setattr(_core.Weather, "from_frame", staticmethod(from_frame))  # noqa: B010
    setattr(_core.Weather, "from_installation", staticmethod(from_installation))  # noqa: B010
