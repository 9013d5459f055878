"""Moments as seconds since 1970 in UTC, from what pandas, NumPy and Python have for them."""

from __future__ import annotations

import datetime
from typing import Any

import numpy as np
import numpy.typing as npt

from heatmatch.errors import InvalidInput

_EARLIEST = np.datetime64("1950-01-01T00:00:00")
_LATEST = np.datetime64("2100-12-31T23:59:59")
_FORMS = (
    "moments in UTC: a pandas index with a time zone, a NumPy array of datetime64, datetimes with "
    "a time zone, or seconds since 1970"
)


def _refusal(value: object, allowed: str, remedy: str) -> InvalidInput:
    """The error for moments that cannot be used."""
    text = str(value)
    message = f"times_utc = {text} must be {allowed}; {remedy}"
    return InvalidInput(message, "", "times_utc", text, allowed, remedy)


def _naive(value: object) -> InvalidInput:
    """The error for times without a time zone."""
    return _refusal(
        value,
        "moments with a time zone",
        'say which clock they are read from: times.tz_localize("America/New_York") or '
        'times.tz_localize("UTC") in pandas, datetime.replace(tzinfo=...) in Python',
    )


def _seconds_of_datetime(moment: object) -> float:
    """Seconds since 1970 of one datetime of Python or pandas."""
    if not isinstance(moment, datetime.datetime):
        raise _refusal(repr(moment)[:60], _FORMS, "convert them first")
    if moment != moment:  # NaT
        raise _refusal("NaT", "known moments", "drop the missing times")
    if moment.utcoffset() is None:
        raise _naive(moment)
    return moment.timestamp()


def _seconds_of_datetime64(moments: npt.NDArray[Any]) -> npt.NDArray[np.float64]:
    """Seconds since 1970 of datetime64 values in UTC."""
    if np.isnat(moments).any():
        raise _refusal("NaT", "known moments", "drop the missing times")
    unit, _ = np.datetime_data(moments.dtype)
    if unit == "generic":
        raise _refusal("datetime64 without a unit", _FORMS, "convert them first")
    outside = (moments < _EARLIEST) | (moments > _LATEST)
    if outside.any():
        raise _outside(moments[outside][0])
    whole = moments.astype("datetime64[s]")
    rest = (moments - whole) / np.timedelta64(1, "s")
    return np.asarray(whole.astype(np.int64) + rest, dtype=np.float64)


def _outside(value: object) -> InvalidInput:
    return _refusal(
        value,
        "between 1950-01-01 and 2100-12-31",
        "check the year, and that numbers are seconds and not milliseconds",
    )


def seconds_since_1970(times_utc: Any) -> npt.NDArray[np.float64]:
    """Seconds since 1970-01-01 00:00 UTC, in the shape of what was given.

    Times without a time zone are refused: an hour of summer time shifts the sun by 15 degrees;
    only NumPy's datetime64, which has none, counts as UTC. Missing moments and those outside 1950
    to 2100 are refused too.
    """
    if isinstance(times_utc, datetime.date):
        return np.asarray(_seconds_of_datetime(times_utc))
    dtype = getattr(times_utc, "dtype", None)
    if hasattr(times_utc, "to_numpy") and getattr(dtype, "kind", "") == "M":  # pandas
        if getattr(dtype, "tz", None) is None:
            raise _naive(times_utc.to_numpy()[0] if len(times_utc) else "(empty)")
        return _seconds_of_datetime64(times_utc.to_numpy(dtype="datetime64[us]"))
    if hasattr(times_utc, "to_numpy") and dtype is None:  # a pandas table
        raise _refusal(type(times_utc).__name__, _FORMS, "give its index or one column")
    try:
        raw = np.asarray(times_utc)
    except ValueError as error:  # rows of unequal length
        raise _refusal(repr(times_utc)[:60], _FORMS, "convert them first") from error
    if raw.dtype.kind == "M":
        return _seconds_of_datetime64(raw)
    if raw.dtype.kind == "O":
        seconds = [_seconds_of_datetime(moment) for moment in raw.flat]
        raw = np.asarray(seconds, dtype=np.float64).reshape(raw.shape)
    if raw.dtype.kind not in "iuf" and raw.size > 0:
        raise _refusal(repr(times_utc)[:60], _FORMS, "convert them first")
    numbers = raw.astype(np.float64)
    if np.isnan(numbers).any():
        raise _refusal("nan", "known moments", "drop the missing times")
    epoch = np.datetime64("1970-01-01T00:00:00")
    lowest, highest = ((end - epoch) / np.timedelta64(1, "s") for end in (_EARLIEST, _LATEST))
    outside = (numbers < lowest) | (numbers > highest)
    if outside.any():
        raise _outside(f"{numbers[outside].flat[0]:.10g} s")
    return numbers
