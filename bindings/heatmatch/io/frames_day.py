"""Simulated days as data frames, and a data frame as the log of a store."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np

from heatmatch import _library as _core
from heatmatch.errors import InvalidInput
from heatmatch.io.frames import pandas_or_error

if TYPE_CHECKING:
    import pandas as _pd

SERIES = (
    "hours", "hour_of_day", "month", "irradiance_w_m2", "available_w", "power_w", "bank_v",
    "bank_a", "sheath_c", "coil_c", "terminal_c", "bed_mean_c", "wall_c", "lid_c", "released_w",
    "to_space_w", "space_c", "space_unheated_c", "outside_c",
)  # fmt: skip
MONTH_FIELDS = (
    "month", "days", "available_kwh_day", "delivered_kwh_day", "to_space_kwh_day", "dark_hours",
    "above_target_hours", "above_target_unheated_hours", "lowest_c", "lowest_unheated_c", "lift_k",
    "required_lift_k",
)  # fmt: skip


def day_to_frame(self: _core.DayRun) -> _pd.DataFrame:
    """The run as a data frame, one row for each thermal step, at its end.

    Returns
    -------
    pandas.DataFrame
        Shape (steps, 19); units are in the column names, hours [h] count from the beginning,
        `hour_of_day` [h] is mean solar time. A terminal that is not known is missing.
    """
    lists = {name: getattr(self, name) for name in SERIES}
    missing = np.full(len(self), np.nan)
    return pandas_or_error().DataFrame(
        {name: missing if values is None else values for name, values in lists.items()}
    )


def months_to_frame(self: _core.DayRun) -> _pd.DataFrame:
    """The months of the run as a data frame, in the order of time, one row each.

    Returns
    -------
    pandas.DataFrame
        Shape (months, 12): days, energies [kWh/day], dark hours [h], the lowest temperatures in
        the dark [°C], warming of the space by the store, and warming needed [K].
    """
    rows = [{name: getattr(month, name) for name in MONTH_FIELDS} for month in self.answer.months]
    return pandas_or_error().DataFrame(rows, columns=list(MONTH_FIELDS))


def _refusal(field: str, value: str, allowed: str, remedy: str) -> InvalidInput:
    """The error for a frame that is not a log."""
    message = f"log of the store: {field} = {value} must be {allowed}; {remedy}"
    return InvalidInput(message, "log of the store", field, value, allowed, remedy)


def log_from_frame(frame: _pd.DataFrame) -> _core.StoreLog:
    """The log of a store from a data frame.

    Parameters
    ----------
    frame : pandas.DataFrame
        Columns `power_w` (into the bank, mean since the row before [W]), `air_c` (around the
        store [°C]), and one for each probe: `wall_c`, `lid_c`, `sheath_c`, or
        `bed_c@0.12,0.40` (radius and height in meters); missing values were not read. Time is a
        column `hours`, or the index where that is one of dates and times.

    Returns
    -------
    StoreLog

    Raises
    ------
    InvalidInput
        Columns or rows that cannot be used, by name.
    """
    pd = pandas_or_error()
    if not isinstance(frame, pd.DataFrame):
        raise _refusal(
            "frame",
            type(frame).__name__,
            "a pandas DataFrame",
            "StoreLog.from_csv takes files and text",
        )
    plain = frame.copy()
    if "hours" not in plain.columns:
        if not isinstance(plain.index, pd.DatetimeIndex):
            raise _refusal(
                "hours",
                "(missing)",
                "a column, or an index of dates and times",
                "add the hours since the beginning, or set the index with pandas.to_datetime",
            )
        since: Any = (plain.index - plain.index[0]) if len(plain) else plain.index
        plain.insert(0, "hours", since.total_seconds() / 3600.0 if len(plain) else [])
    for name in plain.columns:
        if plain[name].dtype.kind not in "iuf":
            raise _refusal(
                f"column {name}",
                f"of {plain[name].dtype}",
                "numbers without units",
                "convert it with pandas.to_numeric",
            )
    return _core.StoreLog.from_csv(plain.to_csv(index=False, lineterminator="\n"))
