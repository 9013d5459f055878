"""How much of a limit is left."""

from __future__ import annotations

from heatmatch import _core


def headroom_cell(margin: _core.Margin) -> str:
    """How much of a limit is left, at most all of it; nothing where that is not known."""
    return "" if margin.headroom is None else f"{min(margin.headroom, 1.0):.2f}"
