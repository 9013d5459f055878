"""Weather from a data frame: names and numbers of its columns."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from heatmatch import _library as _core
from heatmatch.errors import InvalidInput
from heatmatch.io import weather_text
from heatmatch.io.frames import pandas_or_error
from heatmatch.io.times import seconds_since_1970

if TYPE_CHECKING:
    import pandas as _pd

COLUMNS = ("ghi", "dni", "dhi", "temp_air", "wind_speed")


def refusal(field: str, value: str, allowed: str, remedy: str) -> InvalidInput:
    """The error for a frame that cannot be used."""
    message = f"weather: {field} = {value} must be {allowed}; {remedy}"
    return InvalidInput(message, "weather", field, value, allowed, remedy)


def _plain(name: object) -> str:
    """A column's name as it is compared: without case, blanks, signs and unit in brackets."""
    return weather_text.stem(str(name)[:80])


def _check_names(frame: _pd.DataFrame) -> None:
    """Reject duplicate names, near misses of known names, and missing columns."""
    names = list(frame.columns)
    missing = [known for known in COLUMNS if known not in names]
    for known in COLUMNS:
        if names.count(known) > 1:
            raise refusal(
                "columns", f'"{known}" twice', "given once", "delete one of the two columns"
            )
    for name in names:
        if name in COLUMNS:
            continue
        near = _core.near_names(_plain(name), [_plain(known) for known in missing])
        if near:
            meant = [known for known in missing if _plain(known) in near]
            told = " or ".join(f'"{known}"' for known in meant)
            raise refusal(
                "column", f'"{name}"', f"one of {', '.join(COLUMNS)}", f"did you mean {told}?"
            )
    found = ", ".join(str(name) for name in names)[:200] or "none"
    if "temp_air" in missing:
        raise refusal(
            "columns", found, "with temp_air, the air in °C", "add it, or rename its column"
        )
    if "ghi" in missing and ("dni" in missing or "dhi" in missing):
        raise refusal(
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
        raise refusal(
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
    """Convert a data frame of sun and air to weather on a site's panels.

    Parameters
    ----------
    frame : pandas.DataFrame
        Index of times with a time zone, rising, in steps of 1 minute to 1 hour. Columns ``ghi``, or
        ``dni`` and ``dhi`` [W/m2], or all three; ``temp_air`` [°C]; optional ``wind_speed`` [m/s].
        Other columns are ignored.
    site : Site
        Needs latitude, longitude and tilt; other missing values are assumed and listed.
    label : {"left", "center", "right"} or float
        Place of a row's time in its step: "left" is 0, the start; "right" is 1, the end.
    wind_height_m : float
        Height above ground of the wind measurement [m], 0.1 to 300. Weather stations measure at
        10 m; use 2 for an instrument at the panels.

    Returns
    -------
    Weather
        Gaps and repairs are counted in ``remarks``.

    Raises
    ------
    InvalidInput
        A reading is out of range (row and time are named), or a column, the index, the site or an
        option is wrong.
    ImportError
        pandas is not installed.

    Notes
    -----
    Missing parts of the irradiance follow from ``GHI = DHI + DNI cos z``, z the zenith angle; GHI
    alone is split by its clearness. Wind at the panels, 2 m above ground, from wind v_z measured at
    z [m]: ``v = v_z ln(67.8 * 2 - 5.42) / ln(67.8 z - 5.42)`` [m/s]; ``v = v_z`` up to 2 m.

    References
    ----------
    erbs-1982 : split of GHI
    fao-56 : wind at 2 m, equation 47

    Examples
    --------
    >>> import heatmatch as hm
    >>> import pandas as pd
    >>> times = pd.date_range("2026-01-15", periods=24, freq="h", tz="Etc/GMT+5")
    >>> sun = [400.0 if 9 <= time.hour < 15 else 0.0 for time in times]
    >>> frame = pd.DataFrame({"ghi": sun, "temp_air": -5.0}, index=times)
    >>> site = hm.Site(latitude_deg=40, longitude_deg=-75, tilt_deg=60, record_low_c=-20)
    >>> weather = hm.weather.from_frame(frame, site)
    >>> print(f"{weather.irradiation_kwh_m2:.1f} kWh/m2")
    4.8 kWh/m2
    """
    pd = pandas_or_error()
    if not isinstance(frame, pd.DataFrame):
        raise refusal(
            "frame",
            type(frame).__name__,
            "a pandas DataFrame",
            "use Weather.from_arrays for arrays",
        )
    if not isinstance(frame.index, pd.DatetimeIndex):
        raise refusal(
            "index",
            f"of {frame.index.dtype}",
            "a DatetimeIndex with a time zone",
            "make it with pandas.to_datetime(..., utc=True)",
        )
    if frame.index.tz is None:
        raise refusal(
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
