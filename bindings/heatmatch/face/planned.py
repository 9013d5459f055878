"""The best use of everything owned."""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatmatch import _core
from heatmatch._faces import Face, Held, call
from heatmatch.face.bill import Bill
from heatmatch.face.candidate import KEPT, Candidate
from heatmatch.text import results
from heatmatch.text.plain import plain
from heatmatch.text.sentence import Sentence

if TYPE_CHECKING:
    from collections.abc import Callable

    from heatmatch._core import IdlePanels, PlanOffer, RankMemory
    from heatmatch.face.catalog import Catalog
    from heatmatch.face.installation import Installation
    from heatmatch.face.weather import Weather


class Plan(Face):
    """Circuits that together deliver the most heat of the season, with their bill.

    Notes
    -----
    ``gap = at_most_kwh / kwh - 1``. No plan has more heat than any of ``bounds``.

    Examples
    --------
    >>> import heatmatch as hm
    >>> plan = hm.plan(hm.Catalog.starter(), hm.demo())
    >>> [each.circuit.name for each in plan.circuits]
    ['circuit 1']
    """

    __slots__ = ()
    _made_by = "plan(catalog, installation)"

    circuits: Held[list[Candidate]] = Held("Its circuits, assessed together in the store.")
    installation: Held[Installation] = Held("Installation with these circuits.")
    bill: Held[Bill] = Held("Bill of all circuits; what is owned counts once.")
    kwh: Held[float] = Held("Heat of the season, of all circuits [kWh].")
    days: Held[float] = Held("Days of the season.")
    mean_kwh_per_day: Held[float] = Held("Mean heat over the season [kWh/day].")
    headroom: Held[float] = Held("Headroom that every check was required to have.")
    at_most_kwh: Held[float] = Held(
        "Heat of the season that no plan of these arrays exceeds at this headroom [kWh]."
    )
    gap: Held[float] = Held("Share by which a plan of these arrays may have more heat.")
    bounds: Held[dict[str, float]] = Held(
        'Heat of the season that no plan exceeds [kWh]: "panels" in any wiring, "store" with any '
        'bill, "bill" with each circuit judged alone in the store.'
    )
    others: Held[list[PlanOffer]] = Held("Plans at less headroom, or below a voltage.")
    idle: Held[list[IdlePanels]] = Held("Panels that it leaves out, with the reason.")
    single: Held[Candidate | None] = Held("Best circuit alone; None if there is none.")
    arrays: Held[int] = Held("Number of arrays considered.")
    remarks: Held[list[str]] = Held("Main remarks, in words.")

    def summary(self) -> list[str]:
        """Return the answer in words, heat and price first.

        Returns
        -------
        list of str
            One sentence each.

        Examples
        --------
        >>> import heatmatch as hm
        >>> hm.plan(hm.Catalog.starter(), hm.demo()).summary()[0][:11]
        'One circuit'
        """
        said: list[str] = self._call("summary")
        return said

    def unlocks(
        self,
        catalog: Catalog,
        weather: Weather | None = None,
        *,
        max_bank: int = 4,
        threads: int = 0,
        progress: Callable[[float], object] | bool | None = None,
        memory: RankMemory | None = KEPT,
    ) -> list[Unlock]:
        """Find single changes with which the best plan has more heat, the most heat first.

        Parameters
        ----------
        catalog : Catalog
            The catalog of the plan.
        weather : Weather, optional
            The weather of the plan; by default made from the installation's monthly means.
        max_bank : int
            Elements in one bank at most, 1 to 64.
        threads : int
            Threads, 0 to 256; 0: as many as the machine has.
        progress : callable or bool, optional
            Called with the share done, 0 to 1; an exception of it stops. True prints a bar.
        memory : RankMemory, optional
            Results kept for the next plan or ranking; None keeps nothing.

        Returns
        -------
        list of Unlock
            Devices that rejected circuits lack, wires, and goals, each tried in a plan of its own.

        Raises
        ------
        InvalidInput
            A value is out of range.

        Notes
        -----
        Changes with less than 1 % more heat at the headroom of the plan are left out.

        Examples
        --------
        >>> import heatmatch as hm
        >>> cat = hm.Catalog.starter()
        >>> unlocks = hm.plan(cat, hm.demo()).unlocks(cat)
        >>> all(unlock.kwh > 0.0 for unlock in unlocks)
        True
        """
        found: list[Unlock] = call(
            _core.plan_unlocks, self, catalog, weather, max_bank=max_bank, threads=threads,
            progress=progress, memory=memory,
        )  # fmt: skip
        return found

    def __len__(self) -> int:
        return len(self._core)

    def __repr__(self) -> str:
        return f"<Plan: {len(self)} circuits, {self.mean_kwh_per_day:.3g} kWh a day>"

    def __str__(self) -> str:
        return plain(results.plan_text(self))


