"""Rankings and candidates as text of 80 columns."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Sequence

from heatmatch import _core

WIDTH = 80
SEVERITIES = ("danger", "warning", "caution", "not assessed", "none")
TABLE_ROWS = 10


def clip(text: str, width: int) -> str:
    """The text on one line, cut with an ellipsis where it is longer than `width`."""
    text = " ".join(text.split())
    return text if len(text) <= width else text[: max(0, width - 1)] + "…"


def clip_middle(text: str, width: int) -> str:
    """The same, but cut in its middle: ids differ at both ends."""
    text = " ".join(text.split())
    if len(text) <= width:
        return text
    tail = max(0, 2 * (width - 1) // 5)
    return text[: width - 1 - tail] + "…" + text[len(text) - tail :]


def wrap(text: str, indent: str = "  ") -> str:
    """The text in lines of 80 columns, following ones indented."""
    return textwrap.fill(text, WIDTH, subsequent_indent=indent)


def table(header: Sequence[str], rows: Iterable[Sequence[str]], widths: Sequence[int]) -> str:
    """Columns of fixed width; a negative one is aligned to the right."""

    def line(cells: Sequence[str]) -> str:
        parts = []
        for text, width in zip(cells, widths, strict=True):
            shown = clip(text, abs(width))
            parts.append(shown.rjust(-width) if width < 0 else shown.ljust(width))
        return " ".join(parts).rstrip()

    return "\n".join([line(header), *(line(row) for row in rows)])


def watts(value: float) -> str:
    """Watts in at most four characters."""
    return f"{value:.0f}" if value < 9999.5 else f"{value / 1000:.0f}k"


def price_text(candidate: _core.Candidate) -> str:
    """What is to be bought, or `?` where a price is unknown."""
    if candidate.price_to_buy is None:
        return "?"
    return f"{candidate.price_to_buy:.0f}"


POWER_HEADER = ("#", "panels", "elements", "mean", "band W", "max%", "head", "buy")
SEASON_HEADER = ("#", "panels", "elements", "kWh/d", "band", "max%", "head", "buy")
_RANKING_WIDTHS = (3, 14, 30, -5, -9, -4, -4, -4)


def ranking_header(candidates: Sequence[_core.Candidate]) -> tuple[str, ...]:
    """The columns of a ranking: heat by the day of the season, or power without weather."""
    return SEASON_HEADER if any(c.season is not None for c in candidates) else POWER_HEADER


def daily(kwh: float) -> str:
    """Heat of a day in at most four characters."""
    return f"{kwh:.2f}" if kwh < 9.995 else f"{kwh:.1f}" if kwh < 99.95 else f"{kwh:.0f}"


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
    number: int, candidate: _core.Candidate, *, width: int | None = None
) -> tuple[str, ...]:
    """The cells of one row of the ranking table, names cut to columns of text unless `width`."""
    names = (width, width) if width else (_RANKING_WIDTHS[1], _RANKING_WIDTHS[2])

    circuit = candidate.circuit
    return (
        str(number),
        f"{clip(circuit.owned.group, names[0] - len(circuit.panels) - 1)} {circuit.panels}",
        f"{clip_middle(circuit.element.id, names[1] - len(circuit.bank) - 1)} {circuit.bank}",
        *_heat_cells(candidate),
        f"{candidate.smallest_headroom:.2f}",
        price_text(candidate),
    )


def ranking_table(candidates: Sequence[_core.Candidate], first: int = 1) -> str:
    """Candidates as a table of 80 columns."""
    rows = [candidate_cells(first + i, candidate) for i, candidate in enumerate(candidates)]
    return table(ranking_header(candidates), rows, _RANKING_WIDTHS)


_COMMON_LEGEND = (
    "head: smallest headroom of the limits whose passing is a danger (1 unused, 0 at the limit); "
    "buy: price of what is not owned."
)
_POWER_LEGEND = (
    "mean: watts into the elements averaged over the conditions; band: tolerance and age; max%: "
    "share of what the panels could give at these conditions; "
)
_SEASON_LEGEND = (
    "kWh/d: heat into the elements, mean of the season's days; band: tolerance, age and, where "
    "the weather tells, cloud within its step; max%: share of what the panels could give; "
)


def legend(ranking: _core.Ranking) -> str:
    """What the columns of a ranking mean."""
    return (_SEASON_LEGEND if ranking.by_season else _POWER_LEGEND) + _COMMON_LEGEND


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


def ranking_text(ranking: _core.Ranking, top: int = TABLE_ROWS) -> str:
    """A ranking as text."""
    lines = [reasons_text(ranking), ""]
    if len(ranking) == 0:
        lines.append("No pairing is without danger; see .rejected for the best of the others.")
    else:
        lines.append(ranking_table(ranking.candidates[:top]))
        lines += ["", legend(ranking)]
    lines += ranking.remarks
    return "\n".join(line if "\n" in line else wrap(line) for line in lines)


_STORE = "model of the store"


def _not_assessed_lines(margins: Sequence[_core.Margin], units: str) -> list[str]:
    """What could not be assessed; the store's margins, which share one reason, in one line."""
    store = [margin.name for margin in margins if _STORE in margin.missing]
    lines = [
        wrap(f"not assessed: {m.name}, {m.subject}: {m.sentence(units=units)}")
        for m in margins
        if _STORE not in m.missing
    ]
    if store:
        why = "the heat in the store is not part of this version"
        lines.append(wrap(f"not assessed: {', '.join(store)}: {why}"))
    return lines


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
            sentence = margin.sentence(units=units)
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


MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def season_cells(season: _core.Season) -> list[tuple[str, ...]]:
    """Months, heat of a day, what the panels could give, and the share, as rows of a table."""
    known = [m for m in range(12) if season.mpp_kwh_per_day[m] > 0.0]
    delivered = [float(season.kwh_per_day[m]) for m in known]
    possible = [float(season.mpp_kwh_per_day[m]) for m in known]
    marks = ["*" if m + 1 in season.months else "" for m in known]
    return [
        ("month", *(MONTHS[m] + mark for m, mark in zip(known, marks, strict=True))),
        ("kWh/day", *(daily(kwh) for kwh in delivered)),
        ("at most", *(daily(kwh) for kwh in possible)),
        ("%", *(f"{100 * a / b:.0f}" for a, b in zip(delivered, possible, strict=True))),
    ]


def season_sentences(candidate: _core.Candidate) -> list[str]:
    """What a candidate delivers over the season, and why its best ohms are what they are."""
    season = candidate.season
    if season is None:
        return []
    cloud = ", cloud within the step" if season.cloud_band else ""
    ratio = candidate.circuit.bank_ohm / season.best_ohm
    beside = ": too many" if ratio > 1.25 else ": too few" if ratio < 0.8 else ""
    lines = [
        f"Over {season.days:.0f} days of the season (*): {season.kwh:.0f} kWh "
        f"({season.kwh_low:.0f} to {season.kwh_high:.0f} by tolerance, age or reading{cloud}), "
        f"{100 * season.harvest_fraction:.0f} % of what the panels could give.",
        season.best_ohm_sentence + f" This bank has {candidate.circuit.bank_ohm:.3g} ohm{beside}.",
        f"In about {100 * season.near_short_share:.0f} % of the sunlit hours the panels sit near "
        "short circuit (below half of their open-circuit voltage).",
    ]
    if season.price_per_kwh is not None and season.price_per_kwh > 0.0:
        money = f"{season.price_per_kwh:.2f} {candidate.currency}".strip()
        lines.append(f"What is to be bought costs, once, {money} for each kWh of one season.")
    return lines + season.remarks


def season_text(candidate: _core.Candidate) -> str:
    """What a candidate delivers over the season, as sentences and a table of months."""
    season = candidate.season
    if season is None:
        return ""
    lines = [wrap(sentence) for sentence in season_sentences(candidate)]
    rows = season_cells(season)
    if len(rows[0]) > 1:
        widths = (8, *(-5 for _ in rows[0][1:]))
        lines += ["", table(rows[0], rows[1:], widths)]
    return "\n".join(lines)


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
        *(wrap(remark) for remark in candidate.remarks),
        *([""] if candidate.remarks else []),
        *([season_text(candidate), ""] if candidate.season is not None else []),
        delivered_text(candidate, units=units),
        "",
        margins_text(candidate, units=units),
    ]
    if candidate.assumed:
        lines += ["", "assumed:", *(wrap(f"  {text}", "    ") for text in candidate.assumed)]
    return "\n".join(lines)
