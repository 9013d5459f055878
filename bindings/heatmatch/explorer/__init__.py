"""A panel of controls in JupyterLab: change a choice, and ranking, margins and pictures follow."""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatmatch import _library as _core
from heatmatch.text.units import checked_units

if TYPE_CHECKING:
    from heatmatch.explorer.panel import ExplorerPanel
    from heatmatch.explorer.start_form import StartForm


def explore(
    catalog: _core.Catalog,
    installation: _core.Installation,
    weather: _core.Weather | None = None,
    *,
    units: str = "si",
) -> ExplorerPanel:
    """Show an installation with interactive controls in a notebook.

    The controls set panels and hook-up, element and bank, tilt, sun, length and kind of wire,
    conductivity of the fill, record low and budget. Ranking, margins and plots follow each change.
    Choices can be kept side by side and saved as installation files; rankings can be saved and
    compared. Every control works from the keyboard.

    Parameters
    ----------
    catalog : Catalog
        Parts to choose from.
    installation : Installation
        Starting values of the controls.
    weather : Weather, optional
        Replaces the installation's twelve monthly means; tilt and sun are then fixed.
    units : {"si", "us"}
        Unit set of tables and sentences.

    Returns
    -------
    ExplorerPanel
        Displayed as the last expression of a notebook cell. Its ``ranking`` and ``candidate`` are
        the ones on display.

    Raises
    ------
    InvalidInput
        The installation cannot be ranked, or `units` is neither "si" nor "us".
    NotFound
        The installation names a part that the catalog does not have.
    ImportError
        ipywidgets is not installed; the message says how to install it.

    Examples
    --------
    >>> import heatmatch as hm
    >>> catalog = hm.Catalog.starter()
    >>> place = hm.Installation(
    ...     site=hm.Site(record_low_c=-20),
    ...     panels=[{"group": "pair", "panel": "silicon-60-cell-245", "count": 2}],
    ...     elements=[{"element": "tubular-1000-120", "count": 1}],
    ... )
    >>> panel = hm.explore(catalog, place)
    >>> len(panel.ranking) > 0
    True
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


def start(catalog: _core.Catalog | None = None, *, units: str = "si") -> StartForm:
    """Ask for an installation in a notebook, in a dozen plain questions.

    Every answer is checked at once. Questions may stay open: what is then assumed is listed, and
    kept in the notes of the installation. What is behind # in an answer is kept as a note too. In a
    terminal ``heatmatch start`` asks the same.

    Parameters
    ----------
    catalog : Catalog, optional
        Parts that answers may name; the starter by default.
    units : {"si", "us"}
        Unit set of examples, and of numbers without a unit.

    Returns
    -------
    StartForm
        Displayed as the last expression of a notebook cell. Its ``installation`` is that of the
        accepted answers, for ``rank``.

    Raises
    ------
    ImportError
        ipywidgets is not installed; the message says how to install it.
    InvalidInput
        `units` is neither "si" nor "us".

    Examples
    --------
    >>> import heatmatch as hm
    >>> form = hm.start()
    >>> form.answer("latitude", "44.1 N")
    >>> form.installation.site.latitude_deg
    44.1
    """
    checked_units(units)
    try:
        from heatmatch.explorer.start_form import StartForm
    except ImportError as error:
        raise ImportError(
            "start needs ipywidgets; install it with pip install 'libheatmatch[notebook]', "
            "or answer heatmatch start in a terminal"
        ) from error
    return StartForm(_core.Catalog.starter() if catalog is None else catalog, units=units)
