"""The bill of a circuit: parts that are owned and parts to buy."""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatmatch import _core
from heatmatch._faces import Face, Held
from heatmatch.io import frames
from heatmatch.text import forms, results
from heatmatch.text.plain import plain, plain_line

if TYPE_CHECKING:
    import pandas as _pd

    from heatmatch._core import BillLine
    from heatmatch.choices import Answer


class Bill(Face):
    """All parts of a circuit: what is owned, and what is to buy.

    Elements, wire there and back, connectors, listed devices, and the cheapest control of the
    catalog for each required device that is not listed, or cannot do its duty here.

    Notes
    -----
    ``total = sum(to_buy * price)`` over all lines; not known if one price or part is not. Prices
    in different currencies are not added.

    Examples
    --------
    >>> import heatmatch as hm
    >>> bill = hm.assess(hm.Catalog.starter(), hm.demo()).bill
    >>> bill.complete, bill.currency
    (True, 'USD')
    """

    __slots__ = ()
    _made_by = "Candidate.bill"

    lines: Held[list[BillLine]] = Held("Lines, one for each kind of part.")
    currency: Held[str] = Held("Currency of the totals, as code of ISO 4217; may be empty.")
    budget: Held[float | None] = Held("Stated budget, in `currency`; None without one.")
    remarks: Held[list[str]] = Held("Listed devices that are not on the bill, in words.")
    low: Held[float | None] = Held("Total of the low prices, in `currency`; None if not known.")
    typical: Held[float | None] = Held(
        "Total at the middle of low and high, in `currency`; None if not known."
    )
    high: Held[float | None] = Held("Total of the high prices, in `currency`; None if not known.")
    complete: Held[bool] = Held("Whether each line has a part and a price in `currency`.")
    within_budget: Held[Answer] = Held(
        'Whether the typical total is within the budget: "yes", "no", or "unknown" if the total is '
        'not known; "yes" without a budget.'
    )

    def to_frame(self) -> _pd.DataFrame:
        """Return the lines as a data frame, one row each.

        Returns
        -------
        pandas.DataFrame
            Columns kind, part, label, quantity, owned, to_buy, unit, low, typical, high, currency,
            state, why.

        Raises
        ------
        ImportError
            pandas is not installed.

        Examples
        --------
        >>> import heatmatch as hm
        >>> hm.assess(hm.Catalog.starter(), hm.demo()).bill.to_frame().shape[1]
        13
        """
        return frames.bill_to_frame(self)

    def __repr__(self) -> str:
        return plain_line(f"<{_core.bill_sentence(self._core)}>")

    def __str__(self) -> str:
        return plain(results.bill_text(self))

    def _repr_html_(self) -> str:
        return forms.bill_html(self)
