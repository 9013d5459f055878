"""What the explorer shows as HTML: ranking, margins, kept choices. Every text is escaped."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from html import escape
from typing import Any

from heatmatch import _core, frames
from heatmatch.display import (
    candidate_cells,
    legend,
    price_text,
    ranking_header,
    reasons_text,
)
from heatmatch.display_heat import degree_unit, degrees, with_store
from heatmatch.display_text import clip
from heatmatch.display_units import in_units, said
from heatmatch.display_verdict import (
    by_severity,
    headroom_cell,
    headroom_left,
    nothing_left,
)
from heatmatch.explorer_choice import Choice
from heatmatch.forms import html_table, paragraphs

STYLE = """<style>
.hm-panel table {border-collapse: collapse; margin: 0 0 .6em 0; font-size: 13px;}
.hm-panel caption {text-align: left; padding: .3em 0; font-weight: 600; line-height: 1.35;}
.hm-panel td, .hm-panel th {padding: .15em .6em; border-bottom: 1px solid #d8cfc4;
  text-align: left; vertical-align: top; overflow-wrap: break-word; line-height: 1.3;}
.hm-panel p {margin: .2em 0; max-width: 60em; line-height: 1.35;}
.hm-panel .hm-small {font-size: 12px;}
.hm-panel :focus-visible {outline: 2px solid #1f5f5b; outline-offset: 1px;}
</style>"""


@dataclass(frozen=True)
class Kept:
    """A choice that was kept, with what it came to."""

    name: str
    place: str  #: name of the installation
    choice: Choice
    candidate: _core.Candidate


def panel(html: str) -> str:
    """HTML in the explorer's own look."""
    return f'<div class="hm-panel">{html}</div>'


def ranking_html(ranking: _core.Ranking, units: str) -> str:
    """The best of a ranking; the best rejected ones where none is without danger."""
    shown = ranking.candidates or ranking.rejected
    if not shown:
        return panel(paragraphs([reasons_text(ranking), "Nothing is left to rank."]))
    store = with_store(shown)
    rows = [
        candidate_cells(place, candidate, units=units, store=store, names=(40, 44))
        for place, candidate in enumerate(shown, 1)
    ]
    header = ranking_header(shown, units=units)
    title = reasons_text(ranking)
    if not ranking.candidates:
        title = f"{nothing_left(ranking)} Shown are the best of the rejected. {title}"
    small = f'<p class="hm-small">{escape(legend(ranking, units=units))}</p>'
    return panel(html_table(header, rows, title) + small)


def candidate_title(place: str, candidate: _core.Candidate) -> str:
    """A candidate in one line."""
    circuit = candidate.circuit
    group = clip(circuit.owned.group, 30)
    element = clip(circuit.element.id, 40)
    return f"{place} {group} {circuit.panels} into {element} {circuit.bank}"


def margins_html(candidate: _core.Candidate, units: str) -> str:
    """The margins of a candidate, the most severe first, and what it may take."""
    rows = [
        (
            margin.severity,
            margin.name,
            clip(margin.subject, 60),
            headroom_cell(margin),
            said(margin, units),
        )
        for margin in by_severity(candidate)
    ]
    header = ("severity", "margin", "subject", "headroom", "")
    return panel(
        html_table(header, rows, "margins, the most severe first")
        + paragraphs(in_units(text, units) for text in candidate.advice().sentences)
    )


def kept_html(kept: Sequence[Kept], units: str) -> str:
    """The kept choices side by side: a column for each, a row for each number."""
    if not kept:
        return panel(paragraphs(["Nothing is kept yet. Choose, then press “keep this choice”."]))
    header = ("", *(clip(one.name, 40) for one in kept))
    rows = [(name, *(cell(one) for one in kept)) for name, cell in _lines(units)]
    return panel(html_table(header, rows, "kept choices side by side"))


def _lines(units: str) -> list[tuple[str, Callable[[Kept], str]]]:
    """The rows of the comparison: a name with unit, and how its cell is read off."""
    degree = degree_unit(units)

    def season(one: Kept, name: str, pattern: str) -> str:
        found = one.candidate.season
        return "?" if found is None else format(getattr(found, name), pattern)

    def quantity(value: float | None, unit: str) -> str:
        return "-" if value is None else _core.format_quantity(value, unit, units=units, digits=3)

    def worst(one: Kept) -> str:
        margin = one.candidate.worst
        return "" if margin is None else f"{margin.severity}: {margin.name}"

    def share(one: Kept) -> str:
        found = one.candidate.season
        return "?" if found is None else f"{100.0 * found.harvest_fraction:.0f}"

    def row(one: Kept) -> dict[str, Any]:
        return frames.candidate_row(one.candidate)

    return [
        ("installation", lambda one: clip(one.place, 40)),
        ("panels", lambda one: f"{clip(row(one)['group'], 30)} {one.candidate.circuit.panels}"),
        ("elements", lambda one: f"{clip(row(one)['element'], 40)} {one.candidate.circuit.bank}"),
        ("ohms", lambda one: f"{one.candidate.circuit.bank_ohm:.3g}"),
        ("heat of the season, kWh", lambda one: season(one, "kwh", ".0f")),
        ("of a day, kWh", lambda one: season(one, "mean_kwh_per_day", ".2f")),
        ("share of what the panels could give, %", share),
        ("most watts into one element", lambda one: f"{one.candidate.bright.element_power_w:.0f}"),
        (f"sheath, judged, {degree}", lambda one: degrees(row(one).get("sheath_c"), units)),
        ("smallest headroom", lambda one: headroom_left(one.candidate)),
        ("worst margin", worst),
        ("not assessed", lambda one: str(one.candidate.not_assessed)),
        ("to buy", lambda one: f"{price_text(one.candidate)} {one.candidate.currency}".strip()),
        ("tilt", lambda one: quantity(one.choice.tilt_deg, "deg")),
        ("sun, of the installation's", lambda one: quantity(one.choice.sun_pct, "%")),
        ("wire", lambda one: one.choice.wire or "-"),
        ("its length", lambda one: quantity(one.choice.length_m, "m")),
        ("conductivity of the fill", lambda one: quantity(one.choice.k20_w_mk, "W/mK")),
        ("record low", lambda one: quantity(one.choice.record_low_c, "°C")),
    ]
