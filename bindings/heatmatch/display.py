"""Rankings and candidates as text of 80 columns."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from heatmatch import _core
from heatmatch.display_heat import (
    HEAT_HEADER,
    heat_cells,
    heat_title,
    load_unit,
    sheath_cells,
    sheath_legend,
    with_store,
)
from heatmatch.display_season import MONTHS, daily, season_text
from heatmatch.display_text import WIDTH, clip, clip_middle, table, wrap
from heatmatch.display_units import in_units, listed, said
from heatmatch.display_verdict import SEVERITIES, headroom_left, nearest_sentence, nothing_left

__all__ = [
    "MONTHS",
    "WIDTH",
    "candidate_text",
    "clip",
    "delivered_text",
    "heat_text",
    "legend",
    "margins_text",
    "ranking_table",
    "ranking_text",
    "reasons_text",
    "season_text",
    "table",
    "wrap",
]

TABLE_ROWS = 10


def watts(value: float) -> str:
    """Watts in at most four characters."""
    return f"{value:.0f}" if value < 9999.5 else f"{value / 1000:.0f}k"


def price_text(candidate: _core.Candidate) -> str:
    """What is to be bought, or `?` where a price is unknown."""
    if candidate.price_to_buy is None:
        return "?"
    return f"{candidate.price_to_buy:.0f}"


# Widths in text of 80 columns; a negative one is aligned to the right.
_WIDTHS_BARE = (3, 14, 30, -5, -9, -4, -4, -4)
_WIDTHS_STORE = (3, 12, 25, -4, -9, -4, -4, -7, -4)
_ELEMENTS, _SHEATH = 2, 7  # places in it: the elements leave room for long sheaths
_SHARE = 5  # place of the column that text of 80 columns has no room for beside the sheath


def ranking_header(
    candidates: Sequence[_core.Candidate], *, units: str = "si", wide: bool = True
) -> tuple[str, ...]:
    """The columns of a ranking: heat by the day of the season, or power without weather."""
    season = any(c.season is not None for c in candidates)
    heat = ("kWh/d", "band") if season else ("mean", "band W")
    columns: tuple[str, ...] = ("#", "panels", "elements", *heat, "max%", "head", "buy")
    if not with_store(candidates):
        return columns
    columns = (*columns, "sheath", load_unit(units))
    return columns if wide else _without_share("kWh" if c == "kWh/d" else c for c in columns)


def _without_share(cells: Iterable[str]) -> tuple[str, ...]:
    return tuple(cell for place, cell in enumerate(cells) if place != _SHARE)


def _widths(candidates: Sequence[_core.Candidate], units: str) -> tuple[int, ...]:
    if not with_store(candidates):
        return _WIDTHS_BARE
    widths = list(_WIDTHS_STORE)
    longest = max(len(sheath_cells(candidate, units)[0]) for candidate in candidates)
    more = max(0, longest + widths[_SHEATH])
    widths[_ELEMENTS] -= more
    widths[_SHEATH] -= more
    return tuple(widths)


def _heat_cells(candidate: _core.Candidate) -> tuple[str, str, str]:
    """Heat, its band, and the share of what the panels could give."""
    season = candidate.season
    if season is not None:
        low, high = (kwh / season.days for kwh in (season.kwh_low, season.kwh_high))
        band = f"{daily(low)}-{daily(high)}"
        return daily(season.mean_kwh_per_day), band, f"{100 * season.harvest_fraction:.0f}"
    best = sum(at.maximum_power_w for at in candidate.delivered)
    share = sum(at.power_w for at in candidate.delivered) / best if best else 0.0
    band = f"{watts(candidate.mean_power_low_w)}-{watts(candidate.mean_power_high_w)}"
    return watts(candidate.mean_power_w), band, f"{100 * share:.0f}"


def candidate_cells(
    number: int,
    candidate: _core.Candidate,
    *,
    names: tuple[int, int] = (120, 120),
    units: str = "si",
    store: bool = True,
) -> tuple[str, ...]:
    """The cells of one row of the ranking table, its two names cut to so many characters."""
    circuit = candidate.circuit
    return (
        str(number),
        f"{clip(circuit.owned.group, names[0] - len(circuit.panels) - 1)} {circuit.panels}",
        f"{clip_middle(circuit.element.id, names[1] - len(circuit.bank) - 1)} {circuit.bank}",
        *_heat_cells(candidate),
        headroom_left(candidate),
        price_text(candidate),
        *(sheath_cells(candidate, units) if store else ()),
    )


def letter(number: int) -> str:
    """A letter for a place that is none of the ranking: a for 1, z for 26, aa for 27."""
    letters = ""
    while number > 0:
        number, rest = divmod(number - 1, 26)
        letters = chr(ord("a") + rest) + letters
    return letters


def ranking_table(
    candidates: Sequence[_core.Candidate],
    first: int = 1,
    *,
    units: str = "si",
    letters: bool = False,
) -> str:
    """Candidates as a table of 80 columns, numbered as in the ranking or by letters."""
    widths = _widths(candidates, units)
    store = with_store(candidates)
    rows = []
    for number, candidate in enumerate(candidates, first):
        cells = candidate_cells(
            number, candidate, names=(widths[1], widths[2]), units=units, store=store
        )
        if letters:
            cells = (letter(number), *cells[1:])
        rows.append(_without_share(cells) if store else cells)
    return table(ranking_header(candidates, units=units, wide=False), rows, widths)


_COMMON_LEGEND = (
    "head: smallest headroom of the limits whose passing is a danger (1 unused, 0 at the limit); "
    "buy: price of elements and wire that are not owned, each at the middle of low and high; "
    "devices and wire that is named are not counted. 2S1P: two in series, one string of them. "
    "Order: heat in steps of 1 %, then fewest margins not assessed, then most headroom, then price."
)
_POWER_LEGEND = (
    "mean: watts into the elements averaged over the conditions; band: tolerance and age; "
)
_SEASON_LEGEND = (
    "kWh: heat into the elements a day, mean over the season; band: tolerance, age and, where "
    "the weather tells, cloud within its step; "
)
_SHARE_LEGEND = "max%: share of what the panels could give; "


def legend(ranking: _core.Ranking, *, units: str = "si", wide: bool = True) -> str:
    """What the columns of a ranking mean."""
    store = with_store(ranking.candidates or ranking.rejected)
    return (
        (_SEASON_LEGEND if ranking.by_season else _POWER_LEGEND)
        + (_SHARE_LEGEND if wide or not store else "")
        + (sheath_legend(units) if store else "")
        + _COMMON_LEGEND
    )


def _pairings(ranking: _core.Ranking) -> str:
    return "1 pairing" if ranking.evaluated == 1 else f"{ranking.evaluated} pairings"


def reasons_text(ranking: _core.Ranking) -> str:
    """Why pairings were rejected, in one sentence."""
    if not ranking.reasons:
        return f"{_pairings(ranking)} evaluated, none rejected."
    counts = sorted(ranking.reasons.items(), key=lambda item: -item[1])
    why = ", ".join(f"{name} {count}" for name, count in counts)
    total = sum(ranking.reasons.values())
    return f"{_pairings(ranking)} evaluated, {total} rejected: {why}."


def ranking_text(ranking: _core.Ranking, top: int = TABLE_ROWS, *, units: str = "si") -> str:
    """A ranking as text."""
    lines = [reasons_text(ranking), ""]
    if len(ranking) == 0:
        lines.append(nothing_left(ranking))
    else:
        lines.append(ranking_table(ranking.candidates[:top], units=units))
        lines += ["", legend(ranking, units=units, wide=False)]
    lines += [in_units(remark, units) for remark in ranking.remarks]
    return "\n".join(line if "\n" in line else wrap(line) for line in lines)


def _not_assessed_lines(margins: Sequence[_core.Margin], units: str) -> list[str]:
    """What could not be assessed; margins that share subject and sentence in one line."""
    names: dict[tuple[str, str], list[str]] = {}
    for margin in margins:
        names.setdefault((margin.subject, said(margin, units)), []).append(margin.name)
    return [
        wrap(f"not assessed: {', '.join(same)}, {subject}: {sentence}")
        for (subject, sentence), same in names.items()
    ]


def margins_text(candidate: _core.Candidate, *, units: str = "si", everything: bool = False) -> str:
    """The margins of a candidate as text, the most severe first."""
    lines: list[str] = []
    for severity in SEVERITIES:
        margins = [m for m in candidate.margins if m.severity == severity]
        if not margins:
            continue
        if severity == "none" and not everything:
            lines.append(f"none: {len(margins)} further margins are within their limits")
            continue
        if severity == "not assessed" and not everything:
            lines += _not_assessed_lines(margins, units)
            continue
        for margin in margins:
            sentence = said(margin, units)
            lines.append(wrap(f"{severity}: {margin.name}, {margin.subject}: {sentence}"))
    return "\n".join(lines)


DELIVERED_HEADER = ("sun W/m2", "cells", "W", "band", "V", "A", "of max", "wire W")


def delivered_cells(candidate: _core.Candidate, *, units: str = "si") -> list[tuple[str, ...]]:
    """The rows of the table of what a candidate delivers at each condition."""
    return [
        (
            f"{at.irradiance_w_m2:.0f}",
            _core.format_quantity(at.cell_temperature_c, "°C", units=units, digits=3),
            f"{at.power_w:.0f}",
            f"{at.power_low_w:.0f}-{at.power_high_w:.0f}",
            f"{at.voltage_v:.1f}",
            f"{at.current_a:.2f}",
            f"{100 * at.harvest_fraction:.0f} %",
            f"{at.wire_w:.1f}",
        )
        for at in candidate.delivered
    ]


def delivered_text(candidate: _core.Candidate, *, units: str = "si") -> str:
    """What a candidate delivers at each condition, as a table."""
    rows = delivered_cells(candidate, units=units)
    return table(DELIVERED_HEADER, rows, (-8, -8, -7, -11, -7, -7, -7, -7))


def heat_text(candidate: _core.Candidate, *, units: str = "si") -> str:
    """How hot a candidate makes its store, what it may take, and what would let it pass."""
    lines = []
    rows = heat_cells(candidate, units=units)
    if rows:
        lines = [
            wrap(heat_title(candidate, units=units)),
            table(HEAT_HEADER, rows, (24, -8, -8, -8, -8, -8)),
        ]
    told = [in_units(text, units) for text in candidate.advice().sentences]
    return "\n".join([*lines, *(wrap(text) for text in told)])


def candidate_text(candidate: _core.Candidate, *, units: str = "si") -> str:
    """A candidate as text: what it is, what it delivers, its margins, what was assumed."""
    circuit = candidate.circuit
    lines = [
        wrap(
            f"{circuit.title}: {circuit.bank_ohm:.3g} ohm; the label's Vmp/Imp is "
            f"{circuit.noon_match_ohm:.3g} ohm. Open on the coldest morning: "
            f"{circuit.cold_voltage_v:.0f} V."
        ),
        "",
        *(wrap(in_units(remark, units)) for remark in candidate.remarks),
        *([""] if candidate.remarks else []),
        *([season_text(candidate, units=units), ""] if candidate.season is not None else []),
        delivered_text(candidate, units=units),
        "",
        heat_text(candidate, units=units),
        "",
        *([wrap(nearest), ""] if (nearest := nearest_sentence(candidate, units=units)) else []),
        margins_text(candidate, units=units),
    ]
    lines += listed("assumed:", candidate.assumed, units)
    return "\n".join(lines)
