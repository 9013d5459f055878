"""Counts of checks, checks not made and code requirements, as text and as HTML."""

from __future__ import annotations

from typing import Any

from heatmatch import _library as _core
from heatmatch.text.columns import wrap
from heatmatch.text.plain import escape
from heatmatch.text.sentence import Sentence
from heatmatch.text.table import cells, heads, texts, with_short_names, wrapped
from heatmatch.text.units import told

# Characters of names in a line of checks not made.
SHORT = {"subject": 80}


def unchecked(candidate: _core.Candidate, units: str = "si") -> list[str]:
    """Checks not made, one line for each missing fact."""
    lines = [with_short_names(line, SHORT) for line in _core.not_checked_lines(candidate)]
    return texts(lines, units)


def counts_text(candidate: _core.Candidate, *, units: str = "si") -> str:
    """Counts of checks, and directly under them the checks not made."""
    lines = wrapped([_core.counts_sentence(candidate)], units)
    return "\n".join([*lines, *(wrap(f"- {line}") for line in unchecked(candidate, units))])


def counts_html(candidate: _core.Candidate, units: str = "si", *, counts: bool = True) -> str:
    """The same as HTML; without `counts` where they are already shown."""
    items = "".join(f"<li>{escape(line)}</li>" for line in unchecked(candidate, units))
    said = f"<p>{escape(told(_core.counts_sentence(candidate), units))}</p>" if counts else ""
    return f"{said}<ul>{items}</ul>"


def duties_heads(candidate: _core.Candidate) -> list[Sentence]:
    """Heading of the requirements: counts, the facts on which they depend, voltage steps."""
    return [
        _core.duties_sentence(candidate),
        _core.scope_sentence(candidate),
        _core.steps_sentence(candidate),
    ]


def duties_text(candidate: _core.Candidate, *, units: str = "si") -> str:
    """The code requirements that apply, or may apply, in one block."""
    lines = [wrap(f"- {line}") for line in texts(_core.duty_lines(candidate), units)]
    legend = wrapped([_core.duties_legend()], units)
    return "\n".join([*wrapped(duties_heads(candidate), units), *lines, *legend])


def duties_html(candidate: _core.Candidate, units: str = "si") -> str:
    """All code requirements, as HTML."""
    from heatmatch.text.forms import html_table, paragraphs

    made = _core.duties_table(candidate)
    table = html_table(heads(made, units), cells(made, units), told(made.title, units))
    said = texts(duties_heads(candidate), units)
    return paragraphs(said) + table + paragraphs(texts(made.legend, units))


def checks_row(candidate: _core.Candidate, units: str = "si") -> dict[str, Any]:
    """Counts, checks not made and code requirements as plain data."""
    counts = candidate.checks
    names = ("made", "not_made", "warnings", "dangers", "cautions", "no_finding")
    return {
        "checks": {name: getattr(counts, name) for name in names},
        "not_checked": [
            {
                "missing": group.missing,
                "checks": [{"name": name, "subject": subject} for name, subject in group.checks],
                "judged": group.judged,
            }
            for group in candidate.not_checked
        ],
        "code_duties": [_duty_row(duty, units) for duty in candidate.code_duties()],
    }


def _duty_row(duty: _core.CodeDuty, units: str) -> dict[str, Any]:
    names = (
        "name", "code", "applies", "begins_v", "begins_a", "met_by", "devices",
        "suitable_controls", "missing", "source",
    )  # fmt: skip
    row = {name: getattr(duty, name) for name in names}
    return row | {"sentence": told(duty.description, units)}
