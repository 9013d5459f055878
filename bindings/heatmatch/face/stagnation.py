"""Highest temperatures of a store with no heat drawn."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from heatmatch import _core
from heatmatch._faces import Face, Held, call
from heatmatch.face.day_answer import PartPeak
from heatmatch.face.day_run import DayRun
from heatmatch.text import day, forms
from heatmatch.text.plain import plain, plain_line

if TYPE_CHECKING:
    from heatmatch.face.candidate import Candidate


class Stagnation(Face):
    """Highest temperatures of a store with no heat drawn, from ``simulate_stagnation``.

    Examples
    --------
    >>> import heatmatch as hm
    >>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> found = hm.simulate_stagnation(circuit)
    >>> 1 <= found.month <= 12
    True
    """

    __slots__ = ()
    _made_by = "simulate_stagnation(candidate)"

    month: Held[int] = Held("Month in which the fourteen days begin, 1 to 12.")
    delivered_kwh: Held[float] = Held("Energy into the bank in the fourteen days [kWh].")
    run: Held[DayRun] = Held("Simulation of the fourteen days.")
    peaks: Held[list[PartPeak]] = Held("Highest temperature of every part, against its limit.")
    sentences: Held[list[str]] = Held("Result in words, the most important first.")

    def __repr__(self) -> str:
        title = self.run.title
        return plain_line(f"<Stagnation {title}: month {self.month}, {self.delivered_kwh:.4g} kWh>")

    def __str__(self) -> str:
        return plain(day.stagnation_text(self))

    def _repr_html_(self) -> str:
        return forms.stagnation_html(self)


def simulate_stagnation(
    candidate: Candidate, *, progress: Callable[[float], object] | bool | None = None
) -> Stagnation:
    """Simulate fourteen cloudless days with the circuit welded closed and no heat drawn.

    Parameters
    ----------
    candidate : Candidate
        The circuit; its installation needs a store.
    progress : callable or bool, optional
        True shows a bar; a callable is called with the completed share, 0 to 1.

    Returns
    -------
    Stagnation
        Highest temperatures [°C] at the sunniest time of the year, with the air of high summer
        around the store and its fill at low conductivity.

    Raises
    ------
    InvalidInput
        The circuit has no store, or its site lacks a latitude.

    Notes
    -----
    Equations as in ``simulate_day``. The month with the most energy is simulated. Cells are in air
    of 10 °C, which overstates power in summer.

    References
    ----------
    carslaw-jaeger : conduction in the fill
    ineichen-perez-2002 : clear sky

    Examples
    --------
    >>> import heatmatch as hm
    >>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> hm.simulate_stagnation(circuit).run.days
    14.0
    """
    made: Stagnation = call(_core.simulate_stagnation, candidate, progress=progress)
    return made
