"""Weather from data frames and from the files of typical years."""

from __future__ import annotations

import os

from heatmatch import _library as _core
from heatmatch.io import weather_text
from heatmatch.io.files import checked_path
from heatmatch.io.weather_frame import COLUMNS, from_frame, refusal

__all__ = [
    "COLUMNS",
    "from_frame",
    "from_installation",
    "read_epw",
    "read_file",
    "read_pvgis",
    "read_tmy3",
]


def _placed(
    site: _core.Site | None, latitude: float, longitude: float, elevation: float
) -> _core.Site:
    """The site, with the place of the file where it has none."""
    place = {"latitude_deg": latitude, "longitude_deg": longitude, "elevation_m": elevation}
    if site is None:
        raise refusal(
            "site",
            "None",
            "a Site with the tilt of the panels",
            "a file knows the place, not the panels: Site(tilt_deg=60, record_low_c=-20)",
        )
    return _core.Site(**(place | site.to_dict()))


def read_epw(
    path: str | os.PathLike[str], site: _core.Site | None = None, *, wind_height_m: float = 10.0
) -> _core.Weather:
    """Read weather on a site's panels from an EPW file.

    Parameters
    ----------
    path : str or os.PathLike
        The file. Times are starts of hours.
    site : Site
        Needs the tilt; latitude, longitude and elevation default to those of the file.
    wind_height_m : float
        Height of the wind measurement [m], 0.1 to 300.

    Returns
    -------
    Weather
        Gaps and repairs are counted in ``remarks``.

    Raises
    ------
    InvalidInput
        `site` is missing or lacks a value, or the file is not a complete EPW file.
    FileError
        The file cannot be read.
    ImportError
        pvlib is not installed.

    See Also
    --------
    from_frame : Equations for irradiance and wind.

    Examples
    --------
    >>> import heatmatch as hm, os, pandas as pd, tempfile
    >>> rows = ["LOCATION,Invented,-,-,-,-,45,10,1,300"] + ["-"] * 7
    >>> for t in pd.date_range("2025-01-01", "2025-12-31 23:00", freq="h"):
    ...     sun = 500 if 10 <= t.hour < 14 else 0
    ...     rows.append(f"2025,{t.month},{t.day},{t.hour + 1},60,?,8,0,0,0,0,0,0,{sun},0,{sun},"
    ...                 "0,0,0,0,0,2,0,0,0,0,0,0,0,0,0,0,0,0,0")
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     path = os.path.join(folder, "year.epw")
    ...     with open(path, "w") as file:
    ...         for row in rows:
    ...             print(row, file=file)
    ...     year = hm.weather.read_epw(path, hm.Site(tilt_deg=50, record_low_c=-20))
    >>> len(year)
    8760
    """
    frame, place = weather_text.read_epw(path)
    return from_frame(frame, _placed(site, *place), label="left", wind_height_m=wind_height_m)


def read_tmy3(
    path: str | os.PathLike[str], site: _core.Site | None = None, *, wind_height_m: float = 10.0
) -> _core.Weather:
    """Read weather on a site's panels from a TMY3 file.

    Parameters
    ----------
    path : str or os.PathLike
        The CSV file. Times are ends of hours.
    site : Site
        Needs the tilt; latitude, longitude and elevation default to those of the file.
    wind_height_m : float
        Height of the wind measurement [m], 0.1 to 300.

    Returns
    -------
    Weather
        Gaps and repairs are counted in ``remarks``.

    Raises
    ------
    InvalidInput
        `site` is missing or lacks a value, the file is not a complete TMY3 file, or a column has
        another unit.
    FileError
        The file cannot be read.
    ImportError
        pvlib is not installed.

    See Also
    --------
    from_frame : Equations for irradiance and wind.

    Examples
    --------
    >>> import heatmatch as hm, pathlib, pvlib
    >>> path = pathlib.Path(pvlib.__file__).parent / "data" / "723170TYA.CSV"
    >>> year = hm.weather.read_tmy3(path, hm.Site(tilt_deg=50, record_low_c=-20))
    >>> len(year)
    8760
    """
    frame, place = weather_text.read_tmy3(path)
    return from_frame(frame, _placed(site, *place), label="right", wind_height_m=wind_height_m)


