"""Records that stay compiled, such as parts: their public module, plain texts and HTML."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from heatmatch import _core
from heatmatch._faces import FACES
from heatmatch.text.forms import part_html
from heatmatch.text.plain import plain

_PARTS = (
    _core.Panel,
    _core.Element,
    _core.Wire,
    _core.Insulation,
    _core.Control,
    _core.Connector,
    _core.Medium,
    _core.Alloy,
    _core.Sheath,
    _core.Cover,
)


def name_records(public: Iterable[object]) -> None:
    """Set the package as their module, and make their texts plain."""
    # Tracebacks, pickles and help() should name the package, not its compiled part.
    for thing in (*public, *FACES):
        if getattr(thing, "__module__", "") == "heatmatch._core":
            thing.__module__ = "heatmatch"
    for cls in vars(_core).values():
        if not isinstance(cls, type) or cls.__module__.partition(".")[0] != "heatmatch":
            continue
        for name in ("__repr__", "__str__"):
            if name in vars(cls):
                setattr(cls, name, _made_plain(vars(cls)[name]))
    for part in _PARTS:
        setattr(part, "_repr_html_", part_html)  # noqa: B010


def _made_plain(told: Callable[[Any], str]) -> Callable[[Any], str]:
    def tell(self: object) -> str:
        return plain(told(self))

    tell.__name__, tell.__doc__ = told.__name__, told.__doc__
    return tell
