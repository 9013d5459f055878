"""The first screen as text of 80 columns and as HTML: the answer before everything else."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable
from typing import Any

from heatmatch import _library as _core
from heatmatch.text.columns import WIDTH
from heatmatch.text.plain import escape, plain
from heatmatch.text.table import cells, heads, table_text, texts, wrapped
from heatmatch.text.units import told

_LABEL = 9  # characters of a label and the blank behind it
_WIDTHS = (11, 43, 7, 4, 4, 6)  # of the other ways


def marked(severity: str | None, text: str) -> str:
    """A line with mark and word of its severity, if it has one."""
    if severity is None:
        return text
    return f"{_core.severity_mark(severity)} {severity}: {text}"


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


def _line_html(severity: str | None, text: str) -> str:
    kind = "" if severity is None else f' class="{escape(severity.replace(" ", "-"))}"'
    return f"<p{kind}>{escape(marked(severity, text))}</p>"


def first_screen_html(of: _core.Ranking | _core.Candidate, *, units: str = "si") -> str:
    """The same as HTML: two columns, then the other ways."""
    screen: dict[str, Any] = _core.first_screen(of)
    severity, said = screen["status"]
    left = 'style="text-align:left;vertical-align:top"'
    rows = "".join(
        f"<tr><th {left}>{escape(told(label, units).upper())}</th><td {left}>"
        + "".join(_line_html(word, told(text, units)) for word, text in entries)
        + "</td></tr>"
        for label, entries in screen["blocks"]
    )
    parts = [_line_html(severity, told(said, units)), f"<table><tbody>{rows}</tbody></table>"]
    others = screen["others"]
    if others.rows:
        parts.append(_table_html(others, units))
    parts += [f"<p>{escape(text)}</p>" for text in texts(screen["closing"], units)]
    return "".join(parts)


def _table_html(of: _core.Table, units: str) -> str:
    side = [f'style="text-align:{"right" if column.number else "left"}"' for column in of.columns]
    head = "".join(
        f"<th {at}>{escape(text)}</th>" for at, text in zip(side, heads(of, units), strict=True)
    )
    body = "".join(
        "<tr>"
        + "".join(f"<td {at}>{escape(text)}</td>" for at, text in zip(side, row, strict=True))
        + "</tr>"
        for row in cells(of, units)
    )
    caption = escape(told(of.title, units).upper())
    return (
        f'<table><caption style="text-align:left">{caption}</caption>'
        f"<thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>"
    )
