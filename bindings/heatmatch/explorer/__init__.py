"""A panel of controls in JupyterLab: change a choice, and ranking, margins and pictures follow."""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatmatch import _core
from heatmatch.text.units import checked_units

if TYPE_CHECKING:
    from heatmatch.explorer.panel import ExplorerPanel


def explore(
    catalog: _core.Catalog,
    installation: _core.Installation,
    weather: _core.Weather | None = None,
    *,
    units: str = "si",
) -> ExplorerPanel:
    """Shows an installation with controls for what may be chosen, in a notebook.

    Panels and their hook-up, element and bank, tilt, sun, length and kind of wire, conductivity of
    the fill, record low and budget. A choice can be kept beside others, and saved as an
    installation file; rankings can be saved and compared. All of it works from the keyboard.

    Parameters
    ----------
    catalog : Catalog
    installation : Installation
        What the choices begin with.
    weather : Weather, optional
        Instead of the installation's own twelve months; tilt and sun then cannot be changed.
    units : {"si", "us"}
        Unit set of tables and sentences.

    Returns
    -------
    ExplorerPanel
        Shown by a notebook as the last thing of a cell; ``.ranking`` and ``.candidate`` are what
        it shows now.

    Raises
    ------
    InvalidInput
        The installation cannot be ranked, or `units` is none.
    ImportError
        ipywidgets or matplotlib are missing; the message tells how to get them.
    """
    checked_units(units)
    try:
        from heatmatch.explorer.panel import ExplorerPanel
    except ImportError as error:
        raise ImportError(
            "explore needs ipywidgets and matplotlib; install them with "
            "pip install 'libheatmatch[notebook]'"
        ) from error
    return ExplorerPanel(catalog, installation, weather, units=units)
