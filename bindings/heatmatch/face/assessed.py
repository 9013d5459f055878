"""Existing circuits, assessed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatmatch import _core
from heatmatch._faces import call
from heatmatch.face.candidate import KEPT, Candidate

if TYPE_CHECKING:
    from collections.abc import Sequence

    from heatmatch._core import RankMemory
    from heatmatch.face.catalog import Catalog
    from heatmatch.face.installation import Installation
    from heatmatch.face.weather import Weather


def assess(
    catalog: Catalog,
    installation: Installation,
    weather: Weather | None = None,
    *,
    conditions: Sequence[tuple[float, float]] | None = None,
    coil_temperature_c: float = 300.0,
    exact_weather: bool = False,
    memory: RankMemory | None = KEPT,
) -> Candidate:
    """Assess the existing circuit of an installation.

    Parameters
    ----------
    catalog : Catalog
        Parts that the installation names.
    installation : Installation
        Needs one circuit; ``assess_circuits`` assesses several.
    weather : Weather, optional
        Weather on the panels; by default made from the installation's twelve monthly means.
    conditions : sequence of (float, float), optional
        Pairs of irradiance [W/m2] and cell temperature [°C] for the mean power.
    coil_temperature_c : float
        Coil temperature if no store determines it [°C], 20 to 1200.
    exact_weather : bool
        Sum the season over every row instead of condensed nodes.
    memory : RankMemory, optional
        Results kept for the next assessment; None keeps nothing.

    Returns
    -------
    Candidate
        The circuit with its margins.

    Raises
    ------
    InvalidInput
        The installation has no circuit, or a value is out of range.
    NotFound
        The catalog lacks a part that the installation names.

    Notes
    -----
    Power at each condition: ``V = I R`` on the I-V curve of the panels, less wire loss.

    References
    ----------
    de-soto-2006 : I-V curves
    ross-1980 : cell temperature

    Examples
    --------
    >>> import heatmatch as hm
    >>> hm.assess(hm.Catalog.starter(), hm.demo()).circuit.element_count
    2
    """
    made: Candidate = call(
        _core.assess, catalog, installation, weather, conditions=conditions,
        coil_temperature_c=coil_temperature_c, exact_weather=exact_weather, memory=memory,
    )  # fmt: skip
    return made


def assess_circuits(
    catalog: Catalog,
    installation: Installation,
    weather: Weather | None = None,
    *,
    conditions: Sequence[tuple[float, float]] | None = None,
    coil_temperature_c: float = 300.0,
    exact_weather: bool = False,
    memory: RankMemory | None = KEPT,
) -> list[Candidate]:
    """Assess all existing circuits of an installation, which share one store.

    Parameters
    ----------
    catalog : Catalog
        Parts that the installation names.
    installation : Installation
        Needs ``circuits``, or ``circuit`` for one.
    weather : Weather, optional
        Weather on the panels; by default made from the installation's twelve monthly means.
    conditions : sequence of (float, float), optional
        Pairs of irradiance [W/m2] and cell temperature [°C] for the mean power.
    coil_temperature_c : float
        Coil temperature if no store determines it [°C], 20 to 1200.
    exact_weather : bool
        Sum the season over every row instead of condensed nodes.
    memory : RankMemory, optional
        Results kept for the next assessment; None keeps nothing.

    Returns
    -------
    list of Candidate
        One for each circuit, in the order of the installation.

    Raises
    ------
    InvalidInput
        The installation has no circuit, circuits use more panels or elements than it lists, or a
        value is out of range.
    NotFound
        The catalog lacks a part that the installation names.

    Notes
    -----
    All legs lie in the store together. Sheath, wall, lid and floor of each circuit are judged with
    the others at their largest power in full sun, all at the same time: each leg of power ``q'``
    per meter adds ``q'/(2 pi) (asinh(L/2d) - asinh(L/2 rho))`` at a distance ``d``. A limit
    counts only where limits open every circuit.

    References
    ----------
    carslaw-jaeger : line sources
    de-soto-2006 : I-V curves

    Examples
    --------
    >>> import heatmatch as hm
    >>> house = hm.demo()
    >>> rods = {"element": "storage-rod-1000-240", "bank": "1S1P"}
    >>> two = house.replace({
    ...     "circuit": None,
    ...     "circuits": [
    ...         {"name": "barn", "group": "barn pair", "panels": "2S1P", **rods},
    ...         {"name": "porch", "group": "porch four", "panels": "2S1P", **rods},
    ...     ],
    ... })
    >>> [each.circuit.name for each in hm.assess_circuits(hm.Catalog.starter(), two)]
    ['barn', 'porch']
    """
    made: list[Candidate] = call(
        _core.assess_circuits, catalog, installation, weather, conditions=conditions,
        coil_temperature_c=coil_temperature_c, exact_weather=exact_weather, memory=memory,
    )  # fmt: skip
    return made
