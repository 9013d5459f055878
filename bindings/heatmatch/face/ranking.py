"""Candidates in order, and the rejected pairings."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import TYPE_CHECKING, Any, overload

from heatmatch import _core
from heatmatch._arguments import shown
from heatmatch._faces import Face, Held, call, wrap
from heatmatch.face.candidate import KEPT, Candidate
from heatmatch.io import frames
from heatmatch.text import forms, results
from heatmatch.text.plain import plain

if TYPE_CHECKING:
    import pandas as _pd

    from heatmatch._core import RankMemory
    from heatmatch.face.catalog import Catalog
    from heatmatch.face.installation import Installation
    from heatmatch.face.weather import Weather


class Ranking(Face):
    """Candidates without a known danger, best first, and the rejected pairings.

    A sequence of its candidates: ``ranking[0]``, ``len(ranking)``, ``for candidate in ranking``.

    Examples
    --------
    >>> import heatmatch as hm
    >>> ranking = hm.rank(hm.Catalog.starter(), hm.demo(), top=5)
    >>> len(ranking), ranking[0] is ranking.candidates[0]
    (5, True)
    """

    __slots__ = ("_kept",)
    _made_by = "rank(catalog, installation)"
    _kept: dict[object, Any]

    reasons: Held[dict[str, int]] = Held(
        "Number of rejected pairings by the margin that rejected them."
    )
    evaluated: Held[int] = Held("Number of pairings evaluated.")
    above_volts: Held[int] = Held("Number of pairings left out: their array exceeds `volts_max`.")
    volts_max: Held[float | None] = Held(
        "Open-circuit voltage of an array at the record low, at most [V]; None: any."
    )
    by_season: Held[bool] = Held(
        "Whether the order is by season energy [kWh]; otherwise by mean power [W]."
    )
    remarks: Held[list[str]] = Held("Main remarks, in words.")
    lacking: Held[str] = Held(
        "Fact or purchase that a recommendation lacks, in words; empty where there is one."
    )
    conditions: Held[list[tuple[float, float]]] = Held(
        "Pairs of irradiance [W/m2] and cell temperature [°C] of the mean power."
    )

    def _hold(self, compiled: object) -> None:
        super()._hold(compiled)
        self._kept = {}  # candidates by place, wrapped on access, and the two lists

    def _list(self, name: str) -> list[Candidate]:
        if name not in self._kept:
            self._kept[name] = wrap(getattr(self._core, name))
        return list(self._kept[name])

    @property
    def candidates(self) -> list[Candidate]:
        """Candidates without a known danger, best first."""
        return list(self)

    @property
    def recommended(self) -> Candidate | None:
        """Recommended circuit; None where none can be recommended, see `lacking`.

        Among circuits without a likely danger, with every deciding margin assessed and a known bill
        within the budget: of those with at least 95 % of the most heat, the one with most headroom.
        """
        if "recommended" not in self._kept:
            self._kept["recommended"] = wrap(self._core.recommended)
        found: Candidate | None = self._kept["recommended"]
        return found

    @property
    def alternatives(self) -> dict[str, Candidate]:
        """Other circuits by what they are first in: "most heat", "least money", and others."""
        if "alternatives" not in self._kept:
            self._kept["alternatives"] = dict(wrap(self._core.alternatives()))
        return dict(self._kept["alternatives"])

    @property
    def rejected(self) -> list[Candidate]:
        """Candidates with a danger, most heat first."""
        return self._list("rejected")

    @property
    def pareto(self) -> list[Candidate]:
        """Candidates that no other beats at once in heat, headroom (in whole percent) and price."""
        if "pareto" not in self._kept:
            self._kept["pareto"] = wrap(self._core.pareto())
        return list(self._kept["pareto"])

    def to_frame(self, *, rejected: bool = False) -> _pd.DataFrame:
        """Return the candidates, or the rejected pairings, as a data frame, best first.

        Parameters
        ----------
        rejected : bool
            Whether to return the rejected pairings instead.

        Returns
        -------
        pandas.DataFrame
            Shape (candidates, columns); units are in the column names.

        Raises
        ------
        ImportError
            pandas is not installed.

        Examples
        --------
        >>> import heatmatch as hm
        >>> hm.rank(hm.Catalog.starter(), hm.demo(), top=5).to_frame().shape[0]
        5
        """
        return frames.ranking_to_frame(self, rejected=rejected)

    def __len__(self) -> int:
        return len(self._core)

    @overload
    def __getitem__(self, index: int) -> Candidate: ...
    @overload
    def __getitem__(self, index: slice) -> list[Candidate]: ...
    def __getitem__(self, index: int | slice) -> Candidate | list[Candidate]:
        if isinstance(index, slice):
            return [self[place] for place in range(*index.indices(len(self)))]
        if not hasattr(index, "__index__"):
            raise TypeError(f"ranking[{shown(index)}]: the place must be a whole number or a slice")
        place = index + len(self) if index < 0 else int(index)
        if place not in self._kept:
            if not 0 <= place < len(self):
                raise IndexError(f"ranking[{index}]: it has {len(self)} candidates")
            self._kept[place] = wrap(self._core[place])
        found: Candidate = self._kept[place]
        return found

    def __iter__(self) -> Iterator[Candidate]:
        return (self[place] for place in range(len(self)))

    def __repr__(self) -> str:
        counts = f"{len(self)} candidates, {len(self.rejected)} rejected kept"
        return f"<Ranking: {counts}, of {self.evaluated} pairings>"

    def __str__(self) -> str:
        return plain(results.ranking_text(self))

    def _repr_html_(self) -> str:
        return forms.ranking_html(self)


def rank(
    catalog: Catalog,
    installation: Installation,
    weather: Weather | None = None,
    *,
    top: int = 200,
    keep_rejected: int = 200,
    max_bank: int = 4,
    volts_max: float | None = None,
    fold: bool = True,
    group: str = "",
    element: str = "",
    panels: str | None = None,
    bank: str | None = None,
    conditions: Sequence[tuple[float, float]] | None = None,
    coil_temperature_c: float = 300.0,
    exact_weather: bool = False,
    threads: int = 0,
    vector_width: str = "automatic",
    progress: Callable[[float], object] | bool | None = None,
    memory: RankMemory | None = KEPT,
) -> Ranking:
    """Rank every pairing of owned panels with allowed elements.

    Parameters
    ----------
    catalog : Catalog
        Parts that the installation names or chooses among.
    installation : Installation
        Needs panels and elements.
    weather : Weather, optional
        Weather on the panels; by default made from the installation's twelve monthly means.
    top : int
        Number of candidates to keep.
    keep_rejected : int
        Number of rejected candidates to keep.
    max_bank : int
        Largest number of elements in a bank, 1 to 64.
    volts_max : float, optional
        Largest open-circuit voltage of an array at the record low [V], 1 to 2000; by default that
        of the goals. Arrays above it are left out.
    fold : bool
        List banks of one element and the same resistance once, unless one is better in something.
    group, element : str
        Only this group of panels, only this element; empty for all.
    panels, bank : str, optional
        Only this hook-up of panels or elements, such as "2S1P".
    conditions : sequence of (float, float), optional
        Pairs of irradiance [W/m2] and cell temperature [°C] for the mean power.
    coil_temperature_c : float
        Coil temperature if no store determines it [°C], 20 to 1200.
    exact_weather : bool
        Sum the season over every row instead of condensed nodes.
    threads : int
        Number of threads, 0 to 256; 0 is one per core.
    vector_width : str
        "automatic", or a width that ``widest_vectors`` allows.
    progress : callable or bool, optional
        True shows a bar; a callable is called with the completed share, 0 to 1.
    memory : RankMemory, optional
        Results kept for the next ranking; None keeps nothing.

    Returns
    -------
    Ranking
        By season energy [kWh]; by mean power [W] without weather.

    Raises
    ------
    InvalidInput
        A value is out of range, or the installation lacks panels or elements.
    NotFound
        The catalog lacks a part that the installation names.

    Notes
    -----
    Order: season energy (mean power without weather) in steps of 1 %, then fewest margins not
    assessed, then largest of the smallest headrooms, then lowest price to buy. Pairings with a
    danger, or above the budget, are rejected. The price is that of the whole bill. With a budget,
    pairings whose bill is not known come last.

    References
    ----------
    de-soto-2006 : I-V curves
    ross-1980 : cell temperature

    Examples
    --------
    >>> import heatmatch as hm
    >>> ranking = hm.rank(hm.Catalog.starter(), hm.demo(), group="thin pair", top=3)
    >>> {candidate.circuit.owned.group for candidate in ranking}
    {'thin pair'}
    """
    made: Ranking = call(
        _core.rank,
        catalog,
        installation,
        weather,
        top=top,
        keep_rejected=keep_rejected,
        max_bank=max_bank,
        volts_max=volts_max,
        fold=fold,
        group=group,
        element=element,
        panels=panels,
        bank=bank,
        conditions=conditions,
        coil_temperature_c=coil_temperature_c,
        exact_weather=exact_weather,
        threads=threads,
        vector_width=vector_width,
        progress=progress,
        memory=memory,
    )
    return made