class Unlock(Face):
    """A single change with which the best plan has more heat.

    Examples
    --------
    >>> import heatmatch as hm
    >>> cat = hm.Catalog.starter()
    >>> plan = hm.plan(cat, hm.demo())
    >>> all(unlock.kwh > 0.0 for unlock in plan.unlocks(cat))
    True
    """

    __slots__ = ()
    _made_by = "plan.unlocks(catalog)"

    changed: Held[Installation] = Held("Installation with the change.")
    kwh: Held[float] = Held("Additional heat of the season [kWh].")
    price: Held[float | None] = Held(
        "Addition to the bill, in the currency of the goals; None if not known."
    )
    price_per_kwh: Held[float] = Held(
        "Price for each kWh of one season [currency/kWh]; infinite if not known."
    )
    crosses_v: Held[float | None] = Held(
        "Voltage that only its arrays exceed: 30 (where wet), 60 or 80 [V]; else None."
    )
    change: Held[Sentence] = Held("Change, in words.")
    said: Held[Sentence] = Held("Change with its heat and price, in words.")

    def __repr__(self) -> str:
        return f"<Unlock: {self.said}>"


def plan(
    catalog: Catalog,
    installation: Installation,
    weather: Weather | None = None,
    *,
    max_bank: int = 4,
    exact_weather: bool = False,
    threads: int = 0,
    progress: Callable[[float], object] | bool | None = None,
    memory: RankMemory | None = KEPT,
) -> Plan:
    """Find the best use of all owned panels and elements, with its bill.

    Parameters
    ----------
    catalog : Catalog
        Parts that the installation names, and parts to buy.
    installation : Installation
        Owned and allowed parts, the store, and the goals of the plan.
    weather : Weather, optional
        Weather on the panels; by default made from the installation's twelve monthly means.
    max_bank : int
        Elements in one bank at most, 1 to 64.
    exact_weather : bool
        Sum the season over every row instead of condensed nodes.
    threads : int
        Threads, 0 to 256; 0: as many as the machine has.
    progress : callable or bool, optional
        Called with the share done, 0 to 1; an exception of it stops. True prints a bar.
    memory : RankMemory, optional
        Results kept for the next plan or ranking; None keeps nothing.

    Returns
    -------
    Plan
        Circuits that together deliver the most heat without danger, within the budget.

    Raises
    ------
    InvalidInput
        Panels, elements or weather are missing, or a value is out of range.
    NotFound
        The catalog lacks a part that the installation names.

    Notes
    -----
    Solved for headroom 0.30, 0.20, 0.10 and 0: the plan has the largest of these with at least
    95 % of the heat at 0. Of plans within 1 % of the most heat it has the smallest bill, then the
    fewest circuits and parts.

    References
    ----------
    de-soto-2006 : I-V curves
    ross-1980 : cell temperature

    Examples
    --------
    >>> import heatmatch as hm
    >>> plan = hm.plan(hm.Catalog.starter(), hm.demo())
    >>> len(plan) > 0 and plan.bill.typical <= 150
    True
    """
    made: Plan = call(
        _core.plan, catalog, installation, weather, max_bank=max_bank,
        exact_weather=exact_weather, threads=threads, progress=progress, memory=memory,
    )  # fmt: skip
    return made
