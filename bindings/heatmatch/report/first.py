"""The first screen on the first page of a report."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from heatmatch import _library as _core


def first_block(
    candidate: _core.Candidate,
    ranking: _core.Ranking | None,
    translated: Callable[[Iterable[str]], list[Any]],
    laid_out: Callable[[_core.Table], Any],
) -> dict[str, Any]:
    """Its status, blocks and other ways, laid out in both unit sets by those functions."""
    screen = _core.first_screen(candidate if ranking is None else ranking)

    def line(severity: str | None, said: Any) -> tuple[str, Any]:
        mark = "" if severity is None else f"{_core.severity_mark(severity)} {severity}"
        return mark, translated([said])[0]

    others = screen["others"]
    return {
        "status": line(*screen["status"]),
        "blocks": [
            (translated([label])[0], [line(*one) for one in lines])
            for label, lines in screen["blocks"]
        ],
        "others": laid_out(others) if others.rows else None,
    }
