"""One circuit with its numbers."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from heatmatch import _core
from heatmatch._faces import Face, Held
from heatmatch.face.margin import Margin
from heatmatch.face.meter_sheet import MeterSheet, meter_sheet
from heatmatch.io import frames
from heatmatch.text import forms, results
from heatmatch.text.plain import plain

if TYPE_CHECKING:
    import pandas as _pd

    from heatmatch._core import (
        Advice,
        CheckCounts,
        CodeDuty,
        Delivered,
        Extremes,
        HeatPoint,
        HotTail,
        NotChecked,
        Site,
        SpaceBalance,
        Step,
        WireCheck,
    )
    from heatmatch.choices import Severity
    from heatmatch.face.bill import Bill
    from heatmatch.face.catalog import Catalog
    from heatmatch.face.circuit import Circuit
    from heatmatch.face.season import Season


class Candidate(Face):
    """One circuit with its numbers, from a ranking or from ``assess``.

    Examples
    --------
    >>> import heatmatch as hm
    >>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> circuit.circuit.panels, circuit.circuit.bank
    ('2S1P', '1S2P')
    """

    __slots__ = ()
    _made_by = "rank(catalog, installation) or assess(catalog, installation)"

    circuit: Held[Circuit] = Held("Array, bank, runs and devices.")
    delivered: Held[list[Delivered]] = Held("Power delivered at each condition [W].")
    season: Held[Season | None] = Held("Energy over the season [kWh]; None without weather.")
    margins: Held[list[Margin]] = Held("All named checks.")
    site: Held[Site] = Held("Site at which it is assessed.")
    bright: Held[Extremes] = Held(
        "Power [W], voltage [V], current [A] of an element in cold, bright weather."
    )
    space: Held[SpaceBalance | None] = Held("Heat loss of the space [W/K]; None if not described.")
    heat: Held[HeatPoint | None] = Held(
        "Store temperatures, cold bright weather [°C]; None if unknown."
    )
    price_to_buy: Held[float | None] = Held("Typical total of `bill`; None if not known.")
    currency: Held[str] = Held("Currency of the price, as code of ISO 4217.")
    bill: Held[Bill] = Held("All parts of the circuit: owned and to buy.")
    remarks: Held[list[str]] = Held("Main remarks on an assessment, in words.")
    like_it: Held[int] = Held(
        "Number of pairings of the same load that a ranking folds under it; 0 in an assessment."
    )
    mean_power_w: Held[float] = Held("Mean typical power over the conditions [W].")
    mean_power_low_w: Held[float] = Held("Low end of the mean power [W].")
    mean_power_high_w: Held[float] = Held("High end of the mean power [W].")
    objective: Held[float] = Held(
        "Objective: season energy [kWh], or mean power [W] without weather."
    )
    worst: Held[Margin | None] = Held("Most severe margin; None without margins.")
    severity: Held[Severity] = Held(
        'Severity of the worst margin: "none", "caution", "warning", "danger" or "not assessed".'
    )
    worst_severity: Held[Severity] = Held(
        "Severity with unstated facts at their worst, in the words of `severity`."
    )
    deciding_fact: Held[tuple[str, str] | None] = Held(
        "Part and field of the unstated fact on which a danger depends; None without such a fact."
    )
    nearest_limit: Held[Margin | None] = Held("Assessed margin nearest a limit; None if none.")
    heat_unknown: Held[bool] = Held("Whether there is a store of unknown sheath temperature.")
    smallest_headroom: Held[float] = Held(
        "Smallest headroom of assessed margins that guard against a danger [dimensionless]; "
        "without the sheath where `heat_unknown` is True."
    )
    not_assessed: Held[int] = Held("Number of margins that are not assessed for lack of data.")
    checks: Held[CheckCounts] = Held("Numbers of checks by finding.")
    not_checked: Held[list[NotChecked]] = Held("Checks that lack a fact, grouped by the fact.")
    assumed: Held[list[str]] = Held("Assumptions, in words.")
    tail: Held[HotTail | None] = Held("Temperatures at the element's end [°C]; None if not known.")

    def code_duties(self) -> list[CodeDuty]:
        """Return the requirements of the stated wiring code, or of both codes if none is stated.

        Returns
        -------
        list of CodeDuty
            Requirements, met or not; they change no rank and no severity.

        Examples
        --------
        >>> import heatmatch as hm
        >>> {duty.code for duty in hm.assess(hm.Catalog.starter(), hm.demo()).code_duties()}
        {'nec'}
        """
        found: list[CodeDuty] = self._call("code_duties")
        return found

    def check_wires(self, catalog: Catalog | None = None) -> list[WireCheck]:
        """Compare the temperature of every run with the limits of its wire.

        Parameters
        ----------
        catalog : Catalog, optional
            Catalog for the choice of a suitable wire; by default that of the ranking.

        Returns
        -------
        list of WireCheck
            One per run: temperatures [°C], limits, and the cheapest suitable wire.

        Examples
        --------
        >>> import heatmatch as hm
        >>> [check.run for check in hm.assess(hm.Catalog.starter(), hm.demo()).check_wires()]
        ['home run', 'along the wall', 'hot tail']
        """
        found: list[WireCheck] = self._call("check_wires", catalog)
        return found

    def advice(self) -> Advice:
        """Compute the largest power of one element in its store.

        Returns
        -------
        Advice
            Power [W] of one element, and changes that bring it within the limit.

        Examples
        --------
        >>> import heatmatch as hm
        >>> hm.assess(hm.Catalog.starter(), hm.demo()).advice().element_w > 0
        True
        """
        found: Advice = self._call("advice")
        return found

    def explain(self) -> list[Step]:
        """Return every formula with its numbers, down to the nameplate.

        Returns
        -------
        list of Step
            In the order of computation.

        Examples
        --------
        >>> import heatmatch as hm
        >>> len(hm.assess(hm.Catalog.starter(), hm.demo()).explain()) > 10
        True
        """
        found: list[Step] = self._call("explain")
        return found

    def margins_frame(self, *, units: str = "si") -> _pd.DataFrame:
        """Return the margins as a data frame, one row each.

        Parameters
        ----------
        units : {"si", "us"}
            Unit set of the sentences; `value` and `limit` stay in `unit`.

        Returns
        -------
        pandas.DataFrame
            Columns severity, worst_severity, name, subject, value, limit, unit, headroom, sentence,
            source, assumed, missing.

        Raises
        ------
        InvalidInput
            `units` is neither "si" nor "us".
        ImportError
            pandas is not installed.

        Examples
        --------
        >>> import heatmatch as hm
        >>> frame = hm.assess(hm.Catalog.starter(), hm.demo()).margins_frame()
        >>> frame.shape[1]
        12
        """
        return frames.margins_to_frame(self, units=units)

    def meter_sheet(self, **options: Any) -> MeterSheet:
        """Compute the expected meter readings of this circuit.

        Parameters
        ----------
        **options : object
            Options of ``meter_sheet``.

        Returns
        -------
        MeterSheet
            Expected voltages [V] and currents [A] at each irradiance.

        Raises
        ------
        InvalidInput
            An option is out of range, see ``meter_sheet``.

        Examples
        --------
        >>> import heatmatch as hm
        >>> len(hm.assess(hm.Catalog.starter(), hm.demo()).meter_sheet().rows) > 4
        True
        """
        return meter_sheet(self, **options)

    def __str__(self) -> str:
        return plain(results.candidate_text(self))

    def _repr_html_(self) -> str:
        return forms.candidate_html(self)


# Memory of rankings and assessments, unless a caller passes one or None.
KEPT = _core.RankMemory()
