"""The first screen as text of 80 columns and as HTML: the answer before everything else."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable
from typing import Any

from heatmatch import _library as _core
from heatmatch.text import look
from heatmatch.text.columns import WIDTH
from heatmatch.text.look import marked
from heatmatch.text.plain import escape, plain
from heatmatch.text.table import cells, heads, table_text, texts, wrapped
from heatmatch.text.units import told

_LABEL = 9  # characters of a label and the blank behind it
_WIDTHS = (11, 43, 7, 4, 4, 6)  # of the other ways


def _block(label: str, lines: Iterable[str]) -> list[str]:
    first = f"{label.upper():{_LABEL}}"
    laid: list[str] = []
    for line in lines:
        lead = " " * _LABEL if laid else first
        indent = " " * (_LABEL + 2)
        laid += textwrap.wrap(plain(line), WIDTH, initial_indent=lead, subsequent_indent=indent)
    return laid


def first_screen_text(of: _core.Ranking | _core.Candidate, *, units: str = "si") -> str:
    """The first screen of a ranking or a candidate."""
    screen = _core.first_screen(of)
    severity, said = screen["status"]
    status = marked(severity, told(said, units))
    lines = [textwrap.fill(plain(status), WIDTH, subsequent_indent="  ")]
    for label, entries in screen["blocks"]:
        lines += _block(label, (marked(word, told(text, units)) for word, text in entries))
    others = screen["others"]
    if others.rows:
        table = table_text(others, _WIDTHS, units)
        head, _, rows = table.partition("\n")
        way = told(others.columns[0].head, units)
        lines += ["", head.replace(way, way.upper(), 1), rows]
    if screen["closing"]:
        lines += ["", *wrapped(screen["closing"], units, "")]
    return "\n".join(lines)


def open_text(candidate: _core.Candidate, *, units: str = "si") -> str:
    """What keeps a circuit from being built: the status and open points of its first screen."""
    screen = _core.first_screen(candidate)
    severity, said = screen["status"]
    lines = textwrap.wrap(plain(marked(severity, told(said, units))), WIDTH, subsequent_indent="  ")
    for label, entries in screen["blocks"]:
        if told(label, units).lower() == "first":
            lines += _block("", (marked(word, told(text, units)) for word, text in entries))
    return "\n".join(lines)


def first_screen_html(
    of: _core.Ranking | _core.Candidate, *, units: str = "si", plan: _core.Plan | None = None
) -> str:
    """The same as HTML: two columns, the other ways, and the line of a plan."""
    screen: dict[str, Any] = _core.first_screen(of)
    severity, said = screen["status"]
    left = 'style="text-align:left;vertical-align:top;padding:.15em .8em .15em 0"'
    rows = "".join(
        f"<tr><th {left}>{escape(told(label, units).upper())}</th><td {left}>"
        + "".join(look.line(word, told(text, units)) for word, text in entries)
        + "</td></tr>"
        for label, entries in screen["blocks"]
    )
    parts = [look.band(severity, told(said, units)), f"<table><tbody>{rows}</tbody></table>"]
    others = screen["others"]
    ways = cells(others, units)
    if ways:
        from heatmatch.text.forms import html_table, number_columns

        title = told(others.title, units).upper()
        numbers = number_columns(others)
        parts.append(html_table(heads(others, units), ways, title, numbers=numbers))
    parts += [look.line(None, text) for text in texts(plan_lines(of, plan), units)]
    small = "".join(look.line(None, text) for text in texts(screen["closing"], units))
    parts.append(f'<div style="font-size:.85em">{small}</div>')
    return "".join(parts)


def plan_lines(
    of: _core.Ranking | _core.Candidate, plan: _core.Plan | None
) -> list[_core.Sentence]:
    """The plan in one line below a ranking; where none was made, the command that makes it."""
    if isinstance(of, _core.Candidate) and plan is None:
        return []
    return [_core.plan_line(plan)]
