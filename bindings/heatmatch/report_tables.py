"""What a report tells: sentences and tables, each in both unit sets."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from typing import Any

from markupsafe import Markup

from heatmatch import _core, frames
from heatmatch.display import (
    DELIVERED_HEADER,
    candidate_cells,
    delivered_cells,
    legend,
    ranking_header,
    reasons_text,
)
from heatmatch.display_day import (
    ENERGY_HEADER,
    MONTH_LEGEND,
    energy_cells,
    month_cells,
    month_header,
    peaks_cells,
    peaks_header,
)
from heatmatch.display_heat import HEAT_HEADER, heat_cells, heat_title, with_store
from heatmatch.display_meter import SHEET_HEADER, sheet_cells, sheet_legend
from heatmatch.display_season import MONTHS, darkest_month, season_cells, season_sentences
from heatmatch.display_text import clip, clip_middle, plain
from heatmatch.display_units import in_units, said
from heatmatch.display_verdict import (
    by_severity,
    headroom_cell,
    nearest_sentence,
    nothing_left,
    space_sentence,
    verdict_sentences,
)
from heatmatch.errors import Error
from heatmatch.report_wires import wiring
from heatmatch.words import WORDS

_DAYS = 7
_LONGEST = 400  # characters of a cell; longer names are cut
_BEST = 10
_BLANKS = 4  # places to write at each check
_OWN_ROWS = 8  # empty rows for one's own readings
_OWN = ("date, hour", "sun", "cells", "Voc", "Isc", "array V", "bank V", "bank A", "what was seen")


@dataclass
class Table:
    """A table with its caption; cells are texts, or markup where unit sets differ."""

    caption: Any
    header: Sequence[Any]
    rows: Sequence[Sequence[Any]]
    notes: Sequence[Any] = field(default_factory=list)


def _bounded(text: str) -> str:
    """The text on one line; around a name that would fill pages its ends stay, with the numbers."""
    line = clip(text, len(text))
    return line if len(line) <= 4 * _LONGEST else clip_middle(line, 2 * _LONGEST)


def either(si: str, us: str) -> Any:
    """A text in both unit sets, of which the page shows one; a plain text where they agree."""
    si, us = (_bounded(text) for text in (si, us))
    if si == us:
        return si
    return Markup('<span class="si">{}</span><span class="us">{}</span>').format(si, us)


def both(text_of: Callable[[str], str]) -> Any:
    """The text that a unit set has, for both of them."""
    return either(text_of("si"), text_of("us"))


def translated(texts: Iterable[str]) -> list[Any]:
    """Sentences that are written in SI units, in both unit sets."""
    return [either(text, in_units(text, "us")) for text in texts]


def both_rows(rows_of: Callable[[str], Iterable[Sequence[str]]]) -> list[list[Any]]:
    """Rows of cells, each cell in both unit sets."""
    pairs = zip(rows_of("si"), rows_of("us"), strict=True)
    return [[either(*cells) for cells in zip(si, us, strict=True)] for si, us in pairs]


def both_header(header_of: Callable[[str], Sequence[str]]) -> list[Any]:
    """A table's head in both unit sets."""
    return both_rows(lambda units: [header_of(units)])[0]


def lived_days(candidate: _core.Candidate, weather: _core.Weather | None) -> _core.DayRun | None:
    """A week of the darkest month of the season; None where it cannot be lived through."""
    season = candidate.season
    if weather is None or season is None or weather.first_hour is None:
        return None
    try:
        return _core.simulate_day(candidate, weather, month=darkest_month(season), days=_DAYS)
    except Error:
        return None


def sections(
    candidate: _core.Candidate, ranking: _core.Ranking | None, run: _core.DayRun | None
) -> dict[str, Any]:
    """Everything the page shows besides its pictures."""
    sheet = _core.meter_sheet(candidate)
    steps = candidate.explain()
    assumed = list(dict.fromkeys([*candidate.assumed, *([] if run is None else run.assumed)]))
    told = [*assumed, *(m.source for m in candidate.margins), *(step.source for step in steps)]
    header, rows, reasons = wiring(candidate, either)
    dangers = [_reason(m) for m in candidate.margins if m.severity == "danger"]
    if run is not None:
        peaks = (peak.margin for peak in run.answer.peaks)
        dangers += [_reason(m) for m in peaks if m.severity == "danger"]
    verdict: list[Any] = list(verdict_sentences(candidate))
    if nearest_sentence(candidate):
        verdict.append(both(lambda units: nearest_sentence(candidate, units=units)))
    if run is not None:
        assert candidate.season is not None  # or no days would have been lived through
        name = MONTHS[darkest_month(candidate.season) - 1]
        verdict.append(
            f"The first week of {name}, the darkest month, lived through; its sun is not the "
            "month's mean:"
        )
        verdict += both_rows(lambda units: [run.sentences(units=units)])[0]
    else:
        verdict.append(both(lambda units: space_sentence(candidate, units=units)))
    return {
        "danger": bool(dangers),
        "verdict": verdict,
        "dangers": dangers,
        "remarks": translated(candidate.remarks),
        "ranked": [] if ranking is None else _ranked(ranking),
        "wires": (header, rows, translated(reasons)),
        "margins": _margins(candidate),
        "advice": translated(candidate.advice().sentences),
        "season": _season(candidate),
        "heat": _heat(candidate),
        "days": [] if run is None else _days(run),
        "sheet": _sheet(sheet),
        "readings": Table("my readings", _OWN, [[""] * len(_OWN)] * _OWN_ROWS),
        "checks": [_check(check) for check in sheet.checks],
        "sheet_notes": translated(
            [*(f"not known: {text}" for text in sheet.not_known), *sheet.remarks]
        ),
        "steps": [_step(step) for step in steps],
        "assumed": translated(assumed),
        "sources": _sources(told),
        "words": sorted(WORDS.items()),
    }


