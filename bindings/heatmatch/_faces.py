"""What the compiled classes get from Python: their public module, text, HTML, frames."""

from __future__ import annotations

from collections.abc import Iterable

from heatmatch import weather
from heatmatch.io import frames, frames_day, meters
from heatmatch.text import forms, plain


def give_faces(public: Iterable[object]) -> None:
    """Names the package as the home of what is public, and adds what notebooks show."""
    # Tracebacks, pickles and help() should name the package, not its compiled part.
    for thing in public:
        if getattr(thing, "__module__", "") == "heatmatch._core":
            thing.__module__ = "heatmatch"
    for module in (frames, frames_day, meters, forms, weather, plain):
        module.attach()
