"""Arguments of compiled functions: one sentence for wrong ones, and results of the same type."""

from __future__ import annotations

import numbers
import re
import sys
from collections.abc import Mapping, Sequence
from typing import Any

# Type name in the signature of a compiled function -> its usual name, and its Python types.
_WHOLE, _NUMBER = "typing.SupportsInt", "typing.SupportsFloat"
_KINDS: dict[str, tuple[str, tuple[type, ...]]] = {
    _WHOLE: ("a whole number", (numbers.Integral,)),
    _NUMBER: ("a number", (numbers.Real,)),
    "int": ("a whole number", (numbers.Integral,)),
    "float": ("a number", (numbers.Real,)),
    "str": ("a text", (str,)),
    "bool": ("True or False", (bool,)),
    "dict": ("a dict", (dict,)),
}
_SHOWN = 60


def arguments_error(
    error: TypeError, arguments: Sequence[object], options: Mapping[str, object]
) -> TypeError:
    """The error as one sentence with the argument, its value and the allowed values."""
    text = str(error)
    found = re.search(r"^\s+1\. ([\w.]*)\((.*?)\)(?: -> .*)?$", text, re.MULTILINE)
    if not re.search("incompatible (function|constructor) arguments", text) or found is None:
        return error
    call = found[1].rpartition(".")[2] or text.partition("(")[0]  # a constructor's has its class
    kinds = _parameters(found[2])
    if next(iter(kinds), "") == "self":
        kinds.pop("self")
    for name in options:
        if name not in kinds:
            return TypeError(f"{call}(): no argument is called {name}; choices: {', '.join(kinds)}")
    given = dict(zip(kinds, arguments, strict=False)) | dict(options)
    for name, (kind, optional) in kinds.items():
        if name not in given and not optional:
            return TypeError(f"{call}(): {name} is missing; it must be {_allowed(kind)}")
        if name in given and not _fits(given[name], kind):
            return TypeError(f"{call}(): {name} = {shown(given[name])} must be {_allowed(kind)}")
    count = "1 argument" if len(arguments) == 1 else f"{len(arguments)} arguments"
    return TypeError(f"{call}(): {count} given; it accepts {', '.join(kinds) or 'none'}")


def shown(value: object) -> str:
    """A value as text in a sentence: an object of heatmatch by its class."""
    kind = type(value)
    if kind.__module__.startswith("heatmatch"):
        return _a(kind.__name__)
    text = repr(value)
    return text if len(text) <= _SHOWN and "\n" not in text else _a(kind.__name__)


def _a(name: str) -> str:
    return f"{'an' if name[0] in 'AEIOUaeiou' else 'a'} {name}"


def _parameters(inside: str) -> dict[str, tuple[str, bool]]:
    """Name -> type and whether it is optional, from the arguments in a signature."""
    pieces, depth = [""], 0
    for sign in inside:
        depth += {"(": 1, "[": 1, "{": 1, "<": 1, ")": -1, "]": -1, "}": -1, ">": -1}.get(sign, 0)
        if sign == "," and depth == 0:
            pieces.append("")
        else:
            pieces[-1] += sign
    found = {}
    for piece in pieces:
        name, colon, rest = piece.strip().partition(": ")
        if colon:
            kind, equals, default = rest.partition(" = ")
            unset = " | None" if default == "None" and "None" not in kind else ""
            found[name] = (kind + unset, bool(equals))
    return found


def _choices(kind: str) -> list[str]:
    return [one.strip() for one in kind.split("|") if one.strip() != "typing.SupportsIndex"]


def _fits(value: object, kind: str) -> bool:
    for one in _choices(kind):
        if one == "object" or (one == "None" and value is None):
            return True
        if one in _KINDS:
            if isinstance(value, _KINDS[one][1]) and (one == "bool") >= isinstance(value, bool):
                return True
        elif one.rpartition(".")[2] in (base.__name__ for base in type(value).__mro__):
            return True
        elif not one.startswith("heatmatch") and one != "None":
            return True  # the items of a list are not checked
    return False


def _allowed(kind: str) -> str:
    said = [
        _KINDS[one][0] if one in _KINDS else one if one == "None" else _a(one.rpartition(".")[2])
        for one in _choices(kind)
    ]
    return " or ".join(said)


def like(given: object, found: Any) -> Any:
    """Numbers in the shape of the input, as a Series with the same index for a Series."""
    pandas = sys.modules.get("pandas")  # a Series exists only if pandas is imported
    if pandas is None or not isinstance(given, pandas.Series):
        return found
    return pandas.Series(found, index=given.index, name=given.name)
