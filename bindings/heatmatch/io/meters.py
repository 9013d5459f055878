"""Readings from rows and data frames, and the meter sheet as a data frame."""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from heatmatch import _library as _core
from heatmatch.errors import InvalidInput
from heatmatch.io.frames import pandas_or_error
from heatmatch.io.times import seconds_since_1970

if TYPE_CHECKING:
    import pandas as _pd

BANDS = ("open_v", "short_a", "array_v", "bank_v", "bank_a", "bank_w")


def _refusal(field: str, value: str, allowed: str, remedy: str) -> InvalidInput:
    """The error for readings that cannot be taken."""
    message = f"readings: {field} = {value} must be {allowed}; {remedy}"
    return InvalidInput(message, "readings", field, value, allowed, remedy)


def _cell(value: object) -> str:
    """A reading as a cell: empty if not measured, OL for an infinite resistance."""
    if value is None:
        return ""
    if isinstance(value, str):
        return value
    number = float(value)  # type: ignore[arg-type]
    if math.isnan(number):
        return ""
    return "OL" if math.isinf(number) else repr(number)


def readings_from_rows(rows: Sequence[Mapping[str, float | str | None]]) -> _core.Readings:
    """Readings from one mapping a row, its names those of ``Readings.from_csv``.

    Parameters
    ----------
    rows : sequence of mappings
        Numbers in the unit of their name, or texts with a unit; None and nan were not measured,
        an infinite resistance is an open circuit.

    Raises
    ------
    InvalidInput
        Names the column or the cell that is not understood.
    """
    names = list(dict.fromkeys(name for row in rows for name in row))
    if not names:
        raise _refusal("rows", "none", "at least one with a reading", "measure volts and amperes")
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(names)
    for row in rows:
        writer.writerow([_cell(row.get(name)) for name in names])
    return _core.Readings.from_csv(text.getvalue() + "\n")


def readings_from_frame(frame: _pd.DataFrame) -> _core.Readings:
    """Convert a data frame to readings, one row each.

    Parameters
    ----------
    frame : pandas.DataFrame
        Columns named as in ``Readings.from_csv``. An index of times must have a time zone.

    Returns
    -------
    Readings
        The same rows; times are seconds since 1970, UTC.

    Raises
    ------
    InvalidInput
        A column or cell is not understood (it is named), or the index lacks a time zone.
    ImportError
        pandas is not installed.
    """
    pd = pandas_or_error()
    if not isinstance(frame, pd.DataFrame):
        raise _refusal(
            "frame", type(frame).__name__, "a pandas DataFrame", "Readings.from_csv takes files"
        )
    plain = frame.reset_index(drop=True)
    if isinstance(frame.index, pd.DatetimeIndex):
        if frame.index.tz is None:
            raise _refusal(
                "index",
                "of times without a time zone",
                "a DatetimeIndex with a time zone",
                'say which clock it is: frame.tz_localize("UTC")',
            )
        plain = plain.assign(unix_time_s=seconds_since_1970(frame.index))
    return readings_from_rows(plain.to_dict("records"))


def sheet_frame(self: _core.MeterSheet) -> _pd.DataFrame:
    """The expected readings as a data frame, a row for each sun and cell temperature."""
    pd = pandas_or_error()
    return pd.DataFrame(
        [
            {"irradiance_w_m2": row.irradiance_w_m2, "cell_temperature_c": row.cell_temperature_c}
            | {
                name if end == "typical" else f"{name}_{end}": getattr(getattr(row, name), end)
                for name in BANDS
                for end in ("low", "typical", "high")
            }
            for row in self.rows
        ]
    )
