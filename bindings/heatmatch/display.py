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


RANKING_HEADER = ("#", "panels", "elements", "mean", "band W", "max%", "head", "buy")
_RANKING_WIDTHS = (3, 14, 30, -5, -9, -4, -4, -4)


def candidate_cells(
    number: int, candidate: _core.Candidate, *, width: int | None = None
) -> tuple[str, ...]:
    """The cells of one row of the ranking table, names cut to columns of text unless `width`."""
    names = (width, width) if width else (_RANKING_WIDTHS[1], _RANKING_WIDTHS[2])

    circuit = candidate.circuit
    best = sum(at.maximum_power_w for at in candidate.delivered)
    share = sum(at.power_w for at in candidate.delivered) / best if best else 0.0
    return (
        str(number),
        f"{clip(circuit.owned.group, names[0] - len(circuit.panels) - 1)} {circuit.panels}",
        f"{clip_middle(circuit.element.id, names[1] - len(circuit.bank) - 1)} {circuit.bank}",
        watts(candidate.mean_power_w),
        f"{watts(candidate.mean_power_low_w)}-{watts(candidate.mean_power_high_w)}",
        f"{100 * share:.0f}",
        f"{candidate.smallest_headroom:.2f}",
        price_text(candidate),
    )


def ranking_table(candidates: Sequence[_core.Candidate], first: int = 1) -> str:
    """Candidates as a table of 80 columns."""
    rows = [candidate_cells(first + i, candidate) for i, candidate in enumerate(candidates)]
    return table(RANKING_HEADER, rows, _RANKING_WIDTHS)


LEGEND = (
    "mean: watts into the elements averaged over the conditions; band: tolerance and age; max%: "
    "share of what the panels could give at these conditions; head: smallest headroom "
    "of the limits whose passing is a danger (1 unused, 0 at the limit); buy: price of what is "
    "not owned."
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


def ranking_text(ranking: _core.Ranking, top: int = TABLE_ROWS) -> str:
    """A ranking as text."""
    lines = [reasons_text(ranking), ""]
    if len(ranking) == 0:
        lines.append("No pairing is without danger; see .rejected for the best of the others.")
    else:
        lines.append(ranking_table(ranking.candidates[:top]))
        lines += ["", LEGEND]
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


def candidate_text(candidate: _core.Candidate, *, units: str = "si") -> str:
    """A candidate as text: what it is, what it delivers, its margins, what was assumed."""
    circuit = candidate.circuit
    lines = [
        wrap(
            f"{circuit.title}: {circuit.bank_ohm:.3g} ohm; the panels' Vmp/Imp is "
            f"{circuit.noon_match_ohm:.3g} ohm. Open on the coldest morning: "
            f"{circuit.cold_voltage_v:.0f} V."
        ),
        "",
        delivered_text(candidate, units=units),
        "",
        margins_text(candidate, units=units),
    ]
    if candidate.assumed:
        lines += ["", "assumed:", *(wrap(f"  {text}", "    ") for text in candidate.assumed)]
    return "\n".join(lines)