def read_pvgis(
    path: str | os.PathLike[str], site: _core.Site | None = None, *, wind_height_m: float = 10.0
) -> _core.Weather:
    """Read weather on a site's panels from a PVGIS typical year, CSV or JSON.

    Parameters
    ----------
    path : str or os.PathLike
        The file; the ending .json selects JSON.
    site : Site
        Needs the tilt; latitude, longitude and elevation default to those of the file.
    wind_height_m : float
        Height of the wind measurement [m], 0.1 to 300.

    Returns
    -------
    Weather
        Gaps and repairs are counted in ``remarks``.

    Raises
    ------
    InvalidInput
        `site` is missing or lacks a value, or the file is not a complete typical year of PVGIS.
    FileError
        The file cannot be read.
    ImportError
        pvlib is not installed.

    Notes
    -----
    Irradiance is that of one moment in the hour: ``label = 0.5 - offset``, held within 0 to 1, with
    the file's irradiance time offset [h], 0 if the file has none. See ``from_frame``.

    Examples
    --------
    >>> import heatmatch as hm, json, os, pandas as pd, tempfile
    >>> place = {"latitude": 45, "longitude": 10, "elevation": 300}
    >>> rows = []
    >>> for t in pd.date_range("2025-01-01", "2025-12-31 23:00", freq="h"):
    ...     sun = 500 if 10 <= t.hour < 14 else 0
    ...     rows.append({"time(UTC)": f"{t:%Y%m%d:%H%M}", "T2m": 8, "WS10m": 2,
    ...                  "G(h)": sun, "Gb(n)": 0, "Gd(h)": sun})
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     path = os.path.join(folder, "year.json")
    ...     with open(path, "w") as file:
    ...         json.dump({"inputs": {"location": place}, "meta": {"inputs": {}},
    ...                    "outputs": {"months_selected": [], "tmy_hourly": rows}}, file)
    ...     year = hm.weather.read_pvgis(path, hm.Site(tilt_deg=50, record_low_c=-20))
    >>> len(year)
    8760
    """
    frame, place, offset_h = weather_text.read_pvgis(path)
    label = min(1.0, max(0.0, 0.5 - offset_h))
    return from_frame(frame, _placed(site, *place), label=label, wind_height_m=wind_height_m)


def read_file(
    path: str | os.PathLike[str], site: _core.Site | None = None, *, wind_height_m: float = 10.0
) -> _core.Weather:
    """Read weather on a site's panels from a file of a typical year of any known format.

    Parameters
    ----------
    path : str or os.PathLike
        .epw is EPW; .json, and .csv that begins with "latitude", is PVGIS; other .csv is TMY3. Text
        may be UTF-8, UTF-16 or UTF-32 with a byte order mark, or Latin-1.
    site : Site
        Needs the tilt; latitude, longitude and elevation default to those of the file.
    wind_height_m : float
        Height of the wind measurement [m], 0.1 to 300.

    Returns
    -------
    Weather
        Gaps and repairs are counted in ``remarks``.

    Raises
    ------
    InvalidInput
        The file has another ending or is incomplete, or `site` is missing or lacks a value.
    FileError
        The file cannot be read.
    ImportError
        pvlib is not installed.

    Examples
    --------
    >>> import heatmatch as hm, pathlib, pvlib
    >>> path = pathlib.Path(pvlib.__file__).parent / "data" / "723170TYA.CSV"
    >>> year = hm.weather.read_file(path, hm.Site(tilt_deg=50, record_low_c=-20))
    >>> len(year)
    8760
    """
    name = checked_path(path, "read")
    ending = os.path.splitext(name)[1].lower()
    if ending not in (".epw", ".json", ".csv"):
        raise refusal(
            "file", f'"{name}"', "an .epw, .csv or .json file", "use a file of EPW, TMY3 or PVGIS"
        )
    read = {".epw": read_epw, ".json": read_pvgis}.get(ending)
    if read is None:
        start = weather_text.text_of(name).lstrip()[:8].lower()
        read = read_pvgis if start == "latitude" else read_tmy3
    return read(path, site, wind_height_m=wind_height_m)


def from_installation(installation: _core.Installation) -> _core.Weather:
    """Make weather on an installation's panels from its twelve monthly means.

    Parameters
    ----------
    installation : Installation
        Needs ``weather``, and a site with latitude and tilt.

    Returns
    -------
    Weather
        One year of hours.

    Raises
    ------
    InvalidInput
        The installation has no monthly means, its site lacks a value, or no sky gives a month's
        irradiation.

    Notes
    -----
    Skies as those of ``MonthlySky``, irradiance on the panels as in ``plane_irradiance``.

    References
    ----------
    suehrcke-2000 : share of clear days in a month
    erbs-1982 : split of GHI

    Examples
    --------
    >>> import heatmatch as hm
    >>> weather = hm.weather.from_installation(hm.demo())
    >>> weather.hours.shape
    (8760,)
    """
    normals = installation.weather
    if normals is None:
        raise refusal(
            "weather",
            "none",
            "twelve monthly means in the installation",
            "give it sun_hours, temp_min_c and temp_max_c, or name a file of a typical year",
        )
    return _core.Weather.from_months(installation.site, **normals.to_dict())