def _ranked(ranking: _core.Ranking) -> list[Table]:
    """The best, and what trades for what."""
    lists = [("the best of the ranking", list(ranking)[:_BEST])]
    if not ranking.candidates:
        lists = [(f"{nothing_left(ranking)} The best of the rejected", ranking.rejected[:_BEST])]
    else:
        lists.append(("What trades for what: no other beats these in everything", ranking.pareto()))
    tables = [_ranked_table(caption, candidates) for caption, candidates in lists]
    tables[0].notes = [reasons_text(ranking), *translated(ranking.remarks)]
    tables[-1].notes = [both(lambda units: legend(ranking, units=units))]
    return tables


def _ranked_table(caption: str, shown: Sequence[_core.Candidate]) -> Table:
    store = with_store(shown)

    def rows(units: str) -> list[tuple[str, ...]]:
        return [
            candidate_cells(i, one, units=units, store=store, names=(60, 60))
            for i, one in enumerate(shown, 1)
        ]

    header = both_header(lambda units: ranking_header(shown, units=units))
    return Table(caption, header, both_rows(rows))


def _margins(candidate: _core.Candidate) -> Table:
    rows = [
        [
            margin.severity,
            margin.name,
            clip(margin.subject, 80),
            headroom_cell(margin),
            _told(margin),
            margin.source,
        ]
        for margin in by_severity(candidate)
    ]
    header = ("severity", "margin", "subject", "headroom", "what it says", "source")
    return Table("margins, the most severe first", header, rows)


def _told(margin: _core.Margin) -> Any:
    """A margin's sentence, and what it would need to be known."""
    needs = f" To be found out: {', '.join(margin.missing)}." if margin.missing else ""
    return both(lambda units: said(margin, units) + needs)


def _reason(margin: _core.Margin) -> Any:
    return both(lambda units: f"{clip(margin.subject, 80)}: {said(margin, units)}")


def _season(candidate: _core.Candidate) -> list[Table]:
    tables = []
    if candidate.season is not None:
        cells = season_cells(candidate.season)
        caption = "heat of a day in each month, * in the season"
        tables.append(Table(caption, cells[0], cells[1:], translated(season_sentences(candidate))))
    rows = both_rows(lambda units: delivered_cells(candidate, units=units))
    tables.append(Table("power at three suns", DELIVERED_HEADER, rows))
    return tables


def _heat(candidate: _core.Candidate) -> list[Table]:
    rows = both_rows(lambda units: heat_cells(candidate, units=units))
    if not rows:
        return []
    return [Table(both(lambda units: heat_title(candidate, units=units)), HEAT_HEADER, rows)]


def _days(run: _core.DayRun) -> list[Table]:
    peaks = run.answer.peaks
    return [
        Table(f"{_DAYS} days of the darkest month", ENERGY_HEADER, energy_cells(run)),
        Table(
            "the highest of each part in those days",
            both_header(peaks_header),
            both_rows(lambda units: peaks_cells(run, peaks, units=units)),
        ),
        Table(
            "the nights",
            both_header(month_header),
            both_rows(lambda units: month_cells(run, units=units)),
            [MONTH_LEGEND, *translated(run.remarks)],
        ),
    ]


def _sheet(sheet: _core.MeterSheet) -> Table:
    """The expected readings."""
    rows = both_rows(lambda units: sheet_cells(sheet, units=units))
    return Table("what meters should read", SHEET_HEADER, rows, [both(sheet_legend)])


def _check(check: _core.MeterCheck) -> dict[str, Any]:
    """A lettered check with room for what was read."""
    expect, how = translated([clip(check.expect, _LONGEST), check.how])
    return {
        "letter": check.letter,
        "reading": check.reading,
        "how": how,
        "expect": expect,
        "less": check.if_low,
        "more": check.if_high,
        "blanks": range(_BLANKS),
    }


def _step(step: _core.Step) -> dict[str, str]:
    result = _core.format_quantity(step.value, step.unit, units="si", digits=5)
    return {
        "name": clip(step.name, _LONGEST),
        "formula": plain(step.formula),
        "numbers": clip(step.numbers, _LONGEST),
        "result": result,
        "source": step.source,
    }


def _sources(texts: Iterable[str]) -> list[tuple[str, str]]:
    """The entries of the bibliography that the texts name."""
    known = frames.sources()
    named = {key for text in texts for key in re.findall(r"[a-z0-9][a-z0-9-]*", text)}
    return [(key, _cited(known[key])) for key in sorted(named & set(known))]


def _cited(entry: dict[str, Any]) -> str:
    parts = [entry.get(name) for name in ("title", "publisher", "year", "where")]
    seen = entry.get("seen")
    text = ", ".join(str(part) for part in parts if part)
    return f"{text} (seen: {seen})" if seen else text
