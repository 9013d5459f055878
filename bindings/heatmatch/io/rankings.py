"""Rankings kept in files, and two of them compared."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict, dataclass, field
from typing import TYPE_CHECKING, Any

from heatmatch import _library as _core
from heatmatch.io import frames
from heatmatch.io.rankings_checked import KEY
from heatmatch.io.rankings_saved import (
    FORMAT,
    VERSION,
    SavedRanking,
    load_ranking,
    save_ranking,
)

if TYPE_CHECKING:
    import pandas as _pd

__all__ = [
    "FORMAT",
    "KEY",
    "VERSION",
    "Move",
    "RankingComparison",
    "SavedRanking",
    "compare_rankings",
    "load_ranking",
    "save_ranking",
]


@dataclass(frozen=True)
class Move:
    """Change of one pairing from one ranking to another.

    Attributes
    ----------
    group, panels, element, bank : str
        The pairing: group, its hook-up, element, and hook-up of the bank.
    before, after : int or None
        Place in each ranking, from 1; None if the ranking did not keep the pairing.
    heat_before, heat_after : float or None
        Season energy [kWh] or mean power [W], by ``RankingComparison.unit``.
    headroom_before, headroom_after : float or None
        Smallest headroom: 1 unused, 0 at the limit, below 0 beyond it.
    severity_before, severity_after : str or None
        "danger" if the pairing was rejected; None if it is in neither list of the ranking.
    worst_before, worst_after : str or None
        Name of the worst margin.
    price_before, price_after : float or None
        Price of what is to be bought; ``RankingComparison.currency`` is that of `price_after`.
    """

    group: str
    panels: str
    element: str
    bank: str
    before: int | None
    after: int | None
    heat_before: float | None
    heat_after: float | None
    headroom_before: float | None
    headroom_after: float | None
    severity_before: str | None = None
    severity_after: str | None = None
    worst_before: str | None = None  #: name of the worst margin
    worst_after: str | None = None
    price_before: float | None = None
    price_after: float | None = None

    @property
    def change(self) -> float | None:
        """Heat after minus heat before [kWh or W]; None if one of them is unknown."""
        if self.heat_before is None or self.heat_after is None:
            return None
        return self.heat_after - self.heat_before


@dataclass(frozen=True)
class RankingComparison:
    """Two rankings side by side, from ``compare_rankings``.

    Attributes
    ----------
    before, after : str
        Labels of the two rankings.
    unit : str
        Unit of heat: "kWh" over the season, or "W" averaged over the conditions.
    moves : list of Move
        In the order of the later ranking, then pairings that only the earlier ranking has.
    remarks : list of str
        What to know before comparing.
    reasons_before, reasons_after : dict of int
        Name of a margin to the number of pairings it rejected.
    currency : str
        Currency of the later prices; empty if there is none.
    """

    before: str
    after: str
    unit: str  #: of heat: kWh of the season, or W averaged over the conditions
    moves: list[Move] = field(default_factory=list)
    remarks: list[str] = field(default_factory=list)
    reasons_before: dict[str, int] = field(default_factory=dict)  #: margin -> pairings rejected
    reasons_after: dict[str, int] = field(default_factory=dict)
    currency: str = ""  #: of the prices after

    def to_dict(self) -> dict[str, Any]:
        """Return the comparison as plain data."""
        return asdict(self)

    def to_frame(self) -> _pd.DataFrame:
        """Return the comparison as a data frame, one row per pairing."""
        return frames.pandas_or_error().DataFrame([asdict(move) for move in self.moves])

    def __str__(self) -> str:
        from heatmatch.text.comparison import comparison_text

        return comparison_text(self)

    def _repr_html_(self) -> str:
        from heatmatch.text.comparison import comparison_html

        return comparison_html(self)


def compare_rankings(
    before: _core.Ranking | SavedRanking, after: _core.Ranking | SavedRanking
) -> RankingComparison:
    """Compare two rankings pairing by pairing.

    Parameters
    ----------
    before : Ranking or SavedRanking
        The earlier ranking.
    after : Ranking or SavedRanking
        The later ranking.

    Returns
    -------
    RankingComparison
        One `Move` per pairing. A pairing that one ranking kept and the other rejected for a danger
        is marked as such.

    Notes
    -----
    Two pairings are equal if group, hook-up, element and bank are equal. Heat is season energy
    [kWh] if both rankings have it, otherwise mean power [W]; a remark reports rankings of unlike
    kinds.

    Examples
    --------
    >>> import heatmatch as hm
    >>> ranking = hm.rank(hm.Catalog.starter(), hm.demo(), group="barn pair", top=5)
    >>> comparison = hm.compare_rankings(ranking, ranking)
    >>> comparison.unit, comparison.moves[0].change
    ('kWh', 0.0)
    """
    first, second = (
        ranking if isinstance(ranking, SavedRanking) else SavedRanking.of(ranking, name)
        for ranking, name in ((before, "before"), (after, "after"))
    )
    by_season = first.by_season and second.by_season
    heat = "season_kwh" if by_season else "mean_power_w"
    remarks: list[str] = []
    if first.by_season != second.by_season:
        remarks.append(_core.unlike_rankings_remark())
    old, new = _found(first), _found(second)
    kept = [dict.fromkeys(map(_key, ranking.rows)) for ranking in (second, first)]
    order = dict.fromkeys([*kept[0], *kept[1]])
    return RankingComparison(
        before=first.name or "before",
        after=second.name or "after",
        unit="kWh" if by_season else "W",
        moves=[_move(key, old.get(key), new.get(key), heat) for key in order],
        remarks=remarks,
        reasons_before=dict(first.reasons),
        reasons_after=dict(second.reasons),
        currency=next((row["currency"] for _, row in new.values() if row.get("currency")), ""),
    )


_Row = tuple[int | None, dict[str, Any]]


def _key(row: Mapping[str, Any]) -> tuple[str, ...]:
    return tuple(str(row[name]) for name in KEY)


def _found(ranking: SavedRanking) -> dict[tuple[str, ...], _Row]:
    """Every pairing that is known: its place, none if it was rejected, and its row."""
    found: dict[tuple[str, ...], _Row] = {
        _key(row): (None, {**row, "severity": "danger"}) for row in ranking.rejected
    }
    return found | {_key(row): (place, row) for place, row in enumerate(ranking.rows, 1)}


def _move(key: tuple[str, ...], old: _Row | None, new: _Row | None, heat: str) -> Move:
    def value(row: _Row | None, name: str) -> Any:
        return None if row is None else row[1].get(name)

    group, panels, element, bank = key
    return Move(
        group,
        panels,
        element,
        bank,
        before=None if old is None else old[0],
        after=None if new is None else new[0],
        heat_before=value(old, heat),
        heat_after=value(new, heat),
        headroom_before=value(old, "smallest_headroom"),
        headroom_after=value(new, "smallest_headroom"),
        severity_before=value(old, "severity"),
        severity_after=value(new, "severity"),
        worst_before=value(old, "worst_margin"),
        worst_after=value(new, "worst_margin"),
        price_before=value(old, "price_to_buy"),
        price_after=value(new, "price_to_buy"),
    )
