"""Plain data of an installation with some fields changed, each named by its path."""

from __future__ import annotations

import copy
import warnings
from collections.abc import Mapping
from typing import Any

from heatmatch.errors import InvalidInput
from heatmatch.face.setting import plain_of

# Field with the name of an item, by list.
_CALLED = {"panels": "group", "elements": "element", "runs": "name", "devices": "part"}
# What is owned of a part, by list and field of that part: of another part nothing is.
_OWNED = {
    ("devices", "part"): "owned",
    ("runs", "wire"): "owned_m",
    ("runs", "connector"): "owned_connectors",
}
_OTHERS = ("id", "cover")  # of inline parts, and of the covers of the space


def changed(plain: dict[str, Any], changes: Mapping[str, object]) -> dict[str, Any]:
    """The data with every change applied; `plain` is unchanged."""
    if not isinstance(changes, Mapping) or not all(isinstance(path, str) for path in changes):
        raise TypeError(
            f"replace(): changes = {type(changes).__name__} must be a mapping of paths to values, "
            'for example {"store.height_m": 0.6}'
        )
    made = copy.deepcopy(plain)
    # All paths refer to the original data: one change may rename an item named by another.
    found = [(_keys(plain, path), plain_of(value)) for path, value in changes.items()]
    given = [keys for keys, _ in found]
    for keys, value in sorted(found, key=_leaves_last):
        _put(made, keys, value)
        owned = _OWNED.get((str(keys[0]), str(keys[-1]))) if len(keys) == 3 else None
        if owned is None or value == plain[str(keys[0])][keys[1]].get(str(keys[2])):
            continue
        if [*keys[:-1], owned] not in given:
            _put(made, [*keys[:-1], owned], None)
    _warn_of_sun_hours(plain, made)
    return made


def _warn_of_sun_hours(before: dict[str, Any], made: dict[str, Any]) -> None:
    """Warn where the panels are tilted or turned and their sums of sun are not."""
    old, new = before.get("site") or {}, made.get("site") or {}
    turned = [name for name in ("tilt_deg", "azimuth_deg") if old.get(name) != new.get(name)]
    if turned and made.get("weather") and made["weather"] == before.get("weather"):
        warnings.warn(
            f"replace(): site.{turned[0]} changed, weather.sun_hours did not: they hold for "
            f"{turned[0]} = {old.get(turned[0])}; MonthlySky(...).sun_hours() gives those of "
            "another plane",
            stacklevel=4,
        )


def _leaves_last(change: tuple[list[str | int], object]) -> tuple[bool, int]:
    """Items that leave a list leave it last, from its end on, so that numbers stay true."""
    keys, value = change
    leaves = value is None and isinstance(keys[-1], int)
    return leaves, -keys[-1] if leaves and isinstance(keys[-1], int) else 0


def _keys(plain: dict[str, Any], path: str) -> list[str | int]:
    """The keys and numbers that lead to a field."""
    keys: list[str | int] = []
    at: Any = plain
    for piece in path.split("."):
        key: str | int = piece
        if isinstance(at, list):
            key = _number(at, piece, path, str(keys[-1]))
            at = at[key]
        elif at is None or isinstance(at, dict):
            at = None if at is None else at.get(piece)
        else:
            raise _refusal(path, "below a single value", f'a path that ends at "{keys[-1]}"')
        keys.append(key)
    return keys


def _number(items: list[Any], piece: str, path: str, of: str) -> int:
    """The number of the item that a piece of a path names."""
    if piece.isdecimal() and int(piece) < len(items):
        return int(piece)
    called = (_CALLED[of],) if of in _CALLED else _OTHERS
    names = [next((str(one[c]) for c in called if c in one), "") for one in items]
    found = [number for number, name in enumerate(names) if name == piece]
    if len(found) != 1:
        known = ", ".join(f'"{name}"' for name in dict.fromkeys(names) if name)
        allowed = f"one of {known}, or a number from 0 to {len(items) - 1}" if items else "absent"
        raise _refusal(path, f'"{piece}"' + (", twice there," if found else ""), allowed)
    return found[0]


def _put(made: Any, keys: list[str | int], value: object) -> None:
    *way, last = keys
    for key in way:
        if isinstance(made, dict) and made.get(key) is None:
            made[key] = {}
        made = made[key]
    if value is None and isinstance(made, dict):
        made.pop(last, None)
    elif value is None:
        made.pop(last)
    else:
        made[last] = value


def _refusal(path: str, value: str, allowed: str) -> InvalidInput:
    remedy = 'write it as in "store.height_m" or "runs.hot tail.wire"'
    message = f'installation, change of "{path}": {value} must be {allowed}; {remedy}'
    return InvalidInput(message, "installation", path, value, allowed, remedy)
