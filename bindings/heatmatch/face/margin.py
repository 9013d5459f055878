"""A named check of one part or run against one limit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatmatch import _core
from heatmatch._faces import Face, Held
from heatmatch.text import forms
from heatmatch.text.plain import plain, plain_line

if TYPE_CHECKING:
    from heatmatch.choices import Severity


class Margin(Face):
    """A named check of one part or run against one limit.

    Notes
    -----
    ``headroom = (limit - value) / (limit - rest)``; rest is 0, or the temperature around it.

    Examples
    --------
    >>> import heatmatch as hm
    >>> worst = hm.assess(hm.Catalog.starter(), hm.demo()).worst
    >>> worst.severity in ("none", "caution", "warning", "danger", "not assessed")
    True
    """

    __slots__ = ()
    _made_by = "Candidate.margins"

    name: Held[str] = Held("Name of the check in data; tables show the term of the trade.")
    subject: Held[str] = Held("Part or run that is checked.")
    severity: Held[Severity] = Held(
        'Severity: "none", "caution", "warning", "danger" or "not assessed".'
    )
    consequence: Held[Severity] = Held(
        'Severity beyond the limit: "caution", "warning" or "danger".'
    )
    worst_severity: Held[Severity] = Held(
        "Severity with every unstated fact at its worst, in the same words."
    )
    value: Held[float | None] = Held("Value at its worst end, in `unit`; None if not known.")
    value_low: Held[float | None] = Held("Low end of the value, in `unit`; None if not known.")
    value_high: Held[float | None] = Held("High end of the value, in `unit`; None if not known.")
    limit: Held[float | None] = Held("Limit, in `unit`; None if not known.")
    unit: Held[str] = Held("Unit of value and limit; empty if dimensionless.")
    headroom: Held[float | None] = Held(
        "Headroom [dimensionless]: 1 at rest, 0 at the limit, below 0 beyond; None if not known."
    )
    careful_headroom: Held[float | None] = Held(
        "Headroom with unstated facts at their worst [dimensionless]; None if not known."
    )
    source: Held[str] = Held("Source of the limit: a key of ``sources``.")
    missing: Held[list[str]] = Held("Names of the fields that the check lacks.")
    assumed: Held[list[str]] = Held("Assumptions, in words.")

    def sentence(self, *, units: str = "si") -> str:
        """Return the check as one sentence with its numbers.

        Parameters
        ----------
        units : {"si", "us"}
            Unit set of the numbers.

        Returns
        -------
        str
            One plain sentence.

        Raises
        ------
        InvalidInput
            `units` is neither "si" nor "us".

        Examples
        --------
        >>> import heatmatch as hm
        >>> worst = hm.assess(hm.Catalog.starter(), hm.demo()).worst
        >>> worst.sentence(units="us").endswith(".")
        True
        """
        said: str = self._call("sentence", units=units)
        return said

    def __repr__(self) -> str:
        return plain_line(f"<Margin {self.name}, {self.subject}: {self.severity}>")

    def __str__(self) -> str:
        found = "no finding" if self.severity == "none" else self.severity
        name = _core.shown_margin_name(self.name)
        return plain(f"{found}: {name}, {self.subject}: {self.sentence()}")

    def _repr_html_(self) -> str:
        return forms.paragraphs([str(self)])
