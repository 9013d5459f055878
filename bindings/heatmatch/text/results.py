"""Rankings and candidates as text of 80 columns."""

from __future__ import annotations

from collections.abc import Sequence

from heatmatch import _library as _core
from heatmatch.text.columns import WIDTH, clip, table, wrap
from heatmatch.text.duties import counts_text, duties_text
from heatmatch.text.first_screen import open_text
from heatmatch.text.look import signalled
from heatmatch.text.season import MONTHS, season_text
from heatmatch.text.table import shown, table_text, texts, wrapped
from heatmatch.text.units import listed

__all__ = [
    "MONTHS",
    "SEVERITIES",
    "WIDTH",
    "bill_text",
    "candidate_text",
    "circuits_text",
    "clip",
    "delivered_text",
    "heat_text",
    "legend",
    "margins_text",
    "marked_table",
    "notes_of",
    "plan_text",
    "ranking_table",
    "ranking_text",
    "season_text",
    "table",
    "wrap",
]

TABLE_ROWS = 10
SEVERITIES = ("danger", "warning", "caution", "not assessed", "none")


# Widths in text of 80 columns.
_WIDTHS_BARE = (3, 12, 4, 27, 5, 9, 4, 4, 4)
_WIDTHS_STORE = (3, 12, 4, 25, 4, 9, 4, 4, 7)
_SHEATH_HEAD = "head.sheath"
_NAMES = 12  # of circuits, instead of places in the ranking
_ELEMENTS, _SHEATH = 3, 8  # places in it: the elements leave room for long sheaths


def _widths(made: _core.Table, units: str) -> tuple[int, ...]:
    if made.columns[-1].head.id != _SHEATH_HEAD:
        return _WIDTHS_BARE
    widths = list(_WIDTHS_STORE)
    longest = max((len(shown(row[_SHEATH], units)) for row in made.rows), default=0)
    more = max(0, longest - widths[_SHEATH])
    widths[_ELEMENTS] -= more
    widths[_SHEATH] += more
    return tuple(widths)


def notes_of(installation: _core.Installation) -> list[str]:
    """Its notes by line; what was assumed where an answer was not known is among them."""
    return (installation.notes or "").splitlines()


def ranking_table(
    candidates: Sequence[_core.Candidate], *, units: str = "si", letters: bool = False
) -> str:
    """Candidates as a table of 80 columns, numbered as in the ranking or by letters."""
    made = _core.ranking_table(list(candidates), share=False, letters=letters)
    return table_text(made, _widths(made, units), units)


def marked_table(ranking: _core.Ranking, top: int, *, units: str = "si") -> str:
    """The first candidates as a table of 80 columns, the recommended one marked."""
    made = _core.marked_table(ranking, top, share=False)
    place, group, volts, elements, *others = _widths(made, units)
    longest = max((len(shown(row[0], units)) for row in made.rows), default=0)
    more = max(0, longest - place)
    return table_text(made, (place + more, group, volts, elements - more, *others), units)


def circuits_text(circuits: Sequence[_core.Candidate], *, units: str = "si") -> str:
    """The circuits of one installation, one row each, with the heat of all."""
    made = _core.circuits_table(list(circuits))
    place, group, volts, elements, *others = _widths(made, units)
    more = _NAMES - place
    lines = [table_text(made, (_NAMES, group, volts, elements - more, *others), units)]
    lines += ["", *wrapped([" ".join(texts(made.legend, units))], units)]
    return "\n".join(lines)


def legend(ranking: _core.Ranking, *, units: str = "si", share: bool = True) -> str:
    """Meaning of the columns of a ranking."""
    return " ".join(texts(_core.ranking_legend(ranking, share=share), units))


def ranking_text(
    ranking: _core.Ranking, top: int = TABLE_ROWS, *, units: str = "si", counts: bool = True
) -> str:
    """A ranking as text; `counts`: with the checks of its first candidate."""
    lines = [wrap(_core.reasons_sentence(ranking)), ""]
    if len(ranking) == 0:
        lines.append(wrap(_core.nothing_left(ranking)))
    else:
        lines.append(marked_table(ranking, top, units=units))
    first = next(iter([*ranking, *ranking.rejected]), None)
    if counts and first is not None:
        lines += ["", f"{wrap(first.circuit.title)}:", counts_text(first, units=units)]
    if len(ranking) > 0:
        lines += ["", wrap(legend(ranking, units=units, share=False))]
    return "\n".join([*lines, *wrapped(ranking.remarks, units)])


def margins_text(candidate: _core.Candidate, *, units: str = "si", everything: bool = False) -> str:
    """The margins of a candidate as text, the most severe first."""
    lines = texts(_core.margin_lines(candidate, everything=everything), units)
    return "\n".join(wrap(signalled(line)) for line in lines)


def delivered_text(candidate: _core.Candidate, *, units: str = "si") -> str:
    """Power of a candidate at each condition, as a table."""
    return table_text(_core.delivered_table(candidate), (8, 8, 7, 11, 7, 7, 7, 7), units)


def heat_text(candidate: _core.Candidate, *, units: str = "si") -> str:
    """Temperatures in a candidate's store, its largest power, and changes within the limits."""
    lines = []
    made = _core.heat_table(candidate)
    if made.rows:
        lines = [*wrapped([made.title], units), table_text(made, (24, 8, 8, 8, 8, 8), units)]
    return "\n".join([*lines, *wrapped(candidate.advice().sentences, units)])


def bill_text(bill: _core.Bill, *, units: str = "si") -> str:
    """A bill as text: the total beside the budget, then a line for each part."""
    lines = [wrap(f"- {line}") for line in texts(_core.bill_lines(bill), units)]
    return "\n".join([*wrapped([_core.bill_sentence(bill)], units), *lines])


def plan_text(plan: _core.Plan, *, units: str = "si") -> str:
    """A plan as text: the answer in words, its circuits, their open points, and its bill."""
    lines = wrapped(plan.summary(), units)
    if len(plan):
        lines += ["", circuits_text(plan.circuits, units=units)]
        for each in plan.circuits:
            lines += ["", f"{each.circuit.name}:", open_text(each, units=units)]
        lines += ["", bill_text(plan.bill, units=units)]
    return "\n".join(lines)


def unlocks_text(unlocks: list[_core.Unlock], currency: str, *, units: str = "si") -> str:
    """Single changes that add heat as text, the most heat first, and their order by money."""
    return "\n".join(["", *wrapped(_core.unlock_lines(unlocks, currency), units)])


def candidate_text(candidate: _core.Candidate, *, units: str = "si") -> str:
    """A candidate as text: circuit, power, checks, margins, bill, code requirements."""
    nearest = wrapped([_core.nearest_sentence(candidate)], units)
    lines = [
        *wrapped([_core.circuit_sentence(candidate)], units),
        "",
        *wrapped(candidate.remarks, units),
        *([""] if candidate.remarks else []),
        *([season_text(candidate, units=units), ""] if candidate.season is not None else []),
        delivered_text(candidate, units=units),
        "",
        heat_text(candidate, units=units),
        "",
        *([*nearest, ""] if nearest else []),
        counts_text(candidate, units=units),
        "",
        margins_text(candidate, units=units),
        "",
        bill_text(candidate.bill, units=units),
        *wrapped(_core.bill_remarks(candidate), units),
        "",
        duties_text(candidate, units=units),
    ]
    lines += listed("assumed:", candidate.assumed, units)
    return "\n".join(lines)
