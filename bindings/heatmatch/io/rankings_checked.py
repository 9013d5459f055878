"""Whether plain data is that of a saved ranking."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any

from heatmatch.errors import InvalidInput

KEY = ("group", "panels", "element", "bank")


def is_number(value: Any) -> bool:
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        return False
    try:
        return math.isfinite(value)
    except OverflowError:
        return False


def is_text(value: Any) -> bool:
    return isinstance(value, str)


def is_row(value: Any) -> bool:
    return isinstance(value, dict)


def is_count(value: Any) -> bool:
    return isinstance(value, int) and not isinstance(value, bool) and 0 <= value < 2**63


def is_number_or_none(value: Any) -> bool:
    return value is None or is_number(value)


_A_NUMBER, _A_TEXT = (is_number, "a number"), (is_text, "a text")
_A_PRICE = (is_number_or_none, "a number, or null where it is not known")
# Column -> what its values must be, and whether every row has it.
COLUMNS = {
    **{key: (_A_TEXT, True) for key in KEY},
    "mean_power_w": (_A_NUMBER, True),
    "severity": (_A_TEXT, True),
    "smallest_headroom": (_A_NUMBER, True),
    "price_to_buy": (_A_PRICE, False),
    "currency": (_A_TEXT, False),
    "worst_margin": (_A_TEXT, False),
}
REJECTED_COLUMNS = {
    **{key: COLUMNS[key] for key in (*KEY, "mean_power_w", "price_to_buy", "currency")},
    "worst_margin": (_A_TEXT, True),
}


def check_rows(
    file: str, name: str, rows: Sequence[Any], columns: Mapping[str, Any], *, by_season: bool
) -> None:
    season = {"season_kwh": (_A_NUMBER, True)} if by_season else {}
    for number, row in enumerate(rows, 1):
        if not isinstance(row, dict):
            raise refusal(file, f"{name}[{number}]", shown(row), "an object")
        for key, ((fits, allowed), needed) in {**columns, **season}.items():
            if key not in row and needed:
                raise refusal(file, f"{name}[{number}]", f"without {key}", "whole")
            if key in row and not fits(row[key]):
                raise refusal(file, f"{name}[{number}].{key}", shown(row[key]), allowed)


def shown(value: Any) -> str:
    """A value as a message can hold it."""
    if isinstance(value, (list, dict)):
        return "a list" if isinstance(value, list) else "an object"
    return ascii(value)[:40] if isinstance(value, str) else repr(value)[:40]


def refusal(file: str, field_name: str, value: str, allowed: str) -> InvalidInput:
    remedy = "make one with save_ranking"
    message = f'ranking "{file}": {field_name} = {value} must be {allowed}; {remedy}'
    return InvalidInput(message, f'ranking "{file}"', field_name, value, allowed, remedy)
