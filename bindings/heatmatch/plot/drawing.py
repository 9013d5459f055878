"""Pictures drawn without a window, as addresses that a page can hold."""

from __future__ import annotations

import base64
import io
import warnings
from collections.abc import Callable
from typing import Any

_KINDS = {"png": "image/png", "svg": "image/svg+xml"}
_SETTINGS: Any = {"svg.hashsalt": "heatmatch", "svg.fonttype": "path"}  # same picture, same bytes


def data_address(
    draw: Callable[[Any], object], size: tuple[float, float], *, kind: str, rows: int = 1
) -> str:
    """Draw on a separate figure, and return its ``data:`` address.

    Parameters
    ----------
    draw : callable
        Gets the Axes, or an array of them where there are several rows.
    size : (float, float)
        Width and height [in].
    kind : {"png", "svg"}
    rows : int
        Axes one below the other, of one time.
    """
    import matplotlib
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    figure = Figure(figsize=size, layout="constrained", dpi=100)
    FigureCanvasAgg(figure)
    draw(figure.subplots(rows, 1, sharex=rows > 1))
    data = io.BytesIO()
    with warnings.catch_warnings(), matplotlib.rc_context(_SETTINGS):
        warnings.filterwarnings("ignore", "Glyph .* missing")  # a box is drawn instead
        figure.savefig(data, format=kind, metadata={"Date": None} if kind == "svg" else None)
    return f"data:{_KINDS[kind]};base64," + base64.b64encode(data.getvalue()).decode("ascii")
