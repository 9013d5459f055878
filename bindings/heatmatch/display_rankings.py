"""Two rankings side by side, as text of 80 columns and as HTML."""

from __future__ import annotations

from heatmatch.display_text import clip, clip_middle, table, wrap
from heatmatch.forms import html_table, paragraphs
from heatmatch.rankings import Move, RankingComparison

ROWS = 12
_WIDTHS = (3, -4, 16, 27, -6, -6, -7, -4)


def comparison_header(comparison: RankingComparison) -> tuple[str, ...]:
    """The columns of the comparison."""
    return ("now", "was", "panels", "elements", comparison.unit, "was", "change", "head")


def _number(value: float | None, pattern: str) -> str:
    return "-" if value is None else format(value, pattern)


def comparison_cells(move: Move, names: tuple[int, int] = (120, 120)) -> tuple[str, ...]:
    """The cells of one pairing, its two names cut to so many characters."""
    headroom = move.headroom_after if move.after is not None else move.headroom_before
    return (
        _number(move.after, "d"),
        _number(move.before, "d"),
        f"{clip(move.group, names[0] - len(move.panels) - 1)} {move.panels}",
        f"{clip_middle(move.element, names[1] - len(move.bank) - 1)} {move.bank}",
        _number(move.heat_after, ".0f"),
        _number(move.heat_before, ".0f"),
        _number(move.change, "+.0f"),
        _number(headroom, ".2f"),
    )


def verdict(comparison: RankingComparison) -> str:
    """What became of the first place, in one sentence."""
    first = next((move for move in comparison.moves if move.after == 1), None)
    then = next((move for move in comparison.moves if move.before == 1), None)
    if first is None or then is None:
        return "One of the two has no pairing without danger."
    name = _name(first)
    if first is then:
        change = first.change or 0.0
        return f"{name} stays first, {change:+.0f} {comparison.unit}."
    where = f"now at place {then.after}" if then.after is not None else "no longer kept"
    was = f"at place {first.before}" if first.before is not None else "not kept"
    return f"{name} is first, before {was}; {_name(then)}, first before, is {where}."


def _name(move: Move) -> str:
    return f"{clip(move.group, 40)} {move.panels} into {clip_middle(move.element, 40)} {move.bank}"


def notes(comparison: RankingComparison) -> list[str]:
    """What the columns mean, and what else there is to say."""
    heat = (
        "kWh: heat of the season" if comparison.unit == "kWh" else "W: averaged over the conditions"
    )
    return [
        f"now: place in {clip(comparison.after, 60)}; was: in {clip(comparison.before, 60)}; "
        f"{heat} into the elements; head: smallest headroom of the limits whose passing is a "
        "danger; -: not among those kept.",
        *comparison.remarks,
    ]


def _shown(comparison: RankingComparison) -> list[Move]:
    """The best of both."""
    return [m for m in comparison.moves if min(m.after or ROWS + 1, m.before or ROWS + 1) <= ROWS]


def comparison_text(comparison: RankingComparison) -> str:
    """A comparison as text."""
    rows = [comparison_cells(move, (_WIDTHS[2], _WIDTHS[3])) for move in _shown(comparison)]
    return "\n".join(
        [
            wrap(verdict(comparison)),
            "",
            table(comparison_header(comparison), rows, _WIDTHS),
            "",
            *(wrap(text) for text in notes(comparison)),
        ]
    )


def comparison_html(comparison: RankingComparison) -> str:
    """A comparison as an HTML table; every text is escaped."""
    rows = [comparison_cells(move) for move in _shown(comparison)]
    title = verdict(comparison)
    return html_table(comparison_header(comparison), rows, title) + paragraphs(notes(comparison))
