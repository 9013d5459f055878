"""Content of a report: sentences and tables, each in both unit sets."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from heatmatch import _library as _core
from heatmatch.errors import Error
from heatmatch.report.first import first_block, others_of
from heatmatch.report.layout import (
    LONGEST,
    Table,
    both,
    both_header,
    both_rows,
    laid_out,
    translated,
)
from heatmatch.report.sources import cited_sources
from heatmatch.text.columns import clip
from heatmatch.text.duties import SHORT, duties_heads
from heatmatch.text.plain import plain
from heatmatch.text.results import legend
from heatmatch.text.sentence import Sentence
from heatmatch.text.table import heads, with_short_names
from heatmatch.text.units import told
from heatmatch.text.words import WORDS

_DAYS = 7
_BEST = 10
_BLANKS = 4  # places to write at each check
_OWN_ROWS = 8  # empty rows for readings
_OWN = ("date, hour", "sun", "cells", "Voc", "Isc", "array V", "bank V", "bank A", "observation")


def lived_days(candidate: _core.Candidate, weather: _core.Weather | None) -> _core.DayRun | None:
    """A week of the darkest month of the season; None where it cannot be simulated."""
    season = candidate.season
    month = None if season is None else _core.darkest_month(season)
    if weather is None or month is None or weather.first_hour is None:
        return None
    try:
        return _core.simulate_day(candidate, weather, month=month, days=_DAYS)
    except Error:
        return None


def common(
    circuits: Sequence[_core.Candidate],
    ranking: _core.Ranking | None,
    plan: _core.Plan | None,
    runs: Sequence[_core.DayRun | None],
    *,
    planned: bool,
) -> dict[str, Any]:
    """What the page shows once, for all circuits; `planned`: they are those of the plan."""
    assumed: list[str] = []
    cited: list[str] = []
    for one, run in zip(circuits, runs, strict=True):
        steps = one.explain()
        assumed += [*one.assumed, *([] if run is None else run.assumed)]
        cited += [*(m.source for m in one.margins), *(step.source for step in steps)]
        cited += [duty.source for duty in one.code_duties()]
    assumed = list(dict.fromkeys(assumed))
    several = len(circuits) > 1 or planned
    made = _core.circuits_table(list(circuits)) if several else None
    whole = None if made is None else laid_out(made, "")
    if whole is not None and made is not None:
        whole.notes = [both(lambda units: " ".join(told(one, units) for one in made.legend))]
    holds = _core.hold_points_table(list(circuits))
    return {
        "others": others_of(ranking),
        "plan_line": None if ranking is None else translated([_core.plan_line(plan)])[0],
        "summary": translated(plan.summary()) if plan is not None and planned else [],
        "all_circuits": whole,
        "whole_bill": _bill(plan.bill, []) if plan is not None and planned else None,
        "holds": laid_out(holds),
        "hold_notes": translated(holds.legend),
        "ranked": [] if ranking is None else _ranked(ranking),
        "assumed": translated(assumed),
        "readings": Table("my readings", _OWN, [[""] * len(_OWN)] * _OWN_ROWS),
        "sources": cited_sources([*assumed, *cited]),
        "words": sorted(WORDS.items()),
    }


def sections(
    candidate: _core.Candidate,
    run: _core.DayRun | None,
    ranking: _core.Ranking | None = None,
    row_of: _core.Ranking | None = None,
) -> dict[str, Any]:
    """What the page shows of one circuit, besides its pictures; `row_of`: the ranking it is of."""
    sheet = _core.meter_sheet(candidate)
    dangers = [_reason(m) for m in candidate.margins if m.severity == "danger"]
    if run is not None:
        peaks = (peak.margin for peak in run.answer.peaks)
        dangers += [_reason(m) for m in peaks if m.severity == "danger"]
    nearest = _core.nearest_sentence(candidate)
    told_first = _core.verdict(candidate)
    verdict = translated([*told_first, *([nearest] if nearest else [])])
    week: list[str] = []
    if run is not None:
        assert candidate.season is not None  # otherwise no days would have been simulated
        week = [_core.lived_week_sentence(candidate.season), *run.answer.sentences]
    else:
        verdict += translated([_core.space_sentence(candidate)])
    return {
        "name": candidate.circuit.name or clip(candidate.circuit.title, 120),
        "first": first_block(candidate if ranking is None else ranking, row_of),
        "building_mark": translated([_core.building_mark(candidate)])[0],
        "danger": bool(dangers),
        "verdict": verdict,
        "dangers": dangers,
        "counts_place": told_first.index(_core.margin_sentence(candidate)),
        "unchecked": _unchecked(candidate),
        "bill": _bill(candidate.bill, _core.bill_remarks(candidate)),
        "duties": _duties(candidate),
        "duties_heads": translated(duties_heads(candidate)),
        "remarks": translated(candidate.remarks),
        "wires": _wires(candidate),
        "margins": _found(candidate),
        "no_finding": translated([_core.no_finding_line(candidate)])[0],
        "every_margin": _margins(candidate),
        "duty_lines": translated(_core.duty_lines(candidate)),
        "advice": translated(candidate.advice().sentences),
        "season": _season(candidate),
        "season_more": _season_more(candidate),
        "heat": _heat(candidate),
        "week": translated(week),
        "days": [] if run is None else _days(run),
        "sheet": _sheet(sheet),
        "no_sun_meter": translated(sheet.without_sun_meter),
        "checks": [_check(check) for check in sheet.checks],
        "sheet_notes": translated([*_core.not_known_sentences(sheet), *sheet.remarks]),
        "steps": [_step(step) for step in candidate.explain()],
    }


def unused(ranking: _core.Ranking | None, installation: _core.Installation | None) -> list[Any]:
    """Owned parts that no circuit of the ranking has, and why."""
    if ranking is None or installation is None:
        return []
    return translated(_core.unused_lines(ranking, installation))


def _ranked(ranking: _core.Ranking) -> list[Table]:
    """The best candidates, and the trade-offs."""
    best = ranking.candidates or ranking.rejected
    made = _core.ranking_table(best[:_BEST])
    if ranking.candidates:
        made = _core.marked_table(ranking, _BEST)
    tables = [_ranked_table(_core.best_title(ranking), made)]
    if ranking.candidates:
        front = _core.ranking_table(list(ranking.pareto))
        tables.append(_ranked_table(_core.front_title(), front))
    tables[0].notes = translated([_core.reasons_sentence(ranking), *ranking.remarks])
    tables[-1].notes = [both(lambda units: legend(ranking, units=units))]
    return tables


def _ranked_table(caption: str, made: _core.Table) -> Table:
    return laid_out(made, caption, {1: 60, 3: 60})


def _wires(candidate: _core.Candidate) -> tuple[Sequence[Any], list[list[Any]], list[Any]]:
    """Head and rows of the wiring list, and the reasons that decide."""
    circuit, checks = candidate.circuit, candidate.check_wires()
    made = _core.wiring_list(circuit, checks)

    def rows(units: str) -> list[list[str]]:
        return [[_wire_cell(cell, units) for cell in row] for row in made.rows]

    reasons = [
        with_short_names(reason, {"run": 60}) for reason in _core.wiring_reasons(circuit, checks)
    ]
    header = both_header(lambda units: heads(made, units))
    return header, both_rows(rows), translated(reasons)


def _wire_cell(cell: Sentence, units: str) -> str:
    width = 160 if cell.id == "wiring.devices" else 120
    return clip(told(with_short_names(cell, {"run": 60}), units), width)


def _margins(candidate: _core.Candidate) -> Table:
    return laid_out(_core.margins_table(candidate, missing=True), widths={2: 80})


def _found(candidate: _core.Candidate) -> Table:
    """Margins with a finding; without the sources of the limits."""
    found = sum(
        1 for margin in candidate.margins if margin.severity not in ("none", "not assessed")
    )
    made = _core.margins_table(candidate, source=False, missing=True)
    return laid_out(made, _core.margins_plain_title(), {2: 60}, slice(found))


def _unchecked(candidate: _core.Candidate) -> list[Any]:
    """Checks not made, one line for each missing fact."""
    lines = [with_short_names(line, SHORT) for line in _core.not_checked_lines(candidate)]
    return translated(lines)


def _bill(bill: _core.Bill, remarks: Sequence[Any]) -> Table:
    """Parts owned and to buy, after the total beside the budget."""
    made = _core.bill_table(bill)
    table = laid_out(made, both(lambda units: told(_core.bill_sentence(bill), units)))
    table.notes = translated(remarks)
    return table


def _duties(candidate: _core.Candidate) -> Table:
    """The requirements of the code, after the facts on which they depend."""
    made = _core.duties_table(candidate)
    table = laid_out(made)
    table.notes = translated(made.legend)
    return table


def _reason(margin: _core.Margin) -> Any:
    reason = with_short_names(_core.margin_reason(margin), {"subject": 80})
    return both(lambda units: told(reason, units))


def _season(candidate: _core.Candidate) -> list[Table]:
    tables = []
    if candidate.season is not None:
        months = laid_out(_core.season_table(candidate.season), _core.season_months_title())
        months.notes = translated(_core.season_sentences(candidate)[:1])
        tables.append(months)
    title = _core.delivered_plain_title()
    return [*tables, laid_out(_core.delivered_table(candidate), title)]


def _season_more(candidate: _core.Candidate) -> list[Any]:
    """What follows the heat of the season: the best resistance, near short circuit, price."""
    if candidate.season is None:
        return []
    return translated(_core.season_sentences(candidate)[1:])


def _heat(candidate: _core.Candidate) -> list[Table]:
    made = _core.heat_table(candidate)
    return [laid_out(made)] if made.rows else []


def _days(run: _core.DayRun) -> list[Table]:
    peaks = _core.peaks_table(run, run.answer.peaks)
    months = _core.months_table(run)
    nights = laid_out(months, _core.nights_title())
    nights.notes = translated([*months.legend, *run.remarks])
    return [
        laid_out(_core.energy_table(run), _core.dark_days_title(_DAYS)),
        laid_out(peaks, _core.peaks_in_days_title()),
        nights,
    ]


def _sheet(sheet: _core.MeterSheet) -> Table:
    """The expected readings."""
    made = _core.sheet_table(sheet)
    table = laid_out(made, _core.sheet_plain_title())
    table.notes = translated(made.legend)
    return table


def _check(check: _core.MeterCheck) -> dict[str, Any]:
    """A lettered check with room for readings."""
    expect = both(lambda units: clip(told(check.expect, units), LONGEST))
    reading, how, less, more = translated([check.reading, check.how, check.if_low, check.if_high])
    return {
        "letter": check.letter,
        "reading": reading,
        "how": how,
        "expect": expect,
        "less": less,
        "more": more,
        "blanks": range(_BLANKS),
    }


def _step(step: _core.Step) -> dict[str, str]:
    result = _core.format_quantity(step.value, step.unit, units="si", digits=5)
    return {
        "name": clip(step.name, LONGEST),
        "formula": plain(step.formula),
        "numbers": clip(step.numbers, LONGEST),
        "result": result,
        "source": step.source,
    }
